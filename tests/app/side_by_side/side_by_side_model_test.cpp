#include "app/side_by_side/sample_pair.h"
#include "catch.h"
#include "words/whatif/comparison.h"
#include "words/whatif/gym_moves.h"

#include <cmath>

using namespace steelyard;
using namespace steelyard::app;
using mechanics::Hinge;

namespace {

mechanics::Change load_of(const SideBySideModel& model) {
    return mechanics::possible_changes(model.state.b.exercise, model.joint()).front();
}

/// One intent of every kind that undo takes back.
std::vector<SideBySideIntent> changing_intents(const SideBySideModel& model) {
    return {PutSide{Side::a, shipped_exercise("curl-dumbbell")}, SwapSides{}, CopyToB{},
            ChangeB{load_of(model), 7.5, 0}, ToggleLimit{Hinge::lumbar_flexion}};
}

} // namespace

TEST_CASE("both sides are solved for the joints of both") {
    const SideBySideModel model =
        make_side_by_side(shipped_exercise("crate-near"), shipped_exercise("curl-dumbbell"));
    CHECK(model.axes == words::axes_of_both(model.state.a, model.state.b));
    CHECK(model.a.peaks.size() == model.axes.size());
    CHECK(model.b.peaks.size() == model.axes.size());
    CHECK(model.a.sweep.steps == 0); // held
    CHECK(model.b.sweep.steps > 2);
}

TEST_CASE("every change of the pair is undone and done again exactly") {
    const SideBySideModel start = sample_pair();
    for (const SideBySideIntent& intent : changing_intents(start)) {
        SideBySideModel model = sample_pair();
        const std::string before = exact_text(model.state);
        update(model, intent);
        const std::string after = exact_text(model.state);
        INFO("intent " << intent.index());
        CHECK(model.message.empty());
        CHECK(after != before);
        update(model, UndoCompared{});
        CHECK(exact_text(model.state) == before);
        CHECK(model.b.peaks.front().torque_Nm == start.b.peaks.front().torque_Nm);
        update(model, RedoCompared{});
        CHECK(exact_text(model.state) == after);
        CHECK_FALSE(model.history.can_redo());
    }
}

TEST_CASE("swapping twice leaves the pair as it was") {
    SideBySideModel model = sample_pair();
    const std::string before = exact_text(model.state);
    const double peak_a_Nm = model.peak_a_Nm();
    update(model, SwapSides{});
    CHECK(model.peak_b_Nm() == peak_a_Nm);
    update(model, SwapSides{});
    CHECK(exact_text(model.state) == before);
}

TEST_CASE("a joint that was looked at stays so when another exercise has it too") {
    SideBySideModel model = sample_pair();
    update(model, ChooseJoint{2});
    const Hinge joint = model.joint();
    update(model, PutSide{Side::a, shipped_exercise("curl-dumbbell")});
    CHECK(model.joint() == joint);
}

TEST_CASE("the load that makes B equal A is what the balance at the elbow asks") {
    SideBySideModel model = sample_pair();
    update(model, ChooseJoint{2});
    REQUIRE(model.joint() == Hinge::right_elbow_flexion);
    const mechanics::RankedWays found = searched(model, {load_of(model)});
    REQUIRE(found.ways.size() == 1);
    // By hand: a crate of 10 kg now, half of it in each hand; each kilogram in the hand turns the
    // elbow by g times its horizontal distance.
    const double distance_m = model.b.here.forces[0].point_m.x() -
                              model.b.here.placement.axis_point_m(Hinge::right_elbow_flexion).x();
    const double in_hand_kg =
        5.0 + (model.peak_a_Nm() - model.peak_b_Nm()) / (9.80665 * distance_m);
    const double value = found.ways[0].reached.value;
    CHECK(value == Approx(2.0 * in_hand_kg).epsilon(1e-7)); // the search reaches 1e-9 of the torque
    update(model, ChangeB{load_of(model), value, 0});
    CHECK(words::are_equal(model.peak_a_Nm(), model.peak_b_Nm()));
    CHECK(model.search.changes() == 0); // nothing is left to do
}

TEST_CASE("the list found in the background is the one of what-if, in its order") {
    SideBySideModel model = sample_pair();
    update(model, AimAt{{AimKind::easier, 0.0}});
    const std::vector<mechanics::Change> changes{
        mechanics::JointAngle{Hinge::right_shoulder_flexion, true}, load_of(model),
        mechanics::JointAngle{Hinge::right_knee_flexion, true}};
    const auto& exercise = model.state.b.exercise;
    auto whole = mechanics::ranked_ways(exercise, goal_of(model), changes);
    REQUIRE(whole);
    words::order_for_the_gym(*whole, exercise);
    const mechanics::RankedWays found = searched(model, changes);
    REQUIRE(found.ways.size() == whole->ways.size());
    CHECK(found.refused.size() == whole->refused.size());
    CHECK(found.ways.size() >= 2);
    for (std::size_t i = 0; i < found.ways.size(); ++i) {
        CHECK(found.ways[i].change == whole->ways[i].change);
        CHECK(found.ways[i].reached.value == whole->ways[i].reached.value);
    }
}

TEST_CASE("a question that is asked while another is answered gets its own answer") {
    SideBySideModel model = sample_pair();
    const mechanics::Goal goal = goal_of(model);
    mechanics::Goal other = goal;
    other.wanted.torque_Nm = 0.9 * model.peak_b_Nm();
    WaySearch search;
    search.ask(model.state.b.exercise, goal, {load_of(model)});
    search.advance();
    search.ask(model.state.b.exercise, other, {load_of(model)});
    CHECK_FALSE(search.is_complete());
    while (search.is_searching()) {
        search.advance();
        std::this_thread::yield();
    }
    REQUIRE(search.found().ways.size() == 1);
    CHECK(std::abs(search.found().ways[0].reached.peak.torque_Nm) ==
          Approx(other.wanted.torque_Nm).epsilon(1e-8)); // the search's accuracy is 1e-9
    search.stop();
    CHECK(search.changes() == 0);
    CHECK(search.found().ways.empty());
}

TEST_CASE("a limit is kept by every change that is offered") {
    SideBySideModel model = sample_pair();
    REQUIRE(model.joint() == Hinge::lumbar_flexion);
    const double most_Nm = model.peak_b_Nm();
    update(model, ToggleLimit{Hinge::lumbar_flexion});
    REQUIRE(limit_at(model, Hinge::lumbar_flexion));
    CHECK(limit_at(model, Hinge::lumbar_flexion)->most_Nm == most_Nm);
    update(model, ChooseJoint{2});
    update(model, AimAt{{AimKind::harder, 0.0}});
    REQUIRE(goal_of(model).wanted.caps.size() == 1);
    // A heavier crate would load the back too.
    const mechanics::RankedWays found = searched(model, {load_of(model)});
    CHECK(found.ways.empty());
    REQUIRE(found.refused.size() == 1);
    REQUIRE(found.refused[0].limit);
    CHECK(found.refused[0].limit->kind == mechanics::LimitKind::cap);
    CHECK(found.refused[0].limit->hinge == Hinge::lumbar_flexion);
    update(model, ToggleLimit{Hinge::lumbar_flexion});
    CHECK(model.state.limits.empty());
    CHECK(searched(model, {load_of(model)}).ways.size() == 1);
}

TEST_CASE("scrubbing moves both and changes neither") {
    SideBySideModel model =
        make_side_by_side(shipped_exercise("curl-dumbbell"), shipped_exercise("curl-cable"));
    const std::string before = exact_text(model.state);
    const double start_Nm = model.a.here.muscle(model.joint());
    update(model, ScrubBoth{0.5});
    CHECK(model.a.here.muscle(model.joint()) != start_Nm);
    for (const ComparedBody* body : {&model.a, &model.b}) {
        const auto alone = mechanics::solve_body(body->posed);
        CHECK(body->here.muscle(model.joint()) == alone->muscle(model.joint()));
    }
    update(model, ScrubBoth{7.0});
    CHECK(model.progress == 1.0);
    CHECK(exact_text(model.state) == before);
    CHECK_FALSE(model.history.can_undo());
}

TEST_CASE("what B cannot be is refused with a reason and changes nothing") {
    SideBySideModel model = sample_pair();
    const std::string before = exact_text(model.state);
    for (const double value :
         {-1.0, 1.0e9, std::nan(""), std::numeric_limits<double>::infinity()}) {
        update(model, ChangeB{load_of(model), value, 0});
        CHECK_FALSE(model.message.empty());
        CHECK(exact_text(model.state) == before);
    }
    update(model, ChangeB{load_of(model), 6.0, 0});
    CHECK(model.message.empty());
}

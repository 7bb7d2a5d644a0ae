#include "catch.h"
#include "mechanics/body/published_tables.h"
#include "mechanics/whatif/boathouse_exercises.h"
#include "mechanics/whatif/whatif.h"

#include <algorithm>
#include <cmath>

using namespace steelyard::mechanics;

namespace {

double peak(const Exercise& exercise, Hinge hinge) {
    const auto reading = read_repetition(exercise, {hinge});
    REQUIRE(reading);
    return std::abs(reading->peaks.front().torque_Nm);
}

WhatIfAnswer answered(const Exercise& exercise, const Change& change, const Wanted& wanted) {
    const auto answer = solve_for_torque(exercise, change, wanted);
    REQUIRE(answer);
    return *answer;
}

} // namespace

TEST_CASE("the peak of a slow curl is where the forearm is level", "[whatif][exercise]") {
    const auto reading = read_repetition(curl(), {Hinge::right_elbow_flexion});
    REQUIRE(reading);
    // Upper arm upright, wrist straight: level at 90 degrees, 80 of the 120 on the way.
    CHECK_THAT(reading->peaks[0].progress, WithinAbs(80.0 / 120.0, 1e-7)); // half of the digits
    Exercise level = curl();
    level.path.reset();
    level.body_case.pose[Hinge::right_elbow_flexion] = degrees(90.0);
    CHECK_THAT(peak(curl(), Hinge::right_elbow_flexion),
               WithinRel(peak(level, Hinge::right_elbow_flexion), 1e-12));
}

TEST_CASE("an answer put back into the exercise gives the wanted torque", "[whatif]") {
    struct Case {
        Exercise exercise;
        Change change;
        Hinge hinge;
        double factor; ///< wanted / present
    };
    const std::vector<Case> cases{
        {curl(), LoadSize{{0}}, Hinge::right_elbow_flexion, 1.3},
        {curl(), JointAngle{Hinge::right_shoulder_flexion, false}, Hinge::right_shoulder_flexion,
         0.8},
        {curl_with_tempo(), RepetitionTempo{}, Hinge::right_elbow_flexion, 0.99},
        {stoop(), LoadSize{{0, 1}}, Hinge::lumbar_flexion, 0.9},
        {stoop(), LoadReach{0, Hinge::lumbar_flexion}, Hinge::lumbar_flexion, 0.9},
        {stoop(), JointAngle{Hinge::lumbar_flexion, false}, Hinge::lumbar_flexion, 0.7},
        {cable_hold(), PulleyHeight{{0}}, Hinge::right_elbow_flexion, 0.6},
        {cable_hold(), LoadSize{{0}}, Hinge::right_elbow_flexion, 2.0},
        {band_hold(), BandSlack{{0}}, Hinge::right_elbow_flexion, 1.2},
    };
    for (const Case& one : cases) {
        INFO(describe(one.change, one.exercise));
        const double wanted_Nm = one.factor * peak(one.exercise, one.hinge);
        const WhatIfAnswer answer = answered(one.exercise, one.change, {one.hinge, wanted_Nm, {}});
        REQUIRE(answer.outcome == WhatIfOutcome::reached);
        for (const ChangedPeak& solution : answer.solutions) {
            const auto changed = with_change(one.exercise, one.change, solution.value);
            REQUIRE(changed);
            CHECK_THAT(peak(*changed, one.hinge), WithinRel(wanted_Nm, 1e-9)); // as promised
        }
    }
}

TEST_CASE("the load for a torque at rest follows from one weighing", "[whatif]") {
    // The torque is a + b·m, so two loads say what every other gives.
    const auto with_load = [](double mass_kg) {
        return peak(*with_change(curl(), LoadSize{{0}}, mass_kg), Hinge::right_elbow_flexion);
    };
    const double slope = (with_load(10.0) - with_load(0.0)) / 10.0;
    const double expected_kg = (20.0 - with_load(0.0)) / slope;
    const WhatIfAnswer answer =
        answered(curl(), LoadSize{{0}}, {Hinge::right_elbow_flexion, 20.0, {}});
    REQUIRE(answer.solutions.size() == 1);
    CHECK_THAT(answer.solutions[0].value, WithinRel(expected_kg, 1e-9));
}

TEST_CASE("a joint angle that gives a torque comes on both sides of the hardest one", "[whatif]") {
    Exercise hold = curl();
    hold.path.reset();
    hold.body_case.pose[Hinge::right_elbow_flexion] = degrees(80.0);
    const double level_Nm =
        peak(*with_change(hold, JointAngle{Hinge::right_elbow_flexion, false}, degrees(90.0)),
             Hinge::right_elbow_flexion);
    const WhatIfAnswer answer =
        answered(hold, JointAngle{Hinge::right_elbow_flexion, false},
                 {Hinge::right_elbow_flexion, level_Nm * std::cos(degrees(30.0)), {}});
    REQUIRE(answer.solutions.size() == 2); // 30 degrees below level and above
    CHECK_THAT(answer.solutions[0].value, WithinAbs(degrees(60.0), 1e-8));
    CHECK_THAT(answer.solutions[1].value, WithinAbs(degrees(120.0), 1e-8));
}

TEST_CASE("a torque beyond the hardest angle is answered with the nearest and why it stops",
          "[whatif]") {
    Exercise hold = curl();
    hold.path.reset();
    const WhatIfAnswer angle = answered(hold, JointAngle{Hinge::right_elbow_flexion, false},
                                        {Hinge::right_elbow_flexion, 500.0, {}});
    CHECK(angle.outcome == WhatIfOutcome::nearest_only);
    REQUIRE(angle.nearest);
    CHECK_THAT(angle.nearest->value, WithinAbs(degrees(90.0), 1e-6)); // half of the digits
    CHECK(angle.limit->kind == LimitKind::turning_point);

    const WhatIfAnswer load =
        answered(curl(), LoadSize{{0}}, {Hinge::right_elbow_flexion, 1.0, {}});
    CHECK(load.outcome == WhatIfOutcome::nearest_only); // the empty arm already asks for more
    CHECK(load.nearest->value == 0.0);
    CHECK(load.limit->kind == LimitKind::range_end);
}

TEST_CASE("where the hardest place comes early a slower tempo asks for less, down to rest",
          "[whatif]") {
    // From 70 degrees the level forearm is passed while the weight still speeds up.
    Exercise exercise = curl_with_tempo();
    exercise.body_case.pose[Hinge::right_elbow_flexion] = degrees(70.0);
    double before_Nm = 1e9;
    for (const double way_s : {0.5, 1.0, 2.0, 4.0, 8.0}) {
        const double now_Nm =
            peak(*with_change(exercise, RepetitionTempo{}, way_s), Hinge::right_elbow_flexion);
        CHECK(now_Nm < before_Nm);
        before_Nm = now_Nm;
    }
    exercise.tempo.reset();
    const double at_rest_Nm = peak(exercise, Hinge::right_elbow_flexion);
    CHECK(before_Nm > at_rest_Nm);
    exercise.tempo = Tempo{};
    const WhatIfAnswer answer =
        answered(exercise, RepetitionTempo{}, {Hinge::right_elbow_flexion, 0.9 * at_rest_Nm, {}});
    CHECK(answer.outcome == WhatIfOutcome::nearest_only);
    CHECK(answer.limit->kind == LimitKind::range_end);
    CHECK(answer.nearest->value == answer.range.allowed.high);
}

TEST_CASE("a weight that has been sped up needs less past the hardest place", "[whatif]") {
    // From 10 degrees the level forearm is passed while the weight slows down: it carries itself.
    CHECK(peak(curl_with_tempo(), Hinge::right_elbow_flexion) <
          peak(curl(), Hinge::right_elbow_flexion));
}

// Common practice, no source: the nearer the load, the less the low back has to hold.
TEST_CASE("how much nearer must the load come to take 20 % off the low back?", "[whatif]") {
    const Exercise exercise = stoop();
    const Change reach = LoadReach{0, Hinge::lumbar_flexion};
    const double present_Nm = peak(exercise, Hinge::lumbar_flexion);
    const WhatIfAnswer answer =
        answered(exercise, reach, {Hinge::lumbar_flexion, 0.8 * present_Nm, {}});
    REQUIRE(answer.outcome == WhatIfOutcome::reached);
    const double nearer_m = answer.range.present - answer.solutions.front().value;
    CHECK(nearer_m > 0.05);
    CHECK(nearer_m < 0.60);
    // The two 10 kg dumbbells alone give 20·9.80665 N for each metre; the arms, which swing too,
    // add to it, so the load has to come less far than without them.
    CHECK(nearer_m < 0.2 * present_Nm / (20.0 * kStandardGravity));
}

TEST_CASE("a cap at another joint stops the search and is named", "[whatif][cap]") {
    const Exercise exercise = stoop();
    const double shoulder_Nm = peak(exercise, Hinge::right_shoulder_flexion);
    const Wanted wanted{Hinge::lumbar_flexion,
                        2.0 * peak(exercise, Hinge::lumbar_flexion),
                        {{Hinge::right_shoulder_flexion, 1.2 * shoulder_Nm}}};
    const WhatIfAnswer answer = answered(exercise, LoadSize{{0, 1}}, wanted);
    CHECK(answer.outcome == WhatIfOutcome::nearest_only);
    REQUIRE(answer.limit);
    CHECK(answer.limit->kind == LimitKind::cap);
    CHECK(answer.limit->hinge == Hinge::right_shoulder_flexion);
    const auto at_cap = with_change(exercise, LoadSize{{0, 1}}, answer.nearest->value);
    CHECK_THAT(peak(*at_cap, Hinge::right_shoulder_flexion), WithinRel(1.2 * shoulder_Nm, 1e-9));
}

TEST_CASE("the feasible loads end where a cap is reached", "[whatif][cap]") {
    const Exercise exercise = stoop();
    const double cap_Nm = 1.1 * peak(exercise, Hinge::lumbar_flexion);
    const auto spans =
        feasible_settings(exercise, LoadSize{{0, 1}},
                          {{Hinge::lumbar_flexion, cap_Nm}, {Hinge::right_elbow_flexion, 1000.0}});
    REQUIRE(spans);
    REQUIRE(spans->size() == 1);
    CHECK(spans->front().span.low == 0.0);
    CHECK(spans->front().above.kind == LimitKind::cap);
    CHECK(spans->front().above.hinge == Hinge::lumbar_flexion);
    const auto at_end = with_change(exercise, LoadSize{{0, 1}}, spans->front().span.high);
    CHECK_THAT(peak(*at_end, Hinge::lumbar_flexion), WithinRel(cap_Nm, 1e-9));
}

TEST_CASE("caps that the empty hands already break leave nothing feasible", "[whatif][cap]") {
    const auto spans = feasible_settings(stoop(), LoadSize{{0, 1}}, {{Hinge::lumbar_flexion, 1.0}});
    REQUIRE(spans);
    CHECK(spans->empty());
    const WhatIfAnswer answer =
        answered(stoop(), LoadSize{{0, 1}},
                 {Hinge::right_shoulder_flexion, 5.0, {{Hinge::lumbar_flexion, 1.0}}});
    CHECK(answer.outcome == WhatIfOutcome::nothing_allowed);
    CHECK(answer.limit->kind == LimitKind::cap);
}

TEST_CASE("the dumbbell that equals a cable at the elbow", "[whatif]") {
    Exercise dumbbell = curl();
    dumbbell.path.reset();
    dumbbell.body_case.pose[Hinge::right_elbow_flexion] = degrees(90.0);
    const auto cable_Nm = peak_less(cable_hold(), Hinge::right_elbow_flexion, 0.0);
    REQUIRE(cable_Nm);
    const WhatIfAnswer answer =
        answered(dumbbell, LoadSize{{0}}, {Hinge::right_elbow_flexion, *cable_Nm, {}});
    REQUIRE(answer.outcome == WhatIfOutcome::reached);
    const auto equal = with_change(dumbbell, LoadSize{{0}}, answer.solutions[0].value);
    CHECK_THAT(peak(*equal, Hinge::right_elbow_flexion),
               WithinRel(peak(cable_hold(), Hinge::right_elbow_flexion), 1e-9));
}

TEST_CASE("ways to relieve the low back are ranked, and keep the other joint as it is",
          "[whatif][ways]") {
    const Exercise exercise = stoop();
    const double wanted_Nm = *peak_less(exercise, Hinge::lumbar_flexion, 0.15);
    CHECK_THAT(wanted_Nm, WithinRel(0.85 * peak(exercise, Hinge::lumbar_flexion), 1e-12));
    const Goal goal{{Hinge::lumbar_flexion, wanted_Nm, {}}, Keep{Hinge::right_elbow_flexion, 0.3}};
    const std::vector<Change> changes{LoadSize{{0, 1}}, LoadReach{0, Hinge::lumbar_flexion},
                                      JointAngle{Hinge::lumbar_flexion, false},
                                      JointAngle{Hinge::right_knee_flexion, true}};
    const auto answer = ranked_ways(exercise, goal, changes);
    REQUIRE(answer);
    // Bending the knees of a person whose pelvis is held does nothing for the low back: no way.
    CHECK(answer->ways.size() + answer->refused.size() == changes.size() - 1);
    REQUIRE_FALSE(answer->ways.empty());
    for (std::size_t i = 0; i < answer->ways.size(); ++i) {
        const Way& way = answer->ways[i];
        INFO(describe(way.change, exercise));
        CHECK(std::abs(way.keep_after_Nm - way.keep_before_Nm) <= 0.3 * way.keep_before_Nm + 1e-9);
        const auto changed = with_change(exercise, way.change, way.reached.value);
        CHECK_THAT(peak(*changed, Hinge::lumbar_flexion), WithinRel(wanted_Nm, 1e-9));
        if (i > 0)
            CHECK(answer->ways[i - 1].size <= way.size);
    }
    const auto knees = [](const auto& way) {
        const auto* angle = std::get_if<JointAngle>(&way.change);
        return angle && angle->hinge == Hinge::right_knee_flexion;
    };
    CHECK(std::none_of(answer->refused.begin(), answer->refused.end(), knees));
    CHECK(std::none_of(answer->ways.begin(), answer->ways.end(), knees));
}

TEST_CASE("without a joint to keep every change that reaches the torque is a way",
          "[whatif][ways]") {
    const Exercise exercise = stoop();
    const double wanted_Nm = *peak_less(exercise, Hinge::lumbar_flexion, 0.1);
    const std::vector<Change> changes{LoadSize{{0, 1}}, LoadReach{0, Hinge::lumbar_flexion}};
    const auto answer =
        ranked_ways(exercise, {{Hinge::lumbar_flexion, wanted_Nm, {}}, std::nullopt}, changes);
    REQUIRE(answer);
    CHECK(answer->ways.size() == 2);
}

// A right angle, half a metre and the whole of a load count alike: 9 degrees are 0.1, and so are
// 5 cm and 1 kg of 10 kg.
TEST_CASE("the size of a change is in right angles, half metres and parts of the load",
          "[whatif][ways]") {
    const auto size_by_hand = [](const Way& way) {
        const double step = std::abs(way.reached.value - way.range.present);
        if (std::holds_alternative<JointAngle>(way.change))
            return step * (180.0 / kPi) / 90.0;
        if (std::holds_alternative<LoadReach>(way.change))
            return step * 100.0 / 50.0;
        return step / 10.0;
    };
    Exercise exercise = stoop();
    const Change load = LoadSize{{0, 1}};
    exercise = *with_change(exercise, load, 10.0);
    const double wanted_Nm = *peak_less(exercise, Hinge::lumbar_flexion, 0.1);
    const std::vector<Change> changes{load, LoadReach{0, Hinge::lumbar_flexion},
                                      JointAngle{Hinge::lumbar_flexion, false}};
    const auto answer =
        ranked_ways(exercise, {{Hinge::lumbar_flexion, wanted_Nm, {}}, std::nullopt}, changes);
    REQUIRE(answer);
    REQUIRE(answer->ways.size() == 3);
    for (const Way& way : answer->ways) {
        INFO(describe(way.change, exercise));
        CHECK_THAT(way.size, WithinRel(size_by_hand(way), 1e-12));
    }
}

TEST_CASE("a change that does nothing to the joint's torque is no way to anything",
          "[whatif][ways]") {
    // A neck turned to the side leaves the elbow's torque as it is; a lighter dumbbell does not.
    const std::vector<Change> changes{JointAngle{Hinge::neck_flexion, false}, LoadSize{{0}}};
    const double wanted_Nm = *peak_less(curl(), Hinge::right_elbow_flexion, 0.2);
    const auto answer =
        ranked_ways(curl(), {{Hinge::right_elbow_flexion, wanted_Nm, {}}, std::nullopt}, changes);
    REQUIRE(answer);
    REQUIRE(answer->ways.size() == 1);
    CHECK(std::holds_alternative<LoadSize>(answer->ways[0].change));
    CHECK(answer->refused.empty());
}

TEST_CASE("ways looked for a little at a time are those found at once", "[whatif][pace]") {
    const Exercise exercise = stoop();
    const Hinge lumbar = Hinge::lumbar_flexion;
    Goal goal;
    goal.wanted = {lumbar, 0.8 * peak(exercise, lumbar), {{Hinge::right_hip_flexion, 60.0}}};
    for (const Change& change : possible_changes(exercise, lumbar)) {
        INFO(describe(change, exercise));
        const auto at_once = ranked_ways(exercise, goal, {change});
        REQUIRE(at_once);
        Pace pace;
        int calls = 0;
        auto slowly = ranked_ways(exercise, goal, change, pace);
        while (pace.paused) {
            REQUIRE(++calls < 1000);
            pace.readings_left = 7;
            pace.paused = false;
            slowly = ranked_ways(exercise, goal, change, pace);
            REQUIRE(pace.readings_left >= 0);
        }
        REQUIRE(slowly);
        REQUIRE(slowly->ways.size() == at_once->ways.size());
        REQUIRE(slowly->refused.size() == at_once->refused.size());
        if (!slowly->ways.empty())
            CHECK(slowly->ways.front().reached.value == at_once->ways.front().reached.value);
        if (!slowly->refused.empty()) {
            CHECK(slowly->refused.front().limit.has_value() ==
                  at_once->refused.front().limit.has_value());
            CHECK(calls > 10);
        }
        Pace spans_pace{1000, false, {}};
        const auto spans = feasible_settings(exercise, change, goal.wanted.caps, &spans_pace);
        CHECK(spans->size() == feasible_settings(exercise, change, goal.wanted.caps)->size());
    }
}

TEST_CASE("no change is offered to reach the torque that is there already", "[whatif][ways]") {
    const double present_Nm = peak(curl(), Hinge::right_elbow_flexion);
    const auto answer = ranked_ways(
        curl(), {{Hinge::right_elbow_flexion, present_Nm, {}}, std::nullopt}, {LoadSize{{0}}});
    REQUIRE_FALSE(answer);
    CHECK(answer.error().key == "torque");
}

TEST_CASE("a part of no torque cannot be taken off", "[whatif]") {
    // Weight makes no torque about an upright axis.
    CHECK_THAT(*peak_less(curl(), Hinge::neck_rotation, 0.0), WithinAbs(0.0, 1e-9));
    const auto less = peak_less(curl(), Hinge::neck_rotation, 0.2);
    REQUIRE_FALSE(less);
    CHECK(less.error().key == "by");
}

TEST_CASE("questions that mean nothing are refused by name", "[whatif]") {
    CHECK(solve_for_torque(curl(), LoadSize{{0}}, {Hinge::right_elbow_flexion, -1.0, {}})
              .error()
              .key == "torque");
    CHECK(solve_for_torque(curl(), LoadSize{{0}}, {Hinge::right_elbow_flexion, std::nan(""), {}})
              .error()
              .fault == Fault::not_finite);
    CHECK(peak_less(stoop(), Hinge::lumbar_flexion, 1.2).error().key == "by");
    const Goal goal{{Hinge::lumbar_flexion, 10.0, {}}, Keep{Hinge::neck_flexion, -0.1}};
    CHECK(ranked_ways(stoop(), goal, {}).error().key == "within");
    CHECK(feasible_settings(curl(), LoadSize{{0}}, {{Hinge::lumbar_flexion, -3.0}}).error().key ==
          "caps[0]");
}

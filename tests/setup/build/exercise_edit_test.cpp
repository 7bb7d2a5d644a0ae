// Exercises made piece by piece: what an edit gives can always be read again from its file.

#include "catch.h"
#include "mechanics/range/touch.h"
#include "mechanics/resistance/resistance_kinds.h"
#include "mechanics/whatif/exercise.h"
#include "setup/build/exercise_edit.h"
#include "setup/build/load_choices.h"
#include "setup/setup.h"

#include <algorithm>
#include <cmath>

using namespace steelyard::setup;
namespace mechanics = steelyard::mechanics;
using mechanics::Hinge;
using mechanics::Segment;

namespace {

const std::string kStances = std::string(STEELYARD_SOURCE_DIR) + "/assets/stances";

const std::vector<NamedSegmentTable>& tables() {
    static const std::vector<NamedSegmentTable> kTables = shipped_segment_tables().value();
    return kTables;
}

std::vector<BodySetup> stances() {
    const auto listed = list_setups(kStances);
    REQUIRE(listed);
    std::vector<BodySetup> all;
    for (const SetupListing& one : *listed) {
        INFO((one.setup ? one.path.string() : to_text(one.setup.error())));
        REQUIRE(one.setup);
        all.push_back(std::get<BodySetup>(*one.setup));
    }
    return all;
}

BodySetup stance(const std::string& name) {
    for (const BodySetup& one : stances())
        if (one.head.name == name)
            return one;
    FAIL("no stance " << name);
    return {};
}

/// The exercise after an edit, which has to be possible.
BodySetup with(const BodySetup& setup, const ExerciseEdit& edit) {
    auto changed = edited(setup, edit, tables());
    INFO((changed ? std::string() : to_text(changed.error())));
    REQUIRE(changed);
    return *changed;
}

/// What solving it at its start says of every hinge.
mechanics::PerHinge torques_Nm(const BodySetup& setup) {
    const auto solved = mechanics::solve_body(setup.exercise.body_case);
    REQUIRE(solved);
    return solved->muscle_Nm;
}

/// It is read again from its own text, and asks the same of every joint.
void check_file(const BodySetup& setup) {
    const auto again = parse_body_setup(write_body_setup(setup), "own", tables());
    INFO((again ? std::string() : to_text(again.error())));
    REQUIRE(again);
    const mechanics::PerHinge one = torques_Nm(setup);
    const mechanics::PerHinge other = torques_Nm(*again);
    for (std::size_t i = 0; i < mechanics::kHingeCount; ++i)
        CHECK(other[i] == Approx(one[i]).margin(1e-6)); // what sticks is brought back within 1 mm
}

std::vector<LoadChoice> choices_for(const BodySetup& setup, std::string_view kind) {
    const auto& names = mechanics::resistance_kind_names();
    const auto found = std::find(names.begin(), names.end(), kind);
    REQUIRE(found != names.end());
    const mechanics::BodyCase& body_case = setup.exercise.body_case;
    return load_choices(static_cast<std::size_t>(found - names.begin()), body_case.body,
                        mechanics::place(body_case.body, body_case.pose));
}

LoadChoice choice(const BodySetup& setup, std::string_view kind, std::string_view where) {
    for (LoadChoice& one : choices_for(setup, kind))
        if (one.where == where)
            return one;
    FAIL("nowhere: " << where);
    return {};
}

} // namespace

TEST_CASE("Every stance can be taken by a woman and a man, small and tall", "[build]") {
    for (const BodySetup& one : stances())
        for (const mechanics::Sex sex : {mechanics::Sex::female, mechanics::Sex::male})
            for (const double height_m : {1.55, 1.95}) {
                CAPTURE(one.head.name, height_m);
                Person person = one.person;
                person.sex = sex;
                person.height_m = height_m;
                person.mass_kg = 23.0 * height_m * height_m;
                const BodySetup other = with(one, ChangePerson{person});
                CHECK_FALSE(mechanics::find_touch_fault(other.exercise.body_case, std::nullopt));
                check_file(other);
            }
}

TEST_CASE("Whoever takes a stance stands in it and no part is below the floor", "[build]") {
    for (const BodySetup& one : stances()) {
        CAPTURE(one.head.name);
        const mechanics::BodyCase& body_case = one.exercise.body_case;
        const auto solved = mechanics::solve_body(body_case);
        REQUIRE(solved);
        CHECK(mechanics::holds_itself(solved->ground.status));
        CHECK_FALSE(mechanics::find_sunk_part(body_case.body, solved->placement));
    }
}

TEST_CASE("Another stance keeps the person and what they carry", "[build]") {
    BodySetup setup = stance("Standing");
    setup = with(setup, AddLoads{choice(setup, "dumbbell", "one in each hand").loads});
    const BodySetup split = with(setup, TakeStance{stance("Split stance")});
    CHECK(split.person.height_m == setup.person.height_m);
    REQUIRE(split.exercise.body_case.resistances.size() == 2);
    CHECK(split.axes == stance("Split stance").axes);
    check_file(split);
}

TEST_CASE("Every load can be taken at every place, and is found there again", "[build]") {
    const BodySetup setup = stance("Standing");
    for (const std::string_view kind : mechanics::resistance_kind_names())
        for (const LoadChoice& one : choices_for(setup, kind)) {
            CAPTURE(kind, one.where);
            const BodySetup loaded = with(setup, AddLoads{one.loads});
            check_file(loaded);
            if (one.loads.size() == 1)
                CHECK(where_is(one.loads.front(), choices_for(setup, kind)) == one.where);
        }
}

TEST_CASE("A cable in the place of a dumbbell keeps no mass, another cable its pull", "[build]") {
    const BodySetup setup = stance("Standing");
    const mechanics::Resistance dumbbell = choice(setup, "dumbbell", "right hand").loads.front();
    mechanics::Resistance cable = choice(setup, "cable", "right hand").loads.front();
    const double usual_N = std::get<mechanics::Cable>(cable.kind).tension_N;
    CHECK(std::get<mechanics::Cable>(with_size_of(dumbbell, cable).kind).tension_N == usual_N);
    auto& first = std::get<mechanics::Cable>(cable.kind);
    first.tension_N = 123.0;
    first.pulley_m = {1.0, 2.0, 0.5};
    const auto moved = with_size_of(cable, choice(setup, "cable", "right ankle").loads.front());
    CHECK(std::get<mechanics::Cable>(moved.kind).tension_N == 123.0);
    CHECK(std::get<mechanics::Cable>(moved.kind).pulley_m == first.pulley_m);
    CHECK(std::get<mechanics::Cable>(moved.kind).at.segment == Segment::right_shank);
}

TEST_CASE("Loads of one name are told apart", "[build]") {
    BodySetup setup = stance("Standing");
    for (int i = 0; i < 3; ++i)
        setup = with(setup, AddLoads{choice(setup, "cable", "right hand").loads});
    const auto& loads = setup.exercise.body_case.resistances;
    CHECK(loads[0].name == "cable");
    CHECK(loads[1].name == "cable 2");
    CHECK(loads[2].name == "cable 3");
    setup = with(setup, DropLoad{1});
    CHECK(setup.exercise.body_case.resistances[1].name == "cable 3");
}

TEST_CASE("A hand that touches does so at the height at which it is", "[build]") {
    const BodySetup setup = stance("Bent over");
    const std::vector<TouchWith> could = could_touch(setup);
    REQUIRE_FALSE(could.empty());
    CHECK(could.front().segment == Segment::right_toes); // they are nearest to the floor
    const BodySetup leaning = with(setup, TouchWith{Segment::right_hand, mechanics::Patch::palm});
    const auto& contacts =
        std::get<mechanics::OnContacts>(leaning.exercise.body_case.support).contacts;
    REQUIRE(contacts.size() == 3);
    CHECK(contacts[2].level_m > 0.3);
    CHECK(contacts[2].sticks);
    check_file(leaning);
    CHECK(std::get<mechanics::OnContacts>(with(leaning, LetGo{2}).exercise.body_case.support)
              .contacts.size() == 2);
}

TEST_CASE("The last contact is never let go", "[build]") {
    const BodySetup setup = stance("On one leg");
    const BodySetup same = with(setup, LetGo{0});
    CHECK(std::get<mechanics::OnContacts>(same.exercise.body_case.support).contacts.size() == 1);
}

TEST_CASE("An exercise that moves can be held still anywhere on its way", "[build]") {
    BodySetup setup = with(stance("Seated"), Move{true, 0.0});
    REQUIRE(setup.exercise.path);
    setup.exercise.path->end_angle_rad[mechanics::index_of(Hinge::right_knee_flexion)] = 0.0;
    setup = with(setup, SetTempo{mechanics::Tempo{1.0, 0.0, 3.0}});
    check_file(setup);
    const double start_rad = setup.exercise.body_case.pose[Hinge::right_knee_flexion];
    const BodySetup held = with(setup, Move{false, 0.5});
    CHECK_FALSE(held.exercise.path);
    CHECK_FALSE(held.exercise.tempo);
    CHECK(held.exercise.body_case.pose[Hinge::right_knee_flexion] == Approx(0.5 * start_rad));
}

TEST_CASE("What cannot be is refused with its reason", "[build]") {
    const BodySetup setup = stance("Standing");
    Person nobody = setup.person;
    nobody.height_m = 9.0;
    const auto tall = edited(setup, ChangePerson{nobody}, tables());
    REQUIRE_FALSE(tall);
    CHECK_FALSE(tall.error().expected.empty());
    const auto backwards =
        edited(with(setup, Move{true, 0.0}), SetTempo{mechanics::Tempo{-1.0, 0.0, 2.0}}, tables());
    REQUIRE_FALSE(backwards);
    CHECK_THAT(backwards.error().expected, ContainsSubstring("above 0 s"));
}

TEST_CASE("Axes to compare are offered by the size of their torque, none twice", "[build]") {
    BodySetup setup = stance("Bent over");
    const auto solved = mechanics::solve_body(setup.exercise.body_case);
    REQUIRE(solved);
    const std::vector<Hinge> could = could_compare(setup, *solved);
    REQUIRE(could.size() > 1);
    for (std::size_t i = 0; i < could.size(); ++i) {
        CHECK(std::find(setup.axes.begin(), setup.axes.end(), could[i]) == setup.axes.end());
        if (i > 0)
            CHECK(std::abs(solved->muscle(could[i - 1])) >= std::abs(solved->muscle(could[i])));
    }
    setup = with(setup, CompareAxes{{could.front()}});
    CHECK(setup.axes == std::vector<Hinge>{could.front()});
    CHECK(with(setup, CompareAxes{}).axes == setup.axes); // one is always left
}

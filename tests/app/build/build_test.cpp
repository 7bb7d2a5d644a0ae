// The builder's numbers and words, and what its edits do to the stage.

#include "app/body/body_model.h"
#include "app/body/sample_body.h"
#include "app/build/build_numbers.h"
#include "app/build/build_words.h"
#include "catch.h"

#include <algorithm>

using namespace steelyard;
using namespace steelyard::app;
using mechanics::Hinge;
using mechanics::PoseEnds;

namespace {

BodyModel stage(const std::string& name) {
    return make_body(exercise_named(name), known_muscles(),
                     setup::shipped_segment_tables().value());
}

void set(BodyModel& model, const BuildNumber& number, double value_SI) {
    update(model, EditExercise{with_number(model.state.setup, number, value_SI)});
}

double end_rad(const BodyModel& model, Hinge hinge) {
    return model.exercise().path->end_angle_rad[mechanics::index_of(hinge)];
}

} // namespace

TEST_CASE("A number of the person that is typed is the person's from then on", "[build]") {
    BodyModel model = stage("curl-dumbbell");
    for (const BuildNumber& number : person_numbers()) {
        CAPTURE(name_of(number));
        const double wanted = 1.03 * value_of(model.state.setup, number);
        set(model, number, wanted);
        CHECK(model.message.empty());
        CHECK(value_of(model.state.setup, number) == Approx(wanted));
    }
}

TEST_CASE("A mass given to a part is that part's, and 0 leaves its weight out", "[build]") {
    BodyModel model = stage("curl-dumbbell");
    const double whole_kg = model.exercise().body_case.body.mass_kg;
    for (const BuildNumber& number : part_mass_numbers()) {
        CAPTURE(name_of(number));
        set(model, number, 0.7);
        REQUIRE(model.message.empty());
        CHECK(value_of(model.state.setup, number) == Approx(0.7));
        CHECK(model.exercise().body_case.body.mass_kg == Approx(whole_kg));
    }
    // Forearm and hand without weight: the elbow holds the dumbbell alone, mass · g · arm.
    set(model, {BuildField::segment_mass, mechanics::TablePart::forearm}, 0.0);
    set(model, {BuildField::segment_mass, mechanics::TablePart::hand}, 0.0);
    CHECK(mechanics::weight_arm(model.posed, model.solved, Hinge::right_elbow_flexion).torque_Nm ==
          Approx(0.0).margin(1e-9));
}

TEST_CASE("A longer forearm takes a larger torque to hold the same dumbbell", "[build]") {
    BodyModel model = stage("curl-dumbbell");
    const double before_Nm = model.solved.muscle(Hinge::right_elbow_flexion);
    const BuildNumber forearm{BuildField::segment_length, mechanics::TablePart::forearm};
    const double grip_m = model.exercise().body_case.body.grip_from_wrist_m;
    const double before_m = value_of(model.state.setup, forearm);
    set(model, forearm, before_m + 0.03);
    // The dumbbell's part grows as its distance from the elbow; the limb's own part as well.
    CHECK(model.solved.muscle(Hinge::right_elbow_flexion) >
          before_Nm * (before_m + grip_m + 0.015) / (before_m + grip_m));
    update(model, UndoBody{});
    CHECK(model.solved.muscle(Hinge::right_elbow_flexion) == Approx(before_Nm));
}

TEST_CASE("A person who cannot be is refused in a sentence, and the stage stays", "[build]") {
    BodyModel model = stage("curl-dumbbell");
    const int version = model.version;
    set(model, {BuildField::height}, 9.0);
    CHECK_FALSE(model.message.empty());
    CHECK(model.version == version);
    set(model, {BuildField::out}, -2.0);
    CHECK_THAT(model.message, ContainsSubstring("above 0 s"));
}

TEST_CASE("The axis that was chosen stays chosen while another is left out", "[build]") {
    BodyModel model = stage("squat-bar-back");
    update(model, ChooseAxis{2});
    const Hinge chosen = model.axis();
    std::vector<Hinge> fewer = model.state.setup.axes;
    fewer.erase(fewer.begin());
    update(model, EditExercise{setup::CompareAxes{fewer}});
    CHECK(model.axis() == chosen);
    fewer.erase(std::find(fewer.begin(), fewer.end(), chosen));
    update(model, EditExercise{setup::CompareAxes{fewer}});
    CHECK(model.axis() == fewer.front());
    update(model, UndoBody{});
    update(model, UndoBody{});
    CHECK(model.state.setup.axes.size() == fewer.size() + 2);
}

TEST_CASE("The end of a curl is posed by itself, and looked at meanwhile", "[build]") {
    BodyModel model = stage("curl-dumbbell");
    const double start_rad = model.exercise().body_case.pose[Hinge::right_elbow_flexion];
    update(model, PoseApart{PoseEnds::end});
    CHECK(model.progress == 1.0);
    const BodyNumber angle{
        {BodyPartKind::joint, static_cast<std::size_t>(mechanics::Joint::right_elbow)},
        BodyField::angle,
        Hinge::right_elbow_flexion};
    update(model, SetBodyNumber{angle, 1.3, 0});
    CHECK(model.message.empty());
    CHECK(end_rad(model, Hinge::right_elbow_flexion) == Approx(1.3));
    CHECK(model.exercise().body_case.pose[Hinge::right_elbow_flexion] == start_rad);
    // Whoever goes through the repetition no longer poses one end.
    update(model, Scrub{0.4});
    CHECK(model.posing == PoseEnds::both);
}

TEST_CASE("Pulling the start of a squat down leaves its end where it is", "[build]") {
    BodyModel model = stage("squat-bar-back");
    const double end = end_rad(model, Hinge::right_knee_flexion);
    const double start = model.exercise().body_case.pose[Hinge::right_knee_flexion];
    update(model, PoseApart{PoseEnds::start});
    const mechanics::BodyPoint hip{mechanics::Segment::right_thigh, mechanics::Spot::along, 0.0,
                                   mechanics::Vec3::Zero()};
    const mechanics::Vec3 at_m = model.solved.placement[mechanics::Segment::right_thigh].joint_m;
    update(model,
           PullPoint{hip, at_m - mechanics::Vec3(0.05, 0.12, 0.0), mechanics::Vec3::UnitZ(), 0});
    CHECK(model.message.empty());
    CHECK(model.exercise().body_case.pose[Hinge::right_knee_flexion] > start + 0.2);
    CHECK(end_rad(model, Hinge::right_knee_flexion) == Approx(end));
}

TEST_CASE("A foot cannot be pulled off the floor that it stands on", "[build]") {
    BodyModel model = stage("split-squat");
    update(model, EditExercise{setup::Move{false, 0.0}});
    update(model, EditExercise{setup::KeepContact{1, false}}); // else it would stay by itself
    REQUIRE(model.message.empty());
    const mechanics::BodyPoint ankle{mechanics::Segment::left_foot, mechanics::Spot::along, 0.0,
                                     mechanics::Vec3::Zero()};
    const mechanics::Vec3 at_m = model.solved.placement[mechanics::Segment::left_foot].joint_m;
    const int version = model.version;
    update(model,
           PullPoint{ankle, at_m + mechanics::Vec3(0.1, 0.3, 0.0), mechanics::Vec3::UnitZ(), 0});
    CHECK_FALSE(model.message.empty());
    CHECK(model.version == version);
}

TEST_CASE("Rows say what there is in the words of the gym", "[build]") {
    const setup::BodySetup split = exercise_named("split-squat");
    CHECK(carried_words(split.exercise.body_case.support) == "right foot, left toes");
    CHECK(carried_words(exercise_named("squat-bar-back").exercise.body_case.support) ==
          "both feet");
    CHECK(carried_words(exercise_named("bench-press").exercise.body_case.support) ==
          "held at the trunk");
    CHECK(movement_words(split.exercise) == "2\u00a0s, 2\u00a0s back");
    CHECK(movement_words(exercise_named("suitcase-carry").exercise) == "holds still");
    CHECK(person_words(split.person, setup::UnitSystem::si).rfind("man, ", 0) == 0);
    CHECK(touching_word(mechanics::Segment::left_shank, mechanics::Patch::knee) == "left knee");
    CHECK(load_kind_words().size() == std::variant_size_v<decltype(mechanics::Resistance::kind)>);
}

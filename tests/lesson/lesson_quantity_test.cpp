#include "catch.h"
#include "lesson/lesson_quantity.h"
#include "setup/muscle/muscle_file.h"
#include "words/body/body_reading.h"

#include <string>

using namespace steelyard::setup;
using namespace steelyard::lesson;
using namespace steelyard::words;
namespace mechanics = steelyard::mechanics;

namespace {

LessonStage stage_of(const std::string& setup, const std::string& progress = "0 %") {
    std::string text =
        "kind = \"lesson\"\nname = \"x\"\ndescription = \"y\"\n[[step]]\nprompt = \"p\"\n";
    text += "setup = \"" + setup + "\"\n";
    if (progress != "0 %")
        text += "progress = \"" + progress + "\"\n";
    const auto lesson = parse_lesson(text, "x.lesson.toml", setup_folders({}));
    INFO((lesson ? std::string() : to_text(lesson.error())));
    REQUIRE(lesson.has_value());
    return lesson->steps.front().stage;
}

const std::vector<mechanics::Muscle>& muscles() {
    static const std::vector<mechanics::Muscle> all = *shipped_muscles();
    return all;
}

/// A stage and the one before it, solved.
struct Pair {
    LessonStage now_stage;
    LessonStage before_stage;
    SolvedStage now = *solve_stage(now_stage);
    SolvedStage before = *solve_stage(before_stage);

    QuantitySource source() const { return {&now, &before, &muscles()}; }
    double value(std::string_view name) const { return *read_quantity(name, source())->value_SI; }
    std::string text(std::string_view words) const {
        const auto filled = filled_text(words, source(), UnitSystem::si);
        return filled ? *filled : "fault: " + filled.error();
    }
};

constexpr double kG = 9.80665;

} // namespace

TEST_CASE("a lever's quantities are what one works out by hand") {
    const Pair pair{stage_of("seesaw"), stage_of("wheelbarrow")};
    // 32 kg at 1.1 m from the post, the lighter child at 1.5 m; the plank's weight is on the post.
    CHECK(pair.value("load") == Approx(32.0 * kG));
    CHECK(pair.value("load arm") == Approx(1.1));
    CHECK(pair.value("effort arm") == Approx(1.5));
    CHECK(pair.value("effort") == Approx(32.0 * kG * 1.1 / 1.5));
    CHECK(pair.value("load torque") == Approx(32.0 * kG * 1.1));
    CHECK(pair.value("ideal advantage") == Approx(1.5 / 1.1));
    // post: both children and the plank of 14 kg
    CHECK(pair.value("reaction") == Approx((32.0 + 14.0) * kG + 32.0 * kG * 1.1 / 1.5));
    // before: (60 × 0.45 + 12 × 0.50) × g / 1.4
    CHECK(pair.value("effort before") == Approx((60.0 * 0.45 + 12.0 * 0.5) * kG / 1.4));
    CHECK(pair.value("load over load before") == Approx(32.0 / 60.0));
}

TEST_CASE("quantities in a sentence read as on the stage, and keep their units") {
    const Pair pair{stage_of("seesaw"), stage_of("wheelbarrow")};
    CHECK(pair.text("It takes {effort}.") == "It takes 230\u00A0N.");
    CHECK(pair.text("{class}, then {class before}") == "first class, then second class");
    CHECK(pair.text("{effort compared}") ==
          "the same"); // 230.1 N and 231.2 N: within half a per cent
    CHECK(pair.text("{load arm against effort arm}") == "shorter");
    CHECK(pair.text("{load against effort}") == "more");
    CHECK(*filled_text("{effort}", pair.source(), UnitSystem::us) == "51.7\u00A0lbf");
}

TEST_CASE("a body's quantities are those of the reading at the same place") {
    const Pair pair{stage_of("hinge-bar-near"), stage_of("curl-dumbbell", "64 %")};
    const auto reading =
        *read_body(pair.now.body_setup(), muscles(),
                   {mechanics::Hinge::lumbar_flexion, mechanics::Hinge::right_hip_flexion}, 0.0);
    CHECK(pair.value("torque lumbar_flexion") == Approx(std::abs(reading.hinges[0].muscle_Nm)));
    CHECK(pair.value("torque hip_flexion") == Approx(std::abs(reading.hinges[1].muscle_Nm)));
    CHECK(pair.value("muscle lumbar_flexion") ==
          Approx(reading.hinges[0].muscles.solution.muscles[0].tension_N));
    CHECK(pair.value("arm lumbar_flexion") == Approx(reading.hinges[0].forces[0].arm.arm_m));
    CHECK(pair.value("load lumbar_flexion") == Approx(40.0 * kG)); // the bar, both hands
    CHECK(pair.value("load before") == Approx(8.0 * kG));          // the dumbbell
    // The bar reaches the hip from the other side, and each leg carries its half.
    CHECK(pair.value("load hip_flexion") == Approx(20.0 * kG));
    CHECK(pair.value("both torques hip_flexion") == Approx(2.0 * pair.value("torque hip_flexion")));
    CHECK(pair.value("both torques lumbar_flexion") == pair.value("torque lumbar_flexion"));
    CHECK(pair.text("{most loaded}") == "both hips");
    CHECK(pair.text("{direction lumbar_flexion}") == "extension");
}

TEST_CASE("a band with both ends on the body pulls with what it pulls at the hand") {
    const Pair pair{stage_of("curl-band", "64 %"), stage_of("curl-band")};
    const auto& forces = pair.now.body.forces;
    CHECK(pair.value("load") == Approx(forces[0].force_N.norm()));
    CHECK(pair.value("load") > 2.0 * 12.0 * 0.8); // stretched well beyond the first entry
    CHECK(pair.text("{load compared}") == "more");
}

TEST_CASE("a name that means nothing is told with the nearest one") {
    const Pair pair{stage_of("seesaw"), stage_of("seesaw")};
    CHECK(pair.text("{efort}").find("did you mean \"effort\"") != std::string::npos);
    CHECK(pair.text("{torque}").find("no quantity of a lever") != std::string::npos);
    CHECK(pair.text("{effort lumbar_flexion}").find("a lever has none") != std::string::npos);
    CHECK(pair.text("{effort over effort arm}").find("not of one kind") != std::string::npos);
    CHECK(pair.text("{class against class}").find("not of one kind") != std::string::npos);
    CHECK(pair.text("{effort").find("not closed") != std::string::npos);
    QuantitySource alone = pair.source();
    alone.before = nullptr;
    CHECK(read_quantity("effort before", alone).error().find("a step before") != std::string::npos);
}

TEST_CASE("what a special case leaves open has no number, and says so") {
    const Pair pair{stage_of("mast-pulled-along"), stage_of("seesaw")};
    CHECK(pair.value("effort arm") == 0.0);
    CHECK(pair.text("{effort}").find("leaves it open") != std::string::npos);
}

TEST_CASE("a load that is sought can be spoken of as a force and as a mass") {
    const Pair pair{stage_of("weigh-a-coil"), stage_of("seesaw")};
    // Sliding weight 1.5 kg at 44 cm beyond the axis, the beam's 1.1 kg at 16 cm, hook at 6 cm.
    const double coil_kg = (1.5 * 0.44 + 1.1 * 0.16) / 0.06;
    CHECK(pair.value("mass found") == Approx(coil_kg));
    CHECK(pair.value("load found") == Approx(coil_kg * kG));
    CHECK(pair.text("{mass found}") == "13.9\u00a0kg");
    CHECK_THAT(pair.text("{load found before}"), ContainsSubstring("no load found"));
}

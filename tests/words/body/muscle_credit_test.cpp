#include "catch.h"
#include "setup/muscle/muscle_file.h"
#include "setup/setup.h"
#include "words/body/body_reading.h"
#include "words/body/body_words.h"
#include "words/body/muscle_credit.h"

#include <algorithm>
#include <map>
#include <set>

using namespace steelyard;
using namespace steelyard::mechanics;

namespace {

words::BodyReading reading_of(const setup::BodySetup& setup, double progress) {
    static const auto kMuscles = setup::shipped_muscles().value();
    const auto reading = words::read_body(setup, kMuscles, setup.axes, progress);
    REQUIRE(reading);
    return *reading;
}

setup::BodySetup setup_named(const std::string& id) {
    const auto read = setup::read_setup(std::string(STEELYARD_SOURCE_DIR) + "/assets/setups/body/" +
                                        id + ".setup.toml");
    REQUIRE(read);
    return std::get<setup::BodySetup>(*read);
}

template <typename Do> void for_each_exercise(Do act) {
    const auto listed =
        setup::list_setups(std::string(STEELYARD_SOURCE_DIR) + "/assets/setups/body");
    REQUIRE(listed);
    for (const setup::SetupListing& one : *listed) {
        REQUIRE(one.setup);
        INFO(one.path.filename().string());
        act(std::get<setup::BodySetup>(*one.setup));
    }
}

} // namespace

TEST_CASE("every muscle that pulls says what its moment arm rests on", "[muscle-credit]") {
    std::size_t pulling = 0;
    for_each_exercise([&](const setup::BodySetup& setup) {
        for (const words::HingeReading& hinge :
             reading_of(setup, words::hardest_place(setup).value()).hinges) {
            const auto& solution = hinge.muscles.solution;
            if (solution.outcome != MuscleOutcome::balanced)
                continue;
            for (std::size_t i = 0; i < solution.muscles.size(); ++i) {
                if (solution.muscles[i].tension_N == 0.0)
                    continue;
                ++pulling;
                const auto credit = words::arm_credit(hinge.listed[i], hinge.muscles.pulls[i]);
                REQUIRE(credit);
                CHECK_FALSE(credit->citation.text.empty());
                if (credit->citation.mark == Evidence::memory)
                    CHECK(credit->basis == Basis::illustrative);
            }
            const std::string sentence = words::basis_sentence(hinge.listed, hinge.muscles);
            const auto least = words::least_sure_basis(hinge.listed, hinge.muscles);
            REQUIRE(least);
            CHECK(sentence.find(setup::basis_name(*least)) != std::string::npos);
        }
    });
    CHECK(pulling > 100);
}

// The class of a muscle's lever is read off by one rule (mechanics/muscle/muscle_lever.h). Davis,
// Body Physics, section 6.2 (elbow flexors third); Saladin 7e, section 9.2, as cited (triceps
// first); Behnke, Kinetic Anatomy 3e, Fig. 1.21 and 1.22 (neck first; calf second about the ball of
// the foot); College Physics 2e, example 9.5 and problem 9.33, have the layouts of the back and of
// the ankle without the word. The others are our reading of where the attachments lie.
TEST_CASE("the same joint and muscle keep their class of lever in all exercises",
          "[muscle-credit]") {
    std::map<std::pair<std::string, std::string>, std::set<int>> classes;
    for_each_exercise([&](const setup::BodySetup& setup) {
        for (const double progress : {0.0, 0.25, 0.5, 0.75, 1.0})
            for (const words::HingeReading& hinge : reading_of(setup, progress).hinges)
                for (std::size_t i = 0; i < hinge.muscles.levers.size(); ++i) {
                    const auto& lever = hinge.muscles.levers[i];
                    if (hinge.muscles.solution.muscles[i].tension_N < 1.0 || !lever)
                        continue;
                    const std::string joint(hinge_info(hinge.hinge).name);
                    INFO(joint << ", " << hinge.listed[i].name);
                    // Weights on both sides of an insertion give no class, and that is said.
                    if (lever->of_whole.reason == ClassReason::loads_disagree) {
                        CHECK(
                            words::class_words(hinge.muscles, i, hinge.hinge).find("both sides") !=
                            std::string::npos);
                        continue;
                    }
                    CHECK(lever->of_whole.lever_class);
                    if (lever->of_whole.lever_class)
                        classes[{words::joint_word(hinge.hinge) + " " +
                                     words::movement_word(hinge.hinge),
                                 hinge.listed[i].name}]
                            .insert(static_cast<int>(*lever->of_whole.lever_class));
                }
    });
    for (const auto& [who, found] : classes) {
        INFO(who.first << ", " << who.second);
        CHECK(found.size() == 1);
    }
    const auto only = [&](const char* joint, const char* muscle) {
        INFO(joint << ", " << muscle);
        REQUIRE(classes.count({joint, muscle}) == 1);
        return *classes.at({joint, muscle}).begin();
    };
    CHECK(only("low back flexion", "lumbar extensors") == 1);
    CHECK(only("neck flexion", "neck extensors") == 1);
    CHECK(only("elbow flexion", "biceps") == 3);
    CHECK(only("elbow flexion", "brachialis") == 3);
    CHECK(only("elbow flexion", "brachioradialis") == 3);
    CHECK(only("elbow flexion", "triceps") == 1);
    CHECK(only("ankle flexion", "calf") == 1);
    CHECK(only("knee flexion", "quadriceps") == 3);
    CHECK(only("knee flexion", "hamstrings") == 3);
    CHECK(only("shoulder abduction", "middle deltoid") == 3);
    CHECK(only("hip abduction", "gluteus medius") == 3);
    CHECK(only("hip flexion", "gluteus maximus") == 3);
    CHECK(only("hip flexion", "hamstrings") == 3);
}

TEST_CASE("a class is told with the part whose lever it is, and on the ball of the foot twice",
          "[muscle-credit]") {
    const auto class_of = [](const char* id, const char* muscle) {
        const setup::BodySetup setup = setup_named(id);
        const auto reading = reading_of(setup, words::hardest_place(setup).value());
        const words::HingeReading& hinge = reading.hinges.front();
        for (std::size_t i = 0; i < hinge.listed.size(); ++i)
            if (hinge.listed[i].name == muscle)
                return words::class_words(hinge.muscles, i, hinge.hinge);
        FAIL("no " << muscle);
        return std::string();
    };
    CHECK(class_of("curl-dumbbell", "biceps") == "third class for the forearm");
    CHECK(class_of("neck-forward", "neck extensors") == "first class across the spine");
    CHECK(class_of("calf-raise", "calf") ==
          "first class about the right ankle, second about the ball of the foot");
    CHECK(class_of("hip-abduction-lying", "gluteus medius") == "third class for the thigh");
}

TEST_CASE("a motion is called as anatomy calls it in the pose", "[muscle-credit]") {
    const auto muscles = setup::shipped_muscles();
    REQUIRE(muscles);
    const Hinge abduction = Hinge::right_shoulder_abduction;
    const auto listed = muscles_at(*muscles, abduction);
    Pose pose;
    CHECK(words::motion_asked(listed, pose, abduction, -10.0) == "adduction");
    pose[Hinge::right_shoulder_flexion] = 0.5 * kPi;
    CHECK(words::motion_asked(listed, pose, abduction, -10.0) == "horizontal adduction");
    CHECK(words::motion_asked(listed, pose, abduction, 10.0) == "horizontal abduction");
    CHECK(words::motion_asked({}, pose, abduction, 10.0) == "abduction");
}

TEST_CASE("both sides among the axes are told apart", "[muscle-credit]") {
    const Hinge right = Hinge::right_hip_abduction;
    const Hinge left = Hinge::left_hip_abduction;
    CHECK(words::axis_word({right, left}, left) == "left hip");
    CHECK(words::axis_word({right}, right) == "hip");
}

TEST_CASE("where books differ about a class, both readings are said", "[muscle-credit]") {
    const auto muscles = setup::shipped_muscles();
    REQUIRE(muscles);
    for (const Muscle& muscle : *muscles) {
        if (muscle.name == "quadriceps")
            CHECK(muscle.class_note.find("first class") != std::string::npos);
        if (muscle.name == "gluteus medius" && muscle.hinge == Hinge::right_hip_abduction)
            CHECK(muscle.class_note.find("pelvis") != std::string::npos);
    }
}

TEST_CASE("a torque stands beside what was measured only where the evidence is good enough",
          "[muscle-credit]") {
    const auto beside = [](const char* id, std::size_t axis) {
        const setup::BodySetup setup = setup_named(id);
        return reading_of(setup, words::hardest_place(setup).value()).hinges[axis].strength;
    };
    const auto knee = beside("leg-extension-machine", 0);
    REQUIRE(knee);
    CHECK(knee->measured.sex == Sex::female);
    REQUIRE(knee->share.band);
    CHECK(words::share_words(*knee).find("7 women") != std::string::npos);
    CHECK_FALSE(beside("lateral-raise-straight", 0)); // shoulder: sources too far apart
    CHECK_FALSE(beside("good-morning", 1));           // trunk: device and posture decide
}

TEST_CASE("a share is told in steps of 5 % and never as impossible", "[muscle-credit]") {
    words::StrengthBeside beside;
    beside.measured.people = "7 men of 18 to 25 years";
    beside.share = {0.37, Interval{0.31, 0.46}};
    CHECK(words::share_words(beside) == "about 35 % of what 7 men of 18 to 25 years could hold on "
                                        "average at this angle (30 to 45 % by their spread)");
    beside.share = {1.4, std::nullopt};
    CHECK(words::share_words(beside) ==
          "more than the average of 7 men of 18 to 25 years at this angle");
    beside.share = {0.01, std::nullopt};
    CHECK(words::share_words(beside).rfind("less than 5 %", 0) == 0);
}

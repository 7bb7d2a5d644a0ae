// Which muscles move what, exercise by exercise: what the program names at the hardest place of
// every shipped exercise, about each of its axes, against anatomy.
//
// Sources: by joint action OpenStax, Anatomy & Physiology 2e, chapter 11 (tables of the humerus,
// the forearm, the gluteal region, the thigh, the leg, the abdomen; section 11.3 for the back).
// The books name movers by joint action, not by exercise: which action an exercise asks for is
// common practice of the trade, no source. Horizontal abduction and the neck are from memory.

#include "catch.h"
#include "setup/muscle/muscle_file.h"
#include "setup/setup.h"
#include "words/body/body_reading.h"
#include "words/body/body_words.h"

#include <algorithm>
#include <map>
#include <set>

using namespace steelyard;
using namespace steelyard::mechanics;

namespace {

using Names = std::set<std::string>;

const Names kElbowFlexors{"biceps", "brachialis", "brachioradialis"};
const Names kShoulderFlexors{"anterior deltoid", "clavicular pectoralis"};
const Names kHipExtensors{"gluteus maximus", "hamstrings"};
const Names kBack{"lumbar extensors"};

/// About one axis: the muscles that may work, or those of which it is said that they are missing.
struct Expected {
    Names work;
    Names missing = {};
    bool rests = false; ///< nothing to hold
};

Expected missing(Names names) {
    return {{}, std::move(names), false};
}

const Expected kRests{{}, {}, true};
const Expected kUnnamed{}; ///< not modelled, and no mover is on file

const Names kExtendShoulder{"latissimus dorsi", "teres major"};
/// With the arm overhead the posterior deltoid's arm, measured lower down, does not hold either.
const Names kExtendFromOverhead{"latissimus dorsi", "teres major", "posterior deltoid"};
const Names kAdductLevel{"pectoralis major", "anterior deltoid"};
const Names kBendSideways{"external oblique", "internal oblique", "quadratus lumborum"};
const Names kTwist{"external oblique", "internal oblique"};
const Names kTurnOut{"infraspinatus", "teres minor"};
const Names kTurnIn{"subscapularis", "pectoralis major", "latissimus dorsi"};

/// For each exercise its axes, in the setup's order.
const std::map<std::string, std::vector<Expected>> kExpected{
    {"back-extension", {{kBack}, {kHipExtensors}}},
    {"bench-press", {missing(kAdductLevel), missing(kShoulderFlexors), {{"triceps", "anconeus"}}}},
    {"calf-raise", {{{"calf"}}, kUnnamed}},
    {"crate-far", {{kBack}, {kShoulderFlexors}, {kElbowFlexors}}},
    {"crate-near", {{kBack}, {kShoulderFlexors}, {kElbowFlexors}}},
    {"curl-arm-forward", {{kElbowFlexors}, {kShoulderFlexors}}},
    {"curl-band", {{kElbowFlexors}, {kShoulderFlexors}, {kBack}}},
    {"curl-cable", {{kElbowFlexors}, {kShoulderFlexors}, {kBack}}},
    {"curl-dumbbell", {{kElbowFlexors}, {kShoulderFlexors}, {kBack}}},
    {"elbow-partner", {{kElbowFlexors}, {kShoulderFlexors}}},
    {"front-raise-bent", {{kShoulderFlexors}, {kElbowFlexors}, {kBack}}},
    {"front-raise-straight", {{kShoulderFlexors}, {kElbowFlexors}, {kBack}}},
    {"good-morning", {{kHipExtensors}, {kBack}}},
    {"hinge-bar-drifting", {{kHipExtensors}, {kBack}, {{"hamstrings"}}, {{"calf"}}}},
    {"hinge-bar-near", {{kHipExtensors}, {kBack}, {{"hamstrings"}}, {{"calf"}}}},
    {"hip-abduction-cable", {{{"gluteus medius"}}, {{"gluteus medius"}}}},
    {"hip-abduction-lying", {{{"gluteus medius"}}}},
    {"inward-rotation-band", {missing(kTurnIn)}},
    {"kettlebell-bottom-up", {kUnnamed, {kElbowFlexors}, {kShoulderFlexors}}},
    {"kettlebell-swing", {{kHipExtensors}, {kBack}, {kShoulderFlexors}}},
    {"lateral-raise-bent", {{{"middle deltoid", "anterior deltoid"}}, missing(kTurnOut)}},
    {"lateral-raise-cable", {{{"middle deltoid", "anterior deltoid"}}, missing(kBendSideways)}},
    {"lateral-raise-leaning", {{{"middle deltoid", "anterior deltoid"}}}},
    {"lateral-raise-straight", {{{"middle deltoid", "anterior deltoid"}}, kRests}},
    {"leg-curl-machine", {{{"hamstrings"}}}},
    {"leg-extension-cuff", {{{"quadriceps"}}, {{"iliopsoas", "rectus femoris"}}}},
    {"leg-extension-machine", {{{"quadriceps"}}}},
    {"leg-raise-bent", {{{"iliopsoas", "rectus femoris"}}, {{"quadriceps"}}}},
    {"leg-raise-straight", {{{"iliopsoas", "rectus femoris"}}, {{"quadriceps"}}}},
    {"neck-forward", {{{"neck extensors"}}, {kBack}}},
    {"neck-partner", {missing({"sternocleidomastoid"}), missing({"rectus abdominis"})}},
    {"outward-rotation-cable", {missing(kTurnOut), {kElbowFlexors}}},
    {"outward-rotation-dumbbell", {kRests, {kElbowFlexors}}},
    {"outward-rotation-lying", {missing(kTurnOut), kRests}},
    {"overhead-press", {missing(kShoulderFlexors), {{"triceps"}}, {kBack}}},
    {"press-against-band", {missing(kTwist), {kElbowFlexors}}},
    {"pull-down", {missing(kExtendFromOverhead), {kElbowFlexors}}},
    {"push-up", {{kShoulderFlexors}, {{"triceps"}}, missing({"rectus abdominis"})}},
    {"rowing-trunk-swing", {{kBack}, missing(kExtendShoulder)}},
    {"seated-row", {missing(kExtendShoulder), {kElbowFlexors}, {kBack}}},
    {"side-bend", {missing(kBendSideways), kRests}},
    {"squat-bar-back",
     {{{"quadriceps"}}, {{"gluteus maximus"}}, missing({"tibialis anterior"}), {kBack}}},
    {"squat-leaning", {{{"quadriceps"}}, {{"gluteus maximus"}}, {{"calf"}}, {kBack}}},
    {"squat-load-in-front", {{{"quadriceps"}}, {{"gluteus maximus"}}, {kBack}}},
    {"triceps-overhead", {{{"triceps"}}, missing(kExtendFromOverhead)}},
    {"triceps-pushdown", {{{"triceps"}}, missing(kExtendShoulder)}},
    {"trunk-rotation-cable-far", {missing(kTwist), missing({"posterior deltoid"})}},
    // The upper arm hangs: what the cable pulls it across by, the deltoid raises sideways.
    {"trunk-rotation-cable-near", {missing(kTwist), {{"middle deltoid", "anterior deltoid"}}}},
    {"wrist-curl", {kUnnamed, {kElbowFlexors}}},
};

Names working(const MuscleSolution& solution) {
    Names names;
    for (const MuscleReading& muscle : solution.muscles)
        if (muscle.tension_N > 0.0)
            names.insert(muscle.muscle);
    return names;
}

Names told_missing(const MissingMovers& missing) {
    Names names(missing.without_arms.begin(), missing.without_arms.end());
    names.insert(missing.arms_elsewhere.begin(), missing.arms_elsewhere.end());
    return names;
}

std::string id_of(const std::filesystem::path& path) {
    const std::string name = path.filename().string();
    return name.substr(0, name.find('.'));
}

template <typename Do> void for_each_exercise(Do act) {
    const auto muscles = setup::shipped_muscles();
    REQUIRE(muscles);
    const auto listed =
        setup::list_setups(std::string(STEELYARD_SOURCE_DIR) + "/assets/setups/body");
    REQUIRE(listed);
    for (const setup::SetupListing& one : *listed) {
        REQUIRE(one.setup);
        const std::string id = id_of(one.path);
        INFO(id);
        act(id, std::get<setup::BodySetup>(*one.setup), *muscles);
    }
}

} // namespace

TEST_CASE("every shipped exercise names the movers of anatomy or none", "[oracle][muscle]") {
    for_each_exercise([](const std::string& id, const setup::BodySetup& setup,
                         const std::vector<Muscle>& muscles) {
        REQUIRE(kExpected.count(id) == 1);
        const std::vector<Expected>& expected = kExpected.at(id);
        REQUIRE(expected.size() == setup.axes.size());
        const auto reading =
            read_body(setup, muscles, setup.axes, words::hardest_place(setup).value());
        REQUIRE(reading);
        for (std::size_t i = 0; i < expected.size(); ++i) {
            const MuscleSolution& solution = reading->hinges[i].muscles.solution;
            INFO(hinge_info(setup.axes[i]).name << ": " << words::word_of(solution.outcome));
            // A pull beyond a cross-section is withheld, but it is still the right muscles'.
            const bool told = solution.outcome == MuscleOutcome::balanced ||
                              solution.outcome == MuscleOutcome::beyond_cross_section;
            CHECK((solution.outcome == MuscleOutcome::no_torque) == expected[i].rests);
            CHECK(told == !expected[i].work.empty());
            CHECK(working(solution) == expected[i].work);
            CHECK(told_missing(solution.missing) == expected[i].missing);
        }
    });
}

TEST_CASE("through every shipped exercise no muscle pulls harder than its cross-section can, "
          "unless that is said",
          "[oracle][muscle]") {
    for_each_exercise([](const std::string&, const setup::BodySetup& setup,
                         const std::vector<Muscle>& muscles) {
        for (const double progress : {0.0, 0.25, 0.5, 0.75, 1.0}) {
            const auto reading = read_body(setup, muscles, setup.axes, progress);
            REQUIRE(reading);
            for (const words::HingeReading& hinge : reading->hinges) {
                const MuscleSolution& solution = hinge.muscles.solution;
                const bool beyond =
                    std::any_of(solution.muscles.begin(), solution.muscles.end(),
                                [](const MuscleReading& muscle) {
                                    return muscle.most_N && muscle.tension_N > *muscle.most_N;
                                });
                CHECK(beyond == (solution.outcome == MuscleOutcome::beyond_cross_section));
                const bool said = !why_no_force(solution, hinge.hinge, setup.head.units).empty();
                CHECK(said == (solution.outcome != MuscleOutcome::balanced &&
                               solution.outcome != MuscleOutcome::no_torque));
                if (said)
                    CHECK_FALSE(solution.joint_reaction_N);
            }
        }
    });
}

// Area and specific tension go together only from one method: Narici, Landoni & Minetti 1992 (Eur J
// Appl Physiol 65:438) measured 6367 ± 1113 N in the quadriceps tendon beside 280.1 cm² by MRI. A
// limit that such a muscle could not reach would be no limit; one at twice that would be none too.
TEST_CASE("the quadriceps' limit lies above its measured force and below twice it",
          "[oracle][muscle]") {
    const auto muscles = setup::shipped_muscles();
    REQUIRE(muscles);
    const auto quadriceps =
        std::find_if(muscles->begin(), muscles->end(),
                     [](const Muscle& muscle) { return muscle.name == "quadriceps"; });
    REQUIRE(quadriceps != muscles->end());
    const double most_N = quadriceps->cross_section->area_m2 *
                          highest_specific_tension_Pa(quadriceps->cross_section->by);
    CHECK(most_N > 6367.0 + 1113.0);
    CHECK(most_N < 2.0 * 6367.0);
}

TEST_CASE("every shipped muscle of the body is on file for an action of its hinge",
          "[oracle][muscle]") {
    const auto muscles = setup::shipped_muscles();
    REQUIRE(muscles);
    for (const Muscle& muscle : *muscles) {
        if (!muscle.hinge)
            continue;
        INFO(muscle.name << " of " << hinge_info(*muscle.hinge).name);
        CHECK(std::any_of(
            muscle.actions.begin(), muscle.actions.end(), [&](const JointAction& action) {
                const auto has = [&](const std::vector<std::string>& list) {
                    return std::find(list.begin(), list.end(), muscle.name) != list.end();
                };
                return has(action.movers) || has(action.helpers);
            }));
    }
}

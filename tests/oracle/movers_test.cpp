// Which muscles move what, exercise by exercise: what the program names at the hardest place of
// every shipped exercise, about each of its axes, against anatomy.
//
// The source stands beside each, by these letters. OpenStax, Anatomy & Physiology 2e, chapter 11:
//   H table of the muscles that move the humerus    F text of the forearm and the elbow
//   P table of the pectoral girdle
//   G gluteal table    T thigh table    L leg and foot    A abdomen table    B section 11.3, back
// K  Kuechle et al. 1997, J Shoulder Elbow Surg 6:429, abstract (horizontal flexion and extension)
// Gray, Anatomy of the Human Body (public domain), as quoted: the pectoralis major with latissimus
//   and teres major brings a raised arm down. Ackland et al. 2008, J Anat 213:383, abstract: middle
//   and anterior deltoid the best abductors.
// M  from memory: wrist, neck and toes, and which oblique turns the trunk which way
// The books name movers by joint action, not by exercise: which action an exercise asks for is
// common practice of the trade, no source.

#include "catch.h"
#include "mechanics/muscle/movers.h"
#include "mechanics/range/sweep.h"
#include "setup/muscle/muscle_file.h"
#include "setup/setup.h"
#include "words/body/body_reading.h"
#include "words/body/body_words.h"

#include <algorithm>
#include <cmath>
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
    const char* source = "";
    Names missing = {};
    bool rests = false; ///< nothing to hold
};

Expected missing(Names names, const char* source) {
    return {{}, source, std::move(names), false};
}

const Expected kRests{{}, "", {}, true};

const Expected kFlexElbow{kElbowFlexors, "F"};
const Expected kFlexShoulder{kShoulderFlexors, "H"};
const Expected kExtendBack{kBack, "B"};
const Expected kExtendHip{kHipExtensors, "G, T"};
const Expected kExtendKnee{{"quadriceps"}, "T"};
const Expected kExtendElbow{{"triceps"}, "F"};
const Expected kRaiseSideways{{"middle deltoid", "anterior deltoid"}, "H, Ackland 2008"};
const Expected kAbductHip{{"gluteus medius", "gluteus minimus", "tensor fasciae latae"}, "G"};
const Expected kRaiseGirdle =
    missing({"upper trapezius", "serratus anterior", "lower trapezius"}, "M");
const Expected kHoldGirdleBack = missing({"lower trapezius", "serratus anterior"}, "M");
const Expected kDrawGirdleBack = missing({"middle trapezius", "rhomboids"}, "P");
const Expected kTurnOut{{"infraspinatus", "teres minor"}, "H text"};
const Expected kFlexTrunk{{"rectus abdominis", "external oblique", "internal oblique"}, "A"};
const Expected kFlexHip{{"iliopsoas", "rectus femoris", "sartorius", "tensor fasciae latae"},
                        "G, T"};
/// The hip of the leg that stands, drawn inwards: beyond the tables.
const Expected kNoArmsAdducted = missing({"gluteus medius", "gluteus minimus"}, "G");
/// Across the chest, the arm raised forward.
const Expected kDrawAcross{{"sternal pectoralis", "clavicular pectoralis", "anterior deltoid"},
                           "H, K"};
/// Drawing a raised arm down: the pectoralis major with latissimus and teres major.
const Expected kDrawDown{
    {"latissimus dorsi", "teres major", "posterior deltoid", "sternal pectoralis"}, "H, Gray"};
/// Overhead there is no table.
const Names kExtendFromOverhead{"latissimus dorsi", "teres major", "sternal pectoralis"};

/// For each exercise its axes, in the setup's order.
const std::map<std::string, std::vector<Expected>> kExpected{
    {"back-extension", {kExtendBack, kExtendHip}},
    {"bench-press",
     {missing(kShoulderFlexors, "H"), // the arms were found nearer to the side
      {{"triceps", "anconeus"}, "F"}}},
    {"calf-raise",
     {{{"calf"}, "L"}, missing({"flexor hallucis longus", "flexor digitorum longus"}, "M")}},
    {"crate-far", {kExtendBack, kFlexShoulder, kFlexElbow}},
    {"crate-near", {kExtendBack, kFlexShoulder, kFlexElbow}},
    {"crunch", {kFlexTrunk}},
    {"curl-arm-forward", {kFlexElbow, kFlexShoulder}},
    {"curl-band", {kFlexElbow, kFlexShoulder, kExtendBack}},
    {"curl-cable", {kFlexElbow, kFlexShoulder, kExtendBack}},
    {"curl-dumbbell", {kFlexElbow, kFlexShoulder, kExtendBack}},
    {"deadlift-floor", {kExtendHip, kExtendBack, kExtendKnee, {{"calf"}, "L"}}},
    {"elbow-partner", {kFlexElbow, kFlexShoulder}},
    {"fly-cables", {kDrawAcross, kFlexElbow}},
    {"fly-dumbbells", {kDrawAcross, kFlexElbow}},
    {"forearm-plank", {kFlexTrunk, kFlexHip}},
    {"front-raise-bent", {kFlexShoulder, kFlexElbow, kHoldGirdleBack, kExtendBack}},
    {"front-raise-straight", {kFlexShoulder, kFlexElbow, kHoldGirdleBack, kExtendBack}},
    {"glute-bridge", {kExtendHip, {{"hamstrings"}, "T"}, kExtendBack}},
    {"good-morning", {kExtendHip, kExtendBack}},
    {"hinge-back-rounded", {kExtendHip, kExtendBack, {{"hamstrings"}, "T"}, {{"calf"}, "L"}}},
    {"hinge-bar-drifting", {kExtendHip, kExtendBack, {{"hamstrings"}, "T"}, {{"calf"}, "L"}}},
    {"hinge-bar-near", {kExtendHip, kExtendBack, {{"hamstrings"}, "T"}, {{"calf"}, "L"}}},
    {"hip-abduction-cable", {kAbductHip, kAbductHip}},
    {"hip-abduction-lying", {kAbductHip}},
    {"inward-rotation-band",
     {{{"subscapularis", "pectoralis major", "latissimus dorsi", "teres major"}, "H"}}},
    {"kettlebell-bottom-up",
     {missing({"flexor carpi radialis", "extensor carpi radialis"}, "M"), kFlexElbow,
      kFlexShoulder}},
    {"kettlebell-swing",
     {{{"gluteus maximus", "hamstrings", "adductor magnus"}, "G, T"}, kExtendBack, kFlexShoulder}},
    {"lateral-band-walk", {kAbductHip, kNoArmsAdducted}},
    {"lateral-raise-bent", {kRaiseSideways, kTurnOut, kRaiseGirdle}},
    {"lateral-raise-cable",
     {kRaiseSideways,
      kRaiseGirdle,
      {{"left external oblique", "left internal oblique", "left quadratus lumborum",
        "left erector spinae"},
       "A, B"}}},
    {"lateral-raise-leaning", {kRaiseSideways, kRaiseGirdle}},
    {"lateral-raise-straight", {kRaiseSideways, kRaiseGirdle, kRests}},
    {"leg-curl-machine", {{{"hamstrings"}, "T"}}},
    {"leg-extension-cuff",
     {kExtendKnee, {{"iliopsoas", "rectus femoris", "sartorius", "tensor fasciae latae"}, "G, T"}}},
    {"leg-extension-machine", {kExtendKnee}},
    {"leg-raise-bent", {{{"iliopsoas", "rectus femoris"}, "G, T"}, kExtendKnee}},
    {"leg-raise-straight", {{{"iliopsoas", "rectus femoris"}, "G, T"}, kExtendKnee}},
    {"neck-forward", {{{"neck extensors"}, "M"}, kExtendBack}},
    {"neck-partner", {{{"sternocleidomastoid"}, "M"}, kFlexTrunk}},
    {"outward-rotation-cable", {kTurnOut, kFlexElbow, kDrawGirdleBack}},
    {"outward-rotation-dumbbell", {kRests, kFlexElbow}},
    {"outward-rotation-lying", {kTurnOut, kRests}},
    {"overhead-press", {missing(kShoulderFlexors, "H"), kExtendElbow, kRaiseGirdle, kExtendBack}},
    {"press-against-band",
     {{{"left external oblique", "right internal oblique"}, "A, M"}, kFlexElbow}},
    {"pull-down",
     {{{"latissimus dorsi", "teres major", "sternal pectoralis"}, "H, Gray"},
      kFlexElbow,
      missing({"lower trapezius", "pectoralis minor", "latissimus dorsi"}, "P, H")}},
    {"pull-up", {missing({"latissimus dorsi", "teres major"}, "H"), kFlexElbow}},
    {"push-up", {kFlexShoulder, kExtendElbow, missing({"serratus anterior"}, "P"), kFlexTrunk}},
    {"rowing-trunk-swing", {kExtendBack, kDrawDown}},
    {"seated-row",
     {{{"latissimus dorsi", "teres major", "posterior deltoid"}, "H"},
      kFlexElbow,
      kDrawGirdleBack,
      kExtendBack}},
    {"side-bend",
     {{{"left external oblique", "left internal oblique", "left quadratus lumborum",
        "left erector spinae"},
       "A, B"},
      kRests,
      {{"upper trapezius", "levator scapulae"}, "P, M"}}},
    {"split-squat", {kExtendKnee, kExtendHip, kExtendKnee}},
    {"squat-bar-back", {kExtendKnee, kExtendHip, {{"calf"}, "L"}, kExtendBack}},
    {"squat-leaning", {kExtendKnee, kExtendHip, {{"calf"}, "L"}, kExtendBack}},
    {"squat-load-in-front", {kExtendKnee, kExtendHip, kExtendBack}},
    {"step-up", {kExtendKnee, kExtendHip, kNoArmsAdducted, {{"calf"}, "L"}}},
    {"suitcase-carry",
     {{{"left external oblique", "left internal oblique", "left quadratus lumborum",
        "left erector spinae"},
       "A, B"},
      kAbductHip}},
    {"triceps-overhead", {kExtendElbow, missing(kExtendFromOverhead, "H")}},
    {"triceps-pushdown",
     {kExtendElbow, {{"latissimus dorsi", "teres major", "posterior deltoid"}, "H"}}},
    {"trunk-rotation-cable-far",
     {{{"left external oblique", "right internal oblique"}, "A, M"},
      {{"posterior deltoid", "infraspinatus"}, "K"}}},
    // The upper arm hangs: what the cable pulls it across by, the deltoid raises sideways.
    {"trunk-rotation-cable-near",
     {{{"left external oblique", "right internal oblique"}, "A, M"},
      {{"middle deltoid", "anterior deltoid", "supraspinatus"}, "H"}}},
    {"wrist-curl", {{{"flexor carpi radialis", "flexor carpi ulnaris"}, "M"}, kFlexElbow}},
};

/// The main movers that the data names for what a hinge is asked.
Names main_movers(const words::HingeReading& hinge, const Pose& pose) {
    const JointAction* action = action_asked(hinge.listed, pose, hinge.hinge, hinge.muscle_Nm);
    return action ? Names(action->movers.begin(), action->movers.end()) : Names{};
}

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

std::string joined(const Names& names) {
    std::string text;
    for (const std::string& name : names)
        text += (text.empty() ? "" : ", ") + name;
    return text;
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
            words::read_body(setup, muscles, setup.axes, words::hardest_place(setup).value());
        REQUIRE(reading);
        for (std::size_t i = 0; i < expected.size(); ++i) {
            const MuscleSolution& solution = reading->hinges[i].muscles.solution;
            INFO(hinge_info(setup.axes[i]).name << ": " << words::word_of(solution.outcome));
            // A pull beyond a cross-section is withheld, but it is still the right muscles'.
            const bool told = solution.outcome == MuscleOutcome::balanced ||
                              solution.outcome == MuscleOutcome::beyond_cross_section;
            CHECK((solution.outcome == MuscleOutcome::no_torque) == expected[i].rests);
            CHECK(told == !expected[i].work.empty());
            INFO("works: " << joined(working(solution))
                           << "; missing: " << joined(told_missing(solution.missing)) << "; at "
                           << hinge_info(setup.axes[i]).positive << " "
                           << reading->hinges[i].angle_rad * 180.0 / kPi);
            CHECK(working(solution) == expected[i].work);
            CHECK((expected[i].work.empty() || expected[i].source[0] != '\0'));
            CHECK(told_missing(solution.missing) == expected[i].missing);
        }
    });
}

TEST_CASE("in every shipped exercise a main mover leads, no helper", "[oracle][muscle]") {
    for_each_exercise(
        [](const std::string&, const setup::BodySetup& setup, const std::vector<Muscle>& muscles) {
            const double hardest = words::hardest_place(setup).value();
            const auto reading = words::read_body(setup, muscles, setup.axes, hardest);
            REQUIRE(reading);
            Pose pose = setup.exercise.body_case.pose;
            if (setup.exercise.path)
                pose = pose_at(pose, *setup.exercise.path, hardest);
            for (const words::HingeReading& hinge : reading->hinges) {
                const auto& pulls = hinge.muscles.solution.muscles;
                if (hinge.muscles.solution.outcome != MuscleOutcome::balanced)
                    continue;
                const auto first =
                    std::max_element(pulls.begin(), pulls.end(),
                                     [](const MuscleReading& one, const MuscleReading& other) {
                                         return std::abs(one.torque_Nm) < std::abs(other.torque_Nm);
                                     });
                INFO(hinge_info(hinge.hinge).name << ": " << first->muscle);
                CHECK(main_movers(hinge, pose).count(first->muscle) == 1);
            }
        });
}

TEST_CASE("through every shipped exercise no muscle pulls harder than its cross-section can, "
          "unless that is said",
          "[oracle][muscle]") {
    for_each_exercise(
        [](const std::string&, const setup::BodySetup& setup, const std::vector<Muscle>& muscles) {
            for (const double progress : {0.0, 0.25, 0.5, 0.75, 1.0}) {
                const auto reading = words::read_body(setup, muscles, setup.axes, progress);
                REQUIRE(reading);
                for (const words::HingeReading& hinge : reading->hinges) {
                    const MuscleSolution& solution = hinge.muscles.solution;
                    const bool beyond =
                        std::any_of(solution.muscles.begin(), solution.muscles.end(),
                                    [](const MuscleReading& muscle) {
                                        return muscle.most_N && muscle.tension_N > *muscle.most_N;
                                    });
                    CHECK(beyond == (solution.outcome == MuscleOutcome::beyond_cross_section));
                    const bool said =
                        !words::why_no_force(solution, hinge.hinge, setup.head.units).empty();
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

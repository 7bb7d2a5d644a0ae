// What the setups say about where an exercise is hard, against what the solver computes. A sentence
// with such a word must stand in the table below, so that a new one brings its check with it.

#include "catch.h"
#include "mechanics/range/sweep.h"
#include "setup/setup.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <functional>
#include <map>

using namespace steelyard;
using mechanics::Hinge;

namespace {

/// The muscles' torque about one axis through the exercise, moved so slowly that only weights
/// count.
struct Curve {
    std::vector<double> torque_Nm; ///< sizes, at every hundredth of the path
    std::vector<double> angle_deg;

    std::size_t peak() const {
        return static_cast<std::size_t>(std::max_element(torque_Nm.begin(), torque_Nm.end()) -
                                        torque_Nm.begin());
    }
    double most() const { return torque_Nm[peak()]; }
    double angle_at_peak() const { return angle_deg[peak()]; }
};

Curve curve_of(const setup::BodySetup& setup, Hinge axis) {
    Curve curve;
    mechanics::BodyCase body_case = setup.exercise.body_case;
    for (int i = 0; i <= 100; ++i) {
        if (setup.exercise.path)
            body_case.pose =
                mechanics::pose_at(setup.exercise.body_case.pose, *setup.exercise.path, 0.01 * i);
        const auto result = mechanics::solve_body(body_case);
        REQUIRE(result);
        curve.torque_Nm.push_back(std::abs(result->muscle(axis)));
        curve.angle_deg.push_back(body_case.pose[axis] * 180.0 / mechanics::kPi);
    }
    return curve;
}

setup::BodySetup setup_named(const std::string& id) {
    const auto read = setup::read_setup(std::string(STEELYARD_SOURCE_DIR) + "/assets/setups/body/" +
                                        id + ".setup.toml");
    REQUIRE(read);
    return std::get<setup::BodySetup>(*read);
}

Curve curve_of(const std::string& id, Hinge axis) {
    return curve_of(setup_named(id), axis);
}

using Check = std::function<bool(const Curve&)>;

bool at_end(const Curve& curve) {
    return curve.peak() >= 95;
}
bool at_start(const Curve& curve) {
    return curve.peak() <= 5;
}
bool midway(const Curve& curve) {
    return curve.peak() > 10 && curve.peak() < 90;
}
bool nothing(const Curve& curve) {
    return curve.most() < 0.05;
}
bool from_the_start(const Curve& curve) {
    return curve.torque_Nm.front() > 0.25 * curve.most();
}
Check peaks_at_angle(double angle_deg, double within_deg) {
    return [=](const Curve& curve) {
        return std::abs(curve.angle_at_peak() - angle_deg) < within_deg;
    };
}
Check harder_than(const char* other, Hinge axis) {
    return [=](const Curve& curve) { return curve.most() > curve_of(other, axis).most(); };
}
bool always(const Curve&) {
    return true;
}

struct Claim {
    const char* words; ///< in the setup's description or note
    Hinge axis;
    Check holds;
};

const std::map<std::string, std::vector<Claim>> kClaims{
    {"back-extension", {{"the spine works hardest level", Hinge::lumbar_flexion, at_end}}},
    {"crate-far",
     {{"shoulders and low back work harder", Hinge::lumbar_flexion,
       harder_than("crate-near", Hinge::lumbar_flexion)},
      {"shoulders and low back work harder", Hinge::right_shoulder_flexion,
       harder_than("crate-near", Hinge::right_shoulder_flexion)},
      {"the elbows hardly change", Hinge::right_elbow_flexion,
       [](const Curve& here) {
           return std::abs(here.most() -
                           curve_of("crate-near", Hinge::right_elbow_flexion).most()) <
                  0.02 * here.most();
       }}}},
    {"crunch", {{"its weight is hardest to lift at the start", Hinge::lumbar_flexion, at_start}}},
    {"curl-arm-forward",
     {{"the hardest angle moves towards the start", Hinge::right_elbow_flexion,
       [](const Curve& here) {
           return here.angle_at_peak() <
                  curve_of("curl-dumbbell", Hinge::right_elbow_flexion).angle_at_peak() - 20.0;
       }}}},
    {"curl-band",
     {{"the torque is largest midway", Hinge::right_elbow_flexion, midway},
      {"and its moment arm shrinks towards the top", Hinge::right_elbow_flexion,
       [](const Curve& here) { return here.torque_Nm.back() < 0.9 * here.most(); }}}},
    {"curl-cable",
     {{"the hardest angle is another one", Hinge::right_elbow_flexion,
       [](const Curve& here) {
           return std::abs(here.angle_at_peak() -
                           curve_of("curl-dumbbell", Hinge::right_elbow_flexion).angle_at_peak()) >
                  5.0;
       }}}},
    {"curl-dumbbell",
     {{"pulls hardest on it when the forearm is level", Hinge::right_elbow_flexion,
       peaks_at_angle(90.0, 3.0)}}},
    {"elbow-partner",
     {{"the push has the same torque at every angle", Hinge::right_elbow_flexion,
       [](const Curve& here) {
           // What is left to change is the own weight of forearm and hand, 3 N·m at most.
           const double least = *std::min_element(here.torque_Nm.begin(), here.torque_Nm.end());
           return here.most() - least < 3.0;
       }}}},
    {"fly-cables",
     {{"the shoulders still work when the hands meet", Hinge::right_shoulder_abduction,
       [](const Curve& here) { return here.torque_Nm.back() > 0.3 * here.most(); }}}},
    {"fly-dumbbells",
     {{"pull hardest with the arms spread level", Hinge::right_shoulder_abduction, at_start},
      {"hardly at all when they are above the shoulders", Hinge::right_shoulder_abduction,
       [](const Curve& here) { return here.torque_Nm.back() < 0.25 * here.most(); }}}},
    {"good-morning",
     {{"its moment arm grows with the lean", Hinge::right_hip_flexion, at_end},
      {"its moment arm grows with the lean", Hinge::lumbar_flexion, at_end}}},
    {"hinge-back-rounded",
     {{"the low back holds the same torque", Hinge::lumbar_flexion,
       [](const Curve& here) {
           const double flat_Nm = curve_of("hinge-bar-near", Hinge::lumbar_flexion).most();
           return std::abs(here.most() - flat_Nm) < 0.01 * flat_Nm;
       }},
      {"the hips less", Hinge::right_hip_flexion,
       [](const Curve& here) {
           return here.most() < 0.9 * curve_of("hinge-bar-near", Hinge::right_hip_flexion).most();
       }}}},
    {"hip-abduction-cable",
     {{"pulls from the first degree on", Hinge::right_hip_abduction, from_the_start}}},
    {"hip-abduction-lying", {{"hardest at the start", Hinge::right_hip_abduction, at_start}}},
    {"hinge-bar-drifting",
     {{"hip and lumbar torque grow", Hinge::lumbar_flexion,
       [](const Curve& here) {
           return here.most() > curve_of("hinge-bar-near", Hinge::lumbar_flexion).most() &&
                  curve_of("hinge-bar-drifting", Hinge::right_hip_flexion).most() >
                      curve_of("hinge-bar-near", Hinge::right_hip_flexion).most();
       }}}},
    {"lateral-raise-cable",
     {{"pulls from the first degree on", Hinge::right_shoulder_abduction, from_the_start}}},
    {"lateral-raise-leaning",
     {{"is level only at 115°", Hinge::right_shoulder_abduction, peaks_at_angle(115.0, 3.0)}}},
    {"lateral-raise-straight",
     {{"the hardest place is the top", Hinge::right_shoulder_abduction, at_end}}},
    {"leg-extension-cuff",
     {{"nearly nothing at the bottom", Hinge::right_knee_flexion,
       [](const Curve& here) { return here.torque_Nm.front() < 0.1 * here.most(); }},
      {"all of it at the top", Hinge::right_knee_flexion, at_end}}},
    {"leg-raise-straight",
     {{"it is hardest where the leg is level, at the very start", Hinge::right_hip_flexion,
       at_start}}},
    {"leg-curl-machine", {{"the cam is largest in the middle", Hinge::right_knee_flexion, midway}}},
    {"neck-forward", {{"the farther it leans, the harder", Hinge::neck_flexion, at_end}}},
    {"outward-rotation-dumbbell",
     {{"no torque about it", Hinge::right_shoulder_rotation, nothing}}},
    {"outward-rotation-lying",
     {{"the same dumbbell now works", Hinge::right_shoulder_rotation,
       [](const Curve& here) { return here.most() > 1.0; }}}},
    {"press-against-band", {{"Near the chest it is easy", Hinge::lumbar_rotation, at_end}}},
    {"triceps-overhead",
     {{"pulls hardest with the forearm level", Hinge::right_elbow_flexion,
       peaks_at_angle(90.0, 5.0)}}},
    // These words say nothing about where on the path.
    {"squat-bar-back", {{"Thighs nearly level", Hinge::right_knee_flexion, always}}},
    {"step-up", {{"keep the pelvis level", Hinge::right_hip_abduction, always}}},
    {"rowing-trunk-swing", {{"far from the hands", Hinge::lumbar_flexion, always}}},
};

/// Words by which a sentence claims that a place is hard or easy.
constexpr std::array kTelltales{"hard",  "easy",  "nothing at",   "largest",    "the same torque",
                                "grows", "level", "first degree", "at the top", "at the bottom"};

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return text;
}

} // namespace

TEST_CASE("what a setup says about where it is hard is what the solver computes", "[setup][body]") {
    for (const auto& [id, claims] : kClaims) {
        const setup::BodySetup setup = setup_named(id);
        const std::string said = setup.head.description + " " + setup.head.note;
        for (const Claim& claim : claims) {
            INFO(id << ": " << claim.words);
            CHECK(said.find(claim.words) != std::string::npos);
            const Curve curve = curve_of(setup, claim.axis);
            INFO("peak at " << curve.peak() << " %, " << curve.angle_at_peak() << " deg, from "
                            << curve.torque_Nm.front() << " over " << curve.most() << " to "
                            << curve.torque_Nm.back() << " N·m");
            CHECK(claim.holds(curve));
        }
    }
}

TEST_CASE("no setup speaks of hard and easy places without a check", "[setup][body]") {
    const auto listed =
        setup::list_setups(std::string(STEELYARD_SOURCE_DIR) + "/assets/setups/body");
    REQUIRE(listed);
    for (const setup::SetupListing& one : *listed) {
        REQUIRE(one.setup);
        const std::string file = one.path.filename().string();
        const std::string id = file.substr(0, file.find('.'));
        const auto& head = std::get<setup::BodySetup>(*one.setup).head;
        const std::string said = lower(head.description + " " + head.note);
        for (const char* word : kTelltales) {
            INFO(id << " says \"" << word << "\"");
            CHECK((said.find(word) == std::string::npos || kClaims.count(id) == 1));
        }
    }
}

// What moves torque between the hips and the low back in a hinge, and what does not, as statics has
// it: checked by closed forms, and by a search over what a lifter can change.

#include "catch.h"
#include "mechanics/constants.h"
#include "mechanics/range/sweep.h"
#include "setup/setup.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

using namespace steelyard::setup;
using namespace steelyard::mechanics;

namespace {

BodySetup shipped_body(const std::string& id) {
    const auto read =
        read_setup(std::string(STEELYARD_SOURCE_DIR) + "/assets/setups/body/" + id + ".setup.toml");
    REQUIRE(read);
    return std::get<BodySetup>(*read);
}

/// Torques that the muscles hold [N·m].
struct Shared {
    double hips_Nm = 0.0; ///< both together
    double back_Nm = 0.0;
    double ratio() const { return hips_Nm / back_Nm; }
};

Shared shared_in(const BodyCase& body_case) {
    const BodyResult result = solve_body(body_case).value();
    return {-result.muscle(Hinge::right_hip_flexion) - result.muscle(Hinge::left_hip_flexion),
            -result.muscle(Hinge::lumbar_flexion)};
}

BodyCase posed(const BodySetup& setup, double progress) {
    BodyCase body_case = setup.exercise.body_case;
    body_case.pose = pose_at(body_case.pose, *setup.exercise.path, progress);
    return body_case;
}

void turn_both(BodyCase& body_case, Hinge right, double by_rad) {
    body_case.pose[right] += by_rad;
    body_case.pose[hinge_info(right).mirror] += by_rad;
}

constexpr double kTenDegrees = 10.0 * kPi / 180.0;

/// What a lifter can change about a hinge, by an amount that one sees.
struct Move {
    const char* name;
    void (*make)(BodyCase&);
};

const std::vector<Move> kMoves{
    {"bar half as heavy",
     [](BodyCase& c) { std::get<Barbell>(c.resistances[0].kind).mass_kg *= 0.5; }},
    {"bar half as heavy again",
     [](BodyCase& c) { std::get<Barbell>(c.resistances[0].kind).mass_kg *= 1.5; }},
    // A hand's breadth, as in the drifting bar.
    {"bar drifts forward",
     [](BodyCase& c) { turn_both(c, Hinge::right_shoulder_flexion, 0.85 * kTenDegrees); }},
    {"more lean from the hips",
     [](BodyCase& c) { turn_both(c, Hinge::right_hip_flexion, kTenDegrees); }},
    {"less lean from the hips",
     [](BodyCase& c) { turn_both(c, Hinge::right_hip_flexion, -kTenDegrees); }},
    // The trunk keeps its lean: what the knees bend, the hips bend too, less what the shanks lean.
    {"knees bent, same lean",
     [](BodyCase& c) {
         turn_both(c, Hinge::right_knee_flexion, 2.0 * kTenDegrees);
         turn_both(c, Hinge::right_ankle_flexion, kTenDegrees);
         turn_both(c, Hinge::right_hip_flexion, kTenDegrees);
     }},
    {"back bent instead of hips, same lean",
     [](BodyCase& c) {
         c.pose[Hinge::lumbar_flexion] += 3.0 * kTenDegrees;
         turn_both(c, Hinge::right_hip_flexion, -3.0 * kTenDegrees);
     }},
};

double shift_of_ratio(const BodyCase& from, const Move& move) {
    BodyCase to = from;
    move.make(to);
    return std::abs(std::log(shared_in(to).ratio() / shared_in(from).ratio()));
}

} // namespace

// Closed form (statics, cutting the body at both places): the hips hold what the low back holds,
// and besides that the weight of all above the low back times its distance in front of the hips,
// and the pelvis's own weight times its own distance.
TEST_CASE("the hips hold more than the low back by what hangs between them, wherever the bar is",
          "[oracle][hinge]") {
    for (const char* id : {"hinge-bar-near", "hinge-bar-drifting", "hinge-back-rounded",
                           "deadlift-floor", "good-morning"})
        for (const double progress : {0.0, 0.3, 0.7}) {
            INFO(id << " at " << progress);
            const BodyCase body_case = posed(shipped_body(id), progress);
            const BodyResult result = solve_body(body_case).value();
            const Shared shared = shared_in(body_case);
            const double hip_m = result.placement.axis_point_m(Hinge::right_hip_flexion).x();
            const double back_m = result.placement.axis_point_m(Hinge::lumbar_flexion).x();
            double above_kg = std::get<Barbell>(body_case.resistances[0].kind).mass_kg;
            for (const SegmentInfo& info : all_segments())
                if (is_at_or_beyond(info.segment, Segment::trunk))
                    above_kg += body_case.body[info.segment].mass_kg;
            const double pelvis_Nm = body_case.body[Segment::pelvis].mass_kg *
                                     (result.placement[Segment::pelvis].com_m.x() - hip_m);
            CHECK_THAT(shared.hips_Nm - shared.back_Nm,
                       WithinAbs(body_case.gravity_m_s2 * (above_kg * (back_m - hip_m) + pelvis_Nm),
                                 1e-6));
        }
}

TEST_CASE("a drifting bar raises hips and low back by the same, so their ratio changes little",
          "[oracle][hinge]") {
    const Shared near = shared_in(posed(shipped_body("hinge-bar-near"), 0.0));
    const Shared drifting = shared_in(posed(shipped_body("hinge-bar-drifting"), 0.0));
    CHECK(drifting.hips_Nm - near.hips_Nm > 30.0);
    CHECK_THAT(drifting.hips_Nm - near.hips_Nm, WithinAbs(drifting.back_Nm - near.back_Nm, 0.5));
    CHECK_THAT(drifting.ratio() / near.ratio(), WithinAbs(1.0, 0.12));
}

TEST_CASE("bending the knees at the same lean leaves hips and low back as they are",
          "[oracle][hinge]") {
    const BodyCase straight = posed(shipped_body("hinge-bar-near"), 0.0);
    BodyCase bent = straight;
    kMoves[5].make(bent);
    CHECK(std::string(kMoves[5].name) == "knees bent, same lean");
    CHECK_THAT(shared_in(bent).hips_Nm, WithinAbs(shared_in(straight).hips_Nm, 1e-6));
    CHECK_THAT(shared_in(bent).back_Nm, WithinAbs(shared_in(straight).back_Nm, 1e-6));
}

TEST_CASE("of what a lifter can change, bending the back instead of the hips shifts the ratio most",
          "[oracle][hinge]") {
    const BodyCase from = posed(shipped_body("hinge-bar-near"), 0.0);
    const auto most =
        std::max_element(kMoves.begin(), kMoves.end(), [&](const auto& a, const auto& b) {
            return shift_of_ratio(from, a) < shift_of_ratio(from, b);
        });
    CHECK(std::string(most->name) == "back bent instead of hips, same lean");
    for (const Move& move : kMoves) {
        INFO(move.name << " shifts by " << shift_of_ratio(from, move));
        if (move.name != most->name)
            CHECK(shift_of_ratio(from, move) < 0.6 * shift_of_ratio(from, *most));
    }
}

TEST_CASE("the pair of flat and rounded back shows that shift and nothing else",
          "[oracle][hinge]") {
    for (const double progress : {0.0, 0.25, 0.5}) {
        INFO(progress);
        const Shared flat = shared_in(posed(shipped_body("hinge-bar-near"), progress));
        const Shared rounded = shared_in(posed(shipped_body("hinge-back-rounded"), progress));
        CHECK_THAT(rounded.back_Nm, WithinRel(flat.back_Nm, 0.01));
        CHECK(rounded.hips_Nm < 0.86 * flat.hips_Nm);
    }
}

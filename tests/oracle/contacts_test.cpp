// What hands and feet carry, and where the pressure is, against measurements and textbook statics.
// The source stands beside each check.

#include "catch.h"
#include "mechanics/range/sweep.h"
#include "setup/setup.h"

#include <cmath>
#include <string>

using namespace steelyard::setup;
using namespace steelyard::mechanics;

namespace {

BodySetup shipped_body(const std::string& id) {
    const auto read =
        read_setup(std::string(STEELYARD_SOURCE_DIR) + "/assets/setups/body/" + id + ".setup.toml");
    REQUIRE(read);
    return std::get<BodySetup>(*read);
}

struct Solved {
    BodyCase body_case;
    BodyResult result;

    double weight_N() const { return body_case.body.mass_kg * body_case.gravity_m_s2; }
    /// Vertical push on the hands or forearms, over body weight.
    double share_of_arms() const {
        double push_N = 0.0;
        for (const BodyForce& force : result.forces)
            if (force.origin == ForceOrigin::contact &&
                is_at_or_beyond(force.segment, Segment::trunk))
                push_N += force.force_N.y();
        return push_N / weight_N();
    }
};

Solved solved_at(const BodySetup& setup, double progress) {
    Solved solved{setup.exercise.body_case, {}};
    if (setup.exercise.path)
        solved.body_case.pose = pose_at(solved.body_case.pose, *setup.exercise.path, progress);
    solved.result = solve_body(solved.body_case).value();
    return solved;
}

/// Where all contacts together push, from heel to toe tip of the right foot: 0 to 1.
double along_foot(const Solved& solved) {
    const Body& body = solved.body_case.body;
    double moment_Nm = 0.0;
    double push_N = 0.0;
    for (const BodyForce& force : solved.result.forces)
        if (force.origin == ForceOrigin::contact) {
            moment_Nm += force.point_m.x() * force.force_N.y();
            push_N += force.force_N.y();
        }
    REQUIRE(push_N > 0.0);
    const double heel_m =
        solved.result.placement[Segment::right_foot].joint_m.x() - body.heel_behind_ankle_m;
    const double length_m =
        body.heel_behind_ankle_m + body.ball_before_ankle_m + body.toe_tip_before_ball_m;
    return (moment_Nm / push_N - heel_m) / length_m;
}

} // namespace

// Mier, Amasay, Capehart & Garner 2014, Int J Exerc Sci 7(2):161, abstract, standard push-up held
// still: arms straight 67.0 +- 3.8 % of body weight (men), 65.1 +- 3.1 % (women); arms bent 74.6
// +- 3.6 % and 70.3 +- 3.1 %. 37 people; ranges are two standard deviations.
TEST_CASE("in a push-up the hands carry the share of body weight that force plates measured",
          "[oracle][contact]") {
    const BodySetup setup = shipped_body("push-up");
    const double up = solved_at(setup, 0.0).share_of_arms();
    const double down = solved_at(setup, 1.0).share_of_arms();
    CHECK_THAT(up, WithinAbs(0.670, 2.0 * 0.038));
    CHECK_THAT(down, WithinAbs(0.746, 2.0 * 0.036));
    CHECK(down > up);
}

// OpenStax, College Physics 2e, problem 9.37: body of 50.0 kg, centre of gravity 0.90 m and hands
// 1.50 m from the toes: the hands carry 60 % together. The law of the lever between two supports.
TEST_CASE("between hands and toes the weight is shared by the law of the lever",
          "[oracle][contact]") {
    for (const char* id : {"push-up", "forearm-plank"})
        for (const double progress : {0.0, 0.5, 1.0}) {
            INFO(id << " at " << progress);
            const Solved solved = solved_at(shipped_body(id), progress);
            double arms_m = 0.0;
            double toes_m = 0.0;
            for (const BodyForce& force : solved.result.forces)
                if (force.origin == ForceOrigin::contact)
                    (is_at_or_beyond(force.segment, Segment::trunk) ? arms_m : toes_m) =
                        force.point_m.x();
            const double com_m = solved.result.centre_of_mass_m.x();
            CHECK_THAT(solved.share_of_arms(),
                       WithinAbs((com_m - toes_m) / (arms_m - toes_m), 1e-9));
        }
}

// Ishida, Samukawa, Koshino, Suzuki, Kasahara & Tohyama 2022, J Sports Sci Med 21:341, abstract:
// pressure at the peak force of a squat without load, 16 men, 53.5 +- 2.4 % of foot length from the
// heel when asked forward, 44.4 +- 2.1 % when asked back. With two standard deviations beyond:
// 40.2 to 58.3 %. With a load no number was found; a lifter stands no otherwise.
TEST_CASE("at the bottom of a squat the pressure is where it was measured", "[oracle][contact]") {
    for (const char* id : {"squat-bar-back", "squat-leaning", "squat-load-in-front"}) {
        INFO(id);
        const double at = along_foot(solved_at(shipped_body(id), 1.0));
        CHECK(at > 0.402);
        CHECK(at < 0.583);
    }
}

// Brown & Abani 1985, Med Sci Sports Exerc 17:554, abstract: in the deadlift the greatest torque of
// the leg's joints is at the hip. Lee et al. 2018, PMC6323186: at the ankle the muscles
// plantarflex.
TEST_CASE("lifting from the floor asks most of the hip", "[oracle][contact]") {
    const Solved lift_off = solved_at(shipped_body("deadlift-floor"), 0.0);
    const auto size = [&](Hinge hinge) { return std::abs(lift_off.result.muscle(hinge)); };
    CHECK(lift_off.result.muscle(Hinge::right_hip_flexion) < 0.0);
    CHECK(size(Hinge::right_hip_flexion) > size(Hinge::right_knee_flexion));
    CHECK(size(Hinge::right_hip_flexion) > size(Hinge::right_ankle_flexion));
    CHECK(lift_off.result.muscle(Hinge::right_ankle_flexion) < 0.0);
}

// Measured strength: the shipped coefficients give the values worked out by hand from them.
//
// Source of the coefficients: Anderson, Madigan & Nussbaum 2007, J Biomech 40:3105, Table 3, as
// given in open code (the page itself was not seen). The expected torques were worked out apart
// from this program for a body of 75 kg and 1.75 m.

#include "catch.h"
#include "setup/muscle/muscle_file.h"

#include <cmath>

using namespace steelyard;
using namespace steelyard::mechanics;

namespace {

const MeasuredStrength& strength_of(const std::vector<Muscle>& muscles, Hinge hinge,
                                    const std::string& action, Sex sex) {
    for (const Muscle& muscle : muscles)
        for (const JointAction& one : muscle.actions)
            if (one.hinge == hinge && one.name == action)
                for (const MeasuredStrength& strength : one.strength)
                    if (strength.sex == sex)
                        return strength;
    FAIL("no strength on file for " << action);
    std::abort();
}

double torque_Nm(const MeasuredStrength& strength, double angle_deg) {
    MeasuredStrength everywhere = strength;
    everywhere.angle_rad = {-kPi, kPi};
    const auto reading = strength_at(everywhere, angle_deg * kPi / 180.0, 75.0, 1.75);
    REQUIRE(reading);
    return reading->mean_Nm;
}

} // namespace

TEST_CASE("measured strength by joint angle is what its coefficients say", "[oracle][muscle]") {
    const auto muscles = setup::shipped_muscles().value();
    struct Row {
        Hinge hinge;
        const char* action;
        Sex sex;
        double angle_deg;
        double torque_Nm;
    };
    const Hinge knee = Hinge::right_knee_flexion;
    const Hinge hip = Hinge::right_hip_flexion;
    const Hinge ankle = Hinge::right_ankle_flexion;
    for (const Row& row : {Row{knee, "extension", Sex::male, 0.0, 30.41},
                           Row{knee, "extension", Sex::male, 30.0, 151.11},
                           Row{knee, "extension", Sex::male, 60.0, 208.58},
                           Row{knee, "extension", Sex::male, 90.0, 178.78},
                           Row{knee, "extension", Sex::female, 0.0, 11.98},
                           Row{knee, "extension", Sex::female, 30.0, 128.70},
                           Row{knee, "extension", Sex::female, 60.0, 197.28},
                           Row{knee, "extension", Sex::female, 90.0, 192.08},
                           Row{hip, "extension", Sex::male, 0.0, 129.97},
                           Row{hip, "extension", Sex::male, 45.0, 205.19},
                           Row{hip, "extension", Sex::male, 90.0, 169.62},
                           Row{ankle, "plantarflexion", Sex::male, 0.0, 103.11},
                           Row{ankle, "dorsiflexion", Sex::male, 0.0, 40.79}}) {
        INFO(row.action << " at " << row.angle_deg);
        // Printed to the hundredth.
        CHECK_THAT(torque_Nm(strength_of(muscles, row.hinge, row.action, row.sex), row.angle_deg),
                   WithinAbs(row.torque_Nm, 0.0051));
    }
}

TEST_CASE("no share is formed outside the angles, nor near a straight knee", "[oracle][muscle]") {
    const auto muscles = setup::shipped_muscles().value();
    const auto& knee = strength_of(muscles, Hinge::right_knee_flexion, "extension", Sex::male);
    CHECK_FALSE(strength_at(knee, 0.1, 75.0, 1.75));
    CHECK(strength_at(knee, 1.0, 75.0, 1.75));
    const auto& hip = strength_of(muscles, Hinge::right_hip_flexion, "extension", Sex::male);
    CHECK_FALSE(strength_at(hip, 1.5, 75.0, 1.75)); // tested to about 74 degrees
}

TEST_CASE("a share's band runs from the strong to the weak of the group", "[oracle][muscle]") {
    const StrengthShare share = share_of(-50.0, {100.0, 25.0});
    CHECK(share.mean == 0.5);
    REQUIRE(share.band);
    CHECK(share.band->low == 0.4);
    CHECK_THAT(share.band->high, WithinRel(50.0 / 75.0, 1e-12));
    CHECK_FALSE(share_of(50.0, {100.0, 0.0}).band);
}

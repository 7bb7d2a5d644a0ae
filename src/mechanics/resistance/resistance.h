#pragma once
// Things that load the body, as plain data.
//
// Left out: water and air (drag), and the inertia of weight stacks and pulleys.

#include "mechanics/body/body.h"
#include "mechanics/constants.h"

#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace steelyard::mechanics {

/// Most mass of one resistance [kg]: above any barbell or stack. Common sense, no source.
inline constexpr double kMaxResistance_kg = 2000.0;
/// Most pull of a cable or push of a partner [N]: the weight of that mass.
inline constexpr double kMaxResistance_N = 20000.0;

/// A weight held in one hand; its centre of mass lies in the grip.
struct Dumbbell {
    Segment hand = Segment::right_hand;
    double mass_kg = 5.0;
};

/// A bar held in both hands, half of it on each; or lying across a segment (the upper back).
struct Barbell {
    double mass_kg = 20.0;
    std::optional<BodyPoint> resting_on; ///< empty: in both hands
    /// In both hands: it goes from its first place to its last in a straight line (range/stick.h).
    bool straight = false;

    Barbell() = default;
    explicit Barbell(double mass, std::optional<BodyPoint> lying_on = std::nullopt)
        : mass_kg(mass), resting_on(std::move(lying_on)) {}
};

/// A weight whose mass hangs clear of the grip.
struct Kettlebell {
    Segment hand = Segment::right_hand;
    double mass_kg = 8.0;
    double offset_m = 0.12; ///< from the grip to the centre of mass [m], >= 0
    /// false: it hangs straight down from the grip (swings, carries). true: it goes with the hand
    /// along `direction` (bottom-up, or lying on the forearm).
    bool follows_hand = false;
    Vec3 direction = -Vec3::UnitY(); ///< in the hand's frame, used when it follows the hand
};

/// A weight strapped around a limb.
struct Cuff {
    BodyPoint at{Segment::right_shank, Spot::along, 0.9, Vec3::Zero()};
    double mass_kg = 2.0;
};

/// Effective radius of a machine's cam at a joint angle; straight between the entries, the end
/// values beyond them.
struct CamEntry {
    double angle_rad = 0.0; ///< of the hinge [rad], increasing from entry to entry
    double radius_m = 0.1;  ///< [m], >= 0
};

/// A machine that turns about the same axis as one hinge: a weight stack pulls on a cam, the cam
/// turns an arm, and a pad at the end of the arm pushes square on the limb.
struct PlateMachine {
    Hinge hinge = Hinge::right_knee_flexion;
    double stack_kg = 20.0;
    std::vector<CamEntry> cam{{0.0, 0.1}};
    /// +1: the pad pushes the joint in its positive direction (so the muscles must work in the
    /// negative one), -1: in its negative direction.
    int pushes = 1;
    BodyPoint pad{Segment::right_shank, Spot::along, 0.9, Vec3::Zero()}; ///< on or beyond the joint
};

/// A cable of constant tension to a pulley.
struct Cable {
    BodyPoint at;
    Vec3 pulley_m = Vec3(0.0, 1.0, 0.0); ///< where the cable runs over the pulley, world [m]
    double tension_N = 50.0;             ///< [N], >= 0
};

/// A cable from a column with a weight stack. The rope runs over so many pulleys on its way that
/// the stack's weight is divided: at 2:1 the handle feels half of it, and moves twice as far as the
/// stack. Pulleys and rope are taken as free of friction.
struct CableColumn {
    BodyPoint at;
    Vec3 pulley_m = Vec3(0.0, 1.0, 0.0); ///< where the cable leaves the column, world [m]
    double stack_kg = 20.0;              ///< of the plates that are chosen [kg], >= 0
    int rope_ratio = 1;                  ///< parts of the rope that carry the stack, 1 to 4
};

/// Most parts of a rope that carry a stack. Common practice, no source: columns have 1 or 2,
/// some 4.
inline constexpr int kMostRopeRatio = 4;

/// Tension of the rope [N]: the stack's weight ÷ the rope ratio.
/// Source: pulleys in balance, OpenStax College Physics 2e, section 9.5.
double rope_tension(const CableColumn& column, double gravity_m_s2);

/// Force of a band at a stretch.
struct StretchEntry {
    double stretch = 0.0; ///< (length - slack length) / slack length [-], increasing
    double force_N = 0.0; ///< [N], not decreasing
};

/// force = stiffness × (length - slack length)
struct LinearBand {
    double stiffness_N_m = 100.0;
};

/// Straight between entries, from (0, 0); a stretch beyond the last entry is an error.
struct TableBand {
    std::vector<StretchEntry> entries{{1.0, 30.0}, {2.0, 45.0}};
};

/// An elastic band from a point of the body to a fixed point or to another point of the body.
/// Shorter than its slack length it is slack and pulls nothing.
struct Band {
    BodyPoint at;
    std::variant<Vec3, BodyPoint> anchor = Vec3(0.0, 1.0, 0.0); ///< world [m], or on the body
    double slack_length_m = 1.0;                                ///< [m], > 0
    std::variant<LinearBand, TableBand> law = LinearBand{};
};

/// A partner who pushes with steady force.
struct PartnerPush {
    BodyPoint at{Segment::right_forearm, Spot::along, 0.9, Vec3::Zero()};
    Vec3 direction = -Vec3::UnitY(); ///< any length but zero
    double force_N = 50.0;           ///< [N], >= 0
    bool follows_segment = false;    ///< direction in the segment's frame instead of the world
};

/// One thing that loads the body.
struct Resistance {
    std::string name = "resistance";
    std::variant<Dumbbell, Barbell, Kettlebell, Cuff, PlateMachine, Cable, CableColumn, Band,
                 PartnerPush>
        kind;
};

} // namespace steelyard::mechanics

#pragma once
// A person as rigid segments: lengths, masses, centres of mass and inertia, ready to compute with.

#include "mechanics/body/segment_table.h"
#include "mechanics/body/segments.h"
#include "mechanics/error.h"

#include <tl/expected.hpp>

#include <array>
#include <string>
#include <vector>

namespace steelyard::mechanics {

/// Bounds of a person [m, kg]. Common sense, no source: beyond the shortest and tallest, lightest
/// and heaviest adults on record.
inline constexpr double kLeastHeight_m = 0.5;
inline constexpr double kMostHeight_m = 2.8;
inline constexpr double kLeastBodyMass_kg = 10.0;
inline constexpr double kMostBodyMass_kg = 650.0;

/// One rigid segment, in its own frame (axes of the world in the zero position, origin in the
/// proximal joint).
struct SegmentBody {
    double length_m = 0.0;             ///< proximal joint to distal joint or tip [m]
    double mass_kg = 0.0;              ///< [kg], >= 0
    Vec3 com_m = Vec3::Zero();         ///< centre of mass [m]
    Mat3 inertia_kg_m2 = Mat3::Zero(); ///< about the centre of mass [kg·m²]
    Vec3 joint_m = Vec3::Zero();       ///< its proximal joint, in the frame of the parent [m]
    Vec3 tip_m = Vec3::Zero();         ///< distal joint or tip [m]
};

/// A place on the body that setups name.
enum class Spot : unsigned char {
    along,          ///< on the line from the proximal joint to the tip, at a fraction of it
    centre_of_mass, ///< of the segment
    grip,           ///< hand: the middle of what it holds
    palm,           ///< hand: middle of the palm, for leaning on it
    sole,           ///< foot: on the sole, below the ankle
    heel,           ///< foot: rear end of the sole
    ball,           ///< foot: on the sole, below the ball of the foot
    toe_tip,        ///< toes: front end of the sole
    seat,           ///< pelvis: what one sits on
    upper_back,     ///< trunk: where a bar lies across the back
    knee_front,     ///< shank: what one kneels on
};

struct BodyPoint {
    Segment segment = Segment::right_hand;
    Spot spot = Spot::grip;
    double along = 0.0;           ///< for Spot::along: 0 proximal joint, 1 tip; from -1 to 2
    Vec3 offset_m = Vec3::Zero(); ///< added, in the segment's frame [m]
};

struct Body {
    std::array<SegmentBody, kSegmentCount> segments;
    double height_m = 0.0;       ///< as stated; standing height but for measured lengths [m]
    double mass_kg = 0.0;        ///< sum over the segments [kg]
    double ankle_height_m = 0.0; ///< above the sole [m]
    double heel_behind_ankle_m = 0.0;
    double ball_before_ankle_m = 0.0;
    double toe_tip_before_ball_m = 0.0;
    double grip_from_wrist_m = 0.0;
    double fingertip_from_wrist_m = 0.0;

    const SegmentBody& operator[](Segment segment) const { return segments[index_of(segment)]; }
    SegmentBody& operator[](Segment segment) { return segments[index_of(segment)]; }
};

/// Which number of a table row a measurement replaces.
enum class Measure { length_m, mass_kg, com_fraction };

/// Parts that the tables know, both sides alike.
enum class TablePart { head, trunk, upper_arm, forearm, hand, thigh, shank, foot };

/// A measured value in place of the table's. A measured length of the trunk stretches all its
/// slices and the heights of its joints alike; its centre of mass cannot be measured here. A
/// measured mass is that of one side; the other parts keep their proportions among each other and
/// share the rest of the body's mass.
struct MeasuredValue {
    TablePart part = TablePart::forearm;
    Measure measure = Measure::length_m;
    double value = 0.0; ///< [m], [kg] or [-] as the measure says
};

/// A body of stated sex, height and mass by a published table.
/// Lengths grow in proportion to height, masses to body mass; inertia follows from the radii of
/// gyration. Upright the body is as tall as was stated: where a table's lengths add up to another
/// height (de Leva's men: 1.777 m for 1.741 m), trunk and head are fitted, and the limbs keep the
/// table's lengths. Feet are divided at the ball of the foot in the same way as the trunk at the
/// lumbar joint. Left and right are alike.
/// @param height_m  kLeastHeight_m to kMostHeight_m [m]
/// @param mass_kg   kLeastBodyMass_kg to kMostBodyMass_kg [kg]
/// @return the body, or which number cannot be meant ("height", "mass", "measured[2].value",
///         "table.male.foot.length")
tl::expected<Body, MechanicsError> body_from(const SegmentTable& table, Sex sex, double height_m,
                                             double mass_kg,
                                             const std::vector<MeasuredValue>& measured = {});

/// The same from one column of a table; keys in errors start with "table.".
tl::expected<Body, MechanicsError> body_from(const SegmentColumn& column, double height_m,
                                             double mass_kg,
                                             const std::vector<MeasuredValue>& measured = {});

/// A place on the body in the frame of its segment [m]. A spot that the segment does not have is
/// an error ("spot": "a spot of a hand, such as grip or palm").
tl::expected<Vec3, MechanicsError> local_point(const Body& body, const BodyPoint& point);

/// By the name in files, the enumeration's spelling; empty when there is none of that name.
std::optional<Spot> spot_named(std::string_view name);
std::string_view spot_name(Spot spot);
std::optional<TablePart> table_part_named(std::string_view name);
std::string_view table_part_name(TablePart part);

} // namespace steelyard::mechanics

#pragma once
// Whether contacts touch what they press on, and what to turn when they do not.

#include "mechanics/body/solve_body.h"
#include "mechanics/range/pose_path.h"

#include <optional>
#include <vector>

namespace steelyard::mechanics {

/// A contact nearer than this to what it touches is on it: flesh, soles and whole degrees give way
/// by as much [m].
inline constexpr double kTouches_m = 0.02;

/// An angle that would bring a contact to what it touches.
struct MendingTurn {
    Hinge hinge = Hinge::right_knee_flexion;
    bool both_sides = false; ///< its mirror image too
    double from_rad = 0.0;
    double to_rad = 0.0;
};

/// A contact that does not touch.
struct TouchFault {
    std::size_t contact = 0;
    double progress = 0.0; ///< where on the path
    double gap_m = 0.0;    ///< where it is farthest off: above 0 it hangs, below it sinks
    /// One turn, or where no single one helps several together; empty when none of the limb's does.
    std::vector<MendingTurn> mend;
};

/// Height of a contact above what it touches [m]: of that of its touching_points which is farthest
/// off.
double gap_m(const Body& body, const Placement& placement, const Contact& contact);

/// A joint, or the tip of a limb, below the floor.
struct SunkPart {
    Segment segment = Segment::right_shank; ///< the one whose proximal joint it is, or whose tip
    bool is_tip = false;
    double depth_m = 0.0; ///< [m], > 0
};
/// What lies deepest below the floor, by more than flesh gives way; empty when nothing does.
std::optional<SunkPart> find_sunk_part(const Body& body, const Placement& placement);

/// The first contact that does not touch, at the start or anywhere on the way; empty when all do.
/// Contacts must have passed check_case.
std::optional<TouchFault> find_touch_fault(const BodyCase& body_case,
                                           const std::optional<PosePath>& path);

} // namespace steelyard::mechanics

#include "setup/build/joint_lever.h"

#include "mechanics/lever/lever_geometry.h"
#include "mechanics/lever/lever_solve.h"
#include "mechanics/resistance/resistance_kinds.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace steelyard::setup {
namespace {

using namespace mechanics;

/// An axis that stands more upright than this is no axis of a lever on the bench.
constexpr double kMostUpright = 0.5;
/// Bones shorter than this on the sheet are seen end-on [m].
constexpr double kEndOn_m = 0.05;
/// A part of a force smaller than this is rounding [N].
constexpr double kNoForce_N = 1.0e-6;
/// Of a muscle whose own arm is not known [m]: common practice, no source.
constexpr double kDrawnArm_m = 0.04;
/// A muscle known by its arm alone is drawn so far from the joint, in arms.
constexpr double kInsertionInArms = 1.5;

/// A plane seen along an axis, the joint its origin.
class Plane {
public:
    Plane(const Vec3& origin_m, Vec3 axis) : origin_m_(origin_m) {
        // Seen from the person's right, or from in front of them.
        const double towards = std::abs(axis.z()) > std::abs(axis.x()) ? axis.z() : axis.x();
        axis_ = towards < 0.0 ? Vec3(-axis) : axis;
        up_ = (Vec3::UnitY() - axis_ * axis_.y()).normalized();
        right_ = up_.cross(axis_);
    }
    Vec2 place(const Vec3& point_m) const { return arrow(point_m - origin_m_); }
    Vec2 arrow(const Vec3& arrow) const { return {arrow.dot(right_), arrow.dot(up_)}; }
    const Vec3& axis() const { return axis_; }

private:
    Vec3 origin_m_;
    Vec3 axis_;
    Vec3 up_;
    Vec3 right_;
};

/// The bone that goes on where one ends; the neck above the trunk, of which the arms branch off.
std::optional<Segment> next_beyond(Segment segment) {
    if (segment == Segment::trunk)
        return Segment::head;
    for (const SegmentInfo& info : all_segments())
        if (info.parent == segment && info.segment != segment)
            return info.segment;
    return std::nullopt;
}

/// The bones from a joint outwards, as corners in the plane; a hand ends at its grip.
std::vector<Vec2> bones(const Body& body, const Placement& placement, Segment first,
                        const Plane& plane) {
    std::vector<Vec2> path_m{Vec2::Zero()};
    for (std::optional<Segment> segment = first; segment; segment = next_beyond(*segment)) {
        const BodyPoint grip{*segment, Spot::grip, 0.0, Vec3::Zero()};
        const Vec3 end_m = local_point(body, grip).value_or(body[*segment].tip_m);
        const Vec2 corner_m = plane.place(placement[*segment].at(end_m));
        if ((corner_m - path_m.back()).norm() > 1.0e-3)
            path_m.push_back(corner_m);
    }
    return path_m;
}

/// Where a line crosses a path, the place nearest to a point of it [m along the path].
std::optional<double> crossing(const std::vector<Vec2>& path_m, const Vec2& point_m,
                               const Vec2& force_N) {
    std::optional<double> found;
    double nearest_m = std::numeric_limits<double>::max();
    double before_m = 0.0;
    for (std::size_t i = 1; i < path_m.size(); ++i) {
        const Vec2 bone_m = path_m[i] - path_m[i - 1];
        const double across = cross(bone_m, force_N);
        const double part = cross(point_m - path_m[i - 1], force_N) / across;
        if (std::abs(across) > 1.0e-9 * bone_m.norm() * force_N.norm() && part >= 0.0 &&
            part <= 1.0) {
            const double away_m = (path_m[i - 1] + part * bone_m - point_m).norm();
            if (away_m < nearest_m) {
                nearest_m = away_m;
                found = before_m + part * bone_m.norm();
            }
        }
        before_m += bone_m.norm();
    }
    return found;
}

/// The place of a force; the path is made longer to it where its line crosses none of the bones.
double place_on(std::vector<Vec2>& path_m, const Vec2& point_m, const Vec2& force_N) {
    if (const auto at_m = crossing(path_m, point_m, force_N))
        return *at_m;
    path_m.push_back(point_m);
    return path_length(path_m);
}

double direction_rad(const Vec2& arrow) {
    return std::atan2(arrow.y(), arrow.x());
}

/// The effort of a muscle known by its arm: at the bone near the joint, pulling back towards it.
Effort effort_of_arm(const std::string& name, double arm_m, double turns, const Lever& lever) {
    const double at_m = std::min(kInsertionInArms * arm_m, 0.9 * path_length(lever.path_m));
    const Vec2 bone = point_at(lever.path_m, at_m);
    const double angle_rad = std::asin(std::min(1.0, arm_m / bone.norm()));
    const Vec2 along = bone.normalized();
    const Vec2 across(-along.y(), along.x());
    return {name, at_m,
            direction_rad(-std::cos(angle_rad) * along + turns * std::sin(angle_rad) * across)};
}

void add_loads(const FreeBody& free, const Plane& plane, Lever& lever) {
    lever.loads.clear();
    for (const NamedForce& load : free.loads) {
        const Vec2 force_N = plane.arrow(load.force_N);
        if (force_N.norm() < kNoForce_N)
            continue;
        const double at_m = place_on(lever.path_m, plane.place(load.point_m), force_N);
        if (std::abs(force_N.x()) < kNoForce_N && force_N.y() < 0.0)
            lever.loads.push_back({load.name, Weight{at_m, -force_N.y() / lever.gravity_m_s2}});
        else
            lever.loads.push_back(
                {load.name, PointForce{at_m, force_N.norm(), direction_rad(force_N)}});
    }
    if (const double couple_Nm = free.couple_Nm.dot(plane.axis()); std::abs(couple_Nm) > kNoForce_N)
        lever.loads.push_back({"held twist", Couple{couple_Nm}});
}

void add_own_weight(const FreeBody& free, const Plane& plane, Lever& lever) {
    double mass_kg = 0.0;
    Vec3 moment = Vec3::Zero();
    for (const SegmentWeight& segment : free.segments) {
        mass_kg += segment.mass_kg;
        moment += segment.mass_kg * segment.centre_m;
    }
    if (mass_kg <= 0.0)
        return;
    lever.own_weight = {
        mass_kg, place_on(lever.path_m, plane.place(Vec3(moment / mass_kg)), Vec2(0.0, -1.0))};
}

/// Torque of all but the effort about the joint, counter-clockwise in the plane [N·m].
double outside_torque_Nm(const FreeBody& free, const Plane& plane) {
    Resultant all = resultant_about(free.axis_m, outside_forces(free));
    return (all.torque_Nm + free.couple_Nm).dot(plane.axis());
}

Effort effort_of(const Pull* mover, double turns, const Plane& plane, Lever& lever) {
    if (mover == nullptr)
        return effort_of_arm("muscles", kDrawnArm_m, turns, lever);
    if (mover->line) {
        const Vec2 pull = plane.arrow(mover->line->direction);
        const Vec2 from_m = plane.place(mover->line->insertion_m);
        if (const auto at_m = crossing(lever.path_m, from_m, pull); at_m && pull.norm() > 0.2)
            return {mover->muscle, *at_m, direction_rad(pull)};
    }
    return effort_of_arm(mover->muscle, std::abs(mover->arm_m), turns, lever);
}

std::optional<LimbShape> limb_of_joint(Joint joint) {
    switch (joint) {
    case Joint::right_elbow:
    case Joint::left_elbow:
        return LimbShape::forearm;
    case Joint::right_shoulder:
    case Joint::left_shoulder:
        return LimbShape::arm;
    default:
        return std::nullopt;
    }
}

SetupHead head_for(const BodySetup& setup, Joint joint, bool muscle_is_drawn) {
    const std::string_view name = joint_info(joint).label;
    SetupHead head;
    head.name = fmt::format("{}: {}", setup.head.name, name);
    head.description =
        fmt::format("All beyond the {} as one lever: place axis, effort and load by hand.", name);
    head.place = setup.head.place;
    head.note =
        fmt::format("The free body is all beyond the {}, taken as stiff. Forces stand where "
                    "their lines cross the bones, so that every moment arm is the body's "
                    "own.{} An estimate for teaching, not medical advice.",
                    name,
                    muscle_is_drawn ? " No muscle of this movement is on file: the effort's "
                                      "arm of 4 cm is made up."
                                    : "");
    head.units = setup.head.units;
    return head;
}

} // namespace

tl::expected<LeverSetup, std::string> lever_of_joint(const BodySetup& setup, const BodyCase& posed,
                                                     const BodyResult& solved, Hinge hinge,
                                                     const Pull* mover) {
    const FreeBody free = free_body_at(posed, solved, hinge);
    if (std::abs(free.axis_direction.y()) > kMostUpright)
        return tl::unexpected(std::string(
            "The axis stands upright here: weights turn nothing about it, and on the bench it is "
            "weights that turn a lever."));
    const Plane plane(free.axis_m, free.axis_direction);
    const Joint joint = hinge_info(hinge).joint;
    const bool is_known = mover != nullptr && std::abs(mover->arm_m) > 1.0e-3;
    LeverSetup made;
    made.head = head_for(setup, joint, !is_known);
    made.limb = limb_of_joint(joint);
    Lever& lever = made.lever;
    lever.path_m = bones(posed.body, solved.placement, joint_info(joint).segment, plane);
    if (path_length(lever.path_m) < kEndOn_m)
        return tl::unexpected(std::string("The limb is seen end-on here: it is no lever in this "
                                          "plane. Choose another moment or another axis."));
    lever.axis_at_m = 0.0;
    // What of its weight lies in the plane.
    const double upright = free.axis_direction.y();
    lever.gravity_m_s2 = posed.gravity_m_s2 * std::sqrt(1.0 - upright * upright);
    add_loads(free, plane, lever);
    add_own_weight(free, plane, lever);
    const double turns = outside_torque_Nm(free, plane) > 0.0 ? -1.0 : 1.0;
    lever.effort = effort_of(is_known ? mover : nullptr, turns, plane, lever);
    if (const auto checked = solve_lever(lever); !checked)
        return tl::unexpected(fmt::format("This joint makes no lever: {} should be {}.",
                                          checked.error().key, checked.error().expected));
    return made;
}

} // namespace steelyard::setup

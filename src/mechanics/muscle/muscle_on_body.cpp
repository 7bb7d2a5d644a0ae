#include "mechanics/muscle/muscle_on_body.h"

#include "mechanics/body/landmarks.h"
#include "mechanics/muscle/movers.h"
#include "mechanics/portable.h"

#include <Eigen/Geometry>

#include <cmath>

namespace steelyard::mechanics {
namespace {

Segment segment_beyond(Hinge hinge) {
    return joint_info(hinge_info(hinge).joint).segment;
}

/// True when a muscle, listed for the right side, is asked for at the left.
bool is_mirrored(const Muscle& muscle, Hinge hinge) {
    return muscle.hinge && *muscle.hinge != hinge;
}

BodyPoint mirrored_point(BodyPoint point) {
    point.segment = segment_info(point.segment).mirror;
    point.offset_m.z() = -point.offset_m.z();
    return point;
}

struct SidedBody {
    const BodyCase& body_case;
    const Placement& placement;
    bool mirrored;
};

/// Rotation of the bone to which a segment's muscles are attached: the segment's own, but in the
/// forearm that of the ulna, which does not follow when the palm turns.
Mat3 bone_rotation(Segment segment, const SidedBody& on) {
    const Mat3& rotation = on.placement[segment].rotation;
    if (segment != Segment::right_forearm && segment != Segment::left_forearm)
        return rotation;
    const Hinge turn = segment == Segment::right_forearm ? Hinge::right_forearm_rotation
                                                         : Hinge::left_forearm_rotation;
    // Back by Rodrigues' formula: what lies along the axis stays, the rest turns about it.
    const portable::SineCosine back = portable::sine_cosine(-on.body_case.pose[turn]);
    const Vec3 axis = on.placement.axis(turn);
    Mat3 turned;
    for (Eigen::Index i = 0; i < 3; ++i) {
        const Vec3 column = rotation.col(i);
        const Vec3 along = axis.dot(column) * axis;
        turned.col(i) = along + back.cosine * (column - along) + back.sine * axis.cross(column);
    }
    return turned;
}

tl::expected<Vec3, MechanicsError> point_on_body(const BodyPoint& point, const SidedBody& on) {
    const BodyPoint sided = on.mirrored ? mirrored_point(point) : point;
    return local_point(on.body_case.body, sided).map([&](const Vec3& local_m) {
        return Vec3(on.placement[sided.segment].joint_m +
                    bone_rotation(sided.segment, on) * local_m);
    });
}

tl::expected<LineOfPull, MechanicsError> on_body(const AttachmentsOnBody& line,
                                                 const SidedBody& on) {
    const auto origin_m = point_on_body(line.origin, on);
    const auto insertion_m = point_on_body(line.insertion, on);
    if (!origin_m)
        return tl::unexpected(origin_m.error());
    if (!insertion_m)
        return tl::unexpected(insertion_m.error());
    return AttachmentLine{*origin_m, *insertion_m, line.wrap};
}

tl::expected<LineOfPull, MechanicsError> on_body(const FixedAngleOnBody& line,
                                                 const SidedBody& on) {
    const auto insertion_m = point_on_body(line.insertion, on);
    if (!insertion_m)
        return tl::unexpected(insertion_m.error());
    return FixedAngleLine{*insertion_m, line.angle_to_bone_rad, line.turns};
}

/// A foot on its ball or toes, which books take as a pivot of its own; a foot that stands flat, or
/// a joint farther up, has none but the joint.
bool stands_on_ball(const BodyForce& force, const BodyCase& body_case) {
    if (force.origin != ForceOrigin::contact)
        return false;
    const auto* ground = std::get_if<OnContacts>(&body_case.support);
    return is_toes(force.segment) || (ground && force.index < ground->contacts.size() &&
                                      ground->contacts[force.index].patch == Patch::ball);
}

/// Which of the loads of free_body_at is the ball of the foot's contact with the ground.
std::optional<std::size_t> support_among_loads(const BodyCase& body_case, const BodyResult& result,
                                               Hinge hinge) {
    if (!is_foot(segment_beyond(hinge)))
        return std::nullopt;
    std::size_t load = 0;
    for (const BodyForce& force : result.forces) {
        if (!acts_distally(force, hinge))
            continue;
        if (stands_on_ball(force, body_case))
            return load;
        ++load;
    }
    return std::nullopt;
}

/// The bone that works as the lever: its direction from the joint and its length.
void set_bar(FreeBody& free, const BodyCase& body_case, const BodyResult& result, Segment first) {
    const Mat3& rotation = result.placement[first].rotation;
    const Vec3& tip_m = body_case.body[first].tip_m;
    // The foot is taken from heel to toes: its tip lies below the ankle as well as in front of it.
    const Vec3 along_m = is_foot(first) ? Vec3(tip_m.x(), 0.0, 0.0) : tip_m;
    free.along = (rotation * along_m).normalized();
    free.bone_m = along_m.norm();
    if (first == Segment::trunk || first == Segment::head)
        free.bar = LeverBar::vertebra;
}

} // namespace

namespace {

/// What a force and its couple do about an axis, as the force alone along a line beside its own:
/// the couple of a frame's hold is as much a load as its push. A couple without a force has no such
/// line and stays.
struct OneLine {
    Vec3 point_m;
    Vec3 couple_Nm; ///< what is left of the couple
};

OneLine with_its_couple(const BodyForce& force, const Vec3& axis) {
    constexpr double kNoForce_N = 1e-6;
    const double along_N = force.force_N.dot(axis);
    const double across2_N2 = force.force_N.squaredNorm() - along_N * along_N;
    if (across2_N2 < kNoForce_N * kNoForce_N)
        return {force.point_m, force.couple_Nm};
    const double couple_Nm = force.couple_Nm.dot(axis);
    return {force.point_m + couple_Nm / across2_N2 * force.force_N.cross(axis),
            force.couple_Nm - couple_Nm * axis};
}

} // namespace

FreeBody free_body_at(const BodyCase& body_case, const BodyResult& result, Hinge hinge) {
    const Segment first = segment_beyond(hinge);
    FreeBody free;
    free.name = "all beyond the " + std::string(joint_info(hinge_info(hinge).joint).label);
    free.axis_m = result.placement.axis_point_m(hinge);
    free.axis_direction = result.placement.axis(hinge);
    set_bar(free, body_case, result, first);
    free.gravity_m_s2 = Vec3(0.0, -body_case.gravity_m_s2, 0.0);
    for (const SegmentInfo& info : all_segments())
        if (is_at_or_beyond(info.segment, first))
            free.segments.push_back({std::string(info.label), body_case.body[info.segment].mass_kg,
                                     result.placement[info.segment].com_m, Vec3::Zero(),
                                     info.segment != first});
    for (const BodyForce& force : result.forces) {
        if (!acts_distally(force, hinge))
            continue;
        const std::string name = force.origin == ForceOrigin::resistance
                                     ? body_case.resistances[force.index].name
                                     : std::string("support");
        // A frame holds a bone by force and couple, so that its hold has no one place along the
        // bone: it is taken at the far end, like a load beyond it.
        const bool held = force.origin == ForceOrigin::held;
        const OneLine line = held ? with_its_couple(force, free.axis_direction)
                                  : OneLine{force.point_m, force.couple_Nm};
        free.loads.push_back({name, line.point_m, force.force_N, held || force.segment != first});
        free.couple_Nm += line.couple_Nm;
    }
    return free;
}

std::vector<Muscle> muscles_at(const std::vector<Muscle>& muscles, Hinge hinge) {
    std::vector<Muscle> found;
    for (const Muscle& muscle : muscles)
        if (muscle.hinge == hinge || muscle.hinge == hinge_info(hinge).mirror)
            found.push_back(muscle);
    return found;
}

tl::expected<Pull, MechanicsError> pull_on_body(const Muscle& muscle, const BodyCase& body_case,
                                                const BodyResult& result, Hinge hinge) {
    if (!muscle.is_known())
        return pull_with_arm(muscle.name, 0.0);
    std::optional<LineOfPull> line;
    if (muscle.line) {
        const SidedBody on{body_case, result.placement, is_mirrored(muscle, hinge)};
        auto placed =
            std::visit([&on](const auto& spots) { return on_body(spots, on); }, *muscle.line);
        if (!placed) {
            placed.error().key = muscle.name + ".line." + placed.error().key;
            return tl::unexpected(placed.error());
        }
        line = *placed;
    }
    const PosedSide posed{body_case.pose, is_mirrored(muscle, hinge)};
    return pull_at(muscle, body_case.pose[hinge], line,
                   {result.placement.axis_point_m(hinge), result.placement.axis(hinge)}, &posed);
}

tl::expected<HingeMuscles, MechanicsError> solve_muscles_at(const BodyCase& body_case,
                                                            const BodyResult& result, Hinge hinge,
                                                            const std::vector<Muscle>& muscles,
                                                            SharingRule rule) {
    HingeMuscles at;
    Movers movers = movers_of(muscles, body_case.pose, hinge, result.muscle(hinge));
    for (std::size_t i = 0; i < muscles.size(); ++i) {
        auto pull = pull_on_body(muscles[i], body_case, result, hinge);
        if (!pull)
            return tl::unexpected(pull.error());
        pull->takes_part = movers.take_part[i];
        at.pulls.push_back(std::move(*pull));
    }
    const JointDemand demand{result.muscle(hinge), result.joint_force(segment_beyond(hinge))};
    const JointAxis axis{result.placement.axis_point_m(hinge), result.placement.axis(hinge)};
    const bool asked = std::abs(demand.torque_Nm) >= kNothingAsked_Nm;
    const bool unsaid = movers.missing && (asked || muscles.empty());
    tl::expected<MuscleSolution, MechanicsError> solution =
        unsaid ? not_modelled(demand, at.pulls, *std::move(movers.missing))
               : solve_muscles(demand, at.pulls, rule, axis);
    if (!solution)
        return tl::unexpected(solution.error());
    at.solution = std::move(*solution);
    const FreeBody free = free_body_at(body_case, result, hinge);
    const auto support = support_among_loads(body_case, result, hinge);
    for (std::size_t i = 0; i < at.pulls.size(); ++i) {
        at.levers.push_back(lever_about_joint(free, at.pulls, at.solution, i));
        at.levers_about_support.push_back(
            support ? lever_about_support(free, at.pulls, at.solution, i, *support) : std::nullopt);
    }
    return at;
}

} // namespace steelyard::mechanics

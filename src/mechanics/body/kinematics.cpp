#include "mechanics/body/kinematics.h"

#include "mechanics/body/tree.h"
#include "mechanics/portable.h"

#include <cmath>

namespace steelyard::mechanics {

namespace {

/// Turns a frame about one of its own axes: the other two columns mix.
template <typename Frame>
void turn(Frame& frame, std::size_t axis, const portable::SineCosine& angle) {
    const auto b = static_cast<Eigen::Index>((axis + 1) % 3);
    const auto c = static_cast<Eigen::Index>((axis + 2) % 3);
    const Vec3 old_b = frame.col(b);
    const Vec3 old_c = frame.col(c);
    frame.col(b) = angle.cosine * old_b + angle.sine * old_c;
    frame.col(c) = angle.cosine * old_c - angle.sine * old_b;
}

/// All hinges' turns about the positive axes of their frames.
struct Turns {
    PerHinge sine;
    PerHinge cosine;

    explicit Turns(const Pose& pose) {
        for (std::size_t i = 0; i < kHingeCount; ++i) {
            const portable::SineCosine angle =
                portable::sine_cosine_near(tree::kTurn[i].sign * pose.angle_rad[i]);
            sine[i] = angle.sine;
            cosine[i] = angle.cosine;
        }
    }
    portable::SineCosine operator[](std::size_t hinge) const {
        return {sine[hinge], cosine[hinge]};
    }
};

/// Orientation of the anchored segment: turn, then lean, then side lean.
Mat3 anchor_rotation(const Anchor& anchor) {
    Mat3 rotation = Mat3::Identity();
    const auto by = [&](std::size_t axis, double angle_rad) {
        turn(rotation, axis, portable::sine_cosine(angle_rad));
    };
    by(1, -anchor.turn_rad);
    by(2, -anchor.lean_rad);
    by(0, anchor.side_lean_rad);
    return rotation;
}

/// Places all segments from the pelvis outwards, the pelvis where the placement has it.
void place_outwards(const Body& body, const Turns& turns, Placement& placement) {
    SegmentFrame& pelvis = placement.segments[0];
    pelvis.com_m = pelvis.at(body.segments[0].com_m);
    for (std::size_t i = 1; i < kSegmentCount; ++i) {
        const SegmentFrame& parent = placement.segments[tree::kParent[i]];
        SegmentFrame& frame = placement.segments[i];
        frame.rotation = parent.rotation;
        frame.joint_m = parent.at(body.segments[i].joint_m);
        const std::size_t end = tree::kFirstHinge[i] + std::size_t{tree::kHingesOf[i]};
        for (std::size_t hinge = tree::kFirstHinge[i]; hinge < end; ++hinge) {
            const tree::Turn& axis = tree::kTurn[hinge];
            placement.axes[hinge] = axis.sign * frame.rotation.col(axis.axis);
            if (turns.sine[hinge] != 0.0)
                turn(frame.rotation, axis.axis, turns[hinge]);
        }
        frame.com_m = frame.at(body.segments[i].com_m);
    }
}

/// Frame of a segment seen from the pelvis.
SegmentFrame frame_in_pelvis(const Body& body, const Turns& turns, std::size_t segment) {
    SegmentFrame frame;
    for (std::size_t i = segment; i != 0; i = tree::kParent[i]) {
        Mat3 joint = Mat3::Identity();
        for (std::size_t k = 0; k < tree::kHingesOf[i]; ++k) {
            const std::size_t hinge = tree::kFirstHinge[i] + k;
            turn(joint, tree::kTurn[hinge].axis, turns[hinge]);
        }
        frame.rotation = joint * frame.rotation;
        frame.joint_m = i == segment ? body.segments[i].joint_m
                                     : Vec3(body.segments[i].joint_m + joint * frame.joint_m);
    }
    return frame;
}

} // namespace

const Vec3& Placement::axis_point_m(Hinge hinge) const {
    return (*this)[joint_info(hinge_info(hinge).joint).segment].joint_m;
}

void place(const Body& body, const Pose& pose, Placement& placement) {
    const Anchor& anchor = pose.anchor;
    const Turns turns(pose);
    const SegmentFrame seen = frame_in_pelvis(body, turns, index_of(anchor.point.segment));
    const Vec3 point_m = seen.at(local_point(body, anchor.point).value_or(Vec3::Zero()));
    SegmentFrame& pelvis = placement.segments[0];
    pelvis.rotation = anchor_rotation(anchor) * seen.rotation.transpose();
    pelvis.joint_m = anchor.at_m - pelvis.rotation * point_m;
    place_outwards(body, turns, placement);
}

Placement place(const Body& body, const Pose& pose) {
    Placement placement;
    place(body, pose, placement);
    return placement;
}

namespace {

/// What the hinges of one joint add to the turning of its distal segment.
struct JointTurning {
    Vec3 velocity = Vec3::Zero();
    Vec3 acceleration = Vec3::Zero(); ///< without the part that the parent's turning causes
};

/// @param parent_rad_s  angular velocity of the proximal segment
JointTurning turning_of(const Placement& placement, const Motion& motion, std::size_t segment,
                        const Vec3& parent_rad_s) {
    JointTurning turning;
    for (std::size_t k = 0; k < tree::kHingesOf[segment]; ++k) {
        const std::size_t hinge = tree::kFirstHinge[segment] + k;
        const Vec3& axis = placement.axes[hinge];
        const Vec3 rate = motion.rate_rad_s[hinge] * axis;
        turning.acceleration += motion.acceleration_rad_s2[hinge] * axis +
                                (parent_rad_s + turning.velocity).cross(rate);
        turning.velocity += rate;
    }
    return turning;
}

/// Velocity and acceleration of one point of a rigid segment from those of another.
void carry_over(const Vec3& arm_m, SegmentMotion& motion) {
    const Vec3& rate = motion.angular_velocity_rad_s;
    const Vec3 swing = rate.cross(arm_m);
    motion.joint_velocity_m_s += swing;
    motion.joint_acceleration_m_s2 +=
        motion.angular_acceleration_rad_s2.cross(arm_m) + rate.cross(swing);
}

/// From a segment at its joint to its parent at the parent's joint.
SegmentMotion parent_motion(const Placement& placement, const Motion& motion, std::size_t segment,
                            const SegmentMotion& child) {
    Vec3 joint_rad_s = Vec3::Zero();
    for (std::size_t k = 0; k < tree::kHingesOf[segment]; ++k) {
        const std::size_t hinge = tree::kFirstHinge[segment] + k;
        joint_rad_s += motion.rate_rad_s[hinge] * placement.axes[hinge];
    }
    SegmentMotion parent = child;
    parent.angular_velocity_rad_s -= joint_rad_s;
    parent.angular_acceleration_rad_s2 -=
        turning_of(placement, motion, segment, parent.angular_velocity_rad_s).acceleration;
    carry_over(placement.segments[tree::kParent[segment]].joint_m -
                   placement.segments[segment].joint_m,
               parent);
    return parent;
}

} // namespace

void move(const Pose& pose, const Placement& placement, const Motion& motion, BodyMotion& moving) {
    // The anchored segment rests; walk from it to the pelvis, then outwards.
    SegmentMotion pelvis;
    for (std::size_t i = index_of(pose.anchor.point.segment); i != 0; i = tree::kParent[i])
        pelvis = parent_motion(placement, motion, i, pelvis);
    moving[0] = pelvis;
    for (std::size_t i = 1; i < kSegmentCount; ++i) {
        const std::size_t parent = tree::kParent[i];
        SegmentMotion segment = moving[parent];
        carry_over(placement.segments[i].joint_m - placement.segments[parent].joint_m, segment);
        const JointTurning turning =
            turning_of(placement, motion, i, segment.angular_velocity_rad_s);
        segment.angular_velocity_rad_s += turning.velocity;
        segment.angular_acceleration_rad_s2 += turning.acceleration;
        moving[i] = segment;
    }
}

BodyMotion move(const Pose& pose, const Placement& placement, const Motion& motion) {
    BodyMotion moving;
    move(pose, placement, motion, moving);
    return moving;
}

Vec3 acceleration_at(const SegmentFrame& frame, const SegmentMotion& motion, const Vec3& point_m) {
    const Vec3 arm_m = point_m - frame.joint_m;
    const Vec3& rate = motion.angular_velocity_rad_s;
    return motion.joint_acceleration_m_s2 + motion.angular_acceleration_rad_s2.cross(arm_m) +
           rate.cross(rate.cross(arm_m));
}

Vec3 centre_of_mass(const Body& body, const Placement& placement) {
    Vec3 moment = Vec3::Zero();
    double mass_kg = 0.0;
    for (std::size_t i = 0; i < kSegmentCount; ++i) {
        moment += body.segments[i].mass_kg * placement.segments[i].com_m;
        mass_kg += body.segments[i].mass_kg;
    }
    return mass_kg > 0.0 ? Vec3(moment / mass_kg) : placement.segments[0].joint_m;
}

} // namespace steelyard::mechanics

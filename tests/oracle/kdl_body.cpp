#include "oracle/kdl_body.h"

#include <algorithm>

namespace steelyard::oracle {

using namespace mechanics;

namespace {

KDL::Vector axis_of(const HingeInfo& hinge) {
    Vec3 axis = Vec3::Zero();
    axis[hinge.axis] = hinge.sign;
    return to_kdl(axis);
}

/// KDL wants the tip as it lies at angle 0, seen from the segment before: at the joint itself.
KDL::Joint joint_of_hinge(const HingeInfo& hinge, const KDL::Vector& origin, double direction) {
    return {std::string(hinge.name), origin, direction * axis_of(hinge), KDL::Joint::RotAxis};
}

/// Hinges of a segment's joint, nearest to the pelvis first.
std::vector<HingeInfo> hinges_of(Segment segment) {
    const SegmentInfo& info = segment_info(segment);
    std::vector<HingeInfo> hinges;
    for (std::size_t k = 0; k < info.hinge_count; ++k)
        hinges.push_back(hinge_info(static_cast<Hinge>(info.first_hinge + k)));
    return hinges;
}

std::vector<Segment> way_to_pelvis(Segment from) {
    std::vector<Segment> way{from};
    while (way.back() != Segment::pelvis)
        way.push_back(segment_info(way.back()).parent);
    return way;
}

/// From a segment to its parent: hinges in reverse order and sense, then on to the parent's joint.
void add_inwards(KdlChain& to, const Body& body, Segment from) {
    std::vector<HingeInfo> hinges = hinges_of(from);
    std::reverse(hinges.begin(), hinges.end());
    const Segment parent = segment_info(from).parent;
    for (std::size_t k = 0; k < hinges.size(); ++k) {
        const bool last = k + 1 == hinges.size();
        const KDL::Frame tip(last ? to_kdl(Vec3(-body[from].joint_m)) : KDL::Vector::Zero());
        to.chain.addSegment(KDL::Segment(
            std::string(hinges[k].name), joint_of_hinge(hinges[k], KDL::Vector::Zero(), -1.0), tip,
            last ? inertia_of(body[parent]) : KDL::RigidBodyInertia::Zero()));
        to.hinges.push_back(hinges[k].hinge);
    }
    to.segments.push_back(parent);
    to.at.push_back(to.chain.getNrOfSegments() - 1);
}

void add_outwards(KdlChain& to, const Body& body, Segment segment) {
    const std::vector<HingeInfo> hinges = hinges_of(segment);
    for (std::size_t k = 0; k < hinges.size(); ++k) {
        const bool last = k + 1 == hinges.size();
        const KDL::Vector origin = k == 0 ? to_kdl(body[segment].joint_m) : KDL::Vector::Zero();
        to.chain.addSegment(KDL::Segment(
            std::string(hinges[k].name), joint_of_hinge(hinges[k], origin, 1.0), KDL::Frame(origin),
            last ? inertia_of(body[segment]) : KDL::RigidBodyInertia::Zero()));
        to.hinges.push_back(hinges[k].hinge);
    }
    to.segments.push_back(segment);
    to.at.push_back(to.chain.getNrOfSegments() - 1);
}

} // namespace

KDL::Vector to_kdl(const Vec3& v) {
    return {v.x(), v.y(), v.z()};
}

KDL::Rotation to_kdl(const Mat3& r) {
    return {r(0, 0), r(0, 1), r(0, 2), r(1, 0), r(1, 1), r(1, 2), r(2, 0), r(2, 1), r(2, 2)};
}

KDL::RigidBodyInertia inertia_of(const SegmentBody& segment) {
    const Mat3& i = segment.inertia_kg_m2;
    return KDL::RigidBodyInertia(
        segment.mass_kg, to_kdl(segment.com_m),
        KDL::RotationalInertia(i(0, 0), i(1, 1), i(2, 2), i(0, 1), i(0, 2), i(1, 2)));
}

KDL::Tree tree_of(const Body& body) {
    KDL::Tree tree(std::string(segment_info(Segment::pelvis).name));
    for (const SegmentInfo& info : all_segments()) {
        const std::vector<HingeInfo> hinges = hinges_of(info.segment);
        std::string hook(segment_info(info.parent).name);
        for (std::size_t k = 0; k < hinges.size(); ++k) {
            const bool last = k + 1 == hinges.size();
            const std::string name(last ? info.name : hinges[k].name);
            const KDL::Vector origin =
                k == 0 ? to_kdl(body[info.segment].joint_m) : KDL::Vector::Zero();
            tree.addSegment(
                KDL::Segment(name, joint_of_hinge(hinges[k], origin, 1.0), KDL::Frame(origin),
                             last ? inertia_of(body[info.segment]) : KDL::RigidBodyInertia::Zero()),
                hook);
            hook = name;
        }
    }
    return tree;
}

KdlChain chain_between(const Body& body, Segment resting, Segment tip) {
    KdlChain chain;
    for (const Segment segment : way_to_pelvis(resting))
        if (segment != Segment::pelvis)
            add_inwards(chain, body, segment);
    std::vector<Segment> outwards = way_to_pelvis(tip);
    std::reverse(outwards.begin(), outwards.end());
    for (const Segment segment : outwards)
        if (segment != Segment::pelvis)
            add_outwards(chain, body, segment);
    return chain;
}

KDL::Wrench wrench_on(const SegmentFrame& frame, const BodyForce& force) {
    const Vec3 force_N = frame.rotation.transpose() * force.force_N;
    const Vec3 couple_Nm = frame.rotation.transpose() * force.couple_Nm;
    const Vec3 point_m = frame.rotation.transpose() * (force.point_m - frame.joint_m);
    return {to_kdl(force_N), to_kdl(Vec3(couple_Nm + point_m.cross(force_N)))};
}

} // namespace steelyard::oracle

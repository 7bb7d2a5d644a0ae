#pragma once
// A body handed to Orocos KDL, an independent library for chains of rigid segments.

#include "mechanics/body/solve_body.h"

#include <kdl/chain.hpp>
#include <kdl/jntarray.hpp>
#include <kdl/tree.hpp>
#include <string>
#include <vector>

namespace steelyard::oracle {

/// The whole body as a tree that hangs from its pelvis, one massless KDL segment for each hinge but
/// the last of a joint. Segments are called as ours.
KDL::Tree tree_of(const mechanics::Body& body);

/// A chain of segments from one that rests in the world to another, through the pelvis: the way
/// inwards has its joints turned round.
struct KdlChain {
    KDL::Chain chain;
    std::vector<mechanics::Hinge> hinges;     ///< one for each KDL joint
    std::vector<mechanics::Segment> segments; ///< one for each KDL segment that has mass
    std::vector<unsigned> at;                 ///< KDL's number of each of them
};
KdlChain chain_between(const mechanics::Body& body, mechanics::Segment resting,
                       mechanics::Segment tip);

KDL::Vector to_kdl(const mechanics::Vec3& v);
KDL::Rotation to_kdl(const mechanics::Mat3& rotation);
KDL::RigidBodyInertia inertia_of(const mechanics::SegmentBody& segment);

/// A force in the frame of its segment, as KDL takes external forces.
KDL::Wrench wrench_on(const mechanics::SegmentFrame& frame, const mechanics::BodyForce& force);

} // namespace steelyard::oracle

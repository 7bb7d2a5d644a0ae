#include "mechanics/range/inverse_kinematics.h"

#include "mechanics/body/kinematics.h"

#include <Eigen/Cholesky>

#include <algorithm>
#include <cmath>
#include <string>

namespace steelyard::mechanics {

namespace {

constexpr int kMostSteps = 60;
/// Damping against the size of J Jᵀ, whose entries are squares of limb lengths: between a
/// thousandth of and a thousand times an arm's length squared.
constexpr double kLeastDamping_m2 = 1.0e-8;
constexpr double kMostDamping_m2 = 1.0e2;
/// A step that brings the point nearer by less than this is the last one [m].
constexpr double kNoGain_m = 1.0e-9;
/// The second way has to end nearer by this to be taken [m].
constexpr double kWorthwhile_m = 1.0e-3;

/// The world seen from the anchored segment: how a hinge carries a point along.
class Search {
public:
    Search(const Body& body, const Pose& pose, const ReachGoal& goal, const Vec3& local_m,
           const std::vector<FreeHinge>& hinges)
        : body_(body), pose_(pose), goal_(goal), local_m_(local_m), hinges_(hinges),
          counts_(Mat3::Identity() - goal.unseen * goal.unseen.transpose()) {}

    /// Goes downhill from angles of the free hinges.
    /// @return the miss that is left [m]
    double descend(std::vector<double>& angles) {
        double damping_m2 = 1.0e-4;
        double miss_m = put(angles);
        for (int step = 0; step < kMostSteps && miss_m > kReached_m; ++step) {
            const std::vector<double> next = stepped(angles, damping_m2);
            const double next_m = put(next);
            if (next_m < miss_m) {
                const double gain_m = miss_m - next_m;
                angles = next;
                miss_m = next_m;
                damping_m2 = std::max(0.2 * damping_m2, kLeastDamping_m2);
                if (gain_m < kNoGain_m)
                    break;
                continue;
            }
            damping_m2 *= 5.0;
            if (damping_m2 > kMostDamping_m2)
                break;
            put(angles);
        }
        return put(angles);
    }

    const Pose& pose() const { return pose_; }

private:
    /// Poses the body so. @return the miss [m]
    double put(const std::vector<double>& angles) {
        for (std::size_t i = 0; i < hinges_.size(); ++i) {
            const double turn_rad = angles[i] - pose_[hinges_[i].hinge];
            pose_[hinges_[i].hinge] = angles[i];
            if (hinges_[i].with_mirror)
                pose_[hinge_info(hinges_[i].hinge).mirror] += turn_rad;
        }
        place(body_, pose_, placement_);
        at_m_ = placement_[goal_.point.segment].at(local_m_);
        return miss().norm();
    }

    Vec3 miss() const { return counts_ * (goal_.target_m - at_m_); }

    /// How the point moves when a hinge opens, the anchored segment at rest [m/rad].
    Vec3 column(Hinge hinge) const {
        const Segment carried = joint_info(hinge_info(hinge).joint).segment;
        const bool point_beyond = is_at_or_beyond(goal_.point.segment, carried);
        const bool anchor_beyond = is_at_or_beyond(pose_.anchor.point.segment, carried);
        if (point_beyond == anchor_beyond)
            return Vec3::Zero();
        const Vec3 moved = placement_.axis(hinge).cross(at_m_ - placement_.axis_point_m(hinge));
        return point_beyond ? moved : Vec3(-moved);
    }

    Vec3 column(const FreeHinge& free) const {
        Vec3 moved = column(free.hinge);
        if (free.with_mirror)
            moved += column(hinge_info(free.hinge).mirror);
        return counts_ * moved;
    }

    /// Δθ = Jᵀ (J Jᵀ + λ²)⁻¹ e, without the hinges that would be pressed out of their range.
    std::vector<double> stepped(const std::vector<double>& angles, double damping_m2) const {
        std::vector<bool> blocked(hinges_.size(), false);
        std::vector<double> next = angles;
        for (std::size_t round = 0; round <= hinges_.size(); ++round) {
            Mat3 normal = damping_m2 * Mat3::Identity();
            for (std::size_t i = 0; i < hinges_.size(); ++i)
                if (!blocked[i])
                    normal += column(hinges_[i]) * column(hinges_[i]).transpose();
            const Vec3 pull = normal.ldlt().solve(miss());
            bool all_within = true;
            for (std::size_t i = 0; i < hinges_.size(); ++i) {
                if (blocked[i])
                    continue;
                const double wanted = angles[i] + column(hinges_[i]).dot(pull);
                next[i] = std::clamp(wanted, hinges_[i].range_rad.low, hinges_[i].range_rad.high);
                if (next[i] != wanted && next[i] == angles[i]) {
                    blocked[i] = true;
                    all_within = false;
                }
            }
            if (all_within)
                break;
        }
        return next;
    }

    const Body& body_;
    Pose pose_;
    const ReachGoal& goal_;
    Vec3 local_m_;
    const std::vector<FreeHinge>& hinges_;
    Mat3 counts_; ///< takes the unseen part out of a vector
    Placement placement_;
    Vec3 at_m_ = Vec3::Zero();
};

bool at_an_end(const std::vector<double>& angles, const std::vector<FreeHinge>& hinges) {
    for (std::size_t i = 0; i < hinges.size(); ++i)
        if (angles[i] <= hinges[i].range_rad.low || angles[i] >= hinges[i].range_rad.high)
            return true;
    return false;
}

} // namespace

tl::expected<ReachedPose, MechanicsError> reach_point(const Body& body, const Pose& pose,
                                                      const ReachGoal& goal,
                                                      const std::vector<FreeHinge>& hinges) {
    const auto local_m = local_point(body, goal.point);
    if (!local_m)
        return tl::unexpected(local_m.error());
    std::vector<double> angles;
    std::vector<double> middle;
    for (std::size_t i = 0; i < hinges.size(); ++i) {
        const Interval& range = hinges[i].range_rad;
        const double angle = pose[hinges[i].hinge];
        if (!(range.low <= angle && angle <= range.high))
            return tl::unexpected(MechanicsError{Fault::out_of_range,
                                                 "hinges[" + std::to_string(i) + "].range",
                                                 "a range that holds the present angle"});
        angles.push_back(angle);
        middle.push_back(0.5 * (range.low + range.high));
    }
    Search search(body, pose, goal, *local_m, hinges);
    const double miss_m = search.descend(angles);
    if (miss_m > kWorthwhile_m && !at_an_end(angles, hinges)) {
        Search other(body, pose, goal, *local_m, hinges);
        const double other_m = other.descend(middle);
        if (other_m < miss_m - kWorthwhile_m)
            return ReachedPose{other.pose(), other_m};
    }
    return ReachedPose{search.pose(), miss_m};
}

} // namespace steelyard::mechanics

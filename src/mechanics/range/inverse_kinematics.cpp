#include "mechanics/range/inverse_kinematics.h"

#include "mechanics/body/kinematics.h"
#include "mechanics/bounds.h"

#include <Eigen/Cholesky>

#include <algorithm>
#include <cmath>
#include <utility>

namespace steelyard::mechanics {

namespace {

constexpr int kMostSteps = 60;
/// Damping against the size of J Jᵀ, whose entries are squares of limb lengths: between a
/// thousandth of and a thousand times an arm's length squared.
constexpr double kLeastDamping_m2 = 1.0e-8;
constexpr double kMostDamping_m2 = 1.0e2;
/// A step that brings the point nearer by less than this is the last one [m].
constexpr double kNoGain_m = 1.0e-9;
/// A bend that leads out of a dead point [rad].
constexpr double kNudge_rad = 0.1;
/// The second way has to end nearer by this to be taken [m].
constexpr double kWorthwhile_m = 1.0e-3;

/// A goal with what stays the same on the way to it.
struct Aim {
    ReachGoal goal;
    Vec3 local_m; ///< the point in its segment's frame
    Mat3 counts;  ///< takes out of a vector what does not count
    Vec3 at_m = Vec3::Zero();

    Aim(const ReachGoal& of, const Vec3& local)
        : goal(of), local_m(local),
          counts(of.only.isZero() ? Mat3(Mat3::Identity() - of.unseen * of.unseen.transpose())
                                  : Mat3(of.only * of.only.transpose())) {}
};

constexpr int kMostFree = static_cast<int>(kHingeCount);
/// One number for each free hinge, and for each two of them; without storage of their own.
using PerFree = Eigen::Matrix<double, Eigen::Dynamic, 1, Eigen::ColMajor, kMostFree, 1>;
using Equations =
    Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::ColMajor, kMostFree, kMostFree>;

/// The world seen from the anchored segment: how a hinge carries points along.
class Search {
public:
    Search(const Body& body, const Pose& pose, std::vector<Aim> aims,
           const std::vector<FreeHinge>& hinges)
        : body_(body), pose_(pose), aims_(std::move(aims)), hinges_(hinges),
          miss_(3 * static_cast<Eigen::Index>(aims_.size())),
          columns_(miss_.size(), static_cast<Eigen::Index>(hinges.size())) {}

    /// Goes downhill from angles of the free hinges; the pose is then there.
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
            put(angles);
            damping_m2 *= 5.0;
            if (damping_m2 > kMostDamping_m2)
                break;
        }
        return miss_m;
    }

    const Pose& pose() const { return pose_; }

private:
    template <typename Rows> static auto rows_of(Rows& rows, std::size_t aim) {
        return rows.template middleRows<3>(3 * static_cast<Eigen::Index>(aim));
    }

    /// Poses the body so. @return the miss [m]
    double put(const std::vector<double>& angles) {
        for (std::size_t i = 0; i < hinges_.size(); ++i) {
            double& angle_rad = pose_[hinges_[i].hinge];
            double& other_rad = pose_[hinge_info(hinges_[i].hinge).mirror];
            // Sides that are alike stay so to the last bit.
            if (hinges_[i].with_mirror)
                other_rad = other_rad == angle_rad ? angles[i] : other_rad + angles[i] - angle_rad;
            angle_rad = angles[i];
        }
        place(body_, pose_, placement_);
        for (std::size_t i = 0; i < aims_.size(); ++i) {
            Aim& aim = aims_[i];
            aim.at_m = placement_[aim.goal.point.segment].at(aim.local_m);
            rows_of(miss_, i) = aim.counts * (aim.goal.target_m - aim.at_m);
        }
        return miss_.norm();
    }

    /// How a point moves when a hinge opens, the anchored segment at rest [m/rad].
    Vec3 moved(const Aim& aim, Hinge hinge) const {
        const Segment carried = joint_info(hinge_info(hinge).joint).segment;
        const bool point_beyond = is_at_or_beyond(aim.goal.point.segment, carried);
        const bool anchor_beyond = is_at_or_beyond(pose_.anchor.point.segment, carried);
        if (point_beyond == anchor_beyond)
            return Vec3::Zero();
        const Vec3 way = placement_.axis(hinge).cross(aim.at_m - placement_.axis_point_m(hinge));
        return point_beyond ? way : Vec3(-way);
    }

    Vec3 moved(const Aim& aim, const FreeHinge& free) const {
        Vec3 way = moved(aim, free.hinge);
        if (free.with_mirror)
            way += moved(aim, hinge_info(free.hinge).mirror);
        return aim.counts * way;
    }

    void find_columns() {
        for (std::size_t i = 0; i < hinges_.size(); ++i) {
            auto column = columns_.col(static_cast<Eigen::Index>(i));
            for (std::size_t k = 0; k < aims_.size(); ++k)
                rows_of(column, k) = moved(aims_[k], hinges_[i]);
        }
    }

    /// Δθ = (Jᵀ J + λ²)⁻¹ Jᵀ e, without the hinges that would be pressed out of their range. The
    /// same step as Jᵀ (J Jᵀ + λ²)⁻¹ e, with one equation for each hinge: several points have more
    /// rows than a limb has hinges.
    std::vector<double> stepped(const std::vector<double>& angles, double damping_m2) {
        find_columns();
        const Eigen::Index count = columns_.cols();
        Equations all = columns_.transpose().lazyProduct(columns_);
        all.diagonal().array() += damping_m2;
        const PerFree pull = columns_.transpose().lazyProduct(miss_);
        PerFree free = PerFree::Ones(count); // 0 for a hinge that is pressed out of its range
        std::vector<double> next = angles;
        for (Eigen::Index round = 0; round <= count; ++round) {
            Equations normal = free.asDiagonal() * all * free.asDiagonal();
            normal.diagonal().array() += 1.0 - free.array();
            const PerFree turn = normal.ldlt().solve(pull.cwiseProduct(free));
            bool all_within = true;
            for (std::size_t i = 0; i < hinges_.size(); ++i) {
                const auto k = static_cast<Eigen::Index>(i);
                if (free[k] == 0.0)
                    continue;
                const double wanted = angles[i] + turn[k];
                next[i] = std::clamp(wanted, hinges_[i].range_rad.low, hinges_[i].range_rad.high);
                if (next[i] != wanted && next[i] == angles[i]) {
                    free[k] = 0.0;
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
    std::vector<Aim> aims_;
    const std::vector<FreeHinge>& hinges_;
    Eigen::VectorXd miss_;    ///< three rows for each aim [m]
    Eigen::MatrixXd columns_; ///< how they move with each hinge [m/rad]
    Placement placement_;
};

bool at_an_end(const std::vector<double>& angles, const std::vector<FreeHinge>& hinges) {
    for (std::size_t i = 0; i < hinges.size(); ++i)
        if (angles[i] <= hinges[i].range_rad.low || angles[i] >= hinges[i].range_rad.high)
            return true;
    return false;
}

tl::expected<std::vector<Aim>, MechanicsError> aims_of(const Body& body,
                                                       const std::vector<ReachGoal>& goals) {
    std::vector<Aim> aims;
    for (std::size_t i = 0; i < goals.size(); ++i) {
        const auto local_m = local_point(body, goals[i].point);
        if (!local_m)
            return tl::unexpected(within_key(indexed("goals", i), local_m.error()));
        aims.emplace_back(goals[i], *local_m);
    }
    return aims;
}

/// Where the free hinges stand; an error for one whose range does not hold its angle.
tl::expected<std::vector<double>, MechanicsError> angles_of(const Pose& pose,
                                                            const std::vector<FreeHinge>& hinges) {
    std::vector<double> angles;
    for (std::size_t i = 0; i < hinges.size(); ++i) {
        const Interval& range = hinges[i].range_rad;
        const double angle = pose[hinges[i].hinge];
        if (!(range.low <= angle && angle <= range.high))
            return tl::unexpected(MechanicsError{Fault::out_of_range,
                                                 indexed("hinges", i) + ".range",
                                                 "a range that holds the present angle"});
        angles.push_back(angle);
    }
    return angles;
}

} // namespace

tl::expected<ReachedPose, MechanicsError> reach_points(const Body& body, const Pose& pose,
                                                       const std::vector<ReachGoal>& goals,
                                                       const std::vector<FreeHinge>& hinges) {
    auto aims = aims_of(body, goals);
    if (!aims)
        return tl::unexpected(aims.error());
    auto angles = angles_of(pose, hinges);
    if (!angles)
        return tl::unexpected(angles.error());
    Search search(body, pose, *aims, hinges);
    std::vector<double> nudged = *angles;
    const double miss_m = search.descend(*angles);
    if (miss_m < kWorthwhile_m)
        return ReachedPose{search.pose(), miss_m};
    // A straight limb can be a dead point: no small turn brings its end nearer to its root.
    for (std::size_t i = 0; i < hinges.size(); ++i) {
        const Interval& range = hinges[i].range_rad;
        const double to_middle = 0.5 * (range.low + range.high) - nudged[i];
        nudged[i] += std::clamp(to_middle, -kNudge_rad, kNudge_rad);
    }
    Search other(body, pose, *std::move(aims), hinges);
    const double other_m = other.descend(nudged);
    return other_m < miss_m ? ReachedPose{other.pose(), other_m}
                            : ReachedPose{search.pose(), miss_m};
}

tl::expected<ReachedPose, MechanicsError> reach_point(const Body& body, const Pose& pose,
                                                      const ReachGoal& goal,
                                                      const std::vector<FreeHinge>& hinges) {
    const auto local_m = local_point(body, goal.point);
    if (!local_m)
        return tl::unexpected(local_m.error());
    auto angles = angles_of(pose, hinges);
    if (!angles)
        return tl::unexpected(angles.error());
    const std::vector<Aim> aims{{goal, *local_m}};
    Search search(body, pose, aims, hinges);
    const double miss_m = search.descend(*angles);
    if (miss_m > kWorthwhile_m && !at_an_end(*angles, hinges)) {
        std::vector<double> middle;
        for (const FreeHinge& free : hinges)
            middle.push_back(0.5 * (free.range_rad.low + free.range_rad.high));
        Search other(body, pose, aims, hinges);
        const double other_m = other.descend(middle);
        if (other_m < miss_m - kWorthwhile_m)
            return ReachedPose{other.pose(), other_m};
    }
    return ReachedPose{search.pose(), miss_m};
}

} // namespace steelyard::mechanics

#pragma once
// The way of a repetition: from one pose to another, in step or bent so that contacts stay put.

#include "mechanics/body/pose.h"

#include <array>
#include <optional>
#include <vector>

namespace steelyard::mechanics {

/// Evenly spaced places of a path at which a bend is known, both ends included.
inline constexpr std::size_t kBendPlaces = 25;

/// What one hinge turns on the way beside its even share, so that something stays where it is:
/// nothing at both ends, a smooth curve between.
class PathBend {
public:
    /// @param extra_rad  at the places [rad]; first and last are taken as 0
    PathBend(Hinge hinge, const std::array<double, kBendPlaces>& extra_rad);

    Hinge hinge() const { return hinge_; }
    /// At a progress from 0 to 1 [rad].
    double at(double progress) const;
    /// Change with progress [rad], and the change of that [rad].
    double slope(double progress) const;
    double curvature(double progress) const;

private:
    struct Piece {
        std::size_t first = 0; ///< place at its start
        double part = 0.0;     ///< 0 to 1 within it
    };
    static Piece piece_at(double progress);

    Hinge hinge_;
    std::array<double, kBendPlaces> extra_rad_{};
    std::array<double, kBendPlaces> bending_rad_{}; ///< second derivative with progress
};

/// From the case's pose (progress 0) to these angles (progress 1): all hinges in step, or through a
/// pose half-way, and bent where something stays in its place. The anchor stays where it is.
struct PosePath {
    PerHinge end_angle_rad{};
    /// At progress 0.5; the angles then follow the parabola through the three. Empty: straight.
    std::optional<PerHinge> halfway_rad;
    std::vector<PathBend> bends; ///< at most one for each hinge

    PosePath() = default;
    explicit PosePath(const PerHinge& end_rad) : end_angle_rad(end_rad) {}
};

/// Half-way between start and end [rad]: where a straight path passes.
PerHinge even_halfway_rad(const PerHinge& start_rad, const PosePath& path);

/// Pose part of the way along a path.
Pose pose_at(const Pose& start, const PosePath& path, double progress);

/// How far along a path something is, and how fast.
struct TempoState {
    double progress = 0.0; ///< 0 start, 1 end of the path
    double rate_1_s = 0.0; ///< [1/s]
    double acceleration_1_s2 = 0.0;
};

/// The same into a pose and a motion that are used again.
void pose_and_motion_at(const Pose& start, const PosePath& path, const TempoState& state,
                        Pose& pose, Motion& motion);

/// True when a hinge turns anywhere on a path.
bool turns_on(const Pose& start, const PosePath& path, Hinge hinge);

/// How a hinge's angle changes with progress [rad].
double way_rad(const Pose& start, const PosePath& path, Hinge hinge, double progress);

} // namespace steelyard::mechanics

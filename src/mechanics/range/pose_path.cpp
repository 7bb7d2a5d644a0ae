#include "mechanics/range/pose_path.h"

#include <algorithm>

namespace steelyard::mechanics {

namespace {

constexpr double kWidth = 1.0 / static_cast<double>(kBendPlaces - 1);

/// The angle of one hinge along the path without its bend: start + progress · way + progress (1 -
/// progress) · bow, the parabola through start, half-way and end.
struct Course {
    double start_rad = 0.0;
    double way_rad = 0.0;
    double bow_rad = 0.0;

    double at(double progress) const {
        return start_rad + progress * way_rad + progress * (1.0 - progress) * bow_rad;
    }
    double slope(double progress) const { return way_rad + (1.0 - 2.0 * progress) * bow_rad; }
    double curvature() const { return -2.0 * bow_rad; }
};

Course course_of(const Pose& start, const PosePath& path, std::size_t hinge) {
    const double from_rad = start.angle_rad[hinge];
    const double to_rad = path.end_angle_rad[hinge];
    const double bow_rad =
        path.halfway_rad ? 4.0 * ((*path.halfway_rad)[hinge] - 0.5 * (from_rad + to_rad)) : 0.0;
    return {from_rad, to_rad - from_rad, bow_rad};
}

/// Second derivatives of the cubic spline through values, each end's like its neighbour's.
/// Source: any text on splines; the tridiagonal system by Thomas's elimination.
std::array<double, kBendPlaces> spline_bending(const std::array<double, kBendPlaces>& values) {
    std::array<double, kBendPlaces> bending{};
    std::array<double, kBendPlaces> over{}; // what stands above the diagonal after elimination
    constexpr std::size_t last = kBendPlaces - 1;
    for (std::size_t i = 1; i < last; ++i) {
        const double side =
            6.0 * (values[i - 1] - 2.0 * values[i] + values[i + 1]) / (kWidth * kWidth);
        // The ends' second derivatives are their neighbours': they join the diagonal.
        const double diagonal = i == 1 || i == last - 1 ? 5.0 : 4.0;
        const double below = i == 1 ? 0.0 : 1.0;
        const double pivot = diagonal - below * over[i - 1];
        over[i] = 1.0 / pivot;
        bending[i] = (side - below * bending[i - 1]) / pivot;
    }
    for (std::size_t i = last - 1; i-- > 1;)
        bending[i] -= over[i] * bending[i + 1];
    bending[0] = bending[1];
    bending[last] = bending[last - 1];
    return bending;
}

} // namespace

PathBend::PathBend(Hinge hinge, const std::array<double, kBendPlaces>& extra_rad)
    : hinge_(hinge), extra_rad_(extra_rad) {
    extra_rad_.front() = 0.0;
    extra_rad_.back() = 0.0;
    bending_rad_ = spline_bending(extra_rad_);
}

PathBend::Piece PathBend::piece_at(double progress) {
    const double place = std::clamp(progress, 0.0, 1.0) / kWidth;
    const std::size_t first = std::min(static_cast<std::size_t>(place), kBendPlaces - 2);
    return {first, place - static_cast<double>(first)};
}

double PathBend::at(double progress) const {
    const auto [i, part] = piece_at(progress);
    const double rest = 1.0 - part;
    return rest * extra_rad_[i] + part * extra_rad_[i + 1] -
           kWidth * kWidth / 6.0 * rest * part *
               ((1.0 + rest) * bending_rad_[i] + (1.0 + part) * bending_rad_[i + 1]);
}

double PathBend::slope(double progress) const {
    const auto [i, part] = piece_at(progress);
    const double rest = 1.0 - part;
    return (extra_rad_[i + 1] - extra_rad_[i]) / kWidth +
           kWidth / 6.0 *
               ((3.0 * part * part - 1.0) * bending_rad_[i + 1] -
                (3.0 * rest * rest - 1.0) * bending_rad_[i]);
}

double PathBend::curvature(double progress) const {
    const auto [i, part] = piece_at(progress);
    return (1.0 - part) * bending_rad_[i] + part * bending_rad_[i + 1];
}

PerHinge even_halfway_rad(const PerHinge& start_rad, const PosePath& path) {
    PerHinge halfway_rad;
    for (std::size_t i = 0; i < kHingeCount; ++i)
        halfway_rad[i] = 0.5 * (start_rad[i] + path.end_angle_rad[i]);
    return halfway_rad;
}

Pose pose_at(const Pose& start, const PosePath& path, double progress) {
    Pose pose = start;
    for (std::size_t i = 0; i < kHingeCount; ++i)
        pose.angle_rad[i] = course_of(start, path, i).at(progress);
    for (const PathBend& bend : path.bends)
        pose[bend.hinge()] += bend.at(progress);
    return pose;
}

void pose_and_motion_at(const Pose& start, const PosePath& path, const TempoState& state,
                        Pose& pose, Motion& motion) {
    pose = pose_at(start, path, state.progress);
    PerHinge slope_rad;
    PerHinge curvature_rad;
    for (std::size_t i = 0; i < kHingeCount; ++i) {
        const Course course = course_of(start, path, i);
        slope_rad[i] = course.slope(state.progress);
        curvature_rad[i] = course.curvature();
    }
    for (const PathBend& bend : path.bends) {
        slope_rad[index_of(bend.hinge())] += bend.slope(state.progress);
        curvature_rad[index_of(bend.hinge())] += bend.curvature(state.progress);
    }
    for (std::size_t i = 0; i < kHingeCount; ++i) {
        motion.rate_rad_s[i] = state.rate_1_s * slope_rad[i];
        motion.acceleration_rad_s2[i] = state.acceleration_1_s2 * slope_rad[i] +
                                        state.rate_1_s * state.rate_1_s * curvature_rad[i];
    }
}

bool turns_on(const Pose& start, const PosePath& path, Hinge hinge) {
    const Course course = course_of(start, path, index_of(hinge));
    return course.way_rad != 0.0 || course.bow_rad != 0.0 ||
           std::any_of(path.bends.begin(), path.bends.end(),
                       [&](const PathBend& bend) { return bend.hinge() == hinge; });
}

double way_rad(const Pose& start, const PosePath& path, Hinge hinge, double progress) {
    double way = course_of(start, path, index_of(hinge)).slope(progress);
    for (const PathBend& bend : path.bends)
        if (bend.hinge() == hinge)
            way += bend.slope(progress);
    return way;
}

} // namespace steelyard::mechanics

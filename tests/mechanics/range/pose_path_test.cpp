#include "catch.h"
#include "mechanics/constants.h"
#include "mechanics/range/pose_path.h"

#include <cmath>

namespace steelyard::mechanics {

namespace {

constexpr Hinge kKnee = Hinge::right_knee_flexion;

/// A bend that follows a curve with nothing at both ends.
template <typename Curve> PathBend bend_along(Curve curve) {
    std::array<double, kBendPlaces> extra_rad{};
    for (std::size_t i = 0; i < kBendPlaces; ++i)
        extra_rad[i] = curve(static_cast<double>(i) / static_cast<double>(kBendPlaces - 1));
    return {kKnee, extra_rad};
}

PosePath bent_path() {
    PosePath path;
    path.end_angle_rad[index_of(kKnee)] = 1.0;
    path.bends.push_back(bend_along([](double p) { return 0.3 * std::sin(kPi * p); }));
    return path;
}

} // namespace

TEST_CASE("a bend of the path goes through its places and adds nothing at the ends",
          "[range][path]") {
    const PathBend bend = bend_along([](double p) { return 0.3 * std::sin(kPi * p); });
    CHECK(bend.at(0.0) == 0.0);
    CHECK(bend.at(1.0) == 0.0);
    // Spline of a sine over 24 pieces: near the ends, where its second derivative is taken to be
    // that of the neighbour, it errs by about a tenth of 0.3 (π / 24)³.
    for (double p = 0.0; p <= 1.0; p += 0.013)
        CHECK_THAT(bend.at(p), WithinAbs(0.3 * std::sin(kPi * p), 4e-5));
    // A parabola has the same second derivative everywhere: the spline is the parabola.
    const PathBend parabola = bend_along([](double p) { return p * (1.0 - p); });
    for (double p = 0.0; p <= 1.0; p += 0.017) {
        CHECK_THAT(parabola.at(p), WithinAbs(p * (1.0 - p), 1e-14));
        CHECK_THAT(parabola.slope(p), WithinAbs(1.0 - 2.0 * p, 1e-12));
        CHECK_THAT(parabola.curvature(p), WithinAbs(-2.0, 1e-11));
    }
}

TEST_CASE("rate and acceleration on a bent path are those of its angle", "[range][path]") {
    const Pose start;
    const PosePath path = bent_path();
    // The progress moves as p = 0.2 + 0.5 t + 0.4 t²; differences of the angle at ±1e-4 s.
    const auto progress = [](double t) { return 0.2 + 0.5 * t + 0.4 * t * t; };
    const auto angle = [&](double t) { return pose_at(start, path, progress(t))[kKnee]; };
    constexpr double h = 1e-4;
    for (const double t : {0.1, 0.33, 0.6, 0.8}) {
        Pose pose;
        Motion motion;
        pose_and_motion_at(start, path, {progress(t), 0.5 + 0.8 * t, 0.8}, pose, motion);
        CHECK(pose[kKnee] == angle(t));
        CHECK_THAT(motion.rate_rad_s[index_of(kKnee)],
                   WithinAbs((angle(t + h) - angle(t - h)) / (2.0 * h), 1e-6));
        CHECK_THAT(motion.acceleration_rad_s2[index_of(kKnee)],
                   WithinAbs((angle(t + h) - 2.0 * angle(t) + angle(t - h)) / (h * h), 1e-3));
    }
    CHECK(turns_on(start, path, kKnee));
    CHECK_FALSE(turns_on(start, path, Hinge::left_knee_flexion));
    PosePath only_bent = path;
    only_bent.end_angle_rad.fill(0.0);
    CHECK(turns_on(start, only_bent, kKnee));
}

} // namespace steelyard::mechanics

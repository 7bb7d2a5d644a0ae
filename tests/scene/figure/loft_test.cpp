#include "catch.h"
#include "mechanics/constants.h"
#include "scene/figure/loft.h"
#include "scene/figure/ring_union.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <random>

using namespace steelyard;
using namespace steelyard::scene;

namespace {

BodyStage stage_of(const Camera& camera) {
    BodyStage stage;
    stage.camera = camera;
    stage.px_per_m = 500.0;
    return stage;
}

double area_px2(const Ring& ring) {
    return 0.5 * std::abs(doubled_area(ring));
}

double distance_px(const Point& point, const Ring& ring) {
    double least = 1e9;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point& from = ring[i];
        const Point along = ring[(i + 1) % ring.size()] - from;
        const double share = std::clamp((point - from).dot(along) / along.squaredNorm(), 0.0, 1.0);
        least = std::min(least, (from + share * along - point).norm());
    }
    return least;
}

Section level_ellipse(double up_m, double half_width_m, double front_m, double back_m) {
    return {{0.0, up_m, 0.0}, {0.0, 0.0, half_width_m}, {front_m, 0.0, 0.0}, {-back_m, 0.0, 0.0}};
}

} // namespace

TEST_CASE("two balls have the outline of a capsule, from wherever it is looked at", "[loft]") {
    for (const Camera& camera :
         {side_camera(), front_camera(), above_camera(), turned(side_camera(), 0.7, 0.4)}) {
        const BodyStage stage = stage_of(camera);
        const Vec3 from_m(0.1, 0.2, -0.3);
        const Vec3 to_m(0.3, 0.7, 0.1);
        const std::array sections{ball(from_m, 0.1, camera), ball(to_m, 0.1, camera)};
        const double length_px = (stage.to_sheet(to_m) - stage.to_sheet(from_m)).norm();
        // A rectangle and two half discs of 50 px.
        const double capsule_px2 = mechanics::kPi * 2500.0 + 100.0 * length_px;
        CHECK(area_px2(loft_outline(sections, stage)) == Approx(capsule_px2).epsilon(0.01));
    }
}

TEST_CASE("a stack of one ellipse seen along its bone is that ellipse", "[loft]") {
    const std::array sections{level_ellipse(0.0, 0.2, 0.1, 0.1), level_ellipse(1.0, 0.2, 0.1, 0.1)};
    // Area of an ellipse: pi times the half axes, 100 and 50 px.
    CHECK(area_px2(loft_outline(sections, stage_of(above_camera()))) ==
          Approx(mechanics::kPi * 5000.0).epsilon(0.01));
    // From the side and the front it is a rectangle as long as the bone.
    CHECK(area_px2(loft_outline(sections, stage_of(side_camera()))) ==
          Approx(50000.0).epsilon(0.01));
    CHECK(area_px2(loft_outline(sections, stage_of(front_camera()))) ==
          Approx(100000.0).epsilon(0.01));
}

TEST_CASE("front and back of a section keep their own depth", "[loft]") {
    const std::array sections{level_ellipse(0.0, 0.1, 0.15, 0.05),
                              level_ellipse(1.0, 0.1, 0.15, 0.05)};
    const BodyStage stage = stage_of(side_camera());
    const double middle_px = stage.to_sheet(Vec3::Zero()).x();
    double least = 1e9;
    double most = -1e9;
    for (const Point& corner : loft_outline(sections, stage)) {
        least = std::min(least, corner.x());
        most = std::max(most, corner.x());
    }
    CHECK(most - middle_px == Approx(75.0).margin(0.2));
    CHECK(middle_px - least == Approx(25.0).margin(0.2));
}

TEST_CASE("the outline holds every rim of the stack, and no more than a hair", "[loft]") {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> half(0.03, 0.12);
    std::uniform_real_distribution<double> turn(-3.0, 3.0);
    for (int trial = 0; trial < 60; ++trial) {
        std::vector<Section> sections;
        for (int i = 0; i < 6; ++i) {
            const double width_m = half(random); // one after the other: the same for any compiler
            const double front_m = half(random);
            const double back_m = half(random);
            sections.push_back(level_ellipse(0.12 * i, width_m, front_m, back_m));
        }
        sections = smoothed(sections, 4); // as the parts of a person are
        const double about_rad = turn(random);
        const double over_rad = 0.4 * turn(random);
        const BodyStage stage = stage_of(turned(side_camera(), about_rad, over_rad));
        const Ring outline = loft_outline(sections, stage);
        Point low(1e9, 1e9);
        Point high(-1e9, -1e9);
        for (const Section& section : sections)
            for (int i = 0; i < 48; ++i) {
                const double angle = 2.0 * mechanics::kPi * i / 48.0;
                const double forward = std::sin(angle);
                const Point rim = stage.to_sheet(
                    section.centre_m + std::cos(angle) * section.across_m +
                    std::abs(forward) * (forward > 0.0 ? section.front_m : section.back_m));
                low = low.cwiseMin(rim);
                high = high.cwiseMax(rim);
                // Corners that lie near to the line are left out, and steps between sections are
                // bevelled: under 1 % of a stack that is some 300 px high (2.44 px at most in 600
                // trials).
                INFO("trial " << trial);
                CHECK((is_inside(rim, outline) || distance_px(rim, outline) < 2.5));
            }
        for (const Point& corner : outline) {
            CHECK((corner - low).minCoeff() > -0.5);
            CHECK((high - corner).minCoeff() > -0.5);
        }
    }
}

#include "scene/figure/head_shapes.h"

#include "mechanics/constants.h"
#include "scene/figure/ring_union.h"

#include <algorithm>
#include <cmath>

namespace steelyard::scene {

namespace {

using mechanics::Segment;

/// A flat cut through the head; the hair grows on its far side.
struct Cut {
    Vec3 at_m;
    Vec3 to_face; ///< unit, out of the hair
};

using Loop = std::vector<Vec3>;

Loop rim_of(const Section& section) {
    constexpr int kHeadCorners = 24;
    Loop rim;
    for (int i = 0; i < kHeadCorners; ++i) {
        const double turn_rad = 2.0 * mechanics::kPi * (i + 0.5) / kHeadCorners;
        const double forward = std::sin(turn_rad);
        rim.emplace_back(section.centre_m + std::cos(turn_rad) * section.across_m +
                         std::abs(forward) * (forward > 0.0 ? section.front_m : section.back_m));
    }
    return rim;
}

/// The part of a convex loop on one side of a cut.
Loop kept(const Loop& loop, const Cut& cut, double side) {
    Loop part;
    for (std::size_t i = 0; i < loop.size(); ++i) {
        const Vec3& here = loop[i];
        const Vec3& next = loop[(i + 1) % loop.size()];
        const double a = side * cut.to_face.dot(here - cut.at_m);
        const double b = side * cut.to_face.dot(next - cut.at_m);
        if (a >= 0.0)
            part.push_back(here);
        if ((a > 0.0 && b < 0.0) || (a < 0.0 && b > 0.0))
            part.emplace_back(here + a / (a - b) * (next - here));
    }
    return part;
}

class HeadPainter {
public:
    HeadPainter(const Flesh& flesh, const mechanics::Placement& placement, const BodyStage& stage,
                std::vector<Shape>& shapes)
        : flesh_(flesh), frame_(placement[Segment::head]), stage_(stage), shapes_(shapes),
          stack_(flesh.head()) {}

    void paint() {
        const Vec3 eye = stage_.camera.toward_eye();
        const Vec3 crown_m = stack_.back().centre_m;
        const auto at = [&](double forward_m, double down_m) {
            return Vec3(crown_m +
                        frame_.rotation * Vec3(flesh_.tall(forward_m), -flesh_.tall(down_m), 0.0));
        };
        const auto way = [&](double forward, double up) {
            return Vec3(frame_.rotation * Vec3(forward, up, 0.0).normalized());
        };
        // Over the brow, and down behind the ear.
        const std::array cuts{Cut{at(0.090, 0.058), way(0.42, -1.0)},
                              Cut{at(-0.022, 0.120), way(1.0, -0.30)}};
        const bool from_the_face = eye.dot(frame_.rotation.col(0)) > 0.0;
        for (const BodySide& side : kBodySides)
            if (const double toward = toward_eye_of(side); toward > -0.5 && toward <= kEarBefore)
                add(flesh_.ear(side), Role::far_skin);
        if (!from_the_face)
            add(flesh_.nose(), Role::skin);
        for (const Cut& cut : cuts)
            if (cut.to_face.dot(eye) >= 0.0)
                add_part(cut, -1.0, nullptr, Role::hair);
        add_part(cuts[0], 1.0, &cuts[1], Role::skin);
        for (const Cut& cut : cuts)
            if (cut.to_face.dot(eye) < 0.0)
                add_part(cut, -1.0, nullptr, Role::hair);
        if (from_the_face)
            add(flesh_.nose(), Role::skin);
        for (const BodySide& side : kBodySides)
            if (toward_eye_of(side) > kEarBefore)
                add(flesh_.ear(side), Role::far_skin);
    }

private:
    /// An ear that looks to the eye this much lies on the head, otherwise behind its rim.
    static constexpr double kEarBefore = 0.25;

    double toward_eye_of(const BodySide& side) const {
        return stage_.camera.toward_eye().dot(side.outward * frame_.rotation.col(2));
    }
    void add(const Stack& stack, Role role) {
        shapes_.emplace_back(Outline{{loft_outline(stack, stage_)}, role});
    }

    /// What lies of the head on one side of a cut, and before another one.
    void add_part(const Cut& cut, double side, const Cut* other, Role role) {
        std::vector<Ring> sections;
        for (const Section& section : stack_) {
            Loop loop = kept(rim_of(section), cut, side);
            if (other != nullptr)
                loop = kept(loop, *other, 1.0);
            if (loop.empty())
                continue;
            Ring& ring = sections.emplace_back();
            for (const Vec3& corner : loop)
                ring.push_back(stage_.to_sheet(corner));
        }
        if (sections.size() < 2)
            return;
        const Point along =
            stage_.to_sheet(stack_.back().centre_m) - stage_.to_sheet(stack_.front().centre_m);
        shapes_.emplace_back(Outline{{loft_outline(sections, along)}, role});
    }

    const Flesh& flesh_;
    const mechanics::SegmentFrame& frame_;
    const BodyStage& stage_;
    std::vector<Shape>& shapes_;
    Stack stack_;
};

} // namespace

void add_head(const Flesh& flesh, const mechanics::Placement& placement, const BodyStage& stage,
              std::vector<Shape>& shapes) {
    HeadPainter(flesh, placement, stage, shapes).paint();
}

} // namespace steelyard::scene

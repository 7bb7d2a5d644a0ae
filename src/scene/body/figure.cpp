#include "scene/body/figure.h"

#include "mechanics/body/landmarks.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

namespace steelyard::scene {

namespace {

using mechanics::Segment;

/// Radii of a limb at its proximal and distal end, fractions of height: seen from the side, and
/// across (from the front or from above, where trunk and pelvis are wider).
struct Girth {
    double side_near;
    double side_far;
    double across_near;
    double across_far;
};

Girth girth_of(Segment segment) {
    switch (segment) {
    case Segment::pelvis:
        return {0.066, 0.060, 0.080, 0.076};
    case Segment::trunk:
        return {0.058, 0.062, 0.074, 0.086};
    case Segment::head:
        return {0.030, 0.030, 0.030, 0.030};
    case Segment::right_girdle:
    case Segment::left_girdle:
        return {0.020, 0.030, 0.020, 0.030};
    case Segment::right_upper_arm:
    case Segment::left_upper_arm:
        return {0.033, 0.025, 0.031, 0.025};
    case Segment::right_forearm:
    case Segment::left_forearm:
        return {0.025, 0.016, 0.025, 0.016};
    case Segment::right_hand:
    case Segment::left_hand:
        return {0.015, 0.012, 0.018, 0.014};
    case Segment::right_thigh:
    case Segment::left_thigh:
        return {0.054, 0.034, 0.050, 0.034};
    case Segment::right_shank:
    case Segment::left_shank:
        return {0.033, 0.021, 0.033, 0.021};
    case Segment::right_foot:
    case Segment::left_foot:
        return {0.020, 0.013, 0.020, 0.018};
    case Segment::right_toes:
    case Segment::left_toes:
        return {0.013, 0.009, 0.018, 0.014};
    }
    return {0.02, 0.02, 0.02, 0.02};
}

/// Segments that are painted together, the upper ones over the lower.
struct Part {
    std::array<Segment, 4> all;
    std::size_t count;

    std::span<const Segment> segments() const { return {all.data(), count}; }
};

constexpr Part kTrunk{{Segment::pelvis, Segment::trunk, Segment::head}, 3};
constexpr std::array kParts{
    kTrunk, Part{{Segment::right_hand, Segment::right_forearm, Segment::right_upper_arm}, 3},
    Part{{Segment::left_hand, Segment::left_forearm, Segment::left_upper_arm}, 3},
    Part{{Segment::right_toes, Segment::right_foot, Segment::right_shank, Segment::right_thigh}, 4},
    Part{{Segment::left_toes, Segment::left_foot, Segment::left_shank, Segment::left_thigh}, 4}};

constexpr double kApart_m = 0.02; ///< nearer to the trunk's depth a limb is beside it
constexpr double kEdge_px = 2.0;

/// How much of the sheet's direction of sight is along the body's left-right axis.
double across_of(const mechanics::Placement& placement, const BodyStage& stage) {
    const Vec3 sideways = placement[Segment::trunk].rotation.col(2);
    return 1.0 - std::min(1.0, std::abs(stage.camera.toward_eye().dot(sideways)));
}

class FigurePainter {
public:
    FigurePainter(const mechanics::Body& body, const mechanics::Placement& placement,
                  const BodyStage& stage, std::vector<Shape>& shapes)
        : body_(body), placement_(placement), stage_(stage), shapes_(shapes),
          across_(across_of(placement, stage)) {}

    void paint() {
        std::array<const Part*, kParts.size()> order{};
        for (std::size_t i = 0; i < order.size(); ++i)
            order[i] = &kParts[i];
        std::stable_sort(order.begin(), order.end(),
                         [&](const Part* a, const Part* b) { return depth_of(*a) < depth_of(*b); });
        const double trunk_depth = depth_of(kTrunk);
        for (const Part* part : order) {
            const double beyond = depth_of(*part) - trunk_depth;
            const bool far = beyond < -kApart_m;
            if (beyond > kApart_m)
                add_flesh(*part, Role::sheet, kEdge_px);
            add_flesh(*part, far ? Role::far_limb : Role::limb, 0.0);
        }
        for (const Part* part : order)
            if (depth_of(*part) >= trunk_depth - kApart_m)
                for (const Segment segment : part->segments())
                    add_bone(segment);
    }

private:
    /// Mean depth of the middles of its segments [m].
    double depth_of(const Part& part) const {
        double sum = 0.0;
        for (const Segment segment : part.segments()) {
            const auto& frame = placement_[segment];
            sum += stage_.depth(0.5 * (frame.joint_m + frame.at(body_[segment].tip_m)));
        }
        return sum / static_cast<double>(part.count);
    }

    /// @param wider_px  beyond the flesh: an edge that parts a limb from what lies behind it
    void add_flesh(const Part& part, Role role, double wider_px) {
        wider_px_ = wider_px;
        for (const Segment segment : part.segments())
            add_flesh(segment, role);
    }

    double radius_px(double side, double across) const {
        return std::lerp(side, across, across_) * body_.height_m * stage_.px_per_m + wider_px_;
    }

    void add_flesh(Segment segment, Role role) {
        const auto& frame = placement_[segment];
        if (segment == Segment::head) {
            add_head(frame, role);
            return;
        }
        Taper flesh = flesh_of(body_, placement_, stage_, segment);
        flesh.from_radius_px += wider_px_;
        flesh.to_radius_px += wider_px_;
        flesh.fill = role;
        shapes_.emplace_back(flesh);
        if (mechanics::is_foot(segment))
            add_heel(segment, frame, role);
        if (segment == Segment::trunk)
            add_shoulders(role);
        if (segment == Segment::pelvis)
            add_hips(role);
    }

    /// Neck and skull.
    void add_head(const mechanics::SegmentFrame& frame, Role role) {
        const Vec3 tip_m = body_[Segment::head].tip_m;
        const Point base = stage_.to_sheet(frame.joint_m);
        const Point middle =
            stage_.to_sheet(frame.at(0.62 * tip_m + Vec3(0.012, 0.0, 0.0) * body_.height_m));
        shapes_.emplace_back(
            Taper{base, middle, radius_px(0.032, 0.030), radius_px(0.030, 0.030), role, 1.0});
        Disc skull;
        skull.centre = middle;
        skull.radius_px = radius_px(0.058, 0.050);
        skull.fill = role;
        shapes_.emplace_back(skull);
    }

    void add_heel(Segment segment, const mechanics::SegmentFrame& frame, Role role) {
        const double behind_m = body_.heel_behind_ankle_m;
        const double above_m = 0.012 * body_.height_m;
        const Vec3 heel_m{-behind_m + above_m, -body_.ankle_height_m + above_m, 0.0};
        const Point heel = stage_.to_sheet(frame.at(heel_m));
        shapes_.emplace_back(Taper{stage_.to_sheet(frame.joint_m), heel, radius_px(0.020, 0.020),
                                   radius_px(0.012, 0.014), role, 1.0});
        shapes_.emplace_back(Taper{heel, stage_.to_sheet(frame.at(body_[segment].tip_m)),
                                   radius_px(0.012, 0.014), radius_px(0.012, 0.018), role, 1.0});
    }

    /// The trunk reaches across to both shoulders; from the side this hides in it.
    void add_shoulders(Role role) {
        const Vec3 right = placement_[Segment::right_upper_arm].joint_m;
        const Vec3 left = placement_[Segment::left_upper_arm].joint_m;
        const double radius = radius_px(0.034, 0.034);
        shapes_.emplace_back(
            Taper{stage_.to_sheet(right), stage_.to_sheet(left), radius, radius, role, 1.0});
    }

    void add_hips(Role role) {
        const Vec3 right = placement_[Segment::right_thigh].joint_m;
        const Vec3 left = placement_[Segment::left_thigh].joint_m;
        const double radius = radius_px(0.056, 0.052);
        shapes_.emplace_back(
            Taper{stage_.to_sheet(right), stage_.to_sheet(left), radius, radius, role, 1.0});
    }

    void add_bone(Segment segment) {
        const auto& frame = placement_[segment];
        const Point from = stage_.to_sheet(frame.joint_m);
        const Point to = stage_.to_sheet(frame.at(body_[segment].tip_m));
        if (segment == Segment::head || (to - from).norm() < 4.0)
            return;
        shapes_.emplace_back(Line{from, to, {Role::bone, 3.0, Dash::solid, 0.9}});
    }

    const mechanics::Body& body_;
    const mechanics::Placement& placement_;
    const BodyStage& stage_;
    std::vector<Shape>& shapes_;
    double across_;
    double wider_px_ = 0.0;
};

} // namespace

Taper flesh_of(const mechanics::Body& body, const mechanics::Placement& placement,
               const BodyStage& stage, Segment segment) {
    const auto& frame = placement[segment];
    const Girth girth = girth_of(segment);
    const double across = across_of(placement, stage);
    const double height_px = body.height_m * stage.px_per_m;
    Taper flesh;
    flesh.from = stage.to_sheet(frame.joint_m);
    flesh.to = stage.to_sheet(frame.at(body[segment].tip_m));
    flesh.from_radius_px = std::lerp(girth.side_near, girth.across_near, across) * height_px;
    flesh.to_radius_px = std::lerp(girth.side_far, girth.across_far, across) * height_px;
    return flesh;
}

void add_figure(const mechanics::Body& body, const mechanics::Placement& placement,
                const BodyStage& stage, std::vector<Shape>& shapes) {
    FigurePainter(body, placement, stage, shapes).paint();
}

} // namespace steelyard::scene

#include "publish/question/question_view.h"

#include "scene/lever/limb_flesh.h"
#include "scene/lever/open_lever.h"
#include "scene/marks/dimension_marks.h"

#include <algorithm>
#include <cmath>

namespace steelyard::publish {
namespace {

using mechanics::Vec2;
using problems::LeverPicture;
using problems::Question;
using scene::Point;

/// Smallest upright rectangle around a lever, the lengths marked on it and the spots to choose
/// from [m].
struct Extent {
    Vec2 low = Vec2::Zero();
    Vec2 high = Vec2::Zero();

    Vec2 span() const { return (high - low).cwiseMax(Vec2::Constant(1.0e-6)); }
};

Extent extent_of(const Question& question, const LeverPicture& picture) {
    Extent extent{picture.lever.path_m.front(), picture.lever.path_m.front()};
    const auto take_in = [&](const Vec2& point) {
        extent.low = extent.low.cwiseMin(point);
        extent.high = extent.high.cwiseMax(point);
    };
    for (const Vec2& corner : picture.lever.path_m)
        take_in(corner);
    if (picture.limb)
        for (const Vec2& corner : scene::limb_reach(*picture.limb, picture.lever.path_m))
            take_in(corner);
    for (const problems::DrawnQuantity& line : picture.labels) {
        take_in(line.from_m);
        take_in(line.to_m);
    }
    for (const problems::Spot& spot : problems::spots_of(question))
        take_in(spot.at_m);
    return extent;
}

/// Whether some arrow hangs below the lever, so that lengths must be marked further down.
bool has_arrow_below(const LeverPicture& picture) {
    const auto falls = [](double direction_rad) { return std::sin(direction_rad) < -0.1; };
    const bool load_falls =
        std::any_of(picture.lever.loads.begin(), picture.lever.loads.end(), [&](const auto& load) {
            const auto* force = std::get_if<mechanics::PointForce>(&load.action);
            const bool weighs = std::holds_alternative<mechanics::Weight>(load.action);
            return force != nullptr ? falls(force->direction_rad) : weighs && !picture.from_above;
        });
    return load_falls || (picture.show_effort && falls(picture.lever.effort.direction_rad));
}

/// Room below the lever for arrows, words and marked lengths.
double room_below_px(const LeverPicture& picture) {
    if (picture.labels.empty())
        return has_arrow_below(picture) ? scene::kOpenArrow_px + 36.0 : 74.0;
    return first_shelf_px(picture) + 10.0 +
           scene::kShelf_px * static_cast<double>(picture.labels.size() - 1);
}

} // namespace

double first_shelf_px(const LeverPicture& picture) {
    if (has_arrow_below(picture))
        return scene::kOpenArrow_px + 36.0;
    return picture.from_above ? 40.0 : 66.0;
}

Point figure_size(const Question& question) {
    constexpr double kWidth_px = 400.0;
    if (std::holds_alternative<problems::BodyPicture>(question.picture))
        return {kWidth_px, 300.0};
    const auto* picture = std::get_if<LeverPicture>(&question.picture);
    if (picture == nullptr)
        return {kWidth_px, 1.0};
    const Vec2 span = extent_of(question, *picture).span();
    const double lever_px = std::min(0.78 * kWidth_px * span.y() / span.x(), 190.0);
    return {kWidth_px, 70.0 + lever_px + room_below_px(*picture)};
}

std::optional<scene::StageView> question_figure_view(const Question& question,
                                                     const Point& size_px) {
    const auto* picture = std::get_if<LeverPicture>(&question.picture);
    if (picture == nullptr)
        return std::nullopt;
    const Extent extent = extent_of(question, *picture);
    const double side_px = 0.11 * size_px.x();
    const double top_px = 70.0;
    const double bottom_px = room_below_px(*picture);
    const Point room{size_px.x() - 2.0 * side_px, std::max(size_px.y() - top_px - bottom_px, 16.0)};
    scene::StageView view;
    view.size_px = size_px;
    view.px_per_m = (room.array() / extent.span().array()).minCoeff();
    const Point centre{0.5 * size_px.x(), top_px + 0.5 * room.y()};
    const Vec2 middle = 0.5 * (extent.low + extent.high);
    view.origin_px = centre - view.px_per_m * Point(middle.x(), -middle.y());
    return view;
}

} // namespace steelyard::publish

#include "publish/figures/figure_head.h"

#include "publish/figures/text_lines.h"

namespace steelyard::publish {
namespace {

using scene::Point;
using scene::TextSize;

scene::Label label(std::string text, const Point& at, bool strong) {
    return scene::make_label(at, std::move(text), strong ? TextSize::body : TextSize::caption,
                             strong ? scene::Role::ink : scene::Role::quiet_ink, scene::Align::left,
                             strong);
}

} // namespace

double add_figure_head(std::string_view name, std::string_view sentence, double sheet_width_px,
                       std::vector<scene::Shape>& shapes) {
    constexpr double kHeadLeading_px = 18.0;
    const double width_px = sheet_width_px - 2.0 * kFigureEdge_px;
    double baseline_px = 38.0;
    shapes.emplace_back(label(cut_to_width(std::string(name), TextSize::body, true, width_px),
                              {kFigureEdge_px, baseline_px}, true));
    baseline_px += 4.0;
    for (std::string& line : broken_into_lines(sentence, TextSize::caption, width_px)) {
        baseline_px += kHeadLeading_px;
        shapes.emplace_back(label(std::move(line), {kFigureEdge_px, baseline_px}, false));
    }
    return baseline_px + 16.0;
}

void add_side_head(scene::Side side, const std::string& name, const Point& corner_px,
                   double width_px, std::vector<scene::Shape>& shapes) {
    constexpr double kBetween_px = 10.0;
    scene::add_side_badge(side, corner_px, 1.0, shapes);
    const double before_px = scene::kBadge_px + kBetween_px;
    shapes.emplace_back(label(cut_to_width(name, TextSize::body, true, width_px - before_px),
                              corner_px + Point(before_px, 17.0), true));
}

} // namespace steelyard::publish

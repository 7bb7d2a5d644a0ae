#include "publish/figures/caption.h"

#include "publish/figures/text_lines.h"

#include <utility>

namespace steelyard::publish {
namespace {

constexpr double kMargin_px = 24.0;
constexpr double kLeading_px = 24.0;
constexpr double kSmallLeading_px = 18.0;
constexpr double kBeforeSmall_px = 4.0; ///< between the text and what is set small
constexpr double kFoot_px = 20.0;       ///< below the last baseline

scene::TextSize size_of(bool small) {
    return small ? scene::TextSize::caption : scene::TextSize::body;
}

} // namespace

Caption::Caption(std::string_view text, double sheet_width_px)
    : width_px_(sheet_width_px - 2.0 * kMargin_px) {
    add_lines(text, false);
}

void Caption::add_small(std::string_view text) {
    add_lines(text, true);
}

void Caption::add_lines(std::string_view text, bool small) {
    for (std::string& line : broken_into_lines(text, size_of(small), width_px_))
        lines_.push_back({std::move(line), small});
}

double Caption::step_px(std::size_t line) const {
    if (!lines_[line].small)
        return kLeading_px;
    const bool first = line > 0 && !lines_[line - 1].small;
    return kSmallLeading_px + (first ? kBeforeSmall_px : 0.0);
}

double Caption::height_px() const {
    double height = kFoot_px;
    for (std::size_t i = 0; i < lines_.size(); ++i)
        height += step_px(i);
    return height;
}

void Caption::put_below(scene::Drawing& drawing) const {
    double baseline = drawing.size_px.y();
    for (std::size_t i = 0; i < lines_.size(); ++i) {
        const Line& line = lines_[i];
        scene::Label label;
        label.at = {kMargin_px, baseline += step_px(i)};
        label.text = line.text;
        label.size = size_of(line.small);
        label.role = line.small ? scene::Role::quiet_ink : scene::Role::ink;
        drawing.shapes.emplace_back(std::move(label));
    }
    drawing.size_px.y() += height_px();
}

} // namespace steelyard::publish

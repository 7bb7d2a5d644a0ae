#include "publish/caption.h"

#include "scene/text_width.h"

#include <algorithm>

namespace steelyard::publish {
namespace {

constexpr double kMargin_px = 24.0;
constexpr double kLeading_px = 24.0;
constexpr double kSmallLeading_px = 18.0;
constexpr double kFoot_px = 20.0; ///< below the last baseline

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

/// A word that is wider than the caption stands alone.
void Caption::add_lines(std::string_view text, bool small) {
    lines_.push_back({"", small});
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t to = std::min(text.find(' ', from), text.size());
        const std::string word(text.substr(from, to - from));
        std::string& last = lines_.back().text;
        std::string longer = last;
        longer.append(last.empty() ? "" : " ").append(word);
        if (!last.empty() && scene::text_width_px(longer, size_of(small), false, 1.0) > width_px_) {
            lines_.push_back({word, small});
        } else {
            last = longer;
        }
        from = to + 1;
    }
}

double Caption::height_px() const {
    double height = kFoot_px;
    for (const Line& line : lines_) {
        height += line.small ? kSmallLeading_px : kLeading_px;
    }
    return height;
}

void Caption::put_below(scene::Drawing& drawing) const {
    double baseline = drawing.size_px.y();
    for (const Line& line : lines_) {
        scene::Label label;
        label.at = {kMargin_px, baseline += line.small ? kSmallLeading_px : kLeading_px};
        label.text = line.text;
        label.size = size_of(line.small);
        label.role = line.small ? scene::Role::quiet_ink : scene::Role::ink;
        drawing.shapes.emplace_back(std::move(label));
    }
    drawing.size_px.y() += height_px();
}

} // namespace steelyard::publish

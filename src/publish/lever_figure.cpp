#include "publish/lever_figure.h"

#include "scene/lever_drawing.h"
#include "scene/stage_view.h"
#include "scene/text_width.h"
#include "setup/lever_words.h"

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace steelyard::publish {
namespace {

/// Room for labels and strip on a large sheet, less on a small one.
scene::StageMargins margins_on(const scene::Point& sheet_px) {
    return {std::min(120.0, 0.16 * sheet_px.x()), std::min(150.0, 0.3 * sheet_px.y()),
            std::min(140.0, 0.28 * sheet_px.y())};
}

/// The text broken into lines that are no wider than the width; a word that is wider stands alone.
std::vector<std::string> broken_lines(std::string_view text, scene::TextSize size,
                                      double width_px) {
    std::vector<std::string> lines(1);
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t to = std::min(text.find(' ', from), text.size());
        const std::string word(text.substr(from, to - from));
        const std::string longer = lines.back().empty() ? word : lines.back() + ' ' + word;
        if (!lines.back().empty() && scene::text_width_px(longer, size, false, 1.0) > width_px) {
            lines.push_back(word);
        } else {
            lines.back() = longer;
        }
        from = to + 1;
    }
    return lines;
}

} // namespace

scene::Drawing lever_figure(const setup::LeverSetup& setup, const mechanics::LeverResult& result,
                            const scene::Point& sheet_px) {
    scene::LeverDrawing how;
    how.name = setup.head.name;
    how.sentence = setup.head.description;
    how.units = setup.head.units;
    scene::Drawing drawing = scene::draw_lever(
        setup.lever, result, scene::fit_lever(setup.lever, result, sheet_px, margins_on(sheet_px)),
        how);
    drawing.description += ' ' + setup::lever_summary(setup.lever, result, setup.head.units);
    return drawing;
}

scene::Drawing captioned_lever_figure(const setup::LeverSetup& setup,
                                      const mechanics::LeverResult& result,
                                      const scene::Point& sheet_px) {
    constexpr double kMargin_px = 24.0;
    constexpr double kLeading_px = 24.0;
    const std::vector<std::string> lines =
        broken_lines(setup::lever_summary(setup.lever, result, setup.head.units),
                     scene::TextSize::body, sheet_px.x() - 2.0 * kMargin_px);
    const double caption_px = kMargin_px + kLeading_px * static_cast<double>(lines.size());
    scene::Drawing drawing = lever_figure(setup, result, sheet_px - scene::Point(0.0, caption_px));
    double baseline = drawing.size_px.y();
    for (const std::string& line : lines) {
        scene::Label label;
        label.at = {kMargin_px, baseline += kLeading_px};
        label.text = line;
        drawing.shapes.emplace_back(std::move(label));
    }
    drawing.size_px = sheet_px;
    return drawing;
}

} // namespace steelyard::publish

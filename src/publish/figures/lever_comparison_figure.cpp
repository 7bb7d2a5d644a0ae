#include "publish/figures/lever_comparison_figure.h"

#include "mechanics/lever/lever_solve.h"
#include "publish/figures/caption.h"
#include "publish/figures/figure_head.h"
#include "scene/lever/lever_drawing.h"
#include "scene/plot/paired_bars.h"
#include "scene/stage_view.h"
#include "words/whatif/comparison.h"
#include "words/whatif/lever_comparison.h"

#include <algorithm>

namespace steelyard::publish {
namespace {

using mechanics::LeverResult;
using mechanics::MechanicsError;
using scene::Point;
using scene::Side;

constexpr double kBars_px = 284.0;
constexpr double kLeverHead_px = 56.0; ///< of a side: badge and name

/// Room for arrows and their words.
scene::StageMargins lever_margins_on(const Point& size_px) {
    return {std::min(110.0, 0.16 * size_px.x()), kLeverHead_px + std::min(50.0, 0.16 * size_px.y()),
            std::min(70.0, 0.22 * size_px.y())};
}

/// One side with its solution and its part of the sheet.
struct ShownLever {
    const setup::LeverSetup& setup;
    const LeverResult& solved;
    scene::StageView view;
};

void add_side(const ShownLever& lever, setup::UnitSystem units, Side side, double top_px,
              scene::Drawing& drawing) {
    scene::LeverDrawing how;
    how.limb = lever.setup.limb;
    how.units = units;
    how.marks.heading = how.marks.strip = how.marks.ruler = how.marks.arrow_scale = false;
    how.heading_top_px = kLeverHead_px; // labels keep below it
    scene::Drawing half = scene::moved(
        scene::draw_lever(lever.setup.lever, lever.solved, lever.view, how), {0.0, top_px});
    drawing.shapes.insert(drawing.shapes.end(), half.shapes.begin(), half.shapes.end());
    add_side_head(side, lever.setup.head.name, {kFigureEdge_px, top_px + 24.0},
                  lever.view.size_px.x() - kFigureEdge_px, drawing.shapes);
}

/// The quantities below each other; forces and lengths have no scale in common.
void add_bars(const std::vector<words::ComparedSize>& sizes, setup::UnitSystem units,
              scene::Drawing& drawing) {
    scene::PairedBars bars;
    bars.units = units;
    bars.width_px = kBars_px;
    bars.corner_px = {drawing.size_px.x() - kBars_px - kFigureEdge_px, 24.0};
    for (const words::ComparedSize& size : sizes) {
        bars.dimension = size.dimension;
        bars.pairs = {
            {size.name, size.a, size.b, std::nullopt, std::nullopt, &size == &sizes.front()}};
        scene::add_paired_bars(bars, drawing.shapes);
        bars.corner_px.y() += scene::kPair_px;
    }
}

std::string summary_of(const setup::LeverSetup& a, const setup::LeverSetup& b,
                       const std::vector<words::ComparedSize>& sizes, setup::UnitSystem units) {
    std::string text;
    for (const std::string& change : words::changed_in_b(a.lever, b.lever, units))
        text += (text.empty() ? "B has " : ", ") + change;
    text += text.empty() ? "" : ". ";
    bool first = true;
    for (const words::ComparedSize& size : sizes) {
        text += (first ? "Compared: " : "; ") + size.name + ' ' +
                words::difference_text(size.a, size.b, size.dimension, units);
        first = false;
    }
    return text + '.';
}

} // namespace

tl::expected<scene::Drawing, MechanicsError>
comparison_figure(const setup::LeverSetup& a, const setup::LeverSetup& b, const Point& sheet_px) {
    const auto solved_a = mechanics::solve_lever(a.lever);
    if (!solved_a)
        return tl::make_unexpected(solved_a.error());
    const auto solved_b = mechanics::solve_lever(b.lever);
    if (!solved_b)
        return tl::make_unexpected(solved_b.error());
    const setup::UnitSystem units = a.head.units;
    const auto sizes = words::compare_levers(*solved_a, *solved_b);
    const std::string summary = summary_of(a, b, sizes, units);
    const Caption caption(summary, sheet_px.x());
    scene::Drawing drawing;
    drawing.size_px = sheet_px - Point(0.0, caption.height_px());
    drawing.title = a.head.name + " beside " + b.head.name;
    drawing.description = summary;

    const Point half_px(sheet_px.x() - kBars_px - 2.0 * kFigureEdge_px, 0.5 * drawing.size_px.y());
    const scene::StageMargins margins = lever_margins_on(half_px);
    ShownLever shown_a{a, *solved_a, scene::fit_lever(a.lever, *solved_a, half_px, margins)};
    ShownLever shown_b{b, *solved_b, scene::fit_lever(b.lever, *solved_b, half_px, margins)};
    scene::share_scale(shown_a.view, shown_b.view);
    add_side(shown_a, units, Side::a, 0.0, drawing);
    add_side(shown_b, units, Side::b, half_px.y(), drawing);
    add_bars(sizes, units, drawing);
    caption.put_below(drawing);
    return drawing;
}

} // namespace steelyard::publish

#include "publish/figures/comparison_figure.h"

#include "publish/figures/caption.h"
#include "publish/figures/figure_head.h"
#include "scene/body/body_drawing.h"
#include "scene/marks/label_board.h"
#include "scene/plot/paired_bars.h"
#include "words/body/axis_shares.h"
#include "words/body/body_words.h"
#include "words/caution.h"
#include "words/whatif/comparison.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace steelyard::publish {
namespace {

using mechanics::MechanicsError;
using scene::Point;
using scene::Side;
using words::ComparedPeak;

constexpr double kHead_px = 52.0;      ///< of a side: badge and name
constexpr double kBarsTitle_px = 40.0; ///< above the bars
constexpr double kNarrowestBars_px = 256.0;

/// Rows that hold so many in so many columns.
std::size_t rows_of(std::size_t count, std::size_t columns) {
    return (count + columns - 1) / columns;
}

/// Room for the words beside the figure, less on a small sheet.
scene::BodyMargins half_margins_on(const Point& size_px) {
    const double side_px = std::min(130.0, 0.24 * size_px.x());
    return {side_px, side_px, kHead_px + 24.0, 28.0};
}

/// The largest torques of the joints, in columns below the two sides.
scene::PairedBars bars_of(const std::vector<ComparedPeak>& peaks, setup::UnitSystem units,
                          double sheet_width_px) {
    std::vector<mechanics::Hinge> axes;
    for (const ComparedPeak& peak : peaks)
        axes.push_back(peak.a.hinge);
    scene::PairedBars bars;
    bars.units = units;
    for (const ComparedPeak& peak : peaks) {
        bars.pairs.push_back({words::one_side_word(axes, peak.a.hinge), std::abs(peak.a.torque_Nm),
                              std::abs(peak.b.torque_Nm), std::nullopt, std::nullopt,
                              &peak == &peaks.front()});
    }
    // Four in three columns are two and two; a single one is half as wide as the sheet.
    const double room_px = sheet_width_px - 2.0 * kFigureEdge_px + bars.between_px;
    const auto most = static_cast<std::size_t>(
        std::max(1.0, std::floor(room_px / (kNarrowestBars_px + bars.between_px))));
    const std::size_t rows = rows_of(peaks.size(), most);
    bars.columns = rows_of(peaks.size(), rows);
    bars.width_px =
        room_px / static_cast<double>(std::max<std::size_t>(bars.columns, 2)) - bars.between_px;
    return bars;
}

double height_px(const scene::PairedBars& bars) {
    return kBarsTitle_px +
           static_cast<double>(rows_of(bars.pairs.size(), bars.columns)) * scene::kPair_px;
}

/// One side in the pose that is shown.
struct Posed {
    mechanics::BodyCase body_case;
    mechanics::BodyResult solved;
    scene::BodyStage stage;
};

tl::expected<Posed, MechanicsError> pose(const setup::BodySetup& setup, double progress,
                                         const scene::Camera& camera, const Point& size_px) {
    Posed posed;
    posed.body_case = setup.exercise.body_case;
    if (setup.exercise.path) {
        posed.body_case.pose =
            mechanics::pose_at(posed.body_case.pose, *setup.exercise.path, progress);
    }
    auto solved = mechanics::solve_body(posed.body_case);
    if (!solved)
        return tl::make_unexpected(solved.error());
    posed.solved = std::move(*solved);
    posed.stage =
        scene::fit_body(posed.body_case, {posed.solved}, camera, size_px, half_margins_on(size_px));
    return posed;
}

/// The part of a straight line within a rectangle; empty when there is none.
std::optional<scene::Line> clipped(scene::Line line, const scene::Rect& rect) {
    const Point from = line.from;
    const Point along = line.to - line.from;
    double enter = 0.0;
    double leave = 1.0;
    for (int part = 0; part < 2; ++part) {
        if (along[part] == 0.0) {
            if (from[part] < rect.low[part] || from[part] > rect.high[part])
                return std::nullopt;
            continue;
        }
        const double one = (rect.low[part] - from[part]) / along[part];
        const double other = (rect.high[part] - from[part]) / along[part];
        enter = std::max(enter, std::min(one, other));
        leave = std::min(leave, std::max(one, other));
    }
    if (enter >= leave)
        return std::nullopt;
    line.from = from + enter * along;
    line.to = from + leave * along;
    return line;
}

/// Appends the drawing of a side. Cables and bands to far anchors end at the side's edges.
void append_within(const scene::Drawing& half, const scene::Rect& rect, double left_px,
                   std::vector<scene::Shape>& shapes) {
    scene::Drawing kept = half;
    kept.shapes.clear();
    for (const scene::Shape& shape : half.shapes) {
        const auto* line = std::get_if<scene::Line>(&shape);
        if (line == nullptr)
            kept.shapes.push_back(shape);
        else if (const auto inside = clipped(*line, rect))
            kept.shapes.emplace_back(*inside);
    }
    kept = scene::moved(std::move(kept), {left_px, 0.0});
    shapes.insert(shapes.end(), kept.shapes.begin(), kept.shapes.end());
}

void add_side(const setup::BodySetup& setup, const Posed& posed, mechanics::Hinge joint,
              setup::UnitSystem units, Side side, double left_px, scene::Drawing& drawing) {
    scene::BodyDrawing how;
    how.units = units;
    how.axes = {joint};
    how.strip = false;
    how.heading_top_px = kHead_px - 50.0; // labels keep 50 px more clear
    append_within(scene::draw_body(posed.body_case, posed.solved, posed.stage, how),
                  {{8.0, kHead_px + 4.0}, posed.stage.size_px - Point(8.0, 4.0)}, left_px,
                  drawing.shapes);
    add_side_head(side, setup.head.name, {left_px + kFigureEdge_px, 24.0},
                  posed.stage.size_px.x() - 2.0 * kFigureEdge_px, drawing.shapes);
}

void add_bars(scene::PairedBars bars, double top_px, scene::Drawing& drawing) {
    scene::Label title;
    title.at = {kFigureEdge_px, top_px + 18.0};
    title.text = "Largest torque of each joint";
    title.strong = true;
    drawing.shapes.emplace_back(std::move(title));
    bars.corner_px = {kFigureEdge_px, top_px + kBarsTitle_px - 12.0};
    scene::add_paired_bars(bars, drawing.shapes);
}

std::string summary_of(const setup::BodySetup& a, const setup::BodySetup& b,
                       const scene::PairedBars& bars) {
    // Exercises that differ in more have little to do with each other.
    constexpr std::size_t kMostChanges = 5;
    const std::vector<std::string> changes = words::changed_in_b(a, b, a.head.units);
    std::string text;
    if (changes.size() <= kMostChanges) {
        for (const std::string& change : changes)
            text += (text.empty() ? "B has " : ", ") + change;
        text += text.empty() ? "" : ". ";
    }
    std::string differences;
    for (const scene::BarPair& pair : bars.pairs) {
        differences += (differences.empty() ? "Largest torques: " : "; ") + pair.name + ' ' +
                       words::difference_text(pair.a, pair.b, bars.dimension, bars.units);
    }
    return text + differences + '.';
}

} // namespace

tl::expected<scene::Drawing, MechanicsError>
comparison_figure(const setup::BodySetup& a, const setup::BodySetup& b, const Point& sheet_px) {
    const auto peaks = words::compare_peaks(a, b);
    if (!peaks)
        return tl::make_unexpected(peaks.error());
    const scene::PairedBars bars = bars_of(*peaks, a.head.units, sheet_px.x());
    const std::string summary = summary_of(a, b, bars);
    Caption caption(summary, sheet_px.x());
    caption.add_small(words::kCaution);
    scene::Drawing drawing;
    drawing.size_px = sheet_px - Point(0.0, caption.height_px());
    drawing.title = a.head.name + " beside " + b.head.name;
    drawing.description = summary;

    const Point half_px(0.5 * sheet_px.x(), drawing.size_px.y() - height_px(bars));
    const scene::Camera camera = scene::camera_of(a.view);
    const ComparedPeak& first = peaks->front();
    auto posed_a = pose(a, first.a.progress, camera, half_px);
    if (!posed_a)
        return tl::make_unexpected(posed_a.error());
    auto posed_b = pose(b, first.b.progress, camera, half_px);
    if (!posed_b)
        return tl::make_unexpected(posed_b.error());
    scene::share_scale(posed_a->stage, posed_b->stage, half_margins_on(half_px));
    add_side(a, *posed_a, first.a.hinge, a.head.units, Side::a, 0.0, drawing);
    add_side(b, *posed_b, first.b.hinge, a.head.units, Side::b, half_px.x(), drawing);
    add_bars(bars, half_px.y(), drawing);
    caption.put_below(drawing);
    return drawing;
}

} // namespace steelyard::publish

#include "publish/comparison_figure.h"

#include "publish/caption.h"
#include "scene/body_drawing.h"
#include "scene/paired_bars.h"
#include "scene/text_width.h"
#include "setup/body_words.h"
#include "setup/comparison.h"

#include <algorithm>
#include <cmath>

namespace steelyard::publish {
namespace {

using mechanics::MechanicsError;
using scene::Point;
using scene::Side;
using setup::ComparedPeak;

constexpr double kHead_px = 84.0;
constexpr double kBars_px = 284.0;
constexpr double kEdge_px = 24.0;
constexpr scene::BodyMargins kMargins{70.0, 70.0, kHead_px + 20.0, 40.0};

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
    if (!solved) {
        return tl::make_unexpected(solved.error());
    }
    posed.solved = std::move(*solved);
    posed.stage = scene::fit_body(posed.body_case.body, {posed.solved}, camera, size_px, kMargins);
    return posed;
}

/// The text, or as many of its words as fit a width and an ellipsis.
std::string cut_to(const std::string& text, bool strong, double width_px) {
    const auto fits = [&](const std::string& line) {
        return scene::text_width_px(line, scene::TextSize::body, strong, 1.0) <= width_px;
    };
    std::string cut = text;
    while (!fits(cut == text ? cut : cut + " …")) {
        const std::size_t blank = cut.rfind(' ');
        if (blank == std::string::npos) {
            break;
        }
        cut.erase(blank);
    }
    return cut == text ? cut : cut + " …";
}

void add_side(const setup::BodySetup& setup, const Posed& posed, mechanics::Hinge joint, Side side,
              double left_px, scene::Drawing& drawing) {
    scene::BodyDrawing how;
    how.units = setup.head.units;
    how.axes = {joint};
    how.strip = false;
    how.heading_top_px = kHead_px - 44.0;
    scene::Drawing half = scene::moved(
        scene::draw_body(posed.body_case, posed.solved, posed.stage, how), {left_px, 0.0});
    drawing.shapes.insert(drawing.shapes.end(), half.shapes.begin(), half.shapes.end());
    const Point corner(left_px + kEdge_px, 24.0);
    scene::add_side_badge(side, corner, 1.0, drawing.shapes);
    scene::Label name;
    name.at = corner + Point(scene::kBadge_px + 10.0, 17.0);
    name.strong = true;
    name.text =
        cut_to(setup.head.name, true, posed.stage.size_px.x() - kEdge_px - scene::kBadge_px - 24.0);
    drawing.shapes.emplace_back(std::move(name));
}

void add_bars(const std::vector<ComparedPeak>& peaks, setup::UnitSystem units,
              scene::Drawing& drawing) {
    scene::PairedBars bars;
    bars.units = units;
    bars.width_px = kBars_px;
    bars.corner_px = {drawing.size_px.x() - kBars_px - kEdge_px, 62.0};
    for (const ComparedPeak& peak : peaks) {
        scene::BarPair pair;
        pair.name = setup::joint_word(peak.a.hinge);
        pair.a = std::abs(peak.a.torque_Nm);
        pair.b = std::abs(peak.b.torque_Nm);
        pair.chosen = &peak == &peaks.front();
        bars.pairs.push_back(std::move(pair));
    }
    scene::Label title;
    title.at = {bars.corner_px.x(), 41.0};
    title.text = "Largest torque of each joint";
    title.strong = true;
    drawing.shapes.emplace_back(std::move(title));
    scene::add_paired_bars(bars, drawing.shapes);
}

std::string summary_of(const setup::BodySetup& a, const setup::BodySetup& b,
                       const std::vector<ComparedPeak>& peaks) {
    std::string text;
    for (const std::string& change : setup::changed_in_b(a, b, a.head.units)) {
        text += (text.empty() ? "B has " : ", ") + change;
    }
    text += text.empty() ? "" : ". ";
    std::string differences;
    for (const ComparedPeak& peak : peaks) {
        differences +=
            (differences.empty() ? "Largest torques: " : "; ") + setup::joint_word(peak.a.hinge) +
            ' ' +
            setup::difference_text(std::abs(peak.a.torque_Nm), std::abs(peak.b.torque_Nm),
                                   setup::Dimension::torque, a.head.units);
    }
    return text + differences + '.';
}

} // namespace

tl::expected<scene::Drawing, MechanicsError>
comparison_figure(const setup::BodySetup& a, const setup::BodySetup& b, const Point& sheet_px) {
    const auto peaks = setup::compare_peaks(a, b);
    if (!peaks) {
        return tl::make_unexpected(peaks.error());
    }
    const std::string summary = summary_of(a, b, *peaks);
    Caption caption(summary, sheet_px.x());
    caption.add_small(setup::kBodyCaution);
    scene::Drawing drawing;
    drawing.size_px = sheet_px - Point(0.0, caption.height_px());
    drawing.title = a.head.name + " beside " + b.head.name;
    drawing.description = summary;

    const Point half_px(0.5 * (drawing.size_px.x() - kBars_px - 2.0 * kEdge_px),
                        drawing.size_px.y());
    const scene::Camera camera = scene::camera_of(a.view);
    const ComparedPeak& first = peaks->front();
    auto posed_a = pose(a, first.a.progress, camera, half_px);
    if (!posed_a) {
        return tl::make_unexpected(posed_a.error());
    }
    auto posed_b = pose(b, first.b.progress, camera, half_px);
    if (!posed_b) {
        return tl::make_unexpected(posed_b.error());
    }
    scene::share_scale(posed_a->stage, posed_b->stage, kMargins);
    add_side(a, *posed_a, first.a.hinge, Side::a, 0.0, drawing);
    add_side(b, *posed_b, first.b.hinge, Side::b, half_px.x(), drawing);
    add_bars(*peaks, a.head.units, drawing);
    caption.put_below(drawing);
    return drawing;
}

} // namespace steelyard::publish

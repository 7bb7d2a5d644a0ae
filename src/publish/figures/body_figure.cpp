#include "publish/figures/body_figure.h"

#include "publish/figures/caption.h"
#include "publish/figures/torque_curves.h"
#include "scene/body/body_drawing.h"
#include "words/body/body_words.h"
#include "words/caution.h"

#include <algorithm>
#include <cmath>

namespace steelyard::publish {
namespace {

using mechanics::MechanicsError;

/// Room for the labels beside and the strip below the figure, less on a small sheet.
scene::BodyMargins margins_on(const scene::Point& sheet_px) {
    const double side_px = std::min(200.0, 0.2 * sheet_px.x());
    return {side_px, side_px, std::min(110.0, 0.2 * sheet_px.y()),
            std::min(125.0, 0.24 * sheet_px.y())};
}

/// The exercise in one place of its path.
struct Placed {
    words::BodyReading reading;
    mechanics::BodyCase posed;
    mechanics::BodyResult solved;
};

tl::expected<Placed, MechanicsError> placed_at(const setup::BodySetup& setup,
                                               const std::vector<mechanics::Muscle>& muscles,
                                               double place) {
    auto reading = words::read_body(setup, muscles, setup.axes, place);
    if (!reading)
        return tl::make_unexpected(reading.error());
    mechanics::BodyCase posed = setup.exercise.body_case;
    if (setup.exercise.path)
        posed.pose = mechanics::pose_at(posed.pose, *setup.exercise.path, place);
    auto solved = mechanics::solve_body(posed);
    if (!solved)
        return tl::make_unexpected(solved.error());
    return Placed{*std::move(reading), std::move(posed), *std::move(solved)};
}

scene::Drawing drawn(const setup::BodySetup& setup, const Placed& placed,
                     const scene::BodyStage& stage, const BodyFigureStyle& style) {
    scene::BodyDrawing how;
    how.name = setup.head.name;
    how.sentence = setup.head.description;
    how.units = setup.head.units;
    how.axes = setup.axes;
    how.chosen = style.close_up.value_or(0);
    how.muscles = placed.reading.hinges.at(how.chosen).muscles;
    if (style.close_up)
        how.close_up = scene::close_up_on(stage.size_px, how.heading_top_px, how.text_scale);
    return scene::draw_body(placed.posed, placed.solved, stage, how);
}

scene::Camera camera_for(const setup::BodySetup& setup, const BodyFigureStyle& style) {
    return scene::camera_of(style.view.value_or(setup.view));
}

/// All of the body in some places of its path, or what turns about the joint that is shown near by.
scene::BodyStage stage_for(const setup::BodySetup& setup, const BodyFigureStyle& style,
                           const std::vector<mechanics::BodyResult>& shown,
                           const scene::Point& size_px) {
    const mechanics::BodyCase& body_case = setup.exercise.body_case;
    const scene::Camera camera = camera_for(setup, style);
    if (!style.close_up)
        return scene::fit_body(body_case, shown, camera, size_px, margins_on(size_px));
    const scene::BodyDrawing usual;
    const scene::CloseUp places =
        scene::close_up_on(size_px, usual.heading_top_px, usual.text_scale);
    return scene::fit_part(body_case, shown, {setup.axes.at(*style.close_up)}, {}, camera, size_px,
                           scene::close_up_margins(places, size_px, usual.text_scale));
}

/// Places of the path that a stage is fitted to.
constexpr std::size_t kFittedPlaces = 25;

} // namespace

tl::expected<scene::Drawing, MechanicsError>
body_figure(const setup::BodySetup& setup, const std::vector<mechanics::Muscle>& muscles,
            const BodyFigureStyle& style) {
    const auto place = style.progress ? tl::expected<double, MechanicsError>(*style.progress)
                                      : words::hardest_place(setup);
    if (!place)
        return tl::make_unexpected(place.error());
    const auto placed = placed_at(setup, muscles, *place);
    if (!placed)
        return tl::make_unexpected(placed.error());
    const std::string summary = words::body_summary(setup, placed->reading, setup.head.units);
    Caption caption(summary, style.sheet_px.x());
    caption.add_small(words::kCaution);
    const bool plots = style.plot && setup.exercise.path;
    const scene::Point sheet_px =
        style.sheet_px - scene::Point(0.0, style.caption ? caption.height_px() : 0.0);
    const scene::Point size_px = plots ? share_sheet(sheet_px).drawing_px : sheet_px;
    scene::Drawing drawing =
        drawn(setup, *placed, stage_for(setup, style, {placed->solved}, size_px), style);
    drawing.description += ' ' + summary;
    if (plots) {
        auto curves = torque_curves(setup);
        if (!curves)
            return tl::make_unexpected(curves.error());
        add_plot_beside(setup, std::move(*curves), *place, sheet_px, drawing);
    }
    if (style.caption)
        caption.put_below(drawing);
    return drawing;
}

std::optional<MovingPicture> repetition_picture(const setup::BodySetup& setup,
                                                const std::vector<mechanics::Muscle>& muscles,
                                                const BodyFigureStyle& style, double frame_s) {
    if (!setup.exercise.path)
        return std::nullopt;
    std::vector<double> places;
    for (std::size_t i = 0; i < kFittedPlaces; ++i)
        places.push_back(static_cast<double>(i) / static_cast<double>(kFittedPlaces - 1));
    const scene::Point size_px =
        style.plot ? share_sheet(style.sheet_px).drawing_px : style.sheet_px;
    const scene::BodyStage stage =
        stage_for(setup, style, scene::solved_along(setup.exercise, places), size_px);
    auto curves = style.plot ? torque_curves(setup).value_or(std::vector<scene::SweepCurve>{})
                             : std::vector<scene::SweepCurve>{};
    const mechanics::Tempo tempo = setup.exercise.tempo.value_or(mechanics::kUsualTempo);
    MovingPicture picture;
    picture.frame_s = frame_s;
    picture.frames =
        static_cast<std::size_t>(std::max(1.0, std::round(mechanics::duration_s(tempo) / frame_s)));
    picture.draw =
        [setup, muscles, stage, tempo, style, frame_s, curves = std::move(curves),
         sheet_px = style.sheet_px](std::size_t i) -> tl::expected<scene::Drawing, PublishError> {
        const double progress =
            mechanics::tempo_state(tempo, frame_s * static_cast<double>(i)).progress;
        const auto placed = placed_at(setup, muscles, progress);
        if (!placed)
            return tl::make_unexpected(
                PublishError{PublishFault::bad_place,
                             to_text(setup::placed_error(placed.error(), setup.source))});
        scene::Drawing drawing = drawn(setup, *placed, stage, style);
        if (!curves.empty())
            add_plot_beside(setup, curves, progress, sheet_px, drawing);
        return drawing;
    };
    return picture;
}

} // namespace steelyard::publish

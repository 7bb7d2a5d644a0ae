#include "publish/figures/body_figure.h"

#include "publish/figures/caption.h"
#include "scene/body/body_drawing.h"
#include "words/body/body_words.h"
#include "words/caution.h"

#include <algorithm>

namespace steelyard::publish {
namespace {

using mechanics::MechanicsError;

/// Room for the labels beside and the strip below the figure, less on a small sheet.
scene::BodyMargins margins_on(const scene::Point& sheet_px) {
    const double side_px = std::min(200.0, 0.2 * sheet_px.x());
    return {side_px, side_px, std::min(110.0, 0.2 * sheet_px.y()),
            std::min(125.0, 0.24 * sheet_px.y())};
}

scene::Drawing drawn(const setup::BodySetup& setup, const words::BodyReading& reading,
                     const mechanics::BodyCase& posed, const mechanics::BodyResult& solved,
                     const scene::Camera& camera, const scene::Point& size_px) {
    const scene::BodyStage stage =
        scene::fit_body(posed, {solved}, camera, size_px, margins_on(size_px));
    scene::BodyDrawing how;
    how.name = setup.head.name;
    how.sentence = setup.head.description;
    how.units = setup.head.units;
    how.axes = setup.axes;
    how.muscles = reading.hinges.front().muscles;
    return scene::draw_body(posed, solved, stage, how);
}

} // namespace

tl::expected<scene::Drawing, MechanicsError>
body_figure(const setup::BodySetup& setup, const std::vector<mechanics::Muscle>& muscles,
            const BodyFigureStyle& style) {
    const auto place = style.progress ? tl::expected<double, MechanicsError>(*style.progress)
                                      : words::hardest_place(setup);
    if (!place)
        return tl::make_unexpected(place.error());
    const auto reading = words::read_body(setup, muscles, setup.axes, *place);
    if (!reading)
        return tl::make_unexpected(reading.error());
    mechanics::BodyCase posed = setup.exercise.body_case;
    if (setup.exercise.path)
        posed.pose = mechanics::pose_at(posed.pose, *setup.exercise.path, *place);
    const auto solved = mechanics::solve_body(posed);
    if (!solved)
        return tl::make_unexpected(solved.error());
    const std::string summary = words::body_summary(setup, *reading, setup.head.units);
    Caption caption(summary, style.sheet_px.x());
    caption.add_small(words::kCaution);
    const scene::Point size_px =
        style.sheet_px - scene::Point(0.0, style.caption ? caption.height_px() : 0.0);
    scene::Drawing drawing = drawn(setup, *reading, posed, *solved,
                                   scene::camera_of(style.view.value_or(setup.view)), size_px);
    drawing.description += ' ' + summary;
    if (style.caption)
        caption.put_below(drawing);
    return drawing;
}

} // namespace steelyard::publish

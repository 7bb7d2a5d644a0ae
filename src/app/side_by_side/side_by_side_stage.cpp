#include "app/side_by_side/side_by_side_stage.h"

#include "app/side_by_side/pair_strip.h"
#include "scene/body/body_drawing.h"
#include "words/body/body_reading.h"
#include "words/body/body_words.h"

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using mechanics::Hinge;
using scene::Point;
using scene::Role;

/// Arrows are shorter than on a stage of their own, so that they end above the curves.
constexpr double kArrowPart = 0.6;
/// On a lower stage the curves shrink to a line with a cursor.
constexpr double kLowStage_px = 540.0;

scene::BodyMargins margins_of(const PairLayout& place) {
    const double side_px = std::min(64.0 * place.scale, 0.14 * place.panel_px().x());
    return {side_px, side_px, place.head_px + 12.0 * place.scale,
            (place.low ? 22.0 : 34.0) * place.scale};
}

scene::Curve curve_of(const std::string& name, const ComparedBody& body, Hinge hinge) {
    scene::Curve curve;
    curve.name = name;
    for (const mechanics::PerHinge& torques : body.sweep.muscle_Nm)
        curve.values.push_back(std::abs(torques[mechanics::index_of(hinge)]));
    if (curve.values.empty()) // held: the same all the way
        curve.values.assign(2, std::abs(body.here.muscle(hinge)));
    return curve;
}

scene::Drawing draw_half(const PairLayout& place, const setup::BodySetup& setup, Hinge joint,
                         const ComparedBody& body, const scene::BodyStage& stage,
                         const std::vector<mechanics::Muscle>& muscles, setup::UnitSystem units) {
    scene::BodyDrawing how;
    how.units = units;
    how.text_scale = place.scale;
    how.heading_top_px = place.head_px - 50.0 * place.scale;
    how.axes = {joint};
    how.muscles = words::solved_muscles(setup, body.posed, body.here, joint, muscles);
    how.strip = false;
    return scene::draw_body(body.posed, body.here, stage, how);
}

/// Joints that could be the axis as well, to be seen and to be clicked.
void add_other_axes(const SideBySideModel& model, const ComparedBody& body,
                    const scene::BodyStage& stage, std::vector<scene::Shape>& shapes) {
    for (std::size_t i = 0; i < model.axes.size(); ++i) {
        if (i == model.chosen)
            continue;
        scene::Disc ring;
        ring.centre = stage.to_sheet(body.here.placement.axis_point_m(model.axes[i]));
        ring.radius_px = 7.0;
        ring.fill = Role::sheet;
        ring.outline = scene::Stroke{Role::ink, 2.5};
        shapes.emplace_back(ring);
    }
}

/// The floor that both stand on, and the hairline between them.
void add_ground(const PairLayout& place, const scene::BodyStage& stage,
                std::vector<scene::Shape>& shapes) {
    const double middle_px = 0.5 * place.stage_px.x();
    const double floor_px = stage.to_sheet(mechanics::Vec3::Zero()).y();
    const bool edge_on = std::abs(stage.camera.toward_eye().y()) < 0.2;
    if (edge_on && floor_px < place.panel_px().y() + 4.0)
        shapes.emplace_back(scene::Line{
            {24.0, floor_px}, {place.stage_px.x() - 24.0, floor_px}, {Role::quiet_ink, 2.0}});
    shapes.emplace_back(scene::Line{{middle_px, place.head_px - 36.0 * place.scale},
                                    {middle_px, place.panel_px().y() - 16.0 * place.scale},
                                    {Role::hairline, 1.0}});
}

void add_strip(const PairLayout& place, const SideBySideModel& model, const ComparedBody& b,
               setup::UnitSystem units, std::vector<scene::Shape>& shapes) {
    PairStrip strip;
    strip.says = (model.moves() ? "hardest at the " : "at the ") + words::joint_word(model.joint());
    strip.a = model.peak_a_Nm();
    strip.b = std::abs(b.peaks[model.chosen].torque_Nm);
    strip.low = place.low;
    add_pair_strip(strip, place.stage_px, units, place.scale, shapes);
}

} // namespace

PairLayout lay_out_pair(const Style& style, const Layout& layout, const SideBySideModel& model) {
    PairLayout place;
    place.scale = style.fonts.scale;
    place.stage_px = layout.stage_px;
    place.low = layout.stage_px.y() < kLowStage_px * place.scale;
    place.bare = is_bare(layout, place.scale);
    place.head_px = (place.low ? 98.0 : 122.0) * place.scale;
    place.strip_px = pair_strip_height(place.low) * place.scale;
    if (model.moves() && !place.bare)
        place.plot_px = place.low ? 86.0 * place.scale : 0.21 * layout.stage_px.y();
    return place;
}

std::array<scene::BodyStage, 2> fit_pair(const PairLayout& place, const SideBySideModel& model) {
    const scene::Camera camera = scene::camera_of(model.state.a.view);
    const scene::BodyMargins margins = margins_of(place);
    const auto fit = [&](const setup::BodySetup& setup, const ComparedBody& body) {
        std::vector<mechanics::BodyResult> shown =
            scene::solved_along(setup.exercise, {0.0, 0.5, 1.0});
        if (shown.empty())
            shown.push_back(body.here);
        return scene::fit_body(setup.exercise.body_case, shown, camera, place.panel_px(), margins);
    };
    std::array<scene::BodyStage, 2> stages{fit(model.state.a, model.a),
                                           fit(model.state.b, model.b)};
    scene::share_scale(stages[0], stages[1], margins);
    for (scene::BodyStage& stage : stages)
        stage.px_per_N *= kArrowPart;
    return stages;
}

scene::CurvePlot plot_of_pair(const PairLayout& place, const SideBySideModel& model,
                              const ComparedBody& b) {
    scene::CurvePlot plot;
    plot.text_scale = place.scale;
    const double side_px = std::min(95.0, 0.1 * place.stage_px.x());
    plot.corner_px = {side_px, place.panel_px().y() + 4.0 * place.scale};
    plot.size_px = {place.stage_px.x() - 2.0 * side_px + 40.0 * place.scale,
                    place.plot_px - 12.0 * place.scale};
    if (place.low) { // no room for words: what it plots is the joint that the strip names
        plot.corner_px.y() -= 24.0 * place.scale;
        plot.size_px += Point(-60.0, 24.0) * place.scale;
    } else {
        plot.title = "torque at the " + words::joint_word(model.joint()) +
                     ", held at each place of the repetition";
    }
    plot.range_ticks = {{0.0, "start"}, {1.0, "end"}};
    plot.cursor = model.progress;
    plot.curves = {curve_of("A", model.a, model.joint()), curve_of("B", b, model.joint())};
    plot.curves[0].dash = scene::Dash::dashed;
    plot.curves[1].strong = true;
    return plot;
}

scene::Drawing draw_pair(const PairLayout& place, const SideBySideModel& model,
                         const ComparedBody& b, const std::array<scene::BodyStage, 2>& stages,
                         const std::vector<mechanics::Muscle>& muscles, setup::UnitSystem units) {
    scene::Drawing drawing;
    drawing.size_px = place.stage_px;
    drawing.title = model.state.a.head.name + " beside " + model.state.b.head.name;
    if (place.bare) {
        add_strip(place, model, b, units, drawing.shapes);
        return drawing;
    }
    add_ground(place, stages[0], drawing.shapes);
    const std::array<const ComparedBody*, 2> bodies{&model.a, &b};
    const std::array<const setup::BodySetup*, 2> setups{&model.state.a, &model.state.b};
    for (std::size_t i = 0; i < bodies.size(); ++i) {
        scene::Drawing half =
            draw_half(place, *setups[i], model.joint(), *bodies[i], stages[i], muscles, units);
        add_other_axes(model, *bodies[i], stages[i], half.shapes);
        half = scene::moved(std::move(half), {i == 0 ? 0.0 : 0.5 * place.stage_px.x(), 0.0});
        drawing.shapes.insert(drawing.shapes.end(), half.shapes.begin(), half.shapes.end());
    }
    if (model.moves())
        scene::add_curve_plot(plot_of_pair(place, model, b), drawing.shapes);
    add_strip(place, model, b, units, drawing.shapes);
    return drawing;
}

} // namespace steelyard::app

#include "app/body/body_screen.h"

#include "app/body/body_column.h"
#include "scene/body_drawing.h"
#include "setup/format_quantity.h"

#include <GLFW/glfw3.h>

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using mechanics::Hinge;
using scene::Point;

constexpr double kHeadingTop_px = 72.0;
constexpr double kScrubStep = 0.02;
/// A repetition without a tempo is shown at this one.
constexpr mechanics::Tempo kUsualTempo{2.0, 0.5, 2.0};

/// The exercise at its start, middle and end: what the stage must hold.
std::vector<mechanics::BodyResult> key_places(const BodyModel& model) {
    auto places = scene::solved_along(model.state.setup.exercise, {0.0, 0.5, 1.0});
    if (places.empty())
        places.push_back(model.solved);
    return places;
}

void fit_stage(const Style& style, const Layout& layout, BodyScreen& screen) {
    const bool resized = (screen.stage.size_px - layout.stage_px).norm() > 0.5;
    if (screen.stage_fits && !resized)
        return;
    const double scale = style.fonts.scale;
    screen.stage = scene::fit_body(screen.model.state.setup.exercise.body_case.body,
                                   key_places(screen.model), screen.camera, layout.stage_px,
                                   {110.0 * scale, 270.0 * scale, 130.0 * scale, 140.0 * scale});
    screen.stage_fits = true;
}

double rounded_angle(const BodyModel& model, Hinge hinge, double progress) {
    const mechanics::Exercise& exercise = model.state.setup.exercise;
    return mechanics::pose_at(exercise.body_case.pose, *exercise.path, progress)[hinge];
}

scene::CurvePlot plot_of(const Style& style, const Layout& layout, const BodyModel& model,
                         setup::UnitSystem units) {
    const double scale = style.fonts.scale;
    scene::CurvePlot plot;
    plot.text_scale = scale;
    plot.size_px = Point(250.0, 200.0) * scale;
    plot.corner_px = {layout.stage_px.x() - plot.size_px.x() - 16.0, 78.0 * scale};
    plot.title = "torque through the range";
    plot.cursor = model.progress;
    constexpr scene::Dash kDashes[] = {scene::Dash::solid, scene::Dash::dashed,
                                       scene::Dash::dotted};
    for (std::size_t i = 0; i < model.state.setup.axes.size(); ++i) {
        scene::Curve curve;
        const Hinge hinge = model.state.setup.axes[i];
        curve.name = scene::joint_word(hinge);
        curve.dash = kDashes[i % std::size(kDashes)];
        curve.strong = i == model.state.chosen;
        for (const mechanics::PerHinge& torques : model.sweep.muscle_Nm)
            curve.values.push_back(std::abs(torques[mechanics::index_of(hinge)]));
        plot.curves.push_back(std::move(curve));
    }
    const auto angle = [&](double progress) {
        return setup::format_quantity(rounded_angle(model, model.axis(), progress),
                                      setup::Dimension::angle, units, {2, false});
    };
    plot.left_end = angle(0.0);
    plot.right_end = angle(1.0);
    return plot;
}

void scrub_by(BodyScreen& screen, double step) {
    screen.playing = false;
    update(screen.model, Scrub{screen.model.progress + step});
}

/// Makes the first resistance that has a size heavier or lighter.
void change_load(BodyScreen& screen, double sign, bool coarse) {
    const auto& resistances = screen.model.state.setup.exercise.body_case.resistances;
    for (std::size_t i = 0; i < resistances.size(); ++i) {
        const std::optional<ResistanceSize> size = size_of(resistances[i]);
        if (!size)
            continue;
        const double step =
            (size->dimension == setup::Dimension::mass ? 0.5 : 5.0) * (coarse ? 10.0 : 1.0);
        update(screen.model, SetResistance{i, size->value_SI + sign * step, screen.gesture});
    }
}

void look_from(BodyScreen& screen, const scene::Camera& camera) {
    screen.camera = camera;
    screen.stage_fits = false;
}

void press(BodyScreen& screen, const KeyPress& key) {
    const bool shift = (key.modifiers & GLFW_MOD_SHIFT) != 0;
    const bool control = (key.modifiers & GLFW_MOD_CONTROL) != 0;
    const std::size_t axes = screen.model.state.setup.axes.size();
    switch (key.key) {
    case GLFW_KEY_RIGHT:
        return scrub_by(screen, shift ? 5.0 * kScrubStep : kScrubStep);
    case GLFW_KEY_LEFT:
        return scrub_by(screen, shift ? -5.0 * kScrubStep : -kScrubStep);
    case GLFW_KEY_UP:
    case GLFW_KEY_DOWN:
        return change_load(screen, key.key == GLFW_KEY_UP ? 1.0 : -1.0, shift);
    case GLFW_KEY_SPACE:
        screen.playing = screen.model.moves() && !screen.playing;
        return;
    case GLFW_KEY_TAB:
        return update(screen.model,
                      ChooseAxis{(screen.model.state.chosen + (shift ? axes - 1 : 1)) % axes});
    case GLFW_KEY_1:
        return look_from(screen, scene::side_camera());
    case GLFW_KEY_2:
        return look_from(screen, scene::front_camera());
    case GLFW_KEY_3:
        return look_from(screen, scene::above_camera());
    case GLFW_KEY_HOME:
        return look_from(screen, scene::camera_of(screen.model.state.setup.view));
    case GLFW_KEY_Z:
        if (control)
            update(screen.model, shift ? BodyIntent(RedoBody{}) : BodyIntent(UndoBody{}));
        return;
    case GLFW_KEY_Y:
        if (control)
            update(screen.model, RedoBody{});
        return;
    default:
        return;
    }
}

/// The pointer chooses an axis, drags the cursor of the plot, turns the camera.
void point(const StagePointer& pointer, const scene::CurvePlot& plot, BodyScreen& screen) {
    if (pointer.panning && pointer.moved_px.norm() > 0.0) {
        screen.camera = scene::turned(screen.camera, -0.008 * pointer.moved_px.x(),
                                      -0.008 * pointer.moved_px.y());
        screen.stage.camera = screen.camera;
    }
    if (pointer.pressed) {
        for (std::size_t i = 0; i < screen.model.state.setup.axes.size(); ++i) {
            const Point joint = screen.stage.to_sheet(
                screen.model.solved.placement.axis_point_m(screen.model.state.setup.axes[i]));
            if ((joint - pointer.at_px).norm() < kGripReach_px)
                update(screen.model, ChooseAxis{i});
        }
        screen.holds_plot = screen.model.moves() && scene::is_over(plot, pointer.at_px);
    }
    if (pointer.released)
        screen.holds_plot = false;
    if (screen.holds_plot) {
        screen.playing = false;
        update(screen.model, Scrub{scene::range_at(plot, pointer.at_px)});
    }
}

void play(BodyScreen& screen, double seconds) {
    if (!screen.playing)
        return;
    const mechanics::Tempo tempo = screen.model.state.setup.exercise.tempo.value_or(kUsualTempo);
    screen.played_s =
        std::fmod(screen.played_s + std::min(seconds, 0.1), mechanics::duration_s(tempo));
    update(screen.model, Scrub{mechanics::tempo_state(tempo, screen.played_s).progress});
}

void tell_grips(const Style& style, const BodyScreen& screen) {
    if (style.narration == nullptr)
        return;
    for (const Hinge hinge : screen.model.state.setup.axes)
        style.narration->add_grip(
            scene::joint_word(hinge) + " axis",
            screen.stage.to_sheet(screen.model.solved.placement.axis_point_m(hinge)));
}

} // namespace

void open_exercise(BodyScreen& screen, const setup::BodySetup& setup) {
    update(screen.model, OpenExercise{setup});
    screen.playing = false;
    screen.played_s = 0.0;
    look_from(screen, scene::camera_of(setup.view));
}

BodyOutcome run_body(const Style& style, const Layout& layout, const FrameInput& input,
                     setup::UnitSystem units, BodyScreen& screen) {
    fit_stage(style, layout, screen);
    for (const KeyPress& key : *input.keys)
        press(screen, key);
    point(input.pointer, plot_of(style, layout, screen.model, units), screen);
    play(screen, input.seconds);
    const BodyColumnOutcome column =
        draw_body_column(style, layout, screen.model, units, screen.playing);
    if (column.chosen_axis)
        update(screen.model, ChooseAxis{*column.chosen_axis});
    if (column.play)
        screen.playing = !screen.playing;
    fit_stage(style, layout, screen);

    scene::BodyDrawing how;
    how.name = screen.model.state.setup.head.name;
    how.sentence = screen.model.state.setup.head.description;
    how.units = units;
    how.text_scale = style.fonts.scale;
    how.heading_top_px = kHeadingTop_px * style.fonts.scale;
    how.axes = screen.model.state.setup.axes;
    how.chosen = screen.model.state.chosen;
    how.muscles = screen.model.at_axis;
    BodyOutcome outcome;
    outcome.drawing = scene::draw_body(screen.model.posed, screen.model.solved, screen.stage, how);
    if (screen.model.moves())
        scene::add_curve_plot(plot_of(style, layout, screen.model, units), outcome.drawing.shapes);
    tell_grips(style, screen);
    return outcome;
}

} // namespace steelyard::app

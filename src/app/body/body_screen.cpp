#include "app/body/body_screen.h"

#include "scene/body_drawing.h"

#include <GLFW/glfw3.h>

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using mechanics::Hinge;
using scene::Point;
using scene::Role;

constexpr double kHeadingTop_px = 72.0;
constexpr double kBarBelowHeading_px = 50.0;
constexpr double kSecondLine_px = 18.0;
constexpr double kZoomPerNotch = 1.12;
constexpr double kLeastZoom_px_m = 40.0;
constexpr double kMostZoom_px_m = 4000.0;
constexpr double kTurn_rad_px = 0.008;
/// A repetition without a tempo is shown at this one.
constexpr mechanics::Tempo kUsualTempo{2.0, 0.5, 2.0};

/// The exercise at its start, middle and end: what the stage must hold.
std::vector<mechanics::BodyResult> key_places(const BodyModel& model) {
    auto places = scene::solved_along(model.exercise(), {0.0, 0.5, 1.0});
    if (places.empty())
        places.push_back(model.solved);
    return places;
}

void fit_stage(const Style& style, const Layout& layout, BodyScreen& screen) {
    const bool resized = (screen.stage.size_px - layout.stage_px).norm() > 0.5;
    if (screen.stage_fits && !resized)
        return;
    const double scale = style.fonts.scale;
    const scene::Rect plot = plot_room(layout, scale);
    const double right_px =
        screen.model.moves() ? layout.stage_px.x() - plot.low.x() + 20.0 : 130.0 * scale;
    const double short_px = layout.stage_px.minCoeff();
    screen.stage = scene::fit_body(screen.model.exercise().body_case.body, key_places(screen.model),
                                   screen.camera, layout.stage_px,
                                   {std::min(130.0 * scale, 0.2 * layout.stage_px.x()), right_px,
                                    std::min(150.0 * scale, 0.3 * short_px), 125.0 * scale});
    screen.stage_fits = true;
}

/// The exercise's sentence in one or two lines, beside the plot.
struct Heading {
    std::string first;
    std::string second;
    double bar_top_px = 0.0; ///< of the numbers below it
};

Heading heading_of(const Style& style, const Layout& layout, const BodyModel& model) {
    const TextStyle how{scene::TextSize::caption, false, Role::quiet_ink};
    const std::string& sentence = model.state.setup.head.description;
    const double right_px =
        model.moves() ? plot_room(layout, style.fonts.scale).low.x() - 16.0 : layout.stage_px.x();
    const auto width_px = static_cast<float>(std::max(right_px - 24.0, 120.0));
    Heading heading{sentence, "", (kHeadingTop_px + kBarBelowHeading_px) * style.fonts.scale};
    while (text_width(style, how, heading.first) > width_px) {
        const std::size_t blank = heading.first.rfind(' ');
        if (blank == std::string::npos)
            break;
        heading.first.resize(blank);
    }
    if (heading.first.size() < sentence.size()) {
        heading.second = shortened(style, how, sentence.substr(heading.first.size() + 1), width_px);
        heading.bar_top_px += kSecondLine_px * style.fonts.scale;
    }
    return heading;
}

void look_from(BodyScreen& screen, const scene::Camera& camera) {
    screen.camera = camera;
    screen.stage_fits = false;
}

void zoom(BodyScreen& screen, const Point& about_px, double factor) {
    const double kept =
        std::clamp(screen.stage.px_per_m * factor, kLeastZoom_px_m, kMostZoom_px_m) /
        screen.stage.px_per_m;
    screen.stage.origin_px = about_px + kept * (screen.stage.origin_px - about_px);
    screen.stage.px_per_m *= kept;
}

/// The camera turns about the middle of the body, which stays where it is.
void turn(BodyScreen& screen, const Point& moved_px) {
    const mechanics::Vec3 middle_m = screen.model.solved.centre_of_mass_m;
    const Point before_px = screen.stage.to_sheet(middle_m);
    screen.camera =
        scene::turned(screen.camera, -kTurn_rad_px * moved_px.x(), -kTurn_rad_px * moved_px.y());
    screen.stage.camera = screen.camera;
    screen.stage.origin_px += before_px - screen.stage.to_sheet(middle_m);
}

void apply_intent(BodyScreen& screen, const BodyIntent& intent) {
    if (std::holds_alternative<Scrub>(intent))
        screen.playing = false;
    else
        screen.notice.clear();
    update(screen.model, intent);
}

/// Keys of the view. @return false for a key that is for the exercise
bool press_for_view(BodyScreen& screen, const KeyPress& key, setup::UnitSystem units) {
    switch (key.key) {
    case GLFW_KEY_SPACE:
        screen.playing = screen.model.moves() && !screen.playing;
        return true;
    case GLFW_KEY_1:
        look_from(screen, scene::side_camera());
        return true;
    case GLFW_KEY_2:
        look_from(screen, scene::front_camera());
        return true;
    case GLFW_KEY_3:
        look_from(screen, scene::above_camera());
        return true;
    case GLFW_KEY_HOME:
        look_from(screen, scene::camera_of(screen.model.state.setup.view));
        return true;
    case GLFW_KEY_R:
        unfold_next(read_axes(screen.model, units), (key.modifiers & GLFW_MOD_SHIFT) != 0 ? -1 : 1,
                    screen.column);
        return true;
    case GLFW_KEY_P: {
        const auto next = static_cast<std::size_t>(screen.plot.subject) + 1;
        screen.plot.subject = kPlotSubjects[next % std::size(kPlotSubjects)];
        return true;
    }
    case GLFW_KEY_S:
        screen.column.spread = !screen.column.spread;
        return true;
    case GLFW_KEY_EQUAL:
    case GLFW_KEY_KP_ADD:
        zoom(screen, 0.5 * screen.stage.size_px, kZoomPerNotch);
        return true;
    case GLFW_KEY_MINUS:
    case GLFW_KEY_KP_SUBTRACT:
        zoom(screen, 0.5 * screen.stage.size_px, 1.0 / kZoomPerNotch);
        return true;
    default:
        return false;
    }
}

void point(const StagePointer& pointer, setup::UnitSystem units, BodyScreen& screen) {
    if (pointer.panning && pointer.moved_px.norm() > 0.0)
        turn(screen, pointer.moved_px);
    if (pointer.on_stage && pointer.wheel != 0.0)
        zoom(screen, pointer.at_px, std::pow(kZoomPerNotch, pointer.wheel));
    if (!screen.hand.held && screen.model.moves()) {
        if (const auto progress = point_at_plot(pointer, screen.plot))
            apply_intent(screen, Scrub{*progress});
        if (screen.plot.held)
            return;
    }
    if (const auto intent = point_on_body(screen.model, screen.stage, pointer, units, screen.hand))
        apply_intent(screen, *intent);
}

void play(BodyScreen& screen, double seconds) {
    if (!screen.playing)
        return;
    const mechanics::Tempo tempo = screen.model.exercise().tempo.value_or(kUsualTempo);
    screen.played_s =
        std::fmod(screen.played_s + std::min(seconds, 0.1), mechanics::duration_s(tempo));
    update(screen.model, Scrub{mechanics::tempo_state(tempo, screen.played_s).progress});
}

/// The spread of what is shown, asked for when the hand rests.
const TorqueSpread* keep_spread(BodyScreen& screen) {
    if (!screen.column.spread) {
        screen.spread.drop();
        return nullptr;
    }
    if (!screen.hand.held)
        screen.spread.ask(screen.model.state.setup, screen.model.axis(), screen.model.version);
    return screen.spread.is_of(screen.model.version) ? screen.spread.found() : nullptr;
}

/// Rings around what can be taken hold of: clear where the pointer or the keyboard is.
void add_grip_rings(const BodyScreen& screen, const std::vector<BodyGrip>& grips,
                    scene::Drawing& drawing) {
    for (const BodyGrip& grip : grips) {
        const bool hovered = screen.hand.hovered && screen.hand.hovered->is_same(grip);
        const bool chosen = screen.hand.chosen == grip.part && grip.hold == BodyHold::place;
        if (!hovered && !chosen)
            continue;
        scene::Disc ring;
        ring.centre = grip.at_px;
        ring.radius_px = hovered ? 22.0 : 18.0;
        ring.fill = grip.part.kind == BodyPartKind::joint ? Role::quiet_ink : Role::load;
        ring.fill_opacity = hovered ? 0.25 : 0.14;
        ring.outline = scene::Stroke{Role::ink, chosen ? 2.0 : 1.0, scene::Dash::solid, 0.8};
        drawing.shapes.emplace_back(ring);
    }
}

void add_caption(const BodyScreen& screen, scene::Drawing& drawing) {
    if (!screen.hand.hovered || screen.hand.held)
        return;
    const BodyGrip& grip = *screen.hand.hovered;
    scene::Label caption;
    caption.text = caption_of(screen.model, screen.stage, grip);
    caption.size = scene::TextSize::caption;
    caption.strong = true;
    const bool at_right = grip.at_px.x() > 0.5 * screen.stage.size_px.x();
    caption.align = at_right ? scene::Align::right : scene::Align::left;
    caption.at = grip.at_px + Point(at_right ? -28.0 : 28.0, -22.0);
    const scene::Rect room = scene::room_of(caption, 1.0);
    scene::Box ground; // the caption lies over whatever is there
    ground.centre = 0.5 * (room.low + room.high);
    ground.size_px = room.high - room.low + Point(12.0, 10.0);
    ground.corner_px = 6.0;
    ground.fill = Role::panel;
    drawing.shapes.emplace_back(ground);
    drawing.shapes.emplace_back(std::move(caption));
}

/// The way that the load makes through the repetition.
std::vector<mechanics::Vec3> load_trail(const BodyModel& model) {
    const auto& resistances = model.exercise().body_case.resistances;
    return resistances.empty() ? std::vector<mechanics::Vec3>{}
                               : trail_of(model.exercise(), carrier_of(resistances.front()));
}

scene::Drawing draw_stage(const Style& style, const Layout& layout, setup::UnitSystem units,
                          const BodyScreen& screen) {
    const BodyModel& model = screen.model;
    scene::BodyDrawing how;
    how.name = model.state.setup.head.name;
    const Heading heading = heading_of(style, layout, model);
    how.sentence = heading.first;
    how.units = units;
    how.text_scale = style.fonts.scale;
    how.heading_top_px = kHeadingTop_px * style.fonts.scale;
    how.axes = model.state.setup.axes;
    how.chosen = model.state.chosen;
    how.muscles = model.at_axis;
    how.trail_m = load_trail(model);
    const double scale = style.fonts.scale;
    how.kept_clear.push_back({{24.0, heading.bar_top_px},
                              {0.5 * layout.stage_px.x(), heading.bar_top_px + 38.0 * scale}});
    const scene::Rect plot = plot_room(layout, scale);
    const bool plotted = model.moves() && plot.high.x() > plot.low.x();
    if (plotted)
        how.kept_clear.push_back(plot);
    scene::Drawing drawing = scene::draw_body(model.posed, model.solved, screen.stage, how);
    drawing.description = model.state.setup.head.description;
    if (!heading.second.empty()) {
        scene::Label second;
        second.at = {24.0, (kHeadingTop_px + 38.0 + kSecondLine_px) * scale};
        second.text = heading.second;
        second.size = scene::TextSize::caption;
        second.role = Role::quiet_ink;
        drawing.shapes.emplace_back(std::move(second));
    }
    const std::vector<BodyGrip> grips = body_grips(model, screen.stage);
    add_grip_rings(screen, grips, drawing);
    if (plotted)
        scene::add_curve_plot(screen.plot.plot, drawing.shapes);
    add_caption(screen, drawing);
    return drawing;
}

void tell_grips(const Style& style, const BodyScreen& screen) {
    if (style.narration == nullptr)
        return;
    for (const BodyGrip& grip : body_grips(screen.model, screen.stage))
        style.narration->add_grip(grip.name + (grip.hold == BodyHold::tip ? " tip" : " place"),
                                  grip.at_px);
}

} // namespace

void open_exercise(BodyScreen& screen, const setup::BodySetup& setup) {
    update(screen.model, OpenExercise{setup});
    screen.playing = false;
    screen.played_s = 0.0;
    screen.hand = {};
    screen.field.number.reset();
    look_from(screen, scene::camera_of(setup.view));
}

BodyOutcome run_body(const Style& style, const Layout& layout, const FrameInput& input,
                     setup::UnitSystem units, BodyScreen& screen) {
    const int version = screen.model.version;
    const double progress = screen.model.progress;
    fit_stage(style, layout, screen);
    for (const KeyPress& key : *input.keys) {
        if (press_for_view(screen, key, units))
            fit_stage(style, layout, screen);
        else if (const auto intent =
                     press_on_body(screen.model, screen.stage, key, units, screen.hand))
            apply_intent(screen, *intent);
    }
    point(input.pointer, units, screen);
    play(screen, input.seconds);
    if (screen.hand.to_type) {
        open_field(screen.field, screen.model, *screen.hand.to_type, units);
        screen.hand.to_type.reset();
    }
    const double scale = style.fonts.scale;
    if (const auto intent = draw_body_bar(
            style, screen.model, units, {24.0, heading_of(style, layout, screen.model).bar_top_px},
            std::max(plot_room(layout, scale).low.x() - 48.0, 200.0), screen.hand.chosen,
            screen.field))
        apply_intent(screen, *intent);
    const TorqueSpread* spread = keep_spread(screen);
    const BodyColumnOutcome column = draw_body_column(
        style, layout, screen.model, {units, screen.playing, spread, screen.notice}, screen.column);
    if (column.chosen_axis)
        update(screen.model, ChooseAxis{*column.chosen_axis});
    if (column.play)
        screen.playing = !screen.playing;
    fit_stage(style, layout, screen);
    if (screen.model.moves() &&
        plot_room(layout, scale).high.x() > plot_room(layout, scale).low.x()) {
        const bool banded = spread != nullptr && spread->fault.empty();
        keep_plot(screen.model, units, banded ? &spread->band : nullptr, style, layout,
                  screen.plot);
        const std::string notice =
            draw_plot_words(style, screen.model, units, screen.folder, screen.plot);
        if (!notice.empty())
            screen.notice = notice;
    }
    BodyOutcome outcome;
    outcome.drawing = draw_stage(style, layout, units, screen);
    outcome.changed =
        screen.model.version != version || (screen.model.progress != progress && !screen.playing);
    tell_grips(style, screen);
    return outcome;
}

} // namespace steelyard::app

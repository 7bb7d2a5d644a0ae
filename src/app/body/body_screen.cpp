#include "app/body/body_screen.h"

#include "app/platform/key.h"

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using scene::Point;

constexpr double kBelowBar_px = 48.0; ///< the bar itself and some air
constexpr double kZoomPerNotch = 1.12;
constexpr double kLeastZoom_px_m = 40.0;
constexpr double kMostZoom_px_m = 4000.0;
constexpr double kTurn_rad_px = 0.008;

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
    // Below the numbers of the chosen part: a head must not reach into them.
    const bool bare = is_bare(layout, scale);
    const double top_px =
        bare ? 100.0 * scale
             : keep_heading(style, layout, screen.model, screen.picture).bar_top_px +
                   kBelowBar_px * scale;
    if (screen.looks.close_up) {
        const scene::CloseUp places = close_up_places(
            style, layout, keep_heading(style, layout, screen.model, screen.picture));
        scene::BodyMargins margins = scene::close_up_margins(places, layout.stage_px, scale);
        if (bare)
            margins.bottom_px = 36.0 * scale; // without a strip
        screen.stage =
            scene::fit_part(screen.model.exercise().body_case, key_places(screen.model),
                            {screen.model.axis()}, {}, screen.camera, layout.stage_px, margins);
        screen.stage_fits = true;
        return;
    }
    screen.stage = scene::fit_body(
        screen.model.exercise().body_case, key_places(screen.model), screen.camera, layout.stage_px,
        {std::min(130.0 * scale, 0.2 * layout.stage_px.x()), right_px,
         bare || layout.narrow ? top_px : std::min(top_px, 0.3 * short_px),
         (bare ? 36.0 : 125.0) * scale});
    screen.stage_fits = true;
}

void look_from(BodyScreen& screen, const scene::Camera& camera) {
    screen.camera = camera;
    screen.stage_fits = false;
}

/// Between the chosen joint near by and the whole body.
void turn_close_up(BodyScreen& screen) {
    screen.looks.close_up = !screen.looks.close_up;
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
    case key::kSpace:
        screen.playing = screen.model.moves() && !screen.playing;
        return true;
    case key::k1:
        look_from(screen, scene::side_camera());
        return true;
    case key::k2:
        look_from(screen, scene::front_camera());
        return true;
    case key::k3:
        look_from(screen, scene::above_camera());
        return true;
    case key::k4:
        look_from(screen, scene::oblique_camera());
        return true;
    case key::kHome:
        look_from(screen, scene::camera_of(screen.model.state.setup.view));
        return true;
    case key::kR:
        unfold_next(read_axes(screen.model, units), (key.modifiers & key::kWithShift) != 0 ? -1 : 1,
                    screen.column);
        return true;
    case key::kP: {
        const auto next = static_cast<std::size_t>(screen.plot.subject) + 1;
        screen.plot.subject = kPlotSubjects[next % std::size(kPlotSubjects)];
        return true;
    }
    case key::kC:
        turn_close_up(screen);
        return true;
    case key::kN:
        screen.looks.resting_muscles = !screen.looks.resting_muscles;
        return true;
    case key::kM:
        screen.face = screen.face == ColumnFace::make ? ColumnFace::readings : ColumnFace::make;
        return true;
    case key::kS:
        screen.column.spread = !screen.column.spread;
        return true;
    case key::kEqual:
    case key::kKeypadAdd:
        zoom(screen, 0.5 * screen.stage.size_px, kZoomPerNotch);
        return true;
    case key::kMinus:
    case key::kKeypadSubtract:
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
    if (!screen.hand.held && screen.model.moves() && !screen.looks.close_up) {
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
    const mechanics::Tempo tempo = screen.model.exercise().tempo.value_or(mechanics::kUsualTempo);
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

void tell_grips(const Style& style, bool plotted, BodyScreen& screen) {
    if (style.narration == nullptr)
        return;
    for (const BodyGrip& grip : grips_of(screen.model, screen.stage, screen.hand))
        style.narration->add_grip(grip.name + (grip.hold == BodyHold::tip ? " tip" : " place"),
                                  grip.at_px);
    if (!plotted)
        return;
    const scene::CurvePlot& plot = screen.plot.plot;
    style.narration->add_grip("scrubber", scene::place_at(plot, plot.cursor));
    style.narration->add_grip("start of the path", scene::place_at(plot, 0.0));
    style.narration->add_grip("end of the path", scene::place_at(plot, 1.0));
}

/// Makes the plot anew where something changed, and runs the words around it.
void run_plot(const Style& style, const Layout& layout, setup::UnitSystem units,
              const TorqueSpread* spread, BodyScreen& screen) {
    const bool banded = spread != nullptr && spread->fault.empty();
    keep_plot(screen.model, units, banded ? &spread->band : nullptr, style, layout, screen.plot);
    std::string notice =
        draw_plot_words(style, screen.model, units, screen.folder, screen.tools, screen.plot);
    if (!notice.empty())
        screen.notice = std::move(notice);
}

/// @return the lever of the chosen joint when it was asked for on the bench
std::optional<setup::LeverSetup> run_readings_column(const Style& style, const Layout& layout,
                                                     const BodyColumnShown& shown,
                                                     BodyScreen& screen) {
    const BodyColumnWishes wishes =
        draw_body_column(style, layout, screen.model, shown, screen.column);
    screen.face = wishes.face;
    if (wishes.chosen_axis)
        update(screen.model, ChooseAxis{*wishes.chosen_axis});
    if (wishes.intent)
        apply_intent(screen, *wishes.intent);
    if (wishes.close_up)
        turn_close_up(screen);
    if (wishes.resting_muscles)
        screen.looks.resting_muscles = !screen.looks.resting_muscles;
    if (wishes.play)
        screen.playing = !screen.playing;
    if (!wishes.as_lever)
        return std::nullopt;
    auto lever = lever_of_axis(screen.model);
    if (lever)
        return *std::move(lever);
    screen.model.message = lever.error();
    return std::nullopt;
}

/// Another person or stance is fitted anew; what hangs on the body is seen to.
bool changes_extent(const BodyIntent& intent) {
    const auto* edit = std::get_if<EditExercise>(&intent);
    return edit != nullptr && (std::holds_alternative<setup::ChangePerson>(edit->edit) ||
                               std::holds_alternative<setup::TakeStance>(edit->edit));
}

void run_build_column(const Style& style, const Layout& layout, setup::UnitSystem units,
                      BodyScreen& screen) {
    const BodyReadings& readings = readings_of(screen.model, units, screen.column);
    const BuildWishes wishes = draw_build_column(
        style, layout, screen.model,
        {units, screen.playing, screen.stances, {readings.balance, readings.sunk}, screen.notice},
        screen.build);
    screen.face = wishes.face;
    if (wishes.play)
        screen.playing = !screen.playing;
    if (!wishes.intent)
        return;
    const setup::BodyView before = screen.model.state.setup.view;
    apply_intent(screen, *wishes.intent);
    screen.playing = screen.playing && screen.model.moves();
    screen.stage_fits = screen.stage_fits && !changes_extent(*wishes.intent);
    if (screen.model.state.setup.view != before)
        look_from(screen, scene::camera_of(screen.model.state.setup.view));
}

} // namespace

void open_exercise(BodyScreen& screen, const setup::BodySetup& setup) {
    update(screen.model, OpenExercise{setup});
    screen.playing = false;
    screen.played_s = 0.0;
    screen.hand = {};
    screen.looks.close_up = false;
    screen.field.number.reset();
    look_from(screen, scene::camera_of(setup.view));
}

BodyFrame run_body(const Style& style, const Layout& layout, const FrameInput& input,
                   setup::UnitSystem units, BodyScreen& screen) {
    const BodyStamp before = screen.model.stamp();
    const std::size_t axis_before = screen.model.state.chosen;
    const bool played = screen.playing;
    fit_stage(style, layout, screen);
    for (const KeyPress& key : *input.keys)
        if (press_for_view(screen, key, units))
            fit_stage(style, layout, screen);
        else if (const auto intent =
                     press_on_body(screen.model, screen.stage, key, units, screen.hand))
            apply_intent(screen, *intent);
    point(input.pointer, units, screen);
    play(screen, input.seconds);
    if (screen.hand.to_type) {
        open_field(screen.field, screen.model, *screen.hand.to_type, units);
        screen.hand.to_type.reset();
    }
    const scene::Rect room = plot_room(layout, style.fonts.scale);
    const BodyHeading& heading = keep_heading(style, layout, screen.model, screen.picture);
    if (!is_bare(layout, style.fonts.scale) || screen.field.number)
        if (const auto intent = draw_body_bar(
                style, screen.model, units, {24.0, heading.bar_top_px},
                std::max(room.low.x() - 48.0, 200.0), screen.hand.chosen, screen.field))
            apply_intent(screen, *intent);
    const TorqueSpread* spread = keep_spread(screen);
    std::optional<setup::LeverSetup> lever;
    if (screen.face == ColumnFace::make)
        run_build_column(style, layout, units, screen);
    else
        lever = run_readings_column(
            style, layout, {units, screen.playing, spread, screen.notice, screen.looks}, screen);
    if (screen.looks.close_up && screen.model.state.chosen != axis_before)
        screen.stage_fits = false; // another joint fills the stage
    fit_stage(style, layout, screen);
    const bool plotted =
        !screen.looks.close_up && screen.model.moves() && room.high.x() > room.low.x();
    if (plotted)
        run_plot(style, layout, units, spread, screen);
    keep_picture(style, layout,
                 {screen.model, screen.stage, units, plotted ? &screen.plot : nullptr,
                  screen.field.end_px, screen.looks},
                 screen.hand, screen.picture);
    tell_grips(style, plotted, screen);
    // While it is played nothing is kept; where it was stopped is.
    const bool moved = screen.model.stamp() != before || played;
    return {&screen.picture.drawing,
            screen.model.version != before.version || (moved && !screen.playing), std::move(lever)};
}

} // namespace steelyard::app

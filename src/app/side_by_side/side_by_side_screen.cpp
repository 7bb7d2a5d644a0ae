#include "app/side_by_side/side_by_side_screen.h"

#include "app/platform/key.h"
#include "app/side_by_side/pair_heads.h"

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using scene::Point;

constexpr double kScrubStep = 0.02;

/// B takes a value, and is seen on its way there.
void change_b(SideBySideScreen& screen, const mechanics::Change& change, double value) {
    const mechanics::Exercise before = screen.model.state.b.exercise;
    const auto range = mechanics::range_of(change, before);
    update(screen.model, ChangeB{change, value, 0});
    screen.stages_fit = false;
    if (range && screen.model.message.empty() && !screen.less_motion)
        screen.eased = {before, change, range->present, value, 0.0};
}

/// Takes the way to the aim as soon as it is known.
void reach_aim(SideBySideScreen& screen) {
    if (!screen.reaches_aim)
        return;
    const SideBySideModel& model = screen.model;
    if (const auto way = way_to_aim(model)) {
        screen.reaches_aim = false;
        if (!model.selected)
            update(screen.model, SelectChange{way->change});
        change_b(screen, way->change, way->reached.value);
    } else if (model.search.is_complete()) {
        screen.reaches_aim = false;
        if (model.search.changes() > 0)
            screen.model.message = "No single change of B gives that. The list below says why not.";
    }
}

void select_next(SideBySideScreen& screen, int step) {
    const auto next =
        change_after(listed_changes(screen.model, screen.column), screen.model.selected, step);
    if (!next)
        return;
    update(screen.model, SelectChange{next});
    screen.column.scroll_to_selected = true;
}

/// Takes the selected change to its aim; the first of the list when none is selected.
void take_selected(SideBySideScreen& screen) {
    if (!screen.model.search.is_complete())
        return;
    for (const mechanics::Way& way : screen.model.search.found().ways)
        if (way.change == screen.model.selected)
            return change_b(screen, mechanics::Change(way.change), way.reached.value);
}

/// Nudges the selected change by hundredths of its dial.
void nudge_pair(SideBySideScreen& screen, double hundredths) {
    const auto change = selected_change(screen.model);
    if (!change)
        return;
    const auto range = mechanics::range_of(*change, screen.model.state.b.exercise);
    if (!range)
        return;
    turn_to(screen.column.dial, *change, *range, std::nullopt);
    update(screen.model, ChangeB{*change, nudged(*range, hundredths), screen.column.dial.run});
}

void aim_next(SideBySideModel& model) {
    const AimKind next = model.aim.kind == AimKind::equal    ? AimKind::easier
                         : model.aim.kind == AimKind::easier ? AimKind::harder
                                                             : AimKind::equal;
    update(model, AimAt{{next, 0.0}});
}

void scrub_by(SideBySideScreen& screen, double step) {
    screen.playing = false;
    update(screen.model, ScrubBoth{screen.model.progress + step});
}

/// Another pair is to be fitted to the stage again.
void replace(SideBySideScreen& screen, const SideBySideIntent& intent) {
    update(screen.model, intent);
    screen.stages_fit = false;
    screen.eased.reset();
}

/// Does what a key means for levers as well.
struct PairKeys {
    SideBySideScreen& screen;

    SideBySideWish operator()(std::monostate) const { return SideBySideWish::none; }
    SideBySideWish operator()(SideBySideWish wish) const { return wish; }
    SideBySideWish operator()(SelectNext next) const {
        select_next(screen, next.step);
        return SideBySideWish::none;
    }
    SideBySideWish operator()(NudgeSelected nudged) const {
        nudge_pair(screen, nudged.hundredths);
        return SideBySideWish::none;
    }
    SideBySideWish operator()(PairKey key) const {
        switch (key) {
        case PairKey::take_selected:
            take_selected(screen);
            break;
        case PairKey::make_equal:
            if (screen.model.aim.kind != AimKind::equal)
                update(screen.model, AimAt{});
            screen.reaches_aim = true;
            break;
        case PairKey::swap:
            replace(screen, SwapSides{});
            break;
        case PairKey::copy:
            replace(screen, CopyToB{});
            break;
        case PairKey::undo:
            replace(screen, UndoCompared{});
            break;
        case PairKey::redo:
            replace(screen, RedoCompared{});
            break;
        }
        return SideBySideWish::none;
    }
};

SideBySideWish press(SideBySideScreen& screen, const KeyPress& key) {
    const bool shift = (key.modifiers & key::kWithShift) != 0;
    SideBySideModel& model = screen.model;
    const std::size_t axes = model.axes.size();
    if ((key.modifiers & key::kWithControl) != 0)
        return std::visit(PairKeys{screen}, meaning_of_pair_key(key));
    switch (key.key) {
    case key::kRight:
        scrub_by(screen, shift ? 5.0 * kScrubStep : kScrubStep);
        break;
    case key::kLeft:
        scrub_by(screen, shift ? -5.0 * kScrubStep : -kScrubStep);
        break;
    case key::kSpace:
        screen.playing = model.moves() && !screen.playing;
        break;
    case key::kTab:
        update(model, ChooseJoint{(model.chosen + (shift ? axes - 1 : 1)) % axes});
        break;
    case key::kG:
        aim_next(model);
        break;
    case key::kT:
        screen.column.wants_keyboard = true;
        break;
    case key::kL:
        update(model, ToggleLimit{model.joint()});
        break;
    default:
        return std::visit(PairKeys{screen}, meaning_of_pair_key(key));
    }
    return SideBySideWish::none;
}

/// The pointer chooses a joint or drags the cursor of the curves.
void point(const StagePointer& pointer, const PairLayout& place, SideBySideScreen& screen) {
    SideBySideModel& model = screen.model;
    if (place.bare)
        return;
    const scene::CurvePlot plot = plot_of_pair(place, model, model.b);
    if (pointer.pressed) {
        const std::array<const ComparedBody*, 2> bodies{&model.a, &model.b};
        for (std::size_t side = 0; side < bodies.size(); ++side)
            for (std::size_t i = 0; i < model.axes.size(); ++i) {
                const Point joint = Point(side == 0 ? 0.0 : place.panel_px().x(), 0.0) +
                                    screen.stages[side].to_sheet(
                                        bodies[side]->here.placement.axis_point_m(model.axes[i]));
                if ((joint - pointer.at_px).norm() < kGripReach_px)
                    update(model, ChooseJoint{i});
            }
        screen.holds_plot = model.moves() && scene::is_over(plot, pointer.at_px);
    }
    if (pointer.released)
        screen.holds_plot = false;
    if (screen.holds_plot) {
        screen.playing = false;
        update(model, ScrubBoth{scene::range_at(plot, pointer.at_px)});
    }
}

void play(SideBySideScreen& screen, double seconds) {
    if (!screen.playing)
        return;
    const ComparedState& state = screen.model.state;
    const mechanics::Tempo tempo =
        state.a.exercise.tempo.value_or(state.b.exercise.tempo.value_or(mechanics::kUsualTempo));
    screen.played_s =
        std::fmod(screen.played_s + std::min(seconds, 0.1), mechanics::duration_s(tempo));
    update(screen.model, ScrubBoth{mechanics::tempo_state(tempo, screen.played_s).progress});
}

/// B as it is seen on its way, or nothing once it is there.
std::optional<ComparedBody> ease(SideBySideScreen& screen, double seconds) {
    if (!screen.eased)
        return std::nullopt;
    if (const auto value = screen.eased->next_value(seconds)) {
        const auto changed =
            mechanics::with_change(screen.eased->before, screen.eased->change, *value);
        if (changed)
            if (auto body = solve_compared(*changed, screen.model.axes, screen.model.progress))
                return std::move(*body);
    }
    screen.eased.reset();
    return std::nullopt;
}

void keep_stages(const PairLayout& place, SideBySideScreen& screen) {
    const bool resized = (screen.stages[0].size_px - place.panel_px()).norm() > 0.5;
    if (screen.stages_fit && !resized)
        return;
    screen.stages = fit_pair(place, screen.model);
    screen.stages_fit = true;
}

void obey(const PairColumnWishes& column, SideBySideScreen& screen) {
    for (const SideBySideIntent& intent : column.intents)
        if (std::holds_alternative<CopyToB>(intent))
            replace(screen, intent);
        else
            update(screen.model, intent);
    if (column.way)
        change_b(screen, column.way->change, column.way->reached.value);
    if (column.reach_aim)
        screen.reaches_aim = true;
    if (column.dragged)
        if (const auto change = selected_change(screen.model))
            update(screen.model, ChangeB{*change, *column.dragged, screen.column.dial.run});
}

void tell_grips(const Style& style, const PairLayout& place, const SideBySideScreen& screen) {
    if (style.narration == nullptr || !screen.model.moves() || place.bare)
        return;
    const scene::CurvePlot plot = plot_of_pair(place, screen.model, screen.model.b);
    for (const double share : {0.0, screen.model.progress, 1.0}) {
        const Point at = scene::place_at(plot, share);
        style.narration->add_grip(share == screen.model.progress ? "scrubber"
                                  : share == 0.0                 ? "start"
                                                                 : "end",
                                  at);
    }
}

} // namespace

SideBySideScreen open_side_by_side(const setup::BodySetup& a, const setup::BodySetup& b,
                                   std::vector<mechanics::Muscle> muscles) {
    SideBySideScreen screen;
    screen.muscles = std::move(muscles);
    screen.model = make_side_by_side(a, b);
    return screen;
}

SideBySideFrame run_side_by_side(const Style& style, const Layout& layout, const FrameInput& input,
                                 setup::UnitSystem units, SideBySideScreen& screen) {
    SideBySideFrame frame;
    const std::size_t steps_before = screen.model.history.steps();
    for (const KeyPress& key : *input.keys) {
        const SideBySideWish wish = press(screen, key);
        if (wish != SideBySideWish::none)
            frame.wish = wish;
    }
    PairLayout place = lay_out_pair(style, layout, screen.model);
    keep_stages(place, screen);
    point(input.pointer, place, screen);
    play(screen, input.seconds);
    screen.model.search.advance();
    reach_aim(screen);
    const std::optional<ComparedBody> on_its_way = ease(screen, input.seconds);

    const PairColumnWishes column =
        draw_pair_column(style, layout, screen.model, on_its_way ? *on_its_way : screen.model.b,
                         units, screen.column);
    obey(column, screen);
    if (column.to_levers)
        frame.wish = SideBySideWish::other_kind;
    const PairHeadsWishes heads =
        draw_pair_heads(style, place, screen.model, units, screen.playing);
    if (heads.swap)
        replace(screen, SwapSides{});
    if (heads.play)
        screen.playing = !screen.playing;
    if (heads.choose)
        frame.wish = *heads.choose == Side::a ? SideBySideWish::choose_a : SideBySideWish::choose_b;
    place = lay_out_pair(style, layout, screen.model);
    keep_stages(place, screen);
    frame.drawing = draw_pair(place, screen.model, on_its_way ? *on_its_way : screen.model.b,
                              screen.stages, screen.muscles, units);
    add_head_badges(place, frame.drawing.shapes);
    tell_grips(style, place, screen);
    frame.changed = screen.model.history.steps() != steps_before;
    return frame;
}

} // namespace steelyard::app

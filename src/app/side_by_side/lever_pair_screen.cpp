#include "app/side_by_side/lever_pair_screen.h"

#include "app/side_by_side/pair_heads.h"
#include "app/side_by_side/pair_strip.h"
#include "app/widgets/area.h"
#include "scene/lever/lever_drawing.h"

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using scene::Point;

constexpr double kLeft_px = 24.0;
/// Below the row of places, at 100 %.
constexpr double kTop_px = 60.0;

/// Below this height of the stage the strip under the levers is low too.
constexpr double kLowStage_px = 540.0;
/// The words over each lever, at 100 %.
constexpr double kHead_px = 58.0;
constexpr double kLowHead_px = 36.0;
/// Halves lower than this show what is compared and nothing else, at 100 %.
constexpr double kFullHalf_px = 360.0;
constexpr double kLowHalf_px = 230.0;
/// In lower ones only the names stand: with very large text the labels would lie on each other.
constexpr double kLeastHalf_px = 100.0;

/// The stage divided: A above, B below, then the strip on which they meet.
struct Halves {
    double scale = 1.0;
    Point stage_px = Point::Zero();

    bool low() const { return stage_px.y() < kLowStage_px * scale; }
    double top_px(Side side) const { return kTop_px * scale + (side == Side::a ? 0.0 : half_px()); }
    double half_px() const {
        return 0.5 * (stage_px.y() - (kTop_px + pair_strip_height(low())) * scale);
    }
    Point size_px() const { return {stage_px.x(), half_px()}; }
    bool are_drawn() const { return half_px() >= kLeastHalf_px * scale; }
    double head_px() const { return (low() ? kLowHead_px : kHead_px) * scale; }
};

void fit_views(const Halves& place, LeverPairScreen& screen) {
    const bool resized = (screen.views[0].size_px - place.size_px()).norm() > 0.5;
    if (screen.views_fit && !resized)
        return;
    const Point size_px = place.size_px();
    const scene::StageMargins margins{
        std::min(130.0 * place.scale, 0.16 * size_px.x()),
        std::min(place.head_px() + 60.0 * place.scale, 0.45 * size_px.y()),
        std::min(70.0 * place.scale, 0.2 * size_px.y())};
    const LeverPairModel& model = screen.model;
    screen.views = {scene::fit_lever(model.state.a.lever, model.a, size_px, margins),
                    scene::fit_lever(model.state.b.lever, model.b, size_px, margins)};
    scene::share_scale(screen.views[0], screen.views[1]);
    screen.views_fit = true;
}

void change_b(LeverPairScreen& screen, const mechanics::LeverChange& change, double value) {
    const mechanics::Lever before = screen.model.state.b.lever;
    const double from = mechanics::range_of(change, before).present;
    update(screen.model, ChangeLeverB{change, value, 0});
    screen.views_fit = false;
    if (screen.model.message.empty() && !screen.less_motion)
        screen.eased = {before, change, from, value, 0.0};
}

void replace(LeverPairScreen& screen, const LeverPairIntent& intent) {
    update(screen.model, intent);
    screen.views_fit = false;
    screen.eased.reset();
}

void select_next(LeverPairModel& model, int step) {
    const mechanics::Lever& lever = model.state.b.lever;
    std::vector<mechanics::LeverChange> changes;
    for (const mechanics::LeverWay& way : model.ways.ways)
        changes.push_back(way.change);
    for (const mechanics::RefusedLeverChange& one : model.ways.refused)
        changes.push_back(one.change);
    if (changes.empty())
        changes = mechanics::possible_changes(lever);
    if (const auto next = change_after(changes, model.selected, step))
        update(model, SelectLeverChange{next});
}

/// Takes the selected way, or the smallest when `any` is enough.
void take_way(LeverPairScreen& screen, bool any) {
    const LeverPairModel& model = screen.model;
    for (const mechanics::LeverWay& way : model.ways.ways)
        if (any || way.change == model.selected) {
            const mechanics::LeverWay taken = way; // the list is made anew
            return change_b(screen, taken.change, taken.value);
        }
}

void nudge_lever_pair(LeverPairScreen& screen, double hundredths) {
    const auto change = selected_change(screen.model);
    if (!change)
        return;
    const mechanics::ChangeRange range = mechanics::range_of(*change, screen.model.state.b.lever);
    turn_to(screen.dial, *change, range, std::nullopt);
    update(screen.model, ChangeLeverB{*change, nudged(range, hundredths), screen.dial.run});
}

/// Does what a key means, which exercises have as well.
struct PairKeys {
    LeverPairScreen& screen;

    SideBySideWish operator()(std::monostate) const { return SideBySideWish::none; }
    SideBySideWish operator()(SideBySideWish wish) const { return wish; }
    SideBySideWish operator()(SelectNext next) const {
        select_next(screen.model, next.step);
        return SideBySideWish::none;
    }
    SideBySideWish operator()(NudgeSelected nudged) const {
        nudge_lever_pair(screen, nudged.hundredths);
        return SideBySideWish::none;
    }
    SideBySideWish operator()(PairKey key) const {
        switch (key) {
        case PairKey::take_selected:
            take_way(screen, false);
            break;
        case PairKey::make_equal:
            take_way(screen, true);
            break;
        case PairKey::swap:
            replace(screen, SwapLevers{});
            break;
        case PairKey::copy:
            replace(screen, CopyLeverToB{});
            break;
        case PairKey::undo:
            replace(screen, UndoLevers{});
            break;
        case PairKey::redo:
            replace(screen, RedoLevers{});
            break;
        }
        return SideBySideWish::none;
    }
};

/// B as it is seen on its way, or nothing once it is there.
struct SeenLever {
    mechanics::Lever lever;
    mechanics::LeverResult solved;
};
std::optional<SeenLever> ease(LeverPairScreen& screen, double seconds) {
    if (!screen.eased)
        return std::nullopt;
    if (const auto value = screen.eased->next_value(seconds)) {
        SeenLever seen;
        seen.lever = mechanics::with_change(screen.eased->before, screen.eased->change, *value);
        if (auto solved = mechanics::solve_lever(seen.lever)) {
            seen.solved = std::move(*solved);
            return seen;
        }
    }
    screen.eased.reset();
    return std::nullopt;
}

scene::Drawing draw_half(const Halves& place, const setup::LeverSetup& setup,
                         const mechanics::Lever& lever, const mechanics::LeverResult& solved,
                         const scene::StageView& view, setup::UnitSystem units) {
    if (!place.are_drawn())
        return {};
    scene::LeverDrawing how;
    how.limb = setup.limb;
    how.name = setup.head.name;
    how.units = units;
    how.text_scale = place.scale;
    scene::LeverMarks& marks = how.marks;
    marks.heading = marks.strip = marks.ruler = marks.arrow_scale = false;
    // The bars of the column say the same: where there is little room the drawing leaves it to
    // them.
    marks.reaction = marks.turning = place.half_px() >= kFullHalf_px * place.scale;
    marks.arms = marks.lines = marks.own_weight = place.half_px() >= kLowHalf_px * place.scale;
    how.heading_top_px = place.head_px();
    return scene::draw_lever(lever, solved, view, how);
}

void obey(const LeverPairColumnWishes& column, LeverPairScreen& screen) {
    for (const LeverPairIntent& intent : column.intents)
        if (std::holds_alternative<CopyLeverToB>(intent))
            replace(screen, intent);
        else
            update(screen.model, intent);
    if (column.way)
        change_b(screen, column.way->change, column.way->value);
    const auto change = column.dragged ? selected_change(screen.model) : std::nullopt;
    if (change)
        update(screen.model, ChangeLeverB{*change, *column.dragged, screen.dial.run});
}

/// Names of both and what can be done with them.
PairHeadsWishes draw_heads(const Style& style, const Halves& place, const LeverPairModel& model) {
    PairHeadsWishes wishes;
    for (const Side side : {Side::a, Side::b}) {
        const setup::SetupHead& head = side == Side::a ? model.state.a.head : model.state.b.head;
        const Point corner_px{kLeft_px, place.top_px(side) + 8.0 * place.scale};
        begin_area(side == Side::a ? "head a" : "head b", corner_px - Point(kLeft_px, 6.0),
                   {place.stage_px.x(), 56.0 * place.scale});
        draw_side_head(style,
                       {side, head.name, head.description, corner_px,
                        place.stage_px.x() - 2.0 * kLeft_px, place.low()},
                       wishes);
        end_area();
    }
    return wishes;
}

void append(scene::Drawing half, const Halves& place, Side side, scene::Drawing& drawing) {
    half = scene::moved(std::move(half), {0.0, place.top_px(side)});
    drawing.shapes.insert(drawing.shapes.end(), half.shapes.begin(), half.shapes.end());
    scene::add_side_badge(side, {kLeft_px, place.top_px(side) + 8.0 * place.scale}, place.scale,
                          drawing.shapes);
}

} // namespace

SideBySideFrame run_lever_pair(const Style& style, const Layout& layout, const FrameInput& input,
                               setup::UnitSystem units, LeverPairScreen& screen) {
    SideBySideFrame frame;
    const std::size_t steps_before = screen.model.history.steps();
    for (const KeyPress& key : *input.keys) {
        const SideBySideWish wish = std::visit(PairKeys{screen}, meaning_of_pair_key(key));
        if (wish != SideBySideWish::none)
            frame.wish = wish;
    }
    const std::optional<SeenLever> seen = ease(screen, input.seconds);
    const LeverPairModel& model = screen.model;
    const LeverPairColumnWishes column = draw_lever_pair_column(
        style, layout, model, seen ? seen->solved : model.b, units, screen.dial);
    obey(column, screen);
    if (column.to_exercises)
        frame.wish = SideBySideWish::other_kind;
    const Halves place{static_cast<double>(style.fonts.scale), layout.stage_px};
    const PairHeadsWishes heads = draw_heads(style, place, model);
    if (heads.swap)
        replace(screen, SwapLevers{});
    if (heads.choose)
        frame.wish = *heads.choose == Side::a ? SideBySideWish::choose_a : SideBySideWish::choose_b;
    fit_views(place, screen);

    frame.drawing.size_px = place.stage_px;
    frame.drawing.title = model.state.a.head.name + " beside " + model.state.b.head.name;
    append(draw_half(place, model.state.a, model.state.a.lever, model.a, screen.views[0], units),
           place, Side::a, frame.drawing);
    append(draw_half(place, model.state.b, seen ? seen->lever : model.state.b.lever,
                     seen ? seen->solved : model.b, screen.views[1], units),
           place, Side::b, frame.drawing);
    frame.drawing.shapes.emplace_back(
        scene::Line{{kLeft_px, place.top_px(Side::b)},
                    {place.stage_px.x() - kLeft_px, place.top_px(Side::b)},
                    {scene::Role::hairline, 1.0}});
    PairStrip strip;
    strip.says = "effort";
    strip.a = effort_size_N(model.a);
    strip.b = effort_size_N(seen ? seen->solved : model.b);
    strip.dimension = setup::Dimension::force;
    strip.low = place.low();
    add_pair_strip(strip, place.stage_px, units, place.scale, frame.drawing.shapes);
    frame.changed = model.history.steps() != steps_before;
    return frame;
}

} // namespace steelyard::app

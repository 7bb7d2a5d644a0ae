#include "app/bench/bench_screen.h"

#include "app/bench/part_bar.h"
#include "app/platform/key.h"
#include "scene/lever/lever_drawing.h"

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using scene::Point;
using scene::Role;

constexpr double kHeadingTop_px = 72.0;
constexpr double kHeading_px = 50.0;      ///< down to the numbers of the chosen part
constexpr double kHeadingAlone_px = 28.0; ///< the same without a sentence, on a narrow window

/// On a narrow window the lever keeps below the numbers of the chosen part, which take some lines.
scene::StageMargins margins_of(const Style& style, const Layout& layout, double bar_bottom_px) {
    const double scale = style.fonts.scale;
    const double short_px = std::min(layout.stage_px.x(), layout.stage_px.y());
    if (is_bare(layout, scale)) // the name above, no strip below
        return {std::min(120.0 * scale, 0.16 * layout.stage_px.x()), 112.0 * scale, 48.0 * scale};
    return {std::min(120.0 * scale, 0.16 * layout.stage_px.x()),
            std::max(std::min(170.0 * scale, 0.42 * short_px),
                     layout.narrow ? bar_bottom_px + 72.0 * scale : 0.0),
            std::min(140.0 * scale, 0.3 * short_px)};
}

/// Words keep below the numbers of the chosen part, and on a narrow window the lever, too: it stays
/// down, so that it does not jump with every choice.
void keep_below_bar(const Layout& layout, double bottom_px, BenchScreen& screen) {
    if (bottom_px <= screen.bar_bottom_px + 0.5)
        return;
    screen.bar_bottom_px = bottom_px;
    if (layout.narrow)
        screen.stage.view_fits = screen.stage.view_is_own;
}

void keep_view(const Style& style, const Layout& layout, BenchScreen& screen) {
    StageState& stage = screen.stage;
    const bool resized = (stage.view.size_px - layout.stage_px).norm() > 0.5;
    if (stage.view_fits && (!resized || stage.view_is_own)) {
        stage.view.size_px = layout.stage_px;
        return;
    }
    if (resized)
        screen.bar_bottom_px = 0.0;
    stage.view = scene::fit_lever(screen.model.state.setup.lever, screen.model.solved,
                                  layout.stage_px, margins_of(style, layout, screen.bar_bottom_px));
    stage.view_fits = true;
}

/// A lever of another length is fitted to the stage when it is let go, not while it is pulled.
void refit_after_pull(const StagePointer& pointer, StageState& stage) {
    if (pointer.released && stage.held && stage.held->part.kind == scene::PartKind::corner)
        stage.view_fits = stage.view_is_own;
}

/// True for intents after which the lever should be fitted to the stage again.
bool shows_another_lever(const BenchIntent& intent) {
    return std::holds_alternative<OpenSetup>(intent);
}

void apply_intent(BenchScreen& screen, const BenchIntent& intent, BenchFrame& frame) {
    update(screen.model, intent);
    frame.changed = true;
    if (shows_another_lever(intent)) {
        screen.stage.view_fits = false;
        screen.stage.view_is_own = false;
        screen.stage.chosen = {scene::PartKind::effort, 0};
        screen.field = {};
    }
}

void aim_tilt(BenchScreen& screen, double seconds) {
    double rest_rad = 0.0;
    if (screen.model.state.hand_N) {
        const mechanics::HandBalance hand = mechanics::balance_by_hand(
            screen.model.state.setup.lever, screen.model.solved, *screen.model.state.hand_N);
        rest_rad = resting_tilt(hand.net_torque_Nm, std::max(std::abs(hand.torque_effort_Nm),
                                                             std::abs(hand.torque_load_Nm)));
    }
    screen.settle.aim(rest_rad, screen.less_motion);
    screen.settle.advance(seconds);
}

/// Rings around what can be taken hold of: always faint, clear where the pointer or the keyboard
/// is. They lie under the lever.
void add_grip_rings(const BenchScreen& screen, scene::Drawing& drawing) {
    std::vector<scene::Shape> rings;
    for (const scene::Grip& grip : bench_grips(screen.model, screen.pose(), screen.stage)) {
        const bool hovered = screen.stage.hovered && screen.stage.hovered->part == grip.part &&
                             screen.stage.hovered->hold == grip.hold;
        const bool chosen = screen.stage.chosen == grip.part && grip.hold == scene::Hold::place;
        if (!hovered && !chosen && grip.part.kind != scene::PartKind::corner)
            continue;
        scene::Disc ring;
        ring.centre = grip.at_px;
        ring.radius_px = hovered ? 20.0 : chosen ? 16.0 : 7.0;
        ring.fill = grip.part.kind == scene::PartKind::effort ? Role::effort
                    : grip.part.kind == scene::PartKind::load ? Role::load
                                                              : Role::quiet_ink;
        ring.fill_opacity = hovered ? 0.22 : chosen ? 0.12 : 0.35;
        if (chosen)
            ring.outline = scene::Stroke{Role::ink, 1.5, scene::Dash::solid, 0.8};
        rings.emplace_back(ring);
    }
    drawing.shapes.insert(drawing.shapes.begin(), rings.begin(), rings.end());
}

/// What the held or hovered grip does, beside it.
std::string grip_caption(const BenchModel& model, const scene::Grip& grip) {
    const std::string name = name_of(model.state.setup.lever, grip.part);
    if (grip.part.kind == scene::PartKind::corner)
        return name + ": drag to lengthen or bend the lever";
    if (grip.hold == scene::Hold::place)
        return name + ": drag along the lever";
    if (value_of(model.state.handled(), {grip.part, LeverField::mass}))
        return name + ": drag to make it heavier or lighter";
    const bool sized = value_of(model.state.handled(), {grip.part, LeverField::force}).has_value();
    return name + (sized ? ": drag to turn or pull harder" : ": drag to turn");
}

void add_caption(const BenchScreen& screen, scene::Drawing& drawing) {
    if (!screen.stage.hovered || screen.stage.held)
        return;
    const scene::Grip& grip = *screen.stage.hovered;
    scene::Label caption;
    caption.text = grip_caption(screen.model, grip);
    caption.size = scene::TextSize::caption;
    caption.role = Role::quiet_ink;
    const bool at_right = grip.at_px.x() > 0.6 * screen.stage.view.size_px.x();
    caption.align = at_right ? scene::Align::right : scene::Align::left;
    caption.at = grip.at_px + Point(at_right ? -26.0 : 26.0, -22.0);
    drawing.shapes.emplace_back(std::move(caption));
}

scene::Drawing draw_stage(const Style& style, const Layout& layout, const BenchScreen& screen) {
    const bool bare = is_bare(layout, style.fonts.scale);
    const BenchModel& model = screen.model;
    scene::LeverDrawing how;
    how.limb = model.state.setup.limb;
    how.name = model.state.setup.head.name;
    if (!bare && !layout.narrow)
        how.sentence = shortened(style, {scene::TextSize::caption, false, Role::quiet_ink},
                                 model.state.setup.head.description,
                                 static_cast<float>(screen.stage.view.size_px.x() - 48.0));
    how.marks.strip = !bare;
    // Where room is short the column tells them.
    how.marks.arrow_scale = how.marks.ruler = screen.stage.all_forces;
    how.marks.reaction = how.marks.own_weight = screen.stage.all_forces;
    how.units = model.units;
    how.text_scale = style.fonts.scale;
    how.pose = screen.pose();
    how.heading_top_px = kHeadingTop_px * style.fonts.scale;
    how.heading_room_px =
        bare ? 24.0 * style.fonts.scale
             : std::max(92.0 * style.fonts.scale, screen.bar_bottom_px - how.heading_top_px);
    scene::Drawing drawing =
        scene::draw_lever(model.state.setup.lever, model.solved, screen.stage.view, how);
    add_grip_rings(screen, drawing);
    add_caption(screen, drawing);
    return drawing;
}

void tell_grips(const Style& style, const BenchScreen& screen) {
    if (style.narration == nullptr)
        return;
    for (const scene::Grip& grip : bench_grips(screen.model, screen.pose(), screen.stage))
        style.narration->add_grip(name_of(screen.model.state.setup.lever, grip.part) +
                                      (grip.hold == scene::Hold::tip ? " tip" : " place"),
                                  grip.at_px);
}

} // namespace

BenchFrame run_bench(const Style& style, const Layout& layout, const FrameInput& input,
                     BenchScreen& screen) {
    BenchFrame frame;
    const bool bare = is_bare(layout, style.fonts.scale);
    screen.stage.all_forces = !bare && !layout.narrow;
    keep_view(style, layout, screen);
    refit_after_pull(input.pointer, screen.stage);
    if (const auto intent =
            point_on_stage(screen.model, input.pointer, screen.pose(), screen.stage))
        apply_intent(screen, *intent, frame);
    for (const KeyPress& key : *input.keys)
        if (key.key == key::kR)
            unfold_next(read_bench(screen.model), (key.modifiers & key::kWithShift) != 0 ? -1 : 1,
                        screen.column);
        else if (const auto intent = press_on_stage(screen.model, key, screen.stage))
            apply_intent(screen, *intent, frame);
    if (screen.stage.to_type) {
        open_field(screen.field, screen.model, *screen.stage.to_type);
        screen.stage.to_type.reset();
    }
    const double heading_px = layout.narrow ? kHeadingAlone_px : kHeading_px;
    const Point bar_at{24.0, (kHeadingTop_px + heading_px) * style.fonts.scale};
    if (!bare || screen.field.is_open()) {
        const PartBar bar = draw_part_bar(
            style, screen.model, {bar_at, layout.stage_px.x() - 48.0, screen.bar_bottom_px},
            screen.stage, screen.field);
        if (!bare)
            keep_below_bar(layout, bar.bottom_px, screen);
        if (bar.intent)
            apply_intent(screen, *bar.intent, frame);
    }
    keep_view(style, layout, screen);
    aim_tilt(screen, input.seconds);

    const ColumnWishes column =
        draw_column(style, screen.model, read_bench(screen.model), layout, screen.column);
    if (column.switch_hand)
        apply_intent(screen, hand_switch(screen.model), frame);
    if (column.draw_as)
        apply_intent(screen, *column.draw_as, frame);
    frame.ask_question = column.ask_question;
    frame.drawing = draw_stage(style, layout, screen);
    tell_grips(style, screen);
    return frame;
}

} // namespace steelyard::app

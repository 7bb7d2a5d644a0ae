#include "app/body/body_column.h"

#include "app/body/muscle_arms.h"
#include "app/look/text_styles.h"
#include "app/widgets/buttons.h"
#include "app/widgets/reading_row.h"
#include "app/widgets/steps_box.h"
#include "scene/body/body_drawing.h"
#include "setup/units/format_quantity.h"
#include "words/body/body_words.h"
#include "words/caution.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using scene::Role;
using scene::TextSize;
using setup::Dimension;

void draw_head(const BodyReadings& readings, const Layout& layout, ColumnPen& pen) {
    pen.skip(layout.narrow ? 20.0F : 28.0F);
    pen.line(kCaption, "The load pulls hardest at");
    pen.skip(46.0F);
    pen.headline(readings.headline);
    pen.skip(28.0F);
    pen.told(kQuietBody, readings.sentence);
}

/// A bar from the corner; what lies beyond the part of one side is set off by a gap.
void draw_bar(const Style& style, ImVec2 corner, float length_px, double part, ImDrawList& list) {
    const auto piece = [&](float from_px, float to_px) {
        list.AddRectFilled({corner.x + from_px, corner.y},
                           {corner.x + std::max(to_px, from_px + 1.0F), corner.y + style.px(14.0F)},
                           style.mark(Role::ink), 4.0F);
    };
    const float gap_px = style.px(3.0F);
    const float one_px = static_cast<float>(part) * length_px;
    if (part >= 1.0 || length_px < 3.0F * gap_px)
        return piece(0.0F, length_px);
    piece(0.0F, one_px - 0.5F * gap_px);
    piece(one_px + 0.5F * gap_px, length_px);
}

/// One bar for each candidate axis, from a shared zero.
std::optional<std::size_t> draw_bars(const Style& style, const std::vector<BodyBar>& bars,
                                     bool one_side, std::size_t in_force, ColumnPen& pen) {
    std::optional<std::size_t> chosen;
    const auto words_at = [one_side](const BodyBar& bar) -> const BarWords& {
        return one_side ? bar.one : bar.both;
    };
    float name_px = style.px(92.0F);
    for (const BodyBar& bar : bars)
        name_px =
            std::max(name_px, text_width(style, kQuietBody, words_at(bar).name) + style.px(16.0F));
    const float value_px = style.px(92.0F);
    const float bar_px = pen.width() - name_px - value_px;
    for (std::size_t i = 0; i < bars.size(); ++i) {
        ImGui::PushID(static_cast<int>(i));
        if (row_button(style, "axis", {pen.left() - 8.0F, pen.y()}, pen.width() + 16.0F,
                       style.px(29.0F), i == in_force))
            chosen = i;
        ImGui::PopID();
        const float base = pen.y() + style.px(21.0F);
        const BarWords& words = words_at(bars[i]);
        draw_text(pen.list(), style, kQuietBody, {pen.left() + style.px(4.0F), base}, words.name);
        draw_bar(style, {pen.left() + name_px, pen.y() + style.px(9.0F)},
                 static_cast<float>(bars[i].share) * bar_px, one_side ? bars[i].part : 1.0,
                 pen.list());
        const TextStyle how{TextSize::body, false, Role::ink};
        draw_text(pen.list(), style, how,
                  {pen.left() + pen.width() - text_width(style, how, words.value), base},
                  words.value);
        pen.skip(29.0F);
    }
    return chosen;
}

/// Whether the bars' words are of both sides or of one; their lengths are of both.
void draw_sides(const Style& style, BodyColumnState& state, ColumnPen& pen) {
    pen.skip(20.0F);
    float x = pen.left();
    for (const auto& [word, one_side] :
         {std::pair("Both sides", false), std::pair("One side", true)}) {
        if (word_button(style, word, {x, pen.y()}, word, state.one_side == one_side))
            state.one_side = one_side;
        x += text_width(style, kQuietBody, word) + style.px(20.0F);
    }
    pen.skip(32.0F);
    pen.paragraph(kCaption,
                  state.one_side
                      ? "Numbers of one side; the bars are of both, to compare with joints "
                        "of the middle."
                      : "Paired joints above: both sides. Below and on the stage: each.");
    pen.skip(-10.0F);
}

/// Load and muscles as bars from one zero: how much more than the load the muscles pull.
void draw_force_pair(const Style& style, const ForcePair& pair, ColumnPen& pen) {
    const double largest_N = std::max(pair.load_N, pair.muscles_N);
    const float height_px = style.px(12.0F);
    pen.skip(6.0F);
    for (const auto& [name, size_N, role] : {std::tuple("load", pair.load_N, Role::load),
                                             std::tuple("muscles", pair.muscles_N, Role::effort)}) {
        const float name_px = style.px(64.0F);
        draw_text(pen.list(), style, kCaption, {pen.left(), pen.y() + height_px - style.px(1.0F)},
                  name);
        const float length_px =
            std::max(2.0F, static_cast<float>(size_N / largest_N) * (pen.width() - name_px));
        const ImVec2 corner{pen.left() + name_px, pen.y()};
        pen.list().AddRectFilled(corner, {corner.x + length_px, corner.y + height_px},
                                 style.mark(role), 3.0F);
        const bool shorter = size_N < largest_N; // the words stand where there is room for them
        const float words_px = text_width(style, kCaption, pair.words);
        if (shorter && name_px + length_px + style.px(8.0F) + words_px < pen.width())
            draw_text(pen.list(), style, kCaption,
                      {corner.x + length_px + style.px(8.0F), pen.y() + height_px - style.px(1.0F)},
                      pair.words);
        pen.skip(18.0F);
    }
    pen.skip(10.0F); // a paragraph may follow
}

/// The moment arms of the muscles, to be typed in place of those on file.
std::optional<BodyIntent> draw_arms(const Style& style, const BodyModel& model,
                                    setup::UnitSystem units, BodyColumnState& state,
                                    ColumnPen& pen) {
    const std::vector<MuscleArm> arms = muscle_arms(model);
    if (arms.empty())
        return std::nullopt;
    pen.skip(16.0F);
    pen.line(kCaption, "Moment arms; press one to give your own");
    std::vector<TypedChip> chips;
    for (const MuscleArm& arm : arms)
        chips.push_back(
            {arm.given ? arm.muscle + " (given)" : arm.muscle, arm.size_m, Dimension::length});
    if (const auto entered = draw_typed_chips(style, chips, units, pen, state.arms))
        return EditExercise{with_arm(model, arms[entered->index], entered->value_SI), 0};
    const bool any_given =
        std::any_of(arms.begin(), arms.end(), [](const MuscleArm& arm) { return arm.given; });
    if (!any_given)
        return std::nullopt;
    const bool back =
        word_button(style, "arms", {pen.left(), pen.y()}, "Moment arms as on file", false);
    pen.skip(28.0F);
    return back ? std::optional<BodyIntent>(EditExercise{with_arms_on_file(model), 0})
                : std::nullopt;
}

std::optional<BodyIntent> draw_rows(const Style& style, const BodyModel& model,
                                    const BodyReadings& readings, setup::UnitSystem units,
                                    BodyColumnState& state, ColumnPen& pen) {
    std::optional<BodyIntent> intent;
    pen.skip(22.0F);
    pen.line(kCaption, readings.at);
    pen.skip(8.0F);
    for (const BodyRow& row : readings.rows) {
        const bool open = state.unfolded == row.id;
        if (draw_reading_row(style, row.name, row.value, row.role, pen)) {
            state.unfolded = open ? std::nullopt : std::optional(row.id);
            state.arms.open.reset();
        }
        if (row.id == words::BodyQuantity::muscles && readings.pair)
            draw_force_pair(style, *readings.pair, pen);
        else if (row.id == words::BodyQuantity::muscles)
            pen.skip(12.0F); // a paragraph may follow here too
        // The caution belongs beside the share, and both are long: where the torque is unfolded.
        if (row.id == words::BodyQuantity::torque && open && !readings.strength.empty())
            pen.told(kCaption, readings.strength);
        if (row.id == words::BodyQuantity::muscles)
            for (const std::string& words : {readings.basis, readings.why_no_force})
                if (!words.empty())
                    pen.told(kCaption, words);
        if (row.id == words::BodyQuantity::muscles && open)
            intent = draw_arms(style, model, units, state, pen);
        if (open)
            draw_steps_box(style,
                           state.steps.of({{model.stamp(), units}, row.id},
                                          [&] { return words_of(steps_of(model, row.id, units)); }),
                           pen);
    }
    return intent;
}

std::string spread_words(const BodyModel& model, const TorqueSpread& spread,
                         setup::UnitSystem units) {
    const double one = std::abs(scene::value_at(spread.band.low, model.progress));
    const double other = std::abs(scene::value_at(spread.band.high, model.progress));
    const auto text = [&](double value_Nm) {
        return setup::format_quantity(value_Nm, Dimension::torque, units);
    };
    return fmt::format("90 of 100 bodies of this sex, height and mass: {} to {} at the {}.",
                       text(std::min(one, other)), text(std::max(one, other)),
                       scene::axis_word(model.state.setup.axes, model.axis()));
}

/// How much the torque differs between bodies of this sex, height and mass.
void draw_spread(const Style& style, const BodyModel& model, const BodyColumnShown& shown,
                 BodyColumnState& state, ColumnPen& pen) {
    pen.skip(20.0F);
    if (word_button(style, "spread", {pen.left(), pen.y()},
                    state.spread ? "Hide how bodies differ" : "How much do bodies differ?", false))
        state.spread = !state.spread;
    pen.skip(22.0F);
    if (!state.spread)
        return;
    if (shown.spread == nullptr) {
        pen.paragraph(kCaption, fmt::format("Solving {} bodies …", kSpreadBodies));
        return;
    }
    if (!shown.spread->fault.empty()) {
        pen.paragraph({TextSize::caption, false, Role::wrong}, shown.spread->fault);
        return;
    }
    pen.paragraph(kCaption, state.spread_words.of({model.stamp(), shown.units}, [&] {
        return spread_words(model, *shown.spread, shown.units);
    }));
}

/// The chosen joint near by, and back; the muscles that do not pull.
void draw_looks(const Style& style, const BodyModel& model, const BodyColumnShown& shown,
                ColumnPen& pen, BodyColumnWishes& wishes) {
    const char* near = shown.looks.close_up ? "Whole body" : "Close-up";
    pen.skip(18.0F);
    wishes.close_up = word_button(style, "close-up", {pen.left(), pen.y()}, near, false);
    if (model.at_axis) {
        const float beside = pen.left() + text_width(style, {}, near) + style.px(20.0F);
        wishes.resting_muscles = word_button(style, "resting", {beside, pen.y()}, "Antagonists",
                                             shown.looks.resting_muscles);
    }
}

/// The way to the bench, where axis, effort and load of the chosen joint are placed by hand.
bool draw_way_to_bench(const Style& style, ColumnPen& pen) {
    pen.skip(10.0F);
    const bool pressed = word_button(style, "bench", {pen.left(), pen.y()},
                                     "Place axis, effort and load by hand", false);
    pen.skip(22.0F);
    return pressed;
}

void draw_words(const BodyModel& model, const BodyReadings& readings, std::string_view notice,
                ColumnPen& pen) {
    for (const std::string& fault : {readings.balance, readings.sunk})
        if (!fault.empty())
            pen.paragraph({TextSize::body, true, Role::wrong}, fault);
    if (!model.message.empty())
        pen.paragraph({TextSize::caption, false, Role::wrong}, model.message);
    if (!notice.empty())
        pen.paragraph({TextSize::caption, true, Role::ink}, notice);
    pen.paragraph(kCaption, words::kCaution); // before what may have to be scrolled to
    if (!model.state.setup.head.note.empty())
        pen.told(kCaption, model.state.setup.head.note);
}

} // namespace

void unfold_next(const BodyReadings& readings, int step, BodyColumnState& state) {
    std::vector<std::optional<words::BodyQuantity>> order{std::nullopt};
    for (const BodyRow& row : readings.rows)
        order.emplace_back(row.id);
    const auto found = std::find(order.begin(), order.end(), state.unfolded);
    const auto count = static_cast<std::ptrdiff_t>(order.size());
    const std::ptrdiff_t at = found == order.end() ? 0 : found - order.begin();
    state.unfolded = order[static_cast<std::size_t>((at + step + count) % count)];
}

const BodyReadings& readings_of(const BodyModel& model, setup::UnitSystem units,
                                BodyColumnState& state) {
    return state.readings.of({model.stamp(), units}, [&] { return read_axes(model, units); });
}

BodyColumnWishes draw_body_column(const Style& style, const Layout& layout, const BodyModel& model,
                                  const BodyColumnShown& shown, BodyColumnState& state) {
    BodyColumnWishes wishes;
    const BodyReadings& readings = readings_of(model, shown.units, state);
    begin_face(style, layout, model.moves());
    ColumnPen pen(style, layout);
    wishes.face = draw_column_faces(style, layout, ColumnFace::readings, pen);
    draw_head(readings, layout, pen);
    pen.skip(4.0F);
    wishes.chosen_axis = draw_bars(style, readings.bars, state.one_side, model.state.chosen, pen);
    if (readings.both_sides)
        draw_sides(style, state, pen);
    draw_looks(style, model, shown, pen, wishes);
    if (shown.looks.close_up) // there it is looked for
        wishes.as_lever = draw_way_to_bench(style, pen);
    pen.skip(12.0F);
    pen.divider();
    wishes.intent = draw_rows(style, model, readings, shown.units, state, pen);
    draw_spread(style, model, shown, state, pen);
    if (!shown.looks.close_up)
        wishes.as_lever = draw_way_to_bench(style, pen);
    draw_words(model, readings, shown.notice, pen);
    wishes.play = end_face(style, layout, {model.moves(), shown.playing}, pen);
    return wishes;
}

} // namespace steelyard::app

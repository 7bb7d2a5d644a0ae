#include "app/bench/column.h"

#include "app/look/text_styles.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "app/widgets/reading_row.h"
#include "app/widgets/steps_box.h"
#include "app/widgets/word_row.h"
#include "words/lever/lever_steps.h"

#include <algorithm>

namespace steelyard::app {

namespace {

using scene::Role;
using scene::TextSize;

void draw_reading(const Style& style, const BenchModel& model, const Reading& reading,
                  ColumnState& state, ColumnPen& pen) {
    const bool open = state.unfolded == reading.name;
    if (draw_reading_row(style, reading.name, reading.value, reading.role, pen))
        state.unfolded = open ? std::string() : reading.name;
    if (open)
        draw_steps_box(style,
                       words_of(words::lever_steps(reading.id, model.state.setup.lever,
                                                   model.solved, model.units)),
                       pen);
}

void draw_head(const Style& style, const BenchModel& model, const BenchReadings& readings,
               ColumnState& state, ColumnPen& pen) {
    pen.skip(84.0F);
    pen.headline(readings.headline);
    pen.skip(29.0F);
    pen.told(kQuietBody, readings.sentence);
    for (const std::string& note : readings.notes) {
        pen.skip(4.0F);
        pen.told({TextSize::body, true, Role::ink}, note);
    }
    pen.skip(20.0F);
    pen.line(kCaption, readings.key.name);
    const float top = pen.y();
    pen.skip(44.0F);
    const float number_px = draw_text(pen.list(), style, {TextSize::key, true, Role::ink},
                                      {pen.left(), pen.y()}, readings.key.value);
    const float note_px = number_px + style.px(8.0F);
    if (note_px + text_width(style, kQuietBody, readings.key_note) <= pen.width()) {
        draw_text(pen.list(), style, kQuietBody, {pen.left() + note_px, pen.y()},
                  readings.key_note);
    } else { // below the number, where that is long
        pen.skip(22.0F);
        pen.line(kQuietBody, readings.key_note);
    }
    if (press_area(style, "key", {pen.left(), top}, {pen.width(), style.px(52.0F)}))
        state.unfolded = state.unfolded == readings.key.name ? std::string() : readings.key.name;
    pen.skip(18.0F);
    if (state.unfolded == readings.key.name)
        draw_steps_box(style,
                       words_of(words::lever_steps(readings.key.id, model.state.setup.lever,
                                                   model.solved, model.units)),
                       pen);
    pen.divider();
    pen.skip(12.0F);
}

/// "lower_leg" as it is read.
std::string limb_word(std::string_view name) {
    std::string word(name);
    std::replace(word.begin(), word.end(), '_', ' ');
    return word;
}

/// What the lever is drawn as: a beam, or one of the limbs.
std::optional<DrawAs> draw_shapes(const Style& style, std::optional<setup::LimbShape> present,
                                  ColumnPen& pen) {
    std::vector<RowWord> words{{"beam", !present}};
    for (const std::string_view name : setup::limb_shape_names())
        words.push_back(
            {limb_word(name), present && static_cast<std::size_t>(*present) + 1 == words.size()});
    pen.skip(30.0F);
    pen.line(kCaption, "Drawn as");
    pen.skip(24.0F);
    ImVec2 at{pen.left(), pen.y()};
    const auto chosen = draw_word_row(style, "shape", words, at, pen.left() + pen.width());
    pen.skip_px(at.y - pen.y());
    if (!chosen)
        return std::nullopt;
    return *chosen == 0 ? DrawAs{} : DrawAs{static_cast<setup::LimbShape>(*chosen - 1)};
}

} // namespace

void unfold_next(const BenchReadings& readings, int step, ColumnState& state) {
    std::vector<std::string> order{std::string(), readings.key.name};
    for (const Reading& reading : readings.rows)
        order.push_back(reading.name);
    const auto found = std::find(order.begin(), order.end(), state.unfolded);
    const auto count = static_cast<std::ptrdiff_t>(order.size());
    const std::ptrdiff_t at = found == order.end() ? 0 : found - order.begin();
    state.unfolded = order[static_cast<std::size_t>((at + step + count) % count)];
}

ColumnWishes draw_column(const Style& style, const BenchModel& model, const BenchReadings& readings,
                         const Layout& layout, ColumnState& state) {
    ColumnWishes wishes;
    begin_column(style, layout);
    ColumnPen pen(style, layout);
    if (layout.narrow)
        pen.skip(-36.0F);
    draw_head(style, model, readings, state, pen);
    for (const Reading& reading : readings.rows)
        draw_reading(style, model, reading, state, pen);
    pen.skip(28.0F);
    const mechanics::Lever& lever = model.state.setup.lever;
    const bool is_set = model.state.hand_N || mechanics::sought_load(lever);
    if (!mechanics::rests_on_two(lever) &&
        word_button(style, "hand", {pen.left(), pen.y()},
                    is_set ? "Find the effort for me" : "Set the effort by hand", false))
        wishes.switch_hand = true;
    wishes.draw_as = draw_shapes(style, model.state.setup.limb, pen);
    pen.skip(24.0F);
    if (!model.message.empty())
        pen.paragraph({TextSize::caption, false, Role::wrong}, model.message);
    wishes.ask_question = end_column(style, layout, pen, "Ask me one like this");
    return wishes;
}

} // namespace steelyard::app

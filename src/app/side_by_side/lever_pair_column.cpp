#include "app/side_by_side/lever_pair_column.h"

#include "app/look/text_styles.h"
#include "app/paint/list_painter.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "setup/units/format_quantity.h"
#include "words/whatif/lever_comparison.h"
#include "words/whatif/whatif_words.h"

#include <fmt/format.h>

namespace steelyard::app {

namespace {

using scene::Role;
using scene::TextSize;
using setup::Dimension;

/// The quantities of both levers; each has a scale of its own.
void draw_pairs(const Style& style, const mechanics::LeverResult& a,
                const mechanics::LeverResult& b, setup::UnitSystem units, ColumnPen& pen) {
    for (const words::ComparedSize& size : words::compare_levers(a, b)) {
        scene::PairedBars bars;
        bars.pairs = {{size.name, size.a, size.b, {}, {}, size.dimension == Dimension::force}};
        bars.dimension = size.dimension;
        bars.units = units;
        bars.width_px = pen.width();
        bars.text_scale = style.fonts.scale;
        std::vector<scene::Shape> shapes;
        scene::add_paired_bars(bars, shapes);
        paint_in_list(shapes, {pen.left(), pen.y()}, style, pen.list());
        pen.skip(static_cast<float>(scene::kPair_px));
    }
}

/// Everything that the rows share.
struct Rows {
    const Style& style;
    const LeverPairModel& model;
    setup::UnitSystem units;
    ColumnPen& pen;
    ChangeDial& dial;
    LeverPairColumnWishes& wishes;

    std::string value(const mechanics::ChangeRange& range, double value) const {
        return words::change_value_text(value, range.unit, units);
    }
};

/// One change and what it would be, with its dial when it is selected.
/// @return true when it was pressed
bool draw_row(const Rows& rows, const mechanics::LeverChange& change,
              const mechanics::ChangeRange& range, std::optional<double> aim,
              const std::string& says) {
    ColumnPen& pen = rows.pen;
    const std::string name = mechanics::describe(change, rows.model.state.b.lever);
    const bool selected = change == rows.model.selected;
    ImGui::PushID(name.c_str());
    const bool pressed = row_button(rows.style, "change", {pen.left() - 12.0F, pen.y()},
                                    pen.width() + 24.0F, rows.style.px(48.0F), selected);
    ImGui::PopID();
    const TextStyle title{TextSize::body, selected, Role::ink};
    draw_text(pen.list(), rows.style, title, {pen.left(), pen.y() + rows.style.px(20.0F)},
              shortened(rows.style, title, name, pen.width()));
    draw_text(pen.list(), rows.style, kCaption, {pen.left(), pen.y() + rows.style.px(39.0F)},
              shortened(rows.style, kCaption, says, pen.width()));
    pen.skip(54.0F);
    if (selected) {
        const DialReading reading{range, nullptr, aim, rows.units};
        if (const auto dragged = draw_change_dial(rows.style, reading, change, pen, rows.dial))
            rows.wishes.dragged = dragged;
        pen.skip(4.0F);
    }
    if (pressed)
        rows.wishes.intents.emplace_back(SelectLeverChange{change});
    return pressed;
}

/// Why a change cannot give A's effort.
std::string refusal(const Rows& rows, const mechanics::RefusedLeverChange& one) {
    const std::string why = one.limit ? words::limit_phrase(*one.limit) : std::string();
    if (!one.nearest)
        return "cannot: " + why;
    return fmt::format("comes no nearer than {}, at {}: {}",
                       setup::format_quantity(one.nearest->reading, Dimension::force, rows.units),
                       rows.value(one.range, one.nearest->at), why);
}

void draw_changes(const Rows& rows) {
    for (const mechanics::LeverWay& way : rows.model.ways.ways)
        if (draw_row(rows, way.change, way.range, way.value,
                     rows.value(way.range, way.value) + " instead of " +
                         rows.value(way.range, way.range.present)))
            rows.wishes.way = way;
    if (!rows.model.ways.refused.empty()) {
        rows.pen.skip(16.0F);
        rows.pen.line(kCaption, "These alone cannot give it:");
        rows.pen.skip(8.0F);
    }
    for (const mechanics::RefusedLeverChange& one : rows.model.ways.refused)
        draw_row(rows, one.change, one.range, std::nullopt, refusal(rows, one));
    if (!rows.model.efforts_are_equal())
        return;
    const mechanics::Lever& lever = rows.model.state.b.lever;
    for (const mechanics::LeverChange& change : mechanics::possible_changes(lever)) {
        const mechanics::ChangeRange range = mechanics::range_of(change, lever);
        draw_row(rows, change, range, std::nullopt, "now " + rows.value(range, range.present));
    }
}

std::string state_of(const LeverPairModel& model) {
    if (!model.a.effort_N)
        return "No effort can balance A: its line passes through the axis.";
    if (model.efforts_are_equal())
        return "B takes as much effort as A. Press a number of B to change it.";
    return model.ways.ways.empty() ? "No single change gives A's effort."
                                   : "Smallest first; press one and B takes it.";
}

} // namespace

LeverPairColumnWishes draw_lever_pair_column(const Style& style, const Layout& layout,
                                             const LeverPairModel& model,
                                             const mechanics::LeverResult& b,
                                             setup::UnitSystem units, ChangeDial& dial) {
    LeverPairColumnWishes wishes;
    begin_area("column", layout.column_at_px, layout.column_px, true);
    ColumnPen pen(style, layout);
    pen.skip(layout.narrow ? 16.0F : 32.0F);
    draw_pairs(style, model.a, b, units, pen);
    pen.skip(12.0F);
    if (!model.message.empty())
        pen.paragraph(kFault, model.message);
    pen.divider();
    pen.skip(28.0F);
    pen.paragraph(kStrong, "Change B");
    pen.skip(-8.0F);
    if (main_button(style, "aim", {pen.left(), pen.y()}, pen.width(),
                    "Make B's effort equal A's") &&
        !model.ways.ways.empty())
        wishes.way = model.ways.ways.front();
    pen.skip_px(main_button_height(style));
    pen.skip(32.0F);
    pen.paragraph(kStrong, "Ways to get there");
    pen.paragraph(kCaption, state_of(model));
    pen.skip(-8.0F);
    draw_changes({style, model, units, pen, dial, wishes});
    pen.skip(24.0F);
    if (word_button(style, "copy", {pen.left(), pen.y()}, "Let B start again as a copy of A",
                    false))
        wishes.intents.emplace_back(CopyLeverToB{});
    pen.skip(28.0F);
    wishes.to_exercises =
        word_button(style, "exercises", {pen.left(), pen.y()}, "Compare two exercises", false);
    pen.finish(style.px(24.0F));
    end_area();
    return wishes;
}

} // namespace steelyard::app

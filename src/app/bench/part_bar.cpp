#include "app/bench/part_bar.h"

#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "app/widgets/chip.h"
#include "setup/units/format_quantity.h"

#include <algorithm>

namespace steelyard::app {

namespace {

using scene::Role;
using scene::TextSize;

std::string shown_value(const BenchModel& model, const LeverNumber& number) {
    const double value = value_of(model.state.handled(), number).value_or(0.0);
    const setup::NumberStyle how{number.field == LeverField::grip ? 2 : 3, true};
    return setup::format_quantity(value, dimension_of(number.field), model.units, how);
}

/// Where the next thing stands: in a line, and in a further one when the line is full.
class BarPen {
public:
    BarPen(const Style& style, const scene::Point& corner_px, double width_px)
        : style_(style), left_px_(static_cast<float>(corner_px.x())),
          right_px_(static_cast<float>(corner_px.x() + width_px)),
          at_(left_px_, static_cast<float>(corner_px.y())) {}

    /// @return the corner of what is this wide
    ImVec2 place(float width_px, float gap_px) {
        if (at_.x + width_px > right_px_ && at_.x > left_px_)
            at_ = {left_px_, at_.y + style_.px(36.0F)};
        const ImVec2 corner = at_;
        at_.x += width_px + style_.px(gap_px);
        return corner;
    }
    /// Where the line that was begun last ends below.
    double bottom_px() const { return at_.y + style_.px(32.0F); }

    /// The left end of the baseline of a word.
    ImVec2 place_word(const char* word, float gap_px) {
        const ImVec2 corner = place(text_width(style_, {}, word), gap_px);
        return {corner.x, corner.y + style_.px(22.0F)};
    }

private:
    const Style& style_;
    float left_px_;
    float right_px_;
    ImVec2 at_;
};

bool press_word(const Style& style, BarPen& pen, const char* word, float gap_px,
                bool in_force = false) {
    return word_button(style, word, pen.place_word(word, gap_px), word, in_force);
}

/// The part's name; that of a load or of the effort can be pressed to give it another.
void draw_name(const Style& style, const BenchModel& model, const scene::LeverPart& part,
               BarPen& pen, NumberField& field) {
    const std::string name = name_of(model.state.setup.lever, part);
    const ImVec2 at = pen.place(text_width(style, {}, name), 10.0F);
    const ImVec2 base{at.x, at.y + style.px(22.0F)};
    const bool has_own_name =
        part.kind == scene::PartKind::load || part.kind == scene::PartKind::effort ||
        (part.kind == scene::PartKind::axis && mechanics::rests_on_two(model.state.setup.lever));
    if (!has_own_name)
        draw_text(*ImGui::GetWindowDrawList(), style, {TextSize::caption, false, Role::quiet_ink},
                  base, name);
    else if (word_button(style, "name", base, name, false))
        open_name(field, model, part);
}

/// The numbers of the part; the one that is being typed is a field.
std::optional<BenchIntent> draw_numbers(const Style& style, const BenchModel& model,
                                        const scene::LeverPart& part, BarPen& pen,
                                        NumberField& field) {
    std::optional<BenchIntent> intent;
    for (const LeverField one : fields_of(model.state.handled(), part)) {
        const LeverNumber number{part, one};
        if (field.number == number) {
            const float width = style.px(130.0F);
            intent = draw_number_field(style, model, pen.place(width, 8.0F), width, field);
            continue;
        }
        const std::string value = shown_value(model, number);
        const ImVec2 corner = pen.place(chip_width(style, name_of(one), value), 8.0F);
        if (draw_chip(style, corner, name_of(one), value).pressed)
            open_field(field, model, number);
    }
    return intent;
}

struct KindWord {
    LoadKind kind;
    const char* word;
};
constexpr KindWord kKindWords[] = {
    {LoadKind::weight, "weight"}, {LoadKind::pull, "pull"}, {LoadKind::torque, "torque"}};

/// What can be done with the chosen part, and added to the lever.
std::optional<BenchIntent> draw_words(const Style& style, const BenchModel& model,
                                      const scene::LeverPart& part, BarPen& pen) {
    std::optional<BenchIntent> intent;
    const auto& loads = model.state.setup.lever.loads;
    if (part.kind == scene::PartKind::load && part.index < loads.size()) {
        for (const KindWord& one : kKindWords)
            if (press_word(style, pen, one.word, 12.0F, kind_of(loads[part.index]) == one.kind))
                intent = ChangeLoad{part.index, one.kind};
        const bool is_sought = mechanics::sought_load(model.state.setup.lever) == part.index;
        if (!mechanics::rests_on_two(model.state.setup.lever) &&
            press_word(style, pen, "find its size", 12.0F, is_sought))
            intent = is_sought ? BenchIntent(SolveForEffort{}) : SeekLoad{part.index};
        pen.place(0.0F, 12.0F);
    }
    if (part.kind == scene::PartKind::axis || part.kind == scene::PartKind::effort) {
        const bool two = mechanics::rests_on_two(model.state.setup.lever);
        if (press_word(style, pen, "one axis", 12.0F, !two))
            intent = ChangeSupports{false};
        if (press_word(style, pen, "two supports", 20.0F, two))
            intent = ChangeSupports{true};
    }
    const mechanics::OwnWeight& own = model.state.setup.lever.own_weight;
    if (part.kind == scene::PartKind::own_weight && own.mass_kg > 0.0 &&
        press_word(style, pen, "spread evenly", 20.0F, !own.centre_at_m))
        intent = SpreadOwnWeight{};
    if (press_word(style, pen, "add a load", 20.0F))
        intent = new_load(model);
    if (press_word(style, pen, "add a corner", 20.0F))
        intent = AddCorner{};
    const bool is_inner = part.kind == scene::PartKind::corner && part.index > 0 &&
                          part.index + 1 < model.state.setup.lever.path_m.size();
    if ((is_inner || part.kind == scene::PartKind::load) && press_word(style, pen, "remove", 0.0F))
        intent = is_inner ? BenchIntent(RemoveCorner{part.index}) : RemoveLoad{part.index};
    return intent;
}

} // namespace

PartBar draw_part_bar(const Style& style, const BenchModel& model, const PartBarRoom& room_px,
                      const StageState& stage, NumberField& field) {
    if (field.number && !value_of(model.state.handled(), *field.number))
        field.number.reset(); // its part went while it was being typed
    const scene::LeverPart part = field.number ? field.number->part
                                  : field.name ? *field.name
                                               : stage.chosen;
    // No higher than what stands there: what lies below is the stage's to be taken hold of.
    const double least_px = style.px(field.is_open() ? 150.0F : 76.0F);
    begin_area("part", room_px.corner,
               {room_px.width, std::max(least_px, room_px.bottom - room_px.corner.y())});
    BarPen pen(style, room_px.corner, room_px.width);
    PartBar bar;
    if (field.name) {
        const float width = style.px(180.0F);
        bar.intent = draw_number_field(style, model, pen.place(width, 8.0F), width, field);
    } else {
        draw_name(style, model, part, pen, field);
    }
    if (const auto typed = draw_numbers(style, model, part, pen, field))
        bar.intent = typed;
    pen.place(0.0F, 8.0F);
    if (const auto pressed = draw_words(style, model, part, pen))
        bar.intent = pressed;
    end_area();
    bar.bottom_px = pen.bottom_px();
    return bar;
}

} // namespace steelyard::app

#include "app/widgets/typed_chips.h"

#include "app/widgets/chip.h"
#include "setup/units/format_quantity.h"

namespace steelyard::app {

namespace {

constexpr float kTypedWidth_px = 130.0F;

/// What stands in the field, once it was entered; the field closes or says what is wrong.
std::optional<EnteredChip> read_entered(std::size_t index, const TypedChip& chip,
                                        setup::UnitSystem units, TypedChipsState& state) {
    auto typed = read_typed(state.typed.text, chip.value_SI, chip.dimension, units, false);
    if (!typed) {
        refuse_typed(state.typed, std::move(typed.error()));
        return std::nullopt;
    }
    state.open.reset();
    return EnteredChip{index, *typed};
}

} // namespace

std::optional<EnteredChip> draw_typed_chips(const Style& style, const std::vector<TypedChip>& chips,
                                            setup::UnitSystem units, ColumnPen& pen,
                                            TypedChipsState& state) {
    std::optional<EnteredChip> entered;
    pen.skip(8.0F);
    float x = pen.left();
    const auto place = [&](float width_px) {
        if (x > pen.left() && x + width_px > pen.left() + pen.width()) {
            x = pen.left();
            pen.skip(40.0F);
        }
        const ImVec2 at{x, pen.y()};
        x += width_px + style.px(8.0F);
        return at;
    };
    for (std::size_t i = 0; i < chips.size(); ++i) {
        const TypedChip& chip = chips[i];
        if (state.open != i) {
            const std::string text = setup::format_quantity(chip.value_SI, chip.dimension, units);
            if (draw_chip(style, place(chip_width(style, chip.name, text)), chip.name, text)
                    .pressed) {
                state.open = i;
                state.typed = open_typed(chip.value_SI, chip.dimension, units);
            }
            continue;
        }
        const TypedEnd end = draw_typed_field(style, place(style.px(kTypedWidth_px)),
                                              style.px(kTypedWidth_px), state.typed);
        if (end == TypedEnd::left)
            state.open.reset();
        if (end == TypedEnd::entered)
            entered = read_entered(i, chip, units, state);
    }
    pen.skip(state.open && !state.typed.fault.empty() ? 110.0F : 44.0F);
    return entered;
}

} // namespace steelyard::app

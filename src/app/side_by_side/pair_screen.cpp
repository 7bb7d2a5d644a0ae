#include "app/side_by_side/pair_screen.h"

namespace steelyard::app {

double nudged(const mechanics::ChangeRange& range, double hundredths) {
    const mechanics::Interval dial = dial_range(range, std::nullopt);
    return std::clamp(range.present + 0.01 * hundredths * (dial.high - dial.low), range.allowed.low,
                      range.allowed.high);
}

PairKeyMeaning meaning_of_pair_key(const KeyPress& key) {
    const bool shift = (key.modifiers & key::kWithShift) != 0;
    const double far = shift ? 10.0 : 1.0;
    if ((key.modifiers & key::kWithControl) != 0) {
        if (key.key == key::kZ && !shift)
            return PairKey::undo;
        if (key.key == key::kY || key.key == key::kZ)
            return PairKey::redo;
        return {};
    }
    switch (key.key) {
    case key::kDown:
        return SelectNext{1};
    case key::kUp:
        return SelectNext{-1};
    case key::kEnter:
    case key::kKeypadEnter:
        return PairKey::take_selected;
    case key::kE:
        return PairKey::make_equal;
    case key::kEqual:
    case key::kKeypadAdd:
        return NudgeSelected{far};
    case key::kMinus:
    case key::kKeypadSubtract:
        return NudgeSelected{-far};
    case key::kX:
        return PairKey::swap;
    case key::kC:
        return PairKey::copy;
    case key::kA:
        return SideBySideWish::choose_a;
    case key::kF:
        return SideBySideWish::take_stage;
    case key::kV:
        return SideBySideWish::other_kind;
    default:
        return {};
    }
}

} // namespace steelyard::app

#pragma once
// What the two kinds of pairs, exercises and levers, have in common on the screen: the keys of the
// list of changes, B on its way to a new setting, and what a frame asks of the application.

#include "app/frame/frame_input.h"
#include "app/platform/key.h"
#include "app/side_by_side/change_dial.h"
#include "scene/drawing.h"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

/// What a frame asks of the application.
enum class SideBySideWish {
    none,
    choose_a, ///< from the shelf
    choose_b,
    take_stage, ///< what stands on the body stage or the bench becomes A
    other_kind, ///< levers instead of exercises, or exercises instead of levers
};
struct SideBySideOutcome {
    scene::Drawing drawing;
    SideBySideWish wish = SideBySideWish::none;
    bool changed = false; ///< there is something new to keep
};

/// A change of B is eased over this time [s].
inline constexpr double kEase_s = 0.15;

/// B on its way to a new setting.
template <typename Compared, typename Change> struct EasedChange {
    Compared before; ///< B as it was
    Change change;
    double from = 0.0;
    double to = 0.0;
    double elapsed_s = 0.0;

    /// Goes on by some time; a slow frame does not skip the way.
    /// @return where the change is seen; empty when B is there
    std::optional<double> next_value(double seconds) {
        elapsed_s += std::min(seconds, 0.05);
        const double share = elapsed_s / kEase_s;
        if (share >= 1.0)
            return std::nullopt;
        return from + share * share * (3.0 - 2.0 * share) * (to - from);
    }
};

/// The name a step after (1) or before (-1) the selected one, in a round; the first or the last
/// when none is selected, and nothing in an empty list.
std::optional<std::string> name_after(const std::vector<std::string>& names,
                                      const std::string& selected, int step);

/// Value of a change after a nudge by hundredths of its dial.
double nudged(const mechanics::ChangeRange& range, double hundredths);

/// Reads a key that means the same for exercises and levers.
/// @param deeds  does what is asked: select_next(step), take_selected(), make_equal(),
/// nudge(steps),
///               swap(), copy(), undo(), redo()
template <typename Deeds> SideBySideWish press_pair_key(const KeyPress& key, Deeds deeds) {
    const bool shift = (key.modifiers & key::kWithShift) != 0;
    const double far = shift ? 10.0 : 1.0;
    if ((key.modifiers & key::kWithControl) != 0) {
        if (key.key == key::kZ && !shift)
            deeds.undo();
        else if (key.key == key::kY || key.key == key::kZ)
            deeds.redo();
        return SideBySideWish::none;
    }
    switch (key.key) {
    case key::kDown:
        deeds.select_next(1);
        break;
    case key::kUp:
        deeds.select_next(-1);
        break;
    case key::kEnter:
    case key::kKeypadEnter:
        deeds.take_selected();
        break;
    case key::kE:
        deeds.make_equal();
        break;
    case key::kEqual:
    case key::kKeypadAdd:
        deeds.nudge(far);
        break;
    case key::kMinus:
    case key::kKeypadSubtract:
        deeds.nudge(-far);
        break;
    case key::kX:
        deeds.swap();
        break;
    case key::kC:
        deeds.copy();
        break;
    case key::kA:
        return SideBySideWish::choose_a;
    case key::kF:
        return SideBySideWish::take_stage;
    case key::kV:
        return SideBySideWish::other_kind;
    default:
        break;
    }
    return SideBySideWish::none;
}

} // namespace steelyard::app

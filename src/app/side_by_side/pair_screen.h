#pragma once
// What the two kinds of pairs, exercises and levers, have in common on the screen: the keys of the
// list of changes, B on its way to a new setting, and what a frame asks of the application.

#include "app/frame/frame_input.h"
#include "app/side_by_side/change_dial.h"
#include "scene/drawing.h"

#include <GLFW/glfw3.h>

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
    const bool shift = (key.modifiers & GLFW_MOD_SHIFT) != 0;
    const double far = shift ? 10.0 : 1.0;
    if ((key.modifiers & GLFW_MOD_CONTROL) != 0) {
        if (key.key == GLFW_KEY_Z && !shift)
            deeds.undo();
        else if (key.key == GLFW_KEY_Y || key.key == GLFW_KEY_Z)
            deeds.redo();
        return SideBySideWish::none;
    }
    switch (key.key) {
    case GLFW_KEY_DOWN:
        deeds.select_next(1);
        break;
    case GLFW_KEY_UP:
        deeds.select_next(-1);
        break;
    case GLFW_KEY_ENTER:
    case GLFW_KEY_KP_ENTER:
        deeds.take_selected();
        break;
    case GLFW_KEY_E:
        deeds.make_equal();
        break;
    case GLFW_KEY_EQUAL:
    case GLFW_KEY_KP_ADD:
        deeds.nudge(far);
        break;
    case GLFW_KEY_MINUS:
    case GLFW_KEY_KP_SUBTRACT:
        deeds.nudge(-far);
        break;
    case GLFW_KEY_X:
        deeds.swap();
        break;
    case GLFW_KEY_C:
        deeds.copy();
        break;
    case GLFW_KEY_A:
        return SideBySideWish::choose_a;
    case GLFW_KEY_F:
        return SideBySideWish::take_stage;
    case GLFW_KEY_V:
        return SideBySideWish::other_kind;
    default:
        break;
    }
    return SideBySideWish::none;
}

} // namespace steelyard::app

#pragma once
// What the two kinds of pairs, exercises and levers, have in common on the screen: the keys of the
// list of changes, B on its way to a new setting, and what a frame asks of the application.

#include "app/frame/frame_input.h"
#include "app/platform/key.h"
#include "app/side_by_side/change_dial.h"
#include "scene/drawing.h"

#include <algorithm>
#include <optional>
#include <variant>
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
struct SideBySideFrame {
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

/// The change a step after (1) or before (-1) the selected one, in a round; the first or the last
/// when none is selected, and nothing in an empty list.
template <typename Change>
std::optional<Change> change_after(const std::vector<Change>& changes,
                                   const std::optional<Change>& selected, int step) {
    if (changes.empty())
        return std::nullopt;
    const auto count = static_cast<std::ptrdiff_t>(changes.size());
    const auto found = std::find(changes.begin(), changes.end(), selected);
    const std::ptrdiff_t at = found == changes.end()
                                  ? (step > 0 ? 0 : count - 1)
                                  : (found - changes.begin() + step + count) % count;
    return changes[static_cast<std::size_t>(at)];
}

/// Value of a change after a nudge by hundredths of its dial.
double nudged(const mechanics::ChangeRange& range, double hundredths);

// --- keys that mean the same for exercises and levers --------------------------------------------

/// Selects the next change of the list (1), or the one before (-1).
struct SelectNext {
    int step = 1;
};
/// Turns the dial of the selected change by hundredths of it.
struct NudgeSelected {
    double hundredths = 1.0;
};
enum class PairKey { take_selected, make_equal, swap, copy, undo, redo };

/// What a key means: nothing, something for the pair, or a wish to the application.
using PairKeyMeaning =
    std::variant<std::monostate, SelectNext, NudgeSelected, PairKey, SideBySideWish>;

PairKeyMeaning meaning_of_pair_key(const KeyPress& key);

} // namespace steelyard::app

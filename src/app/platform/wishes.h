#pragma once
// What the person has asked of their whole system, and what of the keys it draws on its screen.

namespace steelyard::app {

/// Wishes that a person has told the system once for all programs.
struct SystemWishes {
    bool dark = false;        ///< light letters on a dark sheet
    bool less_motion = false; ///< nothing is to be animated

    bool operator==(const SystemWishes&) const = default;
};

/// As they are at this moment; none where the system does not tell. The window is woken when they
/// change.
SystemWishes system_wishes();

/// Said after a text field that has the keyboard, in every frame: it takes a number, so keys drawn
/// on the screen are to be digits. Without such keys nothing happens.
void ask_for_digits();

} // namespace steelyard::app

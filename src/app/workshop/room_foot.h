#pragma once
// The line at the foot of the room's screen: how far the lesson has come, and the words with which
// the mouse alone leads it.

#include "app/look/style.h"
#include "app/workshop/show_model.h"

#include <optional>

namespace steelyard::app {

/// Height that is kept for it, at 100 % of a room's scale.
inline constexpr float kRoomFoot = 30.0F;

/// Where it stands [px].
struct FootLine {
    float left_px = 0.0F;
    float right_px = 0.0F;
    float foot_px = 0.0F;
};

struct FootWishes {
    std::optional<ShowIntent> intent;
    bool leave = false;
};

/// Draws it in the present area. Leaving asks first: one press too many ends no lesson.
/// @param step     the one that the room sees
/// @param caution  said at its left; null = none
FootWishes draw_room_foot(const Style& style, const FootLine& line, const ShowModel& show,
                          std::size_t step, const char* caution);

} // namespace steelyard::app

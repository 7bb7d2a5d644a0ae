#include "app/look/colours.h"

#include <cmath>

namespace steelyard::app {

namespace {

ImU32 to_u32(scene::Rgb rgb, double opacity) {
    return IM_COL32(rgb.red, rgb.green, rgb.blue, static_cast<int>(std::lround(255.0 * opacity)));
}

} // namespace

ImU32 colour_u32(scene::Role role, scene::Look look, double opacity) {
    return to_u32(scene::colour_of(role, look), opacity);
}

ImU32 text_u32(scene::Role role, scene::Look look) {
    return to_u32(scene::text_colour_of(role, look), 1.0);
}

} // namespace steelyard::app

#include "app/side_by_side/pair_strip.h"

#include "scene/marks/balance_strip.h"
#include "words/whatif/comparison.h"

#include <algorithm>

namespace steelyard::app {

namespace {

using scene::Role;

/// A is light with an outline, B dark, as everywhere in a pair.
scene::StripSide side_of(const char* letter, const PairStrip& strip, double size, Role role) {
    scene::StripSide side;
    side.name = std::string(letter) + ", " + strip.says;
    side.size = size;
    side.dimension = strip.dimension;
    side.role = role;
    if (role != Role::ink)
        side.outline = scene::Stroke{Role::ink, 1.75};
    side.words_role = Role::ink;
    return side;
}

} // namespace

double pair_strip_height(bool low) {
    return low ? 60.0 : 92.0;
}

void add_pair_strip(const PairStrip& strip, const scene::Point& stage_px, setup::UnitSystem units,
                    double text_scale, std::vector<scene::Shape>& shapes) {
    const double side_px = std::min(95.0, 0.1 * stage_px.x());
    const std::string verdict =
        strip.low ? std::string()
                  : words::difference_text(strip.a, strip.b, strip.dimension, units);
    scene::add_meeting_strip(
        side_of("A", strip, strip.a, Role::beam), side_of("B", strip, strip.b, Role::ink), verdict,
        side_px, stage_px.x() - side_px, stage_px.y() - (strip.low ? 26.0 : 62.0) * text_scale,
        units, text_scale, shapes);
}

} // namespace steelyard::app

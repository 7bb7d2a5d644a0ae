#include "mechanics/lever/lever.h"

namespace steelyard::mechanics {

bool rests_on_two(const Lever& lever) {
    return std::holds_alternative<SoughtReactions>(lever.sought);
}

std::string axis_name(const Lever& lever) {
    const auto* beam = std::get_if<SoughtReactions>(&lever.sought);
    return beam ? beam->first_support : "axis";
}

std::optional<std::size_t> sought_load(const Lever& lever) {
    const auto* sought = std::get_if<SoughtLoad>(&lever.sought);
    return sought ? std::optional(sought->load) : std::nullopt;
}

} // namespace steelyard::mechanics

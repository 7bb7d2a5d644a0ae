#pragma once
// What can be held, worn or pulled at, and where on the body: the loads that a person chooses from
// when they make an exercise.

#include "mechanics/body/kinematics.h"
#include "mechanics/resistance/resistance.h"

#include <cstddef>
#include <string>
#include <vector>

namespace steelyard::setup {

/// A load of one kind at one place, as large as such a thing usually is; one in each hand are two.
struct LoadChoice {
    std::string where; ///< "right hand", "one in each hand", "left ankle"
    std::vector<mechanics::Resistance> loads;
};

/// The places at which a load of a kind can be chosen, the usual one first.
/// @param kind       its place in resistance_kind_names()
/// @param placement  of the body as it stands: pulleys and anchors begin near what they pull at
std::vector<LoadChoice> load_choices(std::size_t kind, const mechanics::Body& body,
                                     const mechanics::Placement& placement);

/// The choice that a load is an example of, whatever its size and its place in the room; empty
/// when it is at a place of its own.
std::string where_is(const mechanics::Resistance& load, const std::vector<LoadChoice>& choices);

/// The other load, with the size, the place in the room and the slack length of the first as far
/// as both have them and they mean the same.
mechanics::Resistance with_size_of(const mechanics::Resistance& first, mechanics::Resistance other);

} // namespace steelyard::setup

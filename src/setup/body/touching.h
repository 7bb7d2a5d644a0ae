#pragma once
// Contacts that stay where they are, and those that do not touch what they press on.

#include "setup/body/body_setup.h"

#include <optional>

namespace steelyard::setup {

/// Brings what sticks to its place all along the path (mechanics/range/stick.h).
/// @return nothing, or what cannot stay
std::optional<InputError> keep_in_place(BodySetup& setup);

/// What to tell about a contact that hangs above what it touches or sinks into it: by how much,
/// where on the path, and what to turn.
/// @return nothing when all touch
std::optional<InputError> untouched_contact(const BodySetup& setup);

} // namespace steelyard::setup

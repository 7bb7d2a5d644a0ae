#pragma once
// What has to hold of an exercise before anybody computes with it.

#include "setup/body/body_setup.h"

#include <optional>

namespace steelyard::setup {

/// Brings what sticks to its place along the whole path, and looks whether every place of the path
/// can be computed with and what touches does touch.
/// @return nothing, or what cannot be
std::optional<InputError> finish_movement(BodySetup& setup);

} // namespace steelyard::setup

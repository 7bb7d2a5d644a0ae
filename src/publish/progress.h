#pragma once
// Long work that tells how far it is and can be stopped.

#include <cstddef>
#include <functional>

namespace steelyard::publish {

/// Called after each part of a longer work, with how many of how many are done; false stops the
/// work, and nothing is made.
using Progress = std::function<bool(std::size_t done, std::size_t all)>;

} // namespace steelyard::publish

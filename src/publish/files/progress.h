#pragma once
// Long work that tells how far it is and can be stopped.

#include "publish/files/error.h"

#include <tl/expected.hpp>

#include <cstddef>
#include <functional>

namespace steelyard::publish {

/// Called after each part of a longer work, with how many of how many are done; false stops the
/// work, and nothing is made.
using Progress = std::function<bool(std::size_t done, std::size_t all)>;

/// Tells how far the work is, where anyone wants to know.
/// @return false when the work is to stop
inline bool goes_on(const Progress& progress, std::size_t done, std::size_t all) {
    return !progress || progress(done, all);
}

/// Progress of a stretch of a longer work: from `from` to `to` of `of` equal parts. The whole must
/// outlive it.
inline Progress stretch_of(const Progress& whole, std::size_t from, std::size_t to,
                           std::size_t of) {
    if (!whole)
        return {};
    return [&whole, from, to, of](std::size_t done, std::size_t all) {
        return whole(from * all + (to - from) * done, of * all);
    };
}

/// What a work gives that was told to stop.
inline tl::unexpected<PublishError> stopped_work() {
    return tl::make_unexpected(PublishError{PublishFault::stopped, "Stopped: nothing was made."});
}

} // namespace steelyard::publish

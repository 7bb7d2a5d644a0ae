#pragma once
// A clock for frames: it only ever goes forward.

namespace steelyard::app {

/// Seconds since some moment before the program's first window.
double now_s();

} // namespace steelyard::app

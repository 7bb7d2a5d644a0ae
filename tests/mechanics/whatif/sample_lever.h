#pragma once
// The lever that the what-ifs and sweeps of levers are tried on.

#include "mechanics/lever/lever.h"

namespace steelyard::mechanics {

/// 1 m, axis at 0.4 m, 10 kg at the left end, effort down at the right end: 39.2266 N·m of load
/// torque, 65.3777 N of effort.
inline Lever sample_lever() {
    Lever lever;
    lever.axis_at_m = 0.4;
    lever.loads = {{"crate", Weight{0.0, 10.0}}};
    lever.effort = {"hand", 1.0, kDown_rad};
    return lever;
}

} // namespace steelyard::mechanics

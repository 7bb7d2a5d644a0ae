#pragma once
// Reads measured strength beside a joint action: [[action.strength]] in assets/muscles/*.toml.
//
//     [[action.strength]]
//     people = "7 men of 18 to 25 years"
//     sex = "male"
//     c1 = 0.163                        # torque = c1 · m · g · H · cos(c2 · (angle − c3))
//     c1_sd = 0.040
//     c2 = 1.258
//     c3 = "1.133 rad"
//     # or:  torque = "70.3 N·m"        and, if stated,  spread = "18 N·m"
//     valid = ["15 deg", "100 deg"]
//     remark = "..."                    # what must be said beside it; optional
//     source = "..."
//     mark = "verified-2"

#include "mechanics/muscle/strength.h"
#include "setup/toml/toml_reader.h"

#include <vector>

namespace steelyard::setup {

std::vector<mechanics::MeasuredStrength> read_strengths(TomlReader& action);

} // namespace steelyard::setup

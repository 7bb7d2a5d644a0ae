#pragma once
// What a person asked of `steelyard whatif`, turned into mechanics.

#include "mechanics/whatif/whatif.h"
#include "setup/toml/input_error.h"
#include "setup/units/units.h"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <vector>

namespace steelyard::cli {

/// The words of the command line.
struct WhatIfWords {
    std::string joint;  ///< "lumbar_flexion", "elbow_flexion", "lumbar"
    std::string torque; ///< "20 Nm"; empty when less is given
    std::string less;   ///< "20 %"
    std::string change; ///< "load", "angle:knee_flexion"; empty = every change
    std::string keep;   ///< another joint
    std::string within = "10 %";
    std::vector<std::string> caps; ///< "lumbar_flexion=120 Nm"
};

/// The hinge that a name means in an exercise. A name without a side, or of a whole joint, means
/// of its hinges the one with the largest peak torque.
/// @param option  for the error: "--joint"
tl::expected<mechanics::Hinge, setup::InputError> hinge_meant(const std::string& name,
                                                              const mechanics::Exercise& exercise,
                                                              const std::string& option);

/// "lumbar_flexion=120 Nm", each.
/// @param units  of the exercise's readings: a number without a unit is in theirs
tl::expected<std::vector<mechanics::Cap>, setup::InputError>
caps_meant(const std::vector<std::string>& texts, const mechanics::Exercise& exercise,
           setup::UnitSystem units);

/// The torque that is wanted at a hinge, from --torque or --less [N·m].
/// @param units  as above
tl::expected<double, setup::InputError> torque_meant(const WhatIfWords& words,
                                                     const mechanics::Exercise& exercise,
                                                     mechanics::Hinge hinge,
                                                     setup::UnitSystem units);

/// The one change that is named, or every change that a coach would ask for when none is.
tl::expected<std::vector<mechanics::Change>, setup::InputError>
changes_meant(const std::string& text, const mechanics::Exercise& exercise, mechanics::Hinge hinge);

/// A part, "20 %" or "0.2".
tl::expected<double, setup::InputError> part_meant(const std::string& text,
                                                   const std::string& option);

/// An error of mechanics about the question as a whole.
setup::InputError question_error(const mechanics::MechanicsError& error);

} // namespace steelyard::cli

#pragma once
// What changes through the range of motion: torque, resistance, muscle force, advantage.

#include "mechanics/muscle/muscle_on_body.h"
#include "setup/body/body_setup.h"

#include <tl/expected.hpp>

#include <string>
#include <vector>

namespace steelyard::app {

/// The muscles that an axis is shown with, and how they share.
struct AxisMuscles {
    std::vector<mechanics::Muscle> muscles; ///< may be empty
    mechanics::SharingRule rule = mechanics::SharingRule::equal_stress;
};

/// Curves over the path at rest in every place. Rows have one number for each place; a number that
/// does not exist there is NaN and leaves a gap.
struct BodyCurves {
    std::vector<double> progress;               ///< 0 to 1, evenly spaced; empty without a path
    std::vector<std::vector<double>> torque_Nm; ///< for each axis: of the muscles, signed
    std::vector<std::vector<double>> load_Nm;   ///< for each axis: of the resistances alone, signed
    std::vector<std::string> muscles;           ///< names of the rows of muscle_N
    std::vector<std::vector<double>> muscle_N;  ///< pull of each muscle of the chosen axis
    std::vector<double> muscles_N;              ///< all of them together; empty when not known
    std::vector<double> reaction_N;             ///< of the chosen joint; empty when not known
    std::vector<double> advantage; ///< resistance on that joint ÷ all muscles' pull [-]
};

/// Computes the curves of an exercise.
/// @param chosen  index of the axis whose muscles are shown
/// @param curves  overwritten; its storage is used again
tl::expected<void, mechanics::MechanicsError> curves_into(const setup::BodySetup& setup,
                                                          std::size_t chosen,
                                                          const AxisMuscles& muscles,
                                                          BodyCurves& curves);

/// Torque of the resistances alone about a hinge, signed [N·m].
double resistance_Nm(const mechanics::BodyResult& result, mechanics::Hinge hinge);

} // namespace steelyard::app

#pragma once
// Numbers of an exercise as a whole that are typed: the person's, and the tempo's.

#include "setup/build/exercise_edit.h"
#include "setup/units/units.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

enum class BuildField {
    height,         ///< of the person [m]
    mass,           ///< of the person [kg]
    segment_length, ///< of one part of the person, measured [m]
    segment_mass,   ///< of one part of one side, measured [kg]; 0 leaves its weight out
    out,            ///< time from the start to the end of the path [s]
    hold,           ///< time there [s]
    back,           ///< time back [s]
};

struct BuildNumber {
    BuildField field = BuildField::height;
    mechanics::TablePart part = mechanics::TablePart::forearm; ///< of a segment's number

    bool operator==(const BuildNumber&) const = default;
};

/// The numbers of the person: height, mass, and the lengths that people measure.
std::vector<BuildNumber> person_numbers();
/// Masses of the person's parts.
std::vector<BuildNumber> part_mass_numbers();
/// Those of the tempo.
std::vector<BuildNumber> tempo_numbers();

/// Present value [SI]; of a tempo that is not set, the one in which the exercise is shown.
double value_of(const setup::BodySetup& setup, const BuildNumber& number);
setup::Dimension dimension_of(const BuildNumber& number);
/// "height", "forearm", "way out"
std::string name_of(const BuildNumber& number);

/// The edit that sets one number.
setup::ExerciseEdit with_number(const setup::BodySetup& setup, const BuildNumber& number,
                                double value_SI);

} // namespace steelyard::app

#pragma once
// Moment arms of muscles that a setup gives: [[body.muscle_arm]].

#include "setup/body/body_setup.h"

#include <string>
#include <string_view>
#include <vector>

namespace steelyard::setup {

/// No muscle of a person has a longer moment arm [m].
inline constexpr double kLongestMuscleArm_m = 0.5;

/// Reads every [[body.muscle_arm]]. A muscle that no file has at that hinge is an error.
void read_given_arms(TomlReader& body, std::vector<GivenArm>& arms, SourceNotes& source);

/// The same as lines of a file.
std::string write_given_arms(const std::vector<GivenArm>& arms, const SourceNotes& source,
                             std::string_view length_unit);

} // namespace steelyard::setup

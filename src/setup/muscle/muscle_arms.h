#pragma once
// Reads the moment arms of a muscle file: [[muscle.arm]], one source each.

#include "setup/muscle/muscle_words.h"

namespace steelyard::setup {

/// One source's arms, turned into the hinge's own senses.
/// @param words  of the hinge, by which the file says which way arm and angle count
mechanics::ArmSource read_arm_source(TomlReader& table, const TurnWords& words);

} // namespace steelyard::setup

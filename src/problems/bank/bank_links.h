#pragma once
// What a family refers to in the rest of the bank has to be there.

#include "problems/bank/bank.h"

#include <vector>

namespace steelyard::problems {

/// @return one fault for each skill or wrong rule that the bank lacks, for an id that is taken, or
///         for a number in codes that another family has
std::vector<setup::InputError> faults_of_links(const Bank& bank, const Family& family);

} // namespace steelyard::problems

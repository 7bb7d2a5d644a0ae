#pragma once
// Looks a bank over: draws many instances of each family and reports what is refused and why.

#include "problems/bank.h"
#include "problems/instance.h"

#include <array>
#include <cstddef>
#include <string>
#include <vector>

namespace steelyard::problems {

/// What came of drawing one family.
struct FamilyCheck {
    std::string family; ///< id
    std::string file;
    std::size_t accepted = 0;
    std::size_t draws = 0;                        ///< with the refused ones
    std::array<std::size_t, kRefusals> refused{}; ///< by Refusal; [none] stays 0
    std::size_t duplicates = 0; ///< accepted instances that equal an earlier one in every number
    std::array<std::size_t, 6> by_difficulty{}; ///< accepted, by difficulty 1 to 5
    std::vector<std::string> faults;            ///< what makes the family unusable or wrong
    std::vector<std::string> warnings;          ///< what an author may want to mend
};

/// Draws until so many instances of a family are accepted (or far too many are refused), and checks
/// that every worked step gives the solver's number.
FamilyCheck check_family(const Bank& bank, const Family& family, std::size_t instances = 1000);

} // namespace steelyard::problems

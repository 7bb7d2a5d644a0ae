#pragma once
// Looks a bank over: draws many instances of each family and reports what is refused and why.

#include "problems/bank/bank.h"
#include "problems/draw/instance.h"

#include <array>
#include <cstddef>
#include <string>
#include <vector>

namespace steelyard::problems {

/// A family with fewer different questions than this is thin.
inline constexpr std::size_t kFewQuestions = 100;

/// What came of drawing one family.
struct FamilyCheck {
    std::string family; ///< id
    std::string file;
    bool written = false; ///< its questions stand in the file: all of them are accepted
    std::size_t accepted = 0;
    std::size_t draws = 0;                        ///< with the refused ones
    std::array<std::size_t, kRefusals> refused{}; ///< by Refusal; [none] stays 0
    std::size_t duplicates = 0; ///< accepted instances that ask what an earlier one asked
    std::array<std::size_t, 6> by_difficulty{}; ///< accepted, by difficulty 1 to 5
    std::vector<std::string> faults;            ///< what makes the family unusable or wrong
    std::vector<std::string> warnings;          ///< what an author may want to mend

    /// Different questions among those accepted; of a thin family soon all that it has.
    std::size_t different() const { return accepted - duplicates; }
    /// Whether somebody who practises much will meet its questions again.
    /// After few draws of a family that is not written out nobody can tell.
    bool is_thin() const {
        return different() < kFewQuestions && (written || accepted >= 5 * kFewQuestions);
    }
};

/// Draws until so many instances of a family are accepted (or far too many are refused), and checks
/// that every worked step gives the solver's number.
FamilyCheck check_family(const Bank& bank, const Family& family, std::size_t instances = 1000);

} // namespace steelyard::problems

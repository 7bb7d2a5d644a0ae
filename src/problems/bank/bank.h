#pragma once
// The question bank in memory: skills, wrong rules and families, as read from question_bank/.

#include "problems/bank/family.h"
#include "setup/toml/input_error.h"

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::problems {

/// One thing that a candidate can do.
struct Skill {
    std::string id;                 ///< "moment-arm-oblique"
    std::string title;              ///< "Find the moment arm of an oblique pull"
    std::string about;              ///< one sentence to the learner
    int level = 1;                  ///< step of the staircase: 1 = nothing needed before
    std::vector<std::string> needs; ///< ids of the skills that come before
};

/// A named mistake and what to say to someone who makes it.
struct WrongRule {
    std::string id;                    ///< "distance-for-arm"
    std::string title;                 ///< "Distance to the point instead of the moment arm"
    std::string feedback;              ///< a sentence or two about the thinking
    std::string ask;                   ///< a question that finds out whether this was the thinking
    std::vector<std::string> parts_at; ///< quantities whose step it gets wrong; first match counts
    std::string draws_wrong;           ///< length that it takes; empty = nothing to draw
    std::string draws_right;           ///< length to take instead
    bool only_in_si = false; ///< the mistake cannot be made with pounds of mass and of force
};

struct Bank {
    std::vector<Skill> skills;          ///< prerequisites before what needs them
    std::vector<WrongRule> wrong_rules; ///< in the order of the file
    std::vector<Family> families;       ///< by id, as written
    std::vector<Family> us_editions;    ///< by id, of those that are written in SI
    /// Groups of names that mean one thing, in small letters, as the glossary has them: any of them
    /// may be typed for another.
    std::vector<std::vector<std::string>> synonyms;
    /// What cannot be used and why; the rest of the bank is there all the same.
    std::vector<setup::InputError> faults;
    /// The same of the person's own families, whose loss changes nothing in ours.
    std::vector<setup::InputError> own_faults;

    const Skill* find_skill(std::string_view id) const;
    const WrongRule* find_wrong_rule(std::string_view id) const;
    const Family* find_family(std::string_view id) const;
    const Family* find_family_by_number(std::uint64_t number) const;
    /// The edition of one of the families in these units; the family itself where it has no other.
    const Family& in_units(const Family& family, setup::UnitSystem units) const;
    /// Whether somebody with these units is asked a family, in one edition or the other. A family
    /// about both systems is for everybody.
    static bool suits(const Family& family, setup::UnitSystem units);
};

/// Reads a bank: skills.toml, wrong_rules.toml, families/*.toml and items/*.toml, in the order of
/// their names. Never fails as a whole.
Bank load_bank(const std::filesystem::path& directory);

/// Before the id of every family of the person's own, so that none is taken for one of ours:
/// "own-tug-of-war".
inline constexpr std::string_view kOwnPrefix = "own-";

/// Adds the person's own families beside the others: *.toml of the folder itself and of families/
/// and items/ in it, for skills and wrong rules of the bank. One that cannot be used is told in
/// own_faults; a folder that is not there adds nothing. Papers take them only where they are asked
/// for, since the same seed is to give the same paper everywhere.
void add_own_families(Bank& bank, const std::filesystem::path& directory);

/// Where the person's own families are: a folder of setup::own_folder; empty when no home is known.
std::filesystem::path own_bank_folder();

} // namespace steelyard::problems

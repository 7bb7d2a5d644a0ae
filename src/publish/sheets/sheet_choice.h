#pragma once
// A sheet put together by choosing: topics, how many questions of each, how hard, about what. Kept
// as a blueprint, and chosen anew from one.

#include "publish/sheets/blueprint.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::publish {

struct SheetChoice {
    std::string title = "Levers and torque";
    std::vector<std::string> skills; ///< ids; empty = a mixed sheet of all
    std::int64_t each = 3;           ///< questions of each skill, or of the mixed sheet
    std::optional<int> difficulty;   ///< 1 to 5; empty = any
    std::optional<problems::Scene> about;
    bool with_own = false;
    bool prints_codes = false;

    bool operator==(const SheetChoice&) const = default;
};

/// How files and options call what questions show, in the order of problems::Scene.
const std::vector<std::string_view>& scene_words();

/// With a skill more or less.
SheetChoice toggled(SheetChoice choice, const std::string& skill);

/// The blueprint of a choice: a part for each skill, in the order of the bank, under its title.
/// @param name  of its file, without the ending
Blueprint blueprint_of(const SheetChoice& choice, const problems::Bank& bank,
                       const std::string& name);

/// The choice that gives a blueprint; empty where the blueprint says more than can be chosen, such
/// as single families or parts of different sizes.
std::optional<SheetChoice> choice_of(const Blueprint& blueprint, const problems::Bank& bank);

} // namespace steelyard::publish

#include "publish/sheets/sheet_choice.h"

#include <algorithm>

namespace steelyard::publish {

namespace {

/// Whether two blueprints make the same questions under the same headings.
bool same_questions(const Blueprint& one, const Blueprint& other) {
    return std::equal(one.parts.begin(), one.parts.end(), other.parts.begin(), other.parts.end(),
                      [](const BlueprintPart& a, const BlueprintPart& b) {
                          return a.heading == b.heading && a.count == b.count &&
                                 a.skill == b.skill && a.family == b.family &&
                                 a.difficulty == b.difficulty && a.units == b.units &&
                                 a.about == b.about;
                      });
}

} // namespace

const std::vector<std::string_view>& scene_words() {
    static const std::vector<std::string_view> kWords{"people", "things", "words"};
    return kWords;
}

SheetChoice toggled(SheetChoice choice, const std::string& skill) {
    const auto found = std::find(choice.skills.begin(), choice.skills.end(), skill);
    if (found == choice.skills.end())
        choice.skills.push_back(skill);
    else
        choice.skills.erase(found);
    std::sort(choice.skills.begin(), choice.skills.end());
    return choice;
}

Blueprint blueprint_of(const SheetChoice& choice, const problems::Bank& bank,
                       const std::string& name) {
    Blueprint blueprint;
    blueprint.name = name;
    blueprint.title = choice.title;
    blueprint.with_own = choice.with_own;
    blueprint.prints_codes = choice.prints_codes;
    const auto add = [&](std::string heading, std::optional<std::string> skill) {
        BlueprintPart part;
        part.heading = std::move(heading);
        part.skill = std::move(skill);
        part.count = choice.each;
        part.difficulty = choice.difficulty;
        part.about = choice.about;
        blueprint.parts.push_back(std::move(part));
    };
    for (const problems::Skill& skill : bank.skills)
        if (std::find(choice.skills.begin(), choice.skills.end(), skill.id) != choice.skills.end())
            add(skill.title, skill.id);
    if (blueprint.parts.empty())
        add("", std::nullopt);
    return blueprint;
}

std::optional<SheetChoice> choice_of(const Blueprint& blueprint, const problems::Bank& bank) {
    if (blueprint.parts.empty())
        return std::nullopt;
    const BlueprintPart& first = blueprint.parts.front();
    SheetChoice choice;
    choice.title = blueprint.title;
    choice.each = first.count;
    choice.difficulty = first.difficulty;
    choice.about = first.about;
    choice.with_own = blueprint.with_own;
    choice.prints_codes = blueprint.prints_codes;
    for (const BlueprintPart& part : blueprint.parts)
        if (part.skill)
            choice = toggled(std::move(choice), *part.skill);
    if (!same_questions(blueprint_of(choice, bank, blueprint.name), blueprint))
        return std::nullopt;
    return choice;
}

} // namespace steelyard::publish

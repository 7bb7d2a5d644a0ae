#include "publish/sheets/blueprint.h"
#include "publish/sheets/sheet_choice.h"
#include "setup/files/folder.h"

namespace steelyard::publish {
namespace {

using setup::Need;
using setup::TomlReader;

BlueprintPart read_part(TomlReader& table) {
    BlueprintPart part;
    part.line = table.line();
    part.heading = table.text("heading").value_or("");
    part.count = table.integer("count", Need::optional, 1, kMostQuestions).value_or(part.count);
    part.skill = table.text("skill");
    part.family = table.text("family");
    if (const auto difficulty = table.integer("difficulty", Need::optional, 1, 5))
        part.difficulty = static_cast<int>(*difficulty);
    if (const auto system = table.choice("units", {"SI", "US"}))
        part.units = *system == 0 ? setup::UnitSystem::si : setup::UnitSystem::us;
    if (const auto about = table.choice("about", scene_words()))
        part.about = static_cast<problems::Scene>(*about);
    table.finish();
    return part;
}

/// "assets/blueprints/boathouse.blueprint.toml" as "boathouse".
std::string name_of_file(const std::string& file) {
    std::string name = std::filesystem::path(file).filename().string();
    if (name.size() > kBlueprintEnding.size() &&
        name.compare(name.size() - kBlueprintEnding.size(), std::string::npos, kBlueprintEnding) ==
            0)
        name.erase(name.size() - kBlueprintEnding.size());
    return name;
}

tl::expected<Blueprint, setup::InputError> blueprint_in(const setup::TomlDocument& document) {
    setup::InputErrors errors;
    TomlReader top(document, errors);
    Blueprint blueprint;
    blueprint.file = document.file;
    blueprint.name = name_of_file(document.file);
    blueprint.title = top.short_text("title", Need::required).value_or("");
    blueprint.note = top.text("note").value_or("");
    blueprint.paper =
        top.choice("paper", {"A4", "Letter"}) == 1 ? PaperSize::letter : PaperSize::a4;
    blueprint.large_print = top.boolean("large_print").value_or(false);
    blueprint.with_own = top.boolean("own_families").value_or(false);
    blueprint.prints_codes = top.boolean("question_codes").value_or(false);
    std::int64_t questions = 0;
    for (TomlReader& part : top.tables("part", Need::required)) {
        blueprint.parts.push_back(read_part(part));
        questions += blueprint.parts.back().count;
    }
    if (questions > kMostQuestions) {
        top.add_error("part", std::to_string(questions) + " questions in all",
                      "at most " + std::to_string(kMostQuestions),
                      "Make several sheets, or ask for fewer.");
    }
    top.finish();
    if (!errors.empty())
        return tl::make_unexpected(setup::first_of(errors));
    return blueprint;
}

} // namespace

tl::expected<Blueprint, setup::InputError> parse_blueprint(std::string_view text,
                                                           const std::string& file) {
    return setup::parse_toml(text, file).and_then(blueprint_in);
}

std::vector<BlueprintListing> list_blueprints(const std::filesystem::path& folder) {
    const auto files = setup::files_ending(folder, kBlueprintEnding);
    if (!files)
        return {tl::make_unexpected(files.error())};
    std::vector<BlueprintListing> blueprints;
    for (const std::filesystem::path& file : *files)
        blueprints.push_back(read_blueprint(file));
    return blueprints;
}

tl::expected<Blueprint, setup::InputError> read_blueprint(const std::filesystem::path& path) {
    return setup::read_toml_file(path).and_then(blueprint_in);
}

} // namespace steelyard::publish

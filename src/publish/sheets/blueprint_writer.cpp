#include "publish/sheets/blueprint.h"
#include "publish/sheets/sheet_choice.h"

#include <fmt/format.h>

namespace steelyard::publish {
namespace {

/// A line of the file, left out where there is nothing to say.
std::string line(std::string_view key, std::string_view text) {
    return text.empty() ? "" : fmt::format("{} = {}\n", key, setup::toml_words(text));
}

std::string flag(std::string_view key, bool set) {
    return set ? fmt::format("{} = true\n", key) : "";
}

std::string part_text(const BlueprintPart& part) {
    std::string text =
        "\n[[part]]\n" + line("heading", part.heading) + line("skill", part.skill.value_or("")) +
        line("family", part.family.value_or("")) + fmt::format("count = {}\n", part.count);
    if (part.difficulty)
        text += fmt::format("difficulty = {}\n", *part.difficulty);
    if (part.about)
        text += line("about", scene_words()[static_cast<std::size_t>(*part.about)]);
    if (part.units)
        text += line("units", *part.units == setup::UnitSystem::us ? "US" : "SI");
    return text;
}

} // namespace

std::string write_blueprint(const Blueprint& blueprint) {
    std::string text = line("title", blueprint.title) + line("note", blueprint.note) +
                       line("paper", blueprint.paper == PaperSize::letter ? "Letter" : "A4") +
                       flag("large_print", blueprint.large_print) +
                       flag("own_families", blueprint.with_own) +
                       flag("question_codes", blueprint.prints_codes);
    for (const BlueprintPart& part : blueprint.parts)
        text += part_text(part);
    return text;
}

} // namespace steelyard::publish

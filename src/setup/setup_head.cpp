#include "setup/setup_head.h"

#include "setup/units/format_quantity.h"
#include "setup/units/unit_table.h"

#include <fmt/format.h>

#include <cstring>

namespace steelyard::setup {
namespace {

/// "load[0].mass" as people count: "load[1].mass".
std::string counted_from_one(const std::string& key) {
    std::string result;
    for (std::size_t i = 0; i < key.size(); ++i) {
        result += key[i];
        if (key[i] != '[')
            continue;
        std::size_t index = 0;
        std::size_t end = i + 1;
        for (; end < key.size() && key[end] >= '0' && key[end] <= '9'; ++end)
            index = 10 * index + static_cast<std::size_t>(key[end] - '0');
        if (end > i + 1) {
            result += std::to_string(index + 1);
            i = end - 1;
        }
    }
    return result;
}

std::string found_phrase(const mechanics::MechanicsError& error, const SourceNote* note) {
    if (note && !note->text.empty())
        return note->bare ? note->text : fmt::format("\"{}\"", note->text);
    switch (error.fault) {
    case mechanics::Fault::not_finite:
        return "a number that is not finite";
    case mechanics::Fault::out_of_range:
        return "a value out of range";
    case mechanics::Fault::zero_length:
        return "something without length";
    case mechanics::Fault::off_lever:
        return "a place off the lever";
    case mechanics::Fault::unknown_name:
        return "an unknown name";
    case mechanics::Fault::inconsistent:
        return "values that cannot go together";
    }
    return "a value that cannot be used";
}

} // namespace

bool same_bits(double one, double other) {
    return std::memcmp(&one, &other, sizeof one) == 0;
}

const SourceNote* SourceNotes::find(std::string_view key) const {
    const auto found = by_key.find(key);
    return found == by_key.end() ? nullptr : &found->second;
}

SetupHead read_head(TomlReader& top) {
    SetupHead head;
    top.text("kind", Need::required);
    head.name = top.short_text("name", Need::required).value_or("");
    if (top.has("name") && head.name.find_first_not_of(" \t\n") == std::string::npos)
        top.add_error("name", "an empty name", "a name such as \"Launch trolley\"");
    head.description = top.text("description", Need::required).value_or("");
    head.place = top.short_text("place").value_or("");
    head.note = top.text("note").value_or("");
    head.order = static_cast<int>(
        top.integer("order", Need::optional, 0, SetupHead::kLast).value_or(SetupHead::kLast));
    head.units =
        top.choice("units", {"SI", "US"}).value_or(0) == 1 ? UnitSystem::us : UnitSystem::si;
    return head;
}

std::string write_head(const SetupHead& head, std::string_view kind) {
    std::string text = fmt::format("kind = {}\nname = {}\ndescription = {}\n", toml_string(kind),
                                   toml_name(head.name), toml_words(head.description));
    if (!head.place.empty())
        text += fmt::format("place = {}\n", toml_name(head.place));
    if (!head.note.empty())
        text += fmt::format("note = {}\n", toml_words(head.note));
    if (head.order != SetupHead::kLast)
        text += fmt::format("order = {}\n", head.order);
    return text + fmt::format("units = \"{}\"\n", head.units == UnitSystem::us ? "US" : "SI");
}

InputError placed_error(const mechanics::MechanicsError& error, const SourceNotes& source) {
    InputError placed;
    placed.file = source.file;
    placed.key = counted_from_one(error.key);
    placed.expected = error.expected;
    const SourceNote* note = source.find(error.key);
    placed.found = found_phrase(error, note);
    // The key of a default that was never written: point at the table it would stand in.
    std::string_view key = error.key;
    while (!note && !key.empty()) {
        const std::size_t cut = key.find_last_of(".[");
        key = cut == std::string_view::npos ? std::string_view() : key.substr(0, cut);
        note = source.find(key);
    }
    if (note) {
        placed.line = note->line;
        placed.column = note->column;
        if (!note->key.empty())
            placed.key = note->key + counted_from_one(error.key.substr(key.size()));
    }
    return placed;
}

std::optional<double> noted_quantity(TomlReader& table, std::string_view key, Dimension dimension,
                                     const std::string& mechanics_key, SourceNotes& source,
                                     Need need, bool mass_as_force) {
    const auto written = table.quantity(key, dimension, need, mass_as_force);
    if (!written)
        return std::nullopt;
    source.by_key[mechanics_key] = {written->text, written->bare, written->line, written->column,
                                    table.path_of(key)};
    return written->value_SI;
}

std::string written_quantity(double value_SI, Dimension dimension, std::string_view mechanics_key,
                             const SourceNotes& source, std::string_view fallback_unit,
                             bool mass_as_force) {
    const SourceNote* note = source.find(mechanics_key);
    std::string unit(fallback_unit);
    if (note) {
        const ReadingRules rules = rules_of_files(dimension, mass_as_force);
        const auto read = parse_typed_quantity(note->text, dimension, rules);
        if (read && same_bits(read->value_SI, value_SI))
            return note->bare ? note->text : toml_string(note->text);
        if (read && read->unit_dimension == dimension && !read->unit.empty())
            unit = read->unit;
    }
    const std::string text = exact_quantity(value_SI, dimension, unit);
    return dimension == Dimension::number ? text : toml_string(text);
}

} // namespace steelyard::setup

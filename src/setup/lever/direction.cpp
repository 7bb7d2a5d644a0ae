#include "setup/lever/direction.h"

#include "mechanics/lever/lever.h"
#include "setup/units/format_quantity.h"

#include <fmt/format.h>

#include <array>
#include <cmath>

namespace steelyard::setup {
namespace {

using mechanics::kPi;

struct NamedDirection {
    std::string_view word;
    double direction_rad;
};

constexpr std::array kNamed = {
    NamedDirection{"right", 0.0}, NamedDirection{"up", mechanics::kUp_rad},
    NamedDirection{"left", kPi}, NamedDirection{"down", mechanics::kDown_rad}};

} // namespace

std::optional<double> direction_of_word(std::string_view word) {
    for (const NamedDirection& named : kNamed)
        if (named.word == word)
            return named.direction_rad;
    return std::nullopt;
}

std::optional<double> noted_direction(TomlReader& table, std::string_view key,
                                      const std::string& mechanics_key, SourceNotes& source,
                                      Need need) {
    const TomlNode* node = table.node(key, need);
    if (!node)
        return std::nullopt;
    const auto* text = std::get_if<std::string>(&node->value);
    if (const auto named = text ? direction_of_word(*text) : std::nullopt) {
        source.by_key[mechanics_key] = {*text, false, node->line, node->column};
        return named;
    }
    const bool begins_like_number = !text || text->find_first_of("0123456789") != std::string::npos;
    if (begins_like_number)
        return noted_quantity(table, key, Dimension::angle, mechanics_key, source);
    const std::string nearest = nearest_spelling(*text, {"right", "up", "left", "down"});
    table.add_error(key, describe(*node),
                    "\"up\", \"down\", \"left\", \"right\" or an angle such as \"30°\", "
                    "counter-clockwise from the right",
                    nearest.empty() ? std::string() : fmt::format("Did you mean \"{}\"?", nearest));
    return std::nullopt;
}

std::string written_direction(double direction_rad, std::string_view mechanics_key,
                              const SourceNotes& source) {
    const SourceNote* note = source.find(mechanics_key);
    const bool authors_word = note && direction_of_word(note->text) == direction_rad;
    if (authors_word)
        return toml_string(note->text);
    const bool authors_angle = note && !direction_of_word(note->text);
    if (!authors_angle)
        for (const NamedDirection& named : kNamed)
            if (named.direction_rad == direction_rad)
                return toml_string(named.word);
    return written_quantity(direction_rad, Dimension::angle, mechanics_key, source, "°");
}

std::string direction_in_words(double direction_rad) {
    // Nearest of the four, and how far the direction is turned from it.
    const double quarters = direction_rad / (0.5 * kPi);
    const double nearest = std::round(quarters);
    const double turned_rad = (quarters - nearest) * 0.5 * kPi;
    const auto index = static_cast<std::size_t>(std::fmod(std::fmod(nearest, 4.0) + 4.0, 4.0));
    const std::string base(kNamed[index].word);
    constexpr double kHundredthDegree = 0.01 * kPi / 180.0;
    if (std::abs(turned_rad) < kHundredthDegree)
        return base;
    // Turning counter-clockwise leads from each of the four to the next one.
    const std::string_view towards = kNamed[(index + (turned_rad > 0 ? 1 : 3)) % 4].word;
    const std::string angle =
        format_quantity(std::abs(turned_rad), Dimension::angle, UnitSystem::si, {3, false});
    static constexpr std::array<std::string_view, 4> kSides = {"right of", "above", "left of",
                                                               "below"};
    for (std::size_t i = 0; i < kNamed.size(); ++i)
        if (kNamed[i].word == towards)
            return fmt::format("{} {} {}", angle, kSides[i], base);
    return base;
}

} // namespace steelyard::setup

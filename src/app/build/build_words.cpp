#include "app/build/build_words.h"

#include "mechanics/resistance/resistance_kinds.h"
#include "setup/units/format_quantity.h"

#include <fmt/format.h>

#include <algorithm>

namespace steelyard::app {

namespace {

using mechanics::Contact;
using mechanics::Patch;
using mechanics::Segment;
using setup::Dimension;

std::string side_of(Segment segment) {
    const std::string_view label = mechanics::segment_info(segment).label;
    for (const std::string_view side : {"right ", "left "})
        if (label.rfind(side, 0) == 0)
            return std::string(side);
    return {};
}

std::string plural(std::string_view word) {
    return word == "foot" ? "feet" : word == "toes" ? "toes" : std::string(word) + "s";
}

/// The word of a patch, of one side: "foot", "knee".
std::string_view patch_word(Patch patch) {
    switch (patch) {
    case Patch::sole:
    case Patch::ball:
        return "foot";
    case Patch::toes:
        return "toes";
    case Patch::palm:
    case Patch::grip:
        return "hand";
    case Patch::seat:
        return "seat";
    case Patch::knee:
        return "knee";
    case Patch::back:
        return "back";
    case Patch::forearm:
        return "forearm";
    }
    return "";
}

} // namespace

std::string person_words(const setup::Person& person, setup::UnitSystem units) {
    return fmt::format("{}, {}, {}", person.sex == mechanics::Sex::male ? "man" : "woman",
                       setup::format_quantity(person.height_m, Dimension::length, units),
                       setup::format_quantity(person.mass_kg, Dimension::mass, units));
}

std::string touching_word(Segment segment, Patch patch) {
    const std::string word = side_of(segment) + std::string(patch_word(patch));
    return patch == Patch::grip ? word + ", holding on" : word;
}

std::string carried_words(const mechanics::Support& support) {
    if (const auto* held = std::get_if<mechanics::Held>(&support))
        return fmt::format("held at the {}", mechanics::segment_info(held->segment).label);
    const std::vector<Contact>& contacts = std::get<mechanics::OnContacts>(support).contacts;
    std::vector<bool> told(contacts.size(), false);
    std::string words;
    for (std::size_t i = 0; i < contacts.size(); ++i) {
        if (told[i])
            continue;
        std::string word =
            side_of(contacts[i].segment) + std::string(patch_word(contacts[i].patch));
        for (std::size_t k = i + 1; k < contacts.size(); ++k)
            if (contacts[k].patch == contacts[i].patch &&
                contacts[k].segment == mechanics::segment_info(contacts[i].segment).mirror) {
                told[k] = true;
                word = "both " + plural(patch_word(contacts[i].patch));
            }
        words += (words.empty() ? "" : ", ") + word;
    }
    return words;
}

std::string size_words(const mechanics::Resistance& load, setup::UnitSystem units) {
    mechanics::Resistance copy = load;
    const double* size = mechanics::size_in(copy);
    if (size == nullptr)
        return {};
    const bool is_pull = mechanics::size_is(load) == mechanics::SizeIs::pull;
    return setup::format_quantity(*size, is_pull ? Dimension::force : Dimension::mass, units);
}

std::string movement_words(const mechanics::Exercise& exercise) {
    if (!exercise.path)
        return "holds still";
    if (!exercise.tempo)
        return "moves slowly";
    const auto seconds = [](double time_s) {
        return setup::format_quantity(time_s, Dimension::time, setup::UnitSystem::si, {3, false});
    };
    const mechanics::Tempo& tempo = *exercise.tempo;
    return tempo.hold_s > 0.0
               ? fmt::format("{}, hold {}, {} back", seconds(tempo.out_s), seconds(tempo.hold_s),
                             seconds(tempo.back_s))
               : fmt::format("{}, {} back", seconds(tempo.out_s), seconds(tempo.back_s));
}

std::vector<std::string> load_kind_words() {
    std::vector<std::string> words;
    for (const std::string_view name : mechanics::resistance_kind_names()) {
        words.emplace_back(name);
        std::replace(words.back().begin(), words.back().end(), '_', ' ');
    }
    return words;
}

} // namespace steelyard::app

#include "mechanics/constants.h"
#include "setup/toml/spelling.h"
#include "setup/units/typed_text.h"
#include "setup/units/unit_table.h"
#include "setup/units/units.h"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <utility>

namespace steelyard::setup {
namespace {

constexpr std::array kDimensions = {
    Dimension::length, Dimension::angle,        Dimension::mass,      Dimension::force,
    Dimension::torque, Dimension::time,         Dimension::speed,     Dimension::angular_speed,
    Dimension::energy, Dimension::acceleration, Dimension::stiffness, Dimension::power,
    Dimension::number};

/// "45 cm", "30 lbf": what a quantity of the dimension looks like.
std::string_view example_of(Dimension dimension) {
    switch (dimension) {
    case Dimension::number:
        return "2.5";
    case Dimension::length:
        return "45 cm";
    case Dimension::angle:
        return "30°";
    case Dimension::mass:
        return "12 kg";
    case Dimension::force:
        return "120 N";
    case Dimension::torque:
        return "20 N·m";
    case Dimension::time:
        return "2 s";
    case Dimension::speed:
        return "0.5 m/s";
    case Dimension::angular_speed:
        return "60 °/s";
    case Dimension::acceleration:
        return "9.8 m/s²";
    case Dimension::stiffness:
        return "150 N/m";
    case Dimension::energy:
        return "50 J";
    case Dimension::power:
        return "100 W";
    }
    return "1";
}

/// The unit that a typed text begins with, and how far it reaches.
struct FoundUnit {
    const Unit* unit = nullptr;
    std::size_t end = 0;
};

/// The normal form of a typed unit: blanks, hyphens and points between its parts are product
/// signs, a power needs no mark.
std::string spelling_key(std::string_view typed) {
    std::string key;
    for (const char c : typed) {
        const bool joins = c == ' ' || c == '-' || c == '*';
        if (!joins && c != '^')
            key += c;
        else if (joins && !key.empty() && key.back() != '*' && key.back() != '/')
            key += '*';
        if (c == '/' && key.size() > 1 && key[key.size() - 2] == '*')
            key.erase(key.size() - 2, 1);
    }
    while (!key.empty() && key.back() == '*')
        key.pop_back();
    return key;
}

const Unit* find_unit(Dimension wanted, std::string_view typed) {
    const std::string key = spelling_key(typed);
    if (const Unit* unit = unit_by_spelling(wanted, key))
        return unit;
    // "N.m", "ft.lb.": a point as product sign or as the end of an abbreviation.
    std::string pointed;
    for (const char c : key)
        pointed += c == '.' ? '*' : c;
    while (!pointed.empty() && pointed.back() == '*')
        pointed.pop_back();
    return unit_by_spelling(wanted, pointed);
}

/// Longest unit of the dimension at the front of the text that is followed by its end or by
/// another number.
FoundUnit unit_at_front(Dimension wanted, std::string_view text) {
    for (std::size_t end = text.size(); end > 0; --end) {
        const bool another_number = end < text.size() && text[end] >= '0' && text[end] <= '9';
        if (end < text.size() && !another_number)
            continue;
        std::string_view typed = text.substr(0, end);
        while (!typed.empty() && (typed.back() == ' ' || (another_number && typed.back() == ',')))
            typed.remove_suffix(1);
        if (const Unit* unit = find_unit(wanted, typed))
            return {unit, end};
    }
    return {};
}

/// "kg" where a force is wanted, "kg·m" where a torque is.
FoundUnit mass_unit_at_front(Dimension wanted, std::string_view text) {
    if (wanted == Dimension::force)
        return unit_at_front(Dimension::mass, text);
    return {};
}

double part_in_SI(double value, const Unit& unit, Dimension wanted) {
    const double value_SI = value_in_SI(value, unit);
    const bool weight_of_mass = wanted == Dimension::force && unit.dimension == Dimension::mass;
    return weight_of_mass ? value_SI * mechanics::kStandardGravity : value_SI;
}

std::string shown(std::string_view normal) {
    std::string text;
    for (const char c : normal)
        text += c == '*' ? std::string("·") : std::string(1, c);
    return text;
}

std::string example_sentence(Dimension wanted) {
    return fmt::format("Write it as in {}.", example_of(wanted));
}

/// Every spelling of the dimension's units that a slip could have been meant for.
std::string nearest_unit(std::string_view typed, Dimension wanted) {
    std::vector<std::string_view> spellings = unit_symbols(wanted);
    for (const Unit& unit : all_units()) {
        std::string_view rest = unit.dimension == wanted ? unit.spellings : std::string_view();
        while (!rest.empty()) {
            const std::size_t bar = rest.find('|');
            spellings.push_back(rest.substr(0, bar));
            rest = bar == std::string_view::npos ? std::string_view() : rest.substr(bar + 1);
        }
    }
    return shown(nearest_spelling(spelling_key(typed), spellings));
}

UnitError unit_error(std::string_view typed_unit, const ScannedNumber& scanned, Dimension wanted) {
    UnitError error;
    error.wanted = wanted;
    error.number = scanned.number.value;
    error.found = shown(typed_unit);
    for (const Dimension other : kDimensions) {
        const FoundUnit found = other == wanted ? FoundUnit{} : unit_at_front(other, typed_unit);
        if (!found.unit || found.end != typed_unit.size())
            continue;
        error.fault = UnitFault::wrong_dimension;
        error.found_dimension = other;
        error.found_value_SI = value_in_SI(scanned.number.value, *found.unit);
        error.mend = wanted == Dimension::force && other == Dimension::mass
                         ? "Kilograms and pounds are masses; a force is in N, kgf or lbf."
                         : example_sentence(wanted);
        return error;
    }
    error.fault = UnitFault::unknown_unit;
    error.nearest = nearest_unit(typed_unit, wanted);
    error.mend = error.nearest.empty() ? example_sentence(wanted)
                                       : fmt::format("Did you mean {}?", error.nearest);
    return error;
}

/// Second number of a ratio ("3:1"), which is a pure number too.
tl::expected<TypedQuantity, UnitError> finish_ratio(std::string_view text, ScannedNumber first,
                                                    std::size_t second_begin) {
    const auto second = scan_number(text, second_begin);
    if (!second)
        return tl::make_unexpected(second.error());
    UnitError error;
    error.found = std::string(text);
    error.number = first.number.value;
    if (second->end != text.size()) {
        error.fault = UnitFault::trailing_text;
        error.mend = "Write a ratio as in 3:1.";
        return tl::make_unexpected(error);
    }
    const double below = second->number.value;
    const double ratio = first.number.value / below;
    if (below == 0.0 || !std::isfinite(ratio)) {
        error.fault = UnitFault::not_finite;
        error.mend = "A ratio cannot end in zero.";
        return tl::make_unexpected(error);
    }
    TypedQuantity quantity;
    quantity.number = first.number;
    quantity.number.value = ratio;
    quantity.number.last_place = first.number.last_place / std::abs(below);
    quantity.value_SI = ratio;
    quantity.last_place_SI = quantity.number.last_place;
    return quantity;
}

UnitError too_large(std::string_view text, Dimension wanted) {
    UnitError error;
    error.fault = UnitFault::not_finite;
    error.wanted = wanted;
    error.found = shown(text);
    error.mend = "The number is too large; write a smaller one.";
    return error;
}

/// A number without a unit at the end of the text.
tl::expected<const Unit*, UnitError> unit_of_bare(const ScannedNumber& scanned, Dimension wanted,
                                                  const Unit* before, const ReadingRules& rules) {
    if (before && before->symbol == "ft") // 5'10
        return unit_by_symbol(Dimension::length, "in");
    if (!before && !rules.bare_unit.empty())
        if (const Unit* unit = unit_by_symbol(wanted, rules.bare_unit))
            return unit;
    if (!before && (wanted == Dimension::number || scanned.number.value == 0.0))
        return nullptr;
    UnitError error;
    error.fault = UnitFault::missing_unit;
    error.wanted = wanted;
    error.number = scanned.number.value;
    error.found = fmt::format("{}", scanned.number.value);
    error.mend = fmt::format("Add the unit, as in {}.", example_of(wanted));
    return tl::make_unexpected(error);
}

} // namespace

tl::expected<TypedNumber, UnitError> parse_number(std::string_view text) {
    const auto quantity = parse_typed_quantity(text, Dimension::number);
    if (!quantity)
        return tl::make_unexpected(quantity.error());
    if (quantity->unit.empty())
        return quantity->number;
    UnitError error;
    error.fault = UnitFault::trailing_text;
    error.found = std::string(text);
    error.number = quantity->number.value;
    error.mend = "Write the number alone.";
    return tl::make_unexpected(error);
}

tl::expected<TypedQuantity, UnitError>
parse_typed_quantity(std::string_view typed, Dimension wanted, const ReadingRules& rules) {
    const std::string text = normalised(typed);
    if (text.empty()) {
        UnitError error;
        error.wanted = wanted;
        error.mend = example_sentence(wanted);
        return tl::make_unexpected(error);
    }
    TypedQuantity quantity;
    const Unit* before = nullptr; // the unit of the part in front, in a compound
    double sign = 1.0;
    for (std::size_t at = 0; at < text.size();) {
        auto scanned = scan_number(text, at);
        if (!scanned) {
            scanned.error().wanted = wanted;
            return tl::make_unexpected(scanned.error());
        }
        if (!before)
            sign = text[0] == '-' ? -1.0 : 1.0;
        std::size_t rest_begin = scanned->end;
        while (rest_begin < text.size() && text[rest_begin] == ' ')
            ++rest_begin;
        const std::string_view rest = std::string_view(text).substr(rest_begin);
        if (wanted == Dimension::number && !before && !rest.empty() && rest[0] == ':')
            return finish_ratio(text, *scanned, rest_begin + 1);

        // "5-ft": a hyphen between number and unit.
        const std::size_t hyphen = !rest.empty() && (rest[0] == '-' || rest[0] == '*') ? 1 : 0;
        const Unit* unit = nullptr;
        if (rest.empty()) {
            const auto bare = unit_of_bare(*scanned, wanted, before, rules);
            if (!bare)
                return tl::make_unexpected(bare.error());
            unit = *bare;
            at = text.size();
        } else {
            FoundUnit found = unit_at_front(wanted, rest.substr(hyphen));
            if (found.unit && found.unit->mass_based && !rules.mass_as_force)
                found = {};
            if (!found.unit && rules.mass_as_force)
                found = mass_unit_at_front(wanted, rest.substr(hyphen));
            const bool grows =
                before && found.unit && value_in_SI(1.0, *found.unit) >= value_in_SI(1.0, *before);
            if (!found.unit || grows)
                return tl::make_unexpected(unit_error(rest, *scanned, wanted));
            unit = found.unit;
            at = rest_begin + hyphen + found.end;
        }

        const double part =
            unit ? part_in_SI(scanned->number.value, *unit, wanted) : scanned->number.value;
        quantity.value_SI += before ? sign * part : part;
        quantity.number = scanned->number;
        quantity.last_place_SI = unit ? part_in_SI(scanned->number.last_place, *unit, wanted)
                                      : scanned->number.last_place;
        if (unit) {
            quantity.unit = rest.empty() && !before ? std::string() : std::string(unit->symbol);
            quantity.unit_dimension = unit->dimension;
        }
        before = unit;
        if (!std::isfinite(quantity.value_SI))
            return tl::make_unexpected(too_large(text, wanted));
        if (!unit)
            break;
    }
    return quantity;
}

tl::expected<double, UnitError> parse_quantity(std::string_view text, Dimension wanted,
                                               const ReadingRules& rules) {
    return parse_typed_quantity(text, wanted, rules).map([](const TypedQuantity& quantity) {
        return quantity.value_SI;
    });
}

std::string to_text(const UnitError& error) {
    const std::string_view name = name_of(error.wanted);
    const bool vowel = std::string_view("aeiou").find(name[0]) != std::string_view::npos;
    const std::string wanted = fmt::format("{} {}", vowel ? "an" : "a", name);
    std::string what;
    switch (error.fault) {
    case UnitFault::empty:
        what = fmt::format("Nothing was typed where {} is needed.", wanted);
        break;
    case UnitFault::no_number:
        what = fmt::format("“{}” is not a number.", error.found);
        break;
    case UnitFault::ambiguous_number:
        what = fmt::format("“{}” can be read in two ways.", error.found);
        break;
    case UnitFault::missing_unit:
        what = fmt::format("“{}” has no unit; {} needs one.", error.found, wanted);
        break;
    case UnitFault::unknown_unit:
        what = fmt::format("“{}” is not a unit of {}.", error.found, name_of(error.wanted));
        break;
    case UnitFault::wrong_dimension:
        what = fmt::format("“{}” is a unit of {}, not of {}.", error.found,
                           name_of(error.found_dimension.value_or(error.wanted)),
                           name_of(error.wanted));
        break;
    case UnitFault::not_finite:
        what = fmt::format("“{}” is not a finite number.", error.found);
        break;
    case UnitFault::trailing_text:
        what = fmt::format("“{}” has something after the number.", error.found);
        break;
    }
    return error.mend.empty() ? what : what + " " + error.mend;
}

} // namespace steelyard::setup

#include "problems/bank/family_names.h"

#include "setup/toml/spelling.h"
#include "setup/units/format_quantity.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace steelyard::problems {

namespace {

using setup::Dimension;

/// A name of a family's own as people write it.
std::string in_words(std::string_view name, std::string_view blank) {
    std::string words;
    for (const char c : name)
        if (c == '_')
            words += blank;
        else
            words += c;
    return words;
}

} // namespace

const setup::Unit* find_unit(std::string_view spelling, Dimension wanted) {
    for (const setup::Unit& unit : setup::all_units())
        if (unit.symbol == spelling && unit.dimension == wanted)
            return &unit;
    for (const setup::Unit& unit : setup::all_units())
        if (unit.symbol == spelling)
            return &unit;
    for (const setup::Unit& unit : setup::all_units())
        if (const setup::Unit* found = setup::unit_by_spelling(unit.dimension, spelling))
            return found;
    return nullptr;
}

QuantityIndex FamilyNames::add(Quantity quantity) {
    if (const Term* term = find_term(quantity.name)) {
        if (quantity.symbol.empty())
            quantity.symbol = term->symbol;
        if (quantity.words.empty())
            quantity.words = term->words;
        if (!quantity.unit)
            quantity.dimension = term->dimension;
    }
    if (quantity.symbol.empty())
        quantity.symbol = in_words(quantity.name, "\u00a0"); // a symbol is not broken
    if (quantity.words.empty())
        quantity.words = in_words(quantity.name, " ");
    if (!quantity.unit && quantity.dimension != Dimension::number)
        quantity.unit = family_.usual_unit(quantity.dimension);
    family_.quantities.push_back(std::move(quantity));
    return static_cast<QuantityIndex>(family_.quantities.size() - 1);
}

std::optional<QuantityIndex> FamilyNames::find(std::string_view name) {
    if (name == "g")
        name = "gravity";
    if (const std::optional<QuantityIndex> known = family_.find_quantity(name))
        return known;
    if (name == "scene") {
        Quantity scene;
        scene.name = "scene";
        family_.scene_number = add(std::move(scene));
        return family_.scene_number;
    }
    const Term* const term = find_term(name);
    if (!term)
        return std::nullopt;
    if (name == "gravity") {
        Quantity gravity;
        gravity.name = "gravity";
        gravity.dimension = Dimension::acceleration;
        gravity.unit = setup::unit_by_symbol(Dimension::acceleration,
                                             family_.is_us_edition ? "lbf/lb" : "m/s²");
        gravity.decimals = family_.is_us_edition ? 0 : 2;
        family_.gravity = add(std::move(gravity));
        return family_.gravity;
    }
    if (!setup_known_ || !term->provided || !family_.provides(*term->provided))
        return std::nullopt;
    Quantity quantity;
    quantity.name = term->name;
    const QuantityIndex index = add(std::move(quantity));
    family_.from_solution.push_back({*term->provided, index, false});
    solved_.push_back(index);
    return index;
}

bool FamilyNames::is_solved(QuantityIndex index) const {
    return std::find(solved_.begin(), solved_.end(), index) != solved_.end();
}

bool FamilyNames::reads_solved(const Expression& expression) const {
    const std::vector<std::uint16_t> reads = expression.reads();
    return std::any_of(reads.begin(), reads.end(),
                       [this](std::uint16_t index) { return is_solved(index); });
}

std::string FamilyNames::nearest(std::string_view name) const {
    std::vector<std::string_view> known;
    for (const Quantity& quantity : family_.quantities)
        known.push_back(quantity.name);
    for (const std::string& key : family_.scene_keys)
        known.push_back(key);
    for (const Term& term : vocabulary())
        known.push_back(term.name);
    return setup::nearest_spelling(name, known);
}

std::optional<Expression> FamilyNames::expression_in(setup::TomlReader& table, std::string_view key,
                                                     const std::string& text) {
    std::string unknown;
    const auto quantity_of = [&](std::string_view name) {
        const std::optional<QuantityIndex> index = find(name);
        if (!index)
            unknown = std::string(name);
        return index;
    };
    const auto unit_of = [](std::string_view spelling) -> std::optional<double> {
        const setup::Unit* const unit = find_unit(spelling);
        if (!unit)
            return std::nullopt;
        return setup::value_in_SI(1.0, *unit);
    };
    tl::expected<Expression, ExpressionError> parsed = parse_expression(text, quantity_of, unit_of);
    if (parsed)
        return std::move(*parsed);
    std::string mend = parsed.error().message + ".";
    const std::string near = unknown.empty() ? std::string() : nearest(unknown);
    if (!near.empty() && near != unknown)
        mend += fmt::format(" Did you mean \"{}\"?", near);
    else if (near == unknown && !near.empty())
        mend += " It is known only after the setup is solved, or from no setup at all.";
    table.add_error(
        key, fmt::format("\"{}\"", text),
        fmt::format("an expression; column {} is where it goes wrong", parsed.error().column),
        std::move(mend));
    return std::nullopt;
}

std::optional<Expression> FamilyNames::expression(setup::TomlReader& table, std::string_view key,
                                                  setup::Need need) {
    const setup::TomlNode* const node = table.node(key, need);
    if (!node)
        return std::nullopt;
    if (const auto* whole = std::get_if<std::int64_t>(&node->value))
        return expression_in(table, key, std::to_string(*whole));
    if (const auto* number = std::get_if<double>(&node->value); number && std::isfinite(*number))
        return expression_in(table, key, setup::exact_number(*number));
    if (const auto* text = std::get_if<std::string>(&node->value))
        return expression_in(table, key, *text);
    table.add_error(key, setup::describe(*node), "an expression in quotes, or a number");
    return std::nullopt;
}

std::vector<std::string> FamilyNames::in_each_scene(const TemplateText& text) const {
    std::vector<std::string> texts;
    for (std::size_t scene = 0; scene < std::max<std::size_t>(family_.scenes.size(), 1); ++scene)
        texts.push_back(text.fill([&](const TemplateText::Piece& piece) {
            const bool is_word = piece.is == TemplateText::Piece::Is::word;
            return is_word ? family_.scenes[scene][piece.index] : piece.text;
        }));
    return texts;
}

TemplateText FamilyNames::text_in(setup::TomlReader& table, std::string_view key,
                                  const std::string& text) {
    std::string unknown;
    const auto lookup = [&](std::string_view name) -> std::optional<TemplateText::Piece> {
        using Is = TemplateText::Piece::Is;
        const auto& keys = family_.scene_keys;
        const auto word = std::find(keys.begin(), keys.end(), name);
        if (word != keys.end())
            return TemplateText::Piece{
                Is::word, "", static_cast<std::uint16_t>(std::distance(keys.begin(), word))};
        if (const std::optional<QuantityIndex> index = find(name))
            return TemplateText::Piece{Is::quantity, "", *index};
        unknown = std::string(name);
        return std::nullopt;
    };
    tl::expected<TemplateText, std::string> parsed = TemplateText::parse(text, lookup);
    if (parsed)
        return std::move(*parsed);
    const std::string near = unknown.empty() ? std::string() : nearest(unknown);
    table.add_error(key, "a text whose placeholder cannot be filled", parsed.error(),
                    near.empty() ? std::string() : fmt::format("Did you mean \"{{{}}}\"?", near));
    return {};
}

TemplateText FamilyNames::text(setup::TomlReader& table, std::string_view key, setup::Need need) {
    const std::optional<std::string> text = table.text(key, need);
    return text ? text_in(table, key, *text) : TemplateText{};
}

} // namespace steelyard::problems

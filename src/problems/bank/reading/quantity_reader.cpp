#include "problems/bank/reading/quantity_reader.h"

#include "problems/bank/reading/draw_reader.h"
#include "setup/muscle/muscle_file.h"
#include "setup/toml/spelling.h"

#include <fmt/core.h>

#include <algorithm>

namespace steelyard::problems {

using setup::Need;
using setup::TomlReader;

namespace {

/// A computed quantity: its expression, or a table with unit, symbol and words beside it.
struct WrittenLet {
    std::string name;
    std::string is;
    bool fixed = false;
    std::optional<ArmOnFile> arm;
};

/// A muscle's arm on file: { muscle = "biceps", angle = "elbow_angle", to = "1 mm" }.
void read_arm_on_file(TomlReader& let, Family& family, const Published& published,
                      WrittenLet& written) {
    const std::string name = let.text("muscle", Need::required).value_or("");
    const auto muscle = std::find_if(
        published.muscles.begin(), published.muscles.end(),
        [&](const mechanics::Muscle& each) { return each.name == name && !each.arms.empty(); });
    if (muscle == published.muscles.end()) {
        std::vector<std::string_view> known;
        for (const mechanics::Muscle& each : published.muscles)
            if (!each.arms.empty())
                known.push_back(each.name);
        const std::string near = setup::nearest_spelling(name, known);
        let.add_error("muscle", fmt::format("\"{}\"", name),
                      "a muscle of assets/muscles that has moment arms",
                      near.empty() ? "" : fmt::format("Did you mean \"{}\"?", near));
        return;
    }
    written.is = let.text("angle", Need::required).value_or("0");
    ArmOnFile arm{muscle->arms, 0.001};
    if (const auto to = let.quantity("to", setup::Dimension::length); to && to->value_SI > 0.0)
        arm.round_to_m = to->value_SI;
    if (family.source.empty())
        family.source = setup::labelled_source(arm.sources.front());
    written.arm = std::move(arm);
}

/// Declares a computed quantity, so that setup and steps can name it.
WrittenLet declare_let(TomlReader& lets, const std::string& key, Family& family, FamilyNames& names,
                       const Published& published) {
    WrittenLet written;
    written.name = key;
    Quantity quantity;
    quantity.name = key;
    const setup::TomlNode* const node = lets.node(key);
    if (node && std::holds_alternative<std::string>(node->value)) {
        written.is = std::get<std::string>(node->value);
    } else if (std::optional<TomlReader> let = lets.table(key)) {
        if (let->has("muscle"))
            read_arm_on_file(*let, family, published, written);
        else
            written.is = let->text("is", Need::required).value_or("0");
        written.fixed = let->boolean("fixed").value_or(false);
        quantity.symbol = let->text("symbol").value_or("");
        quantity.words = let->text("words").value_or("");
        if (const std::optional<std::string> unit = let->text("unit")) {
            const Term* const term = find_term(key);
            quantity.unit = find_unit(*unit, term ? term->dimension : setup::Dimension::number);
            if (!quantity.unit)
                let->add_error("unit", fmt::format("\"{}\"", *unit), "a unit such as \"N·m\"");
            else
                quantity.dimension = quantity.unit->dimension;
        }
        let->finish();
    }
    names.add(std::move(quantity));
    return written;
}

/// Reads computed quantities in their order.
void read_computed(TomlReader& lets, Family& family, FamilyNames& names, const Published& published,
                   bool solved) {
    for (const std::string& key : lets.free_keys()) {
        WrittenLet written = declare_let(lets, key, family, names, published);
        const std::optional<QuantityIndex> index = names.find(key);
        std::optional<Expression> is = names.expression_in(lets, key, written.is);
        if (!index || !is)
            continue;
        if (solved)
            names.mark_solved(*index);
        (solved ? family.after : family.before)
            .push_back({*index, std::move(*is), written.fixed, std::move(written.arm)});
    }
}

} // namespace

void read_scenes(TomlReader& table, Family& family) {
    for (TomlReader& scene : table.tables("scene")) {
        const std::vector<std::string> keys = scene.free_keys();
        if (family.scenes.empty())
            family.scene_keys = keys;
        std::vector<std::string> words;
        for (const std::string& key : family.scene_keys)
            words.push_back(scene.text(key, Need::required).value_or(""));
        for (const std::string& key : keys)
            if (std::find(family.scene_keys.begin(), family.scene_keys.end(), key) ==
                family.scene_keys.end())
                scene.add_error(key, "a word that the first scene does not have",
                                "the same words in every scene");
        family.scenes.push_back(std::move(words));
    }
}

void read_draws(TomlReader& table, Family& family, FamilyNames& names) {
    std::optional<TomlReader> draws = table.table("draw");
    if (!draws)
        return;
    for (const std::string& key : draws->free_keys()) {
        const std::optional<std::string> text = draws->text(key);
        if (!text)
            continue;
        const Term* const term = find_term(key);
        const setup::Dimension wanted = term ? term->dimension : setup::Dimension::number;
        tl::expected<WrittenDraw, std::string> written = read_draw(*text, wanted);
        if (!written) {
            draws->add_error(key, fmt::format("\"{}\"", *text), "values to draw from",
                             written.error() + ".");
            continue;
        }
        const setup::Dimension found =
            written->unit ? written->unit->dimension : setup::Dimension::number;
        if (term && found != wanted) {
            draws->add_error(key, fmt::format("\"{}\"", *text),
                             fmt::format("a {} in a unit of it", setup::name_of(wanted)));
            continue;
        }
        Quantity quantity;
        quantity.name = key;
        quantity.unit = written->unit;
        quantity.dimension = found;
        quantity.decimals = written->draw.decimals;
        quantity.sheds_zeros = family.is_us_edition;
        written->draw.quantity = names.add(std::move(quantity));
        family.draws.push_back(std::move(written->draw));
    }
}

void read_lets(TomlReader& table, Family& family, FamilyNames& names, const Published& published) {
    if (std::optional<TomlReader> lets = table.table("let"))
        read_computed(*lets, family, names, published, false);
}

void read_thens(TomlReader& table, Family& family, FamilyNames& names) {
    if (std::optional<TomlReader> thens = table.table("then"))
        read_computed(*thens, family, names, {}, true);
}

void read_show(TomlReader& table, Family& family, FamilyNames& names) {
    std::optional<TomlReader> show = table.table("show");
    if (!show)
        return;
    for (const std::string& key : show->free_keys()) {
        const std::optional<std::string> text = show->text(key);
        const std::optional<QuantityIndex> index = names.find(key);
        if (!text)
            continue;
        if (!index) {
            show->add_error(key, "a name that is no quantity here", "a quantity of this family");
            continue;
        }
        Quantity& quantity = family.quantities[*index];
        const setup::Unit* const unit = find_unit(*text, quantity.dimension);
        if (!unit || unit->dimension != quantity.dimension)
            show->add_error(key, fmt::format("\"{}\"", *text),
                            fmt::format("a unit of {}", setup::name_of(quantity.dimension)));
        else
            quantity.unit = unit;
    }
}

} // namespace steelyard::problems

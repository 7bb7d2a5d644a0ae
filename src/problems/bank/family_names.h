#pragma once
// While a family file is read: which names stand for which quantities, and reading of the
// expressions and texts that use them.

#include "problems/bank/family.h"
#include "setup/toml/toml_reader.h"

#include <optional>
#include <string>
#include <string_view>

namespace steelyard::problems {

/// Names of one family's quantities. A name of the vocabulary that a solved setup provides becomes
/// a quantity when it is first used.
class FamilyNames {
public:
    explicit FamilyNames(Family& family) : family_(family) {}

    /// From here on names that the solution provides can be used.
    void setup_is_known() { setup_known_ = true; }

    /// Adds a quantity of the family's own; the vocabulary fills in what is left empty.
    QuantityIndex add(Quantity quantity);

    /// The quantity of a name, empty when there is none.
    std::optional<QuantityIndex> find(std::string_view name);

    /// Whether a quantity is known only once the setup is solved.
    bool is_solved(QuantityIndex index) const;

    /// Marks a computed quantity as known only once the setup is solved.
    void mark_solved(QuantityIndex index) { solved_.push_back(index); }

    /// Whether an expression reads anything that is.
    bool reads_solved(const Expression& expression) const;

    /// The name that a misspelt one most likely means, or empty.
    std::string nearest(std::string_view name) const;

    /// Reads a key as an expression; what is wrong is added to the reader's errors.
    std::optional<Expression> expression(setup::TomlReader& table, std::string_view key,
                                         setup::Need need = setup::Need::optional);
    /// Reads a text that is already at hand as an expression.
    std::optional<Expression> expression_in(setup::TomlReader& table, std::string_view key,
                                            const std::string& text);
    /// Reads a key as a text with placeholders. Empty text when missing.
    TemplateText text(setup::TomlReader& table, std::string_view key,
                      setup::Need need = setup::Need::optional);
    /// A text of words alone as it reads in each scene, once where there are none.
    std::vector<std::string> in_each_scene(const TemplateText& text) const;
    TemplateText text_in(setup::TomlReader& table, std::string_view key, const std::string& text);

private:
    Family& family_;
    bool setup_known_ = false;
    std::vector<QuantityIndex> solved_;
};

/// A unit by any spelling of any dimension, the wanted dimension first; null when there is none.
const setup::Unit* find_unit(std::string_view spelling,
                             setup::Dimension wanted = setup::Dimension::number);

} // namespace steelyard::problems

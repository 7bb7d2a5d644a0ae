#include "problems/bank/reading/ask_reader.h"

#include "problems/bank/answer_kinds.h"

#include <fmt/core.h>

namespace steelyard::problems {

using setup::Need;
using setup::TomlReader;

namespace {

void read_tolerance(TomlReader& ask, Ask& result, setup::Dimension dimension) {
    const std::optional<std::string> text = ask.text("tolerance");
    if (!text)
        return;
    if (const auto share = setup::parse_quantity(*text, setup::Dimension::number);
        share && text->find('%') != std::string::npos) {
        if (*share > 0.0 && *share <= 0.1)
            result.relative_tolerance = *share;
        else
            ask.add_error("tolerance", fmt::format("\"{}\"", *text), "a share from 0 to 10 %");
        return;
    }
    const auto size = setup::parse_quantity(*text, dimension);
    if (!size || *size <= 0.0) {
        ask.add_error("tolerance", fmt::format("\"{}\"", *text),
                      "a share such as \"1 %\" or a size in the unit of the answer");
        return;
    }
    result.absolute_tolerance_si = *size;
    result.relative_tolerance = 0.0;
}

} // namespace

void read_ask(TomlReader& table, Family& family, FamilyNames& names) {
    std::optional<TomlReader> ask =
        table.table("ask", row_of(family.kind).asks_quantity ? Need::required : Need::optional);
    if (!ask)
        return;
    Ask& result = family.ask;
    result.text = ask->text("text").value_or("");
    const std::optional<std::string> find = ask->text("find");
    if (find) {
        const std::optional<QuantityIndex> index = names.find(*find);
        if (!index) {
            ask->add_error("find", fmt::format("\"{}\"", *find), "a quantity of this family",
                           names.nearest(*find).empty()
                               ? ""
                               : fmt::format("Did you mean \"{}\"?", names.nearest(*find)));
            return;
        }
        result.find = *index;
        Quantity& quantity = family.quantities[*index];
        if (const std::optional<std::string> unit = ask->text("unit")) {
            const setup::Unit* const found = find_unit(*unit, quantity.dimension);
            if (!found || found->dimension != quantity.dimension)
                ask->add_error("unit", fmt::format("\"{}\"", *unit),
                               fmt::format("a unit of {}", setup::name_of(quantity.dimension)));
            else
                quantity.unit = found;
        }
        result.unit = quantity.unit;
        if (result.text.empty())
            result.text = quantity.words;
        read_tolerance(*ask, result, quantity.dimension);
    } else if (row_of(family.kind).asks_quantity) {
        ask->add_error("find", "nothing", "the quantity that is asked");
    }
    result.figures = static_cast<int>(ask->integer("figures", Need::optional, 1, 6).value_or(3));
    result.ascending = ask->boolean("smallest_first").value_or(false);
    ask->finish();
}

void read_steps(TomlReader& table, Family& family, FamilyNames& names) {
    for (TomlReader& step : table.tables("step")) {
        StepPlan plan;
        const std::optional<std::string> find = step.text("find", Need::required);
        const std::optional<QuantityIndex> index =
            find ? names.find(*find) : std::optional<QuantityIndex>{};
        if (find && !index)
            step.add_error("find", fmt::format("\"{}\"", *find), "a quantity of this family");
        std::optional<Expression> by = names.expression(step, "by", Need::required);
        plan.says = names.text(step, "says", Need::required);
        step.finish();
        if (!index || !by)
            continue;
        plan.find = *index;
        plan.by = std::move(*by);
        family.steps.push_back(std::move(plan));
    }
    if (row_of(family.kind).has_steps &&
        (family.steps.empty() || family.steps.back().find != family.ask.find))
        table.add_error("step", "steps that end elsewhere",
                        "a last [[step]] that finds what is asked");
}

} // namespace steelyard::problems

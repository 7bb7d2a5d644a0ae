#include "problems/bank/reading/answer_reader.h"

#include "problems/bank/answer_kinds.h"

#include <fmt/core.h>

#include <algorithm>

namespace steelyard::problems {

using setup::Need;
using setup::TomlReader;

namespace {

Changes read_changes(TomlReader& table, const Family& family, FamilyNames& names) {
    Changes changes;
    std::optional<TomlReader> sets = table.table("sets");
    if (!sets)
        return changes;
    for (const std::string& key : sets->free_keys()) {
        const std::optional<QuantityIndex> index = names.find(key);
        const bool drawn =
            index && std::any_of(family.draws.begin(), family.draws.end(),
                                 [&](const Draw& d) { return d.quantity == *index; });
        if (!drawn) {
            sets->add_error(key, "a name that is not drawn", "a quantity of [draw]",
                            "Only what is drawn can be set to a new value.");
            continue;
        }
        if (std::optional<Expression> is = names.expression(*sets, key))
            changes.push_back({*index, std::move(*is), false});
    }
    return changes;
}

} // namespace

void read_wrong(TomlReader& table, Family& family, FamilyNames& names) {
    std::optional<TomlReader> wrong = table.table("wrong");
    if (!wrong)
        return;
    for (const std::string& rule : wrong->free_keys()) {
        WrongPlan plan;
        plan.rule = rule;
        const setup::TomlNode* const node = wrong->node(rule);
        if (node && std::holds_alternative<setup::TomlTable>(node->value)) {
            std::optional<TomlReader> entry = wrong->table(rule);
            std::optional<Expression> gives = names.expression(*entry, "gives", Need::required);
            plan.when = names.expression(*entry, "when");
            plan.parts_at = entry->text("parts_at").value_or("");
            plan.draws_wrong = entry->text("draws_wrong").value_or("");
            plan.draws_right = entry->text("draws_right").value_or("");
            if (entry->has("feedback"))
                plan.feedback = names.text(*entry, "feedback");
            entry->finish();
            if (!gives)
                continue;
            plan.gives = std::move(*gives);
        } else if (std::optional<Expression> gives = names.expression(*wrong, rule)) {
            plan.gives = std::move(*gives);
        } else {
            continue;
        }
        family.wrong.push_back(std::move(plan));
    }
    const std::optional<std::vector<std::string>> pairs = table.texts("same_number");
    for (const std::string& pair : pairs.value_or(std::vector<std::string>{})) {
        const std::size_t sign = pair.find(" = ");
        if (sign == std::string::npos)
            table.add_error("same_number", fmt::format("\"{}\"", pair),
                            "two rules as \"this-rule = that-rule\"");
        else
            family.same_number.emplace_back(pair.substr(0, sign), pair.substr(sign + 3));
    }
}

void read_choices(TomlReader& table, Family& family, FamilyNames& names) {
    const AnswerKind& needs = row_of(family.kind);
    for (TomlReader& choice : table.tables("choice")) {
        ChoicePlan plan;
        plan.text = names.text(choice, "text", Need::required);
        plan.reason = names.text(choice, "reason");
        plan.rule = choice.text("rule").value_or("");
        plan.sets = read_changes(choice, family, names);
        if (needs.has_conditions) {
            plan.when = names.expression(choice, "when", Need::required);
            if (!plan.when)
                plan.when.emplace();
        }
        choice.finish();
        family.choices.push_back(std::move(plan));
    }
    family.keeps_choice_order = table.boolean("keep_order").value_or(false);
    if (needs.has_choices && family.choices.size() < 2)
        table.add_error("choice", fmt::format("{} choices", family.choices.size()),
                        "two [[choice]] tables or more");
    if (!needs.has_choices && !family.choices.empty())
        table.add_error("choice", "choices", "none for a question of this kind");
}

void read_predictions(TomlReader& table, Family& family, FamilyNames& names) {
    for (TomlReader& change : table.tables("change")) {
        ChangePlan plan;
        plan.says = names.text(change, "says", Need::required);
        plan.because = names.text(change, "because", Need::required);
        plan.sets = read_changes(change, family, names);
        plan.rule_up = change.text("rule_up").value_or("");
        plan.rule_down = change.text("rule_down").value_or("");
        plan.rule_same = change.text("rule_same").value_or("");
        change.finish();
        family.changes.push_back(std::move(plan));
    }
    if (row_of(family.kind).has_changes && family.changes.empty())
        table.add_error("change", "nothing", "at least one [[change]]");
}

} // namespace steelyard::problems

#include "problems/bank/reading/family_reader.h"

#include "problems/bank/answer_kinds.h"
#include "problems/bank/published_claim.h"
#include "problems/bank/reading/answer_reader.h"
#include "problems/bank/reading/ask_reader.h"
#include "problems/bank/reading/body_plan_reader.h"
#include "problems/bank/reading/lever_plan_reader.h"
#include "problems/bank/reading/place_reader.h"
#include "problems/bank/reading/quantity_reader.h"
#include "problems/question/question_code.h"

#include <fmt/core.h>

#include <algorithm>

namespace steelyard::problems {

namespace {

using setup::Need;
using setup::TomlReader;

constexpr std::size_t kMaxQuantities = 200;

void read_constraints(TomlReader& table, Family& family, FamilyNames& names) {
    const std::optional<std::vector<std::string>> texts = table.texts("where");
    if (!texts)
        return;
    for (const std::string& text : *texts)
        if (std::optional<Expression> holds = names.expression_in(table, "where", text))
            (names.reads_solved(*holds) ? family.constraints : family.early_constraints)
                .push_back({std::move(*holds), text});
}

void read_harder(TomlReader& table, Family& family, FamilyNames& names) {
    for (TomlReader& lever : table.tables("harder")) {
        DifficultyLever plan;
        std::optional<Expression> when = names.expression(lever, "when", Need::required);
        plan.adds = static_cast<int>(lever.integer("adds", Need::optional, 1, 4).value_or(1));
        plan.why = lever.text("why", Need::required).value_or("");
        lever.finish();
        if (!when)
            continue;
        plan.when = std::move(*when);
        family.difficulty.push_back(std::move(plan));
    }
}

/// Every quantity that the learner is told: in the prompt, in a change, on the drawing.
void collect_given(Family& family) {
    const auto add = [&](QuantityIndex index) {
        if (std::find(family.given.begin(), family.given.end(), index) == family.given.end())
            family.given.push_back(index);
    };
    const auto add_text = [&](const TemplateText& text) {
        for (const TemplateText::Piece& piece : text.pieces())
            if (piece.is == TemplateText::Piece::Is::quantity ||
                piece.is == TemplateText::Piece::Is::bare_quantity)
                add(piece.index);
    };
    add_text(family.prompt);
    for (const ChoicePlan& choice : family.choices)
        add_text(choice.text);
    for (const ChangePlan& change : family.changes)
        add_text(change.says);
    for (const QuantityIndex label : family.labels)
        add(label);
    // A step that computes with gravity needs it stated; the prompt then says so by itself.
    if (family.gravity && row_of(family.kind).has_steps) {
        family.states_gravity =
            std::any_of(family.steps.begin(), family.steps.end(), [&](const StepPlan& step) {
                const std::vector<std::uint16_t> reads = step.by.reads();
                return std::find(reads.begin(), reads.end(), *family.gravity) != reads.end();
            });
        const bool said = std::find(family.given.begin(), family.given.end(), *family.gravity) !=
                          family.given.end();
        family.states_gravity = family.states_gravity && !said;
        if (family.states_gravity)
            add(*family.gravity);
    }
}

void read_labels(TomlReader& table, Family& family, FamilyNames& names) {
    const std::optional<std::vector<std::string>> labels = table.texts("labels");
    for (const std::string& label : labels.value_or(std::vector<std::string>{}))
        if (const std::optional<QuantityIndex> index = names.find(label))
            family.labels.push_back(*index);
        else
            table.add_error("labels", fmt::format("\"{}\"", label), "a length of this family");
}

void read_setup(TomlReader& table, Family& family, FamilyNames& names, const Published& published) {
    std::optional<TomlReader> plan = table.table("setup");
    if (!plan)
        return;
    if (is_body_setup(*plan))
        family.body = read_body_plan(*plan, names, published);
    else
        family.lever = read_lever_plan(*plan, names);
    plan->finish();
    names.setup_is_known();
    // A drawn or computed quantity that has the name of one that the solution provides must agree
    // with it: every draw is checked.
    for (std::size_t i = 0; i < family.quantities.size(); ++i) {
        const Term* const term = find_term(family.quantities[i].name);
        if (term && term->provided && family.provides(*term->provided))
            family.from_solution.push_back({*term->provided, static_cast<QuantityIndex>(i), true});
    }
}

} // namespace

void read_heading(TomlReader& table, Family& family) {
    family.file = table.file();
    family.id = table.text("id", Need::required).value_or("");
    family.number = family_number(family.id);
    family.title = table.short_text("title", Need::required).value_or("");
    family.skill = table.text("skill", Need::required).value_or("");
    family.strategy = table.text("strategy", Need::required).value_or("");
    static const std::vector<std::string_view> kSystems{"SI", "SI only", "US", "none"};
    if (const std::optional<std::size_t> system = table.choice("system", kSystems))
        family.system = std::string(kSystems[*system]);
    // Only a US edition says it, which is made from the file and not written by hand.
    static const std::vector<std::string_view> kLengths{"ft", "in"};
    if (const std::optional<std::size_t> lengths = table.choice("lengths", kLengths)) {
        family.is_us_edition = true;
        family.in_inches = *lengths == 1;
    }
    table.node("us"); // what it replaces there
    family.base_difficulty =
        static_cast<int>(table.integer("difficulty", Need::optional, 1, 5).value_or(1));
    family.source = table.text("source").value_or("");
}

tl::expected<Family, setup::InputErrors> read_family(const setup::TomlDocument& document,
                                                     const Published& published) {
    setup::InputErrors errors;
    TomlReader table(document, errors);
    Family family;
    read_heading(table, family);
    family.kind =
        static_cast<Kind>(table.choice("kind", answer_kind_names(), Need::required).value_or(0));
    if (const auto gravity = table.quantity("gravity", setup::Dimension::acceleration))
        family.gravity_m_s2 = gravity->value_SI;

    FamilyNames names(family);
    read_scenes(table, family);
    read_draws(table, family, names);
    read_lets(table, family, names, published);
    read_setup(table, family, names, published);
    read_thens(table, family, names);
    read_show(table, family, names);
    read_constraints(table, family, names);
    read_ask(table, family, names);
    family.prompt = names.text(table, "prompt", Need::required);
    family.reason = names.text(table, "reason");
    read_labels(table, family, names);
    read_steps(table, family, names);
    read_wrong(table, family, names);
    read_choices(table, family, names);
    read_predictions(table, family, names);
    read_place(table, family, names);
    read_harder(table, family, names);
    table.finish();
    check_published_claims(document, family, errors);
    collect_given(family);
    if (family.quantities.size() > kMaxQuantities)
        table.add_error("draw", fmt::format("{} quantities", family.quantities.size()),
                        fmt::format("at most {}", kMaxQuantities));
    if (!errors.empty())
        return tl::make_unexpected(std::move(errors));
    return family;
}

} // namespace steelyard::problems

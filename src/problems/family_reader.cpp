#include "problems/family_reader.h"

#include "problems/answer_reader.h"
#include "problems/draw_reader.h"
#include "problems/family_names.h"
#include "problems/lever_plan_reader.h"
#include "problems/place_reader.h"
#include "problems/question_code.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>

namespace steelyard::problems {

namespace {

using setup::Need;
using setup::TomlReader;

constexpr std::size_t kMaxQuantities = 200;

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
        written->draw.quantity = names.add(std::move(quantity));
        family.draws.push_back(std::move(written->draw));
    }
}

/// A computed quantity: its expression, or a table with unit, symbol and words beside it.
struct WrittenLet {
    std::string name;
    std::string is;
    bool fixed = false;
};

/// Declares computed quantities, so that setup and steps can name them.
void declare_let(TomlReader& lets, const std::string& key, FamilyNames& names,
                 std::vector<WrittenLet>& written) {
    Quantity quantity;
    quantity.name = key;
    std::string is;
    bool fixed = false;
    const setup::TomlNode* const node = lets.node(key);
    if (node && std::holds_alternative<std::string>(node->value)) {
        is = std::get<std::string>(node->value);
    } else if (std::optional<TomlReader> let = lets.table(key)) {
        is = let->text("is", Need::required).value_or("0");
        fixed = let->boolean("fixed").value_or(false);
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
    written.push_back({key, is, fixed});
}

/// Reads the computed quantities in their order; what reads the solution comes after it.
void read_lets(TomlReader& table, Family& family, FamilyNames& names, bool solved) {
    std::optional<TomlReader> lets = table.table(solved ? "then" : "let");
    if (!lets)
        return;
    std::vector<WrittenLet> written;
    for (const std::string& key : lets->free_keys()) {
        declare_let(*lets, key, names, written);
        const std::optional<QuantityIndex> index = names.find(key);
        std::optional<Expression> is = names.expression_in(*lets, key, written.back().is);
        if (!index || !is)
            continue;
        if (solved)
            names.mark_solved(*index);
        (solved ? family.after : family.before)
            .push_back({*index, std::move(*is), written.back().fixed});
    }
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

void read_constraints(TomlReader& table, Family& family, FamilyNames& names) {
    const std::optional<std::vector<std::string>> texts = table.texts("where");
    if (!texts)
        return;
    for (const std::string& text : *texts)
        if (std::optional<Expression> holds = names.expression_in(table, "where", text))
            (names.reads_solved(*holds) ? family.constraints : family.early_constraints)
                .push_back({std::move(*holds), text});
}

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

void read_ask(TomlReader& table, Family& family, FamilyNames& names) {
    std::optional<TomlReader> ask =
        table.table("ask", family.kind == Kind::numeric || family.kind == Kind::ordering ||
                                   family.kind == Kind::change
                               ? Need::required
                               : Need::optional);
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
    } else if (family.kind == Kind::numeric || family.kind == Kind::ordering ||
               family.kind == Kind::change) {
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
    if (family.kind == Kind::numeric &&
        (family.steps.empty() || family.steps.back().find != family.ask.find))
        table.add_error("step", "steps that end elsewhere",
                        "a last [[step]] that finds what is asked");
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
    if (family.gravity && family.kind == Kind::numeric) {
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
    for (const std::string& label : labels.value_or(std::vector<std::string>{})) {
        if (const std::optional<QuantityIndex> index = names.find(label))
            family.labels.push_back(*index);
        else
            table.add_error("labels", fmt::format("\"{}\"", label), "a length of this family");
    }
}

} // namespace

void read_heading(TomlReader& table, Family& family) {
    family.file = table.file();
    family.id = table.text("id", Need::required).value_or("");
    family.number = family_number(family.id);
    family.title = table.text("title", Need::required).value_or("");
    family.skill = table.text("skill", Need::required).value_or("");
    family.strategy = table.text("strategy", Need::required).value_or("");
    static const std::vector<std::string_view> kSystems{"SI", "US", "none"};
    if (const std::optional<std::size_t> system = table.choice("system", kSystems))
        family.system = std::string(kSystems[*system]);
    family.base_difficulty =
        static_cast<int>(table.integer("difficulty", Need::optional, 1, 5).value_or(1));
    family.source = table.text("source").value_or("");
}

tl::expected<Family, setup::InputErrors> read_family(const setup::TomlDocument& document) {
    setup::InputErrors errors;
    TomlReader table(document, errors);
    Family family;
    read_heading(table, family);
    static const std::vector<std::string_view> kKinds{"numeric",  "single", "several",
                                                      "ordering", "place",  "change"};
    family.kind = static_cast<Kind>(table.choice("kind", kKinds, Need::required).value_or(0));
    if (const auto gravity = table.quantity("gravity", setup::Dimension::acceleration))
        family.gravity_m_s2 = gravity->value_SI;

    FamilyNames names(family);
    read_scenes(table, family);
    read_draws(table, family, names);
    read_lets(table, family, names, false);
    if (std::optional<TomlReader> plan = table.table("setup")) {
        family.lever = read_lever_plan(*plan, names);
        plan->finish();
        names.setup_is_known();
        check_against_solution(family);
    }
    read_lets(table, family, names, true);
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
    collect_given(family);
    if (family.quantities.size() > kMaxQuantities)
        table.add_error("draw", fmt::format("{} quantities", family.quantities.size()),
                        fmt::format("at most {}", kMaxQuantities));
    if (!errors.empty())
        return tl::make_unexpected(std::move(errors));
    return family;
}

} // namespace steelyard::problems

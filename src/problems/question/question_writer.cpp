#include "problems/question/question_writer.h"

#include "mechanics/portable.h"
#include "problems/bank/answer_kinds.h"
#include "problems/bank/lever_plan.h"
#include "problems/draw/place_spots.h"
#include "problems/language/number_text.h"
#include "problems/question/body_picture.h"
#include "problems/question/question_code.h"
#include "problems/question/worked_steps.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace steelyard::problems {

namespace {

constexpr std::array<const char*, 3> kChangeWords{"It goes up", "It goes down",
                                                  "It stays the same"};

/// Figures of a computed number in feedback and reasons.
constexpr int kTextFigures = 3;

Given given_of(const Quantity& quantity, double value_si) {
    Given given;
    given.name = quantity.name;
    given.text = quantity_text(quantity, value_si, kGivenFigures);
    given.unit = quantity.unit_symbol();
    given.value_si = value_si;
    // Exactly the decimal that is shown, without the rounding of a conversion and back.
    const double scale =
        mechanics::portable::pow(10.0, quantity.decimals >= 0 ? quantity.decimals : kMaxDecimals);
    given.value = std::round(quantity.in_unit(value_si) * scale) / scale;
    return given;
}

NumberWanted write_numeric(const Instance& instance) {
    const Family& family = *instance.family;
    const Quantity& quantity = family.quantities[family.ask.find];
    NumberWanted number;
    number.unit = quantity.unit_symbol();
    number.value_si = instance.answer;
    number.value = quantity.in_unit(instance.answer);
    number.tolerance =
        std::abs(quantity.in_unit(instance.answer + instance.tolerance) - number.value);
    number.figures = family.ask.figures;
    return number;
}

/// Index of the first step that a rule gets wrong.
std::size_t parting_step(const WrongPlan& plan, const WrongRule* rule,
                         const std::vector<Step>& steps) {
    std::vector<std::string> wanted;
    if (!plan.parts_at.empty())
        wanted.push_back(plan.parts_at);
    if (rule)
        wanted.insert(wanted.end(), rule->parts_at.begin(), rule->parts_at.end());
    for (const std::string& find : wanted)
        for (std::size_t i = 0; i < steps.size(); ++i)
            if (steps[i].find == find)
                return i;
    return steps.empty() ? 0 : steps.size() - 1;
}

std::optional<DrawnQuantity> drawn(const std::string& name, const Instance& instance) {
    const Term* const term = find_term(name);
    const Family& family = *instance.family;
    std::optional<DrawnQuantity> line;
    if (term && instance.setup.solved)
        line = drawn_length(*term, *instance.setup.solved);
    else if (term && instance.setup.body)
        line = drawn_length(*term, *family.body, *instance.setup.body);
    if (!line)
        return std::nullopt;
    if (const std::optional<QuantityIndex> index = family.find_quantity(name)) {
        line->text =
            quantity_text(family.quantities[*index], instance.quantities[*index], kTextFigures);
    } else {
        // The family never names this length; it is shown in the unit that its system uses.
        Quantity quantity;
        quantity.name = name;
        quantity.dimension = setup::Dimension::length;
        quantity.unit =
            setup::unit_by_symbol(setup::Dimension::length, family.system == "US" ? "in" : "m");
        line->text = quantity_text(quantity, (line->to_m - line->from_m).norm(), kTextFigures);
    }
    return line;
}

void write_wrong(const Bank& bank, const Instance& instance, Question& question) {
    const Family& family = *instance.family;
    const Quantity& asked = family.quantities[family.ask.find];
    for (std::size_t i = 0; i < instance.wrong.size(); ++i) {
        if (std::isnan(instance.wrong[i]))
            continue;
        const WrongPlan& plan = family.wrong[i];
        const WrongRule* const rule = bank.find_wrong_rule(plan.rule);
        WrongAnswer wrong;
        wrong.rule = plan.rule;
        wrong.value = asked.in_unit(instance.wrong[i]);
        wrong.parts_at = parting_step(plan, rule, question.steps);
        if (plan.feedback)
            wrong.feedback = fill(*plan.feedback, instance);
        question.wrong_rules.push_back(std::move(wrong));
        const auto line = [&](const std::string& own, const std::string WrongRule::*of_rule) {
            return drawn(!own.empty() || !rule ? own : rule->*of_rule, instance);
        };
        const auto taken = line(plan.draws_wrong, &WrongRule::draws_wrong);
        const auto right = line(plan.draws_right, &WrongRule::draws_right);
        if (taken && right)
            question.rule_drawings.push_back({plan.rule, *taken, *right});
    }
}

/// A family may draw a number that it calls a class: what is none is shown as it is.
std::string class_words(double lever_class) {
    static constexpr std::array<const char*, 3> kWords{"first class", "second class",
                                                       "third class"};
    for (std::size_t i = 0; i < kWords.size(); ++i)
        if (lever_class == static_cast<double>(i + 1))
            return kWords[i];
    return number_text(lever_class, kTextFigures);
}

std::vector<Choice> write_choices(const Instance& instance) {
    const Family& family = *instance.family;
    std::vector<Choice> choices;
    for (const std::size_t index : instance.shown) {
        // A question that is written out has its choices with it.
        if (!family.items.empty()) {
            choices.push_back(family.items[instance.item].choices[index]);
            continue;
        }
        const ChoicePlan& plan = family.choices[index];
        choices.push_back({fill(plan.text, instance), fill(plan.reason, instance), plan.rule});
    }
    return choices;
}

std::string listed(const std::vector<std::string>& words) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i)
        text += (i == 0 ? "" : ", ") + words[i];
    return text;
}

/// The values that the order follows, before the family's own reason.
std::string order_reason(const Instance& instance, const std::string& reason) {
    const Family& family = *instance.family;
    const Quantity& asked = family.quantities[family.ask.find];
    std::vector<std::string> values;
    for (const std::size_t at : instance.correct)
        values.push_back(
            fmt::format("{} {}", letter(at),
                        quantity_text(asked, instance.values[instance.shown[at]], kTextFigures)));
    return fmt::format("In order: {}. {}", listed(values), reason);
}

ChangeWanted write_change(const Instance& instance, Question& question) {
    const Family& family = *instance.family;
    const ChangePlan& plan = family.changes[instance.change];
    const Quantity& asked = family.quantities[family.ask.find];
    question.prompt += fmt::format(" {} Does {} go up, go down or stay the same?",
                                   fill(plan.says, instance), family.ask.text);
    const std::array<const std::string*, 3> rules{&plan.rule_up, &plan.rule_down, &plan.rule_same};
    ChangeWanted change;
    for (std::size_t i = 0; i < 3; ++i)
        change.choices.push_back({kChangeWords[i], "", *rules[i]});
    change.correct = instance.correct.front();
    const std::string before = quantity_text(asked, instance.answer, kTextFigures);
    const std::string after = quantity_text(asked, instance.changed, kTextFigures);
    question.reason = fill(plan.because, instance);
    question.reason += before == after ? fmt::format(" It stays {}.", before)
                                       : fmt::format(" It goes from {} to {}.", before, after);
    return change;
}

PlaceWanted write_place(const Instance& instance) {
    const PlacePlan& plan = *instance.family->place;
    PlaceWanted place;
    place.target = plan.target;
    place.tolerance_m = plan.tolerance_m;
    place.at_m = place_target(*instance.family, instance);
    for (std::size_t at = 0; at < instance.shown.size(); ++at) {
        const std::size_t index = instance.shown[at];
        place.spots.push_back({letter(at), instance.spots[index],
                               fill(plan.spots[index].reason, instance), plan.spots[index].rule});
    }
    place.correct = instance.correct.front();
    return place;
}

/// The right answer in words.
std::string answer_words(const Wanted& wanted) {
    return std::visit(
        Cases{
            [](const NumberWanted& number) {
                return with_unit(number_text(number.value, number.figures), number.unit);
            },
            [](const ChoiceWanted& one) { return one.choices[one.correct].text; },
            [](const SeveralWanted& several) {
                std::vector<std::string> right;
                for (const std::size_t index : several.correct)
                    right.push_back(several.choices[index].text);
                return listed(right);
            },
            [](const OrderWanted& order) {
                std::vector<std::string> letters;
                for (const std::size_t at : order.order)
                    letters.push_back(letter(at));
                return listed(letters);
            },
            [](const PlaceWanted& place) { return letter(place.correct); },
            [](const ChangeWanted& change) { return change.choices[change.correct].text; },
        },
        wanted);
}

std::vector<DrawnQuantity> drawn_labels(const Instance& instance) {
    const Family& family = *instance.family;
    std::vector<DrawnQuantity> labels;
    for (const QuantityIndex label : family.labels)
        if (std::optional<DrawnQuantity> line = drawn(family.quantities[label].name, instance))
            labels.push_back(std::move(*line));
    return labels;
}

LeverPicture write_picture(const Instance& instance) {
    const Family& family = *instance.family;
    const LeverPlan& plan = *family.lever;
    LeverPicture picture;
    picture.lever = *instance.setup.lever;
    picture.axis_name = fill(plan.axis_name, instance);
    picture.lever.effort.name = fill(plan.effort_name, instance);
    if (auto* beam = std::get_if<mechanics::SoughtReactions>(&picture.lever.sought))
        beam->first_support = picture.axis_name;
    for (std::size_t i = 0; i < plan.loads.size(); ++i)
        picture.lever.loads[i].name = fill(plan.loads[i].name, instance);
    picture.from_above = plan.from_above;
    picture.limb = limb_of(plan, instance.scene, instance.quantities.data(), picture.lever);
    picture.has_effort = plan.has_effort;
    picture.show_axis = !family.place || family.place->target != PlaceTarget::axis;
    picture.show_effort =
        plan.has_effort && (!family.place || family.place->target != PlaceTarget::effort_line);
    picture.labels = drawn_labels(instance);
    return picture;
}

/// What is wanted, with what that adds to prompt and reason.
Wanted write_wanted(const Bank& bank, const Instance& instance, Question& question) {
    switch (instance.family->kind) {
    case Kind::numeric:
        write_wrong(bank, instance, question);
        return write_numeric(instance);
    case Kind::single_choice:
        return ChoiceWanted{write_choices(instance), instance.correct.front()};
    case Kind::several_choices:
        return SeveralWanted{write_choices(instance), instance.correct};
    case Kind::ordering:
        question.reason = order_reason(instance, question.reason);
        return OrderWanted{write_choices(instance), instance.correct};
    case Kind::change:
        return write_change(instance, question);
    case Kind::place:
        return write_place(instance);
    }
    return {};
}

void write_item(const Instance& instance, Question& question) {
    const Item& item = instance.family->items[instance.item];
    question.prompt = item.prompt;
    question.item = item.id;
    question.reason = item.reason;
}

void write_drawn(const Instance& instance, Question& question) {
    const Family& family = *instance.family;
    question.prompt = fill(family.prompt, instance);
    if (family.states_gravity && family.is_us_edition)
        question.prompt += " A mass of 1\u00a0lb weighs 1\u00a0lbf.";
    else if (family.states_gravity)
        question.prompt +=
            fmt::format(" Take g\u00a0=\u00a0{}\u00a0m/s².", number_text(family.gravity_m_s2, 3));
    question.reason = fill(family.reason, instance);
    for (const QuantityIndex index : family.given)
        question.given.push_back(given_of(family.quantities[index], instance.quantities[index]));
    if (row_of(family.kind).asks_quantity)
        question.asked = family.quantities[family.ask.find].name;
    question.steps = worked_steps(instance);
    if (family.lever) {
        question.picture = write_picture(instance);
    } else if (family.body) {
        BodyPicture picture = body_picture(instance);
        picture.labels = drawn_labels(instance);
        question.picture = std::move(picture);
    }
}

} // namespace

std::string letter(std::size_t index) {
    return std::string(1, static_cast<char>('A' + static_cast<int>(index % 26)));
}

std::string code_of(const Instance& instance) {
    const Family& family = *instance.family;
    return write_code({family.number, instance.seed, family.is_us_edition});
}

std::string fill(const TemplateText& text, const Instance& instance) {
    const Family& family = *instance.family;
    return text.fill([&](const TemplateText::Piece& piece) {
        if (piece.is == TemplateText::Piece::Is::word)
            return family.scenes[instance.scene][piece.index];
        const Quantity& quantity = family.quantities[piece.index];
        const double value = instance.quantities[piece.index];
        if (quantity.name == "lever_class")
            return class_words(value);
        const bool stated =
            std::find(family.given.begin(), family.given.end(), piece.index) != family.given.end();
        const int figures = stated ? kGivenFigures : kTextFigures;
        return piece.is == TemplateText::Piece::Is::bare_quantity
                   ? quantity_number(quantity, value, figures)
                   : quantity_text(quantity, value, figures);
    });
}

Question write_question(const Bank& bank, const Instance& instance) {
    const Family& family = *instance.family;
    Question question;
    question.code = code_of(instance);
    question.family = family.id;
    question.skill = family.skill;
    question.strategy = family.strategy;
    question.difficulty = instance.difficulty;
    question.asked = family.ask.text;
    question.asked_text = family.ask.text;
    if (family.items.empty())
        write_drawn(instance, question);
    else
        write_item(instance, question);
    question.wanted = write_wanted(bank, instance, question);
    question.answer_text = answer_words(question.wanted);
    return question;
}

} // namespace steelyard::problems

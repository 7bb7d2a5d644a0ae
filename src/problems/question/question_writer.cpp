#include "problems/question/question_writer.h"

#include "mechanics/portable.h"
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

void write_numeric(const Instance& instance, Question& question) {
    const Family& family = *instance.family;
    const Quantity& quantity = family.quantities[family.ask.find];
    question.unit = quantity.unit_symbol();
    question.answer_si = instance.answer;
    question.answer = quantity.in_unit(instance.answer);
    question.tolerance =
        std::abs(quantity.in_unit(instance.answer + instance.tolerance) - question.answer);
    question.figures = family.ask.figures;
    question.answer_text = with_unit(number_text(question.answer, question.figures), question.unit);
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

void write_choices(const Instance& instance, Question& question) {
    const Family& family = *instance.family;
    for (const std::size_t index : instance.shown) {
        const ChoicePlan& plan = family.choices[index];
        question.choices.push_back(
            {fill(plan.text, instance), fill(plan.reason, instance), plan.rule});
    }
    question.correct = instance.correct;
}

std::string listed(const std::vector<std::string>& words) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i)
        text += (i == 0 ? "" : ", ") + words[i];
    return text;
}

void write_ordering(const Instance& instance, Question& question) {
    const Family& family = *instance.family;
    const Quantity& asked = family.quantities[family.ask.find];
    std::vector<std::string> order;
    std::vector<std::string> values;
    for (const std::size_t at : instance.correct) {
        order.push_back(letter(at));
        values.push_back(
            fmt::format("{} {}", letter(at),
                        quantity_text(asked, instance.values[instance.shown[at]], kTextFigures)));
    }
    question.answer_text = listed(order);
    question.reason = fmt::format("In order: {}. {}", listed(values), question.reason);
}

void write_change(const Instance& instance, Question& question) {
    const Family& family = *instance.family;
    const ChangePlan& plan = family.changes[instance.change];
    const Quantity& asked = family.quantities[family.ask.find];
    question.prompt += fmt::format(" {} Does {} go up, go down or stay the same?",
                                   fill(plan.says, instance), family.ask.text);
    const std::array<const std::string*, 3> rules{&plan.rule_up, &plan.rule_down, &plan.rule_same};
    for (std::size_t i = 0; i < 3; ++i)
        question.choices.push_back({kChangeWords[i], "", *rules[i]});
    question.correct = instance.correct;
    const std::string before = quantity_text(asked, instance.answer, kTextFigures);
    const std::string after = quantity_text(asked, instance.changed, kTextFigures);
    question.reason = fill(plan.because, instance);
    question.reason += before == after ? fmt::format(" It stays {}.", before)
                                       : fmt::format(" It goes from {} to {}.", before, after);
}

void write_place(const Instance& instance, Question& question) {
    const PlacePlan& plan = *instance.family->place;
    question.place_target = plan.target;
    question.place_tolerance_m = plan.tolerance_m;
    question.place_at_m = place_target(*instance.family, instance);
    for (std::size_t at = 0; at < instance.shown.size(); ++at) {
        const std::size_t index = instance.shown[at];
        question.spots.push_back({letter(at), instance.spots[index],
                                  fill(plan.spots[index].reason, instance),
                                  plan.spots[index].rule});
    }
    question.correct_spot = instance.correct.front();
    question.correct = instance.correct;
    question.answer_text = letter(question.correct_spot);
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
    for (std::size_t i = 0; i < plan.loads.size(); ++i)
        picture.lever.loads[i].name = fill(plan.loads[i].name, instance);
    picture.from_above = plan.from_above;
    picture.show_axis = !family.place || family.place->target != PlaceTarget::axis;
    picture.show_effort =
        plan.has_effort && (!family.place || family.place->target != PlaceTarget::effort_line);
    picture.labels = drawn_labels(instance);
    return picture;
}

void write_item(const Instance& instance, Question& question) {
    const Item& item = instance.family->items[instance.item];
    question.prompt = item.prompt;
    question.item = item.id;
    for (const std::size_t index : instance.shown)
        question.choices.push_back(item.choices[index]);
    question.correct = instance.correct;
    question.reason = item.reason;
}

void write_drawn(const Bank& bank, const Instance& instance, Question& question) {
    const Family& family = *instance.family;
    question.prompt = fill(family.prompt, instance);
    if (family.states_gravity)
        question.prompt +=
            fmt::format(" Take g\u00a0=\u00a0{}\u00a0m/s².", number_text(family.gravity_m_s2, 3));
    question.reason = fill(family.reason, instance);
    for (const QuantityIndex index : family.given)
        question.given.push_back(given_of(family.quantities[index], instance.quantities[index]));
    if (family.kind == Kind::numeric || family.kind == Kind::ordering ||
        family.kind == Kind::change)
        question.asked = family.quantities[family.ask.find].name;
    question.steps = worked_steps(instance);
    if (family.lever) {
        question.picture = write_picture(instance);
    } else if (family.body) {
        BodyPicture picture = body_picture(instance);
        picture.labels = drawn_labels(instance);
        question.picture = std::move(picture);
    }
    switch (family.kind) {
    case Kind::numeric:
        write_numeric(instance, question);
        write_wrong(bank, instance, question);
        break;
    case Kind::single_choice:
    case Kind::several_choices:
        write_choices(instance, question);
        break;
    case Kind::ordering:
        write_choices(instance, question);
        write_ordering(instance, question);
        break;
    case Kind::change:
        write_change(instance, question);
        break;
    case Kind::place:
        write_place(instance, question);
        break;
    }
}

} // namespace

std::string letter(std::size_t index) {
    return std::string(1, static_cast<char>('A' + static_cast<int>(index % 26)));
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
    question.code = write_code({family.number, instance.seed});
    question.family = family.id;
    question.skill = family.skill;
    question.strategy = family.strategy;
    question.kind = family.kind;
    question.difficulty = instance.difficulty;
    question.asked = family.ask.text;
    question.asked_text = family.ask.text;
    if (family.items.empty())
        write_drawn(bank, instance, question);
    else
        write_item(instance, question);
    if (question.answer_text.empty()) {
        std::vector<std::string> right;
        for (const std::size_t index : question.correct)
            right.push_back(question.choices[index].text);
        question.answer_text = listed(right);
    }
    return question;
}

} // namespace steelyard::problems

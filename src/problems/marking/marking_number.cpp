#include "problems/marking/marking_number.h"

#include "problems/bank/family_names.h"
#include "problems/draw/instance.h"
#include "problems/language/number_text.h"
#include "problems/marking/slips.h"
#include "setup/units/units.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace steelyard::problems {

namespace {

using setup::Dimension;

/// Fewer figures than this say too little to be taken for a rounded answer.
constexpr int kLeastFigures = 2;

bool near(double value, double wanted, double tolerance) {
    return std::abs(value - wanted) <= tolerance;
}

const setup::Unit* unit_of(const std::string& symbol) {
    return symbol.empty() ? nullptr : find_unit(symbol);
}

/// "N, kN, lbf": what could have been typed.
std::string some_units(Dimension dimension) {
    std::string text;
    int count = 0;
    for (const std::string_view symbol : setup::unit_symbols(dimension)) {
        if (count++ == 3)
            break;
        text += (text.empty() ? "" : ", ") + std::string(symbol);
    }
    return text;
}

Marking mark_wrong_dimension(const WantedNumber& wanted, Dimension dimension,
                             const setup::UnitError& error) {
    Marking marking;
    marking.verdict = Verdict::wrong_dimension;
    const std::string found = error.found_dimension
                                  ? std::string(setup::name_of(*error.found_dimension))
                                  : std::string("something else");
    marking.feedback = fmt::format(
        "That is a unit of {}, but {} is asked: {}.", found, setup::name_of(dimension),
        dimension == Dimension::number ? "a number without a unit"
                                       : some_units(dimension) + " or another unit of it");
    if (error.number && near(*error.number, wanted.value, wanted.tolerance))
        marking.feedback += " The number itself is the right one.";
    return marking;
}

Marking mark_unreadable(const setup::UnitError& error) {
    Marking marking;
    marking.verdict = Verdict::unreadable;
    marking.feedback = setup::to_text(error);
    return marking;
}

/// The rules whose number this is, nearest first.
std::vector<const WrongAnswer*> rules_that_give(const Question& question, double typed,
                                                double half_step) {
    std::vector<const WrongAnswer*> found;
    for (const WrongAnswer& wrong : question.wrong_rules)
        if (near(typed, wrong.value, std::max(kRuleTolerance * std::abs(wrong.value), half_step)))
            found.push_back(&wrong);
    std::stable_sort(found.begin(), found.end(), [&](const WrongAnswer* a, const WrongAnswer* b) {
        return std::abs(typed - a->value) < std::abs(typed - b->value);
    });
    return found;
}

/// "You part from the solution at step 2: ..."
std::string parting_words(const Question& question, std::size_t at) {
    if (at >= question.steps.size())
        return "";
    const Step& step = question.steps[at];
    return fmt::format(" The two part at step {}: {} {} = {}.", at + 1, step.says, step.formula,
                       step.result);
}

void name_rules(const Bank& bank, const Question& question,
                const std::vector<const WrongAnswer*>& found, Marking& marking) {
    for (const WrongAnswer* wrong : found)
        marking.wrong_rules.push_back(wrong->rule);
    const WrongAnswer& first = *found.front();
    marking.wrong_rule = first.rule;
    marking.parts_at = first.parts_at;
    for (const Question::RuleDrawing& drawing : question.rule_drawings) {
        if (drawing.rule == first.rule) {
            marking.drawn_wrong = drawing.wrong;
            marking.drawn_right = drawing.right;
        }
    }
    if (found.size() > 1) {
        marking.feedback = "More than one way of thinking gives this number.";
        for (const WrongAnswer* wrong : found)
            if (const WrongRule* rule = bank.find_wrong_rule(wrong->rule))
                marking.feedback += fmt::format(" {}: {}", rule->title, rule->feedback);
        if (const WrongRule* rule = bank.find_wrong_rule(first.rule))
            marking.follow_up = rule->ask;
    } else if (const WrongRule* rule = bank.find_wrong_rule(first.rule)) {
        marking.feedback = fmt::format("{}. {}", rule->title,
                                       first.feedback.empty() ? rule->feedback : first.feedback);
    }
    if (marking.drawn_wrong && marking.drawn_right)
        marking.feedback += fmt::format(" You took {}; it has to be {}.", marking.drawn_wrong->text,
                                        marking.drawn_right->text);
    marking.feedback += parting_words(question, first.parts_at);
}

/// A wrong number that no rule of the question gives: perhaps a slip of a factor.
void name_slip(const Bank& bank, const Question& question, double typed, Marking& marking) {
    const double right = std::get<NumberWanted>(question.wanted).value;
    for (const Slip& slip : slips_of(question)) {
        const double slipped = right * slip.factor;
        // Half a per cent: tighter than a rule's own tolerance, because these are guesses.
        if (!near(typed, slipped, 0.005 * std::abs(slipped)))
            continue;
        const WrongRule* const rule = bank.find_wrong_rule(slip.rule);
        if (!rule)
            continue;
        marking.wrong_rule = rule->id;
        marking.wrong_rules = {rule->id};
        marking.feedback = fmt::format("{}. {}", rule->title, rule->feedback);
        return;
    }
}

} // namespace

Marking mark_number(const WantedNumber& wanted, const std::string& answer, double& half_step) {
    const setup::Unit* const unit = unit_of(wanted.unit);
    const Dimension dimension = unit ? unit->dimension : Dimension::number;
    half_step = 0.0;
    const auto typed = setup::parse_typed_quantity(answer, dimension, {wanted.unit, false});
    if (!typed)
        return typed.error().fault == setup::UnitFault::wrong_dimension
                   ? mark_wrong_dimension(wanted, dimension, typed.error())
                   : mark_unreadable(typed.error());
    Marking marking;
    const auto in_unit = [&](double si) { return unit ? setup::value_in_unit(si, *unit) : si; };
    const double value = in_unit(typed->value_SI);
    marking.typed = value;
    if (typed->number.figures_least >= kLeastFigures)
        half_step = 0.5 * std::abs(in_unit(typed->last_place_SI));
    if (near(value, wanted.value, wanted.tolerance)) {
        marking.verdict = Verdict::correct;
        marking.correct = true;
        marking.feedback = fmt::format("Right: {}.", wanted.text);
    } else if (near(value, wanted.value, half_step)) {
        marking.verdict = Verdict::correct_few_figures;
        marking.correct = true;
        marking.feedback = fmt::format("Right, to the figures you gave. To more: {}.", wanted.text);
    } else if (unit && !typed->unit.empty() && typed->unit != wanted.unit &&
               near(typed->number.value, wanted.value, wanted.tolerance)) {
        marking.verdict = Verdict::wrong_unit;
        marking.feedback =
            fmt::format("The number is right in {}, but you wrote {}.", wanted.unit, typed->unit);
    } else {
        marking.verdict = Verdict::wrong;
    }
    return marking;
}

Marking mark_numeric(const Bank& bank, const Question& question, const std::string& answer) {
    const auto& number = std::get<NumberWanted>(question.wanted);
    double half_step = 0.0;
    Marking marking = mark_number(
        {number.value, number.tolerance, number.unit, question.answer_text}, answer, half_step);
    if (marking.verdict != Verdict::wrong)
        return marking;
    const std::vector<const WrongAnswer*> found =
        rules_that_give(question, *marking.typed, half_step);
    if (!found.empty())
        name_rules(bank, question, found, marking);
    else
        name_slip(bank, question, *marking.typed, marking);
    if (marking.feedback.empty())
        marking.feedback = fmt::format(
            "Not quite: {} is {}. Go through the steps and find the one that comes out otherwise.",
            question.asked_text, question.answer_text);
    return marking;
}

} // namespace steelyard::problems

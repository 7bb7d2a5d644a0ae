#include "problems/marking/marking_number.h"

#include "mechanics/portable.h"
#include "problems/bank/family_names.h"
#include "problems/language/number_text.h"
#include "problems/marking/remarks.h"
#include "problems/marking/slips.h"
#include "problems/marking/typed_arithmetic.h"
#include "setup/units/units.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace steelyard::problems {

namespace {

using setup::Dimension;

/// Fewer figures than this say too little to be taken for a rounded answer.
constexpr int kLeastFigures = 2;
/// Figures from which on a number can be told from a rounded one near it.
constexpr int kTellingFigures = 3;
/// How near a number comes to that of a wrong rule, or of a slip, to be taken for it [-]. Closer
/// than an answer is to the right one: who is blamed falsely looks for a mistake that is not there.
/// At the first, three rounded figures on the way still count.
constexpr double kRuleNearness = 0.005;
constexpr double kSlipNearness = 0.001;

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
        if (near(typed, wrong.value, std::max(kRuleNearness * std::abs(wrong.value), half_step)))
            found.push_back(&wrong);
    std::stable_sort(found.begin(), found.end(), [&](const WrongAnswer* a, const WrongAnswer* b) {
        return std::abs(typed - a->value) < std::abs(typed - b->value);
    });
    return found;
}

/// Whether a number with zeros at its end, which may be rounded or not, is rather that of a rule.
bool is_nearer_to_a_rule(const Question& question, double typed, double right) {
    return std::any_of(question.wrong_rules.begin(), question.wrong_rules.end(),
                       [&](const WrongAnswer& wrong) {
                           return std::abs(typed - wrong.value) < std::abs(typed - right);
                       });
}

/// "Your working first goes wrong at step 2: ..."
std::string parting_words(const Question& question, std::size_t at) {
    if (at >= question.steps.size())
        return "";
    const Step& step = question.steps[at];
    return fmt::format(" Your working first goes wrong at step {}: {} {} = {}.", at + 1, step.says,
                       step.formula, step.result);
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

/// A wrong number that no rule of the question gives: perhaps a slip of a factor. It has to agree
/// to the last digit typed: 2 % too much may be g taken as 10, or rounding on the way.
void name_slip(const Bank& bank, const Question& question, double typed, const ReadNumber& read,
               Marking& marking) {
    const double right = std::get<NumberWanted>(question.wanted).value;
    for (const Slip& slip : slips_of(question)) {
        const double slipped = right * slip.factor;
        const double last_digit = read.figures >= kTellingFigures ? read.half_step : 0.0;
        if (!near(typed, slipped, std::max(kSlipNearness * std::abs(slipped), last_digit)))
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

using Typed = tl::expected<setup::TypedQuantity, setup::UnitError>;

/// A calculation in place of a number, worked out and read with the unit behind it.
/// @return why not, when it is a calculation that has no value; nothing when it is none
std::optional<std::string> work_out(const std::string& text, Dimension dimension,
                                    const setup::ReadingRules& rules, Typed& typed) {
    const auto calculation = read_arithmetic(text);
    if (!calculation)
        return text.find_first_of("+*/^(") != std::string::npos ? std::optional(calculation.error())
                                                                : std::nullopt;
    if (!calculation->computed)
        return std::nullopt;
    typed = setup::parse_typed_quantity(
        fmt::format("{:.17g} {}", calculation->value, calculation->rest), dimension, rules);
    return std::nullopt;
}

constexpr const char* kWhyPounds =
    " You wrote lb, which is a mass. What pulls is its weight: a pound of mass weighs one pound of "
    "force, lbf, so the number is the same.";

/// Pounds and ounces of mass, which people also write for the forces that they weigh.
bool is_pounds_of_mass(const setup::TypedQuantity& typed) {
    return typed.unit_dimension == Dimension::mass && (typed.unit == "lb" || typed.unit == "oz");
}

/// "25 lb" where a force is asked; everything else is left as it was read.
bool take_pounds(const std::string& text, Dimension dimension, Typed& typed) {
    if (typed || dimension != Dimension::force ||
        typed.error().fault != setup::UnitFault::wrong_dimension)
        return false;
    Typed taken = setup::parse_typed_quantity(text, dimension, {{}, true});
    if (!taken || !is_pounds_of_mass(*taken))
        return false;
    typed = std::move(taken);
    return true;
}

/// "200" can be 197 rounded to two figures or more: half of the last digit that is no zero.
double coarse_half_step(const setup::TypedQuantity& typed) {
    const int zeros = typed.number.figures_most - typed.number.figures_least;
    return 0.5 * std::abs(typed.last_place_SI) * mechanics::portable::pow(10.0, zeros);
}

} // namespace

Marking mark_number(const WantedNumber& wanted, const std::string& answer, const MarkRules& rules,
                    ReadNumber& read) {
    const setup::Unit* const unit = unit_of(wanted.unit);
    const Dimension dimension = unit ? unit->dimension : Dimension::number;
    const bool in_feet = wanted.unit == "ft" || wanted.unit == "in";
    const std::string text = plain_number_text(answer, !in_feet);
    const setup::ReadingRules reading{wanted.unit, false};
    Typed typed = setup::parse_typed_quantity(text, dimension, reading);
    if (!typed && rules.arithmetic)
        if (const auto fault = work_out(text, dimension, reading, typed)) {
            Marking marking = mark_unreadable(typed.error());
            marking.feedback = *fault;
            return marking;
        }
    const bool took_pounds = take_pounds(text, dimension, typed);
    if (!typed)
        return typed.error().fault == setup::UnitFault::wrong_dimension
                   ? mark_wrong_dimension(wanted, dimension, typed.error())
                   : mark_unreadable(typed.error());
    Marking marking;
    marking.took_pounds = took_pounds;
    // A share where a percentage is asked: 0.927 is 92.7 %.
    const bool share =
        wanted.unit == "%" && typed->unit.empty() && std::abs(typed->number.value) <= 1.0;
    const auto in_unit = [&](double si) {
        return (unit ? setup::value_in_unit(si, *unit) : si) * (share ? 100.0 : 1.0);
    };
    const double value = in_unit(typed->value_SI);
    marking.typed = value;
    read.as_typed = typed->number.value;
    read.figures = typed->number.figures_least;
    double coarse = 0.0;
    if (read.figures >= kLeastFigures) {
        read.half_step = 0.5 * std::abs(in_unit(typed->last_place_SI));
        coarse = in_unit(coarse_half_step(*typed));
    }
    if (near(value, wanted.value, wanted.tolerance)) {
        marking.verdict = Verdict::correct;
        marking.correct = true;
        marking.feedback = fmt::format("Right: {}.", wanted.text);
    } else if (near(value, wanted.value, coarse)) {
        marking.verdict = Verdict::correct_few_figures;
        read.by_zeros = !near(value, wanted.value, read.half_step);
        marking.correct = true;
        marking.feedback = fmt::format("Right, with fewer figures. To more: {}.", wanted.text);
    } else if (unit && !typed->unit.empty() && typed->unit != wanted.unit && !took_pounds &&
               near(typed->number.value, wanted.value, wanted.tolerance)) {
        marking.verdict = Verdict::wrong_unit;
        marking.feedback =
            fmt::format("The number is right in {}, but you wrote {}.", wanted.unit, typed->unit);
    } else {
        marking.verdict = Verdict::wrong;
    }
    if (took_pounds && marking.correct && rules.explains_pounds)
        marking.feedback += kWhyPounds;
    return marking;
}

Marking mark_numeric(const Bank& bank, const Question& question, const std::string& answer,
                     const MarkRules& rules) {
    const auto& number = std::get<NumberWanted>(question.wanted);
    ReadNumber read;
    Marking marking = mark_number(
        {number.value, number.tolerance, number.unit, question.answer_text}, answer, rules, read);
    if (marking.verdict == Verdict::correct_few_figures && read.by_zeros &&
        is_nearer_to_a_rule(question, *marking.typed, number.value)) {
        marking.verdict = Verdict::wrong;
        marking.correct = false;
        marking.feedback.clear();
    }
    if (marking.verdict != Verdict::wrong)
        return marking;
    const std::vector<const WrongAnswer*> found =
        rules_that_give(question, *marking.typed, read.half_step);
    if (!found.empty())
        name_rules(bank, question, found, marking);
    else
        name_slip(bank, question, *marking.typed, read, marking);
    if (marking.feedback.empty()) {
        marking.remark = remark_on(question, {*marking.typed, read.as_typed, read.half_step});
        marking.feedback = fmt::format("Not quite. {} Worked out, {} is {}.", marking.remark,
                                       question.asked_text, question.answer_text);
    }
    return marking;
}

} // namespace steelyard::problems

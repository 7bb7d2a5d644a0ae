#include "problems/question/worked_steps.h"

#include "problems/bank/answer_kinds.h"
#include "problems/language/number_text.h"
#include "problems/question/question_writer.h"

#include <fmt/core.h>

#include <cmath>
#include <functional>

namespace steelyard::problems {

namespace {

using Piece = Expression::Piece;

std::string shown_sign(const Piece& piece, bool unary) {
    if (piece.text == "*")
        return " × ";
    if (piece.text == "-")
        return unary ? "−" : " − ";
    if (piece.text == "/" || piece.text == "+")
        return fmt::format(" {} ", piece.text);
    if (piece.text == "^")
        return piece.text;
    return fmt::format(" {} ", piece.text);
}

std::string shown_function(const std::string& name) {
    if (name == "sqrt")
        return "√";
    return name;
}

/// Brackets as they open and close; those of a size are bars.
class Brackets {
public:
    /// The next bracket to open is that of a size.
    void expect_bars() { bars_next_ = true; }
    std::string open() {
        bars_.push_back(bars_next_);
        bars_next_ = false;
        return bars_.back() ? "|" : "(";
    }
    std::string close() {
        const bool bars = !bars_.empty() && bars_.back();
        if (!bars_.empty())
            bars_.pop_back();
        return bars ? "|" : ")";
    }

private:
    std::vector<bool> bars_;
    bool bars_next_ = false;
};

/// The pieces one after the other, quantities as `show` writes them.
std::string joined(const Expression& expression,
                   const std::function<std::string(std::uint16_t)>& show) {
    std::string text;
    Brackets brackets;
    bool operand_before = false;
    for (const Piece& piece : expression.pieces()) {
        switch (piece.is) {
        case Piece::Is::quantity:
            text += show(piece.quantity);
            operand_before = true;
            break;
        case Piece::Is::number:
            text += piece.text;
            operand_before = true;
            break;
        case Piece::Is::sign:
            if (piece.text == "(" || piece.text == ")")
                text += piece.text == "(" ? brackets.open() : brackets.close();
            else
                text += shown_sign(piece, !operand_before);
            operand_before = piece.text == ")";
            break;
        case Piece::Is::function:
            if (piece.text == "abs")
                brackets.expect_bars();
            else
                text += shown_function(piece.text);
            operand_before = false;
            break;
        case Piece::Is::comma:
            text += ", ";
            operand_before = false;
            break;
        }
    }
    return text;
}

/// Names of what the axis could be taken for: other joints, the effort, what loads it.
std::vector<std::string> not_the_axis(const Instance& instance) {
    const Family& family = *instance.family;
    std::vector<std::string> others;
    if (family.lever) {
        if (family.lever->has_effort)
            others.push_back(fill(family.lever->effort_name, instance));
        if (!family.lever->loads.empty())
            others.push_back(fill(family.lever->loads.front().name, instance));
        return others;
    }
    for (std::size_t i = 1; i < family.body->axes.size(); ++i)
        others.push_back(words_of(*family.body, family.body->axes[i]));
    if (!family.body->resistances.empty())
        others.push_back(fill(family.body->resistances.front().name, instance));
    return others;
}

/// First step of every setup: the point that stays still.
Step axis_step(const Instance& instance) {
    const Family& family = *instance.family;
    Step step;
    step.find = "axis";
    step.says = "Find the axis: the point that stays where it is while everything else turns "
                "about it.";
    const std::string axis = family.lever ? fill(family.lever->axis_name, instance)
                                          : words_of(*family.body, family.body->axes.front());
    step.formula = "axis";
    step.result = axis;
    step.options = not_the_axis(instance);
    step.correct_option = instance.seed % (step.options.size() + 1);
    step.options.insert(step.options.begin() + static_cast<std::ptrdiff_t>(step.correct_option),
                        axis);
    return step;
}

} // namespace

std::string step_line(const Step& step) {
    return step.formula == "axis" ? step.result : fmt::format("{} = {}", step.formula, step.result);
}

std::string in_symbols(const Expression& expression, const Family& family) {
    return joined(expression, [&](std::uint16_t index) { return family.quantities[index].symbol; });
}

std::string in_numbers(const Expression& expression, const Instance& instance) {
    return joined(expression, [&](std::uint16_t index) {
        const double value = instance.quantities[index];
        const std::string text =
            quantity_text(instance.family->quantities[index], value, kStepFigures);
        return value < 0.0 ? "(" + text + ")" : text;
    });
}

std::vector<Step> worked_steps(const Instance& instance) {
    const Family& family = *instance.family;
    std::vector<Step> steps;
    if (family.steps.empty())
        return steps;
    const bool has_axis = family.body || (family.lever && !family.lever->two_supports);
    if (has_axis && row_of(family.kind).has_steps)
        steps.push_back(axis_step(instance));
    for (std::size_t i = 0; i < family.steps.size(); ++i) {
        const StepPlan& plan = family.steps[i];
        const Quantity& quantity = family.quantities[plan.find];
        const double value_si = instance.quantities[plan.find];
        const bool last = i + 1 == family.steps.size();
        Step step;
        step.find = quantity.name;
        step.says = fill(plan.says, instance);
        const std::string numbers = in_numbers(plan.by, instance);
        step.result = quantity_text(quantity, value_si, last ? family.ask.figures : kStepFigures);
        // A step that only changes the unit shows what it starts from.
        step.formula = plan.by.pieces().size() == 1
                           ? fmt::format("{} = {}", quantity.symbol, numbers)
                           : fmt::format("{} = {} = {}", quantity.symbol,
                                         in_symbols(plan.by, family), numbers);
        step.value = quantity.in_unit(value_si);
        step.unit = quantity.unit_symbol();
        step.tolerance = std::abs(step.value) * kRuleTolerance;
        steps.push_back(std::move(step));
    }
    return steps;
}

} // namespace steelyard::problems

#include "problems/marking/remarks.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace steelyard::problems {

namespace {

/// A number is taken for that of a step when it agrees to three figures.
constexpr double kSameNumber = 0.003;
/// What numbers rounded to two figures on the way can come to; our judgement.
constexpr double kRoundedOnTheWay = 0.05;
/// Beyond this a unit is likelier than a moment arm.
constexpr double kFarOff = 100.0;

bool same(double value, double wanted, double half_step) {
    return std::abs(value - wanted) <= std::max(kSameNumber * std::abs(wanted), half_step);
}

/// A step on the way that ends in the number; the last one ends in the answer.
std::string step_that_gives(const Question& question, const WrongNumber& number) {
    for (std::size_t i = 0; i + 1 < question.steps.size(); ++i) {
        const Step& step = question.steps[i];
        if (step.options.empty() && step.value != 0.0 && same(number.as_typed, step.value, 0.0))
            return fmt::format(
                "Your number is what step {} comes to: \u201c{}\u201d Go on from there.", i + 1,
                step.says);
    }
    return {};
}

std::string given_that_is(const Question& question, const WrongNumber& number) {
    for (const Given& given : question.given)
        if (given.value != 0.0 && number.as_typed == given.value)
            return fmt::format("{} stands in the question: work out what is asked from it.",
                               given.text);
    return {};
}

std::string size_of_miss(const Question& question, const WrongNumber& number) {
    const double right = std::get<NumberWanted>(question.wanted).value;
    if (right == 0.0 || number.in_unit == 0.0)
        return {};
    const double ratio = number.in_unit / right;
    if (ratio < 0.0)
        return right > 0.0 ? "A size is asked: leave the minus sign out, and see whether the "
                             "number is right."
                           : "The answer is below zero.";
    if (std::abs(ratio - 1.0) <= kRoundedOnTheWay)
        return "Your number is close: rounding on the way gives such a number. Keep four figures "
               "until "
               "the end.";
    if (ratio > kFarOff || ratio < 1.0 / kFarOff)
        return fmt::format("Your number is far too {}: look at the units first.",
                           ratio > 1.0 ? "large" : "small");
    return fmt::format("Your number is too {}.", ratio > 1.0 ? "large" : "small");
}

} // namespace

std::string remark_on(const Question& question, const WrongNumber& number) {
    for (const auto& remark : {step_that_gives, given_that_is, size_of_miss})
        if (std::string text = remark(question, number); !text.empty())
            return text;
    return {};
}

} // namespace steelyard::problems

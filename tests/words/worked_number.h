#pragma once
// A pocket calculator for the formulas that explanations show: "274.6 N × 0.4 m", "√((3 N)² +
// (4 N)²)", "0.34 m × sin 90°", "|0 m − 0.04 m|". It reads the very text that a learner reads.

#include "setup/units/units.h"

#include <cmath>
#include <optional>
#include <string>
#include <string_view>

namespace steelyard::setup {

/// Value of a shown formula in the units shown; empty when it is no formula.
class WorkedNumber {
public:
    static std::optional<double> of(std::string_view text) {
        WorkedNumber calculator(text);
        const double value = calculator.sum();
        const bool all_read = calculator.ok_ && calculator.rest_.empty();
        return all_read ? std::optional(value) : std::nullopt;
    }

private:
    explicit WorkedNumber(std::string_view text) : rest_(text) {}

    bool eat(std::string_view sign) {
        while (!rest_.empty() && rest_[0] == ' ')
            rest_.remove_prefix(1);
        if (rest_.substr(0, sign.size()) != sign)
            return false;
        rest_.remove_prefix(sign.size());
        return true;
    }

    double sum() {
        double value = product();
        while (ok_)
            if (eat("+"))
                value += product();
            else if (eat("−"))
                value -= product();
            else
                break;
        return value;
    }

    double product() {
        double value = signed_power();
        while (ok_)
            if (eat("×"))
                value *= signed_power();
            else if (eat("÷"))
                value /= signed_power();
            else
                break;
        return value;
    }

    double signed_power() {
        if (eat("−"))
            return -signed_power();
        if (eat("√"))
            return std::sqrt(signed_power());
        if (eat("sin"))
            return std::sin(signed_power() * 3.14159265358979323846 / 180.0);
        if (eat("|")) {
            const double inside = sum();
            ok_ = ok_ && eat("|");
            return std::abs(inside);
        }
        if (eat("(")) {
            const double inside = sum();
            ok_ = ok_ && eat(")");
            return eat("²") ? inside * inside : inside;
        }
        return number();
    }

    double number() {
        eat("");
        // Up to the next operator; blanks of a number and before its unit are not plain ones.
        const std::size_t end = std::min(rest_.find_first_of(" )|"), rest_.size());
        const std::string token(rest_.substr(0, end));
        rest_.remove_prefix(end);
        const std::size_t unit = std::min(token.find("\u00A0"), token.find("°"));
        const auto value = parse_number(token.substr(0, unit));
        ok_ = ok_ && value.has_value();
        return value ? value->value : 0.0;
    }

    std::string_view rest_;
    bool ok_ = true;
};

} // namespace steelyard::setup

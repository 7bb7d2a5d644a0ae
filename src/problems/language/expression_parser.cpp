#include "problems/language/expression.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <fast_float/fast_float.h>

namespace steelyard::problems {

namespace {

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_';
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

/// Part of a unit's name: letters, and the bytes of "·", "²" and "°".
bool is_unit_byte(char c) {
    return is_letter(c) || (static_cast<unsigned char>(c) & 0x80U) != 0;
}

} // namespace

/// Recursive descent over the text; stops at the first fault. Lowest precedence first:
/// or, and, comparison, sum, product, sign, power, atom.
class ExpressionParser {
public:
    ExpressionParser(std::string_view text, const QuantityLookup& quantity_of,
                     const UnitLookup& unit_of)
        : text_(text), quantity_of_(quantity_of), unit_of_(unit_of) {}

    tl::expected<Expression, ExpressionError> parse() {
        if (text_.size() > kMaxExpressionLength)
            fail(fmt::format("the expression is longer than {} characters; split it with [let]",
                             kMaxExpressionLength));
        parse_or(0);
        skip_space();
        if (!error_ && at_ < text_.size())
            fail(fmt::format("unexpected '{}' after the end of the expression", text_[at_]));
        if (error_)
            return tl::make_unexpected(*error_);
        return std::move(result_);
    }

private:
    using Op = Expression::Op;
    using Is = Expression::Piece::Is;

    void fail(std::string message) {
        if (!error_)
            error_ = ExpressionError{at_ + 1, std::move(message)};
    }

    void skip_space() {
        while (at_ < text_.size() && (text_[at_] == ' ' || text_[at_] == '\t' ||
                                      text_[at_] == '\n' || text_[at_] == '\r'))
            ++at_;
    }

    /// Takes a sign if it comes next.
    bool take(std::string_view sign) {
        skip_space();
        if (error_ || text_.substr(at_, sign.size()) != sign)
            return false;
        at_ += sign.size();
        result_.pieces_.push_back({Is::sign, std::string(sign), 0});
        return true;
    }

    /// Takes a word if it comes next and ends there.
    bool take_word(std::string_view word) {
        skip_space();
        const std::size_t end = at_ + word.size();
        if (error_ || text_.substr(at_, word.size()) != word ||
            (end < text_.size() && (is_letter(text_[end]) || is_digit(text_[end]))))
            return false;
        at_ = end;
        result_.pieces_.push_back({Is::sign, std::string(word), 0});
        return true;
    }

    void emit(Op op, std::uint8_t takes) {
        result_.program_.push_back({op, takes, 0, 0.0});
        held_ -= takes - 1U;
    }

    void hold_one_more() {
        if (++held_ > Expression::kMaxStack)
            fail("the expression is too deep; split it with [let]");
    }

    void emit_number(double number) {
        result_.program_.push_back({Op::number, 0, 0, number});
        hold_one_more();
    }

    bool too_deep(int depth) {
        if (depth > kMaxExpressionDepth)
            fail(fmt::format("more than {} levels of brackets; split it with [let]",
                             kMaxExpressionDepth));
        return error_.has_value();
    }

    void parse_or(int depth) {
        if (too_deep(depth))
            return;
        parse_and(depth);
        while (!error_ && take_word("or")) {
            parse_and(depth);
            emit(Op::either, 2);
        }
    }

    void parse_and(int depth) {
        parse_comparison(depth);
        while (!error_ && take_word("and")) {
            parse_comparison(depth);
            emit(Op::both, 2);
        }
    }

    void parse_comparison(int depth) {
        parse_sum(depth);
        static constexpr std::pair<std::string_view, Op> kSigns[] = {
            {"<=", Op::less_equal}, {">=", Op::greater_equal}, {"==", Op::equal},
            {"!=", Op::not_equal},  {"<", Op::less},           {">", Op::greater}};
        for (const auto& [sign, op] : kSigns) {
            if (!error_ && take(sign)) {
                parse_sum(depth);
                emit(op, 2);
                return;
            }
        }
    }

    void parse_sum(int depth) {
        parse_product(depth);
        while (!error_) {
            const bool plus = take("+");
            if (!plus && !take("-"))
                return;
            parse_product(depth);
            emit(plus ? Op::add : Op::subtract, 2);
        }
    }

    void parse_product(int depth) {
        parse_sign(depth);
        while (!error_) {
            const bool times = take("*");
            if (!times && !take("/"))
                return;
            parse_sign(depth);
            emit(times ? Op::multiply : Op::divide, 2);
        }
    }

    void parse_sign(int depth) {
        if (too_deep(depth))
            return;
        if (take_word("not")) {
            parse_sign(depth + 1);
            emit(Op::negated, 1);
        } else if (take("-")) {
            parse_sign(depth + 1);
            emit(Op::negate, 1);
        } else {
            parse_power(depth);
        }
    }

    void parse_power(int depth) {
        parse_atom(depth);
        if (!error_ && take("^")) {
            parse_sign(depth + 1);
            emit(Op::power, 2);
        }
    }

    void parse_atom(int depth) {
        skip_space();
        if (error_)
            return;
        if (at_ >= text_.size()) {
            fail("the expression ends too early: a number, a name or a bracket is missing");
        } else if (take("(")) {
            parse_or(depth + 1);
            expect_closing();
        } else if (is_digit(text_[at_]) || text_[at_] == '.') {
            parse_number();
        } else if (is_letter(text_[at_])) {
            parse_name(depth);
        } else {
            fail(fmt::format("unexpected '{}': a number, a name or a bracket should stand here",
                             text_[at_]));
        }
    }

    void expect_closing() {
        if (!error_ && !take(")"))
            fail("a closing bracket ')' is missing");
    }

    void parse_number() {
        double value = 0.0;
        const char* const begin = text_.data() + at_;
        const auto [end, status] =
            fast_float::from_chars(begin, text_.data() + text_.size(), value);
        if (status != std::errc() || !std::isfinite(value)) {
            fail("this is not a number");
            return;
        }
        std::size_t next = at_ + static_cast<std::size_t>(end - begin);
        std::string shown(text_.substr(at_, next - at_));
        // A unit directly behind, with or without a space. A word of the language is no unit.
        std::size_t unit_at = next;
        while (unit_at < text_.size() && text_[unit_at] == ' ')
            ++unit_at;
        std::size_t unit_end = unit_at;
        while (unit_end < text_.size() && is_unit_byte(text_[unit_end]))
            ++unit_end;
        const std::string_view unit = text_.substr(unit_at, unit_end - unit_at);
        if (!unit.empty() && unit != "and" && unit != "or") {
            const std::optional<double> factor = unit_of_(unit);
            if (!factor) {
                fail(fmt::format("'{}' is not a unit; if it is a quantity, an operator is missing "
                                 "before it",
                                 unit));
                return;
            }
            value *= *factor;
            shown += ' ';
            shown += unit;
            next = unit_end;
        }
        at_ = next;
        result_.pieces_.push_back({Is::number, std::move(shown), 0});
        emit_number(value);
    }

    void parse_name(int depth) {
        std::size_t end = at_;
        while (end < text_.size() && (is_letter(text_[end]) || is_digit(text_[end])))
            ++end;
        const std::string_view name = text_.substr(at_, end - at_);
        struct Function {
            std::string_view name;
            Op op;
            std::uint8_t takes;
        };
        static constexpr Function kFunctions[] = {
            {"sin", Op::sine, 1},     {"cos", Op::cosine, 1},     {"tan", Op::tangent, 1},
            {"asin", Op::arcsine, 1}, {"acos", Op::arccosine, 1}, {"atan", Op::arctangent, 1},
            {"sqrt", Op::root, 1},    {"abs", Op::magnitude, 1},  {"round", Op::rounded, 1},
            {"floor", Op::floor, 1},  {"min", Op::smaller, 2},    {"max", Op::larger, 2},
            {"if", Op::choose, 3}};
        for (const Function& function : kFunctions) {
            if (function.name == name) {
                at_ = end;
                result_.pieces_.push_back({Is::function, std::string(name), 0});
                parse_arguments(function.name, function.takes, depth);
                emit(function.op, function.takes);
                return;
            }
        }
        if (name == "pi") {
            at_ = end;
            result_.pieces_.push_back({Is::number, "π", 0});
            emit_number(3.14159265358979323846);
            return;
        }
        const std::optional<std::uint16_t> quantity = quantity_of_(name);
        if (!quantity) {
            fail(fmt::format("there is no quantity '{}'", name));
            return;
        }
        at_ = end;
        result_.pieces_.push_back({Is::quantity, std::string(name), *quantity});
        result_.program_.push_back({Op::quantity, 0, *quantity, 0.0});
        hold_one_more();
    }

    void parse_arguments(std::string_view function, std::size_t takes, int depth) {
        if (!take("("))
            fail(fmt::format("'{}' needs its value in brackets: {}(...)", function, function));
        for (std::size_t i = 0; i < takes && !error_; ++i) {
            if (i > 0 && !take(","))
                fail(fmt::format("'{}' takes {} values with commas between", function, takes));
            parse_or(depth + 1);
        }
        expect_closing();
    }

    std::string_view text_;
    const QuantityLookup& quantity_of_;
    const UnitLookup& unit_of_;
    std::size_t at_ = 0;
    std::size_t held_ = 0; ///< values on the stack after the instructions so far
    Expression result_;
    std::optional<ExpressionError> error_;
};

tl::expected<Expression, ExpressionError> parse_expression(std::string_view text,
                                                           const QuantityLookup& quantity_of,
                                                           const UnitLookup& unit_of) {
    return ExpressionParser(text, quantity_of, unit_of).parse();
}

} // namespace steelyard::problems

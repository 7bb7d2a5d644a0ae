#include "problems/marking/typed_arithmetic.h"

#include "mechanics/portable.h"
#include "setup/units/typed_text.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <fast_float/fast_float.h>
#include <optional>

namespace steelyard::problems {

namespace {

constexpr const char* kNoValue = "This calculation has no finite value.";
constexpr double kDegree_rad = 3.14159265358979323846 / 180.0;

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

enum class Function { sine, cosine, tangent, arcsine, arccosine, arctangent, root };

struct FunctionName {
    std::string_view name;
    Function function;
};

constexpr FunctionName kFunctions[] = {
    {"sin", Function::sine},          {"cos", Function::cosine},
    {"tan", Function::tangent},       {"asin", Function::arcsine},
    {"acos", Function::arccosine},    {"atan", Function::arctangent},
    {"arcsin", Function::arcsine},    {"arccos", Function::arccosine},
    {"arctan", Function::arctangent}, {"sqrt", Function::root},
};

bool takes_angle(Function function) {
    return function == Function::sine || function == Function::cosine ||
           function == Function::tangent;
}

/// @param x  in radians where the function takes an angle
/// @return angles in degrees
double result_of(Function function, double x) {
    switch (function) {
    case Function::sine:
        return mechanics::portable::sin(x);
    case Function::cosine:
        return mechanics::portable::cos(x);
    case Function::tangent:
        return mechanics::portable::tan(x);
    case Function::arcsine:
        return mechanics::portable::asin(x) / kDegree_rad;
    case Function::arccosine:
        return mechanics::portable::acos(x) / kDegree_rad;
    case Function::arctangent:
        return mechanics::portable::atan(x) / kDegree_rad;
    case Function::root:
        return std::sqrt(x);
    }
    return x;
}

/// Recursive descent over the plain text. Lowest first: sum, product, sign, power, atom. Stops
/// where the calculation ends, which is where a unit begins, or at the first fault.
class ArithmeticReader {
public:
    explicit ArithmeticReader(std::string_view text) : text_(text) {}

    tl::expected<TypedArithmetic, std::string> read() {
        TypedArithmetic read;
        read.value = sum(0);
        skip_blanks();
        if (fault_)
            return tl::make_unexpected(*fault_);
        read.computed = computed_;
        read.rest = std::string(text_.substr(at_));
        return read;
    }

private:
    double fail(std::string fault) {
        if (!fault_)
            fault_ = std::move(fault);
        return 0.0;
    }

    /// At once, since one over an infinity would be a number again.
    double finite(double value) { return std::isfinite(value) ? value : fail(kNoValue); }

    void skip_blanks() {
        while (at_ < text_.size() && text_[at_] == ' ')
            ++at_;
    }

    char next() {
        skip_blanks();
        return at_ < text_.size() ? text_[at_] : '\0';
    }

    /// Letters that come next.
    std::string_view word() {
        skip_blanks();
        std::size_t end = at_;
        while (end < text_.size() && is_letter(text_[end]))
            ++end;
        return text_.substr(at_, end - at_);
    }

    std::optional<Function> function_next() {
        const std::string_view name = word();
        for (const FunctionName& known : kFunctions)
            if (known.name == name)
                return known.function;
        return std::nullopt;
    }

    /// "70 x 0.4": a letter as a product sign, where a number follows.
    bool letter_multiplies() {
        const std::string_view letters = word();
        if (letters != "x" && letters != "X")
            return false;
        std::size_t behind = at_ + 1;
        while (behind < text_.size() && text_[behind] == ' ')
            ++behind;
        return behind < text_.size() && (is_digit(text_[behind]) || text_[behind] == '(');
    }

    double sum(int depth) {
        double value = product(depth);
        while (!fault_ && (next() == '+' || next() == '-')) {
            const bool plus = text_[at_++] == '+';
            computed_ = true;
            const double other = product(depth);
            value = finite(plus ? value + other : value - other);
        }
        return value;
    }

    /// Whether a product sign comes next that has no unit behind it: "0.4*m" ends at 0.4.
    bool sign_of_product_next() {
        if (next() != '*' && next() != '/')
            return false;
        std::size_t behind = at_ + 1;
        while (behind < text_.size() && text_[behind] == ' ')
            ++behind;
        if (behind >= text_.size() || !is_letter(text_[behind]))
            return true;
        const std::size_t here = at_;
        at_ = behind;
        const bool known = function_next().has_value();
        at_ = here;
        return known;
    }

    double product(int depth) {
        double value = sign(depth);
        while (!fault_) {
            const bool letter = letter_multiplies();
            if (letter || sign_of_product_next()) {
                const bool divides = text_[at_++] == '/';
                computed_ = true;
                const double other = sign(depth);
                if (divides && other == 0.0 && !fault_)
                    return fail("This divides by zero.");
                value = finite(divides ? value / other : value * other);
            } else if (next() == '(' || function_next()) {
                computed_ = true;
                value = finite(value * power(depth));
            } else {
                break;
            }
        }
        return value;
    }

    double sign(int depth) {
        if (depth > kDeepestArithmetic)
            return fail("This nests too deep.");
        if (next() == '-' || next() == '+') {
            const bool minus = text_[at_++] == '-';
            const double value = sign(depth + 1);
            return minus ? -value : value;
        }
        return power(depth);
    }

    double power(int depth) {
        const double base = atom(depth);
        if (fault_ || next() != '^')
            return base;
        ++at_;
        computed_ = true;
        return finite(mechanics::portable::pow(base, sign(depth + 1)));
    }

    double atom(int depth) {
        if (depth > kDeepestArithmetic)
            return fail("This nests too deep.");
        const char c = next();
        if (c == '(') {
            ++at_;
            const double value = sum(depth + 1);
            close_bracket();
            return value;
        }
        if (is_digit(c) || c == '.' || c == ',')
            return number();
        const auto function = function_next();
        return function ? call(*function, depth) : fail("A number is missing.");
    }

    double call(Function function, int depth) {
        at_ += word().size();
        computed_ = true;
        std::optional<double> unit;
        const double argument = argument_of_call(depth, unit);
        if (fault_)
            return 0.0;
        if (!unit)
            unit = angle_unit();
        const double x = takes_angle(function) ? argument * unit.value_or(kDegree_rad) : argument;
        const bool right_angle =
            function == Function::tangent && std::abs(mechanics::portable::cos(x)) < 1e-12;
        return right_angle ? fail(kNoValue) : finite(result_of(function, x));
    }

    /// "35", "-35" or "(35)".
    /// @param unit  of the angle, where it stands within the brackets
    double argument_of_call(int depth, std::optional<double>& unit) {
        if (next() == '-')
            return sign(depth + 1);
        if (next() != '(')
            return atom(depth + 1);
        ++at_;
        const double argument = sum(depth + 1);
        unit = angle_unit();
        close_bracket();
        return argument;
    }

    /// "°" or "rad" behind an angle: how many radians one of it is.
    std::optional<double> angle_unit() {
        const std::string_view unit = word();
        if (unit != "rad" && unit != "deg")
            return std::nullopt;
        at_ += unit.size();
        return unit == "rad" ? 1.0 : kDegree_rad;
    }

    void close_bracket() {
        if (next() != ')')
            fail("A closing bracket is missing.");
        else
            ++at_;
    }

    /// Digits with one decimal sign, point or comma, and perhaps an exponent.
    double number() {
        std::string plain;
        std::size_t decimals = 0;
        bool comma = false;
        bool sign_seen = false;
        for (; at_ < text_.size(); ++at_) {
            const char c = text_[at_];
            const bool decimal_sign = (c == '.' || c == ',') && !sign_seen;
            if (!is_digit(c) && !decimal_sign)
                break;
            comma = comma || c == ',';
            decimals += sign_seen ? 1 : 0;
            sign_seen = sign_seen || decimal_sign;
            plain += decimal_sign ? '.' : c;
        }
        if (comma && decimals == 3 && plain.size() <= 7 && plain[0] != '0')
            return fail("A comma before three digits can be read in two ways: write a point.");
        plain += exponent();
        double value = 0.0;
        const auto [end, status] =
            fast_float::from_chars(plain.data(), plain.data() + plain.size(), value);
        if (status != std::errc() || end != plain.data() + plain.size() || !std::isfinite(value))
            return fail("This is not a number.");
        return value;
    }

    /// "e3" or "e-3" at the place reached, which is moved past it.
    std::string exponent() {
        std::size_t end = at_;
        if (end >= text_.size() || (text_[end] != 'e' && text_[end] != 'E'))
            return {};
        ++end;
        if (end < text_.size() && (text_[end] == '-' || text_[end] == '+'))
            ++end;
        const std::size_t digits = end;
        while (end < text_.size() && is_digit(text_[end]))
            ++end;
        if (end == digits)
            return {};
        const std::string typed(text_.substr(at_, end - at_));
        at_ = end;
        return typed;
    }

    std::string_view text_;
    std::size_t at_ = 0;
    bool computed_ = false;
    std::optional<std::string> fault_;
};

bool begins_with(std::string_view text, std::string_view front) {
    return text.substr(0, front.size()) == front;
}

/// "1'255" and "1’255": an apostrophe between digits with three behind it.
std::string without_apostrophes(std::string_view text) {
    static constexpr std::string_view kMarks[] = {"'", "’"};
    std::string plain;
    for (std::size_t i = 0; i < text.size();) {
        std::size_t skip = 0;
        for (const std::string_view mark : kMarks) {
            const std::string_view behind = text.substr(std::min(text.size(), i + mark.size()));
            const std::size_t digits =
                std::min(behind.size(), behind.find_first_not_of("0123456789"));
            if (begins_with(text.substr(i), mark) && digits == 3 && i > 0 && is_digit(text[i - 1]))
                skip = mark.size();
        }
        if (skip == 0)
            plain += text[i++];
        i += skip;
    }
    return plain;
}

std::string replaced(std::string text, std::string_view from, std::string_view to) {
    for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at))
        text.replace(at, from.size(), to);
    return text;
}

} // namespace

tl::expected<TypedArithmetic, std::string> read_arithmetic(std::string_view typed) {
    if (typed.size() > kLongestArithmetic)
        return tl::make_unexpected(std::string("This is too long for a calculation."));
    const std::string text =
        setup::normalised(replaced(replaced(std::string(typed), "÷", "/"), "√", "sqrt "));
    return ArithmeticReader(text).read();
}

std::string plain_number_text(std::string_view typed, bool apostrophes) {
    const std::size_t equals = typed.find_last_of('=');
    std::string_view text = equals == std::string_view::npos ? typed : typed.substr(equals + 1);
    static constexpr std::string_view kFronts[] = {
        " ", "\t", "~", "≈", "approximately", "approx.", "approx", "about", "ca.", "ca ", "circa"};
    for (bool cut = true; cut;) {
        cut = false;
        for (const std::string_view front : kFronts) {
            if (!begins_with(text, front))
                continue;
            text.remove_prefix(front.size());
            cut = true;
        }
    }
    return apostrophes ? without_apostrophes(text) : std::string(text);
}

} // namespace steelyard::problems

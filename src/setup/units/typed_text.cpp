#include "setup/units/typed_text.h"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <cstdlib>
#include <fast_float/fast_float.h>
#include <utility>

namespace steelyard::setup {
namespace {

/// Longest typed quantity that is looked at; more is a mistake, not a number.
constexpr std::size_t kLongestTyped = 200;

struct Replacement {
    std::string_view from;
    std::string_view to;
};

constexpr std::array kReplacements = {
    // blanks: no-break, thin, narrow no-break, figure, hair, en and em space, tab
    Replacement{"\u00A0", " "}, Replacement{"\u2009", " "}, Replacement{"\u202F", " "},
    Replacement{"\u2007", " "}, Replacement{"\u200A", " "}, Replacement{"\u2002", " "},
    Replacement{"\u2003", " "}, Replacement{"\t", " "},
    // minus, hyphens and dashes
    Replacement{"−", "-"}, Replacement{"‐", "-"}, Replacement{"‑", "-"}, Replacement{"–", "-"},
    // product signs
    Replacement{"·", "*"}, Replacement{"⋅", "*"}, Replacement{"•", "*"}, Replacement{"∙", "*"},
    Replacement{"×", "*"},
    // feet and inches
    Replacement{"''", "\""}, Replacement{"′′", "\""}, Replacement{"’’", "\""},
    Replacement{"″", "\""}, Replacement{"”", "\""}, Replacement{"′", "'"}, Replacement{"’", "'"},
    // degrees
    Replacement{"°", "deg"}, Replacement{"º", "deg"},
    // fractions
    Replacement{"½", " 1/2"}, Replacement{"⅓", " 1/3"}, Replacement{"⅔", " 2/3"},
    Replacement{"¼", " 1/4"}, Replacement{"¾", " 3/4"}, Replacement{"⅛", " 1/8"},
    Replacement{"⅜", " 3/8"}, Replacement{"⅝", " 5/8"}, Replacement{"⅞", " 7/8"},
    Replacement{"⁄", "/"}, Replacement{"∕", "/"}};

constexpr std::array kSuperscripts = {
    Replacement{"⁰", "0"}, Replacement{"¹", "1"}, Replacement{"²", "2"}, Replacement{"³", "3"},
    Replacement{"⁴", "4"}, Replacement{"⁵", "5"}, Replacement{"⁶", "6"}, Replacement{"⁷", "7"},
    Replacement{"⁸", "8"}, Replacement{"⁹", "9"}, Replacement{"⁻", "-"}};

template <std::size_t n>
const Replacement* at_front(const std::array<Replacement, n>& table, std::string_view text) {
    for (const Replacement& entry : table)
        if (text.substr(0, entry.from.size()) == entry.from)
            return &entry;
    return nullptr;
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

std::size_t digits_from(std::string_view text, std::size_t at) {
    std::size_t end = at;
    while (end < text.size() && is_digit(text[end]))
        ++end;
    return end - at;
}

std::size_t blanks_from(std::string_view text, std::size_t at) {
    std::size_t end = at;
    while (end < text.size() && text[end] == ' ')
        ++end;
    return end - at;
}

UnitError number_error(UnitFault fault, std::string_view found, std::string mend) {
    UnitError error;
    error.fault = fault;
    error.found = std::string(found);
    error.mend = std::move(mend);
    return error;
}

/// Digits of a number without its separators.
struct Mantissa {
    std::string whole;
    std::string decimals;
    bool has_decimal_sign = false;
};

/// True when every group after the first has three digits, the first one to three: "1,234,567".
bool grouped_in_threes(std::string_view digits, char separator) {
    std::size_t group = 0;
    bool first = true;
    for (std::size_t i = 0; i <= digits.size(); ++i) {
        if (i < digits.size() && digits[i] != separator) {
            ++group;
            continue;
        }
        if (first ? group < 1 || group > 3 : group != 3)
            return false;
        first = false;
        group = 0;
    }
    return true;
}

std::string without(std::string_view text, char unwanted) {
    std::string result;
    for (const char c : text)
        if (c != unwanted)
            result += c;
    return result;
}

/// Splits "2.300,5", "1,234", "0,125" at its decimal sign.
/// @param grouped_by_blanks  thousands were already parted by blanks, so that a comma is decimal
tl::expected<Mantissa, UnitError> split_mantissa(std::string_view digits, bool grouped_by_blanks) {
    const auto count = [&](char sign) {
        std::size_t n = 0;
        for (const char c : digits)
            n += c == sign ? 1 : 0;
        return n;
    };
    const std::size_t points = count('.');
    const std::size_t commas = count(',');
    const std::size_t last = digits.find_last_of(".,");
    if (last == std::string_view::npos)
        return Mantissa{std::string(digits), {}, false};

    const char decimal = digits[last];
    const char other = decimal == '.' ? ',' : '.';
    const std::string_view before = digits.substr(0, last);
    const std::string_view after = digits.substr(last + 1);
    const auto malformed = [&] {
        return tl::make_unexpected(
            number_error(UnitFault::no_number, digits, "Write one decimal point, as in 1234.5."));
    };

    if (points > 0 && commas > 0) {
        if ((decimal == '.' ? points : commas) != 1 || !grouped_in_threes(before, other))
            return malformed();
        return Mantissa{without(before, other), std::string(after), true};
    }
    if (points + commas > 1) {
        if (!grouped_in_threes(digits, decimal))
            return malformed();
        return Mantissa{without(digits, decimal), {}, false};
    }
    const bool could_be_thousands = decimal == ',' && !grouped_by_blanks && after.size() == 3 &&
                                    !before.empty() && before.size() <= 3 && before[0] != '0';
    if (could_be_thousands) {
        const std::string whole = std::string(before) + std::string(after);
        return tl::make_unexpected(
            number_error(UnitFault::ambiguous_number, digits,
                         fmt::format("It can mean {} or {}.{}: write it one of these ways.", whole,
                                     before, after)));
    }
    return Mantissa{std::string(before), std::string(after), true};
}

/// Reads digits, groups and decimal sign at `at`, and moves it past them.
tl::expected<Mantissa, UnitError> scan_mantissa(std::string_view text, std::size_t& at) {
    std::string digits(text.substr(at, digits_from(text, at)));
    at += digits.size();
    bool grouped_by_blanks = false;
    if (!digits.empty() && digits.size() <= 3) {
        // "2 300", but not "2 300/7".
        while (at < text.size() && text[at] == ' ' && digits_from(text, at + 1) == 3 &&
               (at + 4 >= text.size() || text[at + 4] != '/')) {
            digits += text.substr(at + 1, 3);
            at += 4;
            grouped_by_blanks = true;
        }
    }
    while (at < text.size() && (text[at] == '.' || text[at] == ',')) {
        const std::size_t more = digits_from(text, at + 1);
        const bool stops_sentence = more == 0 && text[at] == ',';
        if (stops_sentence)
            break;
        digits += text.substr(at, more + 1);
        at += more + 1;
    }
    if (digits.find_first_of("0123456789") == std::string::npos)
        return tl::make_unexpected(
            number_error(UnitFault::no_number, text, "Begin with a number, as in 45 or 0.45."));
    return split_mantissa(digits, grouped_by_blanks);
}

/// Reads "e3", "* 10^3" or "x 10^-3" at `at` and moves it past them; empty when there is none.
std::string scan_exponent(std::string_view text, std::size_t& at) {
    const auto signed_digits = [&](std::size_t from) -> std::string {
        std::size_t end = from;
        if (end < text.size() && (text[end] == '-' || text[end] == '+'))
            ++end;
        const std::size_t digits = digits_from(text, end);
        if (digits == 0)
            return {};
        const std::string sign = end > from && text[from] == '-' ? "-" : "";
        return sign + std::string(text.substr(end, digits));
    };
    const auto length_of = [&](std::size_t from) {
        const bool has_sign = from < text.size() && (text[from] == '-' || text[from] == '+');
        return (has_sign ? 1 : 0) + digits_from(text, from + (has_sign ? 1 : 0));
    };
    if (at < text.size() && (text[at] == 'e' || text[at] == 'E')) {
        const std::string exponent = signed_digits(at + 1);
        if (!exponent.empty())
            at += 1 + length_of(at + 1);
        return exponent;
    }
    std::size_t next = at + blanks_from(text, at);
    if (next >= text.size() || (text[next] != '*' && text[next] != 'x' && text[next] != 'X'))
        return {};
    ++next;
    next += blanks_from(text, next);
    if (text.substr(next, 3) == "10^")
        next += 3;
    else if (text.substr(next, 4) == "10**")
        next += 4;
    else
        return {};
    const std::string exponent = signed_digits(next);
    if (!exponent.empty())
        at = next + length_of(next);
    return exponent;
}

/// Figures and last place of a decimal number.
TypedNumber counted(const Mantissa& mantissa, const std::string& exponent, double value) {
    TypedNumber number;
    number.value = value;
    const std::string all = mantissa.whole + mantissa.decimals;
    const std::size_t first = all.find_first_not_of('0');
    const std::string significant = first == std::string::npos ? "0" : all.substr(first);
    number.figures_most = static_cast<int>(significant.size());
    number.figures_least = number.figures_most;
    if (!mantissa.has_decimal_sign && first != std::string::npos)
        number.figures_least = static_cast<int>(significant.find_last_not_of('0')) + 1;
    const std::string place =
        fmt::format("1e{}", (exponent.empty() ? 0 : std::atoi(exponent.c_str())) -
                                static_cast<int>(mantissa.decimals.size()));
    fast_float::from_chars(place.data(), place.data() + place.size(), number.last_place);
    return number;
}

tl::expected<double, UnitError> value_of(const Mantissa& mantissa, const std::string& exponent,
                                         std::string_view typed) {
    std::string plain = mantissa.whole.empty() ? "0" : mantissa.whole;
    if (!mantissa.decimals.empty())
        plain += "." + mantissa.decimals;
    if (!exponent.empty())
        plain += "e" + exponent;
    double value = 0.0;
    fast_float::from_chars(plain.data(), plain.data() + plain.size(), value);
    if (!std::isfinite(value))
        return tl::make_unexpected(number_error(UnitFault::not_finite, typed,
                                                "The number is too large; write a smaller one."));
    return value;
}

constexpr int kExactFigures = 17;

/// Reads "1/2" or the " 1/2" of "2 1/2" when it stands at `at`, and moves it past it.
/// @param whole  the whole number in front, or the numerator itself
tl::expected<bool, UnitError> scan_fraction(std::string_view text, std::size_t& at, double& whole) {
    double numerator = whole;
    double in_front = 0.0;
    std::size_t slash = at;
    const bool parted = at < text.size() && (text[at] == ' ' || text[at] == '-');
    if (parted) {
        const std::size_t begin = at + 1 + blanks_from(text, at + 1);
        const std::size_t digits = digits_from(text, begin);
        if (digits == 0 || digits > 9)
            return false;
        numerator = std::atof(std::string(text.substr(begin, digits)).c_str());
        in_front = whole;
        slash = begin + digits;
    }
    if (slash >= text.size() || text[slash] != '/')
        return false;
    const std::size_t below = slash + 1 + blanks_from(text, slash + 1);
    const std::size_t digits = digits_from(text, below);
    if (digits == 0)
        return false;
    const double denominator = std::atof(std::string(text.substr(below, digits)).c_str());
    if (denominator == 0.0)
        return tl::make_unexpected(number_error(UnitFault::not_finite, text,
                                                "A fraction cannot have zero below the line."));
    whole = in_front + numerator / denominator;
    at = below + digits;
    return true;
}

bool names_no_number(std::string_view text) {
    std::string word;
    for (const char c : text) {
        const char low = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        if (low < 'a' || low > 'z')
            break;
        word += low;
    }
    return word == "nan" || word == "inf" || word == "infinity";
}

} // namespace

std::string normalised(std::string_view typed) {
    std::string plain;
    for (std::size_t i = 0; i < typed.size() && plain.size() <= kLongestTyped;) {
        const std::string_view rest = typed.substr(i);
        if (const Replacement* entry = at_front(kReplacements, rest)) {
            plain += entry->to;
            i += entry->from.size();
        } else if (const Replacement* power = at_front(kSuperscripts, rest)) {
            plain += '^';
            while (power) {
                plain += power->to;
                i += power->from.size();
                power = at_front(kSuperscripts, typed.substr(i));
            }
        } else {
            plain += typed[i++];
        }
    }
    const std::size_t begin = plain.find_first_not_of(" \r\n");
    if (begin == std::string::npos)
        return {};
    return plain.substr(begin, plain.find_last_not_of(" \r\n") - begin + 1);
}

tl::expected<ScannedNumber, UnitError> scan_number(std::string_view text, std::size_t begin) {
    if (text.size() > kLongestTyped)
        return tl::make_unexpected(number_error(UnitFault::no_number, text.substr(0, 20),
                                                "This is too long for a number and a unit."));
    std::size_t at = begin;
    bool negative = false;
    if (at < text.size() && (text[at] == '-' || text[at] == '+')) {
        negative = text[at] == '-';
        ++at;
    }
    at += blanks_from(text, at);
    if (names_no_number(text.substr(at)))
        return tl::make_unexpected(
            number_error(UnitFault::not_finite, text.substr(begin), "Write a finite number."));

    ScannedNumber scanned;
    const std::size_t mantissa_begin = at;
    const auto mantissa = scan_mantissa(text, at);
    if (!mantissa)
        return tl::make_unexpected(mantissa.error());
    std::string exponent;
    Mantissa kept = *mantissa;
    const bool power_of_ten = text.substr(mantissa_begin, 3) == "10^" && kept.whole == "10";
    if (power_of_ten) { // "10^3" stands for 1e3
        kept.whole = "1";
        const std::string product = "*" + std::string(text.substr(mantissa_begin));
        std::size_t in_product = 0;
        exponent = scan_exponent(product, in_product);
        at = exponent.empty() ? at : mantissa_begin + in_product - 1;
    } else {
        exponent = scan_exponent(text, at);
    }
    auto value = value_of(kept, exponent, text.substr(begin));
    if (!value)
        return tl::make_unexpected(value.error());

    scanned.number = counted(kept, exponent, *value);
    if (exponent.empty() && !kept.has_decimal_sign) {
        const auto fraction = scan_fraction(text, at, *value);
        if (!fraction)
            return tl::make_unexpected(fraction.error());
        if (*fraction)
            scanned.number = TypedNumber{*value, kExactFigures, kExactFigures, 0.0};
    }
    if (negative)
        scanned.number.value = -scanned.number.value;
    scanned.end = at;
    return scanned;
}

} // namespace steelyard::setup

#include "problems/language/number_text.h"

#include "setup/units/format_quantity.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace steelyard::problems {

namespace {

/// Between a number and its unit, so that no line ends there.
constexpr const char* kNoBreakSpace = "\u00a0";

} // namespace

std::string number_text(double value, int figures) {
    int whole_figures = 1;
    for (double rest = std::abs(value); rest >= 9.9999999999 && whole_figures < 15; rest /= 10.0)
        ++whole_figures;
    setup::NumberStyle style;
    style.significant_figures = std::max(figures, whole_figures);
    style.keep_zeros = false;
    std::string text = setup::format_number(value, style);
    constexpr std::string_view kThinSpace = "\u2009";
    for (std::size_t at = text.find(kThinSpace); at != std::string::npos;
         at = text.find(kThinSpace))
        text.erase(at, kThinSpace.size());
    return text;
}

std::string with_unit(const std::string& number, const std::string& unit) {
    if (unit.empty())
        return number;
    return unit == "°" || unit == "%" ? number + unit : number + kNoBreakSpace + unit;
}

std::string quantity_number(const Quantity& quantity, double value_si, int figures) {
    const double shown = quantity.in_unit(value_si);
    if (quantity.decimals >= 0) {
        std::string text = fmt::format("{:.{}f}", shown, quantity.decimals);
        if (quantity.sheds_zeros && quantity.decimals > 0) {
            text.erase(text.find_last_not_of('0') + 1);
            text.erase(text.find_last_not_of('.') + 1);
        }
        return text;
    }
    return number_text(shown, figures);
}

std::string quantity_text(const Quantity& quantity, double value_si, int figures) {
    return with_unit(quantity_number(quantity, value_si, figures), quantity.unit_symbol());
}

} // namespace steelyard::problems

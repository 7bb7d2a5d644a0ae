#include "problems/bank/us_texts.h"

#include "mechanics/portable.h"
#include "problems/bank/family_names.h"
#include "problems/bank/reading/draw_reader.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <fast_float/fast_float.h>
#include <optional>
#include <utility>
#include <vector>

namespace steelyard::problems {

namespace {

/// A unit of a family's file and what stands for it in pounds and inches, or in pounds and feet.
struct Pair {
    std::string_view si;
    std::string_view with_inches;
    std::string_view with_feet;
};

/// Longer spellings first, so that the front of one is not taken for another.
constexpr std::array kPairs{
    Pair{"N·m", "in·lbf", "ft·lbf"}, Pair{"N/m", "lbf/in", "lbf/ft"},
    Pair{"m/s²", "ft/s²", "ft/s²"},  Pair{"m/s", "ft/s", "ft/s"},
    Pair{"cm", "in", "ft"},          Pair{"mm", "in", "ft"},
    Pair{"kg", "lb", "lb"},          Pair{"kN", "lbf", "lbf"},
    Pair{"N", "lbf", "lbf"},         Pair{"m", "in", "ft"},
    Pair{"J", "ft·lbf", "ft·lbf"},
};

/// Steps of a grid that people count in, within a power of ten; feet are counted in quarters.
constexpr std::array kSteps{0.01, 0.02, 0.05, 0.1, 0.25, 0.5, 1.0, 2.0, 2.5, 5.0};
constexpr std::array kInchSteps{0.01, 0.02, 0.05, 0.1, 0.25, 0.5, 1.0, 2.0, 3.0, 4.0, 6.0, 12.0};
/// A grid may be so much coarser than the one it stands for.
constexpr double kCoarser = 1.3;
/// Of a value that stands alone: its grid as a share of it. What only says how far a change goes
/// may be rounder than what is drawn.
constexpr double kDrawnShare = 0.13;
constexpr double kSaidShare = 0.26;

/// The largest step of people's grids that is at most so large.
double round_step(double most, std::string_view unit) {
    double best = 0.0;
    if (unit == "in") {
        for (const double step : kInchSteps)
            if (step <= most)
                best = step;
        if (best > 0.0 && most < 50.0)
            return best;
    }
    best = kSteps.front();
    for (double scale = 1.0; scale <= 1.0e4; scale *= 10.0)
        for (const double step : kSteps)
            if (step * scale <= most)
                best = std::max(best, step * scale);
    return best;
}

/// A decimal without idle zeros: "2.75", "12".
std::string decimal(double value) {
    std::string text = fmt::format("{:.3f}", value);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.')
        text.pop_back();
    return text == "-0" ? "0" : text;
}

double on_grid(double value, double step) {
    return std::round(value / step) * step;
}

std::string_view target(const Pair& pair, bool in_feet) {
    return in_feet ? pair.with_feet : pair.with_inches;
}

const Pair* pair_of(std::string_view symbol) {
    const auto found = std::find_if(kPairs.begin(), kPairs.end(),
                                    [&](const Pair& pair) { return pair.si == symbol; });
    return found == kPairs.end() ? nullptr : &*found;
}

double in_us(double value, const setup::Unit& unit, std::string_view to) {
    return setup::value_in_unit(setup::value_in_SI(value, unit),
                                *setup::unit_by_symbol(unit.dimension, to));
}

/// Values of a list, each on a grid that keeps them apart.
std::string list_on_grid(const Draw& draw, const std::function<double(std::int64_t)>& converted,
                         std::string_view to) {
    std::vector<double> values;
    for (const std::int64_t whole : draw.list)
        values.push_back(converted(whole));
    double gap = kDrawnShare / kCoarser * std::abs(values.front());
    for (std::size_t i = 1; i < values.size(); ++i)
        gap = i == 1 ? std::abs(values[1] - values[0])
                     : std::min(gap, std::abs(values[i] - values[i - 1]));
    const double step = round_step(kCoarser * gap, to);
    std::string text;
    std::string before;
    for (const double value : values) {
        const std::string one = decimal(on_grid(value, step));
        if (one != before)
            text += (text.empty() ? "" : ", ") + one;
        before = one;
    }
    return fmt::format("{} {}", text, to);
}

bool is_wordy(char c) {
    return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_' ||
           c == '.' || static_cast<unsigned char>(c) >= 0x80;
}

/// The number with its unit that begins here; `end` is where it ends.
std::optional<std::pair<double, const Pair*>> size_at(std::string_view text, std::size_t at,
                                                      std::size_t& end) {
    const auto digit = [&](std::size_t i) {
        return i < text.size() && text[i] >= '0' && text[i] <= '9';
    };
    if (!digit(at) || (at > 0 && is_wordy(text[at - 1])))
        return std::nullopt;
    std::size_t last = at;
    while (digit(last) || (last < text.size() && text[last] == '.' && digit(last + 1)))
        ++last;
    double value = 0.0;
    fast_float::from_chars(text.data() + at, text.data() + last, value);
    if (last < text.size() && text[last] == ' ')
        ++last;
    for (const Pair& pair : kPairs) {
        const std::size_t after = last + pair.si.size();
        if (text.substr(last, pair.si.size()) != pair.si ||
            (after < text.size() && is_wordy(text[after]) && text[after] != '.'))
            continue;
        end = after;
        return std::pair{value, &pair};
    }
    return std::nullopt;
}

/// Units that are written out: "in metres" as "in inches".
std::string with_words(std::string text, bool in_feet) {
    // Longer ones first.
    const std::array<std::pair<std::string_view, std::string_view>, 6> kWords{{
        {"newton metres", in_feet ? "foot-pounds" : "inch-pounds"},
        {"centimetres", in_feet ? "feet" : "inches"},
        {"metres", in_feet ? "feet" : "inches"},
        {"newtons", "pounds of force"},
        {"kilograms", "pounds"},
        {"kilogram", "pound"},
    }};
    for (const auto& [from, to] : kWords)
        for (std::size_t at = text.find(from); at != std::string::npos;
             at = text.find(from, at + to.size()))
            text.replace(at, from.size(), to);
    return text;
}

} // namespace

std::string UsTexts::unit(const std::string& symbol) const {
    const Pair* const pair = pair_of(symbol);
    return pair ? std::string(target(*pair, in_feet_)) : symbol;
}

std::string UsTexts::draw(const std::string& text) const {
    const auto written = read_draw(text, setup::Dimension::number);
    if (!written || !written->unit || !pair_of(written->unit->symbol))
        return text;
    const std::string_view to = target(*pair_of(written->unit->symbol), in_feet_);
    const Draw& draw = written->draw;
    const double scale = mechanics::portable::pow(10.0, draw.decimals);
    const auto converted = [&](std::int64_t whole) {
        return in_us(static_cast<double>(whole) / scale, *written->unit, to);
    };
    if (!draw.list.empty())
        return list_on_grid(draw, converted, to);
    const double step = round_step(kCoarser * converted(draw.step), to);
    const double low = converted(draw.first);
    const double high = converted(draw.first + draw.step * (draw.count - 1));
    const double from = std::ceil(low / step - 1.0e-9) * step;
    const double end = std::max(from, std::floor(high / step + 1.0e-9) * step);
    return fmt::format("{}..{} {} step {}", decimal(from), decimal(end), to, decimal(step));
}

std::string UsTexts::said(std::string_view text) const {
    const std::string sized = with_sizes(text, [&](double value, const setup::Unit& unit,
                                                   std::string_view to) {
        const double size = in_us(value, unit, to);
        return fmt::format("{} {}", decimal(on_grid(size, round_step(kSaidShare * size, to))), to);
    });
    return with_words(sized, in_feet_);
}

std::string UsTexts::same_numbers(std::string_view text) const {
    const std::string sized =
        with_sizes(text, [](double value, const setup::Unit& unit, std::string_view to) {
            return fmt::format("{:.15g} {}", value, unit.symbol == "cm" ? "in" : to);
        });
    return with_words(sized, true);
}

std::string UsTexts::size_alone(const std::string& text) const {
    std::size_t end = 0;
    return size_at(text, 0, end) && end == text.size() ? said(text) : text;
}

std::string UsTexts::unit_sizes(std::string_view text) const {
    return with_sizes(text, [&](double value, const setup::Unit& unit, std::string_view to) {
        return value == 1.0 ? fmt::format("1 {}", to)
                            : fmt::format("{:.15g} {}", value, unit.symbol);
    });
}

std::string UsTexts::with_sizes(std::string_view text, const Shown& shown) const {
    std::string result;
    for (std::size_t at = 0; at < text.size();) {
        std::size_t end = at;
        if (const auto size = size_at(text, at, end)) {
            const setup::Unit& unit = *find_unit(size->second->si);
            result += shown(size->first, unit, target(*size->second, in_feet_));
            at = end;
        } else {
            result += text[at++];
        }
    }
    return result;
}

} // namespace steelyard::problems

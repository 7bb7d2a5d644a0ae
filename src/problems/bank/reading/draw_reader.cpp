#include "problems/bank/reading/draw_reader.h"

#include "problems/bank/family_names.h"

#include <fmt/core.h>

#include <algorithm>

namespace steelyard::problems {

namespace {

/// A decimal as written: 12.50 is 1250 with 2 decimals.
struct Decimal {
    std::int64_t whole = 0;
    int decimals = 0;
};

std::string_view trimmed(std::string_view text) {
    const std::size_t first = text.find_first_not_of(" \t\n");
    if (first == std::string_view::npos)
        return {};
    return text.substr(first, text.find_last_not_of(" \t\n") - first + 1);
}

constexpr std::int64_t kMaxWhole = 1'000'000'000'000;
constexpr int kMostDecimals = 6;

/// Takes a decimal from the front of a text; empty when there is none.
std::optional<Decimal> take_decimal(std::string_view& text) {
    text = trimmed(text);
    Decimal result;
    std::size_t at = 0;
    const bool negative = !text.empty() && text[0] == '-';
    if (negative)
        ++at;
    bool point = false;
    std::size_t digits = 0;
    for (; at < text.size(); ++at) {
        const char c = text[at];
        if (c == '.' && !point && text.substr(at, 2) != "..") {
            point = true;
            continue;
        }
        if (c < '0' || c > '9')
            break;
        if (result.whole > kMaxWhole || result.decimals >= kMostDecimals)
            return std::nullopt;
        result.whole = result.whole * 10 + (c - '0');
        ++digits;
        if (point)
            ++result.decimals;
    }
    if (digits == 0)
        return std::nullopt;
    if (negative)
        result.whole = -result.whole;
    text.remove_prefix(at);
    return result;
}

std::int64_t scaled(const Decimal& decimal, int decimals) {
    std::int64_t whole = decimal.whole;
    for (int i = decimal.decimals; i < decimals; ++i)
        whole *= 10;
    return whole;
}

const char* const kForm =
    "write \"10..60 kg step 5\", \"30, 40, 60 °\" or one value such as \"2 kg\"";

tl::unexpected<std::string> fault(const std::string& what) {
    return tl::make_unexpected(what + "; " + kForm);
}

/// What follows the values: the unit, and for a range the step.
tl::expected<const setup::Unit*, std::string> read_unit(std::string_view text,
                                                        setup::Dimension wanted) {
    text = trimmed(text);
    if (text.empty())
        return nullptr;
    if (const setup::Unit* unit = find_unit(text, wanted))
        return unit;
    return tl::make_unexpected(fmt::format("\"{}\" is not a unit", text));
}

} // namespace

tl::expected<WrittenDraw, std::string> read_draw(std::string_view text, setup::Dimension wanted) {
    WrittenDraw result;
    std::vector<Decimal> values;
    std::string_view rest = text;
    std::optional<Decimal> value = take_decimal(rest);
    if (!value)
        return fault("there is no number at the beginning");
    values.push_back(*value);
    const bool range = trimmed(rest).substr(0, 2) == "..";
    if (range) {
        rest = trimmed(rest).substr(2);
        value = take_decimal(rest);
        if (!value)
            return fault("there is no number after \"..\"");
        values.push_back(*value);
    }
    while (!range && trimmed(rest).substr(0, 1) == ",") {
        rest = trimmed(rest).substr(1);
        value = take_decimal(rest);
        if (!value)
            return fault("there is no number after a comma");
        values.push_back(*value);
    }
    std::optional<Decimal> step;
    const std::size_t step_at = rest.find("step");
    if (range) {
        if (step_at == std::string_view::npos)
            return fault("a range needs its step");
        std::string_view after = rest.substr(step_at + 4);
        step = take_decimal(after);
        if (!step || step->whole <= 0 || !trimmed(after).empty())
            return fault("the step must be a positive number in the unit of the range, and last");
        rest = rest.substr(0, step_at);
    }
    const tl::expected<const setup::Unit*, std::string> unit = read_unit(rest, wanted);
    if (!unit)
        return fault(unit.error());
    result.unit = *unit;

    Draw& draw = result.draw;
    for (const Decimal& each : values)
        draw.decimals = std::max(draw.decimals, each.decimals);
    if (step)
        draw.decimals = std::max(draw.decimals, step->decimals);
    if (!range) {
        for (const Decimal& each : values)
            draw.list.push_back(scaled(each, draw.decimals));
        return result;
    }
    draw.first = scaled(values[0], draw.decimals);
    draw.step = scaled(*step, draw.decimals);
    const std::int64_t span = scaled(values[1], draw.decimals) - draw.first;
    if (span < 0 || span % draw.step != 0)
        return fault("the range must run upwards and end on a step");
    draw.count = span / draw.step + 1;
    if (draw.count > kMaxDrawValues)
        return fault(
            fmt::format("the range has {} values, more than {}", draw.count, kMaxDrawValues));
    return result;
}

} // namespace steelyard::problems

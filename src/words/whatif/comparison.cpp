#include "words/whatif/comparison.h"

#include "mechanics/whatif/change.h"
#include "setup/units/format_quantity.h"
#include "words/whatif/gym_moves.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::words {
namespace {

using mechanics::Change;
using mechanics::Hinge;

/// What-if reaches a torque to 1e-9 of it; two such answers may differ by twice that.
constexpr double kSameNumber = 1.0e-8;
/// Torques and lengths below this are rounding, see format_number.
constexpr double kNothing = 1.0e-9;

} // namespace

std::vector<Hinge> axes_of_both(const setup::BodySetup& a, const setup::BodySetup& b) {
    std::vector<Hinge> axes = a.axes;
    for (const Hinge hinge : b.axes)
        if (std::find(axes.begin(), axes.end(), hinge) == axes.end())
            axes.push_back(hinge);
    return axes;
}

tl::expected<std::vector<ComparedPeak>, mechanics::MechanicsError>
compare_peaks(const setup::BodySetup& a, const setup::BodySetup& b) {
    const std::vector<Hinge> axes = axes_of_both(a, b);
    const auto of_a = read_repetition(a.exercise, axes);
    if (!of_a)
        return tl::unexpected(of_a.error());
    const auto of_b = read_repetition(b.exercise, axes);
    if (!of_b)
        return tl::unexpected(of_b.error());
    std::vector<ComparedPeak> peaks;
    for (std::size_t i = 0; i < axes.size(); ++i)
        peaks.push_back({of_a->peaks[i], of_b->peaks[i]});
    return peaks;
}

bool are_equal(double a, double b) {
    return std::abs(b - a) <= std::max(kSameNumber * std::max(std::abs(a), std::abs(b)), kNothing);
}

std::string difference_text(double a, double b, setup::Dimension dimension,
                            setup::UnitSystem units) {
    if (are_equal(a, b))
        return "equal";
    const std::string size = setup::format_quantity(std::abs(b - a), dimension, units);
    const std::string words = fmt::format("{} {} in B", size, b > a ? "more" : "less");
    const double part = 100.0 * (b - a) / a;
    // Against next to nothing every number is a thousand per cent: that says nothing.
    if (!std::isfinite(part) || std::abs(part) > 999.0)
        return words;
    const std::string_view sign = b > a ? "+" : "−";
    return fmt::format("{} ({}{} %)", words, sign,
                       setup::format_number(std::abs(part), {2, false}));
}

std::vector<std::string> changed_in_b(const setup::BodySetup& a, const setup::BodySetup& b,
                                      setup::UnitSystem units) {
    const Hinge from = a.axes.front();
    const std::vector<Change> of_b = possible_changes(b.exercise, from);
    std::vector<std::string> changed;
    for (const Change& change : of_b) {
        const auto same = mechanics::same_change(change, b.exercise, a.exercise, from);
        // A reach follows from the angles, which are told by themselves.
        if (!same || std::holds_alternative<mechanics::LoadReach>(change))
            continue;
        const auto range_a = range_of(*same, a.exercise);
        const auto range_b = range_of(change, b.exercise);
        if (!range_a || !range_b || are_equal(range_a->present, range_b->present))
            continue;
        changed.push_back(gym_text(*same, *range_a, range_b->present, a.exercise, units));
    }
    return changed;
}

} // namespace steelyard::words

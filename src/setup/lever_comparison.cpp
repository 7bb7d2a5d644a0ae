#include "setup/lever_comparison.h"

#include "mechanics/whatif/lever_whatif.h"
#include "setup/comparison.h"
#include "setup/direction.h"
#include "setup/whatif_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::setup {
namespace {

using mechanics::LeverChange;
using mechanics::LeverKnob;

std::string value_text(const LeverChange& change, const mechanics::ChangeRange& range,
                       UnitSystem units) {
    return change.knob == LeverKnob::effort_direction
               ? direction_in_words(range.present)
               : change_value_text(range.present, range.unit, units);
}

} // namespace

std::vector<ComparedSize> compare_levers(const mechanics::LeverResult& a,
                                         const mechanics::LeverResult& b) {
    std::vector<ComparedSize> sizes{
        {"effort", Dimension::force, std::abs(a.effort_N.value_or(0.0)),
         std::abs(b.effort_N.value_or(0.0))},
        {"effort arm", Dimension::length, a.effort_arm_m, b.effort_arm_m},
        {"load torque", Dimension::torque, std::abs(a.torque_load_Nm), std::abs(b.torque_load_Nm)}};
    if (a.load_arm_m && b.load_arm_m)
        sizes.push_back({"load arm", Dimension::length, *a.load_arm_m, *b.load_arm_m});
    if (a.ideal_advantage && b.ideal_advantage)
        sizes.push_back({"advantage", Dimension::number, *a.ideal_advantage, *b.ideal_advantage});
    return sizes;
}

std::vector<std::string> changed_in_b(const mechanics::Lever& a, const mechanics::Lever& b,
                                      UnitSystem units) {
    const auto same_name = [](const mechanics::Load& one, const mechanics::Load& other) {
        return one.name == other.name && one.action.index() == other.action.index();
    };
    if (!std::equal(a.loads.begin(), a.loads.end(), b.loads.begin(), b.loads.end(), same_name))
        return {};
    std::vector<std::string> changed;
    for (const LeverChange& change : mechanics::possible_changes(b)) {
        const mechanics::ChangeRange of_a = range_of(change, a);
        const mechanics::ChangeRange of_b = range_of(change, b);
        if (!are_equal(of_a.present, of_b.present))
            changed.push_back(fmt::format("{} {} instead of {}", describe(change, b),
                                          value_text(change, of_b, units),
                                          value_text(change, of_a, units)));
    }
    return changed;
}

} // namespace steelyard::setup

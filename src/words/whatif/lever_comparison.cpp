#include "words/whatif/lever_comparison.h"

#include "mechanics/whatif/lever_whatif.h"
#include "setup/lever/direction.h"
#include "words/whatif/comparison.h"
#include "words/whatif/whatif_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::words {
namespace {

using mechanics::LeverChange;
using mechanics::LeverKnob;

std::string value_text(const LeverChange& change, const mechanics::ChangeRange& range,
                       setup::UnitSystem units) {
    return change.knob == LeverKnob::effort_direction
               ? setup::direction_in_words(range.present)
               : change_value_text(range.present, range.unit, units);
}

} // namespace

std::vector<ComparedSize> compare_levers(const mechanics::LeverResult& a,
                                         const mechanics::LeverResult& b) {
    std::vector<ComparedSize> sizes{
        {"effort", setup::Dimension::force, std::abs(a.effort_N.value_or(0.0)),
         std::abs(b.effort_N.value_or(0.0))},
        {"effort arm", setup::Dimension::length, a.effort_arm_m, b.effort_arm_m},
        {"load torque", setup::Dimension::torque, std::abs(a.torque_load_Nm),
         std::abs(b.torque_load_Nm)}};
    if (a.load_arm_m && b.load_arm_m)
        sizes.push_back({"load arm", setup::Dimension::length, *a.load_arm_m, *b.load_arm_m});
    if (a.ideal_advantage && b.ideal_advantage)
        sizes.push_back(
            {"advantage", setup::Dimension::number, *a.ideal_advantage, *b.ideal_advantage});
    return sizes;
}

std::vector<std::string> changed_in_b(const mechanics::Lever& a, const mechanics::Lever& b,
                                      setup::UnitSystem units) {
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
            changed.push_back(fmt::format("{} {} instead of {}", mechanics::describe(change, b),
                                          value_text(change, of_b, units),
                                          value_text(change, of_a, units)));
    }
    return changed;
}

} // namespace steelyard::words

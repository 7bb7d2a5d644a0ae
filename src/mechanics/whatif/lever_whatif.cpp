#include "mechanics/whatif/lever_whatif.h"

#include "mechanics/lever/lever_geometry.h"
#include "mechanics/resistance/resistance.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace steelyard::mechanics {
namespace {

/// The number that a change sets.
double& number_of(const LeverChange& change, Lever& lever) {
    switch (change.knob) {
    case LeverKnob::load_size:
        if (auto* weight = std::get_if<Weight>(&lever.loads[change.load].action))
            return weight->mass_kg;
        return std::get<PointForce>(lever.loads[change.load].action).magnitude_N;
    case LeverKnob::load_place:
        if (auto* weight = std::get_if<Weight>(&lever.loads[change.load].action))
            return weight->at_m;
        return std::get<PointForce>(lever.loads[change.load].action).at_m;
    case LeverKnob::axis_place:
        return lever.axis_at_m;
    case LeverKnob::effort_place:
        return lever.effort.at_m;
    case LeverKnob::effort_direction:
        break;
    }
    return lever.effort.direction_rad;
}

bool is_a_weight(const LeverChange& change, const Lever& lever) {
    return std::holds_alternative<Weight>(lever.loads[change.load].action);
}

/// The effort that balances, along its stated direction.
AllowedReading effort_at(const Lever& lever) {
    if (sought_load(lever))
        return tl::unexpected(Limit{LimitKind::cannot_be, std::nullopt,
                                    "an effort that is sought: here it is known"});
    const auto solved = solve_lever(lever);
    if (!solved)
        return tl::unexpected(Limit{LimitKind::cannot_be, std::nullopt, solved.error().expected});
    if (!solved->effort_N)
        return tl::unexpected(
            Limit{LimitKind::cannot_be, std::nullopt, "an effort whose line misses the axis"});
    if (*solved->effort_N < 0.0)
        return tl::unexpected(
            Limit{LimitKind::cannot_be, std::nullopt, "an effort that pulls the way it is drawn"});
    return *solved->effort_N;
}

double size_of_step(const ChangeRange& range, double value, double length_m) {
    const double step = std::abs(value - range.present);
    switch (range.unit) {
    case ChangeUnit::radian:
        return step / (0.5 * kPi);
    case ChangeUnit::metre:
        return step / length_m;
    case ChangeUnit::kilogram:
    case ChangeUnit::newton:
    case ChangeUnit::second:
        break;
    }
    return step / std::max(std::abs(range.present), 1.0e-3);
}

} // namespace

std::vector<LeverChange> possible_changes(const Lever& lever) {
    std::vector<LeverChange> changes;
    for (std::size_t i = 0; i < lever.loads.size(); ++i) {
        if (std::holds_alternative<Couple>(lever.loads[i].action))
            continue;
        if (sought_load(lever) != i) // found, not set
            changes.push_back({LeverKnob::load_size, i});
        changes.push_back({LeverKnob::load_place, i});
    }
    changes.push_back({LeverKnob::axis_place, 0});
    changes.push_back({LeverKnob::effort_place, 0});
    if (!rests_on_two(lever)) // a support pushes up
        changes.push_back({LeverKnob::effort_direction, 0});
    return changes;
}

ChangeRange range_of(const LeverChange& change, const Lever& lever) {
    Lever copy = lever;
    const double present = number_of(change, copy);
    switch (change.knob) {
    case LeverKnob::load_size:
        return is_a_weight(change, lever) ? ChangeRange{present,
                                                        {0.0, std::max(kMaxResistance_kg, present)},
                                                        ChangeUnit::kilogram}
                                          : ChangeRange{present,
                                                        {0.0, std::max(kMaxResistance_N, present)},
                                                        ChangeUnit::newton};
    case LeverKnob::effort_direction:
        return {present, {present - 0.5 * kPi, present + 0.5 * kPi}, ChangeUnit::radian};
    case LeverKnob::load_place:
    case LeverKnob::axis_place:
    case LeverKnob::effort_place:
        break;
    }
    return {present, {0.0, path_length(lever.path_m)}, ChangeUnit::metre};
}

Lever with_change(Lever lever, const LeverChange& change, double value) {
    number_of(change, lever) = value;
    return lever;
}

std::string describe(const LeverChange& change, const Lever& lever) {
    switch (change.knob) {
    case LeverKnob::load_size:
        return (is_a_weight(change, lever) ? "mass of " : "pull of ") +
               lever.loads[change.load].name;
    case LeverKnob::load_place:
        return "place of " + lever.loads[change.load].name;
    case LeverKnob::axis_place:
        return "place of " + (rests_on_two(lever) ? axis_name(lever) : "the axis");
    case LeverKnob::effort_place:
        return "place of " + (rests_on_two(lever) ? lever.effort.name : "the effort");
    case LeverKnob::effort_direction:
        break;
    }
    return "direction of the effort";
}

RankedLeverWays ways_to_effort(const Lever& lever, double wanted_N) {
    assert(wanted_N >= 0.0);
    RankedLeverWays all;
    const double length_m = path_length(lever.path_m);
    for (const LeverChange& change : possible_changes(lever)) {
        const ChangeRange range = range_of(change, lever);
        const SearchResult found =
            search([&](double value) { return effort_at(with_change(lever, change, value)); },
                   range.allowed, range.present, wanted_N);
        if (!found.solutions.empty()) {
            const double value = found.solutions.front();
            all.ways.push_back({change, range, value, size_of_step(range, value, length_m)});
            continue;
        }
        RefusedLeverChange refused{change, range, found.nearest, found.first_limit};
        if (found.nearest)
            refused.limit = found.nearest->limit;
        all.refused.push_back(std::move(refused));
    }
    std::stable_sort(all.ways.begin(), all.ways.end(),
                     [](const LeverWay& a, const LeverWay& b) { return a.size < b.size; });
    return all;
}

} // namespace steelyard::mechanics

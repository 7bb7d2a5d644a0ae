#include "mechanics/lever/lever_class.h"

#include <cmath>

namespace steelyard::mechanics {

namespace {

bool same_place(double one_m, double other_m) {
    return std::abs(one_m - other_m) < kSamePlace_m;
}

bool lies_between(double middle, double one, double other) {
    return (one < middle && middle < other) || (other < middle && middle < one);
}

/// Place of a load that pulls at all.
std::optional<double> place_of(const Load& load) {
    if (const auto* weight = std::get_if<Weight>(&load.action); weight && weight->mass_kg != 0.0)
        return weight->at_m;
    if (const auto* force = std::get_if<PointForce>(&load.action);
        force && force->magnitude_N != 0.0)
        return force->at_m;
    return std::nullopt;
}

} // namespace

Classification classify_places(double axis_at_m, double load_at_m, double effort_at_m) {
    if (same_place(axis_at_m, effort_at_m))
        return {std::nullopt, ClassReason::effort_at_axis};
    if (same_place(axis_at_m, load_at_m))
        return {std::nullopt, ClassReason::load_at_axis};
    if (same_place(load_at_m, effort_at_m))
        return {std::nullopt, ClassReason::effort_at_load};
    if (lies_between(axis_at_m, load_at_m, effort_at_m))
        return {LeverClass::first, ClassReason::axis_between};
    if (lies_between(load_at_m, axis_at_m, effort_at_m))
        return {LeverClass::second, ClassReason::load_between};
    return {LeverClass::third, ClassReason::effort_between};
}

Classification classify_lever(const Lever& lever) {
    Classification whole;
    for (const Load& load : lever.loads) {
        const std::optional<double> at_m = place_of(load);
        if (!at_m)
            continue;
        const Classification one = classify_places(lever.axis_at_m, *at_m, lever.effort.at_m);
        if (one.lever_class && whole.lever_class && one.lever_class != whole.lever_class)
            return {std::nullopt, ClassReason::loads_disagree};
        if (one.lever_class || whole.reason == ClassReason::no_placed_load)
            whole = one;
    }
    return whole;
}

} // namespace steelyard::mechanics

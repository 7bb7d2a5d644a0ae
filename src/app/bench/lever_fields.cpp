#include "app/bench/lever_fields.h"

#include "mechanics/lever/lever_geometry.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace steelyard::app {

namespace {

using mechanics::Couple;
using mechanics::Lever;
using mechanics::Load;
using mechanics::PointForce;
using mechanics::SoughtLoad;
using mechanics::Weight;
using scene::LeverPart;
using scene::PartKind;

const Load* load_of(const Lever& lever, const LeverPart& part) {
    return part.kind == PartKind::load && part.index < lever.loads.size() ? &lever.loads[part.index]
                                                                          : nullptr;
}

/// The variable that a number names, or null. One table serves reading and writing.
template <typename Handled>
auto find_number(Handled& handled, const LeverNumber& number)
    -> decltype(&handled.lever.axis_at_m) {
    auto& lever = handled.lever;
    const LeverField field = number.field;
    switch (number.part.kind) {
    case PartKind::axis:
        if (field == LeverField::place)
            return &lever.axis_at_m;
        if (mechanics::rests_on_two(lever)) // no axle
            return nullptr;
        if (field == LeverField::radius)
            return &lever.friction.radius_m;
        return field == LeverField::grip && lever.friction.radius_m > 0.0
                   ? &lever.friction.coefficient
                   : nullptr;
    case PartKind::corner:
        if (number.part.index >= lever.path_m.size())
            return nullptr;
        if (field == LeverField::across)
            return &lever.path_m[number.part.index].x();
        return field == LeverField::up ? &lever.path_m[number.part.index].y() : nullptr;
    case PartKind::own_weight:
        if (field == LeverField::mass)
            return &lever.own_weight.mass_kg;
        return field == LeverField::place && lever.own_weight.centre_at_m
                   ? &*lever.own_weight.centre_at_m
                   : nullptr;
    case PartKind::effort:
        if (field == LeverField::place)
            return &lever.effort.at_m;
        if (field == LeverField::direction)
            return mechanics::rests_on_two(lever) ? nullptr : &lever.effort.direction_rad;
        if (auto* known = std::get_if<SoughtLoad>(&lever.sought))
            return field == LeverField::force ? &known->effort_N : nullptr;
        return field == LeverField::force && handled.hand_N ? &*handled.hand_N : nullptr;
    case PartKind::load:
        break;
    }
    if (number.part.index >= lever.loads.size())
        return nullptr;
    const bool is_size =
        field == LeverField::mass || field == LeverField::force || field == LeverField::torque;
    if (is_size && mechanics::sought_load(lever) == number.part.index)
        return nullptr; // found, not set
    auto& action = lever.loads[number.part.index].action;
    if (auto* weight = std::get_if<Weight>(&action)) {
        if (field == LeverField::place)
            return &weight->at_m;
        return field == LeverField::mass ? &weight->mass_kg : nullptr;
    }
    if (auto* pull = std::get_if<PointForce>(&action)) {
        if (field == LeverField::place)
            return &pull->at_m;
        if (field == LeverField::direction)
            return &pull->direction_rad;
        return field == LeverField::force ? &pull->magnitude_N : nullptr;
    }
    return field == LeverField::torque ? &std::get<Couple>(action).torque_Nm : nullptr;
}

/// True of the place of a weight that is spread evenly: nobody has set it, and it can be set.
bool is_spread_centre(const Lever& lever, const LeverNumber& number) {
    return number.part.kind == PartKind::own_weight && number.field == LeverField::place &&
           lever.own_weight.mass_kg > 0.0 && !lever.own_weight.centre_at_m;
}

/// Directions are kept from -180° (not included) to 180°, so that they read simply.
double simple_direction(double direction_rad) {
    const double turned = std::remainder(direction_rad, 2.0 * mechanics::kPi);
    return turned <= -mechanics::kPi ? mechanics::kPi : turned;
}

} // namespace

std::vector<LeverField> fields_of(const HandledLever& handled, const LeverPart& part) {
    std::vector<LeverField> all;
    switch (part.kind) {
    case PartKind::axis:
        all = {LeverField::place, LeverField::radius, LeverField::grip};
        break;
    case PartKind::corner:
        all = {LeverField::across, LeverField::up};
        break;
    case PartKind::own_weight:
        all = {LeverField::mass, LeverField::place};
        break;
    case PartKind::effort:
    case PartKind::load:
        all = {LeverField::mass, LeverField::force, LeverField::place, LeverField::direction};
        if (const Load* load = load_of(handled.lever, part);
            load && std::holds_alternative<Couple>(load->action))
            all = {LeverField::torque};
        break;
    }
    all.erase(std::remove_if(all.begin(), all.end(),
                             [&](LeverField field) {
                                 return !value_of(handled, {part, field});
                             }),
              all.end());
    return all;
}

std::vector<LeverPart> parts_of(const Lever& lever) {
    std::vector<LeverPart> parts{{PartKind::axis, 0}};
    for (std::size_t i = 0; i < lever.loads.size(); ++i)
        parts.push_back({PartKind::load, i});
    parts.push_back({PartKind::effort, 0});
    parts.push_back({PartKind::own_weight, 0});
    for (std::size_t i = 0; i < lever.path_m.size(); ++i)
        parts.push_back({PartKind::corner, i});
    return parts;
}

setup::Dimension dimension_of(LeverField field) {
    switch (field) {
    case LeverField::place:
    case LeverField::radius:
    case LeverField::across:
    case LeverField::up:
        return setup::Dimension::length;
    case LeverField::mass:
        return setup::Dimension::mass;
    case LeverField::force:
        return setup::Dimension::force;
    case LeverField::direction:
        return setup::Dimension::angle;
    case LeverField::torque:
        return setup::Dimension::torque;
    case LeverField::grip:
        return setup::Dimension::number;
    }
    return setup::Dimension::number;
}

std::string name_of(LeverField field) {
    switch (field) {
    case LeverField::place:
        return "place";
    case LeverField::mass:
        return "mass";
    case LeverField::force:
        return "pull";
    case LeverField::direction:
        return "direction";
    case LeverField::torque:
        return "torque";
    case LeverField::grip:
        return "friction";
    case LeverField::radius:
        return "axle radius";
    case LeverField::across:
        return "across";
    case LeverField::up:
        return "up";
    }
    return {};
}

std::string name_of(const Lever& lever, const LeverPart& part) {
    switch (part.kind) {
    case PartKind::axis:
        return mechanics::axis_name(lever);
    case PartKind::effort:
        return lever.effort.name;
    case PartKind::own_weight:
        return "own weight";
    case PartKind::corner:
        if (part.index == 0)
            return "start of the lever";
        return part.index + 1 < lever.path_m.size() ? "corner " + std::to_string(part.index)
                                                    : "end of the lever";
    case PartKind::load:
        break;
    }
    const Load* load = load_of(lever, part);
    return load != nullptr ? load->name : "load";
}

std::optional<double> value_of(const HandledLever& handled, const LeverNumber& number) {
    const Lever& lever = handled.lever;
    if (is_spread_centre(lever, number))
        return mechanics::nearest_at(lever.path_m, mechanics::path_centroid(lever.path_m));
    const double* found = find_number(handled, number);
    return found != nullptr ? std::optional(*found) : std::nullopt;
}

HandledLever with_value(HandledLever handled, const LeverNumber& number, double value_SI) {
    if (is_spread_centre(handled.lever, number))
        handled.lever.own_weight.centre_at_m = 0.0; // from now on it is somewhere
    double* found = find_number(handled, number);
    if (found == nullptr)
        return handled;
    switch (number.field) {
    case LeverField::place:
        *found = std::clamp(value_SI, 0.0, mechanics::path_length(handled.lever.path_m));
        break;
    case LeverField::direction:
        *found = simple_direction(value_SI);
        break;
    case LeverField::mass:
    case LeverField::grip:
    case LeverField::radius:
        *found = std::max(value_SI, 0.0);
        break;
    case LeverField::force: // a hand may push as well as pull; what is known or hangs turns instead
        *found = number.part.kind == PartKind::effort && !mechanics::sought_load(handled.lever)
                     ? value_SI
                     : std::max(value_SI, 0.0);
        break;
    case LeverField::torque:
    case LeverField::across:
    case LeverField::up:
        *found = value_SI;
        break;
    }
    return handled;
}

} // namespace steelyard::app

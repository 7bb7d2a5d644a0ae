#include "app/body/body_fields.h"

#include "mechanics/resistance/resistance_kinds.h"
#include "mechanics/whatif/change.h"
#include "mechanics/whatif/reach.h"

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using mechanics::BodyPoint;
using mechanics::Exercise;
using mechanics::Hinge;
using mechanics::Resistance;
using mechanics::Spot;
using mechanics::Vec3;

/// How far from the origin a fixture may stand [m]: a large room. Common sense, no source.
constexpr double kRoom_m = 10.0;

/// The loads that are changed together with one: a pair of dumbbells.
std::vector<std::size_t> together_with(const Exercise& exercise, std::size_t index) {
    for (const mechanics::Change& change :
         mechanics::possible_changes(exercise, Hinge::lumbar_flexion))
        if (const auto* size = std::get_if<mechanics::LoadSize>(&change))
            if (std::find(size->resistances.begin(), size->resistances.end(), index) !=
                size->resistances.end())
                return size->resistances;
    return {index};
}

/// The change of what-if that a number stands for; empty for places in the room.
std::optional<mechanics::Change> change_of(const Exercise& exercise, const BodyNumber& number) {
    const std::size_t index = number.part.index;
    switch (number.field) {
    case BodyField::size:
        return mechanics::LoadSize{together_with(exercise, index)};
    case BodyField::along:
        return mechanics::LoadAlongLimb{together_with(exercise, index)};
    case BodyField::slack:
        return mechanics::BandSlack{{index}};
    case BodyField::angle:
        return mechanics::JointAngle{number.hinge,
                                     mechanics::held_alike_on_both_sides(exercise, number.hinge)};
    case BodyField::forward:
    case BodyField::up:
    case BodyField::right:
        break;
    }
    return std::nullopt;
}

int part_of_place(BodyField field) {
    return field == BodyField::forward ? 0 : field == BodyField::up ? 1 : 2;
}

/// How far the hinge's angle is from that of the starting pose here [rad].
double since_start_rad(const StandingExercise& standing, Hinge hinge) {
    if (!standing.exercise.path)
        return 0.0;
    const double start = standing.exercise.body_case.pose[hinge];
    return standing.progress *
           (standing.exercise.path->end_angle_rad[mechanics::index_of(hinge)] - start);
}

std::string hinge_word(const Exercise& exercise, Hinge hinge) {
    std::string word(mechanics::hinge_info(hinge).label);
    if (mechanics::held_alike_on_both_sides(exercise, hinge))
        for (const std::string side : {"right ", "left "})
            if (word.rfind(side, 0) == 0)
                word.erase(0, side.size());
    return word;
}

} // namespace

std::optional<Vec3> fixture_place(const Exercise& exercise, std::size_t resistance) {
    const auto& resistances = exercise.body_case.resistances;
    return resistance < resistances.size() ? mechanics::fixture_of(resistances[resistance])
                                           : std::nullopt;
}

Exercise with_fixture(Exercise exercise, std::size_t resistance, Vec3 place_m) {
    if (!fixture_place(exercise, resistance))
        return exercise;
    place_m = place_m.cwiseMax(-kRoom_m).cwiseMin(kRoom_m);
    place_m.y() = std::max(place_m.y(), 0.0);
    *mechanics::fixture_in(exercise.body_case.resistances[resistance]) = place_m;
    return exercise;
}

std::vector<BodyNumber> numbers_of(const Exercise& exercise, const BodyPart& part) {
    std::vector<BodyNumber> numbers;
    if (part.kind == BodyPartKind::joint) {
        const mechanics::SegmentInfo& info = mechanics::segment_info(
            mechanics::joint_info(static_cast<mechanics::Joint>(part.index)).segment);
        for (std::size_t i = 0; i < info.hinge_count; ++i)
            numbers.push_back({part, BodyField::angle, static_cast<Hinge>(info.first_hinge + i)});
        return numbers;
    }
    const bool place = fixture_place(exercise, part.index).has_value();
    if (part.kind == BodyPartKind::load)
        for (const BodyField field : {BodyField::size, BodyField::along, BodyField::slack}) {
            const BodyNumber number{part, field};
            if (value_of({exercise, 0.0}, number))
                numbers.push_back(number);
        }
    else if (place)
        for (const BodyField field : {BodyField::forward, BodyField::up, BodyField::right})
            numbers.push_back({part, field});
    return numbers;
}

std::optional<double> value_of(const StandingExercise& standing, const BodyNumber& number) {
    if (number.field == BodyField::angle)
        return standing.exercise.body_case.pose[number.hinge] +
               since_start_rad(standing, number.hinge);
    if (const auto change = change_of(standing.exercise, number)) {
        const auto range = mechanics::range_of(*change, standing.exercise);
        return range ? std::optional(range->present) : std::nullopt;
    }
    const auto place_m = fixture_place(standing.exercise, number.part.index);
    return place_m ? std::optional((*place_m)[part_of_place(number.field)]) : std::nullopt;
}

Exercise with_value(const StandingExercise& standing, const BodyNumber& number, double value_SI) {
    const Exercise& exercise = standing.exercise;
    const auto change = change_of(exercise, number);
    if (!change) {
        auto place_m = fixture_place(exercise, number.part.index);
        if (!place_m)
            return exercise;
        (*place_m)[part_of_place(number.field)] = value_SI;
        return with_fixture(exercise, number.part.index, *place_m);
    }
    const auto range = mechanics::range_of(*change, exercise);
    if (!range)
        return exercise;
    double wanted = value_SI;
    if (number.field == BodyField::angle)
        wanted -= since_start_rad(standing, number.hinge);
    auto changed = mechanics::with_change(
        exercise, *change, std::clamp(wanted, range->allowed.low, range->allowed.high));
    return changed ? std::move(*changed) : exercise;
}

setup::Dimension dimension_of(const Exercise& exercise, const BodyNumber& number) {
    switch (number.field) {
    case BodyField::size:
        return mechanics::size_is(exercise.body_case.resistances[number.part.index]) ==
                       mechanics::SizeIs::pull
                   ? setup::Dimension::force
                   : setup::Dimension::mass;
    case BodyField::angle:
        return setup::Dimension::angle;
    case BodyField::along:
    case BodyField::slack:
    case BodyField::forward:
    case BodyField::up:
    case BodyField::right:
        break;
    }
    return setup::Dimension::length;
}

std::string name_of(const Exercise& exercise, const BodyNumber& number) {
    switch (number.field) {
    case BodyField::size:
        switch (mechanics::size_is(exercise.body_case.resistances[number.part.index])) {
        case mechanics::SizeIs::stack:
            return "stack";
        case mechanics::SizeIs::pull:
            return "pull";
        case mechanics::SizeIs::mass:
        case mechanics::SizeIs::none:
            break;
        }
        return "mass";
    case BodyField::along:
        return "from the joint";
    case BodyField::slack:
        return "slack length";
    case BodyField::forward:
        return "forward";
    case BodyField::up:
        return "up";
    case BodyField::right:
        return "right";
    case BodyField::angle:
        return hinge_word(exercise, number.hinge);
    }
    return {};
}

std::string name_of(const Exercise& exercise, const BodyPart& part) {
    if (part.kind == BodyPartKind::joint)
        return std::string(mechanics::joint_info(static_cast<mechanics::Joint>(part.index)).label);
    const auto& resistances = exercise.body_case.resistances;
    if (part.index >= resistances.size())
        return "load";
    const Resistance& resistance = resistances[part.index];
    if (part.kind == BodyPartKind::load)
        return resistance.name;
    return std::string(mechanics::fixture_name(resistance)) + " of the " + resistance.name;
}

} // namespace steelyard::app

#include "words/lever/lever_words.h"

#include "setup/lever/direction.h"
#include "setup/units/format_quantity.h"
#include "words/letter_case.h"

#include <fmt/format.h>

#include <cmath>

namespace steelyard::words {
namespace {

using mechanics::ClassReason;
using mechanics::Lever;
using mechanics::LeverClass;
using mechanics::LeverResult;
using mechanics::LeverStatus;

std::string force_text(double force_N, setup::UnitSystem units) {
    return setup::format_quantity(force_N, setup::Dimension::force, units);
}

std::string direction_of(const mechanics::Vec2& vector) {
    return setup::direction_in_words(std::atan2(vector.y(), vector.x()));
}

bool is_placed(const mechanics::Load& load) {
    return !std::holds_alternative<mechanics::Couple>(load.action);
}

/// "The load (boat)", or "Every load" of several.
std::string the_load(const Lever& lever) {
    const mechanics::Load* only = nullptr;
    for (const mechanics::Load& load : lever.loads) {
        if (!is_placed(load))
            continue;
        if (only)
            return "Every load";
        only = &load;
    }
    return only && only->name != "load" && !only->name.empty()
               ? fmt::format("The load ({})", only->name)
               : "The load";
}

std::string contradiction(const LeverResult& result, setup::UnitSystem units) {
    const bool second = result.lever_class == LeverClass::second;
    const auto length = [&](double value_m) {
        return setup::format_quantity(value_m, setup::Dimension::length, units);
    };
    return fmt::format(
        "By its places this is a {}-class lever, which usually {}. Here the oblique pull turns "
        "that "
        "round: the effort's moment arm is {}, the load's {}, so the advantage is {}. The class "
        "tells the order of the places; only the moment arms tell the force.",
        second ? "second" : "third", second ? "gains force" : "trades force for distance",
        length(result.effort_arm_m), length(result.load_arm_m.value_or(0.0)),
        setup::format_number(result.ideal_advantage.value_or(0.0)));
}

/// The load that is sought would help the effort.
std::string reversed_load(const Lever& lever, const LeverResult& result, setup::UnitSystem units) {
    const std::size_t index = *mechanics::sought_load(lever);
    const mechanics::Vec2& force_N = result.loads[index].force_N;
    const bool hangs = std::holds_alternative<mechanics::Weight>(lever.loads[index].action);
    return fmt::format("The effort does not even balance the other loads: {0} would have to pull "
                       "the other way, {1}, with {2}.{3}",
                       lever.loads[index].name, direction_of(force_N),
                       force_text(force_N.norm(), units),
                       hangs ? " No mass that hangs there does that." : "");
}

/// A support that a beam leaves.
std::string lifting(const std::string& lifts, const std::string& stays, double held_N,
                    double span_m, setup::UnitSystem units) {
    return fmt::format("The beam lifts off {0} and tips over {1}: a torque of {2} is left over "
                       "about {1}. To stay, it would have to be held down at {0} with {3}.",
                       lifts, stays,
                       setup::format_quantity(held_N * span_m, setup::Dimension::torque, units),
                       force_text(held_N, units));
}

std::string status_sentence(const Lever& lever, const LeverResult& result,
                            setup::UnitSystem units) {
    switch (result.status) {
    case LeverStatus::ok:
        return {};
    case LeverStatus::effort_through_axis:
        return "The effort's line of action passes through the axis, so its moment arm is zero: "
               "however hard it pulls, it turns nothing. Move the effort or change its direction.";
    case LeverStatus::effort_reversed:
        return fmt::format("Pulling {}, the effort would help the load. To balance it, it must "
                           "pull {} with {}.",
                           setup::direction_in_words(lever.effort.direction_rad),
                           direction_of(result.effort.force_N),
                           force_text(std::abs(result.effort_N.value_or(0.0)), units));
    case LeverStatus::coincident_points:
        return "The forces balance, but two of the three places are one, so the lever has no "
               "class.";
    case LeverStatus::friction_locks:
        return "The axle grips so hard that no effort along this line turns the lever: a stronger "
               "pull presses the axle harder, and friction grows with it. Pull with a longer "
               "moment arm or grease the axle.";
    case LeverStatus::load_through_axis:
        return fmt::format("The line of action of {} passes through the axis, so its moment arm is "
                           "zero: no size of it balances the effort. Move it or turn it.",
                           lever.loads[mechanics::sought_load(lever).value_or(0)].name);
    case LeverStatus::load_reversed:
        return reversed_load(lever, result, units);
    case LeverStatus::supports_at_one_place:
        return fmt::format("{} and {} bear the beam on one line: how they share cannot be told, "
                           "and the beam tips unless everything lies there. Move them apart.",
                           capitalised(mechanics::axis_name(lever)), lever.effort.name);
    case LeverStatus::first_support_lifts:
        return lifting(mechanics::axis_name(lever), lever.effort.name, -result.axis_reaction_N.y(),
                       result.effort_arm_m, units);
    case LeverStatus::second_support_lifts:
        return lifting(lever.effort.name, mechanics::axis_name(lever), -*result.effort_N,
                       result.effort_arm_m, units);
    }
    return {};
}

/// What each of two supports bears, and what is special about it.
std::string shares(const Lever& lever, const LeverResult& result, setup::UnitSystem units) {
    if (!result.effort_N)
        return " " + status_sentence(lever, result, units);
    std::string text = fmt::format(" {} pushes with {}, {} with {}.", mechanics::axis_name(lever),
                                   force_text(result.axis_reaction_N.norm(), units),
                                   lever.effort.name, force_text(*result.effort_N, units));
    if (result.status != LeverStatus::ok)
        text += " " + status_sentence(lever, result, units);
    return text;
}

} // namespace

std::string name_of(LeverReading reading, const Lever& lever) {
    const bool beam = mechanics::rests_on_two(lever);
    switch (reading) {
    case LeverReading::lever_class:
        return "Class";
    case LeverReading::effort:
        return beam ? "Push, " + lever.effort.name : "Effort";
    case LeverReading::effort_arm:
        return beam ? "Between the supports" : "Effort arm";
    case LeverReading::load_torque:
        return beam ? "Load torque, " + mechanics::axis_name(lever) : "Load torque";
    case LeverReading::load_arm:
        return "Load arm";
    case LeverReading::ideal_advantage:
        return "Ideal advantage";
    case LeverReading::actual_advantage:
        return "Actual advantage";
    case LeverReading::reaction:
        return beam ? "Push, " + mechanics::axis_name(lever) : "Axis reaction";
    case LeverReading::found_load:
        return "Load found";
    case LeverReading::travel:
        return "Distance trade";
    case LeverReading::friction:
        return "Axle friction";
    }
    return "Reading";
}

std::vector<LeverReading> readings_of(const Lever& lever) {
    if (mechanics::rests_on_two(lever))
        return {LeverReading::load_torque, LeverReading::effort_arm, LeverReading::effort,
                LeverReading::reaction};
    std::vector<LeverReading> readings{
        LeverReading::load_torque, LeverReading::effort_arm,      LeverReading::effort,
        LeverReading::load_arm,    LeverReading::ideal_advantage, LeverReading::actual_advantage,
        LeverReading::reaction};
    if (mechanics::sought_load(lever)) // the effort comes first: it is known
        readings = {LeverReading::effort,           LeverReading::effort_arm,
                    LeverReading::found_load,       LeverReading::load_torque,
                    LeverReading::load_arm,         LeverReading::ideal_advantage,
                    LeverReading::actual_advantage, LeverReading::reaction};
    return readings;
}

std::string_view meaning_of(LeverReading reading) {
    switch (reading) {
    case LeverReading::lever_class:
        return "Which of axis, load and effort lies between the other two.";
    case LeverReading::effort:
        return "The force that balances the lever.";
    case LeverReading::effort_arm:
        return "How far the effort's line of action passes from the axis.";
    case LeverReading::load_torque:
        return "How strongly the loads and the lever's own weight turn it.";
    case LeverReading::load_arm:
        return "How far the loads' common line of action passes from the axis.";
    case LeverReading::ideal_advantage:
        return "How many times the load exceeds the effort if the lever weighs nothing and turns "
               "freely.";
    case LeverReading::actual_advantage:
        return "How many times the load really exceeds the effort.";
    case LeverReading::reaction:
        return "The force of the support on the lever.";
    case LeverReading::found_load:
        return "The load that the known effort balances.";
    case LeverReading::travel:
        return "How far the effort moves for each step of the load.";
    case LeverReading::friction:
        return "What the axle takes of the work put in.";
    }
    return "";
}

std::string class_name(const LeverResult& result) {
    if (result.class_reason == ClassReason::two_supports)
        return "Two supports";
    if (!result.lever_class)
        return "No class";
    switch (*result.lever_class) {
    case LeverClass::first:
        return "First class";
    case LeverClass::second:
        return "Second class";
    case LeverClass::third:
        return "Third class";
    }
    return "No class";
}

std::string class_lever(const LeverResult& result) {
    if (result.class_reason == ClassReason::two_supports)
        return "beam on two supports";
    if (!result.lever_class)
        return "lever without a class";
    std::string name = class_name(result); // "First class"
    name.front() = static_cast<char>(name.front() - 'A' + 'a');
    name[name.find(' ')] = '-';
    return name + " lever";
}

std::string found_load_text(const Lever& lever, const LeverResult& result,
                            setup::UnitSystem units) {
    if (!result.load_found)
        return "none";
    const mechanics::Load& load = lever.loads[mechanics::sought_load(lever).value_or(0)];
    if (std::holds_alternative<mechanics::Couple>(load.action))
        return setup::format_quantity(*result.load_found, setup::Dimension::torque, units);
    const std::string force = force_text(*result.load_found, units);
    if (!std::holds_alternative<mechanics::Weight>(load.action) || *result.load_found < 0.0)
        return force;
    return fmt::format("{} ({})",
                       setup::format_quantity(*result.load_found / lever.gravity_m_s2,
                                              setup::Dimension::mass, units),
                       force);
}

std::string class_sentence(const Lever& lever, const LeverResult& result) {
    const std::string load = the_load(lever);
    switch (result.class_reason) {
    case ClassReason::axis_between:
        return fmt::format("The axis is between {} and the effort.",
                           load == "Every load" ? "the loads" : "t" + load.substr(1));
    case ClassReason::load_between:
        return load + " is between axis and effort.";
    case ClassReason::effort_between:
        return fmt::format("The effort is between axis and {}.",
                           load == "Every load" ? "every load" : "t" + load.substr(1));
    case ClassReason::no_placed_load:
        return "Nothing hangs on the lever or pulls at a place of it, so there is no order of "
               "axis, "
               "load and effort to name a class by.";
    case ClassReason::load_at_axis:
        return load + " is at the axis itself: it turns nothing, and there is no order of three "
                      "places.";
    case ClassReason::effort_at_axis:
        return "The effort is at the axis itself: it turns nothing, and there is no order of three "
               "places.";
    case ClassReason::effort_at_load:
        return load + " and the effort act at one place, so there is no order of three places.";
    case ClassReason::loads_disagree:
        return "The loads lie so that each would name another class.";
    case ClassReason::two_supports:
        return fmt::format("No lever class: nothing turns about one axis. {} and {} share the "
                           "beam and its loads.",
                           capitalised(mechanics::axis_name(lever)), lever.effort.name);
    }
    return {};
}

std::string class_promise(LeverClass lever_class) {
    switch (lever_class) {
    case LeverClass::first:
        return "A first-class lever gains force or distance, by which side is longer.";
    case LeverClass::second:
        return "A second-class lever usually gains force and trades distance for it.";
    case LeverClass::third:
        return "A third-class lever usually trades force for distance and speed.";
    }
    return {};
}

std::vector<std::string> lever_messages(const Lever& lever, const LeverResult& result,
                                        setup::UnitSystem units) {
    std::vector<std::string> messages;
    const std::string status = status_sentence(lever, result, units);
    if (!status.empty())
        messages.push_back(status);
    if (!result.lever_class && !mechanics::rests_on_two(lever))
        messages.push_back(class_sentence(lever, result));
    // Without any effort arm the class is beside the point.
    if (result.advantage_contradicts_class && result.status != LeverStatus::effort_through_axis)
        messages.push_back(contradiction(result, units));
    const bool seeks_effort = std::holds_alternative<mechanics::SoughtEffort>(lever.sought);
    if (seeks_effort && result.status != LeverStatus::effort_through_axis && result.effort_N == 0.0)
        messages.push_back("The loads balance each other; no effort is needed.");
    const bool grips = lever.friction.coefficient * lever.friction.radius_m > 0.0;
    if (grips && seeks_effort && result.effort_N && result.effort_holding_N &&
        std::abs(*result.effort_N - *result.effort_holding_N) > 1e-9 * std::abs(*result.effort_N))
        messages.push_back(fmt::format("With axle friction the lever stays where it is for any "
                                       "effort from {} to {}; shown is the one that just moves the "
                                       "load.",
                                       force_text(*result.effort_holding_N, units),
                                       force_text(*result.effort_N, units)));
    return messages;
}

std::string lever_summary(const Lever& lever, const LeverResult& result, setup::UnitSystem units) {
    std::string text = fmt::format("{}: {}", class_name(result), class_sentence(lever, result));
    if (mechanics::rests_on_two(lever))
        return text + shares(lever, result, units);
    if (result.load_found)
        text += fmt::format(" The load found ({}) is {}.",
                            lever.loads[*mechanics::sought_load(lever)].name,
                            found_load_text(lever, result, units));
    if (result.effort_N && result.status != LeverStatus::effort_through_axis) {
        text += fmt::format(" The effort is {}, {}", force_text(std::abs(*result.effort_N), units),
                            direction_of(result.effort_N == 0.0
                                             ? mechanics::Vec2(std::cos(lever.effort.direction_rad),
                                                               std::sin(lever.effort.direction_rad))
                                             : result.effort.force_N));
        text += fmt::format(
            ", on an arm of {}.",
            setup::format_quantity(result.effort_arm_m, setup::Dimension::length, units));
    }
    if (result.actual_advantage)
        text +=
            fmt::format(" The advantage is {}.", setup::format_number(*result.actual_advantage));
    if (result.status != LeverStatus::ok && result.status != LeverStatus::coincident_points)
        text += " " + status_sentence(lever, result, units);
    return text;
}

} // namespace steelyard::words

#include "lesson/lesson_change.h"

#include "mechanics/resistance/resistance_kinds.h"
#include "setup/body/body_names.h"

#include <fmt/format.h>

#include <algorithm>

namespace steelyard::lesson {
namespace {

namespace mech = mechanics;

/// A fault of a change, its key below the step.
setup::InputError fault(const LessonChange& change, const std::string& key, std::string found,
                        std::string expected, std::string mend = {}) {
    setup::InputError error;
    error.line = change.line;
    error.key = key;
    error.found = std::move(found);
    error.expected = std::move(expected);
    error.mend = std::move(mend);
    return error;
}

setup::InputError unknown_part(const LessonChange& change, const std::vector<std::string>& known) {
    const std::vector<std::string_view> names(known.begin(), known.end());
    const std::string nearest = setup::nearest_spelling(change.part, names);
    std::string list;
    for (const std::string& name : known)
        list += (list.empty() ? "\"" : ", \"") + name + "\"";
    return fault(change, "change.part", fmt::format("\"{}\"", change.part),
                 "a part of this setup: " + list,
                 nearest.empty() ? "" : fmt::format("Did you mean \"{}\"?", nearest));
}

/// What a change of one part can set: a key and where its value goes.
struct Slot {
    std::string_view key;
    double* value = nullptr;
};

/// What a part has, or that there is no such part.
using Slots = tl::expected<std::vector<Slot>, setup::InputError>;

bool has_key(const std::vector<Slot>& slots, std::string_view key) {
    return std::any_of(slots.begin(), slots.end(),
                       [&](const Slot& slot) { return slot.key == key; });
}

setup::InputError no_such_key(const LessonChange& change, const std::string& key,
                              const std::vector<Slot>& slots) {
    std::string list;
    for (const Slot& one : slots)
        if (list.find(one.key) == std::string::npos)
            list += fmt::format("{}{}", list.empty() ? "" : ", ", one.key);
    return fault(change, "change." + key, fmt::format("{} of \"{}\"", key, change.part),
                 list.empty() ? "a part that can be changed" : "one of: " + list);
}

std::vector<Slot> slots_of(mech::Load& load) {
    if (auto* weight = std::get_if<mech::Weight>(&load.action))
        return {{"at", &weight->at_m}, {"mass", &weight->mass_kg}};
    if (auto* force = std::get_if<mech::PointForce>(&load.action))
        return {{"at", &force->at_m},
                {"force", &force->magnitude_N},
                {"direction", &force->direction_rad}};
    return {{"torque", &std::get<mech::Couple>(load.action).torque_Nm}};
}

/// Of a load that is sought: its size is found, not set.
std::vector<Slot> without_size(std::vector<Slot> slots) {
    slots.erase(std::remove_if(
                    slots.begin(), slots.end(),
                    [](const Slot& slot) { return slot.key != "at" && slot.key != "direction"; }),
                slots.end());
    return slots;
}

Slots slots_in(const LessonChange& change, mech::Lever& lever) {
    if (change.part == "axis")
        return std::vector<Slot>{{"at", &lever.axis_at_m}};
    if (change.part == "effort") {
        std::vector<Slot> slots{{"at", &lever.effort.at_m}};
        if (!mech::rests_on_two(lever))
            slots.push_back({"direction", &lever.effort.direction_rad});
        if (auto* known = std::get_if<mech::SoughtLoad>(&lever.sought))
            slots.push_back({"force", &known->effort_N});
        return slots;
    }
    if (change.part == "own weight")
        return std::vector<Slot>{{"mass", &lever.own_weight.mass_kg}};
    std::vector<std::string> known{"axis", "effort", "own weight"};
    for (std::size_t i = 0; i < lever.loads.size(); ++i) {
        mech::Load& load = lever.loads[i];
        if (load.name == change.part)
            return mech::sought_load(lever) == i ? without_size(slots_of(load)) : slots_of(load);
        known.push_back(load.name);
    }
    return tl::make_unexpected(unknown_part(change, known));
}

/// The numbers of a resistance that a lesson may change.
std::vector<Slot> slots_of(mech::Resistance& resistance) {
    std::vector<Slot> slots;
    if (double* size = mech::size_in(resistance))
        slots.push_back({mech::size_is(resistance) == mech::SizeIs::pull ? "force" : "mass", size});
    if (double* slack_m = mech::slack_length_in(resistance))
        slots.push_back({"slack_length", slack_m});
    if (mech::Vec3* fixture_m = mech::fixture_in(resistance)) {
        slots.push_back({"forward", &fixture_m->x()});
        slots.push_back({"up", &fixture_m->y()});
        slots.push_back({"right", &fixture_m->z()});
    }
    return slots;
}

Slots slots_in(const LessonChange& change, setup::BodySetup& setup) {
    mech::BodyCase& body_case = setup.exercise.body_case;
    std::vector<std::string> known;
    for (mech::Resistance& resistance : body_case.resistances) {
        if (resistance.name == change.part)
            return slots_of(resistance);
        known.push_back(resistance.name);
    }
    std::vector<Slot> slots;
    for (const mech::Hinge hinge : setup::hinges_named(change.part))
        slots.push_back({"angle", &body_case.pose.angle_rad[mech::index_of(hinge)]});
    if (!slots.empty())
        return slots;
    for (const std::string_view name : setup::all_hinge_names())
        known.emplace_back(name);
    return tl::make_unexpected(unknown_part(change, known));
}

Slots slots_in(const LessonChange& change, setup::Setup& setup) {
    if (auto* lever = std::get_if<setup::LeverSetup>(&setup))
        return slots_in(change, lever->lever);
    return slots_in(change, std::get<setup::BodySetup>(setup));
}

} // namespace

setup::Dimension dimension_of(std::string_view key) {
    if (key == "mass")
        return setup::Dimension::mass;
    if (key == "force")
        return setup::Dimension::force;
    if (key == "torque")
        return setup::Dimension::torque;
    if (key == "angle" || key == "direction")
        return setup::Dimension::angle;
    return setup::Dimension::length;
}

std::optional<setup::InputError> apply_change(const LessonChange& change, setup::Setup& setup) {
    const Slots slots = slots_in(change, setup);
    if (!slots)
        return slots.error();
    for (const LessonChange::Value& value : change.values) {
        if (!has_key(*slots, value.key))
            return no_such_key(change, value.key, *slots);
        for (const Slot& slot : *slots)
            if (slot.key == value.key)
                *slot.value = value.written.value_SI;
    }
    return std::nullopt;
}

tl::expected<double, setup::InputError> present_value(const LessonChange& change,
                                                      const std::string& key, setup::Setup setup) {
    const Slots slots = slots_in(change, setup);
    if (!slots)
        return tl::make_unexpected(slots.error());
    for (const Slot& slot : *slots)
        if (slot.key == key)
            return *slot.value;
    return tl::make_unexpected(no_such_key(change, key, *slots));
}

} // namespace steelyard::lesson

#include "lesson/lesson_quantity.h"
#include "mechanics/range/sweep.h"
#include "mechanics/resistance/resistance_kinds.h"
#include "setup/body/body_names.h"
#include "setup/lever/direction.h"

#include <fmt/format.h>

#include <algorithm>

namespace steelyard::lesson {
namespace {

namespace mech = mechanics;
using Value = LessonChange::Value;

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

/// Sets every value of a change, or says which key this part does not have.
std::optional<setup::InputError> set_slots(const LessonChange& change,
                                           const std::vector<Slot>& slots) {
    for (const Value& value : change.values) {
        const auto slot = std::find_if(slots.begin(), slots.end(),
                                       [&](const Slot& one) { return one.key == value.key; });
        if (slot != slots.end()) {
            *slot->value = value.written.value_SI;
            continue;
        }
        std::string list;
        for (const Slot& one : slots)
            list += fmt::format("{}{}", list.empty() ? "" : ", ", one.key);
        return fault(change, "change." + value.key,
                     fmt::format("{} of \"{}\"", value.key, change.part),
                     list.empty() ? "a part that can be changed" : "one of: " + list);
    }
    return std::nullopt;
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

std::optional<setup::InputError> change_lever(const LessonChange& change, mech::Lever& lever) {
    if (change.part == "axis")
        return set_slots(change, {{"at", &lever.axis_at_m}});
    if (change.part == "effort")
        return set_slots(change,
                         {{"at", &lever.effort.at_m}, {"direction", &lever.effort.direction_rad}});
    if (change.part == "own weight")
        return set_slots(change, {{"mass", &lever.own_weight.mass_kg}});
    std::vector<std::string> known{"axis", "effort", "own weight"};
    for (mech::Load& load : lever.loads) {
        if (load.name == change.part)
            return set_slots(change, slots_of(load));
        known.push_back(load.name);
    }
    return unknown_part(change, known);
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

std::optional<setup::InputError> change_body(const LessonChange& change, setup::BodySetup& setup) {
    mech::BodyCase& body_case = setup.exercise.body_case;
    std::vector<std::string> known;
    for (mech::Resistance& resistance : body_case.resistances) {
        if (resistance.name == change.part)
            return set_slots(change, slots_of(resistance));
        known.push_back(resistance.name);
    }
    const std::vector<mech::Hinge> hinges = setup::hinges_named(change.part);
    for (const mech::Hinge hinge : hinges)
        if (auto wrong =
                set_slots(change, {{"angle", &body_case.pose.angle_rad[mech::index_of(hinge)]}}))
            return wrong;
    if (!hinges.empty())
        return std::nullopt;
    for (const std::string_view name : setup::all_hinge_names())
        known.emplace_back(name);
    return unknown_part(change, known);
}

std::optional<setup::InputError> apply(const LessonChange& change, setup::Setup& setup) {
    if (auto* lever = std::get_if<setup::LeverSetup>(&setup))
        return change_lever(change, lever->lever);
    return change_body(change, std::get<setup::BodySetup>(setup));
}

/// The axis to look at among those of the setup.
tl::expected<std::size_t, setup::InputError> chosen_axis(const std::string& name,
                                                         const setup::BodySetup& setup) {
    std::vector<std::string_view> names;
    for (std::size_t i = 0; i < setup.axes.size(); ++i) {
        const std::string_view axis = mech::hinge_info(setup.axes[i]).name;
        if (axis == name || setup::without_side(axis) == name)
            return i;
        names.push_back(axis);
    }
    std::string list;
    for (const std::string_view one : names)
        list += fmt::format("{}\"{}\"", list.empty() ? "" : ", ", one);
    const std::string nearest = setup::nearest_spelling(name, names);
    return tl::make_unexpected(setup::InputError{
        "", 0, 0, "axis", fmt::format("\"{}\"", name), "one of this setup's axes: " + list,
        nearest.empty() ? "" : fmt::format("Did you mean \"{}\"?", nearest)});
}

std::optional<setup::InputError> look_at_body(const LessonStep& step, const LessonStage* before,
                                              LessonStage& stage) {
    const auto& setup = std::get<setup::BodySetup>(stage.setup);
    stage.view = step.view.value_or(step.as_before() && before ? before->view : setup.view);
    stage.progress = step.progress.value_or(step.as_before() && before ? before->progress : 0.0);
    stage.axis = step.as_before() && before ? before->axis : 0;
    if (step.axis.empty())
        return std::nullopt;
    auto axis = chosen_axis(step.axis, setup);
    if (!axis)
        return axis.error();
    stage.axis = *axis;
    return std::nullopt;
}

setup::InputError key_without_body(const std::string& key) {
    return {
        "", 0, 0, key, key + " of a lever", "a body setup", "Levers have no path and one axis."};
}

} // namespace

tl::expected<LessonStage, setup::InputError>
make_stage(const LessonStep& step, const LessonStage* before, const setup::Setup* base) {
    LessonStage stage;
    if (step.own)
        stage.setup = *step.own;
    else if (base)
        stage.setup = *base;
    else if (before)
        stage.setup = before->setup;
    else
        return tl::make_unexpected(setup::InputError{"", 0, 0, "setup", "no setup",
                                                     "the name of a setup, such as \"seesaw\"",
                                                     "The first step must have one."});
    for (const LessonChange& change : step.changes)
        if (auto wrong = apply(change, stage.setup))
            return tl::make_unexpected(*std::move(wrong));
    if (std::holds_alternative<setup::BodySetup>(stage.setup)) {
        if (auto wrong = look_at_body(step, before, stage))
            return tl::make_unexpected(*std::move(wrong));
    } else if (step.progress || !step.axis.empty() || step.view) {
        return tl::make_unexpected(key_without_body(step.progress        ? "progress"
                                                    : !step.axis.empty() ? "axis"
                                                                         : "view"));
    }
    if (const auto solved = solve_stage(stage); !solved)
        return tl::make_unexpected(setup::InputError{
            "", step.changes.empty() ? 0 : step.changes.front().line, 0,
            step.changes.empty() ? "setup" : "change",
            "a setup that cannot be: " + solved.error().key, solved.error().expected, ""});
    return stage;
}

tl::expected<SolvedStage, mech::MechanicsError> solve_stage(const LessonStage& stage) {
    SolvedStage solved;
    solved.stage = &stage;
    if (solved.is_lever()) {
        auto lever = mech::solve_lever(solved.lever_setup().lever);
        if (!lever)
            return tl::make_unexpected(lever.error());
        solved.lever = *std::move(lever);
        return solved;
    }
    const mech::Exercise& exercise = solved.body_setup().exercise;
    solved.posed = exercise.body_case;
    if (exercise.path)
        solved.posed.pose = mech::pose_at(exercise.body_case.pose, *exercise.path, stage.progress);
    auto body = mech::solve_body(solved.posed);
    if (!body)
        return tl::make_unexpected(body.error());
    solved.body = *std::move(body);
    return solved;
}

} // namespace steelyard::lesson

#include "lesson/lesson_change.h"
#include "lesson/lesson_quantity.h"
#include "mechanics/range/sweep.h"
#include "setup/body/body_names.h"

#include <fmt/format.h>

#include <algorithm>

namespace steelyard::lesson {
namespace {

namespace mech = mechanics;

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
        if (auto wrong = apply_change(change, stage.setup))
            return tl::make_unexpected(*std::move(wrong));
    if (std::holds_alternative<setup::BodySetup>(stage.setup)) {
        if (auto wrong = look_at_body(step, before, stage))
            return tl::make_unexpected(*std::move(wrong));
    } else if (step.progress || !step.axis.empty() || step.view) {
        return tl::make_unexpected(key_without_body(step.progress        ? "progress"
                                                    : !step.axis.empty() ? "axis"
                                                                         : "view"));
    }
    const auto solved = solve_stage(stage);
    if (!solved)
        return tl::make_unexpected(setup::InputError{
            "", step.changes.empty() ? 0 : step.changes.front().line, 0,
            step.changes.empty() ? "setup" : "change",
            "a setup that cannot be: " + solved.error().key, solved.error().expected, ""});
    if (auto* lever = std::get_if<setup::LeverSetup>(&stage.setup))
        mech::fill_in_found_load(solved->lever, lever->lever);
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

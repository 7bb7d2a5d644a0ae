#include "app/body/muscle_arms.h"

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using mechanics::Hinge;
using setup::GivenArm;

/// A given arm is one of the right side or the middle, and holds for both sides.
bool is_at(const GivenArm& arm, Hinge hinge) {
    return arm.hinge == hinge || arm.hinge == mechanics::hinge_info(hinge).mirror;
}

/// The muscle of the chosen axis that has this name; it knows the hinge that its file has.
const mechanics::Muscle* shown_muscle(const BodyModel& model, const std::string& name) {
    const auto& shown = model.shown.muscles;
    const auto found = std::find_if(shown.begin(), shown.end(),
                                    [&](const auto& muscle) { return muscle.name == name; });
    return found == shown.end() ? nullptr : &*found;
}

bool turns_negative(const BodyModel& model, const std::string& muscle) {
    for (const GivenArm& arm : model.state.setup.person.arms)
        if (arm.muscle == muscle && is_at(arm, model.axis()))
            return std::signbit(arm.arm_m);
    for (const mechanics::Pull& pull : model.at_axis->pulls)
        if (pull.muscle == muscle)
            return std::signbit(pull.arm_m);
    return false;
}

} // namespace

std::vector<MuscleArm> muscle_arms(const BodyModel& model) {
    std::vector<MuscleArm> arms;
    if (!model.at_axis)
        return arms;
    const std::vector<GivenArm>& given = model.state.setup.person.arms;
    for (const mechanics::Pull& pull : model.at_axis->pulls) {
        const mechanics::Muscle* muscle = shown_muscle(model, pull.muscle);
        if (muscle == nullptr || muscle->arms.empty())
            continue; // known by name alone
        const bool is_given = std::any_of(given.begin(), given.end(), [&](const GivenArm& arm) {
            return arm.muscle == pull.muscle && is_at(arm, model.axis());
        });
        arms.push_back({pull.muscle, std::abs(pull.arm_m), is_given});
    }
    return arms;
}

setup::ExerciseEdit with_arm(const BodyModel& model, const MuscleArm& arm, double size_m) {
    setup::Person person = model.state.setup.person;
    const double arm_m = turns_negative(model, arm.muscle) ? -size_m : size_m;
    const auto old = std::find_if(person.arms.begin(), person.arms.end(), [&](const auto& one) {
        return one.muscle == arm.muscle && is_at(one, model.axis());
    });
    if (old != person.arms.end())
        old->arm_m = arm_m;
    else if (const mechanics::Muscle* muscle = shown_muscle(model, arm.muscle))
        person.arms.push_back({arm.muscle, muscle->hinge.value_or(model.axis()), arm_m});
    return setup::ChangePerson{person};
}

setup::ExerciseEdit with_arms_on_file(const BodyModel& model) {
    setup::Person person = model.state.setup.person;
    const auto here = [&](const GivenArm& arm) { return is_at(arm, model.axis()); };
    person.arms.erase(std::remove_if(person.arms.begin(), person.arms.end(), here),
                      person.arms.end());
    return setup::ChangePerson{person};
}

} // namespace steelyard::app

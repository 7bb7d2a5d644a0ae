#include "mechanics/muscle/movers.h"

#include <algorithm>

namespace steelyard::mechanics {
namespace {

bool is_listed(const std::vector<std::string>& list, const std::string& name) {
    return std::find(list.begin(), list.end(), name) != list.end();
}

/// What stands in the way of naming forces in an action.
std::optional<MissingMovers> missing_from(const std::vector<Muscle>& muscles,
                                          const JointAction& action, const PosedSide& posed) {
    MissingMovers missing{action.name, {}, {}};
    for (const std::string& mover : action.movers) {
        const auto muscle = std::find_if(muscles.begin(), muscles.end(),
                                         [&](const Muscle& one) { return one.name == mover; });
        if (muscle == muscles.end() || !muscle->is_known())
            missing.without_arms.push_back(mover);
        else if (!arm_is_known(*muscle, posed))
            missing.arms_elsewhere.push_back(mover);
    }
    if (missing.without_arms.empty() && missing.arms_elsewhere.empty())
        return std::nullopt;
    return missing;
}

/// Files speak of the right side, so a hinge of the left reads them in its mirror.
PosedSide side_of(const std::vector<Muscle>& muscles, const Pose& pose, Hinge hinge) {
    return {pose, std::any_of(muscles.begin(), muscles.end(), [&](const Muscle& muscle) {
                return muscle.hinge && *muscle.hinge != hinge;
            })};
}

} // namespace

const JointAction* action_asked(const std::vector<Muscle>& muscles, const Pose& pose, Hinge hinge,
                                double muscle_Nm) {
    const TurnSense sense = muscle_Nm < 0.0 ? TurnSense::negative : TurnSense::positive;
    const PosedSide posed = side_of(muscles, pose, hinge);
    for (const Muscle& muscle : muscles)
        for (const JointAction& action : muscle.actions)
            if (action.turns == sense && lies_within(posed, action.where))
                return &action;
    return nullptr;
}

Movers movers_of(const std::vector<Muscle>& muscles, const Pose& pose, Hinge hinge,
                 double muscle_Nm) {
    const auto states_actions = [](const Muscle& muscle) { return !muscle.actions.empty(); };
    if (!muscles.empty() && std::none_of(muscles.begin(), muscles.end(), states_actions))
        return {std::vector<bool>(muscles.size(), true), std::nullopt};
    const PosedSide posed = side_of(muscles, pose, hinge);
    Movers movers{std::vector<bool>(muscles.size(), false), MissingMovers{}};
    const JointAction* action = action_asked(muscles, pose, hinge, muscle_Nm);
    if (action == nullptr)
        return movers;
    for (std::size_t i = 0; i < muscles.size(); ++i)
        movers.take_part[i] = (is_listed(action->movers, muscles[i].name) ||
                               is_listed(action->helpers, muscles[i].name)) &&
                              arm_is_known(muscles[i], posed);
    movers.missing = missing_from(muscles, *action, posed);
    return movers;
}

} // namespace steelyard::mechanics

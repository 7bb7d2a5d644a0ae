#include "mechanics/range/repetition.h"

#include "mechanics/body/solve_pose.h"

namespace steelyard::mechanics {

Repetition::Repetition(const BodyCase& body_case, const std::optional<PosePath>& path,
                       const std::optional<Tempo>& tempo)
    : body_case_(body_case), path_(path), tempo_(tempo) {}

tl::expected<void, MechanicsError> Repetition::check() const {
    if (auto checked = check_case(body_case_); !checked)
        return checked;
    if (auto checked = check_pose(body_case_.body, body_case_.pose); !checked || !path_)
        return checked;
    return check_way(body_case_, *path_);
}

double Repetition::end() const {
    if (!path_)
        return 0.0;
    return tempo_ ? duration_s(*tempo_) : 1.0;
}

TempoState Repetition::state_at(double place) const {
    return path_ && tempo_ ? tempo_state(*tempo_, place) : TempoState{place, 0.0, 0.0};
}

Pose Repetition::pose_at(double place) const {
    return path_ ? mechanics::pose_at(body_case_.pose, *path_, state_at(place).progress)
                 : body_case_.pose;
}

tl::expected<void, MechanicsError> Repetition::solve_at(double place, BodyResult& result) const {
    if (!path_ || !tempo_)
        return solve_pose(body_case_, body_case_.body, pose_at(place), nullptr, result);
    Pose pose;
    Motion motion;
    pose_and_motion_at(body_case_.pose, *path_, state_at(place), pose, motion);
    return solve_pose(body_case_, body_case_.body, pose, &motion, result);
}

} // namespace steelyard::mechanics

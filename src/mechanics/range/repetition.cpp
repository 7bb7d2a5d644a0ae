#include "mechanics/range/repetition.h"

#include "mechanics/body/solve_pose.h"
#include "mechanics/bounds.h"

namespace steelyard::mechanics {

Repetition::Repetition(const BodyCase& body_case, const std::optional<PosePath>& path,
                       const std::optional<Tempo>& tempo)
    : body_case_(body_case), path_(path), tempo_(tempo) {}

tl::expected<void, MechanicsError> Repetition::check() const {
    if (auto checked = check_case(body_case_); !checked)
        return checked;
    if (auto checked = check_pose(body_case_.body, body_case_.pose); !checked)
        return checked;
    if (!path_)
        return {};
    const Pose end_pose = mechanics::pose_at(body_case_.pose, *path_, 1.0);
    if (auto checked = check_pose(body_case_.body, end_pose); !checked)
        return tl::unexpected(within_key("end", checked.error()));
    return {};
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
    const Pose pose = pose_at(place);
    if (!path_ || !tempo_)
        return solve_pose(body_case_, body_case_.body, pose, nullptr, result);
    const TempoState state = state_at(place);
    Motion motion;
    for (std::size_t i = 0; i < kHingeCount; ++i) {
        const double way_rad = path_->end_angle_rad[i] - body_case_.pose.angle_rad[i];
        motion.rate_rad_s[i] = state.rate_1_s * way_rad;
        motion.acceleration_rad_s2[i] = state.acceleration_1_s2 * way_rad;
    }
    return solve_pose(body_case_, body_case_.body, pose, &motion, result);
}

} // namespace steelyard::mechanics

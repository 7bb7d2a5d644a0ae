#include "mechanics/whatif/one_end.h"

namespace steelyard::mechanics {

Exercise held_at(const Exercise& exercise, PoseEnds ends) {
    Exercise held = exercise;
    if (ends == PoseEnds::both || !exercise.path)
        return held;
    if (ends == PoseEnds::end)
        held.body_case.pose.angle_rad = exercise.path->end_angle_rad;
    held.path.reset();
    return held;
}

Exercise with_end_of(const Exercise& exercise, PoseEnds ends, const Exercise& held) {
    if (ends == PoseEnds::both || !exercise.path)
        return held;
    Exercise changed = exercise;
    PerHinge& angles_rad =
        ends == PoseEnds::start ? changed.body_case.pose.angle_rad : changed.path->end_angle_rad;
    if (auto& halfway_rad = changed.path->halfway_rad)
        for (std::size_t i = 0; i < kHingeCount; ++i)
            (*halfway_rad)[i] += 0.5 * (held.body_case.pose.angle_rad[i] - angles_rad[i]);
    angles_rad = held.body_case.pose.angle_rad;
    return changed;
}

} // namespace steelyard::mechanics

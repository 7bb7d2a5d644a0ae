#include "mechanics/muscle/muscle_sweep.h"

#include "mechanics/range/repetition.h"

namespace steelyard::mechanics {

tl::expected<std::vector<MuscleStep>, MechanicsError>
sweep_muscles(const BodyCase& body_case, const std::optional<PosePath>& path,
              const std::optional<Tempo>& tempo, Hinge hinge, const std::vector<Muscle>& muscles,
              SharingRule rule, std::size_t steps) {
    const Repetition repetition(body_case, path, tempo);
    if (auto checked = repetition.check(); !checked)
        return tl::unexpected(checked.error());
    if (steps < 2 || steps > kMaxSteps)
        return tl::unexpected(
            MechanicsError{Fault::out_of_range, "steps", "from 2 to 100000 steps"});
    std::vector<MuscleStep> rows;
    rows.reserve(steps);
    BodyCase here = body_case;
    BodyResult result;
    for (std::size_t i = 0; i < steps; ++i) {
        const double place =
            repetition.end() * static_cast<double>(i) / static_cast<double>(steps - 1);
        if (auto solved = repetition.solve_at(place, result); !solved)
            return tl::unexpected(solved.error());
        here.pose = repetition.pose_at(place);
        auto at = solve_muscles_at(here, result, hinge, muscles, rule);
        if (!at)
            return tl::unexpected(at.error());
        rows.push_back({repetition.state_at(place).progress, tempo ? place : 0.0, here.pose[hinge],
                        result.muscle(hinge), std::move(at->solution)});
    }
    return rows;
}

} // namespace steelyard::mechanics

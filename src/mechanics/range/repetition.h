#pragma once
// A repetition as a function of one number: the time when it has a tempo, else the progress.

#include "mechanics/range/sweep.h"

#include <optional>

namespace steelyard::mechanics {

/// Looks into what it is made from; that must outlive it.
class Repetition {
public:
    /// @param path   empty: the pose is held, and the only place is 0
    /// @param tempo  empty, or without a path: at rest in every place
    Repetition(const BodyCase& body_case, const std::optional<PosePath>& path,
               const std::optional<Tempo>& tempo);

    /// Checks the case and the poses at both ends, once for all places.
    tl::expected<void, MechanicsError> check() const;

    /// The last place; the first is 0. [s] with a tempo, else the progress 1, or 0 without a path.
    double end() const;

    /// Where on the path a place is, and how fast it is passed (0 without a tempo).
    TempoState state_at(double place) const;
    Pose pose_at(double place) const;

    /// Solves one place; check must have let it pass.
    /// @param result  overwritten; meaningless after an error
    tl::expected<void, MechanicsError> solve_at(double place, BodyResult& result) const;

private:
    const BodyCase& body_case_;
    const std::optional<PosePath>& path_;
    const std::optional<Tempo>& tempo_;
};

} // namespace steelyard::mechanics

#include "mechanics/whatif/lever_sweep.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <utility>

namespace steelyard::mechanics {
namespace {

/// An effort below this is none [N].
constexpr double kNoEffort_N = 1.0e-9;

tl::unexpected<Limit> ends_here(LimitKind kind, const char* expected) {
    return tl::unexpected(Limit{kind, std::nullopt, expected});
}

bool grew_past_measure(const std::optional<double>& now, const std::optional<double>& present) {
    return present && (!now || *now > kMostTimesPresent * *present);
}

/// One lever and the change that is swept.
class Sweeper {
public:
    Sweeper(const Lever& lever, const LeverChange& change, const LeverResult& present)
        : lever_(lever), change_(change), present_(present) {}

    /// The effort at a setting, or why the sweep does not go there.
    AllowedReading effort_at(double value) const {
        const auto solved = solve_lever(with_change(lever_, change_, value));
        if (!solved)
            return ends_here(LimitKind::cannot_be, "a lever that can be computed with");
        if (!solved->effort_N ||
            std::abs(*solved->effort_N) > kMostTimesPresent * std::abs(*present_.effort_N))
            return ends_here(LimitKind::cap, "an effort with an arm");
        if (*solved->effort_N * *present_.effort_N <= 0.0)
            return ends_here(LimitKind::cannot_be, "an effort that pulls the same way");
        if (grew_past_measure(solved->ideal_advantage, present_.ideal_advantage) ||
            grew_past_measure(solved->actual_advantage, present_.actual_advantage))
            return ends_here(LimitKind::cap, "a load with an arm");
        return std::abs(*solved->effort_N);
    }

    /// The step at a setting; empty where the sweep does not go.
    std::optional<LeverSweepStep> step_at(double value) const {
        const auto solved = solve_lever(with_change(lever_, change_, value));
        if (!solved || !effort_at(value))
            return std::nullopt;
        return LeverSweepStep{value, std::abs(*solved->effort_N), solved->ideal_advantage,
                              solved->actual_advantage};
    }

private:
    const Lever& lever_;
    const LeverChange& change_;
    const LeverResult& present_;
};

/// The part of the range in which the present setting lies, if that is more than a point.
std::optional<AllowedSpan> span_around(const ChangeRange& range, const ReadingAt& reading_at) {
    for (AllowedSpan& part : allowed_spans(reading_at, range.allowed, range.present))
        if (range.present >= part.span.low && range.present <= part.span.high &&
            part.span.high > part.span.low)
            return std::move(part);
    return std::nullopt;
}

tl::unexpected<MechanicsError> no_room(const LeverChange& change, const Lever& lever) {
    return tl::make_unexpected(MechanicsError{Fault::inconsistent, "effort",
                                              "room to change the " + describe(change, lever)});
}

} // namespace

tl::expected<LeverSweep, MechanicsError> sweep_lever(const Lever& lever, const LeverChange& change,
                                                     std::size_t count) {
    assert(count >= 2);
    const auto present = solve_lever(lever);
    if (!present)
        return tl::make_unexpected(present.error());
    if (sought_load(lever))
        return tl::make_unexpected(MechanicsError{
            Fault::inconsistent, "effort", "an effort that is sought: this lever's is known"});
    if (!present->effort_N || std::abs(*present->effort_N) < kNoEffort_N) {
        return tl::make_unexpected(
            MechanicsError{Fault::inconsistent, "effort",
                           "an effort that balances the load, to begin the sweep with"});
    }
    const Sweeper sweeper(lever, change, *present);
    const ChangeRange range = range_of(change, lever);
    const auto here = sweeper.step_at(range.present);
    const auto part = span_around(range, [&](double value) { return sweeper.effort_at(value); });
    if (!here || !part)
        return no_room(change, lever);
    LeverSweep sweep{range.unit,
                     *here,
                     {},
                     part->below.kind == LimitKind::cap,
                     part->above.kind == LimitKind::cap};
    const double step = (part->span.high - part->span.low) / static_cast<double>(count - 1);
    for (std::size_t i = 0; i < count; ++i) {
        const double value = part->span.low + static_cast<double>(i) * step;
        const auto one = sweeper.step_at(std::min(value, part->span.high));
        if (!one)
            return no_room(change, lever); // a gap so narrow that no search saw it
        sweep.steps.push_back(*one);
    }
    return sweep;
}

} // namespace steelyard::mechanics

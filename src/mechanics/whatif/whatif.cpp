#include "mechanics/whatif/whatif.h"

#include "mechanics/bounds.h"

#include <algorithm>
#include <cmath>

namespace steelyard::mechanics {
namespace {

/// A cap is kept when it is exceeded by no more than rounding.
constexpr double kCapSlack = 1.0e-12;

Limit limit_of_balance(BalanceStatus status) {
    switch (status) {
    case BalanceStatus::would_slip:
        return {LimitKind::would_slip, std::nullopt, {}};
    case BalanceStatus::lifts_off:
        return {LimitKind::lifts_off, std::nullopt, {}};
    default:
        return {LimitKind::would_topple, std::nullopt, {}};
    }
}

/// One change of one exercise, read at a hinge under caps.
class ChangedExercise {
public:
    ChangedExercise(const Exercise& exercise, const Change& change, Hinge hinge,
                    const std::vector<Cap>& caps)
        : exercise_(exercise), change_(change), caps_(caps), hinges_{hinge} {
        for (const Cap& cap : caps)
            hinges_.push_back(cap.hinge);
    }

    AllowedReading size_at(double value) const {
        const auto changed = with_change(exercise_, change_, value);
        if (!changed)
            return tl::unexpected(
                Limit{LimitKind::cannot_be, std::nullopt, changed.error().expected});
        const auto reading = read_repetition(*changed, hinges_);
        if (!reading)
            return tl::unexpected(
                Limit{LimitKind::cannot_be, std::nullopt, reading.error().expected});
        if (!holds_itself(reading->balance))
            return tl::unexpected(limit_of_balance(reading->balance));
        for (std::size_t i = 0; i < caps_.size(); ++i)
            if (std::abs(reading->peaks[i + 1].torque_Nm) > caps_[i].most_Nm * (1.0 + kCapSlack))
                return tl::unexpected(Limit{LimitKind::cap, caps_[i].hinge, {}});
        return std::abs(reading->peaks[0].torque_Nm);
    }

    /// The sizes as a search reads them.
    ReadingAt sizes(Pace* pace) const {
        return paced([this](double value) { return size_at(value); }, pace);
    }

    /// The peak at a value that has been read before.
    ChangedPeak peak_at(double value) const {
        const auto changed = with_change(exercise_, change_, value);
        const auto reading = read_repetition(*changed, {hinges_.front()});
        return {value, reading->peaks.front()};
    }

private:
    const Exercise& exercise_;
    const Change& change_;
    const std::vector<Cap>& caps_;
    std::vector<Hinge> hinges_;
};

tl::expected<void, MechanicsError> check_caps(const std::vector<Cap>& caps) {
    for (std::size_t i = 0; i < caps.size(); ++i)
        if (auto fault = outside(caps[i].most_Nm, 0.0, kMaxTorque_Nm, indexed("caps", i),
                                 "a torque of 0 N·m or more"))
            return tl::unexpected(*std::move(fault));
    return {};
}

tl::expected<PeakTorque, MechanicsError> peak_of(const Exercise& exercise, Hinge hinge) {
    return read_repetition(exercise, {hinge}).map([](const RepetitionReading& reading) {
        return reading.peaks.front();
    });
}

/// How big a change is, see ReliefWay::size.
double size_of_change(const ChangeRange& range, double value) {
    const double step = std::abs(value - range.present);
    switch (range.unit) {
    case ChangeUnit::radian:
        return step / (0.5 * kPi);
    case ChangeUnit::metre:
        return step / 0.5;
    case ChangeUnit::kilogram:
    case ChangeUnit::newton:
    case ChangeUnit::second:
        break;
    }
    return step / std::max(std::abs(range.present), 1.0e-3);
}

double size_at(const Exercise& exercise, const Change& change, double value, Hinge hinge) {
    const auto changed = with_change(exercise, change, value);
    const auto peak = peak_of(*changed, hinge);
    return std::abs(peak->torque_Nm);
}

/// Torques that differ by less are the same [N·m].
constexpr double kSameTorque_Nm = 1.0e-6;

/// Whether a change does anything to the peak at a hinge: looked for at places across its range.
bool has_influence(const Exercise& exercise, const Change& change, Hinge hinge, double present_Nm) {
    const auto range = range_of(change, exercise);
    if (!range)
        return true; // what is wrong with it is told by who solves it
    constexpr int kParts = 4;
    for (int i = 0; i <= kParts; ++i) {
        const double width = range->allowed.high - range->allowed.low;
        const auto changed = with_change(exercise, change, range->allowed.low + width * i / kParts);
        if (!changed)
            continue;
        const auto peak = peak_of(*changed, hinge);
        if (peak && std::abs(std::abs(peak->torque_Nm) - present_Nm) > kSameTorque_Nm)
            return true;
    }
    return false;
}

/// Puts one change among the ways or the refused.
void judge(const Exercise& exercise, const Goal& goal, const Change& change,
           const WhatIfAnswer& answer, double keep_before_Nm, RankedWays& all) {
    const auto kept_size = [&](double value) {
        return goal.keep ? size_at(exercise, change, value, goal.keep->hinge) : 0.0;
    };
    const double slack_Nm = goal.keep ? goal.keep->within * keep_before_Nm + kCapSlack : 0.0;
    for (const ChangedPeak& found : answer.solutions) {
        const double keep_Nm = kept_size(found.value);
        if (std::abs(keep_Nm - keep_before_Nm) > slack_Nm)
            continue;
        all.ways.push_back({change, answer.range, found, keep_before_Nm, keep_Nm,
                            size_of_change(answer.range, found.value)});
        return;
    }
    RefusedWay refused{change, answer.limit, answer.nearest, 0.0};
    if (!answer.solutions.empty())
        refused.at = answer.solutions.front();
    if (refused.at)
        refused.keep_after_Nm = kept_size(refused.at->value);
    all.refused.push_back(std::move(refused));
}

} // namespace

tl::expected<WhatIfAnswer, MechanicsError>
solve_for_torque(const Exercise& exercise, const Change& change, const Wanted& wanted, Pace* pace) {
    if (auto fault =
            outside(wanted.torque_Nm, 0.0, kMaxTorque_Nm, "torque", "a torque of 0 N·m or more"))
        return tl::unexpected(*std::move(fault));
    if (auto checked = check_caps(wanted.caps); !checked)
        return tl::unexpected(checked.error());
    const auto present = peak_of(exercise, wanted.hinge);
    if (!present)
        return tl::unexpected(present.error());
    const auto range = range_of(change, exercise);
    if (!range)
        return tl::unexpected(range.error());

    const ChangedExercise changed(exercise, change, wanted.hinge, wanted.caps);
    const SearchResult found =
        search(changed.sizes(pace), range->allowed, range->present, wanted.torque_Nm);
    WhatIfAnswer answer;
    answer.range = *range;
    answer.present = *present;
    if (pace != nullptr && pace->paused)
        return answer;
    for (const double value : found.solutions)
        answer.solutions.push_back(changed.peak_at(value));
    if (!found.solutions.empty())
        return answer;
    answer.outcome = found.nearest ? WhatIfOutcome::nearest_only : WhatIfOutcome::nothing_allowed;
    answer.limit = found.first_limit;
    if (found.nearest) {
        answer.nearest = changed.peak_at(found.nearest->at);
        answer.limit = found.nearest->limit;
    }
    return answer;
}

tl::expected<std::vector<AllowedSpan>, MechanicsError>
feasible_settings(const Exercise& exercise, const Change& change, const std::vector<Cap>& caps,
                  Pace* pace) {
    if (auto checked = check_caps(caps); !checked)
        return tl::unexpected(checked.error());
    const auto range = range_of(change, exercise);
    if (!range)
        return tl::unexpected(range.error());
    // Which hinge is read does not matter here, only whether a setting is allowed.
    const ChangedExercise changed(exercise, change, Hinge::lumbar_flexion, caps);
    return allowed_spans(changed.sizes(pace), range->allowed, range->present);
}

namespace {

tl::expected<RankedWays, MechanicsError> rank(const Exercise& exercise, const Goal& goal,
                                              const std::vector<Change>& changes, Pace* pace) {
    std::vector<Hinge> hinges{goal.wanted.hinge};
    if (goal.keep) {
        if (auto fault = outside(goal.keep->within, 0.0, 1.0e3, "within", "a part of 0 or more"))
            return tl::unexpected(*std::move(fault));
        hinges.push_back(goal.keep->hinge);
    }
    const auto reading = read_repetition(exercise, hinges);
    if (!reading)
        return tl::unexpected(reading.error());
    RankedWays all;
    all.present = reading->peaks.front();
    const double present_Nm = std::abs(all.present.torque_Nm);
    if (std::abs(present_Nm - goal.wanted.torque_Nm) < kSameTorque_Nm)
        return tl::unexpected(MechanicsError{Fault::inconsistent, "torque",
                                             "another torque than the joint has already"});
    const double keep_before_Nm = goal.keep ? std::abs(reading->peaks.back().torque_Nm) : 0.0;
    for (const Change& change : changes) {
        // That it has none was seen before the first pause.
        const bool resumed = pace != nullptr && !pace->known.empty();
        if (!resumed && !has_influence(exercise, change, goal.wanted.hinge, present_Nm))
            continue;
        const auto answer = solve_for_torque(exercise, change, goal.wanted, pace);
        if (!answer)
            return tl::unexpected(answer.error());
        if (pace != nullptr && pace->paused)
            return all;
        judge(exercise, goal, change, *answer, keep_before_Nm, all);
    }
    std::stable_sort(all.ways.begin(), all.ways.end(),
                     [](const Way& one, const Way& other) { return one.size < other.size; });
    return all;
}

} // namespace

tl::expected<RankedWays, MechanicsError> ranked_ways(const Exercise& exercise, const Goal& goal,
                                                     const std::vector<Change>& changes) {
    return rank(exercise, goal, changes, nullptr);
}

tl::expected<RankedWays, MechanicsError> ranked_ways(const Exercise& exercise, const Goal& goal,
                                                     const Change& change, Pace& pace) {
    return rank(exercise, goal, {change}, &pace);
}

tl::expected<double, MechanicsError> peak_less(const Exercise& exercise, Hinge hinge, double by) {
    if (auto fault = outside(by, -1.0e3, 1.0, "by", "a part of at most 1, such as 0.2"))
        return tl::unexpected(*std::move(fault));
    const auto peak = peak_of(exercise, hinge);
    if (!peak)
        return tl::unexpected(peak.error());
    const double size_Nm = std::abs(peak->torque_Nm);
    if (by != 0.0 && size_Nm < kSameTorque_Nm)
        return tl::unexpected(MechanicsError{Fault::inconsistent, "by",
                                             "a joint that has a torque: this one has none in this "
                                             "exercise, so that no part of it can be taken off"});
    return (1.0 - by) * size_Nm;
}

} // namespace steelyard::mechanics

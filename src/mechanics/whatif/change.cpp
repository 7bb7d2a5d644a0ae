#include "mechanics/whatif/change.h"

#include "mechanics/bounds.h"
#include "mechanics/resistance/resistance_kinds.h"
#include "mechanics/whatif/reach.h"

#include <algorithm>

namespace steelyard::mechanics {
namespace {

using Ranged = tl::expected<ChangeRange, MechanicsError>;
using Changed = tl::expected<Exercise, MechanicsError>;

/// How far coaches go without asking. Common practice, no source: a pulley from the floor to the
/// top of a tall column, a band from a hand's breadth to five metres, a way from a quick throw of
/// a fifth of a second to ten slow seconds.
constexpr Interval kPulleyHeights_m{0.0, 3.0};
constexpr Interval kSlackLengths_m{0.1, 5.0};
constexpr Interval kWays_s{0.2, 10.0};

MechanicsError unavailable(const char* expected) {
    return {Fault::inconsistent, "change", expected};
}

/// The number that a change of a resistance sets, and its unit; nothing when it has no such number.
struct Setting {
    double* value = nullptr;
    ChangeUnit unit = ChangeUnit::kilogram;
    Interval allowed;
    double per_unit = 1.0; ///< value = number shown × this
};

constexpr Interval kMasses_kg{0.0, kMaxResistance_kg};
constexpr Interval kForces_N{0.0, kMaxResistance_N};

/// Finds the setting in a resistance. A value type has no const twin of it; with_change calls it
/// on its own copy.
std::optional<Setting> setting_of(const LoadSize&, Resistance& resistance, const Body&) {
    double* size = size_in(resistance);
    switch (size_is(resistance)) {
    case SizeIs::mass:
    case SizeIs::stack:
        return Setting{size, ChangeUnit::kilogram, kMasses_kg};
    case SizeIs::pull:
        return Setting{size, ChangeUnit::newton, kForces_N};
    case SizeIs::none:
        break;
    }
    return std::nullopt;
}

std::optional<Setting> along_limb(BodyPoint& point, const Body& body) {
    const double length_m = body[point.segment].length_m;
    if (point.spot != Spot::along || length_m <= 0.0)
        return std::nullopt;
    return Setting{&point.along, ChangeUnit::metre, {0.0, length_m}, 1.0 / length_m};
}

std::optional<Setting> setting_of(const LoadAlongLimb&, Resistance& resistance, const Body& body) {
    BodyPoint* point = moving_point_in(resistance);
    return point != nullptr ? along_limb(*point, body) : std::nullopt;
}

std::optional<Setting> setting_of(const PulleyHeight&, Resistance& resistance, const Body&) {
    if (auto* cable = std::get_if<Cable>(&resistance.kind))
        return Setting{&cable->pulley_m.y(), ChangeUnit::metre, kPulleyHeights_m};
    if (auto* column = std::get_if<CableColumn>(&resistance.kind))
        return Setting{&column->pulley_m.y(), ChangeUnit::metre, kPulleyHeights_m};
    return std::nullopt;
}

std::optional<Setting> setting_of(const BandSlack&, Resistance& resistance, const Body&) {
    if (double* slack_m = slack_length_in(resistance))
        return Setting{slack_m, ChangeUnit::metre, kSlackLengths_m};
    return std::nullopt;
}

Interval widened(Interval allowed, double present) {
    return {std::min(allowed.low, present), std::max(allowed.high, present)};
}

tl::expected<void, MechanicsError> check_indices(const std::vector<std::size_t>& indices,
                                                 const Exercise& exercise) {
    if (indices.empty())
        return tl::unexpected(unavailable("one resistance or more"));
    for (const std::size_t index : indices)
        if (index >= exercise.body_case.resistances.size())
            return tl::unexpected(MechanicsError{Fault::unknown_name, "change.resistance",
                                                 "the number of a resistance of the exercise"});
    return {};
}

/// Changes that set a number of one or more resistances.
template <typename OfResistances> Ranged range_in(const OfResistances& change, Exercise exercise) {
    if (auto checked = check_indices(change.resistances, exercise); !checked)
        return tl::unexpected(checked.error());
    const BodyCase& body_case = exercise.body_case;
    std::optional<ChangeRange> range;
    for (const std::size_t index : change.resistances) {
        const auto setting =
            setting_of(change, exercise.body_case.resistances[index], body_case.body);
        if (!setting)
            return tl::unexpected(unavailable("a resistance that has this number to change"));
        const double present = *setting->value / setting->per_unit;
        if (!range)
            range = ChangeRange{present, widened(setting->allowed, present), setting->unit};
        else if (range->unit != setting->unit)
            return tl::unexpected(unavailable("resistances of one kind"));
    }
    return *range;
}

template <typename OfResistances>
Changed set_in(const OfResistances& change, Exercise exercise, double value) {
    for (const std::size_t index : change.resistances) {
        const auto setting =
            setting_of(change, exercise.body_case.resistances[index], exercise.body_case.body);
        *setting->value = value * setting->per_unit;
    }
    return exercise;
}

Ranged range_in(const JointAngle& change, const Exercise& exercise) {
    if (change.both_sides && !held_alike_on_both_sides(exercise, change.hinge))
        return tl::unexpected(unavailable("both sides held alike, or one side alone"));
    const double present = exercise.body_case.pose[change.hinge];
    const Interval shift = allowed_shift(exercise, change.hinge);
    return ChangeRange{present, {present + shift.low, present + shift.high}, ChangeUnit::radian};
}

Changed set_in(const JointAngle& change, const Exercise& exercise, double value) {
    Exercise changed = exercise;
    shift_hinge(changed, change.hinge, change.both_sides,
                value - exercise.body_case.pose[change.hinge]);
    return kept_in_place(std::move(changed), exercise,
                         {change.hinge, hinge_info(change.hinge).mirror});
}

Ranged range_in(const LoadReach& change, const Exercise& exercise) {
    return arm_swing(change, exercise).map([](const ArmSwing& swing) {
        const double present = swing.distance_m(0.0);
        const auto [low, high] = std::minmax({present, swing.distance_m(swing.swing_rad.low),
                                              swing.distance_m(swing.swing_rad.high)});
        // On the far side of the joint the distance would grow again.
        return ChangeRange{present, {std::max(0.0, low), high}, ChangeUnit::metre};
    });
}

Changed set_in(const LoadReach& change, const Exercise& exercise, double value) {
    return arm_swing(change, exercise).and_then([&](const ArmSwing& swing) {
        Exercise changed = exercise;
        shift_hinge(changed, swing.shoulder, swing.both_sides, swing.delta_rad(value));
        return kept_in_place(std::move(changed), exercise,
                             {swing.shoulder, hinge_info(swing.shoulder).mirror});
    });
}

Ranged range_in(const RepetitionTempo&, const Exercise& exercise) {
    if (!exercise.path || !exercise.tempo)
        return tl::unexpected(unavailable("a movement with a tempo"));
    const double present = exercise.tempo->out_s;
    return ChangeRange{present, widened(kWays_s, present), ChangeUnit::second};
}

Changed set_in(const RepetitionTempo&, Exercise exercise, double value) {
    exercise.tempo->back_s *= value / exercise.tempo->out_s;
    exercise.tempo->out_s = value;
    return exercise;
}

} // namespace

Ranged range_of(const Change& change, const Exercise& exercise) {
    return std::visit([&](const auto& kind) { return range_in(kind, exercise); }, change);
}

Changed with_change(const Exercise& exercise, const Change& change, double value) {
    const auto range = range_of(change, exercise);
    if (!range)
        return tl::unexpected(range.error());
    if (auto fault = outside(value, range->allowed.low, range->allowed.high, "change.value",
                             "a value of the change's range"))
        return tl::unexpected(*std::move(fault));
    return std::visit([&](const auto& kind) { return set_in(kind, exercise, value); }, change);
}

} // namespace steelyard::mechanics

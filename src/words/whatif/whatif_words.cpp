#include "words/whatif/whatif_words.h"

#include "setup/units/format_quantity.h"

#include <fmt/format.h>

#include <array>
#include <cmath>

namespace steelyard::words {
namespace {

using mechanics::Change;
using mechanics::ChangeUnit;
using mechanics::LimitKind;

setup::Dimension dimension_of(ChangeUnit unit) {
    switch (unit) {
    case ChangeUnit::kilogram:
        return setup::Dimension::mass;
    case ChangeUnit::newton:
        return setup::Dimension::force;
    case ChangeUnit::radian:
        return setup::Dimension::angle;
    case ChangeUnit::metre:
        return setup::Dimension::length;
    case ChangeUnit::second:
        break;
    }
    return setup::Dimension::time;
}

/// How a change goes when its value falls and when it grows.
struct Directions {
    std::string_view less;
    std::string_view more;
};

struct DirectionsOf {
    Directions operator()(const mechanics::LoadSize&) const { return {"less", "more"}; }
    Directions operator()(const mechanics::JointAngle& x) const {
        const mechanics::HingeInfo& info = mechanics::hinge_info(x.hinge);
        return {info.negative, info.positive};
    }
    Directions operator()(const mechanics::LoadReach&) const { return {"nearer", "farther"}; }
    Directions operator()(const mechanics::LoadAlongLimb&) const {
        return {"nearer to the joint above", "farther from the joint above"};
    }
    Directions operator()(const mechanics::PulleyHeight&) const { return {"lower", "higher"}; }
    Directions operator()(const mechanics::BandSlack&) const { return {"shorter", "longer"}; }
    Directions operator()(const mechanics::RepetitionTempo&) const { return {"quicker", "slower"}; }
};

struct WordOf {
    std::string_view operator()(const mechanics::LoadSize&) const { return "load"; }
    std::string_view operator()(const mechanics::JointAngle&) const { return "angle"; }
    std::string_view operator()(const mechanics::LoadReach&) const { return "distance"; }
    std::string_view operator()(const mechanics::LoadAlongLimb&) const { return "place"; }
    std::string_view operator()(const mechanics::PulleyHeight&) const { return "pulley"; }
    std::string_view operator()(const mechanics::BandSlack&) const { return "slack"; }
    std::string_view operator()(const mechanics::RepetitionTempo&) const { return "tempo"; }
};

} // namespace

std::string change_value_text(double value, ChangeUnit unit, setup::UnitSystem system) {
    return setup::format_quantity(value, dimension_of(unit), system);
}

std::string change_step_text(const Change& change, const mechanics::ChangeRange& range,
                             double value, setup::UnitSystem system) {
    const double step = value - range.present;
    const Directions directions = std::visit(DirectionsOf{}, change);
    const std::string size = change_value_text(std::abs(step), range.unit, system);
    const std::string_view way = step < 0.0 ? directions.less : directions.more;
    // An angle is turned towards a movement, everything else becomes more or less.
    if (range.unit == ChangeUnit::radian)
        return fmt::format("{} towards {}", size, way);
    return fmt::format("{} {}", size, way);
}

std::string refusal_text(const std::optional<mechanics::ChangedPeak>& at,
                         const mechanics::Limit& limit, ChangeUnit unit, setup::UnitSystem system) {
    if (!at)
        return fmt::format("No setting is possible: {}.", limit_phrase(limit));
    return fmt::format(
        "It cannot be reached. The nearest is {} with {}, because {}.",
        setup::format_quantity(std::abs(at->peak.torque_Nm), setup::Dimension::torque, system),
        change_value_text(at->value, unit, system), limit_phrase(limit));
}

std::string_view change_word(const Change& change) {
    return std::visit(WordOf{}, change);
}

std::string limit_phrase(const mechanics::Limit& limit) {
    switch (limit.kind) {
    case LimitKind::range_end:
        return "the change goes no further";
    case LimitKind::turning_point:
        return "further on the torque goes back again";
    case LimitKind::would_topple:
        return "the body would topple";
    case LimitKind::would_slip:
        return "the feet would slip";
    case LimitKind::lifts_off:
        return "the body would be lifted off the ground";
    case LimitKind::cap:
        return fmt::format("the cap at {} is reached",
                           limit.hinge ? mechanics::hinge_info(*limit.hinge).label
                                       : std::string_view("another joint"));
    case LimitKind::cannot_be:
        break;
    }
    return fmt::format("the exercise cannot be there (expected {})", limit.reason);
}

std::string_view limit_word(LimitKind kind) {
    constexpr std::array<std::string_view, 7> kEndings{
        "range_end", "turning_point", "would_topple", "would_slip",
        "lifts_off", "cap",           "cannot_be"};
    return kEndings[static_cast<std::size_t>(kind)];
}

} // namespace steelyard::words

// Which resistances can be computed with, whatever the pose.

#include "mechanics/body/landmarks.h"
#include "mechanics/bounds.h"
#include "mechanics/resistance/resistance_forces.h"

namespace steelyard::mechanics {

namespace {

constexpr double kMostStiffness_N_m = 1.0e5;
constexpr double kMostCamRadius_m = 2.0;
constexpr double kLeastSlack_m = 0.01;
constexpr double kMostSlack_m = 20.0;
constexpr double kMostStretch = 20.0;
constexpr double kLeastDirection = 1.0e-6;

Found check_mass(double mass_kg, std::string_view key) {
    return outside(mass_kg, 0.0, kMaxResistance_kg, key, "a mass from 0 to 2000 kg");
}

Found check_hand(Segment segment) {
    if (is_hand(segment))
        return std::nullopt;
    return MechanicsError{Fault::inconsistent, "hand", "right_hand or left_hand"};
}

Found check_point(const Body& body, const BodyPoint& point, std::string_view key) {
    if (const auto place = local_point(body, point); !place)
        return within_key(key, place.error());
    return std::nullopt;
}

Found check_place(const Vec3& place_m, std::string_view key) {
    for (const double part : place_m)
        if (Found fault = outside(part, -kMaxLength_m, kMaxLength_m, key,
                                  "a place within 1000 m of the origin"))
            return fault;
    return std::nullopt;
}

Found check_direction(const Vec3& direction, std::string_view key) {
    if (Found fault = check_place(direction, key))
        return fault;
    if (direction.norm() < kLeastDirection)
        return MechanicsError{Fault::zero_length, std::string(key), "a direction that is not zero"};
    return std::nullopt;
}

Found check(const Body& /*body*/, const Dumbbell& dumbbell) {
    if (Found fault = check_hand(dumbbell.hand))
        return fault;
    return check_mass(dumbbell.mass_kg, "mass");
}

Found check(const Body& body, const Barbell& bar) {
    if (bar.resting_on)
        if (Found fault = check_point(body, *bar.resting_on, "resting_on"))
            return fault;
    return check_mass(bar.mass_kg, "mass");
}

Found check(const Body& /*body*/, const Kettlebell& bell) {
    if (Found fault = check_hand(bell.hand))
        return fault;
    if (Found fault = check_mass(bell.mass_kg, "mass"))
        return fault;
    if (Found fault = outside(bell.offset_m, 0.0, 1.0, "offset", "an offset from 0 to 1 m"))
        return fault;
    return check_direction(bell.direction, "direction");
}

Found check(const Body& body, const Cuff& cuff) {
    if (Found fault = check_point(body, cuff.at, "at"))
        return fault;
    return check_mass(cuff.mass_kg, "mass");
}

Found check_cam(const std::vector<CamEntry>& cam) {
    if (cam.empty() || cam.size() > 1000)
        return MechanicsError{Fault::inconsistent, "cam", "from 1 to 1000 entries"};
    for (std::size_t i = 0; i < cam.size(); ++i) {
        const std::string_view expected = "angles that increase, within a turn";
        if (outside(cam[i].angle_rad, -2.0 * kPi, 2.0 * kPi, "angle", expected) ||
            (i > 0 && cam[i].angle_rad <= cam[i - 1].angle_rad))
            return MechanicsError{std::isfinite(cam[i].angle_rad) ? Fault::inconsistent
                                                                  : Fault::not_finite,
                                  indexed("cam", i) + ".angle", std::string(expected)};
        if (Found fault =
                outside(cam[i].radius_m, 0.0, kMostCamRadius_m, "radius", "a radius from 0 to 2 m"))
            return within_key(indexed("cam", i), *std::move(fault));
    }
    return std::nullopt;
}

Found check(const Body& body, const PlateMachine& machine) {
    if (index_of(machine.hinge) >= kHingeCount)
        return MechanicsError{Fault::unknown_name, "hinge", "a hinge of the body"};
    if (Found fault = check_mass(machine.stack_kg, "stack"))
        return fault;
    if (machine.pushes != 1 && machine.pushes != -1)
        return MechanicsError{Fault::out_of_range, "pushes", "1 or -1"};
    if (Found fault = check_point(body, machine.pad, "pad"))
        return fault;
    const Segment moved = joint_info(hinge_info(machine.hinge).joint).segment;
    if (!is_at_or_beyond(machine.pad.segment, moved))
        return MechanicsError{Fault::inconsistent, "pad",
                              "a pad on the part that the hinge moves: " +
                                  std::string(segment_info(moved).name) + " or beyond it"};
    return check_cam(machine.cam);
}

Found check(const Body& body, const Cable& cable) {
    if (Found fault = check_point(body, cable.at, "at"))
        return fault;
    if (Found fault = check_place(cable.pulley_m, "pulley"))
        return fault;
    return outside(cable.tension_N, 0.0, kMaxResistance_N, "tension", "a pull from 0 to 20000 N");
}

Found check(const Body& body, const CableColumn& column) {
    if (Found fault = check_point(body, column.at, "at"))
        return fault;
    if (Found fault = check_place(column.pulley_m, "pulley"))
        return fault;
    if (Found fault = outside(column.rope_ratio, 1.0, kMostRopeRatio, "rope_ratio",
                              "a rope ratio from 1:1 to 4:1"))
        return fault;
    return check_mass(column.stack_kg, "stack");
}

Found check_law(const Band& band) {
    if (const auto* linear = std::get_if<LinearBand>(&band.law))
        return outside(linear->stiffness_N_m, 0.0, kMostStiffness_N_m, "law.stiffness",
                       "a stiffness from 0 to 100000 N/m");
    const auto& entries = std::get<TableBand>(band.law).entries;
    if (entries.empty() || entries.size() > 1000)
        return MechanicsError{Fault::inconsistent, "law", "from 1 to 1000 entries"};
    StretchEntry before;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const std::string key = indexed("law", i);
        if (Found fault = outside(entries[i].stretch, 0.0, kMostStretch, "stretch",
                                  "a stretch above 0 and up to 20 times the slack length"))
            return within_key(key, *std::move(fault));
        if (Found fault = outside(entries[i].force_N, 0.0, kMaxResistance_N, "force",
                                  "a pull from 0 to 20000 N"))
            return within_key(key, *std::move(fault));
        if (entries[i].stretch <= before.stretch || entries[i].force_N < before.force_N)
            return MechanicsError{Fault::inconsistent, key,
                                  "stretches above 0 that increase and pulls that do not fall"};
        before = entries[i];
    }
    return std::nullopt;
}

Found check(const Body& body, const Band& band) {
    if (Found fault = check_point(body, band.at, "at"))
        return fault;
    if (const auto* other = std::get_if<BodyPoint>(&band.anchor)) {
        if (Found fault = check_point(body, *other, "anchor"))
            return fault;
        if (other->segment == band.at.segment)
            return MechanicsError{Fault::inconsistent, "anchor",
                                  "an anchor on another segment than the band's first end"};
    } else if (Found fault = check_place(std::get<Vec3>(band.anchor), "anchor")) {
        return fault;
    }
    if (Found fault = outside(band.slack_length_m, kLeastSlack_m, kMostSlack_m, "slack_length",
                              "a length from 0.01 to 20 m"))
        return fault;
    return check_law(band);
}

Found check(const Body& body, const PartnerPush& partner) {
    if (Found fault = check_point(body, partner.at, "at"))
        return fault;
    if (Found fault = check_direction(partner.direction, "direction"))
        return fault;
    return outside(partner.force_N, 0.0, kMaxResistance_N, "force", "a push from 0 to 20000 N");
}

} // namespace

tl::expected<void, MechanicsError> check_resistance(const Body& body, const Resistance& resistance,
                                                    std::size_t index) {
    Found fault = std::visit([&](const auto& kind) { return check(body, kind); }, resistance.kind);
    if (fault)
        return tl::unexpected(within_key(indexed("resistances", index), *std::move(fault)));
    return {};
}

} // namespace steelyard::mechanics

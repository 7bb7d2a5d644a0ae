#include "setup/build/load_choices.h"

#include "mechanics/constants.h"
#include "mechanics/resistance/resistance_kinds.h"

#include <array>
#include <cmath>
#include <variant>

namespace steelyard::setup {
namespace {

using namespace mechanics;

/// A place at which something is strapped on, hooked in or pushed at.
struct Strap {
    std::string_view where;
    BodyPoint at;
};

BodyPoint along(Segment segment, double part) {
    return {segment, Spot::along, part, Vec3::Zero()};
}

/// Wrist and ankle: a cuff's breadth above the joint. Common practice, no source.
constexpr double kAboveJoint = 0.9;

std::vector<Strap> straps() {
    return {{"right hand", grip_of(Segment::right_hand)},
            {"left hand", grip_of(Segment::left_hand)},
            {"right wrist", along(Segment::right_forearm, kAboveJoint)},
            {"left wrist", along(Segment::left_forearm, kAboveJoint)},
            {"above the right elbow", along(Segment::right_upper_arm, kAboveJoint)},
            {"above the left elbow", along(Segment::left_upper_arm, kAboveJoint)},
            {"right ankle", along(Segment::right_shank, kAboveJoint)},
            {"left ankle", along(Segment::left_shank, kAboveJoint)},
            {"above the right knee", along(Segment::right_thigh, kAboveJoint)},
            {"above the left knee", along(Segment::left_thigh, kAboveJoint)},
            {"hips", {Segment::pelvis, Spot::centre_of_mass, 0.0, Vec3::Zero()}},
            {"chest", {Segment::trunk, Spot::centre_of_mass, 0.0, Vec3::Zero()}},
            {"head", along(Segment::head, 0.6)}};
}

/// Straps without the hands: what is worn.
bool is_worn(const Strap& strap) {
    return strap.at.spot != Spot::grip;
}

Resistance named(std::string name, decltype(Resistance::kind) kind) {
    return {std::move(name), std::move(kind)};
}

/// What is held in one hand: right, left, or one in each.
template <typename Kind> std::vector<LoadChoice> in_hands(const Kind& usual) {
    const auto of = [&](Segment hand, std::string_view side) {
        Kind one = usual;
        one.hand = hand;
        return named(std::string(side) + " " + std::string(row_of(one).usual), one);
    };
    const Resistance right = of(Segment::right_hand, "right");
    const Resistance left = of(Segment::left_hand, "left");
    return {{"right hand", {right}}, {"left hand", {left}}, {"one in each hand", {right, left}}};
}

/// A place in the room near a point of the body: before it, at or above the floor [m].
Vec3 before(const Vec3& point_m, double forward_m, double up_m) {
    return {point_m.x() + forward_m, std::max(0.0, up_m), point_m.z()};
}

/// What goes with the choices of a kind: its overloads are the kinds, one by one.
struct Choices {
    const Body& body;
    const Placement& placement;

    Vec3 world(const BodyPoint& point) const {
        const auto local_m = local_point(body, point);
        return placement[point.segment].at(local_m.value_or(Vec3::Zero()));
    }

    std::vector<LoadChoice> of(const Dumbbell& usual) const { return in_hands(usual); }
    std::vector<LoadChoice> of(const Kettlebell& usual) const { return in_hands(usual); }

    std::vector<LoadChoice> of(const Barbell& usual) const {
        const BodyPoint back{Segment::trunk, Spot::upper_back, 0.0, Vec3::Zero()};
        const BodyPoint hips{Segment::pelvis, Spot::along, 0.0, Vec3(kBarBeforeHips_m, 0.0, 0.0)};
        return {{"both hands", {named("barbell", usual)}},
                {"upper back", {named("barbell", Barbell(usual.mass_kg, back))}},
                {"hips", {named("barbell", Barbell(usual.mass_kg, hips))}}};
    }

    std::vector<LoadChoice> of(const Cuff& usual) const {
        std::vector<LoadChoice> choices;
        for (const Strap& strap : straps())
            if (is_worn(strap))
                choices.push_back(
                    {std::string(strap.where), {named("cuff", Cuff{strap.at, usual.mass_kg})}});
        return choices;
    }

    std::vector<LoadChoice> of(const PlateMachine& usual) const {
        std::vector<LoadChoice> choices;
        for (const Hinge hinge :
             {Hinge::right_knee_flexion, Hinge::left_knee_flexion, Hinge::right_hip_flexion,
              Hinge::left_hip_flexion, Hinge::right_elbow_flexion, Hinge::left_elbow_flexion,
              Hinge::lumbar_flexion})
            for (const int pushes : {1, -1}) {
                const HingeInfo& info = hinge_info(hinge);
                PlateMachine machine = usual;
                machine.hinge = hinge;
                machine.pushes = pushes;
                machine.pad = along(joint_info(info.joint).segment, kAboveJoint);
                const std::string_view way = pushes > 0 ? info.positive : info.negative;
                choices.push_back({"pushes the " + std::string(joint_info(info.joint).label) +
                                       " into " + std::string(way),
                                   {named("machine", machine)}});
            }
        return choices;
    }

    std::vector<LoadChoice> of(const Cable& usual) const { return hooked(usual); }
    std::vector<LoadChoice> of(const CableColumn& usual) const { return hooked(usual); }

    std::vector<LoadChoice> of(const Band& usual) const {
        std::vector<LoadChoice> choices;
        const auto add = [&](std::string where, const BodyPoint& at,
                             const std::variant<Vec3, BodyPoint>& anchor) {
            Band band = usual;
            band.at = at;
            band.anchor = anchor;
            const auto* point = std::get_if<BodyPoint>(&anchor);
            const Vec3 end_m = point != nullptr ? world(*point) : std::get<Vec3>(anchor);
            band.slack_length_m = std::max(kLeastSlack_m, kSlackPart * (end_m - world(at)).norm());
            choices.push_back({std::move(where), {named("band", band)}});
        };
        for (const Strap& strap : straps())
            add(std::string(strap.where), strap.at, before(world(strap.at), 0.6, 0.1));
        for (const auto& [side, hand, foot] :
             {std::tuple("right", Segment::right_hand, Segment::right_foot),
              std::tuple("left", Segment::left_hand, Segment::left_foot)})
            add(std::string(side) + " hand to the foot", grip_of(hand),
                BodyPoint{foot, Spot::sole, 0.0, Vec3::Zero()});
        add("between the ankles", along(Segment::right_shank, kAboveJoint),
            along(Segment::left_shank, kAboveJoint));
        add("between the knees", along(Segment::right_thigh, kAboveJoint),
            along(Segment::left_thigh, kAboveJoint));
        return choices;
    }

    std::vector<LoadChoice> of(const PartnerPush& usual) const {
        std::vector<LoadChoice> choices;
        for (const Strap& strap : straps())
            if (is_worn(strap)) {
                PartnerPush push = usual;
                push.at = strap.at;
                choices.push_back({std::string(strap.where), {named("partner’s hand", push)}});
            }
        return choices;
    }

private:
    /// A cable hooked in anywhere, its pulley low and before the place.
    template <typename Kind> std::vector<LoadChoice> hooked(const Kind& usual) const {
        std::vector<LoadChoice> choices;
        for (const Strap& strap : straps()) {
            Kind cable = usual;
            cable.at = strap.at;
            cable.pulley_m = before(world(strap.at), 0.6, 0.1);
            choices.push_back({std::string(strap.where), {named("cable", cable)}});
        }
        return choices;
    }

    /// A padded bar across the front of the hips [m]: common sense, no source.
    static constexpr double kBarBeforeHips_m = 0.1;
    /// A band begins a little stretched: this part of where it reaches is its slack length.
    static constexpr double kSlackPart = 0.7;
    static constexpr double kLeastSlack_m = 0.1;
};

/// One of each kind, as large as it usually is, in the order of the variant.
template <typename Variant> struct UsualOf;
template <typename... Kinds> struct UsualOf<std::variant<Kinds...>> {
    static std::variant<Kinds...> number(std::size_t kind) {
        const std::array<std::variant<Kinds...>, sizeof...(Kinds)> all{
            std::variant<Kinds...>(Kinds{})...};
        return all.at(kind);
    }
};

bool same_point(const BodyPoint& one, const BodyPoint& other) {
    return one.segment == other.segment && one.spot == other.spot && one.along == other.along &&
           one.offset_m == other.offset_m;
}

/// True when the loads are of one kind, at one place of the body.
bool same_place(const Resistance& one, const Resistance& other) {
    if (one.kind.index() != other.kind.index() || !same_point(carrier_of(one), carrier_of(other)))
        return false;
    if (const auto* bar = std::get_if<Barbell>(&one.kind))
        return bar->resting_on.has_value() == std::get<Barbell>(other.kind).resting_on.has_value();
    if (const auto* machine = std::get_if<PlateMachine>(&one.kind)) {
        const auto& second = std::get<PlateMachine>(other.kind);
        return machine->hinge == second.hinge && machine->pushes == second.pushes;
    }
    if (const auto* band = std::get_if<Band>(&one.kind)) {
        const auto* end = std::get_if<BodyPoint>(&band->anchor);
        const auto* second = std::get_if<BodyPoint>(&std::get<Band>(other.kind).anchor);
        return end == nullptr || second == nullptr ? end == second : same_point(*end, *second);
    }
    return true;
}

} // namespace

std::vector<LoadChoice> load_choices(std::size_t kind, const Body& body,
                                     const Placement& placement) {
    const Choices choices{body, placement};
    return std::visit([&](const auto& usual) { return choices.of(usual); },
                      UsualOf<decltype(Resistance::kind)>::number(kind));
}

std::string where_is(const Resistance& load, const std::vector<LoadChoice>& choices) {
    for (const LoadChoice& choice : choices)
        if (choice.loads.size() == 1 && same_place(choice.loads.front(), load))
            return choice.where;
    return {};
}

Resistance with_size_of(const Resistance& first, Resistance other) {
    Resistance from = first;
    const double* size = size_in(from);
    double* const other_size = size_in(other);
    if (size != nullptr && other_size != nullptr && size_is(first) == size_is(other))
        *other_size = *size;
    const Vec3* fixture = fixture_in(from);
    Vec3* const other_fixture = fixture_in(other);
    if (fixture != nullptr && other_fixture != nullptr)
        *other_fixture = *fixture;
    const double* slack = slack_length_in(from);
    double* const other_slack = slack_length_in(other);
    if (slack != nullptr && other_slack != nullptr)
        *other_slack = *slack;
    return other;
}

} // namespace steelyard::setup

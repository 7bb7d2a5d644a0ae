#pragma once
// The kinds of resistance, once: what every room asks of any of them. A new kind is one row here
// (the compiler asks for it), and the overloads that the compiler then names: its check, its
// forces, its reader and writer, its mark on a drawing.

#include "mechanics/resistance/resistance.h"

#include <optional>
#include <string_view>
#include <tuple>

namespace steelyard::mechanics {

/// What the size of a resistance is.
enum class SizeIs {
    mass,  ///< that the body lifts and lowers with it [kg]
    stack, ///< of a machine's weights, which the body does not carry [kg]
    pull,  ///< or push [N]
    none,  ///< no one number says how large it is
};

/// A row of the table.
template <typename Kind> struct ResistanceKind {
    std::string_view name;  ///< in files: "plate_machine"
    std::string_view usual; ///< name of one that is given none: "machine"
    SizeIs size_is;
    double Kind::*size; ///< null where size_is is none
    /// Where it loads the body; one in both hands: the right one.
    BodyPoint (*carrier)(const Kind&);
    /// The point of it that can be moved along a limb; null where it is held, or lies where it
    /// lies.
    BodyPoint Kind::*moves;
    /// Its fixture in the room [m], which can be moved: null where it has none.
    Vec3* (*fixture)(Kind&);
    std::string_view fixture_name; ///< "pulley"
    double Kind::*slack_length;    ///< [m] where it pulls beyond a length only, else null
};

/// Where a hand holds what it holds.
inline BodyPoint grip_of(Segment hand) {
    return {hand, Spot::grip, 0.0, Vec3::Zero()};
}

namespace resistance_table {

template <typename Kind> BodyPoint in_hand(const Kind& kind) {
    return grip_of(kind.hand);
}
template <typename Kind> BodyPoint at_point(const Kind& kind) {
    return kind.at;
}
inline BodyPoint of_bar(const Barbell& bar) {
    return bar.resting_on.value_or(grip_of(Segment::right_hand));
}
inline BodyPoint of_pad(const PlateMachine& machine) {
    return machine.pad;
}
template <typename Kind> Vec3* pulley(Kind& cable) {
    return &cable.pulley_m;
}
inline Vec3* anchor(Band& band) {
    return std::get_if<Vec3>(&band.anchor);
}

} // namespace resistance_table

/// In the order in which the variant has them.
inline constexpr std::tuple kResistanceKinds{
    ResistanceKind<Dumbbell>{"dumbbell", "dumbbell", SizeIs::mass, &Dumbbell::mass_kg,
                             resistance_table::in_hand<Dumbbell>, nullptr, nullptr, "", nullptr},
    ResistanceKind<Barbell>{"barbell", "barbell", SizeIs::mass, &Barbell::mass_kg,
                            resistance_table::of_bar, nullptr, nullptr, "", nullptr},
    ResistanceKind<Kettlebell>{"kettlebell", "kettlebell", SizeIs::mass, &Kettlebell::mass_kg,
                               resistance_table::in_hand<Kettlebell>, nullptr, nullptr, "",
                               nullptr},
    ResistanceKind<Cuff>{"cuff", "cuff", SizeIs::mass, &Cuff::mass_kg,
                         resistance_table::at_point<Cuff>, &Cuff::at, nullptr, "", nullptr},
    ResistanceKind<PlateMachine>{"plate_machine", "machine", SizeIs::stack, &PlateMachine::stack_kg,
                                 resistance_table::of_pad, &PlateMachine::pad, nullptr, "",
                                 nullptr},
    ResistanceKind<Cable>{"cable", "cable", SizeIs::pull, &Cable::tension_N,
                          resistance_table::at_point<Cable>, &Cable::at,
                          resistance_table::pulley<Cable>, "pulley", nullptr},
    ResistanceKind<CableColumn>{"cable_column", "cable", SizeIs::stack, &CableColumn::stack_kg,
                                resistance_table::at_point<CableColumn>, &CableColumn::at,
                                resistance_table::pulley<CableColumn>, "pulley", nullptr},
    ResistanceKind<Band>{"band", "band", SizeIs::none, nullptr, resistance_table::at_point<Band>,
                         &Band::at, resistance_table::anchor, "anchor", &Band::slack_length_m},
    ResistanceKind<PartnerPush>{"partner", "partner", SizeIs::pull, &PartnerPush::force_N,
                                resistance_table::at_point<PartnerPush>, &PartnerPush::at, nullptr,
                                "", nullptr},
};

/// The row of a kind.
template <typename Kind> constexpr const ResistanceKind<Kind>& row_of(const Kind& /*kind*/) {
    return std::get<ResistanceKind<Kind>>(kResistanceKinds);
}

/// Names of all kinds, in the order of the variant.
const std::vector<std::string_view>& resistance_kind_names();

std::string_view kind_name(const Resistance& resistance);
std::string_view usual_name(const Resistance& resistance);

SizeIs size_is(const Resistance& resistance);
/// The number that says how large it is, in it; null where none does.
double* size_in(Resistance& resistance);

/// Mass that the body lifts and lowers with this resistance [kg]; 0 for those that it does not
/// carry.
double carried_mass(const Resistance& resistance);

BodyPoint carrier_of(const Resistance& resistance);
/// The point in it that can be moved along a limb, or null.
BodyPoint* moving_point_in(Resistance& resistance);

/// Its fixture in the room [m], in it; null where it has none or that is on the body.
Vec3* fixture_in(Resistance& resistance);
std::optional<Vec3> fixture_of(const Resistance& resistance);
std::string_view fixture_name(const Resistance& resistance);

/// The length from which on it pulls [m], in it; null where it has none.
double* slack_length_in(Resistance& resistance);

} // namespace steelyard::mechanics

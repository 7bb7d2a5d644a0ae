#pragma once
// The numbers of a lever that can be set: which ones a part has, their names, their values, and the
// lever with one of them changed. Drags, nudges and typed numbers all go through here.

#include "scene/lever/lever_parts.h"
#include "setup/units/units.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

enum class LeverField {
    place,     ///< along the lever [m]
    mass,      ///< of a weight or of the lever itself [kg]
    force,     ///< of a pull [N]; of the effort: set by hand [N]
    direction, ///< counter-clockwise from +x [rad]
    torque,    ///< of a couple [N·m]
    grip,      ///< friction coefficient of the axis [-]
    radius,    ///< of the axle, on which the friction acts [m]
    across,    ///< of a corner, to the right [m]
    up,        ///< of a corner [m]
};

/// One number that can be set, by part and field.
struct LeverNumber {
    scene::LeverPart part;
    LeverField field = LeverField::place;

    bool operator==(const LeverNumber&) const = default;
};

/// What the bench shows: a lever, and the effort if the hand sets it.
struct HandledLever {
    mechanics::Lever lever;
    std::optional<double> hand_N; ///< along the effort's direction; empty = solved for
};

/// Fields that a part has, the most important first.
std::vector<LeverField> fields_of(const HandledLever& handled, const scene::LeverPart& part);

/// The parts of a lever in the order in which the keyboard visits them.
std::vector<scene::LeverPart> parts_of(const mechanics::Lever& lever);

setup::Dimension dimension_of(LeverField field);

/// What a field is called on the sheet: "place", "mass", "pull".
std::string name_of(LeverField field);
/// What a part is called: the axis, the name of a load or of the effort.
std::string name_of(const mechanics::Lever& lever, const scene::LeverPart& part);

/// Present value [SI]; empty when the part has no such field.
std::optional<double> value_of(const HandledLever& handled, const LeverNumber& number);

/// The lever with one number set; a number the part does not have leaves it as it was.
/// Places are kept on the lever, sizes at or above zero; a direction may be any. Of a corner the
/// path alone changes: see on_path for what acts on it.
HandledLever with_value(HandledLever handled, const LeverNumber& number, double value_SI);

} // namespace steelyard::app

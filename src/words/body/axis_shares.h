#pragma once
// Candidate axes set against one another. There are two hips and one low back: where a joint of the
// middle stands among the axes, a paired joint counts with both of its sides.

#include "mechanics/body/solve_body.h"
#include "setup/units/units.h"

#include <string>
#include <vector>

namespace steelyard::words {

/// A candidate axis as it compares with the others.
struct AxisShare {
    mechanics::Hinge axis = mechanics::Hinge::lumbar_flexion;
    bool both = false;      ///< both sides are meant
    double torque_Nm = 0.0; ///< size of the muscles' torque, of both sides where both are meant
    double one_Nm = 0.0;    ///< of the axis itself
    std::string name;       ///< "both hips", "low back"
    std::string one;        ///< what one side is called then: "each hip", "right hip", "low back"
};

/// The axes in their order.
/// @param axes  all that are shown together
std::vector<AxisShare> axis_shares(const std::vector<mechanics::Hinge>& axes,
                                   const mechanics::BodyResult& result);

/// "Both hips 300 N·m (150 N·m each), low back 232 N·m.": the axes as they compare; empty for a
/// single axis.
std::string shares_sentence(const std::vector<AxisShare>& shares, setup::UnitSystem units);

/// The one with the largest torque: index into the shares, of which there is one or more.
std::size_t most_loaded(const std::vector<AxisShare>& shares);

/// Those with as large a torque as another, within half a per cent: indices, without its own.
std::vector<std::size_t> as_loaded(const std::vector<AxisShare>& shares, std::size_t as);

/// "both hips": a paired joint with its two sides.
std::string both_sides_word(mechanics::Hinge hinge);

/// What an axis is called where only its own side's torque is shown beside others: "one hip" among
/// joints of the middle, else as axis_word.
std::string one_side_word(const std::vector<mechanics::Hinge>& axes, mechanics::Hinge axis);

} // namespace steelyard::words

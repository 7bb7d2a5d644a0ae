#pragma once
// The balance strip: load torque grows from the left, effort torque from the right; when they are
// equal they meet at the notch in the middle.

#include "scene/marks/label_board.h"
#include "setup/units/units.h"

#include <optional>
#include <string>

namespace steelyard::scene {

/// What the strip weighs against each other.
struct StripTorques {
    double load_Nm = 0.0;     ///< signed, counter-clockwise positive
    double effort_Nm = 0.0;   ///< signed, counter-clockwise positive
    double friction_Nm = 0.0; ///< what the axle can hold either way, >= 0
    std::string load_name = "load torque";
    std::string effort_name = "effort torque";
};

/// How two torques compare, in a word that stands under the notch.
enum class StripVerdict { balanced, friction_holds, load_wins, effort_wins, same_way };

/// Equal to one part in 10^9 counts as balanced: rounding, far below what can be seen.
StripVerdict judge(const StripTorques& torques);

/// The words under the notch.
std::string verdict_text(StripVerdict verdict);

/// One side of a strip on which two sizes meet at the notch.
struct StripSide {
    std::string name;
    double size = 0.0; ///< >= 0, in SI
    Role role = Role::load;
    std::optional<Stroke> outline;     ///< of its bar
    Role words_role = Role::quiet_ink; ///< of its name and number
    setup::Dimension dimension = setup::Dimension::torque;
};

/// Appends a strip on which two sizes meet: one grows from the left, the other from the right, the
/// larger reaches the notch. Where there is no room for both names, the sizes stand alone.
/// @param verdict  stands under the notch
/// @param left_px, right_px, top_px, units, text_scale  see add_balance_strip
void add_meeting_strip(const StripSide& left, const StripSide& right, const std::string& verdict,
                       double left_px, double right_px, double top_px, setup::UnitSystem units,
                       double text_scale, std::vector<Shape>& shapes);

/// Appends the strip.
/// @param left_px, right_px  ends of the strip; the notch is in the middle
/// @param top_px             upper edge of the bars; labels stand above, the verdict below
void add_balance_strip(const StripTorques& torques, double left_px, double right_px, double top_px,
                       setup::UnitSystem units, double text_scale, std::vector<Shape>& shapes);

} // namespace steelyard::scene

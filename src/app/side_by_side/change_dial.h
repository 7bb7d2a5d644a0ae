#pragma once
// One number of B as a dial: where it stands, how far it may go under the limits, and where the aim
// is reached.

#include "app/look/style.h"
#include "app/widgets/column_pen.h"
#include "mechanics/whatif/lever_whatif.h"
#include "mechanics/whatif/whatif.h"
#include "setup/units/units.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace steelyard::app {

/// What a dial turns: a number of an exercise or of a lever.
using DialSubject = std::variant<std::monostate, mechanics::Change, mechanics::LeverChange>;

/// The dial between frames.
struct ChangeDial {
    DialSubject of;            ///< the change that the range was made for
    mechanics::Interval shown; ///< part of the change's range that the dial spans
    bool held = false;
    int run = 1; ///< counts runs of steps, such as a drag: each run is undone by itself
};

/// What a dial shows.
struct DialReading {
    mechanics::ChangeRange range;
    const std::vector<mechanics::AllowedSpan>* spans = nullptr; ///< null while unknown
    std::optional<double> aim;                                  ///< value that reaches the aim
    setup::UnitSystem units = setup::UnitSystem::si;
};

/// Part of a change's range worth a dial: weights go to what people lift, not to what can be
/// computed with; everything else goes as far as it can.
/// @param aim  a value that is to lie on it too
mechanics::Interval dial_range(const mechanics::ChangeRange& range, std::optional<double> aim);

/// How far the change may go from where it stands: "From 0 kg to 45.2 kg; beyond 45.2 kg the body
/// would topple." Empty when its whole range is allowed, or when nothing is known.
std::string span_text(const DialReading& reading);

/// Turns the dial to a change. Another change than before begins another run.
void turn_to(ChangeDial& dial, const DialSubject& change, const mechanics::ChangeRange& range,
             std::optional<double> aim);

/// Draws the dial down the column.
/// @return the value it was dragged to, as a step of the dial's run
std::optional<double> draw_change_dial(const Style& style, const DialReading& reading,
                                       const DialSubject& of, ColumnPen& pen, ChangeDial& dial);

} // namespace steelyard::app

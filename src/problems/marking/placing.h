#pragma once
// Answering a place question by hand, on its drawing: what is to be put there and how, where the
// hand's movement goes, and how it is marked. Letters stay for paper and the terminal.
//
//     const Gesture gesture = gesture_of(question);          // a point, a line or an arm
//     Placed placed = first_place(question);                 // to begin with, or from the keyboard
//     placed = settled(question, {pressed_m, released_m});   // while it is dragged
//     Marking marking = mark_placed(bank, question, placed); // when it is let go and checked
//     Placed right = right_place(question);                  // to be shown afterwards
//
// All places are in the setup's frame [m], that of LeverPicture. To draw the question without the
// spots that a window has no use for, draw a copy whose `spots` are empty; mark the original.

#include "problems/marking/marking.h"
#include "problems/question/question.h"

#include <optional>
#include <string>

namespace steelyard::problems {

/// What the hand puts on the drawing.
enum class Gesture {
    point_on_lever, ///< a point that slides along the lever: the axis, the place of a load
    line,           ///< a straight line, by any two of its points: the effort's line of action
    arm,            ///< a line from the axis: the moment arm
};

/// What was put there: a line from one point to another. Of a point, both are the same.
struct Placed {
    mechanics::Vec2 from_m = mechanics::Vec2::Zero();
    mechanics::Vec2 to_m = mechanics::Vec2::Zero();
};

/// How far a drawn line may be turned from the right one and still count: 8°. Judgement: a hand
/// with a mouse does better, a common wrong line is off by far more.
inline constexpr double kLineTolerance_rad = 8.0 / 180.0 * 3.14159265358979323846;

/// @param question  of kind place with a lever, as for all functions here
Gesture gesture_of(const Question& question);

/// What to do, in one sentence: "Drag the point along the lever."
const char* how_to_place(Gesture gesture);

/// Something to begin with that gives nothing away.
Placed first_place(const Question& question);

/// What a drag from one point to another means: a point goes to the nearest place of the lever, an
/// arm that begins close to the axis begins in it.
Placed settled(const Question& question, const Placed& dragged);

/// The right answer as it would be drawn.
Placed right_place(const Question& question);

/// What was put there as an answer that `mark` reads, so that it can be kept like a typed one:
/// "0.4, 0.1" or "0, 0 to 0.4, 0.1" in metres.
std::string placed_text(const Question& question, const Placed& placed);

/// Reads it back; empty when it is something else, such as a letter.
std::optional<Placed> read_placed(const std::string& answer);

/// Marks what was put on the drawing.
/// A point: within the question's tolerance of the right place.
/// A line: it passes the effort's point within the tolerance and runs along its pull within
/// kLineTolerance_rad; how long it is and which end is drawn first does not matter.
/// An arm: from the axis to the foot of the perpendicular, both within the tolerance.
/// A wrong one is matched to the question's spots, which stand for typical mistakes.
Marking mark_placed(const Bank& bank, const Question& question, const Placed& placed);

} // namespace steelyard::problems

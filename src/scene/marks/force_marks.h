#pragma once
// The marks of a force on any stage: its arrow, its line of action, its moment arm with the right
// angle, its turning sense. Colour and shape say the same thing twice: see look of Role.

#include "scene/drawing.h"

#include <vector>

namespace steelyard::scene {

/// How the tail of an arrow tells what kind of force it is.
enum class Tail { plain, square, dot };

/// Appends an arrow from its tail to its tip.
/// A force too long for the sheet is shown with a break in its shaft: see kLongestArrow_px.
void add_arrow(const Point& from, const Point& to, Tail tail, const Stroke& stroke,
               std::vector<Shape>& shapes);

/// Appends a force that points into the sheet: the feathers of its arrow in a circle.
void add_force_inward(const Point& centre, double radius_px, const Stroke& stroke,
                      std::vector<Shape>& shapes);

/// An arrow's vector on the sheet, cut to the longest that fits, and whether it was cut.
struct ArrowSpan {
    Point along_px = Point::Zero();
    bool cut = false;
};
ArrowSpan arrow_span(const Point& force_px, double longest_px);
/// The same, cut also where its tip would lie below a height; what begins there keeps a stub.
ArrowSpan ended_above(double lowest_px, const Point& from, ArrowSpan span);

/// Appends the two strokes that say "longer than drawn" across the middle of an arrow.
void add_break(const Point& from, const Point& to, const Stroke& stroke,
               std::vector<Shape>& shapes);

/// A moment arm on the sheet: from the axis square to the line of action.
struct ArmMark {
    Point axis = Point::Zero();
    Point foot = Point::Zero();
    Point along_line = Point::Zero(); ///< unit vector along the line of action
    Point shift = Point::Zero();      ///< how far the mark is moved along the line of action, so
                                      ///< that it does not lie on the lever
};

/// Appends a moment arm: a bracketed line with a right-angle mark at the line of action.
void add_arm(const ArmMark& arm, const Stroke& stroke, std::vector<Shape>& shapes);

/// Appends the sense of a torque: part of a circle about the axis with an arrow head.
/// @param turn_rad  how far it goes, clockwise on the sheet positive; starts straight up
void add_turning(const Point& axis, double radius_px, double turn_rad, const Stroke& stroke,
                 std::vector<Shape>& shapes);

} // namespace steelyard::scene

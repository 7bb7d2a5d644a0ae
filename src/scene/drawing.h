#pragma once
// A drawing as plain data. Made from a setup and its result, painted by the OpenGL stage, the PNG
// and PDF painter and the SVG writer alike, so that screen and paper show the same thing.
//
// Sheet frame: pixels, x to the right, y down, origin at the top left corner.
// Turns are clockwise on the sheet in radians, so that +y is at +90°.

#include <Eigen/Core>

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace steelyard::scene {

using Point = Eigen::Vector2d;

/// What a mark stands for. A palette turns it into a colour; the shape and the label say the same
/// thing again, so that colour is never the only signal.
enum class Role {
    sheet,
    panel,    ///< quiet surface on the sheet
    hairline, ///< thin dividers
    ink,
    quiet_ink,
    beam, ///< inside of a lever
    skin, ///< of the figure; each `far_` one on the side away from the eye
    far_skin,
    shirt,
    far_shirt,
    shorts,
    far_shorts,
    shoe,
    far_shoe,
    hair,
    iron, ///< bars, weights, columns
    pad,  ///< what one sits and lies on
    effort,
    muscle,         ///< flesh that pulls, under the mark of its effort
    resting_muscle, ///< of a muscle that does not take part
    load,
    own_weight,
    reaction,
    right,
    wrong,
};

enum class Dash { solid, dashed, dotted };

struct Stroke {
    Role role = Role::ink;
    double width_px = 2.5;
    Dash dash = Dash::solid;
    double opacity = 1.0; ///< 0 to 1
};

/// Straight line with round ends.
struct Line {
    Point from = Point::Zero();
    Point to = Point::Zero();
    Stroke stroke;
};

/// Corners joined by straight lines with round joins.
struct Polyline {
    std::vector<Point> corners;
    Stroke stroke;
};

/// Part of a circle, from one angle to another, clockwise on the sheet when to_rad > from_rad.
struct Arc {
    Point centre = Point::Zero();
    double radius_px = 0.0;
    double from_rad = 0.0;
    double to_rad = 0.0;
    Stroke stroke;
};

struct Disc {
    Point centre = Point::Zero();
    double radius_px = 0.0;
    std::optional<Role> fill;
    double fill_opacity = 1.0;
    std::optional<Stroke> outline; ///< centred on the rim
};

/// A filled triangle: arrow heads, the axis, the notch.
struct Triangle {
    Point a = Point::Zero();
    Point b = Point::Zero();
    Point c = Point::Zero();
    Role fill = Role::ink;
    double opacity = 1.0;
};

/// A closed row of corners; the last is joined to the first.
using Ring = std::vector<Point>;

/// A filled form of any outline, opaque. Outer rings turn from +x to +y, holes the other way; no
/// ring crosses itself or another, except outer rings that overlap, which fill as one.
struct Outline {
    std::vector<Ring> rings;
    Role fill = Role::skin;
};

/// A filled rectangle with rounded corners, turned about its centre.
struct Box {
    Point centre = Point::Zero();
    Point size_px = Point::Zero(); ///< full width and height
    double corner_px = 0.0;
    double turn_rad = 0.0;
    std::optional<Role> fill;
    double fill_opacity = 1.0;
    std::optional<Stroke> outline; ///< centred on the edge; solid
};

enum class TextSize { caption, body, reading, key }; ///< 13, 16, 22, 40 px at 100 %
enum class Align { left, centre, right };

/// A line of text; `at` is on its baseline, at the left end, the middle or the right end.
struct Label {
    Point at = Point::Zero();
    std::string text; ///< UTF-8
    TextSize size = TextSize::body;
    bool strong = false;
    Role role = Role::ink;
    Align align = Align::left;
    double turn_rad = 0.0; ///< about `at`
};

/// A level line of text.
Label make_label(const Point& at, std::string text, TextSize size, Role role, Align align,
                 bool strong = false);

using Shape = std::variant<Line, Polyline, Arc, Disc, Triangle, Outline, Box, Label>;

/// Shapes in painting order: later ones cover earlier ones.
struct Drawing {
    Point size_px{1280.0, 720.0};
    std::vector<Shape> shapes;
    std::string title;       ///< one line: what is drawn
    std::string description; ///< the same in a sentence, for a reader who cannot see it
    bool has_sheet = true;   ///< false: nothing is painted behind the shapes, where the format can
};

/// The drawing enlarged or reduced as a whole, strokes included. Labels move with it; their size is
/// the painter's.
Drawing scaled(const Drawing& drawing, double factor);

/// The drawing moved on the sheet; its size stays.
Drawing moved(Drawing drawing, const Point& by_px);

/// The drawing without its words.
Drawing without_labels(Drawing drawing);

/// Height of a text size at 100 % [px].
constexpr double text_height_px(TextSize size) {
    switch (size) {
    case TextSize::caption:
        return 13.0;
    case TextSize::body:
        return 16.0;
    case TextSize::reading:
        return 22.0;
    case TextSize::key:
        return 40.0;
    }
    return 16.0;
}

} // namespace steelyard::scene

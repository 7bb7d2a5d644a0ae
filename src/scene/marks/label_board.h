#pragma once
// Finds room for labels on a drawing: each label states where it would like to stand, and takes
// the first place where it covers nothing.

#include "scene/drawing.h"

#include <optional>
#include <vector>

namespace steelyard::scene {

/// An upright rectangle on the sheet [px].
struct Rect {
    Point low = Point::Zero();  ///< top left
    Point high = Point::Zero(); ///< bottom right

    bool overlaps(const Rect& other) const;
    bool contains(const Point& point) const;
};

/// The room that a label takes, turned labels by the rectangle around them.
Rect room_of(const Label& label, double text_scale);

class LabelBoard {
public:
    LabelBoard(const Rect& sheet, double text_scale) : sheet_(sheet), text_scale_(text_scale) {}

    /// Marks a straight stroke as something that text should not cover.
    void keep_clear(const Point& from, const Point& to, double width_px);
    void keep_clear(const Rect& rect) { taken_.push_back(rect); }

    /// True when a label covers nothing and stays on the sheet.
    bool is_free(const Label& label) const { return cost_of(room_of(label, text_scale_)) <= 0.0; }

    /// The first of several ways to set a label that covers nothing and stays on the sheet; when
    /// every way covers something, the one that covers least; when that is other text or leaves the
    /// sheet, the nearest place to the first way that does not, where there is one; else it is
    /// brought onto the sheet: what covers something can be read in part, what is cut off cannot.
    /// There must be at least one way.
    /// @param below_px  further room taken below the line, for lines that belong to it
    Label place(const std::vector<Label>& ways, double below_px = 0.0);

private:
    struct Stroke {
        Point from;
        Point to;
        double width_px;
    };
    double cost_of(const Rect& room) const { return cost_of_text(room) + cost_of_strokes(room); }
    double cost_of_text(const Rect& room) const;
    double cost_of_strokes(const Rect& room) const;
    Label on_sheet(Label label) const;
    std::optional<Label> nearest_free(const Label& wanted, double below_px) const;
    Rect room_with_lines_below(const Label& label, double below_px) const;

    Rect sheet_;
    double text_scale_;
    std::vector<Rect> taken_;
    std::vector<Stroke> strokes_;
};

} // namespace steelyard::scene

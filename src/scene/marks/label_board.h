#pragma once
// Finds room for labels on a drawing: each label states where it would like to stand, and takes
// the first place where it covers nothing.

#include "scene/marks/ink_map.h"

#include <optional>
#include <vector>

namespace steelyard::scene {

/// An upright rectangle on the sheet [px].
struct Rect {
    Point low = Point::Zero();  ///< top left
    Point high = Point::Zero(); ///< bottom right

    bool overlaps(const Rect& other) const;
    bool contains(const Point& point) const;
    /// The last point of it on the way from a point in it to another.
    Point last_inside(const Point& from, const Point& to) const;
};

/// The room that a label takes, turned labels by the rectangle around them.
Rect room_of(const Label& label, double text_scale);

class LabelBoard {
public:
    LabelBoard(const Rect& sheet, double text_scale) : sheet_(sheet), text_scale_(text_scale) {}

    /// Marks a straight stroke as something that text should not cover.
    void keep_clear(const Point& from, const Point& to, double width_px);
    void keep_clear(const Rect& rect) { taken_.push_back(rect); }
    /// Marks all that is drawn as something that text should not cover, in place of strokes. To be
    /// called when the drawing is complete but for its words.
    void keep_clear(const std::vector<Shape>& drawn) { ink_.emplace(sheet_.high, drawn); }

    /// True when a label covers nothing and stays on the sheet.
    bool is_free(const Label& label) const { return cost_of(room_of(label, text_scale_)) <= 0.0; }

    /// The first of several ways to set a label that covers nothing and stays on the sheet; when
    /// every way covers something, the one that covers least; when that is other text or leaves the
    /// sheet, the nearest place to the first way that does not, where there is one; else it is
    /// brought onto the sheet: what covers something can be read in part, what is cut off cannot.
    /// There must be at least one way.
    /// @param below_px  further room taken below the line, for lines that belong to it
    Label place(const std::vector<Label>& ways, double below_px = 0.0);

    /// The same for words that belong to a place on the drawing and are told only where they cover
    /// nothing: the first way that is free; else the free place that is nearest to the anchor, to
    /// which a leader from there comes without crossing other words.
    std::optional<Label> place_free(const std::vector<Label>& ways, const Point& anchor,
                                    double below_px = 0.0);

private:
    struct Stroke {
        Point from;
        Point to;
        double width_px;
    };
    double cost_of(const Rect& room) const { return cost_of_text(room) + cost_of_strokes(room); }
    bool is_clear(const Rect& room) const;
    bool crosses_words(const Point& from, const Point& to) const;
    double cost_of_text(const Rect& room) const;
    double cost_of_strokes(const Rect& room) const;
    Label on_sheet(Label label) const;
    std::optional<Label> nearest_free(const Label& wanted, double below_px) const;
    std::optional<Label> nearest_to(const Point& anchor, const Label& wanted,
                                    double below_px) const;
    Rect room_with_lines_below(const Label& label, double below_px) const;

    Rect sheet_;
    double text_scale_;
    std::vector<Rect> taken_;
    std::vector<Stroke> strokes_;
    std::optional<InkMap> ink_;
};

/// The end of a leader from a place to words: the point of their room that is nearest, a little
/// off it.
Point leader_end(const Point& anchor, const Rect& room);

} // namespace steelyard::scene

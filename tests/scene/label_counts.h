#pragma once
// Counts what keeps the words of drawings from being read: other words on them, lines through them,
// the figure under them, the edge of the sheet.

#include "scene/drawing.h"
#include "scene/figure/ring_union.h"
#include "scene/marks/label_board.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

namespace steelyard::scene {

/// A straight piece of something drawn, with half its width and its place in the order of painting.
struct Piece {
    Point from;
    Point to;
    double half_px;
    std::size_t painted;
};

/// What may strike a word: lines, arrows, rims. Hairlines in the colour of the sheet are none.
inline std::vector<Piece> strokes_of(const Drawing& drawing) {
    std::vector<Piece> pieces;
    for (std::size_t n = 0; n < drawing.shapes.size(); ++n) {
        const Shape& shape = drawing.shapes[n];
        const auto add = [&](const Point& from, const Point& to, const Stroke& stroke) {
            if (stroke.role != Role::sheet)
                pieces.push_back({from, to, 0.5 * stroke.width_px, n});
        };
        if (const auto* line = std::get_if<Line>(&shape))
            add(line->from, line->to, line->stroke);
        if (const auto* line = std::get_if<Polyline>(&shape))
            for (std::size_t i = 1; i < line->corners.size(); ++i)
                add(line->corners[i - 1], line->corners[i], line->stroke);
        if (const auto* head = std::get_if<Triangle>(&shape)) {
            pieces.push_back({head->a, head->b, 0.0, n});
            pieces.push_back({head->b, head->c, 0.0, n});
            pieces.push_back({head->c, head->a, 0.0, n});
        }
    }
    return pieces;
}

/// Whether an opaque disc or level box that is painted between two shapes covers a point.
/// @param reach_px  half the width of the stroke that the point lies on
inline bool is_hidden(const Drawing& drawing, const Point& point, double reach_px,
                      std::size_t after, std::size_t before) {
    for (std::size_t n = after + 1; n < before; ++n) {
        if (const auto* disc = std::get_if<Disc>(&drawing.shapes[n]))
            if (disc->fill && disc->fill_opacity >= 1.0 &&
                (point - disc->centre).norm() <= disc->radius_px + reach_px)
                return true;
        if (const auto* box = std::get_if<Box>(&drawing.shapes[n]))
            if (box->fill && box->fill_opacity >= 1.0 && box->turn_rad == 0.0 &&
                ((point - box->centre).cwiseAbs() - 0.5 * box->size_px).maxCoeff() <= 0.0)
                return true;
    }
    return false;
}

/// The letters themselves, without the hair of air around them.
inline Rect letters_of(const Label& label, double text_scale) {
    Rect room = room_of(label, text_scale);
    room.low += Point(1.0, 1.0);
    room.high -= Point(1.0, 1.0);
    return room;
}

/// Whether a stroke that is seen runs through a word. A turned word is looked at in its own frame.
inline bool strikes(const Drawing& drawing, const Piece& piece, const Label& label,
                    std::size_t painted, double text_scale) {
    Label level = label;
    level.turn_rad = 0.0;
    const Rect room = letters_of(level, text_scale);
    const double cosine = std::cos(label.turn_rad);
    const double sine = std::sin(label.turn_rad);
    const Point span = piece.to - piece.from;
    const int steps = 1 + static_cast<int>(span.norm());
    for (int i = 0; i <= steps; ++i) {
        const Point on_sheet = piece.from + (static_cast<double>(i) / steps) * span;
        const Point off = on_sheet - label.at;
        const Point at =
            label.at + Point(cosine * off.x() + sine * off.y(), -sine * off.x() + cosine * off.y());
        const Point near = at.cwiseMax(room.low).cwiseMin(room.high);
        if (((at - near).norm() < piece.half_px || room.contains(at)) &&
            !is_hidden(drawing, on_sheet, piece.half_px, piece.painted, painted))
            return true;
    }
    return false;
}

/// True when a filled form lies under a word, by a raster of three pixels.
inline bool lies_under(const Outline& outline, const Rect& room) {
    for (double x = room.low.x(); x <= room.high.x(); x += 3.0)
        for (double y = room.low.y(); y <= room.high.y(); y += 3.0)
            for (const Ring& ring : outline.rings)
                if (is_inside({x, y}, ring))
                    return true;
    return false;
}

/// Whether a word stands on an opaque plate of its own, painted between two shapes.
inline bool has_plate(const Drawing& drawing, const Rect& room, std::size_t after,
                      std::size_t before) {
    for (std::size_t n = after + 1; n < before; ++n) {
        if (const auto* disc = std::get_if<Disc>(&drawing.shapes[n])) // of a letter
            if (disc->fill && disc->fill_opacity >= 1.0 &&
                (0.5 * (room.low + room.high) - disc->centre).norm() < 0.3 * disc->radius_px)
                return true;
        if (const auto* box = std::get_if<Box>(&drawing.shapes[n]))
            if (box->fill && box->fill_opacity >= 1.0 && box->turn_rad == 0.0 &&
                (room.low - (box->centre - 0.5 * box->size_px)).minCoeff() >= -0.5 &&
                (box->centre + 0.5 * box->size_px - room.high).minCoeff() >= -0.5)
                return true;
    }
    return false;
}

/// Of all drawings that were added.
struct LabelCounts {
    int drawings = 0;
    int words = 0;
    int on_words = 0;
    int struck = 0;
    int on_figure = 0;
    int off_sheet = 0;
    std::string told;

    void add(const Drawing& drawing, double text_scale, const std::string& where) {
        ++drawings;
        std::vector<std::pair<const Label*, Rect>> labels;
        std::vector<std::size_t> painted;
        for (std::size_t n = 0; n < drawing.shapes.size(); ++n)
            if (const auto* label = std::get_if<Label>(&drawing.shapes[n])) {
                labels.emplace_back(label, letters_of(*label, text_scale));
                painted.push_back(n);
            }
        const auto strokes = strokes_of(drawing);
        const auto fault = [&](int& count, const Label& label, const char* what) {
            ++count;
            told += where + ": '" + label.text + "' " + what + '\n';
        };
        for (std::size_t i = 0; i < labels.size(); ++i) {
            const auto& [label, room] = labels[i];
            ++words;
            for (std::size_t j = 0; j < i; ++j)
                if (room.overlaps(labels[j].second))
                    fault(on_words, *label, "on words");
            if (std::any_of(strokes.begin(), strokes.end(), [&, word = label](const Piece& piece) {
                    return strikes(drawing, piece, *word, painted[i], text_scale);
                }))
                fault(struck, *label, "struck");
            for (std::size_t n = 0; n < painted[i]; ++n)
                if (const auto* outline = std::get_if<Outline>(&drawing.shapes[n]))
                    if (lies_under(*outline, room) && !has_plate(drawing, room, n, painted[i])) {
                        fault(on_figure, *label, "on the figure");
                        break;
                    }
            if (room.low.minCoeff() < 0.0 || (drawing.size_px - room.high).minCoeff() < 0.0)
                fault(off_sheet, *label, "off the sheet");
        }
    }
};

} // namespace steelyard::scene

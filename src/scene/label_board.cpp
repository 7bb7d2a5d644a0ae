#include "scene/label_board.h"

#include "scene/text_width.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace steelyard::scene {

namespace {

/// Height of capitals and depth of descenders of Inter, in em.
constexpr double kCapHeight = 0.73;
constexpr double kDescent = 0.22;

/// Area shared by two rectangles [px²].
double shared_area(const Rect& one, const Rect& other) {
    const Point low = one.low.cwiseMax(other.low);
    const Point high = one.high.cwiseMin(other.high);
    return std::max(0.0, high.x() - low.x()) * std::max(0.0, high.y() - low.y());
}

/// Length of a straight stroke inside a rectangle [px], by clipping it to the four sides.
double length_inside(const Point& from, const Point& to, const Rect& rect) {
    const Point along = to - from;
    double enter = 0.0;
    double leave = 1.0;
    for (int part = 0; part < 2; ++part) {
        if (std::abs(along[part]) < 1e-9) {
            if (from[part] < rect.low[part] || from[part] > rect.high[part])
                return 0.0;
            continue;
        }
        const double one = (rect.low[part] - from[part]) / along[part];
        const double other = (rect.high[part] - from[part]) / along[part];
        enter = std::max(enter, std::min(one, other));
        leave = std::min(leave, std::max(one, other));
    }
    return std::max(0.0, leave - enter) * along.norm();
}

} // namespace

bool Rect::overlaps(const Rect& other) const {
    return shared_area(*this, other) > 0.0;
}

bool Rect::contains(const Point& point) const {
    return point.x() >= low.x() && point.x() <= high.x() && point.y() >= low.y() &&
           point.y() <= high.y();
}

Rect room_of(const Label& label, double text_scale) {
    const double width_px = text_width_px(label.text, label.size, label.strong, text_scale);
    const double em_px = text_height_px(label.size) * text_scale;
    double left_px = 0.0;
    if (label.align == Align::centre)
        left_px = -0.5 * width_px;
    if (label.align == Align::right)
        left_px = -width_px;
    const double c = std::cos(label.turn_rad);
    const double s = std::sin(label.turn_rad);
    Rect room{label.at, label.at};
    for (const double x : {left_px, left_px + width_px})
        for (const double y : {-kCapHeight * em_px, kDescent * em_px}) {
            const Point corner = label.at + Point(x * c - y * s, x * s + y * c);
            room.low = room.low.cwiseMin(corner);
            room.high = room.high.cwiseMax(corner);
        }
    return room;
}

void LabelBoard::keep_clear(const Point& from, const Point& to, double width_px) {
    strokes_.push_back({from, to, width_px});
}

double LabelBoard::cost_of(const Rect& room) const {
    // Off the sheet is worst, on other text nearly as bad, on a stroke merely ugly.
    const Point size = room.high - room.low;
    const double off_sheet = size.x() * size.y() - shared_area(room, sheet_);
    double cost = 20.0 * off_sheet;
    for (const Rect& rect : taken_)
        cost += 10.0 * shared_area(room, rect);
    for (const Stroke& stroke : strokes_) {
        const Point half_width{0.5 * stroke.width_px, 0.5 * stroke.width_px};
        cost +=
            length_inside(stroke.from, stroke.to, {room.low - half_width, room.high + half_width}) *
            (stroke.width_px + 0.5);
    }
    return cost;
}

Label LabelBoard::place(const std::vector<Label>& ways, double below_px) {
    assert(!ways.empty());
    const auto room_with_lines_below = [&](const Label& label) {
        Rect room = room_of(label, text_scale_);
        room.high.y() += below_px;
        return room;
    };
    const Label* best = &ways.front();
    double least = -1.0;
    for (const Label& way : ways) {
        const double cost = cost_of(room_with_lines_below(way));
        if (least < 0.0 || cost < least) {
            least = cost;
            best = &way;
        }
        if (cost <= 0.0)
            break;
    }
    taken_.push_back(room_with_lines_below(*best));
    return *best;
}

} // namespace steelyard::scene

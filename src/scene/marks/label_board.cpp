#include "scene/marks/label_board.h"

#include "scene/marks/text_width.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

namespace steelyard::scene {

namespace {

/// Height of capitals and depth of descenders of Inter, in em.
constexpr double kCapHeight = 0.73;
constexpr double kDescent = 0.22;
/// Air around words that choose their place freely [px].
constexpr double kAir_px = 3.0;

Rect with_air(const Rect& room) {
    const Point air{kAir_px, kAir_px};
    return {room.low - air, room.high + air};
}

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

Point Rect::last_inside(const Point& from, const Point& to) const {
    double share = 1.0;
    for (int part = 0; part < 2; ++part) {
        const double edge = std::clamp(to[part], low[part], high[part]);
        if (edge != to[part])
            share = std::min(share, (edge - from[part]) / (to[part] - from[part]));
    }
    return from + share * (to - from);
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

/// Off the sheet is worst, on other text nearly as bad.
double LabelBoard::cost_of_text(const Rect& room) const {
    const Point size = room.high - room.low;
    const double off_sheet = size.x() * size.y() - shared_area(room, sheet_);
    double cost = 20.0 * off_sheet;
    for (const Rect& rect : taken_)
        cost += 10.0 * shared_area(room, rect);
    return cost;
}

/// On a stroke is merely ugly.
double LabelBoard::cost_of_strokes(const Rect& room) const {
    double cost = ink_ ? ink_->ink_px2(room.low, room.high) : 0.0;
    for (const Stroke& stroke : strokes_) {
        const Point half_width{0.5 * stroke.width_px, 0.5 * stroke.width_px};
        cost +=
            length_inside(stroke.from, stroke.to, {room.low - half_width, room.high + half_width}) *
            (stroke.width_px + 0.5);
    }
    return cost;
}

Rect LabelBoard::room_with_lines_below(const Label& label, double below_px) const {
    Rect room = room_of(label, text_scale_);
    room.high.y() += below_px;
    return room;
}

/// Moved as little as brings all of it onto the sheet; its beginning, where it is too long.
Label LabelBoard::on_sheet(Label label) const {
    const Rect room = room_of(label, text_scale_);
    const Point over = (room.high - sheet_.high).cwiseMax(0.0);
    label.at -= over;
    label.at += (sheet_.low - (room.low - over)).cwiseMax(0.0);
    return label;
}

std::optional<Label> LabelBoard::nearest_free(const Label& wanted, double below_px) const {
    constexpr double kStep_px = 9.0;
    std::optional<Label> nearest;
    double least_px = 0.0;
    Label label = wanted;
    const Rect wanted_room = room_with_lines_below(wanted, below_px);
    const Point size = wanted_room.high - wanted_room.low;
    for (double x = sheet_.low.x(); x + size.x() <= sheet_.high.x(); x += kStep_px)
        for (double y = sheet_.low.y(); y + size.y() <= sheet_.high.y(); y += kStep_px) {
            const Point moved_px = Point(x, y) - wanted_room.low;
            if (nearest && moved_px.norm() >= least_px)
                continue;
            const Rect room{wanted_room.low + moved_px, wanted_room.high + moved_px};
            // Standing on a stroke counts as far as its length inside.
            const double far_px = moved_px.norm() + cost_of_strokes(room);
            if (cost_of_text(room) > 0.0 || (nearest && far_px >= least_px))
                continue;
            label.at = wanted.at + moved_px;
            nearest = label;
            least_px = far_px;
        }
    return nearest;
}

/// The same as costing nothing, the most likely hindrance looked for first.
bool LabelBoard::is_clear(const Rect& room) const {
    if (ink_ && ink_->ink_px2(room.low, room.high) > 0.0)
        return false;
    if ((room.low.array() < sheet_.low.array()).any() ||
        (room.high.array() > sheet_.high.array()).any())
        return false;
    const auto apart = [&](const Point& low, const Point& high) {
        return (low.array() >= room.high.array()).any() || (high.array() <= room.low.array()).any();
    };
    return std::all_of(taken_.begin(), taken_.end(),
                       [&](const Rect& rect) { return apart(rect.low, rect.high); }) &&
           std::all_of(strokes_.begin(), strokes_.end(), [&](const Stroke& stroke) {
               const Point half{0.5 * stroke.width_px, 0.5 * stroke.width_px};
               return apart(stroke.from.cwiseMin(stroke.to) - half,
                            stroke.from.cwiseMax(stroke.to) + half) ||
                      length_inside(stroke.from, stroke.to, {room.low - half, room.high + half}) <=
                          0.0;
           });
}

bool LabelBoard::crosses_words(const Point& from, const Point& to) const {
    return std::any_of(taken_.begin(), taken_.end(), [&](const Rect& rect) {
        return !rect.contains(from) && length_inside(from, to, rect) > 0.0;
    });
}

std::optional<Label> LabelBoard::place_free(const std::vector<Label>& ways, const Point& anchor,
                                            double below_px) {
    assert(!ways.empty());
    std::optional<Label> found;
    for (const Label& way : ways) {
        const Rect room = room_with_lines_below(way, below_px);
        if (!found && is_clear(with_air(room)) && !crosses_words(anchor, leader_end(anchor, room)))
            found = way;
    }
    if (!found)
        found = nearest_to(anchor, ways.front(), below_px);
    if (!found)
        return found;
    const Rect room = room_with_lines_below(*found, below_px);
    taken_.push_back(room);
    keep_clear(anchor, leader_end(anchor, room), 4.0);
    return found;
}

namespace {

/// Starts of a stretch from first to last, those first whose stretch is nearest to a place.
std::vector<double> nearest_starts(double first, double last, double length, double place) {
    constexpr double kStep_px = 8.0;
    std::vector<double> starts;
    for (double start = first; start <= last; start += kStep_px)
        starts.push_back(start);
    const auto gap = [&](double start) {
        return std::abs(std::clamp(place, start, start + length) - place);
    };
    std::stable_sort(starts.begin(), starts.end(),
                     [&](double a, double b) { return gap(a) < gap(b); });
    return starts;
}

} // namespace

std::optional<Label> LabelBoard::nearest_to(const Point& anchor, const Label& wanted,
                                            double below_px) const {
    std::optional<Label> nearest;
    double least_px = std::numeric_limits<double>::max();
    const Rect wanted_room = room_with_lines_below(wanted, below_px);
    const Point size = wanted_room.high - wanted_room.low;
    const Point first = sheet_.low + Point(kAir_px, kAir_px);
    const Point last = sheet_.high - Point(kAir_px, kAir_px) - size;
    const auto downs = nearest_starts(first.y(), last.y(), size.y(), anchor.y());
    for (const double x : nearest_starts(first.x(), last.x(), size.x(), anchor.x())) {
        if (std::abs(leader_end(anchor, {{x, anchor.y()}, {x + size.x(), anchor.y()}}).x() -
                     anchor.x()) >= least_px)
            break;
        for (const double y : downs) {
            const Rect room{{x, y}, Point(x, y) + size};
            const Point end = leader_end(anchor, room);
            const double far_px = (end - anchor).norm();
            if (far_px >= least_px)
                break;
            if (!is_clear(with_air(room)) || crosses_words(anchor, end))
                continue;
            nearest = wanted;
            nearest->at += room.low - wanted_room.low;
            least_px = far_px;
        }
    }
    return nearest;
}

Point leader_end(const Point& anchor, const Rect& room) {
    constexpr double kOff_px = 4.0;
    const Point off{kOff_px, kOff_px};
    return anchor.cwiseMax(room.low - off).cwiseMin(room.high + off);
}

Label LabelBoard::place(const std::vector<Label>& ways, double below_px) {
    assert(!ways.empty());
    Label best = ways.front();
    double least = -1.0;
    for (const Label& way : ways) {
        const double cost = cost_of(room_with_lines_below(way, below_px));
        if (least < 0.0 || cost < least) {
            least = cost;
            best = way;
        }
        if (cost <= 0.0)
            break;
    }
    if (cost_of_text(room_with_lines_below(best, below_px)) > 0.0)
        best = nearest_free(ways.front(), below_px).value_or(on_sheet(best));
    taken_.push_back(room_with_lines_below(best, below_px));
    return best;
}

} // namespace steelyard::scene

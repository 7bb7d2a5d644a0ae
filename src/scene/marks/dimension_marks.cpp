#include "scene/marks/dimension_marks.h"

#include "mechanics/constants.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace steelyard::scene {
namespace {

constexpr double kHead_px = 7.0;

/// Unit vector away from the lever: below a level length, to the right of an upright one.
Point outward(const DimensionLine& dimension) {
    const Point along = (dimension.to - dimension.from).normalized();
    Point side(-along.y(), along.x());
    const bool upright = std::abs(along.x()) < 1.0e-6;
    if (side.y() < 0.0 || (upright && side.x() < 0.0))
        side = -side;
    return side;
}

/// Whether two lengths that lie along the same direction cover each other's text.
bool overlap(const DimensionLine& one, const DimensionLine& other) {
    const Point along = (one.to - one.from).normalized();
    const auto span = [&](const DimensionLine& d) {
        return std::minmax({along.dot(d.from), along.dot(d.to)});
    };
    const auto [a_low, a_high] = span(one);
    const auto [b_low, b_high] = span(other);
    constexpr double kTouch_px = 2.0;
    return a_low < b_high - kTouch_px && b_low < a_high - kTouch_px;
}

void add_dimension_head(const Point& tip, const Point& along, Role role,
                        std::vector<Shape>& shapes) {
    const Point side(-along.y(), along.x());
    const Point base = tip - kHead_px * along;
    shapes.emplace_back(
        Triangle{tip, base + 0.4 * kHead_px * side, base - 0.4 * kHead_px * side, role});
}

void add_mark(const DimensionLine& dimension, double shelf_px, const DimensionStyle& style,
              LabelBoard& board, std::vector<Shape>& shapes) {
    const Point side = outward(dimension);
    const Point from = dimension.from + shelf_px * side;
    const Point to = dimension.to + shelf_px * side;
    const Point along = (to - from).normalized();
    if (style.thin_lines) {
        constexpr double kClear_px = 8.0; // between the point and the thin line that comes from it
        for (const auto& [point, end] : {std::pair{dimension.from, from}, {dimension.to, to}}) {
            shapes.emplace_back(
                Line{point + kClear_px * side, end + 4.0 * side, {Role::hairline, 1.0}});
        }
    }
    shapes.emplace_back(Line{from, to, {dimension.role, style.line_px}});
    add_dimension_head(from, -along, dimension.role, shapes);
    add_dimension_head(to, along, dimension.role, shapes);
    board.keep_clear(from, to, 6.0);

    double turn_rad = std::atan2(along.y(), along.x());
    if (turn_rad > 0.5 * mechanics::kPi || turn_rad <= -0.5 * mechanics::kPi)
        turn_rad -= std::copysign(mechanics::kPi, turn_rad); // never upside down
    const Point above(std::sin(turn_rad), -std::cos(turn_rad));
    std::vector<Label> ways;
    for (const double share : {0.5, 0.35, 0.65}) {
        for (const double rise : {5.0, -17.0}) {
            Label label;
            label.at = from + share * (to - from) + rise * style.text_scale * above;
            label.text = dimension.text;
            label.role = dimension.words_role;
            label.align = Align::centre;
            label.turn_rad = turn_rad;
            ways.push_back(std::move(label));
        }
    }
    shapes.emplace_back(board.place(ways));
}

} // namespace

void add_dimension_marks(std::vector<DimensionLine> dimensions, const DimensionStyle& style,
                         LabelBoard& board, std::vector<Shape>& shapes) {
    const auto length = [](const DimensionLine& d) { return (d.to - d.from).norm(); };
    dimensions.erase(std::remove_if(dimensions.begin(), dimensions.end(),
                                    [&](const DimensionLine& d) { return length(d) < 1.0; }),
                     dimensions.end());
    std::stable_sort(dimensions.begin(), dimensions.end(),
                     [&](const DimensionLine& one, const DimensionLine& other) {
                         return length(one) < length(other);
                     });
    std::vector<std::vector<DimensionLine>> shelves;
    for (DimensionLine& dimension : dimensions) {
        auto shelf = std::find_if(shelves.begin(), shelves.end(), [&](const auto& placed) {
            return std::none_of(placed.begin(), placed.end(), [&](const DimensionLine& other) {
                return overlap(dimension, other);
            });
        });
        if (shelf == shelves.end())
            shelf = shelves.insert(shelves.end(), std::vector<DimensionLine>{});
        const auto row = static_cast<double>(shelf - shelves.begin());
        add_mark(dimension, style.first_shelf_px + kShelf_px * style.text_scale * row, style, board,
                 shapes);
        shelf->push_back(std::move(dimension));
    }
}

} // namespace steelyard::scene

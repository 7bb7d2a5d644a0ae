#include "cli/lever_ascii.h"

#include "mechanics/lever/lever_geometry.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace steelyard::cli {

namespace {

using mechanics::Vec2;

/// A character is about twice as high as wide.
constexpr double kCharacterAspect = 2.0;
constexpr int kWidth = 60;
constexpr int kMaxHeight = 16;
constexpr int kMargin = 5; ///< for arrows and letters
constexpr int kArrow = 3;  ///< characters

/// A sheet of characters over a piece of the setup's plane.
class Sheet {
public:
    explicit Sheet(const std::vector<Vec2>& points) {
        Vec2 low = points.front();
        Vec2 high = points.front();
        for (const Vec2& point : points) {
            low = low.cwiseMin(point);
            high = high.cwiseMax(point);
        }
        const Vec2 size = high - low;
        columns_per_m_ = kWidth / std::max(size.x(), 1e-6);
        const double rows = size.y() * columns_per_m_ / kCharacterAspect;
        if (rows > kMaxHeight)
            columns_per_m_ *= kMaxHeight / rows;
        low_ = low;
        high_ = high;
        const int height =
            static_cast<int>(std::lround(size.y() * columns_per_m_ / kCharacterAspect));
        rows_.assign(static_cast<std::size_t>(height + 2 * kMargin + 1),
                     std::string(kWidth + 2 * kMargin + 1, ' '));
    }

    int column(const Vec2& point) const {
        return kMargin + static_cast<int>(std::lround((point.x() - low_.x()) * columns_per_m_));
    }

    int row(const Vec2& point) const {
        return kMargin + static_cast<int>(std::lround((high_.y() - point.y()) * columns_per_m_ /
                                                      kCharacterAspect));
    }

    void set(int at_column, int at_row, char c) {
        if (at_row >= 0 && at_row < static_cast<int>(rows_.size()) && at_column >= 0 &&
            at_column < static_cast<int>(rows_.front().size()))
            rows_[static_cast<std::size_t>(at_row)][static_cast<std::size_t>(at_column)] = c;
    }

    bool blank(int at_column, int at_row) const {
        return at_row >= 0 && at_row < static_cast<int>(rows_.size()) && at_column >= 0 &&
               at_column < static_cast<int>(rows_.front().size()) &&
               rows_[static_cast<std::size_t>(at_row)][static_cast<std::size_t>(at_column)] == ' ';
    }

    void line(const Vec2& from, const Vec2& to) {
        const int columns = column(to) - column(from);
        const int rows = row(to) - row(from);
        const char c = std::abs(rows) * 4 < std::abs(columns)   ? '='
                       : std::abs(columns) * 2 < std::abs(rows) ? '|'
                       : (columns > 0) == (rows > 0)            ? '\\'
                                                                : '/';
        trace(from, to, c, 0);
    }

    /// A line of one character, so many rows above where it lies.
    void trace(const Vec2& from, const Vec2& to, char c, int rows_up) {
        const int columns = column(to) - column(from);
        const int rows = row(to) - row(from);
        const int count = std::max({std::abs(columns), std::abs(rows), 1});
        for (int i = 0; i <= count; ++i)
            set(column(from) + columns * i / count, row(from) + rows * i / count - rows_up, c);
    }

    /// An arrow that leaves the point the way the force pulls, with its letter at the tip.
    void arrow(const Vec2& point, double direction_rad, char letter) {
        const double right = std::cos(direction_rad);
        const double down = -std::sin(direction_rad);
        const bool upright = std::abs(down) > 2.0 * std::abs(right);
        const bool level = std::abs(right) > 2.0 * std::abs(down);
        const char shaft = upright ? '|' : level ? '-' : (right > 0.0) == (down > 0.0) ? '\\' : '/';
        const int step_column = upright ? 0 : right > 0.0 ? 1 : -1;
        const int step_row = level ? 0 : down > 0.0 ? 1 : -1;
        for (int i = 1; i < kArrow; ++i)
            set(column(point) + i * step_column, row(point) + i * step_row, shaft);
        const char tip = upright ? (down > 0.0 ? 'v' : '^')
                         : level ? (right > 0.0 ? '>' : '<')
                                 : shaft;
        set(column(point) + kArrow * step_column, row(point) + kArrow * step_row, tip);
        set(column(point) + (kArrow + 1) * step_column, row(point) + (kArrow + 1) * step_row,
            letter);
    }

    /// The line of action of a force, dotted over what is still blank.
    void line_of_action(const Vec2& point, double direction_rad) {
        const Vec2 along = mechanics::unit_vector(direction_rad);
        const int reach = 2 * kWidth;
        for (int i = -reach; i <= reach; ++i) {
            const Vec2 at = point + along * (i / columns_per_m_);
            if (blank(column(at), row(at)))
                set(column(at), row(at), '.');
        }
    }

    std::string text() const {
        std::string result;
        bool begun = false;
        std::string blank_rows;
        for (const std::string& row : rows_) {
            const std::size_t end = row.find_last_not_of(' ');
            if (end == std::string::npos) {
                blank_rows += begun ? "\n" : "";
                continue;
            }
            result += blank_rows + row.substr(0, end + 1) + "\n";
            blank_rows.clear();
            begun = true;
        }
        return result;
    }

private:
    Vec2 low_ = Vec2::Zero();
    Vec2 high_ = Vec2::Zero();
    double columns_per_m_ = 1.0;
    std::vector<std::string> rows_;
};

struct Pull {
    Vec2 point_m;
    double direction_rad;
};

std::optional<Pull> pull_of(const mechanics::Lever& lever, const mechanics::Load& load) {
    if (const auto* weight = std::get_if<mechanics::Weight>(&load.action))
        return Pull{mechanics::point_at(lever.path_m, weight->at_m), mechanics::kDown_rad};
    if (const auto* force = std::get_if<mechanics::PointForce>(&load.action))
        return Pull{mechanics::point_at(lever.path_m, force->at_m), force->direction_rad};
    return std::nullopt;
}

/// The place of a quantity's name in the drawing: "effort_arm" is a length of E.
std::string legend_length(const problems::DrawnQuantity& label) {
    std::string name = label.quantity;
    std::replace(name.begin(), name.end(), '_', ' ');
    return fmt::format("  {}: {}\n", name, label.text);
}

} // namespace

std::string draw_in_ascii(const problems::LeverPicture& picture,
                          const std::vector<problems::Spot>& spots,
                          const std::vector<MarkedLine>& marks) {
    const mechanics::Lever& lever = picture.lever;
    std::vector<Vec2> points = lever.path_m;
    for (const problems::Spot& spot : spots)
        points.push_back(spot.at_m);
    Sheet sheet(points);
    for (std::size_t i = 1; i < lever.path_m.size(); ++i)
        sheet.line(lever.path_m[i - 1], lever.path_m[i]);

    std::string legend;
    if (picture.from_above)
        legend += "  (seen from above)\n";
    for (std::size_t i = 0; i < lever.loads.size(); ++i) {
        const char letter = i == 0 ? 'L' : static_cast<char>('1' + static_cast<int>(i));
        if (const std::optional<Pull> pull = pull_of(lever, lever.loads[i])) {
            if (!picture.from_above ||
                std::holds_alternative<mechanics::PointForce>(lever.loads[i].action))
                sheet.arrow(pull->point_m, pull->direction_rad, letter);
            legend += fmt::format("  {} load: {}\n", letter, lever.loads[i].name);
        }
    }
    if (picture.show_effort) {
        sheet.arrow(mechanics::point_at(lever.path_m, lever.effort.at_m),
                    lever.effort.direction_rad, 'E');
        legend += fmt::format("  E effort: {}\n", lever.effort.name);
    }
    // A place about a known axis is sought along a line of action, so the line is drawn then.
    const bool shows_line = !spots.empty() && picture.show_axis;
    if (shows_line && picture.show_effort)
        sheet.line_of_action(mechanics::point_at(lever.path_m, lever.effort.at_m),
                             lever.effort.direction_rad);
    if (shows_line && !picture.show_effort && !lever.loads.empty())
        if (const std::optional<Pull> pull = pull_of(lever, lever.loads.front()))
            sheet.line_of_action(pull->point_m, pull->direction_rad);
    if (picture.show_axis) {
        const Vec2 axis = mechanics::point_at(lever.path_m, lever.axis_at_m);
        sheet.set(sheet.column(axis), sheet.row(axis), 'o');
        sheet.set(sheet.column(axis), sheet.row(axis) + 1, '^');
        legend = fmt::format("  ^ axis: {}\n", picture.axis_name) + legend;
    }
    for (const problems::Spot& spot : spots)
        sheet.set(sheet.column(spot.at_m), sheet.row(spot.at_m), spot.letter.front());
    for (std::size_t i = 0; i < marks.size(); ++i) {
        const MarkedLine& mark = marks[i];
        sheet.trace(mark.line.from_m, mark.line.to_m, mark.character, static_cast<int>(i) + 1);
        legend += fmt::format("  {} {}: {}\n", mark.character, mark.says, mark.line.text);
    }
    for (const problems::DrawnQuantity& label : picture.labels)
        legend += legend_length(label);
    return sheet.text() + legend;
}

} // namespace steelyard::cli

#include "cli/reports/ascii_sheet.h"

#include "mechanics/lever/lever_geometry.h"

#include <algorithm>
#include <cmath>

namespace steelyard::cli {

namespace {

using mechanics::Vec2;

/// A character is about twice as high as wide.
constexpr double kCharacterAspect = 2.0;
constexpr int kMargin = 5; ///< for arrows and letters
constexpr int kArrow = 3;  ///< characters

} // namespace

AsciiSheet::AsciiSheet(const std::vector<Vec2>& points, int most_rows, int columns)
    : low_m_(points.front()), high_m_(points.front()),
      width_(std::max(columns, 30) - 2 * kMargin - 2) {
    for (const Vec2& point : points) {
        low_m_ = low_m_.cwiseMin(point);
        high_m_ = high_m_.cwiseMax(point);
    }
    const Vec2 size = high_m_ - low_m_;
    columns_per_m_ = width_ / std::max(size.x(), 1e-6);
    const double rows = size.y() * columns_per_m_ / kCharacterAspect;
    const double most = most_rows * std::max(1.0, static_cast<double>(columns) / kUsualColumns);
    if (rows > most)
        columns_per_m_ *= most / rows;
    const int height = static_cast<int>(std::lround(size.y() * columns_per_m_ / kCharacterAspect));
    rows_.assign(static_cast<std::size_t>(height + 2 * kMargin + 1),
                 std::string(static_cast<std::size_t>(width_ + 2 * kMargin + 1), ' '));
}

int AsciiSheet::column(const Vec2& point_m) const {
    return kMargin + static_cast<int>(std::lround((point_m.x() - low_m_.x()) * columns_per_m_));
}

int AsciiSheet::row(const Vec2& point_m) const {
    return kMargin + static_cast<int>(std::lround((high_m_.y() - point_m.y()) * columns_per_m_ /
                                                  kCharacterAspect));
}

void AsciiSheet::set(int at_column, int at_row, char c) {
    if (at_row >= 0 && at_row < static_cast<int>(rows_.size()) && at_column >= 0 &&
        at_column < static_cast<int>(rows_.front().size()))
        rows_[static_cast<std::size_t>(at_row)][static_cast<std::size_t>(at_column)] = c;
}

bool AsciiSheet::blank(int at_column, int at_row) const {
    return at_row >= 0 && at_row < static_cast<int>(rows_.size()) && at_column >= 0 &&
           at_column < static_cast<int>(rows_.front().size()) &&
           rows_[static_cast<std::size_t>(at_row)][static_cast<std::size_t>(at_column)] == ' ';
}

void AsciiSheet::line(const Vec2& from_m, const Vec2& to_m) {
    const int columns = column(to_m) - column(from_m);
    const int rows = row(to_m) - row(from_m);
    const char c = std::abs(rows) * 4 < std::abs(columns)   ? '='
                   : std::abs(columns) * 2 < std::abs(rows) ? '|'
                   : (columns > 0) == (rows > 0)            ? '\\'
                                                            : '/';
    trace(from_m, to_m, c, 0);
}

void AsciiSheet::trace(const Vec2& from_m, const Vec2& to_m, char c, int beside) {
    const int columns = column(to_m) - column(from_m);
    const int rows = row(to_m) - row(from_m);
    const bool upright = std::abs(rows) > std::abs(columns);
    const int count = std::max({std::abs(columns), std::abs(rows), 1});
    for (int i = 0; i <= count; ++i)
        set(column(from_m) + columns * i / count + (upright ? 2 * beside : 0),
            row(from_m) + rows * i / count - (upright ? 0 : beside), c);
}

void AsciiSheet::arrow(const Vec2& point_m, double direction_rad, char letter) {
    const double right = std::cos(direction_rad);
    const double down = -std::sin(direction_rad);
    const bool upright = std::abs(down) > 2.0 * std::abs(right);
    const bool level = std::abs(right) > 2.0 * std::abs(down);
    const char shaft = upright ? '|' : level ? '-' : (right > 0.0) == (down > 0.0) ? '\\' : '/';
    const int step_column = upright ? 0 : right > 0.0 ? 1 : -1;
    const int step_row = level ? 0 : down > 0.0 ? 1 : -1;
    for (int i = 1; i < kArrow; ++i)
        set(column(point_m) + i * step_column, row(point_m) + i * step_row, shaft);
    const char tip = upright ? (down > 0.0 ? 'v' : '^') : level ? (right > 0.0 ? '>' : '<') : shaft;
    set(column(point_m) + kArrow * step_column, row(point_m) + kArrow * step_row, tip);
    set(column(point_m) + (kArrow + 1) * step_column, row(point_m) + (kArrow + 1) * step_row,
        letter);
}

void AsciiSheet::line_of_action(const Vec2& point_m, double direction_rad) {
    const Vec2 along = mechanics::unit_vector(direction_rad);
    const int reach = 2 * width_;
    for (int i = -reach; i <= reach; ++i) {
        const Vec2 at = point_m + along * (i / columns_per_m_);
        if (blank(column(at), row(at)))
            set(column(at), row(at), '.');
    }
}

std::string AsciiSheet::text() const {
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

} // namespace steelyard::cli

#pragma once
// Drawing with characters: a sheet over a piece of the plane in which a setup is seen.

#include "mechanics/lever/lever.h"

#include <string>
#include <vector>

namespace steelyard::cli {

class AsciiSheet {
public:
    /// A usual terminal; a wider sheet may be as much higher.
    static constexpr int kUsualColumns = 72;

    /// A sheet with room around for arrows and letters.
    /// @param points      corners of the piece that is to be seen [m], y up; one or more
    /// @param most_rows   of that piece on a sheet of usual width, without the room around
    /// @param columns     of the sheet at most; 30 or more
    AsciiSheet(const std::vector<mechanics::Vec2>& points, int most_rows, int columns);

    int column(const mechanics::Vec2& point_m) const;
    int row(const mechanics::Vec2& point_m) const;

    /// Sets a character; outside of the sheet nothing is set.
    void set(int at_column, int at_row, char c);
    /// Whether a place is on the sheet and nothing stands there yet.
    bool blank(int at_column, int at_row) const;

    /// A solid line, of characters that lean as it does.
    void line(const mechanics::Vec2& from_m, const mechanics::Vec2& to_m);
    /// A line of one character, so many places beside where it lies: above a level line, at the
    /// right of an upright one.
    void trace(const mechanics::Vec2& from_m, const mechanics::Vec2& to_m, char c, int beside);
    /// An arrow that leaves the point the way the force pulls, with its letter at the tip.
    void arrow(const mechanics::Vec2& point_m, double direction_rad, char letter);
    /// The line of action of a force, dotted over what is still blank.
    void line_of_action(const mechanics::Vec2& point_m, double direction_rad);

    /// All rows that hold something and those between, a line each.
    std::string text() const;

private:
    mechanics::Vec2 low_m_ = mechanics::Vec2::Zero();
    mechanics::Vec2 high_m_ = mechanics::Vec2::Zero();
    double columns_per_m_ = 1.0;
    int width_ = 1; ///< of the piece
    std::vector<std::string> rows_;
};

} // namespace steelyard::cli

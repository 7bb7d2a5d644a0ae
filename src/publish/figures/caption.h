#pragma once
// A caption below a drawing.

#include "scene/drawing.h"

#include <string>
#include <string_view>
#include <vector>

namespace steelyard::publish {

/// Text broken into lines for the foot of a sheet of some width.
class Caption {
public:
    Caption(std::string_view text, double sheet_width_px);

    /// Puts a further paragraph below, in small quiet type.
    void add_small(std::string_view text);

    /// Height that it takes, with the space above and below it [px].
    double height_px() const;

    /// Enlarges the sheet downward and sets the caption there.
    void put_below(scene::Drawing& drawing) const;

private:
    struct Line {
        std::string text;
        bool small = false;
    };
    void add_lines(std::string_view text, bool small);
    /// From the baseline before a line to its own.
    double step_px(std::size_t line) const;

    double width_px_;
    std::vector<Line> lines_;
};

} // namespace steelyard::publish

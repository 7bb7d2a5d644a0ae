#pragma once
// Two things compared, A and B: their badges, and bars in pairs that grow from one zero. A is
// light, B is dark; each bar has its letter, so that it can be told apart on any paper.

#include "scene/drawing.h"
#include "setup/units/units.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::scene {

/// The two sides of a comparison.
enum class Side { a, b };

/// Appends the badge of a side: a square with its letter, light for A and dark for B.
/// @param corner_px  its top left
void add_side_badge(Side side, const Point& corner_px, double text_scale,
                    std::vector<Shape>& shapes);

/// Width and height of a badge at 100 % [px].
inline constexpr double kBadge_px = 22.0;

/// Sizes of one quantity on both sides, in SI.
struct BarPair {
    std::string name; ///< "hip"
    double a = 0.0;   ///< >= 0
    double b = 0.0;   ///< >= 0
    /// Where ticks stand, such as the most of a repetition; empty = no tick.
    std::optional<double> a_tick;
    std::optional<double> b_tick;
    bool chosen = false;
};

struct PairedBars {
    std::vector<BarPair> pairs;
    setup::Dimension dimension = setup::Dimension::torque;
    setup::UnitSystem units = setup::UnitSystem::si;
    Point corner_px = Point::Zero(); ///< top left
    double width_px = 284.0;         ///< of a column
    std::size_t columns = 1;         ///< the pairs fill one row of columns after another
    double between_px = 40.0;        ///< from one column to the next
    double text_scale = 1.0;
};

/// Height of one pair with its name and its difference at 100 % [px].
inline constexpr double kPair_px = 64.0;

/// Appends the bars. All pairs share one scale, which the largest bar or tick fills.
void add_paired_bars(const PairedBars& bars, std::vector<Shape>& shapes);

} // namespace steelyard::scene

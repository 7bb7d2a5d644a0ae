#pragma once
// Curves over a range for reading off: axes with round ticks, a name at each curve's end, one place
// of each curve marked. Curves differ by stroke, so that no colour is needed.

#include "scene/drawing.h"
#include "scene/marks/label_board.h"
#include "setup/units/units.h"

#include <string>
#include <vector>

namespace steelyard::scene {

/// A place of the range and the value there.
struct CurvePlace {
    double progress = 0.0; ///< 0 to 1
    double value_SI = 0.0;
};

/// One curve; the first of a plot is the strongest.
struct SweepCurve {
    std::string name;
    std::vector<double> values_SI; ///< at places evenly spaced over the range; >= 0
    CurvePlace marked;             ///< its peak, or where it stands at present
};

/// What the places of the range are called.
struct RangeScale {
    std::string title;   ///< "elbow flexion"
    std::string unit;    ///< "°", follows a number closely
    double start = 0.0;  ///< at progress 0, in the unit
    double end = 100.0;  ///< at progress 1
    double finest = 1.0; ///< to which places are told, in the unit
    double at(double progress) const { return start + progress * (end - start); }
    /// A place as it is told: "92°", "0.452 m".
    std::string text(double progress) const;
};

/// The marked place in words: "28.4 N·m at 92°", "11.7 N·m throughout" of a level curve, "0 N·m".
std::string marked_text(const SweepCurve& curve, setup::Dimension dimension,
                        setup::UnitSystem units, const RangeScale& range);

struct SweepPlot {
    std::string title; ///< "torque of the muscles"; the unit follows it
    setup::Dimension dimension = setup::Dimension::torque;
    setup::UnitSystem units = setup::UnitSystem::si;
    Role role = Role::ink;
    std::vector<SweepCurve> curves;
    RangeScale range;
    /// Numbers and title below; false where the plot below has the same range.
    bool range_words = true;
    Rect frame; ///< in which the curves lie; the words stand outside
    double text_scale = 1.0;
};

/// Room for the words around the frame of a plot at 100 % [px].
inline constexpr double kPlotLeft_px = 64.0;
inline constexpr double kPlotRight_px = 118.0;
inline constexpr double kPlotTop_px = 30.0;
inline constexpr double kPlotBottom_px = 46.0;

/// Appends the plot. The curves share one scale that begins at zero.
void add_sweep_plot(const SweepPlot& plot, std::vector<Shape>& shapes);

/// Round numbers (steps of 1, 2 or 5 times a power of ten) from the lower to the higher end.
/// @param most  at least 2: not more than about so many
std::vector<double> round_ticks(double low, double high, int most);

/// Heights as near as can be to where they are wanted, in their order, at least a gap apart, within
/// a range where that has room for them.
/// @param wanted_px  from the least to the largest
std::vector<double> spread_apart(std::vector<double> wanted_px, double gap_px, double low_px,
                                 double high_px);

} // namespace steelyard::scene

#pragma once
// Numbers and quantities as people read them, and as files keep them.

#include "setup/units/units.h"

#include <string>
#include <string_view>

namespace steelyard::setup {

/// How a number is rounded for reading.
struct NumberStyle {
    int significant_figures = 3; ///< from 1 to 15
    /// "20.0" or, where the number is 20 exactly, "20". Live readings keep the zeros so that they
    /// do not jump about; given numbers in a formula read better without.
    bool keep_zeros = true;
};

/// A quantity ready for reading, number and unit apart: they may be set in different sizes.
struct QuantityText {
    std::string number; ///< "2 300", with thin spaces between groups of three
    std::string unit;   ///< "N"; empty for a pure number

    /// Joined by a no-break space; the degree sign and the percent sign follow closely.
    std::string joined() const;
};

/// A number rounded half away from zero, with a true minus sign, thin spaces (U+2009) between
/// groups of three and never "-0". The value must be finite. What lies nearer to zero than 1e-9 is
/// rounding noise in all our quantities (a nanometre, a nanonewton) and reads "0"; what cannot be
/// written in 15 places reads "1.5 × 10^16" with raised digits.
std::string format_number(double value, const NumberStyle& style = {});

/// The SI value in the unit that suits it: m (below 10 cm: cm), N (from 100 kN: kN), N·m, kg
/// (below 1 kg: g), degrees, s; or in (from 3 ft: ft), lbf, ft·lbf, lb (below 1 lb: oz).
QuantityText format_quantity_parts(double value_SI, Dimension dimension, UnitSystem system,
                                   const NumberStyle& style = {});

/// The same as one text: "2 300 N".
std::string format_quantity(double value_SI, Dimension dimension, UnitSystem system,
                            const NumberStyle& style = {});

/// The SI value in a stated unit, one of unit_symbols: formulas keep one unit throughout.
QuantityText format_in_unit(double value_SI, Dimension dimension, std::string_view unit_symbol,
                            const NumberStyle& style = {});

/// The unit that formulas use, so that the numbers in them fit together: m, N, N·m, kg, or ft,
/// lbf, ft·lbf, lb; degrees in both.
std::string_view formula_unit(Dimension dimension, UnitSystem system);

/// The shortest decimal text that reads back to the very same double: "0.45".
std::string exact_number(double value);

/// An SI value as text in the stated unit such that parse_quantity gives the very same double
/// back: "45 cm". Where no decimal number of that unit does, the text is in the SI unit.
std::string exact_quantity(double value_SI, Dimension dimension, std::string_view unit_symbol);

} // namespace steelyard::setup

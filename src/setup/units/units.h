#pragma once
// Quantities as people type them: a number and a unit in, SI out.
//
// SI inside, always (m, kg, N, N·m, rad, s); this is where a typed "45 cm" becomes 0.45.

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::setup {

/// What kind of quantity a number is.
enum class Dimension {
    number, ///< a pure number, also "45 %" and "3:1"
    length,
    angle,
    mass,
    force,
    torque,
    time,
    speed,
    angular_speed,
    acceleration,
    stiffness, ///< force per stretch
    energy,
    power,
};

/// The units in which values are shown.
enum class UnitSystem { si, us };

/// "length", "pure number": the dimension in a sentence.
std::string_view name_of(Dimension dimension);

/// A number as it was typed.
struct TypedNumber {
    double value = 0.0;
    /// Significant figures typed. Trailing zeros of a whole number may or may not be meant, so
    /// "2300" has at least 2 and at most 4; a fraction is exact and counts as 17.
    int figures_least = 0;
    int figures_most = 0;
    double last_place = 0.0; ///< worth of one step in the last digit typed; 0 for a fraction
};

/// A quantity as it was typed.
struct TypedQuantity {
    double value_SI = 0.0;
    TypedNumber number; ///< before conversion; of a compound ("2 ft 3 in") its last part
    std::string unit; ///< symbol of the unit found ("cm"); of a compound its last part; empty when
                      ///< none was typed
    Dimension unit_dimension = Dimension::number; ///< of that unit: mass when "2 kg" was taken as
                                                  ///< a force
    double last_place_SI = 0.0; ///< worth of one step in the last digit typed, converted; 0 = exact
};

/// What is wrong with a typed quantity.
enum class UnitFault {
    empty,
    no_number,        ///< does not begin with a number
    ambiguous_number, ///< "2,300": a decimal comma or a thousands comma?
    missing_unit,     ///< a bare number where a unit is needed
    unknown_unit,
    wrong_dimension, ///< a unit of another kind of quantity
    not_finite,      ///< "inf", "nan", 1/0, or too large for a number
    trailing_text,   ///< something after the quantity
};

struct UnitError {
    UnitFault fault = UnitFault::empty;
    Dimension wanted = Dimension::number;
    std::string found;   ///< what was typed, or the part of it that is wrong
    std::string nearest; ///< nearest valid unit, or empty
    std::string mend;    ///< what to do, a full sentence
    /// The number, when one could be read: the caller may still want to judge it.
    std::optional<double> number;
    /// Filled for wrong_dimension: what it is, and its value there.
    std::optional<Dimension> found_dimension;
    std::optional<double> found_value_SI;
};

/// One sentence about what is wrong and one about what to do.
std::string to_text(const UnitError& error);

/// What parse_quantity accepts beyond the plain "number unit".
struct ReadingRules {
    /// Unit of a number that stands alone, such as the unit shown beside the field; empty = a
    /// unit must be typed. Zero never needs one.
    std::string_view bare_unit = {};
    /// "2 kg" where a force is wanted means the weight of 2 kg under standard gravity, and
    /// "3 kg·m" a torque likewise. Only where the caller says so: weight is not mass.
    bool mass_as_force = false;
};

/// Reads a number: point or comma as decimal sign, thousands in groups of three, "2e3",
/// "2 × 10^3", "1/2", "1 1/2", "½", true minus sign, blanks around. "2,300" is refused as
/// ambiguous; "2 300", "0,125" and "1,234,567" are not.
tl::expected<TypedNumber, UnitError> parse_number(std::string_view text);

/// Reads a quantity of the wanted dimension: a number as in parse_number, then any unit of the
/// dimension with or without a blank ("45 cm", "12 kgf", "20 N·m", "20 Nm", "15 ft-lb", "30°"),
/// also compounds ("2 ft 3 in", "5'10\"", "6 lb 4 oz").
tl::expected<TypedQuantity, UnitError>
parse_typed_quantity(std::string_view typed, Dimension wanted, const ReadingRules& rules = {});

/// The same, value only [SI].
tl::expected<double, UnitError> parse_quantity(std::string_view text, Dimension wanted,
                                               const ReadingRules& rules = {});

/// A value of some unit in SI, correctly rounded wherever the product is exact in a double:
/// to_SI(45, "cm") is the double nearest to 0.45. The symbol must be one of unit_symbols.
double to_SI(double value, Dimension dimension, std::string_view unit_symbol);

/// The SI value in some unit. The symbol must be one of unit_symbols.
double from_SI(double value_SI, Dimension dimension, std::string_view unit_symbol);

/// Symbols of all units of a dimension, the most usual first.
std::vector<std::string_view> unit_symbols(Dimension dimension);

} // namespace steelyard::setup

#pragma once
// The small language of a family file: arithmetic and comparisons on named quantities, for
// constraints, setups, wrong rules and steps. It is total: no loops, no names of its own, no access
// to anything but the numbers it is handed; length and depth are bounded.
//
//   load_mass * g * load_distance * sin(load_angle)
//   if(stretch > 0, stiffness * stretch, 0)
//   effort_arm >= 0.05 m and class != 1
//
// Everything is in SI, angles in radians. A number followed by a unit is that many of it: "30 deg".
// Truth is 1 or 0; two numbers within a billionth of each other are equal.

#include <tl/expected.hpp>

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::problems {

inline constexpr std::size_t kMaxExpressionLength = 600;
inline constexpr int kMaxExpressionDepth = 40;

/// What is wrong with an expression, and where.
struct ExpressionError {
    std::size_t column = 0; ///< 1-based, in bytes
    std::string message;
};

/// Index of a quantity in the numbers that an expression is evaluated on; empty = no such name.
using QuantityLookup = std::function<std::optional<std::uint16_t>(std::string_view)>;
/// How many SI units one of a unit is; empty = no such unit.
using UnitLookup = std::function<std::optional<double>(std::string_view)>;

/// An expression, parsed once and evaluated often. One that was never parsed has no value.
class Expression {
public:
    /// The value on these quantities. NaN or infinite when the expression has no value there
    /// (division by zero, root of a negative number): the caller refuses it.
    double evaluate(const double* quantities) const;

    /// evaluate() as a yes or no. No value counts as no.
    bool holds(const double* quantities) const;

    /// A piece of the expression as written, for showing it in symbols or in numbers.
    struct Piece {
        enum class Is { quantity, number, sign, function, comma } is = Is::number;
        std::string text;           ///< sign or function as typed; number with its unit
        std::uint16_t quantity = 0; ///< index, when it is a quantity
    };
    const std::vector<Piece>& pieces() const { return pieces_; }

    /// Indices of the quantities that it reads, ascending, each once.
    std::vector<std::uint16_t> reads() const;

private:
    friend class ExpressionParser;

    static constexpr std::size_t kMaxStack = 64;

    enum class Op : std::uint8_t {
        // of nothing
        number,
        quantity,
        // of one value
        negate,
        negated,
        sine,
        cosine,
        tangent,
        arcsine,
        arccosine,
        arctangent,
        root,
        magnitude,
        rounded,
        floor,
        // of two
        add,
        subtract,
        multiply,
        divide,
        power,
        less,
        less_equal,
        greater,
        greater_equal,
        equal,
        not_equal,
        both,
        either,
        smaller,
        larger,
        // of three
        choose,
    };
    struct Instruction {
        Op op = Op::number;
        std::uint8_t takes = 0; ///< how many values it works on
        std::uint16_t quantity = 0;
        double number = 0.0;
    };

    static double of_one(Op op, double a);
    static double of_two(Op op, double a, double b);

    std::vector<Instruction> program_; ///< in reverse Polish order
    std::vector<Piece> pieces_;
};

/// Parses an expression.
/// @return the expression, or the first thing wrong with it
tl::expected<Expression, ExpressionError> parse_expression(std::string_view text,
                                                           const QuantityLookup& quantity_of,
                                                           const UnitLookup& unit_of);

} // namespace steelyard::problems

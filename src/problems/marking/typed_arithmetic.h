#pragma once
// A calculation typed where a number is asked: "70*0.4+50*1.2", "4.5/37.5 m", "20 sin 35".

#include <tl/expected.hpp>

#include <cstddef>
#include <string>
#include <string_view>

namespace steelyard::problems {

/// What may be typed at most, in bytes, and how deep brackets, signs and functions may nest.
inline constexpr std::size_t kLongestArithmetic = 120;
inline constexpr int kDeepestArithmetic = 20;

/// A calculation, worked out.
struct TypedArithmetic {
    double value = 0.0;    ///< finite
    bool computed = false; ///< false when it was one number alone
    std::string rest;      ///< what stands behind it: a unit, or nothing
};

/// Works out + - * / ^, brackets, sqrt and sin, cos, tan, asin, acos, atan, as far as the text
/// goes; angles in degrees unless "rad" stands behind them. A function needs no brackets ("sin
/// 35"), a bracket or a function behind a number no product sign. Points and commas are decimal
/// signs.
/// @return the value, or a sentence on what is wrong; never an infinity or NaN
tl::expected<TypedArithmetic, std::string> read_arithmetic(std::string_view typed);

/// What is typed around a number without changing it, cut away: "= 187 N", "~187", "F = 187 N",
/// "about 187".
/// @param apostrophes  whether they part thousands, as in "1'255"; in feet they do not
std::string plain_number_text(std::string_view typed, bool apostrophes);

} // namespace steelyard::problems

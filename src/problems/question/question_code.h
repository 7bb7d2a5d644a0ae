#pragma once
// The short code under every question: family and seed, typeable, hard to mistype.
//
// Ten symbols of Crockford's base 32 (no I, L, O, U): 2 bits format, 20 bits of the family's name,
// 23 bits seed, 5 bits check. Shown as two groups of five: "K7M2Q-9XD4T".
// Source of the alphabet: D. Crockford, "Base 32", crockford.com/base32.html (from memory).

#include <tl/expected.hpp>

#include <cstdint>
#include <string>
#include <string_view>

namespace steelyard::problems {

/// Formats, of which a code says its own: in the units in which the family is written, or in its US
/// edition. A new one is needed when the same code would no longer make the same question.
inline constexpr std::uint64_t kCodeFormat = 1;
inline constexpr std::uint64_t kUsCodeFormat = 2;
/// Seeds of one family: 0 to kSeeds - 1.
inline constexpr std::uint64_t kSeeds = 1ULL << 23U;
/// Numbers that stand for a family: two families of a bank must not share one.
inline constexpr std::uint64_t kFamilyNumbers = 1ULL << 20U;

struct CodeParts {
    std::uint64_t family_number = 0;
    std::uint64_t seed = 0;
    bool us_edition = false; ///< drawn in US units, of a family that is written in SI
};

/// Number of a family in its codes, from its id.
std::uint64_t family_number(std::string_view family_id);

std::string write_code(const CodeParts& parts);

/// Reads a code in upper or lower case, with or without dash and spaces; I and L are read as 1,
/// O as 0.
/// @return its parts, or a sentence on what is wrong with it
tl::expected<CodeParts, std::string> read_code(std::string_view code);

} // namespace steelyard::problems

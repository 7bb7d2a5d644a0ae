#include "problems/question/question_code.h"

#include "problems/draw/random.h"

#include <fmt/core.h>

#include <array>

namespace steelyard::problems {

namespace {

constexpr std::string_view kSymbols = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
constexpr std::size_t kLength = 10;
constexpr std::uint64_t kCheckPrime = 31;

using Digits = std::array<std::uint64_t, kLength>;

/// Place-weighted sum: changes when a symbol is mistyped or two neighbours are swapped.
std::uint64_t check_of(const Digits& digits) {
    std::uint64_t sum = 0;
    for (std::size_t i = 0; i + 1 < kLength; ++i)
        sum += (i + 1) * digits[i];
    return sum % kCheckPrime;
}

int digit_of(char c) {
    if (c >= 'a' && c <= 'z')
        c = static_cast<char>(c - 'a' + 'A');
    if (c == 'I' || c == 'L')
        c = '1';
    if (c == 'O')
        c = '0';
    const std::size_t at = kSymbols.find(c);
    return at == std::string_view::npos ? -1 : static_cast<int>(at);
}

} // namespace

std::uint64_t family_number(std::string_view family_id) {
    const std::uint64_t hash = hash_of(family_id.data(), family_id.size());
    return (hash ^ (hash >> 20U) ^ (hash >> 40U)) % kFamilyNumbers;
}

std::string write_code(const CodeParts& parts) {
    const std::uint64_t format = parts.us_edition ? kUsCodeFormat : kCodeFormat;
    std::uint64_t bits = (format * kFamilyNumbers + parts.family_number) * kSeeds + parts.seed;
    Digits digits{};
    for (std::size_t i = kLength - 1; i-- > 0;) {
        digits[i] = bits % 32;
        bits /= 32;
    }
    digits[kLength - 1] = check_of(digits);
    std::string code;
    for (std::size_t i = 0; i < kLength; ++i) {
        if (i == kLength / 2)
            code += '-';
        code += kSymbols[static_cast<std::size_t>(digits[i])];
    }
    return code;
}

tl::expected<CodeParts, std::string> read_code(std::string_view code) {
    Digits digits{};
    std::size_t count = 0;
    for (const char c : code) {
        if (c == '-' || c == ' ')
            continue;
        const int digit = digit_of(c);
        if (digit < 0)
            return tl::make_unexpected(
                fmt::format("'{}' cannot stand in a question code; it has digits and letters only, "
                            "such as K7M2Q-9XD4T",
                            c));
        if (count == kLength)
            return tl::make_unexpected(fmt::format(
                "a question code has {} letters and digits; this one has more", kLength));
        digits[count++] = static_cast<std::uint64_t>(digit);
    }
    if (count < kLength)
        return tl::make_unexpected(fmt::format(
            "a question code has {} letters and digits; this one has {}", kLength, count));
    if (digits[kLength - 1] != check_of(digits))
        return tl::make_unexpected(
            std::string("this code has a slip in it: compare it letter by letter"));
    std::uint64_t bits = 0;
    for (std::size_t i = 0; i + 1 < kLength; ++i)
        bits = bits * 32 + digits[i];
    const std::uint64_t format = bits / (kSeeds * kFamilyNumbers);
    if (format != kCodeFormat && format != kUsCodeFormat)
        return tl::make_unexpected(fmt::format("this code was made by another edition of the bank "
                                               "(format {}; this one reads {} and {})",
                                               format, kCodeFormat, kUsCodeFormat));
    return CodeParts{bits / kSeeds % kFamilyNumbers, bits % kSeeds, format == kUsCodeFormat};
}

} // namespace steelyard::problems

#pragma once
// Checks of what is typed for an option, with a sentence that says what to type instead.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace CLI {
class App;
class Option;
} // namespace CLI

namespace steelyard::cli {

/// " Did you mean 'solve'?" with the word that a mistyped one is nearest to; empty when none is
/// near.
std::string did_you_mean(std::string_view typed, const std::vector<std::string>& words);

/// The option takes one of these words, capitals ignored; another is refused with all of them and
/// the nearest. Help shows them as its type: "{a,b,c}". @return the option
CLI::Option* only_words(CLI::Option* option, const std::vector<std::string>& words);

/// Declares --seed: a whole number from 0 to 18446744073709551615 (64 bits).
/// @param says  what the same seed gives
void add_seed_option(CLI::App& command, std::optional<std::uint64_t>& seed,
                     const std::string& says);

} // namespace steelyard::cli

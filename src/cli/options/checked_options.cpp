#include "cli/options/checked_options.h"

#include "setup/toml/spelling.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <charconv>
#include <limits>

namespace steelyard::cli {

namespace {

using Seed = std::uint64_t;

std::optional<Seed> read_seed(const std::string& text) {
    Seed seed = 0;
    const char* const end = text.data() + text.size();
    const auto read = std::from_chars(text.data(), end, seed); // takes no sign and no blank
    return read.ec == std::errc() && read.ptr == end ? std::optional(seed) : std::nullopt;
}

} // namespace

std::string did_you_mean(std::string_view typed, const std::vector<std::string>& words) {
    const std::string meant = setup::nearest_spelling(typed, {words.begin(), words.end()});
    return meant.empty() ? "" : fmt::format(" Did you mean '{}'?", meant);
}

CLI::Option* only_words(CLI::Option* option, const std::vector<std::string>& words) {
    const auto check = [words](std::string& typed) -> std::string {
        const auto found = std::find_if(words.begin(), words.end(), [&](const std::string& word) {
            return CLI::detail::to_lower(word) == CLI::detail::to_lower(typed);
        });
        if (found == words.end())
            return fmt::format("there is no '{}'.{} It takes {}.", typed,
                               did_you_mean(typed, words), fmt::join(words, ", "));
        typed = *found;
        return "";
    };
    return option->check(CLI::Validator(check, ""))
        ->type_name(fmt::format("{{{}}}", fmt::join(words, ",")));
}

void add_seed_option(CLI::App& command, std::optional<std::uint64_t>& seed,
                     const std::string& says) {
    command
        .add_option_function<std::string>(
            "--seed",
            [&seed](const std::string& typed) {
                seed = read_seed(typed);
                if (!seed)
                    throw CLI::ValidationError(
                        "--seed", fmt::format("'{}' is no seed. Write a whole number from 0 to {}.",
                                              typed, std::numeric_limits<Seed>::max()));
            },
            says)
        ->type_name("N");
}

} // namespace steelyard::cli

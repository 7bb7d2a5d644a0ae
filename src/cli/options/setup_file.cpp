#include "cli/options/setup_file.h"

#include "cli/options/shipped_file.h"
#include "cli/options/standard_stream.h"

#include <filesystem>
#include <ostream>
#include <utility>

namespace steelyard::cli {

namespace {

std::optional<setup::Setup> from_input(const Streams& streams) {
    auto setup = setup::parse_setup(all_of_input(streams), kStandardInput);
    if (setup)
        return std::move(*setup);
    streams.err << to_text(setup.error()) << '\n';
    return std::nullopt;
}

} // namespace

std::optional<setup::Setup> setup_from(const std::string& file, const Streams& streams) {
    if (file == kStandardStream)
        return from_input(streams);
    const std::filesystem::path path = shipped_or_own(file, "setups", setup::kSetupEnding);
    auto setup = setup::read_setup(path);
    if (!setup) {
        streams.err << to_text(setup.error()) << '\n';
        std::error_code failed;
        const bool is_there = std::filesystem::exists(path, failed);
        const std::string meant =
            is_there ? "" : nearest_shipped(file, "setups", setup::kSetupEnding);
        if (!meant.empty())
            streams.err << "Did you mean " << meant
                        << "? `steelyard list setups` and `steelyard list "
                        << "exercises` name all that come with the program.\n";
        return std::nullopt;
    }
    return std::move(*setup);
}

std::optional<mechanics::LeverResult> solved(const setup::LeverSetup& lever,
                                             const Streams& streams) {
    auto result = mechanics::solve_lever(lever.lever);
    if (!result) {
        streams.err << to_text(setup::placed_error(result.error(), lever.source)) << '\n';
        return std::nullopt;
    }
    return std::move(*result);
}

} // namespace steelyard::cli

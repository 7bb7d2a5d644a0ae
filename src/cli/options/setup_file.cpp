#include "cli/options/setup_file.h"

#include "cli/options/shipped_file.h"

#include <ostream>
#include <utility>

namespace steelyard::cli {

std::optional<setup::Setup> setup_from(const std::string& file, const Streams& streams) {
    auto setup = setup::read_setup(shipped_or_own(file, "setups", setup::kSetupEnding));
    if (!setup) {
        streams.err << to_text(setup.error()) << '\n';
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

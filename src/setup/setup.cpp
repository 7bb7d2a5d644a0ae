#include "setup/setup.h"

#include "setup/files/folder.h"

#include <algorithm>
#include <tuple>

namespace steelyard::setup {
namespace {

bool comes_before(const SetupListing& one, const SetupListing& other) {
    const auto rank = [](const SetupListing& listing) {
        return listing.setup ? std::tuple(0, head_of(*listing.setup).order,
                                          head_of(*listing.setup).name, listing.path.string())
                             : std::tuple(1, 0, std::string(), listing.path.string());
    };
    return rank(one) < rank(other);
}

} // namespace

tl::expected<Setup, InputError> setup_of(const TomlDocument& document) {
    InputErrors errors;
    TomlReader top(document, errors);
    const auto kind = top.choice("kind", {"lever", "body"}, Need::required);
    if (!kind)
        return tl::make_unexpected(first_of(errors));
    if (*kind == 0)
        return lever_setup_of(document).map(
            [](LeverSetup setup) { return Setup(std::move(setup)); });
    return shipped_segment_tables()
        .and_then([&](const std::vector<NamedSegmentTable>& tables) {
            return body_setup_of(document, tables);
        })
        .map([](BodySetup setup) { return Setup(std::move(setup)); });
}

const SetupHead& head_of(const Setup& setup) {
    return std::visit([](const auto& any) -> const SetupHead& { return any.head; }, setup);
}

tl::expected<Setup, InputError> read_setup(const std::filesystem::path& path) {
    return read_toml_file(path).and_then(setup_of);
}

tl::expected<Setup, InputError> parse_setup(std::string_view text, const std::string& file) {
    return parse_toml(text, file).and_then(setup_of);
}

std::string write_setup(const Setup& setup) {
    if (const auto* body = std::get_if<BodySetup>(&setup))
        return write_body_setup(*body);
    return write_lever_setup(std::get<LeverSetup>(setup));
}

tl::expected<std::vector<SetupListing>, InputError>
list_setups(const std::filesystem::path& folder) {
    const auto paths = files_ending(folder, kSetupEnding);
    if (!paths)
        return tl::make_unexpected(paths.error());
    std::vector<SetupListing> listings;
    for (const std::filesystem::path& path : *paths)
        listings.push_back({path, read_setup(path)});
    std::sort(listings.begin(), listings.end(), comes_before);
    return listings;
}

} // namespace steelyard::setup

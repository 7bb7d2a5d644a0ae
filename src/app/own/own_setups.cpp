#include "app/own/own_setups.h"

#include "app/own/own_files.h"
#include "publish/files/whole_file.h"
#include "words/letter_case.h"

#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <system_error>

namespace steelyard::app {

namespace fs = std::filesystem;

namespace {

using words::in_small_letters;

constexpr const char* kRemoved = "removed";

std::optional<std::string> text_in(const fs::path& path) {
    std::ifstream file(path, std::ios::binary);
    if (!file)
        return std::nullopt;
    return std::string(std::istreambuf_iterator<char>(file), {});
}

void give_name(setup::Setup& setup, const std::string& name) {
    std::visit([&](auto& one) { one.head.name = name; }, setup);
}

/// True where writing it again would lose nothing: neither comments nor an order of lines.
bool is_as_we_write(const std::string& text) {
    const auto read = setup::parse_setup(text, {});
    return read && setup::write_setup(*read) == text;
}

/// Keeps what was written by hand beside the file, before it is first written over.
std::string keep_original(const fs::path& path, const std::string& text) {
    fs::path original = path;
    original += ".before";
    std::error_code failed;
    if (is_as_we_write(text) || fs::exists(original, failed))
        return {};
    const auto written = publish::write_whole_file(original, text);
    return written ? std::string() : written.error().message;
}

/// Why a file may not be written over; empty when it holds what it did.
std::optional<std::string> change_since(const OwnFile& file) {
    const auto present = text_in(file.path);
    const std::string name = file.path.filename().string();
    if (!present)
        return name + " is no longer there: save it as another one.";
    if (*present != file.text)
        return fmt::format("Another program has changed {} since it was opened here. Save yours as "
                           "another one, or choose it from the shelf again to go on with that.",
                           name);
    return std::nullopt;
}

} // namespace

std::vector<OwnSetup> OwnSetups::all(std::vector<std::string>& faults) const {
    std::vector<OwnSetup> own;
    std::error_code failed;
    if (folder_.empty() || !fs::is_directory(folder_, failed))
        return own; // nothing has been kept yet
    auto listings = setup::list_setups(folder_);
    if (!listings) {
        faults.push_back(setup::to_text(listings.error()));
        return own;
    }
    for (setup::SetupListing& listing : *listings)
        if (!listing.setup)
            faults.push_back(setup::to_text(listing.setup.error()));
        else if (auto text = text_in(listing.path))
            own.push_back({*std::move(listing.setup), {listing.path, *std::move(text)}});
    std::stable_sort(own.begin(), own.end(), [](const OwnSetup& one, const OwnSetup& other) {
        return in_small_letters(head_of(one.setup).name) <
               in_small_letters(head_of(other.setup).name);
    });
    return own;
}

std::optional<OwnFile> OwnSetups::file_at(const fs::path& path) const {
    std::error_code failed;
    if (path.empty() || !fs::equivalent(path.parent_path(), folder_, failed))
        return std::nullopt;
    auto text = text_in(path);
    return text ? std::optional(OwnFile{folder_ / path.filename(), *std::move(text)})
                : std::nullopt;
}

/// @param besides  the file that may have the name, as it is the one to be written
std::optional<std::string> OwnSetups::trouble_with(const std::string& name,
                                                   const fs::path& besides) const {
    if (folder_.empty())
        return "It could not be saved: no home folder is known. Set HOME and start again.";
    if (name.find_first_not_of(' ') == std::string::npos)
        return "Enter a name to save it under.";
    std::vector<std::string> faults;
    for (const OwnSetup& one : all(faults))
        if (one.file.path != besides &&
            in_small_letters(head_of(one.setup).name) == in_small_letters(name))
            return fmt::format("There is one called {} among yours: choose another name.", name);
    return std::nullopt;
}

tl::expected<OwnFile, std::string> OwnSetups::write(const fs::path& path,
                                                    const setup::Setup& setup) const {
    std::error_code failed;
    fs::create_directories(folder_, failed);
    std::string text = setup::write_setup(setup);
    if (const auto written = publish::write_whole_file(path, text); !written)
        return tl::unexpected("It could not be saved: " + written.error().message);
    return OwnFile{path, std::move(text)};
}

tl::expected<OwnFile, std::string> OwnSetups::keep_new(setup::Setup setup,
                                                       const std::string& name) const {
    if (auto trouble = trouble_with(name, {}))
        return tl::unexpected(*std::move(trouble));
    give_name(setup, name);
    return write(free_path(folder_, name, setup::kSetupEnding, "setup"), setup);
}

tl::expected<OwnFile, std::string> OwnSetups::keep_again(const setup::Setup& setup,
                                                         const OwnFile& file) const {
    if (auto changed = change_since(file))
        return tl::unexpected(*std::move(changed));
    if (const std::string trouble = keep_original(file.path, file.text); !trouble.empty())
        return tl::unexpected("It could not be saved: " + trouble);
    return write(file.path, setup);
}

tl::expected<OwnFile, std::string>
OwnSetups::keep_renamed(setup::Setup setup, const std::string& name, const OwnFile& file) const {
    if (auto trouble = trouble_with(name, file.path))
        return tl::unexpected(*std::move(trouble));
    give_name(setup, name);
    if (auto changed = change_since(file))
        return tl::unexpected(*std::move(changed));
    auto kept = write(free_path(folder_, name, setup::kSetupEnding, "setup"), setup);
    if (kept)
        if (const auto removed = remove(file.path); !removed)
            return tl::unexpected(removed.error());
    return kept;
}

tl::expected<fs::path, std::string> OwnSetups::remove(const fs::path& file) const {
    std::error_code failed;
    const fs::path aside = folder_ / kRemoved;
    fs::create_directories(aside, failed);
    fs::path to = aside / file.filename();
    for (int number = 2; fs::exists(to, failed); ++number)
        to = aside / fmt::format("{}-{}", number, file.filename().string());
    fs::rename(file, to, failed);
    if (failed)
        return tl::unexpected(fmt::format("{} could not be removed: {}. See whether the folder may "
                                          "be written to.",
                                          file.filename().string(), failed.message()));
    return to;
}

std::string OwnSetups::put_back(const fs::path& removed) const {
    const auto read = setup::read_setup(removed);
    if (!read)
        return setup::to_text(read.error());
    std::error_code failed;
    fs::rename(removed, free_path(folder_, head_of(*read).name, setup::kSetupEnding, "setup"),
               failed);
    return failed ? fmt::format("It could not be put back: {}. It lies at {}.", failed.message(),
                                removed.string())
                  : std::string();
}

} // namespace steelyard::app

#pragma once
// The person's own setups, kept as files of the same format as those that come with the program.

#include "setup/setup.h"

#include <tl/expected.hpp>

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

/// A file of an own setup, and what it held when it was last read or written here: when it holds
/// something else, another program has changed it since.
struct OwnFile {
    std::filesystem::path path;
    std::string text;

    bool operator==(const OwnFile&) const = default;
};

struct OwnSetup {
    setup::Setup setup;
    OwnFile file;
};

class OwnSetups {
public:
    /// @param folder  is made when something is first kept; empty when no home is known
    explicit OwnSetups(std::filesystem::path folder) : folder_(std::move(folder)) {}

    const std::filesystem::path& folder() const { return folder_; }

    /// All that can be read, by their names.
    /// @param faults  gets a sentence for each file that cannot
    std::vector<OwnSetup> all(std::vector<std::string>& faults) const;

    /// A file of the folder that was opened by its path; empty for any other.
    std::optional<OwnFile> file_at(const std::filesystem::path& path) const;

    /// Keeps a setup under a name in a file of its own.
    /// @return the file, or a sentence: the name is empty or taken, the folder cannot be written to
    tl::expected<OwnFile, std::string> keep_new(setup::Setup setup, const std::string& name) const;

    /// Keeps a setup in the file that it came from, under its name. A text that was written by hand
    /// stays beside it as it was before the first change, under the same name with `.before`.
    /// @return the file, or a sentence: another program has changed the file meanwhile, or removed
    ///         it, or it cannot be written
    tl::expected<OwnFile, std::string> keep_again(const setup::Setup& setup,
                                                  const OwnFile& file) const;

    /// The same under another name, in a file of that name; the former file goes.
    tl::expected<OwnFile, std::string> keep_renamed(setup::Setup setup, const std::string& name,
                                                    const OwnFile& file) const;

    /// Puts a file aside, into the folder `removed` beside the others.
    /// @return where it lies now, or a sentence saying why it stays
    tl::expected<std::filesystem::path, std::string>
    remove(const std::filesystem::path& file) const;

    /// Brings a removed file back.
    /// @return a sentence saying why it cannot be; empty when it is back
    std::string put_back(const std::filesystem::path& removed) const;

private:
    std::optional<std::string> trouble_with(const std::string& name,
                                            const std::filesystem::path& besides) const;
    tl::expected<OwnFile, std::string> write(const std::filesystem::path& path,
                                             const setup::Setup& setup) const;

    std::filesystem::path folder_;
};

} // namespace steelyard::app

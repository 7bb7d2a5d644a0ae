#pragma once
// Folders and files of a test's own, gone when the test ends.

#include "catch.h"

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <string_view>

/// The bytes of a file; empty when there is none.
inline std::string content(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

/// An empty folder under a name that nothing else has, so that test programs run side by side.
class TempFolder {
public:
    TempFolder() {
        std::string pattern =
            (std::filesystem::temp_directory_path() / "steelyard_test_XXXXXX").string();
        REQUIRE(mkdtemp(pattern.data()) != nullptr);
        path_ = pattern;
    }
    ~TempFolder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    TempFolder(const TempFolder&) = delete;
    TempFolder& operator=(const TempFolder&) = delete;

    std::string path() const { return path_.string(); }
    std::string operator/(const std::string& name) const { return (path_ / name).string(); }

    /// Files and folders in it.
    auto count() const {
        return std::distance(std::filesystem::directory_iterator(path_),
                             std::filesystem::directory_iterator());
    }

    /// Writes a file, in a folder within where its name has one.
    /// @return where it is
    std::string put(const std::string& name, std::string_view bytes) const {
        const std::filesystem::path file = path_ / name;
        std::filesystem::create_directories(file.parent_path());
        std::ofstream stream(file, std::ios::binary);
        stream.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
        REQUIRE(stream.flush());
        return file.string();
    }

private:
    std::filesystem::path path_;
};

/// One file in such a folder.
class TempFile {
public:
    TempFile(const std::string& name, std::string_view bytes) : path_(folder_.put(name, bytes)) {}

    const std::string& path() const { return path_; }

private:
    TempFolder folder_;
    std::string path_;
};

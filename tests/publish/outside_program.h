#pragma once
// Runs a program of the system on a file that a test wrote.

#include "catch.h"
#include "publish/whole_file.h"

#include <cstdio>
#include <filesystem>
#include <string>
#include <string_view>
#include <sys/wait.h>

struct Ran {
    int status = -1;
    std::string out;
};

inline Ran run_outside(const std::string& command) {
    std::FILE* pipe = popen((command + " 2>&1").c_str(), "r");
    REQUIRE(pipe != nullptr);
    Ran ran;
    char block[4096];
    for (std::size_t n = 0; (n = std::fread(block, 1, sizeof block, pipe)) > 0;) {
        ran.out.append(block, n);
    }
    const int raw = pclose(pipe);
    ran.status = WIFEXITED(raw) ? WEXITSTATUS(raw) : -1;
    return ran;
}

inline bool has_program(const std::string& name) {
    return run_outside("command -v " + name).status == 0;
}

/// A file with these bytes in a folder of the test's own; gone when the test ends.
class TempFile {
public:
    TempFile(const std::string& name, std::string_view bytes)
        : path_(std::filesystem::temp_directory_path() / ("steelyard_publish_test_" + name)) {
        REQUIRE(steelyard::publish::write_whole_file(path_, bytes));
    }
    ~TempFile() { std::filesystem::remove(path_); }
    TempFile(const TempFile&) = delete;
    TempFile& operator=(const TempFile&) = delete;

    std::string path() const { return path_.string(); }

private:
    std::filesystem::path path_;
};

/// The text without any white space, thin and no-break spaces included: lines are broken anywhere.
inline std::string squeezed(std::string text) {
    for (const std::string_view space : {"\xC2\xA0", "\xE2\x80\x89", "\xE2\x80\xAF"}) {
        for (std::size_t at = 0; (at = text.find(space, at)) != std::string::npos;) {
            text.erase(at, space.size());
        }
    }
    std::string kept;
    for (const char c : text) {
        if (std::string_view(" \t\r\n\f").find(c) == std::string_view::npos) {
            kept += c;
        }
    }
    return kept;
}

#pragma once
// The session in progress, kept beside the record as the window keeps it, so that either goes on
// where the other was broken off.

#include "cli/study/study.h"

#include <filesystem>
#include <optional>
#include <string>

namespace steelyard::cli {

class KeptBeside {
public:
    explicit KeptBeside(const Study& study);

    /// The text that is kept; empty without one.
    std::optional<std::string> read() const;
    /// Keeps it; where the folder refuses, a session can only not be resumed, which costs no
    /// answer.
    void write(const std::string& text) const;
    void forget() const;

private:
    std::filesystem::path path_;
};

} // namespace steelyard::cli

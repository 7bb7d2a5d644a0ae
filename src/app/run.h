#pragma once
// The window, from opening it to closing it.

#include "publish/tools.h"

#include <filesystem>
#include <optional>

namespace steelyard::app {

struct RunOptions {
    std::filesystem::path data_folder;         ///< holds assets/ and question_bank/
    std::filesystem::path record_folder;       ///< empty = the usual one
    std::optional<std::filesystem::path> file; ///< a setup or a lesson to begin with
    publish::Tools tools;                      ///< what this edition can make
    /// Where to write what each frame shows, in words and places, a line of JSON a frame.
    std::optional<std::filesystem::path> narration;
    int width_px = 0; ///< 0 = as it was last time
    int height_px = 0;
};

/// Runs the window until it is closed.
/// @return the program's exit status: 0, 2 when the named file cannot be used, 1 when there can
///         be no window; what is wrong is said on standard error
int run(const RunOptions& options);

} // namespace steelyard::app

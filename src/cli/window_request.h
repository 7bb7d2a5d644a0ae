#pragma once
// What the command line asks of the window.

#include <tl/expected.hpp>

#include <filesystem>
#include <optional>
#include <string>

namespace CLI {
class App;
}

namespace steelyard::cli {

/// steelyard [--data DIR] [--size WxH] [--narration FILE] [FILE]
struct WindowRequest {
    std::optional<std::filesystem::path> file;          ///< a setup or a lesson to begin with
    std::optional<std::filesystem::path> narration;     ///< told what every frame shows
    std::optional<std::filesystem::path> record_folder; ///< empty = the usual one
    int width_px = 0;                                   ///< 0 = as it was last time
    int height_px = 0;
};

/// What was typed for the window, as it was typed.
struct WindowWords {
    std::string file;
    std::string size;
    std::string narration;
    std::string data;
};

/// Declares FILE, --data, --size and --narration.
void add_window_options(CLI::App& command, WindowWords& words);

/// True when the arguments ask for the window: none at all, the file of a setup or a lesson, or an
/// option of the window; --data DIR may stand before.
bool asks_for_window(int argc, const char* const* argv);

/// Reads such arguments.
/// @return the request, or a sentence saying what is wrong with them
tl::expected<WindowRequest, std::string> read_window_request(int argc, const char* const* argv);

} // namespace steelyard::cli

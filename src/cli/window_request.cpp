#include "cli/window_request.h"

#include "cli/study/record_folder.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <string_view>

namespace steelyard::cli {

namespace {

/// "1280x720"; no window is smaller or larger than these.
constexpr int kLeast_px = 320;
constexpr int kMost_px = 16000;

bool ends_with(std::string_view text, std::string_view ending) {
    return text.size() > ending.size() && text.substr(text.size() - ending.size()) == ending;
}

bool read_size(const std::string& text, WindowRequest& request) {
    int width = 0;
    int height = 0;
    char rest = 0;
    if (std::sscanf(text.c_str(), "%5dx%5d%c", &width, &height, &rest) != 2)
        return false;
    for (const int side : {width, height})
        if (side < kLeast_px || side > kMost_px)
            return false;
    request.width_px = width;
    request.height_px = height;
    return true;
}

} // namespace

bool asks_for_window(int argc, const char* const* argv) {
    const int data_words = leading_data_words(argc, argv);
    if (argc <= 1 + data_words)
        return true;
    const std::string_view first = argv[1 + data_words];
    return ends_with(first, ".toml") || first == "--size" || first == "--narration";
}

void add_window_options(CLI::App& command, WindowWords& words) {
    command.add_option("FILE", words.file, "a setup or a lesson to begin with")->type_name("");
    command.add_option("--size", words.size, "as large as this")->type_name("WxH");
    command
        .add_option("--narration", words.narration,
                    "write what every frame shows, in words and places, as lines of JSON")
        ->type_name("FILE");
    add_data_option(command, words.data);
}

tl::expected<WindowRequest, std::string> read_window_request(int argc, const char* const* argv) {
    WindowWords words;
    CLI::App parser;
    parser.set_help_flag();
    add_window_options(parser, words);
    try {
        parser.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
        return tl::unexpected(std::string(error.what()));
    }
    WindowRequest request;
    const auto take = [](const std::string& typed, std::optional<std::filesystem::path>& path) {
        if (!typed.empty())
            path = typed;
    };
    take(words.file, request.file);
    take(words.narration, request.narration);
    take(words.data, request.record_folder);
    if (!words.size.empty() && !read_size(words.size, request))
        return tl::unexpected(fmt::format("'{}' is not a size of a window: give width and height "
                                          "from {} to {}, as in --size 1280x720",
                                          words.size, kLeast_px, kMost_px));
    return request;
}

} // namespace steelyard::cli

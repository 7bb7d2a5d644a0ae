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

tl::expected<WindowRequest, std::string> read_window_request(int argc, const char* const* argv) {
    WindowRequest request;
    std::string size;
    std::string data;
    CLI::App parser;
    parser.set_help_flag();
    parser.add_option("--size", size);
    parser.add_option("--narration", request.narration);
    parser.add_option("file", request.file);
    add_data_option(parser, data);
    try {
        parser.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
        return tl::unexpected(std::string(error.what()));
    }
    if (!data.empty())
        request.record_folder = data;
    if (!size.empty() && !read_size(size, request))
        return tl::unexpected(fmt::format("'{}' is not a size of a window: give width and height "
                                          "from {} to {}, as in --size 1280x720",
                                          size, kLeast_px, kMost_px));
    return request;
}

} // namespace steelyard::cli

#include "cli/options/picture_options.h"

#include "cli/options/out_file.h"
#include "paint/paint_tools.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <charconv>
#include <optional>
#include <ostream>

namespace steelyard::cli {
namespace {

/// Reads "1280x720".
std::optional<publish::PictureSize> read_size(const std::string& text) {
    publish::PictureSize size;
    const char* const end = text.data() + text.size();
    const auto width = std::from_chars(text.data(), end, size.width_px);
    if (width.ec != std::errc() || width.ptr == end || (*width.ptr != 'x' && *width.ptr != 'X'))
        return std::nullopt;
    const auto height = std::from_chars(width.ptr + 1, end, size.height_px);
    return height.ec == std::errc() && height.ptr == end ? std::optional(size) : std::nullopt;
}

scene::Look read_look(const std::string& text) {
    if (text == "light")
        return scene::Look::light;
    if (text == "dark")
        return scene::Look::dark;
    if (text == "print")
        return scene::Look::print;
    throw CLI::ValidationError("--look",
                               fmt::format("'{}' is none of light, dark and print.", text));
}

} // namespace

void add_picture_options(CLI::App& command, PictureOptions& options) {
    command
        .add_option("--out", options.out,
                    "file to write; .png, .svg or .pdf says the format. A repetition moves in "
                    "a .gif, or as a PNG each in a folder whose name ends in /")
        ->required()
        ->type_name("FILE");
    add_force_option(command, options.force);
    command
        .add_option_function<std::string>(
            "--size",
            [&options](const std::string& text) {
                const auto size = read_size(text);
                if (!size)
                    throw CLI::ValidationError(
                        "--size", fmt::format("'{}' is no size. Write it as 1280x720.", text));
                options.size = *size;
            },
            fmt::format("width and height in pixels, {}x{} when not given", options.size.width_px,
                        options.size.height_px))
        ->type_name("WxH");
    command
        .add_option_function<std::string>(
            "--look", [&options](const std::string& text) { options.look = read_look(text); },
            "light, dark, or print (white, readable in greys)")
        ->type_name("LOOK");
    command.add_flag("--see-through", options.see_through,
                     "paint nothing behind the drawing (not in a moving picture)");
}

ExitStatus write_picture(const scene::Drawing& drawing, const PictureOptions& options,
                         const Streams& streams) {
    if (!may_write(options.out, options.force, streams))
        return ExitStatus::bad_input;
    scene::Drawing painted = drawing;
    painted.has_sheet = !options.see_through;
    const auto written = publish::write_picture(painted, options.look, options.size, options.out,
                                                paint::paint_tools());
    if (!written) {
        streams.err << written.error().message << '\n';
        return status_of(written.error());
    }
    return ExitStatus::ok;
}

ExitStatus write_moving_picture(const publish::MovingPicture& picture,
                                const PictureOptions& options, const Streams& streams) {
    if (!may_write(options.out, options.force, streams))
        return ExitStatus::bad_input;
    const auto written = publish::write_moving_picture(picture, options.look, options.size,
                                                       options.out, paint::paint_tools());
    if (written)
        return ExitStatus::ok;
    streams.err << written.error().message << '\n';
    return status_of(written.error());
}

ExitStatus status_of(const publish::PublishError& error) {
    switch (error.fault) {
    case publish::PublishFault::bad_size:
    case publish::PublishFault::bad_ending:
    case publish::PublishFault::bad_paper:
        return ExitStatus::bad_input;
    default:
        return ExitStatus::failed;
    }
}

} // namespace steelyard::cli

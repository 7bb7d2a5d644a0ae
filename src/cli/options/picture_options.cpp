#include "cli/options/picture_options.h"

#include "cli/options/checked_options.h"
#include "cli/options/out_file.h"
#include "cli/options/standard_stream.h"
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

scene::Look look_called(const std::string& word) {
    return word == "light"  ? scene::Look::light
           : word == "dark" ? scene::Look::dark
                            : scene::Look::print;
}

ExitStatus tell(const publish::PublishError& error, const Streams& streams) {
    streams.err << error.message << '\n';
    return status_of(error);
}

/// Writes what was made, under the name that was asked for.
ExitStatus write_made(const tl::expected<std::string, publish::PublishError>& bytes,
                      const PictureOptions& options, const Streams& streams) {
    if (bytes)
        return write_out(options.out, *bytes, streams);
    streams.err << options.out << ": ";
    return tell(bytes.error(), streams);
}

} // namespace

void add_picture_options(CLI::App& command, PictureOptions& options) {
    command
        .add_option("--out", options.out,
                    "file to write; .png, .svg or .pdf says the format. A repetition moves in "
                    "a .gif, or as a PNG each in a folder whose name ends in /. - is standard "
                    "output, with --format")
        ->required()
        ->type_name("FILE");
    only_words(command.add_option("--format", options.format,
                                  "whatever the file's name says; gif is for a repetition"),
               {"png", "svg", "pdf", "gif"});
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
    only_words(command.add_option_function<std::string>(
                   "--look",
                   [&options](const std::string& word) { options.look = look_called(word); },
                   "print is white and readable in greys"),
               {"light", "dark", "print"});
    command.add_flag("--see-through", options.see_through,
                     "paint nothing behind the drawing (not in a moving picture)");
}

std::optional<publish::PictureFormat> wanted_format(const PictureOptions& options) {
    return publish::picture_format(options.format.empty() ? options.out : "x." + options.format);
}

bool wants_moving(const PictureOptions& options) {
    return publish::moving_format(options.out) == publish::MovingFormat::pngs ||
           wanted_format(options) == publish::PictureFormat::gif;
}

ExitStatus write_picture(const scene::Drawing& drawing, const PictureOptions& options,
                         const Streams& streams) {
    if (!may_write(options.out, options.force, streams))
        return ExitStatus::bad_input;
    const auto format = wanted_format(options);
    if (!format) {
        streams.err << fmt::format("--out {}: the name says no format. End it in .png, .svg or "
                                   ".pdf, or say it with --format.\n",
                                   options.out);
        return ExitStatus::bad_input;
    }
    scene::Drawing painted = drawing;
    painted.has_sheet = !options.see_through;
    return write_made(
        publish::picture_bytes(painted, options.look, options.size, *format, paint::paint_tools()),
        options, streams);
}

ExitStatus write_moving_picture(const publish::MovingPicture& picture,
                                const PictureOptions& options, const Streams& streams) {
    if (!may_write(options.out, options.force, streams))
        return ExitStatus::bad_input;
    if (publish::moving_format(options.out) != publish::MovingFormat::pngs)
        return write_made(paint::paint_tools().gif(picture, options.look, options.size, {}),
                          options, streams);
    const auto written = publish::write_moving_picture(picture, options.look, options.size,
                                                       options.out, paint::paint_tools());
    return written ? ExitStatus::ok : tell(written.error(), streams);
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

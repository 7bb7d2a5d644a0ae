#pragma once
// The options of verbs that write a picture.

#include "cli/verbs/verb.h"
#include "publish/pictures/picture_file.h"
#include "scene/drawing.h"
#include "scene/palette.h"

#include <optional>
#include <string>

namespace steelyard::cli {

struct PictureOptions {
    std::string out;
    std::string format; ///< "png"; empty = as the name of the file ends
    bool force = false; ///< write over what is there
    publish::PictureSize size;
    scene::Look look = scene::Look::light;
    bool see_through = false; ///< nothing is painted behind a still drawing
};

/// Declares --out, --force, --format, --size, --look and --see-through; what the options hold
/// before is their default.
void add_picture_options(CLI::App& command, PictureOptions& options);

/// What the options ask for; empty where the name of the file does not say it, or says a folder.
std::optional<publish::PictureFormat> wanted_format(const PictureOptions& options);

/// Whether a repetition is asked for, moving: a GIF, or a folder of pictures.
bool wants_moving(const PictureOptions& options);

/// Writes the picture, to standard output for "-"; told on streams.err when it cannot be.
ExitStatus write_picture(const scene::Drawing& drawing, const PictureOptions& options,
                         const Streams& streams);

/// The same of a moving picture.
ExitStatus write_moving_picture(const publish::MovingPicture& picture,
                                const PictureOptions& options, const Streams& streams);

/// The status that a failure to publish ends with: bad input for what the command line asked.
ExitStatus status_of(const publish::PublishError& error);

} // namespace steelyard::cli

#pragma once
// The options of verbs that write a picture.

#include "cli/verbs/verb.h"
#include "publish/pictures/picture_file.h"
#include "scene/drawing.h"
#include "scene/palette.h"

#include <string>

namespace steelyard::cli {

struct PictureOptions {
    std::string out;
    bool force = false; ///< write over what is there
    publish::PictureSize size;
    scene::Look look = scene::Look::light;
    bool see_through = false; ///< nothing is painted behind a still drawing
};

/// Declares --out, --force, --size, --look and --see-through; what the options hold before is their
/// default.
void add_picture_options(CLI::App& command, PictureOptions& options);

/// Writes the picture and tells on streams.out where it is; told on streams.err when it cannot be.
ExitStatus write_picture(const scene::Drawing& drawing, const PictureOptions& options,
                         const Streams& streams);

/// The same of a moving picture.
ExitStatus write_moving_picture(const publish::MovingPicture& picture,
                                const PictureOptions& options, const Streams& streams);

/// The status that a failure to publish ends with: bad input for what the command line asked.
ExitStatus status_of(const publish::PublishError& error);

} // namespace steelyard::cli

#pragma once
// A repetition as a row of drawings, equally far apart in time.

#include "publish/files/error.h"
#include "publish/files/progress.h"
#include "publish/pictures/picture_size.h"
#include "scene/drawing.h"
#include "scene/palette.h"

#include <tl/expected.hpp>

#include <cstddef>
#include <filesystem>
#include <functional>

namespace steelyard::publish {

struct Tools;

struct MovingPicture {
    double frame_s = 0.04;  ///< that each drawing is shown [s]
    std::size_t frames = 0; ///< one or more
    /// One of the drawings, all of one size, from 0 to before `frames`; or why it cannot be drawn.
    std::function<tl::expected<scene::Drawing, PublishError>(std::size_t)> draw;
};

/// How a moving picture is written, as a path says it.
enum class MovingFormat {
    none, ///< the path asks for a still picture
    gif,  ///< one file; its name ends in .gif
    pngs, ///< a folder, its name ending in a slash: a PNG for each drawing
};
MovingFormat moving_format(const std::filesystem::path& path);

/// Writes it, the file whole or not at all. What stands in the folder already is written over.
/// @param progress  told after each drawing; may stop the work
tl::expected<void, PublishError> write_moving_picture(const MovingPicture& picture,
                                                      scene::Look look, PictureSize size,
                                                      const std::filesystem::path& path,
                                                      const Tools& tools,
                                                      const Progress& progress = {});

} // namespace steelyard::publish

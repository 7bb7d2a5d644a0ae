#include "publish/pictures/moving_picture.h"

#include "publish/files/whole_file.h"
#include "publish/pictures/picture_file.h"
#include "publish/tools.h"

#include <fmt/format.h>

#include <system_error>

namespace steelyard::publish {
namespace {

tl::expected<void, PublishError> write_frames(const MovingPicture& picture, scene::Look look,
                                              PictureSize size, const std::filesystem::path& folder,
                                              const Tools& tools, const Progress& progress) {
    std::error_code failed;
    std::filesystem::create_directories(folder, failed);
    if (failed)
        return tl::make_unexpected(PublishError{PublishFault::cannot_write,
                                                fmt::format("{}: the folder could not be made: {}.",
                                                            folder.string(), failed.message())});
    for (std::size_t i = 0; i < picture.frames; ++i) {
        const auto drawing = picture.draw(i);
        if (!drawing)
            return tl::make_unexpected(drawing.error());
        const auto written =
            write_picture(*drawing, look, size, folder / fmt::format("{:04}.png", i + 1), tools);
        if (!written)
            return written;
        if (!goes_on(progress, i + 1, picture.frames))
            return stopped_work();
    }
    return {};
}

} // namespace

MovingFormat moving_format(const std::filesystem::path& path) {
    if (!path.empty() && !path.has_filename())
        return MovingFormat::pngs;
    return picture_format(path) == PictureFormat::gif ? MovingFormat::gif : MovingFormat::none;
}

tl::expected<void, PublishError> write_moving_picture(const MovingPicture& picture,
                                                      scene::Look look, PictureSize size,
                                                      const std::filesystem::path& path,
                                                      const Tools& tools,
                                                      const Progress& progress) {
    if (moving_format(path) == MovingFormat::pngs)
        return write_frames(picture, look, size, path, tools, progress);
    return tools.gif(picture, look, size, progress)
        .map_error([&](PublishError error) {
            error.message = path.string() + ": " + error.message;
            return error;
        })
        .and_then([&](const std::string& bytes) { return write_whole_file(path, bytes); });
}

} // namespace steelyard::publish

#include "publish/pictures/picture_file.h"

#include "publish/files/whole_file.h"
#include "publish/pictures/drawing_check.h"
#include "publish/pictures/svg.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <string>

namespace steelyard::publish {
std::optional<PictureFormat> picture_format(const std::filesystem::path& path) {
    std::string ending = path.extension().string();
    std::transform(ending.begin(), ending.end(), ending.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    if (ending == ".png")
        return PictureFormat::png;
    if (ending == ".svg")
        return PictureFormat::svg;
    if (ending == ".gif")
        return PictureFormat::gif;
    return ending == ".pdf" ? std::optional(PictureFormat::pdf) : std::nullopt;
}

scene::Point sheet_for(PictureSize size) {
    constexpr double kUsualWidth_px = 1280.0;
    constexpr double kLeastWidth_px = 860.0;
    constexpr double kLeastHeight_px = 540.0;
    const scene::Point shown(size.width_px, size.height_px);
    if (shown.minCoeff() < 1.0)
        return shown; // refused when it is written
    const double needed = std::max(kLeastWidth_px / shown.x(), kLeastHeight_px / shown.y());
    return shown * std::max(needed, std::min(1.0, kUsualWidth_px / shown.x()));
}

tl::expected<std::string, PublishError> picture_bytes(const scene::Drawing& drawing,
                                                      scene::Look look, PictureSize size,
                                                      PictureFormat format, const Tools& tools) {
    for (auto fault : {fault_in(drawing), fault_in(size)})
        if (fault)
            return tl::make_unexpected(std::move(*fault));
    switch (format) {
    case PictureFormat::png:
        return tools.png(drawing, look, size);
    case PictureFormat::svg:
        return svg_of(drawing,
                      {look, "drawing", true, scene::Point(size.width_px, size.height_px)});
    case PictureFormat::pdf:
        return tools.picture_pdf(drawing, look, size);
    case PictureFormat::gif:
        break;
    }
    return tl::make_unexpected(
        PublishError{PublishFault::bad_ending,
                     "A still picture is a PNG, an SVG or a PDF; a GIF is for what moves."});
}

tl::expected<void, PublishError> write_picture(const scene::Drawing& drawing, scene::Look look,
                                               PictureSize size, const std::filesystem::path& path,
                                               const Tools& tools) {
    const auto format = picture_format(path);
    if (!format || *format == PictureFormat::gif) {
        return tl::make_unexpected(PublishError{
            PublishFault::bad_ending,
            fmt::format("{}: no format for a still picture. End the name in .png, .svg or .pdf.",
                        path.string())});
    }
    return picture_bytes(drawing, look, size, *format, tools)
        .map_error([&](PublishError error) {
            error.message = path.string() + ": " + error.message;
            return error;
        })
        .and_then([&](const std::string& bytes) { return write_whole_file(path, bytes); });
}

} // namespace steelyard::publish

#include "publish/pictures/picture_size.h"

#include "publish/pictures/drawing_check.h"

#include <fmt/format.h>

namespace steelyard::publish {

std::optional<PublishError> fault_in(PictureSize size) {
    constexpr double kMaxPixels = 64.0e6; // 256 MB of memory; nobody prints more
    const double pixels = static_cast<double>(size.width_px) * size.height_px;
    if (size.width_px >= 1 && size.height_px >= 1 && size.width_px <= kMaxSide_px &&
        size.height_px <= kMaxSide_px && pixels <= kMaxPixels)
        return std::nullopt;
    return PublishError{PublishFault::bad_size,
                        fmt::format("No picture is made of {} by {} px. Choose sides from 1 to {} "
                                    "px, at most {} million pixels in all.",
                                    size.width_px, size.height_px, kMaxSide_px,
                                    kMaxPixels / 1.0e6)};
}

} // namespace steelyard::publish

#include "paint/picture/gif.h"

#include "paint/picture/cairo_objects.h"
#include "paint/picture/painter.h"
#include "paint/type/typeface.h"
#include "publish/pictures/drawing_check.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <gif_lib.h>
#include <iterator>
#include <memory>
#include <optional>
#include <unordered_map>
#include <vector>

namespace steelyard::paint {
using namespace publish;

namespace {

/// The last entry of the palette stands for what stays as it was.
constexpr int kUnchanged = 255;
/// Drawings of which the colours are counted: more find no others.
constexpr std::size_t kCounted = 5;

PublishError no_memory() {
    return {PublishFault::no_memory, "The moving picture could not be made. Try a smaller size."};
}

/// Pixels as 0x00RRGGBB, line by line.
using Pixels = std::vector<std::uint32_t>;

tl::expected<Pixels, PublishError> paint_frame(const scene::Drawing& drawing,
                                               const PaintStyle& style, PictureSize size) {
    if (auto fault = fault_in(drawing))
        return tl::make_unexpected(std::move(*fault));
    const CairoSurface surface(
        cairo_image_surface_create(CAIRO_FORMAT_RGB24, size.width_px, size.height_px));
    const CairoContext context(cairo_create(surface.get()));
    paint_fitted(context.get(), drawing, style, size);
    if (cairo_status(context.get()) != CAIRO_STATUS_SUCCESS)
        return tl::make_unexpected(no_memory());
    cairo_surface_flush(surface.get());
    const unsigned char* const bytes = cairo_image_surface_get_data(surface.get());
    const auto stride = static_cast<std::size_t>(cairo_image_surface_get_stride(surface.get()));
    const auto width = static_cast<std::size_t>(size.width_px);
    Pixels pixels;
    pixels.reserve(width * static_cast<std::size_t>(size.height_px));
    for (std::size_t y = 0; y < static_cast<std::size_t>(size.height_px); ++y) {
        const auto* row = reinterpret_cast<const std::uint32_t*>(bytes + y * stride);
        std::transform(row, row + width, std::back_inserter(pixels),
                       [](std::uint32_t pixel) { return pixel & 0xFFFFFFU; });
    }
    return pixels;
}

/// Five bits of each part: colours that agree in them share a place.
std::size_t bin_of(std::uint32_t colour) {
    return ((colour >> 9U) & 0x7C00U) | ((colour >> 6U) & 0x3E0U) | ((colour >> 3U) & 0x1FU);
}

int distance(std::uint32_t one, std::uint32_t other) {
    int sum = 0;
    for (const unsigned shift : {0U, 8U, 16U}) {
        const int difference =
            static_cast<int>((one >> shift) & 0xFFU) - static_cast<int>((other >> shift) & 0xFFU);
        sum += difference * difference;
    }
    return sum;
}

/// The most frequent colours, no two of one bin, and for each bin the nearest of them.
class Palette {
public:
    explicit Palette(const std::unordered_map<std::uint32_t, std::size_t>& counts) {
        std::vector<std::pair<std::size_t, std::uint32_t>> frequent;
        for (const auto& [colour, count] : counts)
            frequent.emplace_back(count, colour);
        std::sort(frequent.rbegin(), frequent.rend());
        nearest_.fill(kUnknown);
        for (const auto& [count, colour] : frequent) {
            if (colours_.size() == static_cast<std::size_t>(kUnchanged))
                break;
            std::uint16_t& place = nearest_[bin_of(colour)];
            if (place != kUnknown)
                continue;
            place = static_cast<std::uint16_t>(colours_.size());
            colours_.push_back(colour);
        }
    }

    GifPixelType index_of(std::uint32_t colour) {
        std::uint16_t& place = nearest_[bin_of(colour)];
        if (place == kUnknown) {
            const auto found = std::min_element(
                colours_.begin(), colours_.end(), [&](std::uint32_t one, std::uint32_t other) {
                    return distance(one, colour) < distance(other, colour);
                });
            place = static_cast<std::uint16_t>(found - colours_.begin());
        }
        return static_cast<GifPixelType>(place);
    }

    std::array<GifColorType, 256> table() const {
        std::array<GifColorType, 256> table{};
        for (std::size_t i = 0; i < colours_.size(); ++i)
            table[i] = {static_cast<GifByteType>((colours_[i] >> 16U) & 0xFFU),
                        static_cast<GifByteType>((colours_[i] >> 8U) & 0xFFU),
                        static_cast<GifByteType>(colours_[i] & 0xFFU)};
        return table;
    }

private:
    static constexpr std::uint16_t kUnknown = 0xFFFF;

    std::vector<std::uint32_t> colours_;
    std::array<std::uint16_t, 1U << 15U> nearest_{};
};

/// The part of a picture in which something changed; empty where nothing did.
struct Part {
    int left = 0;
    int top = 0;
    int width = 0;
    int height = 0;
};

using Indices = std::vector<GifPixelType>;

Part changed_part(const Indices& before, const Indices& now, PictureSize size) {
    Part part{size.width_px, size.height_px, 0, 0};
    int right = -1;
    int bottom = -1;
    for (int y = 0; y < size.height_px; ++y)
        for (int x = 0; x < size.width_px; ++x) {
            const auto at = static_cast<std::size_t>(y) * static_cast<std::size_t>(size.width_px) +
                            static_cast<std::size_t>(x);
            if (before[at] == now[at])
                continue;
            part.left = std::min(part.left, x);
            part.top = std::min(part.top, y);
            right = std::max(right, x);
            bottom = y;
        }
    if (right < 0)
        return {0, 0, 1, 1}; // a frame has a pixel at least
    part.width = right - part.left + 1;
    part.height = bottom - part.top + 1;
    return part;
}

int take_bytes(GifFileType* file, const GifByteType* bytes, int count) {
    static_cast<std::string*>(file->UserData)
        ->append(reinterpret_cast<const char*>(bytes), static_cast<std::size_t>(count));
    return count;
}

struct CloseGif {
    void operator()(GifFileType* file) const {
        int ignored = 0;
        EGifCloseFile(file, &ignored);
    }
};
using GifFile = std::unique_ptr<GifFileType, CloseGif>;

/// The picture's size, its colours, and that it begins again at its end.
bool put_head(GifFileType* gif, PictureSize size, const Palette& palette) {
    const std::array<GifColorType, 256> table = palette.table();
    ColorMapObject* const map = GifMakeMapObject(256, table.data());
    if (map == nullptr)
        return false;
    EGifSetGifVersion(gif, true);
    const bool begun = EGifPutScreenDesc(gif, size.width_px, size.height_px, 8, 0, map) == GIF_OK;
    GifFreeMapObject(map);
    constexpr GifByteType kForEver[] = {1, 0, 0};
    return begun && EGifPutExtensionLeader(gif, APPLICATION_EXT_FUNC_CODE) == GIF_OK &&
           EGifPutExtensionBlock(gif, 11, "NETSCAPE2.0") == GIF_OK &&
           EGifPutExtensionBlock(gif, 3, kForEver) == GIF_OK &&
           EGifPutExtensionTrailer(gif) == GIF_OK;
}

bool put_frame(GifFileType* gif, const Indices& before, const Indices& now, PictureSize size,
               double frame_s) {
    const Part part = before.empty() ? Part{0, 0, size.width_px, size.height_px}
                                     : changed_part(before, now, size);
    GraphicsControlBlock control{};
    control.DisposalMode = DISPOSE_DO_NOT;
    control.DelayTime = static_cast<int>(std::lround(100.0 * frame_s));
    control.TransparentColor = before.empty() ? NO_TRANSPARENT_COLOR : kUnchanged;
    std::array<GifByteType, 4> extension{};
    EGifGCBToExtension(&control, extension.data());
    if (EGifPutExtension(gif, GRAPHICS_EXT_FUNC_CODE, 4, extension.data()) != GIF_OK ||
        EGifPutImageDesc(gif, part.left, part.top, part.width, part.height, false, nullptr) !=
            GIF_OK)
        return false;
    Indices line(static_cast<std::size_t>(part.width));
    for (int y = part.top; y < part.top + part.height; ++y) {
        for (std::size_t x = 0; x < line.size(); ++x) {
            const auto at = static_cast<std::size_t>(y) * static_cast<std::size_t>(size.width_px) +
                            static_cast<std::size_t>(part.left) + x;
            const bool unchanged = !before.empty() && before[at] == now[at];
            line[x] = unchanged ? static_cast<GifPixelType>(kUnchanged) : now[at];
        }
        if (EGifPutLine(gif, line.data(), part.width) != GIF_OK)
            return false;
    }
    return true;
}

tl::expected<Palette, PublishError> palette_of(const MovingPicture& picture,
                                               const PaintStyle& style, PictureSize size) {
    std::unordered_map<std::uint32_t, std::size_t> counts;
    const std::size_t step = std::max<std::size_t>(1, picture.frames / kCounted);
    for (std::size_t i = 0; i < picture.frames; i += step) {
        const auto pixels = picture.draw(i).and_then(
            [&](const scene::Drawing& drawing) { return paint_frame(drawing, style, size); });
        if (!pixels)
            return tl::make_unexpected(pixels.error());
        for (const std::uint32_t pixel : *pixels)
            ++counts[pixel];
    }
    return Palette(counts);
}

} // namespace

tl::expected<std::string, PublishError> gif_of(const MovingPicture& picture, scene::Look look,
                                               PictureSize size, const Progress& progress) {
    if (auto fault = fault_in(size))
        return tl::make_unexpected(std::move(*fault));
    const auto family = text_family();
    if (!family)
        return tl::make_unexpected(family.error());
    const PaintStyle style{look, *family};
    auto palette = palette_of(picture, style, size);
    if (!palette)
        return tl::make_unexpected(palette.error());
    std::string bytes;
    int failed = 0;
    GifFile gif(EGifOpen(&bytes, &take_bytes, &failed));
    if (!gif || !put_head(gif.get(), size, *palette))
        return tl::make_unexpected(no_memory());
    Indices before;
    for (std::size_t i = 0; i < picture.frames; ++i) {
        const auto pixels = picture.draw(i).and_then(
            [&](const scene::Drawing& drawing) { return paint_frame(drawing, style, size); });
        if (!pixels)
            return tl::make_unexpected(pixels.error());
        Indices now(pixels->size());
        std::transform(pixels->begin(), pixels->end(), now.begin(),
                       [&](std::uint32_t colour) { return palette->index_of(colour); });
        if (!put_frame(gif.get(), before, now, size, picture.frame_s))
            return tl::make_unexpected(no_memory());
        before = std::move(now);
        if (!goes_on(progress, i + 1, picture.frames))
            return stopped_work();
    }
    gif.reset();
    return bytes;
}

} // namespace steelyard::paint

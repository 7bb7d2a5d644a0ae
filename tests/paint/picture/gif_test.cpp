// Moving pictures, read back by the library that others use to read them, and by ImageMagick.

#include "catch.h"
#include "outside_program.h"
#include "paint/picture/gif.h"
#include "paint/picture/picture.h"
#include "paint/picture/png.h"
#include "publish/pictures/sample_drawing.h"
#include "temp_folder.h"

#include <algorithm>
#include <cstring>
#include <gif_lib.h>

using namespace steelyard;
using namespace steelyard::publish;
using paint::gif_of;
using scene::Look;

namespace {

/// A disc that goes over the sample from left to right.
MovingPicture moving_sample(std::size_t frames) {
    MovingPicture picture;
    picture.frames = frames;
    picture.draw = [frames](std::size_t i) -> tl::expected<scene::Drawing, PublishError> {
        scene::Drawing drawing = sample_drawing();
        scene::Disc disc;
        disc.centre = {drawing.size_px.x() * (static_cast<double>(i) + 0.5) /
                           static_cast<double>(frames),
                       40.0};
        disc.radius_px = 20.0;
        disc.fill = scene::Role::effort;
        drawing.shapes.emplace_back(disc);
        return drawing;
    };
    return picture;
}

struct Frame {
    int delay_hundredths = 0;
    std::vector<scene::Rgb> pixels; ///< as they are seen, with those of earlier frames below
};

struct Unread {
    std::string_view bytes;
};
int read_bytes(GifFileType* file, GifByteType* to, int wanted) {
    auto& unread = *static_cast<Unread*>(file->UserData);
    const std::size_t count = std::min(unread.bytes.size(), static_cast<std::size_t>(wanted));
    std::memcpy(to, unread.bytes.data(), count);
    unread.bytes.remove_prefix(count);
    return static_cast<int>(count);
}

/// All frames as a viewer shows them.
std::vector<Frame> frames_of(const std::string& bytes) {
    Unread unread{bytes};
    int failed = 0;
    GifFileType* const gif = DGifOpen(&unread, &read_bytes, &failed);
    REQUIRE(gif != nullptr);
    REQUIRE(DGifSlurp(gif) == GIF_OK);
    std::vector<scene::Rgb> screen(static_cast<std::size_t>(gif->SWidth * gif->SHeight));
    std::vector<Frame> frames;
    for (int i = 0; i < gif->ImageCount; ++i) {
        GraphicsControlBlock control{};
        REQUIRE(DGifSavedExtensionToGCB(gif, i, &control) == GIF_OK);
        const GifImageDesc& part = gif->SavedImages[i].ImageDesc;
        for (int y = 0; y < part.Height; ++y)
            for (int x = 0; x < part.Width; ++x) {
                const int index = gif->SavedImages[i].RasterBits[y * part.Width + x];
                if (index == control.TransparentColor)
                    continue;
                const GifColorType& colour = gif->SColorMap->Colors[index];
                screen[static_cast<std::size_t>((part.Top + y) * gif->SWidth + part.Left + x)] = {
                    colour.Red, colour.Green, colour.Blue};
            }
        frames.push_back({control.DelayTime, screen});
    }
    DGifCloseFile(gif, &failed);
    return frames;
}

/// True where two colours differ by no more than the tones that share a place of the palette.
bool is_near(scene::Rgb one, scene::Rgb other) {
    return std::abs(one.red - other.red) <= 8 && std::abs(one.green - other.green) <= 8 &&
           std::abs(one.blue - other.blue) <= 8;
}

} // namespace

TEST_CASE("every frame shows what the still picture of its drawing shows") {
    const MovingPicture picture = moving_sample(6);
    const PictureSize size{320, 200};
    const auto gif = gif_of(picture, Look::light, size, {});
    REQUIRE(gif);
    const std::vector<Frame> frames = frames_of(*gif);
    REQUIRE(frames.size() == 6);
    for (std::size_t i = 0; i < frames.size(); ++i) {
        CHECK(frames[i].delay_hundredths == 4);
        const auto png = paint::png_of(*picture.draw(i), Look::light, size);
        REQUIRE(png);
        const Picture still = picture_of(*png);
        int off = 0;
        for (int y = 0; y < size.height_px; ++y)
            for (int x = 0; x < size.width_px; ++x)
                off += is_near(still.at(x, y),
                               frames[i].pixels[static_cast<std::size_t>(y * size.width_px + x)])
                           ? 0
                           : 1;
        CHECK(off < size.width_px * size.height_px / 200); // edges, whose mixed tones are shared
    }
}

TEST_CASE("a moving picture that stands still is small") {
    MovingPicture still = moving_sample(50);
    still.draw = [draw = still.draw](std::size_t) { return draw(0); };
    const auto gif = gif_of(still, Look::light, {640, 400}, {});
    const auto one = gif_of(moving_sample(1), Look::light, {640, 400}, {});
    REQUIRE(gif);
    REQUIRE(one);
    CHECK(frames_of(*gif).size() == 50);
    CHECK(gif->size() < one->size() + 50 * 64);
}

TEST_CASE("ImageMagick reads a moving picture with its frames and its delay") {
    const auto gif = gif_of(moving_sample(5), Look::dark, {320, 200}, {});
    REQUIRE(gif);
    const TempFile file("moving.gif", *gif);
    const Ran ran = run_outside("identify -format '%wx%h %T %[scene]\\n' '" + file.path() + "'");
    CHECK(ran.status == 0);
    const std::string& read = ran.out;
    CHECK(std::count(read.begin(), read.end(), '\n') == 5);
    CHECK(read.find("320x200 4") == 0);
}

TEST_CASE("a moving picture can be stopped, and says what it cannot draw") {
    const auto stopped = gif_of(moving_sample(5), Look::light, {64, 40},
                                [](std::size_t done, std::size_t) { return done < 2; });
    REQUIRE_FALSE(stopped);
    CHECK(stopped.error().fault == PublishFault::stopped);
    CHECK_FALSE(gif_of(moving_sample(2), Look::light, {0, 40}, {}));
    MovingPicture faulty = moving_sample(3);
    faulty.draw = [](std::size_t) -> tl::expected<scene::Drawing, PublishError> {
        return tl::make_unexpected(PublishError{PublishFault::bad_place, "no such place"});
    };
    const auto refused = gif_of(faulty, Look::light, {64, 40}, {});
    REQUIRE_FALSE(refused);
    CHECK(refused.error().message == "no such place");
}

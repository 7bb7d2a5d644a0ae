#include "catch.h"
#include "paint/picture/picture.h"
#include "paint/picture/png.h"
#include "publish/hostile_text.h"
#include "publish/pictures/sample_drawing.h"

#include <algorithm>
#include <limits>

using namespace steelyard;
using namespace steelyard::publish;
using paint::png_of;
using scene::Look;
using scene::Role;

namespace {

Picture painted(const scene::Drawing& drawing, PictureSize size, Look look = Look::light) {
    const auto png = png_of(drawing, look, size);
    REQUIRE(png);
    return picture_of(*png);
}

scene::Drawing sheet_with(const scene::Shape& shape) {
    scene::Drawing drawing;
    drawing.size_px = {200.0, 100.0};
    drawing.shapes = {shape};
    return drawing;
}

/// Smallest box around all pixels that are not sheet.
struct Inked {
    int left = 1 << 20, top = 1 << 20, right = -1, bottom = -1;
};
Inked inked(const Picture& picture, Look look = Look::light) {
    Inked box;
    for (int y = 0; y < picture.height; ++y) {
        for (int x = 0; x < picture.width; ++x) {
            if (!alike(picture.at(x, y), colour_of(Role::sheet, look))) {
                box = {std::min(box.left, x), std::min(box.top, y), std::max(box.right, x),
                       std::max(box.bottom, y)};
            }
        }
    }
    return box;
}

} // namespace

TEST_CASE("a picture has the size that was asked for") {
    for (const PictureSize size : {PictureSize{400, 300}, {1280, 720}, {1, 1}, {333, 77}}) {
        const Picture picture = painted(sample_drawing(), size);
        CHECK(picture.width == size.width_px);
        CHECK(picture.height == size.height_px);
    }
}

TEST_CASE("pixels have the colour of what lies there, in every look") {
    for (const Look look : {Look::light, Look::dark, Look::print}) {
        const Picture picture = painted(sample_drawing(), {400, 300}, look);
        CHECK(alike(picture.at(2, 2), colour_of(Role::sheet, look)));
        CHECK(alike(picture.at(100, 50), colour_of(Role::effort, look)));
        CHECK(alike(picture.at(200, 100), colour_of(Role::load, look)));
        CHECK(alike(picture.at(60, 235), colour_of(Role::ink, look)));
        CHECK(alike(picture.at(300, 50), colour_of(Role::sheet, look))); // the box without fill
    }
}

TEST_CASE("a half transparent fill is half way between its colour and the sheet") {
    const Picture picture = painted(sample_drawing(), {400, 300});
    const auto sheet = colour_of(Role::sheet, Look::light);
    const auto load = colour_of(Role::load, Look::light);
    const auto half = [](int a, int b) { return static_cast<std::uint8_t>((a + b) / 2); };
    CHECK(alike(picture.at(320, 200), {half(sheet.red, load.red), half(sheet.green, load.green),
                                       half(sheet.blue, load.blue)}));
}

TEST_CASE("a drawing is scaled to fit and centred on its sheet") {
    // 200 × 100 into 400 × 400: scale 2, a margin of 100 px above and below. The box covers
    // the drawing's left half.
    const Picture picture =
        painted(sheet_with(scene::Box{{50.0, 50.0}, {100.0, 100.0}, 0.0, 0.0, Role::ink, 1.0, {}}),
                {400, 400});
    const Inked box = inked(picture);
    CHECK(box.left == 0);
    CHECK(box.right == 199);
    CHECK(box.top == 100);
    CHECK(box.bottom == 299);
}

TEST_CASE("a label stands on its baseline at the left, the middle or the right") {
    // "H" has straight feet on the baseline. Tolerance 1 px: smoothed edges, side bearings.
    const auto label = [](scene::Align align) {
        return scene::Label{{100.0, 60.0}, "HHH", scene::TextSize::key, true, Role::ink, align};
    };
    const Inked left = inked(painted(sheet_with(label(scene::Align::left)), {200, 100}));
    const Inked centre = inked(painted(sheet_with(label(scene::Align::centre)), {200, 100}));
    const Inked right = inked(painted(sheet_with(label(scene::Align::right)), {200, 100}));
    for (const Inked& box : {left, centre, right})
        CHECK(std::abs(box.bottom - 59) <= 1);
    CHECK(left.left >= 100);
    CHECK(right.right < 100);
    CHECK(std::abs((centre.left + centre.right) / 2 - 99) <= 1);
    // Capitals of Inter are 1490 of 2048 units high (the font's OS/2 table, sCapHeight): 29.1 px.
    CHECK(std::abs((left.bottom - left.top + 1) - 29) <= 1);
}

TEST_CASE("a turned label turns about its place") {
    const scene::Label upward{
        {100.0, 90.0},          "HHH", scene::TextSize::body, false, Role::ink, scene::Align::left,
        -0.5 * 3.14159265358979};
    const Inked box = inked(painted(sheet_with(upward), {200, 100}));
    CHECK(box.right <= 100);
    CHECK(box.bottom <= 90);
    CHECK(box.bottom - box.top > box.right - box.left);
}

TEST_CASE("digits are all equally wide") {
    const auto width = [](const std::string& text) {
        scene::Label label{{100.0, 60.0}, text, scene::TextSize::key};
        const Inked box = inked(painted(sheet_with(label), {200, 100}));
        return box.right;
    };
    // The sign behind the digits moves with their widths. Tolerance 1 px: smoothed edges.
    const int ones = width("11|");
    for (const char* text : {"00|", "47|", "88|"})
        CHECK(std::abs(width(text) - ones) <= 1);
}

TEST_CASE("a dotted line is round dots as wide as the line") {
    const scene::Line line{{10.0, 50.0}, {190.0, 50.0}, {Role::ink, 12.0, scene::Dash::dotted}};
    const Picture picture = painted(sheet_with(line), {200, 100});
    const auto ink = colour_of(Role::ink, Look::light);
    const auto sheet = colour_of(Role::sheet, Look::light);
    // Centres lie 27 px apart, from the line's start on.
    CHECK(alike(picture.at(37, 50), ink));
    CHECK(alike(picture.at(23, 50), sheet));
    CHECK(alike(picture.at(50, 50), sheet));
    // A round dot does not fill the corners of its square.
    CHECK(alike(picture.at(37, 45), ink));
    CHECK(alike(picture.at(42, 45), sheet));
}

TEST_CASE("hostile text is painted without trouble") {
    for (const std::string& text : hostile_texts())
        CHECK(png_of(sheet_with(scene::Label{{10.0, 50.0}, text}), Look::light, {200, 100}));
}

TEST_CASE("degenerate shapes are painted as nothing or as a dot, never as an error") {
    using namespace scene;
    Drawing drawing = sheet_with(Line{});
    drawing.shapes = {Line{{5.0, 5.0}, {5.0, 5.0}, {Role::ink, 0.0, Dash::dotted}},
                      Polyline{},
                      Arc{},
                      Disc{{0.0, 0.0}, -3.0, Role::ink, 1.0, {}},
                      Box{{0.0, 0.0}, {-4.0, 0.0}, 6.0, 0.0, Role::ink, 1.0, Stroke{}},
                      Triangle{}};
    CHECK(png_of(drawing, Look::light, {200, 100}));
}

TEST_CASE("an empty, negative or absurd picture size is refused") {
    for (const PictureSize size : {PictureSize{0, 100}, {100, -1}, {1000000, 10}, {16384, 16384}}) {
        const auto png = png_of(sample_drawing(), Look::light, size);
        REQUIRE_FALSE(png);
        CHECK(png.error().fault == PublishFault::bad_size);
    }
}

TEST_CASE("a broken drawing gives an error, not a picture") {
    const auto png = png_of(
        sheet_with(scene::Line{{std::numeric_limits<double>::infinity(), 0.0}, {0.0, 0.0}, {}}),
        Look::light, {200, 100});
    REQUIRE_FALSE(png);
    CHECK(png.error().fault == PublishFault::bad_place);
}

#include "catch.h"
#include "publish/pictures/picture_file.h"
#include "publish/pictures/sample_drawing.h"
#include "temp_folder.h"

using namespace steelyard;
using namespace steelyard::publish;

TEST_CASE("without what paints, a picture is written as SVG and any other format says why not") {
    const TempFolder folder;
    REQUIRE(write_picture(sample_drawing(), scene::Look::light, {}, folder / "a.svg", Tools{}));
    CHECK_THAT(content(folder / "a.svg"), ContainsSubstring("<svg"));
    for (const char* name : {"a.png", "a.pdf"}) {
        const auto written =
            write_picture(sample_drawing(), scene::Look::light, {}, folder / name, Tools{});
        REQUIRE_FALSE(written);
        CHECK(written.error().fault == PublishFault::no_tool);
        CHECK_THAT(written.error().message, ContainsSubstring("SVG"));
    }
    CHECK(folder.count() == 1);
}

TEST_CASE("what is lent receives the drawing, its look and its size") {
    const TempFolder folder;
    Tools tools;
    tools.png.lend([](const scene::Drawing& drawing, scene::Look look,
                      PictureSize size) -> tl::expected<std::string, PublishError> {
        return drawing.title + (look == scene::Look::dark ? " dark " : " ") +
               std::to_string(size.width_px) + "x" + std::to_string(size.height_px);
    });
    REQUIRE(
        write_picture(sample_drawing(), scene::Look::dark, {640, 360}, folder / "a.PNG", tools));
    CHECK(content(folder / "a.PNG") == "A boat trolley dark 640x360");
}

TEST_CASE("a drawing or size that cannot be is refused before anything is asked to paint it") {
    const TempFolder folder;
    Tools tools;
    bool asked = false;
    tools.png.lend([&](const scene::Drawing&, scene::Look,
                       PictureSize) -> tl::expected<std::string, PublishError> {
        asked = true;
        return std::string();
    });
    const auto written =
        write_picture(sample_drawing(), scene::Look::light, {0, 10}, folder / "a.png", tools);
    REQUIRE_FALSE(written);
    CHECK(written.error().fault == PublishFault::bad_size);
    CHECK_FALSE(asked);
    CHECK(folder.count() == 0);
}

#include "catch.h"
#include "paint/paper/page_picture.h"
#include "publish/paper_questions.h"

using namespace steelyard;
using namespace steelyard::publish;

TEST_CASE("a page is pictured as it is printed") {
    const problems::Bank bank = real_bank();
    Worksheet sheet = sheet_of(questions_of(bank, 8));
    const auto picture = paint::page_picture(sheet, bank, SheetSide::questions, 1, 842);
    REQUIRE(picture);
    CHECK(picture->pages > 1);
    CHECK(picture->height_px == 842);
    CHECK(picture->width_px == 595); // A4: 210 × 297 (ISO 216)
    REQUIRE(picture->rgba.size() == std::size_t{4} * 595 * 842);
    // White paper with ink on it, and nothing in the margins that printers do not reach.
    std::size_t ink = 0;
    std::size_t outside = 0;
    for (int y = 0; y < 842; ++y) {
        for (int x = 0; x < 595; ++x) {
            const auto at = 4 * (static_cast<std::size_t>(y) * 595 + static_cast<std::size_t>(x));
            const bool dark = picture->rgba[at] < 128;
            ink += dark ? 1 : 0;
            outside += dark && (x < 20 || x > 575 || y < 20 || y > 822) ? 1 : 0;
        }
    }
    CHECK(ink > 2000);
    CHECK(outside == 0);
    const auto last = paint::page_picture(sheet, bank, SheetSide::questions, 99, 842);
    REQUIRE(last);
    CHECK(last->page == picture->pages);
    CHECK(last->rgba != picture->rgba);
    const auto key = paint::page_picture(sheet, bank, SheetSide::key, 1, 842);
    REQUIRE(key);
    CHECK(key->rgba != picture->rgba);
    CHECK_FALSE(paint::page_picture(sheet, bank, SheetSide::key, 1, 0));
    CHECK_FALSE(paint::page_picture(sheet, bank, SheetSide::key, 1, 842,
                                    [](std::size_t, std::size_t) { return false; }));
}

// Whole handouts in a folder: all files or none.

#include "catch.h"
#include "publish/paper_questions.h"
#include "publish/sheets/handout_job.h"
#include "publish/sheets/page_picture.h"
#include "publish/small_disk.h"
#include "temp_folder.h"

using namespace steelyard;
using namespace steelyard::publish;

namespace {

const std::vector<HandoutFormat> kAll{HandoutFormat::pdf,   HandoutFormat::html,
                                      HandoutFormat::qti21, HandoutFormat::qti3,
                                      HandoutFormat::csv,   HandoutFormat::cards};

} // namespace

TEST_CASE("a handout is a sheet and a key, or one file for another program, in every format") {
    const problems::Bank bank = real_bank();
    const std::vector<Worksheet> sheets{sheet_of(questions_of(bank, 4))};
    const TempFolder folder;
    const auto written = write_handout(bank, sheets, kAll, folder / "new/deep");
    REQUIRE(written);
    CHECK(written->size() == 8);
    for (const auto& path : *written) {
        CHECK(std::filesystem::file_size(path) > 100);
    }
    const auto starts = [&](const std::string& name) {
        return content(folder / ("new/deep/evening-7-B" + name)).substr(0, 4);
    };
    CHECK(starts(".pdf") == "%PDF");
    CHECK(starts("-key.pdf") == "%PDF");
    CHECK(starts("-key.html") == "<!DO");
    CHECK(starts("-qti21.zip") == "PK\x03\x04"); // PKWARE, local file header
    CHECK(starts("-qti3.zip") == "PK\x03\x04");
    CHECK(starts(".csv") == "code");
    CHECK(starts("-cards.csv") == "fron");
    // Nothing else stays: no folder in which files waited.
    CHECK(std::distance(std::filesystem::directory_iterator(folder / "new/deep"), {}) == 8);
}

TEST_CASE("progress rises to the end") {
    const problems::Bank bank = real_bank();
    const std::vector<Worksheet> sheets{sheet_of(questions_of(bank, 3))};
    const TempFolder folder;
    std::size_t last = 0;
    std::size_t of = 0;
    REQUIRE(
        write_handout(bank, sheets, kAll, folder.path(), [&](std::size_t done, std::size_t all) {
            CHECK(done >= last);
            last = done;
            of = all;
            return true;
        }));
    CHECK(last == of);
    CHECK(of > 0);
}

TEST_CASE("every format asks after each question whether to go on") {
    const problems::Bank bank = real_bank();
    const std::vector<Worksheet> sheets{sheet_of(questions_of(bank, 6))};
    for (const HandoutFormat format : kAll) {
        const TempFolder folder;
        std::size_t asked = 0;
        REQUIRE(write_handout(bank, sheets, {format}, folder / "new",
                              [&](std::size_t, std::size_t) { return ++asked > 0; }));
        INFO(static_cast<int>(format));
        CHECK(asked >= 6);
    }
}

TEST_CASE("a handout that is stopped, at any moment, leaves nothing") {
    const problems::Bank bank = real_bank();
    const std::vector<Worksheet> sheets{sheet_of(questions_of(bank, 2))};
    std::size_t moments = 0;
    {
        const TempFolder folder;
        REQUIRE(write_handout(bank, sheets, kAll, folder.path(), [&](std::size_t, std::size_t) {
            ++moments;
            return true;
        }));
    }
    for (std::size_t stop = 1; stop <= moments; stop += 3) {
        const TempFolder folder;
        std::size_t told = 0;
        const auto written = write_handout(bank, sheets, kAll, folder / "new",
                                           [&](std::size_t, std::size_t) { return ++told < stop; });
        INFO("stopped at " << stop << " of " << moments);
        REQUIRE_FALSE(written);
        CHECK(written.error().fault == PublishFault::stopped);
        CHECK(folder.count() == 0);
    }
}

TEST_CASE("what cannot be written is told and leaves nothing") {
    const problems::Bank bank = real_bank();
    const std::vector<Worksheet> sheets{sheet_of(questions_of(bank, 4))};
    SECTION("a full disk, whatever is written") {
        for (const HandoutFormat format : kAll) {
            const TempFolder folder;
            const SmallDisk disk(300); // less than the smallest of them
            const auto written = write_handout(bank, sheets, {format}, folder / "new");
            REQUIRE_FALSE(written);
            CHECK(written.error().fault == PublishFault::cannot_write);
            CHECK_THAT(written.error().message, ContainsSubstring("new"));
            CHECK(folder.count() == 0);
        }
    }
    SECTION("a disk that fills up at the last file") {
        const TempFolder folder;
        const SmallDisk disk(20000); // a key has room, a sheet has not
        CHECK_FALSE(
            write_handout(bank, sheets, {HandoutFormat::csv, HandoutFormat::pdf}, folder / "new"));
        CHECK(folder.count() == 0);
    }
    SECTION("a file where the folder should be") {
        const TempFolder folder;
        folder.put("file", "in the way");
        const auto written = write_handout(bank, sheets, kAll, folder / "file");
        REQUIRE_FALSE(written);
        CHECK_THAT(written.error().message, ContainsSubstring("file"));
        CHECK(folder.count() == 1);
    }
    SECTION("a folder where a file should be") {
        const TempFolder folder;
        std::filesystem::create_directory(folder / "evening-7-B-cards.csv");
        const auto written = write_handout(bank, sheets, kAll, folder.path());
        REQUIRE_FALSE(written);
        CHECK_THAT(written.error().message, ContainsSubstring("evening-7-B-cards.csv"));
        CHECK(folder.count() == 1);
    }
    SECTION("a folder that the system keeps for itself") {
        for (const HandoutFormat format : kAll) {
            const auto written = write_handout(bank, sheets, {format}, "/proc/no-such-folder");
            REQUIRE_FALSE(written);
            CHECK(written.error().fault == PublishFault::cannot_write);
            CHECK_THAT(written.error().message, ContainsSubstring("/proc/no-such-folder"));
        }
    }
}

TEST_CASE("a page is pictured as it is printed") {
    const problems::Bank bank = real_bank();
    Worksheet sheet = sheet_of(questions_of(bank, 8));
    const auto picture = page_picture(sheet, bank, SheetSide::questions, 1, 842);
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
    const auto last = page_picture(sheet, bank, SheetSide::questions, 99, 842);
    REQUIRE(last);
    CHECK(last->page == picture->pages);
    CHECK(last->rgba != picture->rgba);
    const auto key = page_picture(sheet, bank, SheetSide::key, 1, 842);
    REQUIRE(key);
    CHECK(key->rgba != picture->rgba);
    CHECK_FALSE(page_picture(sheet, bank, SheetSide::key, 1, 0));
    CHECK_FALSE(page_picture(sheet, bank, SheetSide::key, 1, 842,
                             [](std::size_t, std::size_t) { return false; }));
}

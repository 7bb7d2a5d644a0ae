// Whole handouts with what this layer lends.

#include "catch.h"
#include "paint/paint_tools.h"
#include "publish/paper_questions.h"
#include "publish/sheets/handout_job.h"
#include "publish/small_disk.h"
#include "temp_folder.h"

using namespace steelyard;
using namespace steelyard::publish;

TEST_CASE("with all tools lent a handout has its PDF and its packages") {
    const problems::Bank bank = real_bank();
    const TempFolder folder;
    const auto written = write_handout(bank, {sheet_of(questions_of(bank, 4))},
                                       {HandoutFormat::pdf, HandoutFormat::qti21}, folder.path(),
                                       paint::paint_tools());
    REQUIRE(written);
    CHECK(written->size() == 3);
    CHECK(content(folder / "evening-7-B.pdf").substr(0, 5) == "%PDF-");
    CHECK(content(folder / "evening-7-B-key.pdf").substr(0, 5) == "%PDF-");
    CHECK(content(folder / "evening-7-B-qti21.zip").substr(0, 4) == "PK\x03\x04");
}

TEST_CASE("PDF on a full disk is told and leaves nothing") {
    const problems::Bank bank = real_bank();
    const std::vector<Worksheet> sheets{sheet_of(questions_of(bank, 4))};
    for (const rlim_t bytes :
         {rlim_t{300}, rlim_t{20000}}) { // the second holds a key, but no sheet
        const TempFolder folder;
        const SmallDisk disk(bytes);
        const auto written = write_handout(bank, sheets, {HandoutFormat::csv, HandoutFormat::pdf},
                                           folder / "new", paint::paint_tools());
        REQUIRE_FALSE(written);
        CHECK(written.error().fault == PublishFault::cannot_write);
        CHECK_THAT(written.error().message, ContainsSubstring("new"));
        CHECK(folder.count() == 0);
    }
}

TEST_CASE("PDF that is stopped, at any moment, leaves nothing") {
    const problems::Bank bank = real_bank();
    const std::vector<Worksheet> sheets{sheet_of(questions_of(bank, 6))};
    std::size_t moments = 0;
    {
        const TempFolder folder;
        REQUIRE(write_handout(bank, sheets, {HandoutFormat::pdf}, folder.path(),
                              paint::paint_tools(), [&](std::size_t, std::size_t) {
                                  ++moments;
                                  return true;
                              }));
    }
    CHECK(moments >= 6);
    for (std::size_t stop = 1; stop <= moments; stop += 3) {
        const TempFolder folder;
        std::size_t told = 0;
        const auto written =
            write_handout(bank, sheets, {HandoutFormat::pdf}, folder / "new", paint::paint_tools(),
                          [&](std::size_t, std::size_t) { return ++told < stop; });
        INFO("stopped at " << stop << " of " << moments);
        REQUIRE_FALSE(written);
        CHECK(written.error().fault == PublishFault::stopped);
        CHECK(folder.count() == 0);
    }
}

// Whole handouts in a folder: all files or none. What makes the PDF is lent here by the test; with
// the real one see tests/paint/paper/handout_pdf_test.cpp.

#include "catch.h"
#include "publish/files/whole_file.h"
#include "publish/paper_questions.h"
#include "publish/question/question_figure.h"
#include "publish/sheets/handout_job.h"
#include "publish/small_disk.h"
#include "temp_folder.h"

#include <chrono>
#include <fstream>

using namespace steelyard;
using namespace steelyard::publish;

namespace {

const std::vector<HandoutFormat> kAll{HandoutFormat::pdf,   HandoutFormat::html,
                                      HandoutFormat::qti21, HandoutFormat::qti3,
                                      HandoutFormat::csv,   HandoutFormat::cards};

/// Lends something that writes the texts of the questions, and nothing else.
Tools lent() {
    Tools tools;
    tools.paper_pdf.lend([](const std::filesystem::path& path, const Worksheet& sheet,
                            const problems::Bank&, SheetSide side,
                            const Progress& progress) -> tl::expected<void, PublishError> {
        std::string text = side == SheetSide::key ? "%key" : "%sheet";
        std::size_t done = 0;
        for (const SheetPart& part : sheet.parts) {
            for (const problems::Question& question : part.questions) {
                text += question.prompt;
                if (!goes_on(progress, ++done, sheet.count()))
                    return stopped_work();
            }
        }
        return write_whole_file(path, text);
    });
    return tools;
}

} // namespace

TEST_CASE("a handout is a sheet and a key, or one file for another program, in every format") {
    const problems::Bank bank = real_bank();
    const std::vector<Worksheet> sheets{sheet_of(questions_of(bank, 4))};
    const TempFolder folder;
    const auto written = write_handout(bank, sheets, kAll, folder / "new/deep", lent());
    REQUIRE(written);
    CHECK(written->size() == 8);
    for (const auto& path : *written)
        CHECK(std::filesystem::file_size(path) > 100);
    const auto starts = [&](const std::string& name) {
        return content(folder / ("new/deep/evening-7-B" + name)).substr(0, 4);
    };
    CHECK(starts(".pdf") == "%she");
    CHECK(starts("-key.pdf") == "%key");
    CHECK(starts("-key.html") == "<!DO");
    CHECK(starts("-qti21.zip") == "PK\x03\x04"); // PKWARE, local file header
    CHECK(starts("-qti3.zip") == "PK\x03\x04");
    CHECK(starts("-csv.zip") == "PK\x03\x04");
    CHECK(starts("-cards.zip") == "PK\x03\x04");
    // Nothing else stays: no folder in which files waited.
    CHECK(std::distance(std::filesystem::directory_iterator(folder / "new/deep"), {}) == 8);
}

TEST_CASE("a handout as one package holds the same files, made one with each step") {
    const problems::Bank bank = real_bank();
    const std::vector<Worksheet> sheets{sheet_of(questions_of(bank, 3))};
    const std::vector<HandoutFormat> formats{HandoutFormat::html, HandoutFormat::csv};
    const TempFolder single;
    const auto files = write_handout(bank, sheets, formats, single.path(), lent());
    REQUIRE(files);
    std::vector<PackedFile> packed;
    Tools tools = lent();
    tools.zip = [&](const std::vector<PackedFile>& given) {
        packed = given;
        return stored_zip(given);
    };
    const TempFolder folder;
    HandoutWork work(bank, sheets, formats, folder / "new", tools, HandoutShape::package);
    std::optional<HandoutFiles> made;
    std::size_t steps = 1;
    for (; !(made = work.step()); ++steps)
        CHECK(folder.count() > 0); // they wait in a folder that is there
    CHECK(steps == files->size() + 1);
    REQUIRE(*made);
    REQUIRE((*made)->size() == 1);
    CHECK((*made)->front().filename() == "evening-7.zip"); // without the letter of a version
    REQUIRE(packed.size() == files->size());
    for (std::size_t i = 0; i < packed.size(); ++i) {
        CHECK(packed[i].path == (*files)[i].filename());
        CHECK(packed[i].bytes == content((*files)[i]));
    }
}

TEST_CASE("a handout that is given up between two files leaves nothing") {
    const problems::Bank bank = real_bank();
    const TempFolder folder;
    const Tools tools = lent();
    {
        HandoutWork work(bank, {sheet_of(questions_of(bank, 2))}, kAll, folder / "new", tools);
        REQUIRE_FALSE(work.step());
        REQUIRE_FALSE(work.step());
        CHECK(folder.count() == 1);
    }
    CHECK(folder.count() == 0);
}

TEST_CASE("progress rises to the end") {
    const problems::Bank bank = real_bank();
    const std::vector<Worksheet> sheets{sheet_of(questions_of(bank, 3))};
    const TempFolder folder;
    std::size_t last = 0;
    std::size_t of = 0;
    REQUIRE(write_handout(bank, sheets, kAll, folder.path(), lent(),
                          [&](std::size_t done, std::size_t all) {
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
        REQUIRE(write_handout(bank, sheets, {format}, folder / "new", lent(),
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
        REQUIRE(
            write_handout(bank, sheets, kAll, folder.path(), lent(), [&](std::size_t, std::size_t) {
                ++moments;
                return true;
            }));
    }
    for (std::size_t stop = 1; stop <= moments; stop += 3) {
        const TempFolder folder;
        std::size_t told = 0;
        const auto written = write_handout(bank, sheets, kAll, folder / "new", lent(),
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
            const auto written = write_handout(bank, sheets, {format}, folder / "new", lent());
            REQUIRE_FALSE(written);
            CHECK(written.error().fault == PublishFault::cannot_write);
            CHECK_THAT(written.error().message, ContainsSubstring("new"));
            CHECK(folder.count() == 0);
        }
    }
    SECTION("a disk that fills up at the last file") {
        const std::vector<HandoutFormat> formats{HandoutFormat::pdf, HandoutFormat::csv};
        const TempFolder whole;
        const auto all = write_handout(bank, sheets, formats, whole.path(), lent());
        REQUIRE(all);
        const auto first = std::filesystem::file_size(all->front());
        const auto last = std::filesystem::file_size(all->back());
        REQUIRE(first < last);
        const TempFolder folder;
        const SmallDisk disk(last - 1); // the first has room, the last has not
        CHECK_FALSE(write_handout(bank, sheets, formats, folder / "new", lent()));
        CHECK(folder.count() == 0);
    }
    SECTION("a file where the folder should be") {
        const TempFolder folder;
        folder.put("file", "in the way");
        const auto written = write_handout(bank, sheets, kAll, folder / "file", lent());
        REQUIRE_FALSE(written);
        CHECK_THAT(written.error().message, ContainsSubstring("file"));
        CHECK(folder.count() == 1);
    }
    SECTION("a folder where a file should be") {
        const TempFolder folder;
        std::filesystem::create_directory(folder / "evening-7-B-cards.zip");
        const auto written = write_handout(bank, sheets, kAll, folder.path(), lent());
        REQUIRE_FALSE(written);
        CHECK_THAT(written.error().message, ContainsSubstring("evening-7-B-cards.zip"));
        CHECK(folder.count() == 1);
    }
    SECTION("a folder that the system keeps for itself") {
        for (const HandoutFormat format : kAll) {
            const auto written =
                write_handout(bank, sheets, {format}, "/proc/no-such-folder", lent());
            REQUIRE_FALSE(written);
            CHECK(written.error().fault == PublishFault::cannot_write);
            CHECK_THAT(written.error().message, ContainsSubstring("/proc/no-such-folder"));
        }
    }
}

TEST_CASE("a handout that cannot take all its names leaves the files that had them") {
    const problems::Bank bank = real_bank();
    const std::vector<Worksheet> sheets{sheet_of(questions_of(bank, 4))};
    const std::vector<HandoutFormat> formats{HandoutFormat::csv, HandoutFormat::cards};
    const TempFolder folder;
    const auto first = write_handout(bank, sheets, formats, folder.path(), lent());
    REQUIRE(first);
    for (const auto& path : *first)
        std::ofstream(path) << "of last week";
    REQUIRE(write_handout(bank, sheets, formats, folder.path(), lent()));
    CHECK(content(first->front()) != "of last week");
    CHECK(folder.count() == 2);
    // The second name is taken by a folder: the first file comes back.
    std::ofstream(first->front()) << "of last week";
    std::filesystem::remove(first->back());
    std::filesystem::create_directory(first->back());
    CHECK_FALSE(write_handout(bank, sheets, formats, folder.path(), lent()));
    CHECK(content(first->front()) == "of last week");
    CHECK(folder.count() == 2);
}

TEST_CASE("what a killed program left of a handout is cleared away, and what it moved comes back") {
    const problems::Bank bank = real_bank();
    const std::vector<Worksheet> sheets{sheet_of(questions_of(bank, 4))};
    const TempFolder folder;
    const std::string held = folder.put(".handout0.part/held", "");
    folder.put(".handout0.part/before-old.csv", "of last week");
    folder.put(".handout0.part/new.csv", "half");
    std::filesystem::last_write_time(held, std::filesystem::file_time_type::clock::now() -
                                               std::chrono::hours(1));
    const std::string live = folder.put(".handout1.part/held", "");
    REQUIRE(write_handout(bank, sheets, {HandoutFormat::csv}, folder.path(), lent()));
    CHECK(content(folder / "old.csv") == "of last week");
    CHECK_FALSE(std::filesystem::exists(held));
    CHECK(std::filesystem::exists(live));
}

TEST_CASE("without what makes PDF a handout says so, names another way, and leaves nothing") {
    const problems::Bank bank = real_bank();
    const std::vector<Worksheet> sheets{sheet_of(questions_of(bank, 2))};
    const TempFolder folder;
    const auto written = write_handout(bank, sheets, {HandoutFormat::html, HandoutFormat::pdf},
                                       folder / "new", Tools{});
    REQUIRE_FALSE(written);
    CHECK(written.error().fault == PublishFault::no_tool);
    CHECK_THAT(written.error().message, ContainsSubstring("no PDF"));
    CHECK_THAT(written.error().message, ContainsSubstring("browser"));
    CHECK(folder.count() == 0);
    // All else is text and needs nothing.
    CHECK(write_handout(bank, sheets,
                        {HandoutFormat::html, HandoutFormat::qti21, HandoutFormat::qti3,
                         HandoutFormat::csv, HandoutFormat::cards},
                        folder / "new", Tools{}));
}

TEST_CASE("a package is made by what is lent for it") {
    const problems::Bank bank = real_bank();
    Tools tools;
    std::size_t files = 0;
    tools.zip = [&](const std::vector<PackedFile>& packed) {
        files = packed.size();
        return tl::expected<std::string, PublishError>("lent");
    };
    const auto made = exported_questions(HandoutFormat::qti21, bank, questions_of(bank, 3),
                                         "Levers", Drawings::beside, tools);
    REQUIRE(made);
    CHECK(made->bytes == "lent");
    CHECK(files >= 5); // manifest, test, an item each
}

TEST_CASE("a table without drawings leaves out and counts what needs one") {
    const problems::Bank bank = real_bank();
    const std::vector<problems::Question> questions = questions_of(bank, 60);
    const auto needing =
        static_cast<std::size_t>(std::count_if(questions.begin(), questions.end(), needs_figure));
    REQUIRE(needing > 2);
    for (const HandoutFormat format : {HandoutFormat::csv, HandoutFormat::cards}) {
        const auto made =
            exported_questions(format, bank, questions, "", Drawings::left_out, Tools{});
        REQUIRE(made);
        CHECK(made->left_out == needing);
        const auto rows = std::count(made->bytes.begin(), made->bytes.end(), '\n');
        CHECK(static_cast<std::size_t>(rows) == 1 + questions.size() - needing);
        const auto whole =
            exported_questions(format, bank, questions, "", Drawings::beside, lent());
        REQUIRE(whole);
        CHECK(whole->left_out == 0);
    }
}

#include "app/practice/desk.h"
#include "learner/shipped_course.h"
#include "publish/small_disk.h"

#include <fstream>
#include <sys/stat.h>

namespace steelyard::app {

using learner::Clock;
using learner::kEvening_ms;
using learner::shipped_course;

TEST_CASE("What the desk keeps is there again for the next program, and for the terminal") {
    const learner::TestFolder folder;
    const Clock now{kEvening_ms, 0};
    const auto assets = std::filesystem::path(STEELYARD_SOURCE_DIR) / "assets";
    const problems::Bank& bank = *shipped_course().bank;
    {
        Desk desk(bank, assets, folder.path(), now);
        CHECK(desk.wants_name());
        CHECK(desk.add_learner("Ada", now).empty());
        CHECK_FALSE(desk.add_learner("ada", now).empty());
        CHECK(desk.set_exam_day("2026-12-03", now).empty());
        CHECK(desk.set_exam_day("2026-11-03", now).find("past") != std::string::npos);
        CHECK_FALSE(desk.set_exam_day("soon", now).empty());
        CHECK(desk.keeps());
        desk.keep_answer(learner::answer_about("lever-class", true, kEvening_ms), now);
        CHECK(desk.standing().answers == 1);
    }
    auto opened = learner::open_record(folder.path(), now);
    REQUIRE(opened);
    const auto ada = opened->record.learner_named("Ada");
    REQUIRE((ada && *ada));
    CHECK((*ada)->answers == 1);
    CHECK(learner::write_day(*(*ada)->exam_day) == "2026-12-03");
    const Desk again(bank, assets, folder.path(), now);
    REQUIRE(again.learner());
    CHECK(again.learner()->name == "Ada");
}

TEST_CASE("Without a record practice goes on, keeps nothing and says so") {
    const learner::TestFolder folder;
    const auto blocked = folder.path() / "file";
    std::ofstream(blocked) << "no folder";
    const Clock now{kEvening_ms, 0};
    Desk desk(*shipped_course().bank, std::filesystem::path(STEELYARD_SOURCE_DIR) / "assets",
              blocked, now);
    CHECK_FALSE(desk.keeps());
    CHECK_FALSE(desk.wants_name());
    REQUIRE(desk.notices().size() == 2);
    CHECK(desk.notices()[1].find("nothing of it is kept") != std::string::npos);
    desk.keep_answer(learner::answer_about("lever-class", true, kEvening_ms), now);
    CHECK(desk.standing().answers == 1);
}

TEST_CASE(
    "On a full disk nothing is said to be kept that is not, and it is kept when there is room") {
    const learner::TestFolder folder;
    const Clock now{kEvening_ms, 0};
    Desk desk(*shipped_course().bank, std::filesystem::path(STEELYARD_SOURCE_DIR) / "assets",
              folder.path(), now);
    REQUIRE(desk.add_learner("Ada", now).empty());
    desk.keep_answer(learner::answer_about("lever-class", true, kEvening_ms), now);
    CHECK(desk.has_kept_all());
    {
        const SmallDisk disk(4096);
        desk.keep_answer(learner::answer_about("lever-class", true, kEvening_ms + 1), now);
        desk.keep_answer(learner::answer_about("lever-class", true, kEvening_ms + 2), now);
    }
    CHECK(desk.standing().answers == 3);
    CHECK_FALSE(desk.has_kept_all());
    CHECK(desk.kept_text().find("2 answers could not be kept") == 0);
    REQUIRE(desk.notices().size() == 1);
    CHECK(desk.notices()[0].find("Make room on the disk") != std::string::npos);
    desk.keep_answer(learner::answer_about("lever-class", true, kEvening_ms + 3), now);
    CHECK(desk.kept_text() == "Every answer is kept.");
    auto record = learner::open_record(folder.path(), now);
    CHECK(record->record.learner_named("Ada").value()->answers == 4);
}

TEST_CASE("A pipe or a folder that is dropped on the window is not waited for") {
    const learner::TestFolder folder;
    const Clock now{kEvening_ms, 0};
    Desk desk(*shipped_course().bank, std::filesystem::path(STEELYARD_SOURCE_DIR) / "assets",
              folder.path(), now);
    const auto pipe = folder.path() / "pipe.jsonl";
    REQUIRE(mkfifo(pipe.c_str(), 0600) == 0);
    desk.import_record(pipe, now);
    REQUIRE(desk.notices().size() == 1);
    CHECK(desk.notices()[0].find("no plain file") != std::string::npos);
}

TEST_CASE("Where a part of the questions cannot be read, practice says so and gives no exam") {
    const learner::TestFolder folder;
    const Clock now{kEvening_ms, 0};
    problems::Bank bank = *shipped_course().bank;
    setup::InputError fault;
    fault.file = "lever_class.toml";
    bank.faults.push_back(fault);
    const Desk desk(bank, std::filesystem::path(STEELYARD_SOURCE_DIR) / "assets", folder.path(),
                    now);
    REQUIRE(desk.has_course());
    REQUIRE_FALSE(desk.notices().empty());
    CHECK(desk.notices().front().find("lever_class.toml") != std::string::npos);
    const auto exam = learner::new_exam(desk.course(), 7, now);
    REQUIRE_FALSE(exam);
    CHECK(exam.error().message.find("lever_class.toml") != std::string::npos);
    bank.faults.clear();
    CHECK(learner::new_exam(desk.course(), 7, now));
}

TEST_CASE("What one machine exports another takes in, once however often it is given") {
    const learner::TestFolder here;
    const learner::TestFolder there;
    const Clock now{kEvening_ms, 0};
    const auto assets = std::filesystem::path(STEELYARD_SOURCE_DIR) / "assets";
    const problems::Bank& bank = *shipped_course().bank;
    Desk from(bank, assets, here.path(), now);
    CHECK(from.add_learner("Ada", now).empty());
    from.keep_answer(learner::answer_about("lever-class", true, kEvening_ms), now);
    CHECK(from.export_record(now).find("in " + here.path().string()) != std::string::npos);
    std::filesystem::path file;
    for (const auto& entry : std::filesystem::directory_iterator(here.path()))
        if (entry.path().extension() == ".jsonl")
            file = entry.path();
    REQUIRE_FALSE(file.empty());

    Desk to(bank, assets, there.path(), now);
    to.import_record(file, now);
    to.import_record(file, now);
    REQUIRE(to.learner());
    CHECK(to.learner()->name == "Ada");
    CHECK(to.standing().answers == 1);

    std::ofstream(file) << "no record\n";
    to.import_record(file, now);
    CHECK(to.notices().back().find(file.filename().string()) != std::string::npos);
    CHECK(to.standing().answers == 1);
}

} // namespace steelyard::app

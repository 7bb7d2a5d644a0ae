// What is found on the disk is not always what was left there.

#include "learner/record/check.h"
#include "learner/record/file/backups.h"
#include "learner/record/record.h"
#include "learner/record/schema.h"
#include "learner/shipped_course.h"

#include <fstream>
#include <sys/wait.h>

using namespace steelyard::learner;
namespace fs = std::filesystem;

namespace {

const Clock kNow{kEvening_ms, 0};

void write_file(const fs::path& path, const std::string& bytes) {
    std::ofstream(path, std::ios::binary) << bytes;
}

/// A record with so many answers of Ada, closed again.
std::int64_t make_record(const TestFolder& folder, int answers, TimeMs first_ms = kEvening_ms) {
    auto opened = open_record(folder.path(), kNow);
    REQUIRE(opened);
    auto ada = opened->record.learner_named("Ada");
    if (!*ada)
        *ada = *opened->record.add_learner("Ada", kNow);
    std::vector<Answer> all;
    for (int i = 0; i < answers; ++i)
        all.push_back(answer_about("balance", i % 2 == 0, first_ms + i * kSecond_ms));
    REQUIRE(opened->record.add_answers((**ada).id, shipped_course(), all, kNow));
    return (**ada).id;
}

std::int64_t answers_in(Record& record) {
    return *record.database().integer("SELECT count(*) FROM answer");
}

/// Overwrites a stretch of the file with nonsense.
void damage(const fs::path& path, std::streamoff at, std::size_t bytes) {
    std::fstream file(path, std::ios::in | std::ios::out | std::ios::binary);
    file.seekp(at);
    file << std::string(bytes, '\x5A');
}

int files_beginning(const fs::path& folder, const std::string& beginning) {
    int count = 0;
    for (const auto& entry : fs::directory_iterator(folder))
        count += entry.path().filename().string().rfind(beginning, 0) == 0 ? 1 : 0;
    return count;
}

} // namespace

TEST_CASE("a damaged record is set aside, the newest good backup opened, and the learner told") {
    const TestFolder folder;
    make_record(folder, 40);
    REQUIRE(open_record(folder.path(), kNow)->record.back_up_if_due(kNow));
    write_file(folder.path() / kRecordFile, "This was a record once." + std::string(9000, 'x'));
    auto opened = open_record(folder.path(), kNow);
    REQUIRE(opened);
    REQUIRE(opened->notices.size() == 1);
    CHECK_THAT(opened->notices[0], ContainsSubstring("set aside as record-damaged-2026-11-25-1"));
    CHECK_THAT(opened->notices[0], ContainsSubstring("backup of 2026-11-25 is in use"));
    CHECK(answers_in(opened->record) == 40);
    CHECK(files_beginning(folder.path(), "record-damaged") >= 1);
    CHECK(open_record(folder.path(), kNow)->notices.empty());
}

TEST_CASE("a backup that is damaged too is passed over for an older good one") {
    const TestFolder folder;
    make_record(folder, 10);
    REQUIRE(open_record(folder.path(), kNow)->record.back_up_if_due(kNow));
    const Clock tomorrow{kEvening_ms + kDay_ms, 0};
    make_record(folder, 10, kEvening_ms + kDay_ms);
    REQUIRE(open_record(folder.path(), tomorrow)->record.back_up_if_due(tomorrow));
    const auto backups = backups_in(folder.path());
    REQUIRE(backups.size() == 2);
    write_file(backups.front(), std::string(20000, 'x'));
    write_file(folder.path() / kRecordFile, std::string(20000, 'x'));
    auto opened = open_record(folder.path(), tomorrow);
    REQUIRE(opened);
    CHECK(answers_in(opened->record) == 10);
}

TEST_CASE("newer answers are brought over from what can be read of the damaged file") {
    const TestFolder folder;
    const std::int64_t ada = make_record(folder, 200);
    REQUIRE(open_record(folder.path(), kNow)->record.back_up_if_due(kNow));
    make_record(folder, 100, kEvening_ms + kDay_ms);
    // The page of the folded skills: answers lie elsewhere.
    std::int64_t page = 0;
    {
        auto opened = open_record(folder.path(), kNow);
        page = *opened->record.database().integer(
            "SELECT rootpage FROM sqlite_schema WHERE name = 'skill_state'");
    }
    damage(folder.path() / kRecordFile, (page - 1) * 4096, 4096);
    auto opened = open_record(folder.path(), kNow);
    REQUIRE(opened);
    REQUIRE(opened->notices.size() == 1);
    CHECK_THAT(opened->notices[0], ContainsSubstring("100 newer answers could be read"));
    CHECK(answers_in(opened->record) == 300);
    CHECK(opened->record.standing(ada, shipped_course(), kNow)->answers == 300);
    CHECK(check_record(opened->record, shipped_course(), kNow, {})->mended.empty());
}

TEST_CASE("damage without any backup begins a new record and says so") {
    const TestFolder folder;
    write_file(folder.path() / kRecordFile, std::string(5000, 'x'));
    auto opened = open_record(folder.path(), kNow);
    REQUIRE(opened);
    CHECK_THAT(opened->notices.at(0), ContainsSubstring("no good backup"));
    CHECK(opened->record.learners()->empty());
}

TEST_CASE(
    "a record that is missing, empty or cut to a byte is restored from its backup, and said") {
    for (const std::optional<std::string>& left :
         {std::optional<std::string>(), std::optional<std::string>(""),
          std::optional<std::string>("S"), std::optional<std::string>(std::string(511, '\0'))}) {
        const TestFolder folder;
        make_record(folder, 40);
        REQUIRE(open_record(folder.path(), kNow)->record.back_up_if_due(kNow));
        fs::remove(folder.path() / kRecordFile);
        if (left)
            write_file(folder.path() / kRecordFile, *left);
        auto opened = open_record(folder.path(), kNow);
        REQUIRE(opened);
        REQUIRE(opened->notices.size() == 1);
        CHECK_THAT(opened->notices[0], ContainsSubstring("was missing or empty"));
        CHECK_THAT(opened->notices[0], ContainsSubstring("backup of 2026-11-25 is in use"));
        CHECK(answers_in(opened->record) == 40);
        CHECK(backups_in(folder.path()).size() == 1);
        CHECK(open_record(folder.path(), kNow)->notices.empty());
    }
}

TEST_CASE("a file without tables beside a backup is no new record") {
    const TestFolder folder;
    make_record(folder, 40);
    REQUIRE(open_record(folder.path(), kNow)->record.back_up_if_due(kNow));
    fs::remove(folder.path() / kRecordFile);
    {
        auto bare = Database::open(folder.path() / kRecordFile, Access::write);
        REQUIRE(bare->run("PRAGMA journal_mode = WAL"));
    }
    REQUIRE(fs::file_size(folder.path() / kRecordFile) == 4096);
    auto opened = open_record(folder.path(), kNow);
    REQUIRE(opened);
    CHECK(opened->notices.size() == 1);
    CHECK(answers_in(opened->record) == 40);
}

TEST_CASE("a missing record whose backups are of no use begins anew, once, and says so") {
    const TestFolder folder;
    make_record(folder, 3);
    REQUIRE(open_record(folder.path(), kNow)->record.back_up_if_due(kNow));
    fs::remove(folder.path() / kRecordFile);
    write_file(backups_in(folder.path()).front(), "");
    const auto opened = open_record(folder.path(), kNow);
    REQUIRE(opened);
    CHECK_THAT(opened->notices.at(0), ContainsSubstring("no good backup"));
    CHECK(open_record(folder.path(), kNow)->notices.empty());
}

TEST_CASE("an empty file is a new record") {
    const TestFolder folder;
    write_file(folder.path() / kRecordFile, "");
    const auto opened = open_record(folder.path(), kNow);
    REQUIRE(opened);
    CHECK(opened->notices.empty());
}

TEST_CASE("a record of a later version is left as it is and said to be so") {
    const TestFolder folder;
    make_record(folder, 3);
    {
        auto opened = open_record(folder.path(), kNow);
        REQUIRE(opened->record.database().run("PRAGMA user_version = 99"));
    }
    const auto opened = open_record(folder.path(), kNow);
    REQUIRE_FALSE(opened);
    CHECK(opened.error().trouble == Trouble::newer);
    CHECK_THAT(opened.error().message, ContainsSubstring("its version 99"));
    auto untouched = Database::open(folder.path() / kRecordFile, Access::read);
    CHECK(*untouched->integer("SELECT count(*) FROM answer") == 3);
}

TEST_CASE("a database of some other program is left alone") {
    const TestFolder folder;
    {
        auto other = Database::open(folder.path() / kRecordFile, Access::write);
        REQUIRE(other->run("CREATE TABLE recipe (name TEXT); INSERT INTO recipe VALUES ('bread')"));
    }
    const auto opened = open_record(folder.path(), kNow);
    REQUIRE_FALSE(opened);
    CHECK(opened.error().trouble == Trouble::foreign);
    auto other = Database::open(folder.path() / kRecordFile, Access::read);
    CHECK(*other->text("SELECT name FROM recipe") == "bread");
}

TEST_CASE("an earlier version is backed up and brought up to date") {
    const TestFolder folder;
    {
        auto old = Database::open(folder.path() / kRecordFile, Access::write);
        REQUIRE(old->run(std::string(schema_steps()[0])));
        REQUIRE(old->run("PRAGMA user_version = 1; PRAGMA application_id = " +
                         std::to_string(kApplicationId)));
        REQUIRE(old->run(
            "INSERT INTO learner (id, name, created_ms) VALUES (1, 'Ada', 1795629600000);"
            "INSERT INTO answer (learner, at_ms, code, skill, family, purpose, outcome, typed, "
            "wrong_rule, attempt, hints, help, guess, foreseen, took_ms) VALUES "
            "(1, 1795629600000, 'A', 'balance', 'f', 'practice', 'wrong', '7 N', 'arms-swapped', "
            "1, "
            "0, 0, 0.1, 0.5, 9), "
            "(1, 1795629601000, 'B', 'balance', 'f', 'practice', 'right', '7 N', '', 1, 0, 0, 0.1, "
            "0.5, 9)"));
    }
    auto opened = open_record(folder.path(), kNow);
    REQUIRE(opened);
    CHECK(*opened->record.database().integer("PRAGMA user_version") ==
          static_cast<std::int64_t>(schema_steps().size()));
    CHECK(opened->record.frequent_rules(1, 5)->at(0).rule == "arms-swapped");
    CHECK(opened->record.standing(1, shipped_course(), kNow)->answers == 2);
    const auto backups = backups_in(folder.path());
    REQUIRE(backups.size() == 1);
    auto backup = Database::open(backups[0], Access::frozen);
    CHECK(*backup->integer("PRAGMA user_version") == 1);
}

TEST_CASE("a backup is made once a day, and only the newest are kept") {
    const TestFolder folder;
    make_record(folder, 3);
    auto opened = open_record(folder.path(), kNow);
    for (int day = 0; day < 12; ++day)
        for (int hour = 0; hour < 3; ++hour)
            REQUIRE(opened->record.back_up_if_due(
                {kEvening_ms + day * kDay_ms + hour * 60 * kMinute_ms, 0}));
    CHECK(backups_in(folder.path()).size() == kBackups);
}

TEST_CASE("backups of a clock that was in the future neither stop nor displace those of today") {
    const TestFolder folder;
    make_record(folder, 3);
    auto opened = open_record(folder.path(), kNow);
    constexpr int kYears = 10;
    for (int day = 0; day < static_cast<int>(kBackups) + 1; ++day)
        REQUIRE(opened->record.back_up_if_due({kEvening_ms + (365 * kYears + day) * kDay_ms, 0}));
    // The clock is right again; three days of answers follow.
    for (int day = 0; day < 3; ++day) {
        make_record(folder, 10, kEvening_ms + day * kDay_ms);
        for (int hour = 0; hour < 3; ++hour)
            REQUIRE(opened->record.back_up_if_due(
                {kEvening_ms + day * kDay_ms + hour * 60 * kMinute_ms, 0}));
    }
    const TimeMs today_ms = kEvening_ms + 3 * kDay_ms;
    const auto backups = backups_in(folder.path(), today_ms);
    REQUIRE(backups.size() == kBackups);
    // One a day, the newest first; what is left of the others comes after them.
    for (int day = 0; day < 3; ++day)
        CHECK(made_at(backups[static_cast<std::size_t>(day)]) == kEvening_ms + (2 - day) * kDay_ms);
    opened = tl::make_unexpected(RecordError{});
    fs::remove(folder.path() / kRecordFile);
    opened = open_record(folder.path(), {today_ms, 0});
    REQUIRE(opened);
    CHECK_THAT(opened->notices.at(0), ContainsSubstring("backup of 2026-11-27 is in use"));
    CHECK(answers_in(opened->record) == 30);
}

TEST_CASE("a folder that cannot be made is told with what to do") {
    const auto opened = open_record("/proc/steelyard", kNow);
    REQUIRE_FALSE(opened);
    CHECK(opened.error().trouble == Trouble::cannot_open);
    CHECK_THAT(opened.error().message, ContainsSubstring("Start Steelyard with another"));
    // It is shown in the window too, where there are no options.
    CHECK(opened.error().message.find("--") == std::string::npos);
    CHECK_FALSE(open_record("", kNow));
}

TEST_CASE("a record that may not be written can be looked at") {
    const TestFolder folder;
    const std::int64_t ada = make_record(folder, 5);
    const Course& course = shipped_course();
    const pid_t child = fork();
    if (child == 0) {
        // Root may write anywhere: somebody who may not has to look.
        constexpr uid_t kNobody = 65534;
        // 0555 for the folder, 0444 for the file.
        fs::permissions(folder.path(), static_cast<fs::perms>(0555));
        fs::permissions(folder.path() / kRecordFile, static_cast<fs::perms>(0444));
        if (geteuid() == 0 && setuid(kNobody) != 0)
            _exit(9);
        auto opened = open_record(folder.path(), kNow);
        if (!opened)
            _exit(1);
        if (opened->record.is_writable() || opened->notices.size() != 1)
            _exit(2);
        const auto standing = opened->record.standing(ada, course, kNow);
        if (!standing || standing->answers != 5)
            _exit(3);
        const auto refused = opened->record.add_answer(
            ada, course, answer_about("balance", true, kEvening_ms + kDay_ms), kNow);
        _exit(!refused && refused.error().trouble == Trouble::read_only ? 0 : 4);
    }
    int status = 0;
    REQUIRE(waitpid(child, &status, 0) == child);
    CHECK(WIFEXITED(status));
    CHECK(WEXITSTATUS(status) == 0);
}

TEST_CASE("a clock that was set back is noticed, and answers are kept all the same") {
    const TestFolder folder;
    const std::int64_t ada = make_record(folder, 5);
    auto opened = open_record(folder.path(), kNow);
    const Clock back{kEvening_ms - 30 * kDay_ms, 0};
    const auto standing = opened->record.standing(ada, shipped_course(), back);
    CHECK_THAT(clock_notice(*standing, back), ContainsSubstring("2026-10-26"));
    CHECK(clock_notice(*standing, kNow).empty());
    const auto after = opened->record.add_answer(ada, shipped_course(),
                                                 answer_about("balance", true, back.utc_ms), back);
    REQUIRE(after);
    CHECK(after->answers == 6);
    CHECK(check_record(opened->record, shipped_course(), back, {})->mended.empty());
}

TEST_CASE("opening does the same work for many answers as for few") {
    // Counted in pages that SQLite had to read, which is the same on every machine.
    const auto pages_read = [](int answers) {
        const TestFolder folder;
        const std::int64_t ada = make_record(folder, 10);
        {
            auto opened = open_record(folder.path(), kNow);
            REQUIRE(opened->record.database().run(
                "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < " +
                std::to_string(answers) +
                ") INSERT INTO answer (learner, at_ms, code, skill, family, purpose, outcome, "
                "typed, wrong_rule, attempt, hints, help, guess, foreseen, took_ms) SELECT 1, "
                "1700000000000 + i * 1000, 'C' || i, 'balance', 'f', 'practice', 'right', '1', '', "
                "1, 0, 0, 0.1, 0.5, 1 FROM n"));
        }
        auto opened = open_record(folder.path(), kNow);
        REQUIRE(opened);
        REQUIRE(opened->record.standing(ada, shipped_course(), kNow));
        return opened->record.database().pages_read();
    };
    // Three index levels more at most, for the handful of look-ups.
    CHECK(pages_read(60000) <= pages_read(30000) + 20);
}

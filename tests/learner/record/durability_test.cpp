// Nothing is lost: not by kill -9, not by a full disk, not by two programs at once.

#include "learner/record/exam_record.h"
#include "learner/record/programs.h"

#include <chrono>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <sys/resource.h>
#include <thread>

using namespace steelyard::learner;

namespace {

const Clock kNow = kAtEvening;

} // namespace

TEST_CASE("every answer that was told to be kept is there after kill -9") {
    const TestFolder folder;
    const std::int64_t learner = add_ada(folder);
    shipped_course(); // read once, here, and not by every child
    int next = 0;
    for (int round = 0; round < 12; ++round) {
        int told[2];
        REQUIRE(pipe(told) == 0);
        const int first = next;
        const pid_t child =
            in_child([&] { return add_many(folder, learner, first, 100000, told[1]); });
        close(told[1]);
        // After some answers, and then at a moment that differs from round to round.
        int last = -1;
        for (int i = 0; i < 3 + round; ++i)
            REQUIRE(read(told[0], &last, sizeof last) == static_cast<ssize_t>(sizeof last));
        std::this_thread::sleep_for(std::chrono::microseconds(137 * round));
        kill(child, SIGKILL);
        CHECK(WIFSIGNALED(status_of(child)));
        while (read(told[0], &last, sizeof last) == static_cast<ssize_t>(sizeof last)) {
        }
        close(told[0]);
        // One more may have been kept and not yet told.
        const std::int64_t there = answers_in_order(folder);
        CHECK(there >= last + 1);
        CHECK(there <= last + 2);
        next = static_cast<int>(there);
    }
}

TEST_CASE("two programs at once lose nothing, and what is folded stays right") {
    const TestFolder folder;
    const std::int64_t learner = add_ada(folder);
    shipped_course();
    constexpr int kEach = 60;
    const pid_t one = in_child([&] { return add_many(folder, learner, 0, kEach, -1); });
    const pid_t other = in_child([&] { return add_many(folder, learner, 1000, kEach, -1); });
    CHECK(status_of(one) == 0);
    CHECK(status_of(other) == 0);
    CHECK(answers_in_order(folder) == 2 * kEach);
}

TEST_CASE("two programs that make the record at once make one") {
    const TestFolder folder;
    std::vector<pid_t> children;
    for (int i = 0; i < 4; ++i)
        children.push_back(in_child([&, i] {
            auto opened = open_record(folder.path(), kNow);
            return opened && opened->record.add_learner("L" + std::to_string(i), kNow) ? 0 : 1;
        }));
    for (const pid_t child : children)
        CHECK(status_of(child) == 0);
    CHECK(open_record(folder.path(), kNow)->record.learners()->size() == 4);
}

TEST_CASE("programs that find the same damage at once mend it once and lose nothing") {
    const TestFolder folder;
    const std::int64_t learner = add_ada(folder);
    // Many answers, so that mending takes long enough to be met by the others.
    constexpr int kBefore = 20000;
    constexpr int kPrograms = 5;
    std::int64_t page = 0;
    {
        auto opened = open_record(folder.path(), kNow);
        std::vector<Answer> answers;
        for (int i = 0; i < kBefore; ++i)
            answers.push_back(answer_about("balance", true, kEvening_ms - (i + 1) * kSecond_ms));
        REQUIRE(opened->record.add_answers(learner, shipped_course(), answers, kNow));
        // The page of the folded skills: answers lie elsewhere.
        page = *opened->record.database().integer(
            "SELECT rootpage FROM sqlite_schema WHERE name = 'skill_state'");
    }
    constexpr std::streamoff kPageBytes = 4096;
    std::fstream file(folder.path() / kRecordFile, std::ios::in | std::ios::out | std::ios::binary);
    file.seekp((page - 1) * kPageBytes);
    file << std::string(kPageBytes, 'Z');
    file.close();
    int start[2];
    REQUIRE(pipe(start) == 0);
    std::vector<pid_t> children;
    for (int i = 0; i < kPrograms; ++i)
        children.push_back(in_child([&, i] {
            close(start[1]);
            char nothing = 0;
            if (read(start[0], &nothing, 1) != 0) // until the starter closes its end
                return 1;
            auto opened = open_record(folder.path(), kNow);
            if (!opened)
                return 2;
            const auto kept =
                opened->record.add_answer(learner, shipped_course(), answer_after(i), kNow);
            return kept ? 0 : 3;
        }));
    close(start[0]);
    close(start[1]);
    for (const pid_t child : children)
        CHECK(status_of(child) == 0);
    CHECK(answers_in_order(folder) == kBefore + kPrograms);
    int set_aside = 0;
    for (const auto& entry : std::filesystem::directory_iterator(folder.path())) {
        const std::string name = entry.path().filename().string();
        set_aside += name.rfind("record-damaged", 0) == 0 && entry.path().extension() == ".sqlite";
    }
    CHECK(set_aside == 1);
}

TEST_CASE("on a full disk the answer is refused with what to do, and all before it are there") {
    const TestFolder folder;
    const std::int64_t learner = add_ada(folder);
    shipped_course();
    int told[2];
    REQUIRE(pipe(told) == 0);
    const pid_t child = in_child([&] {
        // No file may grow beyond this: writing fails as it does on a full disk.
        const rlimit limit{2000000, 2000000};
        std::signal(SIGXFSZ, SIG_IGN);
        if (setrlimit(RLIMIT_FSIZE, &limit) != 0)
            return 1;
        return add_many(folder, learner, 0, 100000, told[1]);
    });
    close(told[1]);
    int kept = 0;
    int last = 0;
    while (read(told[0], &last, sizeof last) == static_cast<ssize_t>(sizeof last))
        ++kept;
    close(told[0]);
    const int status = status_of(child);
    CHECK(WIFEXITED(status));
    CHECK(WEXITSTATUS(status) == 2);
    CHECK(kept > 20);
    CHECK(answers_in_order(folder) == kept);
    // There is room again.
    CHECK(add_many(folder, learner, 200000, 1, -1) == 0);
    CHECK(answers_in_order(folder) == kept + 1);
}

TEST_CASE("a record at its largest says that the disk is full") {
    const TestFolder folder;
    const std::int64_t learner = add_ada(folder);
    Record record = std::move(open_record(folder.path(), kNow)->record);
    const auto pages = record.database().integer("PRAGMA page_count");
    REQUIRE(record.database().run("PRAGMA max_page_count = " + std::to_string(*pages + 2)));
    Recorded<Standing> last = Standing();
    int kept = 0;
    while (last) {
        Answer answer = answer_about("balance", true, kEvening_ms + kept * kSecond_ms);
        answer.typed = std::string(500, '1');
        last = record.add_answer(learner, shipped_course(), answer, kNow);
        kept += last ? 1 : 0;
    }
    CHECK(last.error().trouble == Trouble::full);
    CHECK_THAT(last.error().message, ContainsSubstring("Make room on the disk"));
    CHECK(answers_in_order(folder) == kept);
}

TEST_CASE("a record that is deleted while it is open is written again with all that was answered") {
    const TestFolder folder;
    const std::int64_t learner = add_ada(folder);
    {
        Record record = std::move(open_record(folder.path(), kNow)->record);
        Exam exam = *new_exam(shipped_course(), 3, kNow);
        REQUIRE(keep_exam(record, learner, exam));
        REQUIRE(record.add_answer(learner, shipped_course(), answer_after(0), kNow));
        CHECK(record.take_notices().empty());
        SECTION("the file alone, and its journal left behind") {
            std::filesystem::remove(folder.path() / kRecordFile);
        }
        SECTION("the whole folder") {
            std::filesystem::remove_all(folder.path());
        }
        SECTION("moved to another name") {
            std::filesystem::rename(folder.path() / kRecordFile, folder.path() / "record.away");
        }
        const auto kept = record.add_answer(learner, shipped_course(), answer_after(1), kNow);
        REQUIRE(kept);
        CHECK(kept->answers == 2);
        const auto notices = record.take_notices();
        REQUIRE(notices.size() == 1);
        CHECK_THAT(notices[0], ContainsSubstring("deleted or moved away"));
        CHECK(record.take_notices().empty());
        REQUIRE(record.add_answer(learner, shipped_course(), answer_after(2), kNow));
        CHECK(record.take_notices().empty());
        CHECK(unfinished_exam(record, learner).value()->items.size() == exam.items.size());
    }
    CHECK(answers_in_order(folder) == 3);
}

TEST_CASE("a record that is replaced while it is open gets what was answered in the old one") {
    const TestFolder folder;
    const std::int64_t learner = add_ada(folder);
    Record record = std::move(open_record(folder.path(), kNow)->record);
    REQUIRE(record.add_answer(learner, shipped_course(), answer_after(0), kNow));
    std::filesystem::remove(folder.path() / kRecordFile);
    SECTION("by one in which the learner has the same number") {
        CHECK(add_ada(folder) == learner);
        REQUIRE(add_many(folder, learner, 10, 1, -1) == 0);
        const auto kept = record.add_answer(learner, shipped_course(), answer_after(1), kNow);
        REQUIRE(kept);
        CHECK(kept->answers == 3);
        CHECK_THAT(record.take_notices().at(0), ContainsSubstring("was replaced"));
        CHECK(answers_in_order(folder) == 3);
    }
    SECTION("by one in which another has it: told, and nothing kept under a wrong name") {
        REQUIRE(open_record(folder.path(), kNow)->record.add_learner("Ben", kNow));
        const auto refused = record.add_answer(learner, shipped_course(), answer_after(1), kNow);
        REQUIRE_FALSE(refused);
        CHECK(refused.error().trouble == Trouble::refused);
        CHECK_THAT(refused.error().message, ContainsSubstring("Start Steelyard again"));
        Record other = std::move(open_record(folder.path(), kNow)->record);
        CHECK(*other.database().integer("SELECT count(*) FROM answer") == 1);
        CHECK(*other.database().integer(
                  "SELECT count(*) FROM answer WHERE learner = (SELECT id FROM learner WHERE name "
                  "= 'Ben')") == 0);
    }
}

TEST_CASE("a record is opened and read while another program writes to it for long") {
    const TestFolder folder;
    const std::int64_t learner = add_ada(folder);
    REQUIRE(add_many(folder, learner, 0, 3, -1) == 0);
    auto writer = open_record(folder.path(), kNow);
    const auto writing = writer->record.begin();
    REQUIRE(writing);
    auto reader = open_record(folder.path(), kNow);
    REQUIRE(reader);
    CHECK(reader->notices.empty());
    // Waiting for the writer would take 20 s, and fail.
    const auto standing = reader->record.standing(learner, shipped_course(), kNow);
    REQUIRE(standing);
    CHECK(standing->answers == 3);
}

TEST_CASE("who waits for another program's writing is told so once, and goes on after it") {
    const TestFolder folder;
    const std::int64_t learner = add_ada(folder);
    shipped_course();
    int ready[2];
    REQUIRE(pipe(ready) == 0);
    const pid_t child = in_child([&] {
        auto opened = open_record(folder.path(), kNow);
        const auto writing = opened->record.begin();
        const char yes = 1;
        if (!writing || write(ready[1], &yes, 1) != 1)
            return 1;
        std::this_thread::sleep_for(std::chrono::milliseconds(1500));
        return 0;
    });
    char yes = 0;
    REQUIRE(read(ready[0], &yes, 1) == 1);
    auto opened = open_record(folder.path(), kNow);
    int told = 0;
    opened->record.tell_when_waiting([&] { ++told; });
    CHECK(opened->record.add_answer(learner, shipped_course(), answer_after(1), kNow));
    CHECK(told == 1);
    CHECK(status_of(child) == 0);
    close(ready[0]);
    close(ready[1]);
}

TEST_CASE("closing a record that was deleted leaves the journal of the one after it alone") {
    const TestFolder folder;
    const std::int64_t learner = add_ada(folder);
    auto old = open_record(folder.path(), kNow);
    REQUIRE(old->record.standing(learner, shipped_course(), kNow));
    for (const char* part : {"", "-wal", "-shm"})
        std::filesystem::remove(folder.path() / (std::string(kRecordFile) + part));
    CHECK(add_ada(folder) == learner);
    auto opened = open_record(folder.path(), kNow);
    REQUIRE(opened->record.add_answer(learner, shipped_course(),
                                      answer_about("balance", true, kEvening_ms), kNow));
    REQUIRE(std::filesystem::exists(folder.path() / "record.sqlite-wal"));
    old = tl::make_unexpected(RecordError{});
    CHECK(std::filesystem::exists(folder.path() / "record.sqlite-wal"));
    CHECK(std::filesystem::exists(folder.path() / "record.sqlite-shm"));
}

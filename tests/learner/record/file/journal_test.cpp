// A journal that somebody deleted is noticed; one that is there, or was ended, is not spoken of.

#include "learner/record/programs.h"

#include <csignal>
#include <filesystem>

using namespace steelyard::learner;

namespace {

/// A program that answers so many times and is killed with its journal open.
void answer_and_die(const TestFolder& folder, std::int64_t learner, int first, int count) {
    const pid_t child = in_child([&] {
        auto opened = open_record(folder.path(), kAtEvening);
        for (int i = first; opened && i < first + count; ++i)
            if (!opened->record.add_answer(learner, shipped_course(), answer_after(i), kAtEvening))
                return 1;
        kill(getpid(), SIGKILL);
        return 2;
    });
    CHECK(WIFSIGNALED(status_of(child)));
}

std::filesystem::path journal_in(const TestFolder& folder) {
    return folder.path() / (std::string(kRecordFile) + "-wal");
}

} // namespace

TEST_CASE("answers that were only in a journal that is gone are spoken of, once") {
    const TestFolder folder;
    const std::int64_t learner = add_ada(folder);
    shipped_course();
    answer_and_die(folder, learner, 0, 3);
    REQUIRE(std::filesystem::remove(journal_in(folder)));
    {
        auto opened = open_record(folder.path(), kAtEvening);
        REQUIRE(opened);
        REQUIRE(opened->notices.size() == 1);
        CHECK_THAT(opened->notices[0], ContainsSubstring("record.sqlite-wal"));
        CHECK_THAT(opened->notices[0], ContainsSubstring("lost"));
        CHECK(opened->record.learner_named("Ada").value());
    }
    CHECK(open_record(folder.path(), kAtEvening)->notices.empty());
}

TEST_CASE("what a backup has beyond a record that lost its journal is brought over") {
    const TestFolder folder;
    const std::int64_t learner = add_ada(folder);
    shipped_course();
    const pid_t child = in_child([&] {
        auto opened = open_record(folder.path(), kAtEvening);
        for (int i = 0; i < 3; ++i)
            if (!opened->record.add_answer(learner, shipped_course(), answer_after(i), kAtEvening))
                return 1;
        if (!opened->record.back_up_if_due(kAtEvening))
            return 2;
        kill(getpid(), SIGKILL);
        return 3;
    });
    CHECK(WIFSIGNALED(status_of(child)));
    REQUIRE(std::filesystem::remove(journal_in(folder)));
    auto opened = open_record(folder.path(), kAtEvening);
    REQUIRE(opened);
    CHECK_THAT(opened->notices.at(0), ContainsSubstring("3 of them were in the newest backup"));
    CHECK(opened->record.standing(learner, shipped_course(), kAtEvening)->answers == 3);
}

TEST_CASE("a first record whose journal is gone is not taken for a new one") {
    const TestFolder folder;
    shipped_course();
    const pid_t child = in_child([&] {
        auto opened = open_record(folder.path(), kAtEvening);
        const auto ada = opened->record.add_learner("Ada", kAtEvening);
        kill(getpid(), SIGKILL);
        return ada ? 1 : 2;
    });
    CHECK(WIFSIGNALED(status_of(child)));
    REQUIRE(std::filesystem::remove(journal_in(folder)));
    std::filesystem::remove(folder.path() / (std::string(kRecordFile) + "-shm"));
    const auto opened = open_record(folder.path(), kAtEvening);
    REQUIRE(opened);
    REQUIRE(opened->notices.size() == 1);
    CHECK_THAT(opened->notices[0], ContainsSubstring("begins anew"));
}

TEST_CASE("a record that is closed in order, or killed, or shared, misses no journal") {
    const TestFolder folder;
    const std::int64_t learner = add_ada(folder);
    shipped_course();
    CHECK_FALSE(std::filesystem::exists(journal_in(folder)));
    answer_and_die(folder, learner, 0, 3);
    CHECK(std::filesystem::exists(journal_in(folder)));
    CHECK(answers_in_order(folder) == 3);
    {
        auto one = open_record(folder.path(), kAtEvening);
        auto other = open_record(folder.path(), kAtEvening);
        REQUIRE(one->record.add_answer(learner, shipped_course(), answer_after(10), kAtEvening));
        one = tl::make_unexpected(RecordError{});
        REQUIRE(other->record.add_answer(learner, shipped_course(), answer_after(11), kAtEvening));
    }
    CHECK(answers_in_order(folder) == 5);
    // Both leave at once: whichever is the last, the next one finds all in order.
    for (int round = 0; round < 8; ++round) {
        const int at = 100 + 10 * round;
        const pid_t one = in_child([&] { return add_many(folder, learner, at, 2, -1); });
        const pid_t other = in_child([&] { return add_many(folder, learner, at + 5, 2, -1); });
        CHECK(status_of(one) == 0);
        CHECK(status_of(other) == 0);
        CHECK(answers_in_order(folder) == 5 + 4 * (round + 1));
    }
}

#pragma once
// Programs of their own that answer into one record, and die or not.

#include "learner/record/check.h"
#include "learner/record/record.h"
#include "learner/shipped_course.h"

#include <functional>
#include <sys/wait.h>
#include <unistd.h>

namespace steelyard::learner {

inline const Clock kAtEvening{kEvening_ms, 0};

/// Runs something in a process of its own and ends it without any tidying up.
inline pid_t in_child(const std::function<int()>& work) {
    const pid_t child = fork();
    REQUIRE(child >= 0);
    if (child == 0)
        _exit(work());
    return child;
}

inline int status_of(pid_t child) {
    int status = 0;
    REQUIRE(waitpid(child, &status, 0) == child);
    return status;
}

/// The id of the only learner, who is added first.
inline std::int64_t add_ada(const TestFolder& folder) {
    auto opened = open_record(folder.path(), kAtEvening);
    REQUIRE(opened);
    const auto ada = opened->record.add_learner("Ada", kAtEvening);
    REQUIRE(ada);
    return ada->id;
}

/// Adds answers whose times begin at `first`, one a second, and says after each that it is kept.
/// @return 0 when all were kept
inline int add_many(const TestFolder& folder, std::int64_t learner, int first, int count,
                    int told) {
    auto opened = open_record(folder.path(), kAtEvening);
    if (!opened)
        return 1;
    for (int i = first; i < first + count; ++i) {
        const Answer answer = answer_about(i % 2 == 0 ? "balance" : "torque-sum", i % 3 != 0,
                                           kEvening_ms + i * kSecond_ms);
        if (!opened->record.add_answer(learner, shipped_course(), answer, kAtEvening))
            return 2;
        if (told >= 0 && write(told, &i, sizeof i) != static_cast<ssize_t>(sizeof i))
            return 3;
    }
    return 0;
}

/// A right answer so many seconds into the evening.
inline Answer answer_after(int seconds) {
    return answer_about("balance", true, kEvening_ms + seconds * kSecond_ms);
}

/// Checks that the record is in order. @return its answers
inline std::int64_t answers_in_order(const TestFolder& folder) {
    auto opened = open_record(folder.path(), kAtEvening);
    REQUIRE(opened);
    CHECK(opened->notices.empty());
    const auto check = check_record(opened->record, shipped_course(), kAtEvening, {});
    REQUIRE(check);
    CHECK(check->faults.empty());
    CHECK(check->mended.empty());
    return check->answers.lines;
}

} // namespace steelyard::learner

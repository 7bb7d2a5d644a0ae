#pragma once
// A mock exam: timed, no feedback until the end, questions left and
// come back to. A value that the record can keep
// after every change, so that it goes on after a crash where it was, with the time it had left.
//
//     Exam exam = *new_exam(course, seed, now);
//     tick(exam, now);                  // at least once in kLongestTick_ms while it is open
//     give_answer(exam, "12 N", now);
//     go_to(exam, 3, now);
//     finish(exam, now);                // or the clock runs out
//     ExamReport report = report_on(course, exam);
//
// Its clock runs while it is open on the screen. Time in which the program did not run does not
// count, nor does a clock that was set.

#include "learner/course/course.h"
#include "learner/model/answer.h"
#include "learner/model/standing.h"
#include "problems/marking/marking.h"
#include "problems/question/generator.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace steelyard::learner {

struct ExamItem {
    std::string code;
    std::string skill;      ///< id
    std::string family;     ///< id
    std::string answer;     ///< as typed; empty = none yet
    bool come_back = false; ///< the learner wants to come back to it
    std::int64_t took_ms = 0;
    double foreseen = 0.5; ///< chance to be right that the model gave beforehand
};

struct Exam {
    std::int64_t id = 0; ///< in the record; 0 = not kept yet
    std::string title;
    std::uint64_t seed = 0;
    double pass_share = 0.7;
    TimeMs started_ms = 0;
    std::int64_t allowed_ms = 0;
    std::int64_t used_ms = 0; ///< while it was open
    TimeMs seen_ms = 0;       ///< up to here the time is counted
    std::size_t at = 0;       ///< index of the item on the screen
    bool finished = false;
    TimeMs finished_ms = 0;
    std::vector<ExamItem> items;

    std::int64_t left_ms() const { return used_ms < allowed_ms ? allowed_ms - used_ms : 0; }
    int answered() const;
    int to_come_back() const; ///< items that the learner wants to come back to
};

/// Longest time between two ticks that counts: longer, and the machine slept or its clock was set.
inline constexpr std::int64_t kLongestTick_ms = 60 * kSecond_ms;

/// Draws the questions: skills by their weight, families of a skill in turn, no question twice, no
/// two of one strategy in a row where that can be. The same seed draws the same exam. Some 5 ms.
/// Refused where a part of the bank cannot be read.
tl::expected<Exam, problems::NoQuestion> new_exam(const Course& course, std::uint64_t seed,
                                                  const Clock& clock);

/// Notes for each question what the model expects, to compare with what comes.
void foresee_exam(const Course& course, const Standing& standing, Exam& exam);

/// Counts the time since the last tick, and ends the exam when its time is up. Any other change
/// does this first; after the end, nothing changes any more.
void tick(Exam& exam, const Clock& clock);

/// Goes on after the program was closed, killed or asleep: the time since then does not count.
void resume(Exam& exam, const Clock& clock);

/// Answers the item on the screen; an empty answer takes it back.
void give_answer(Exam& exam, const std::string& answer, const Clock& clock);

/// Notes that the learner wants to come back to an item, or no longer does; an index beyond the
/// last changes nothing.
void note_to_come_back(Exam& exam, std::size_t item, bool wanted, const Clock& clock);

/// The nearest item to come back to before or after the one on the screen, which itself comes last;
/// after the last item the first follows. Empty = there is none.
/// @param by  +1 after it, -1 before it
std::optional<std::size_t> nearest_to_come_back(const Exam& exam, int by);

/// Puts another item on the screen; an index beyond the last stays at the last.
void go_to(Exam& exam, std::size_t item, const Clock& clock);

void finish(Exam& exam, const Clock& clock);

/// How an item was marked.
struct ExamMark {
    std::size_t item = 0;
    bool answered = false;
    bool right = false;
    std::string wrong_rule; ///< id; empty when none gives the answer
    problems::Question question;
    problems::Marking marking;
};

struct SkillScore {
    std::string skill; ///< id
    int right = 0;
    int of = 0;
};

/// A wrong rule and the items in which it was followed.
struct RuleCount {
    std::string rule; ///< id
    std::vector<std::size_t> items;
};

struct ExamReport {
    int right = 0;
    int of = 0;
    int pass = 0; ///< right answers needed
    bool passed = false;
    std::vector<ExamMark> marks;      ///< in the order of the items
    std::vector<SkillScore> by_skill; ///< in the course's order
    std::vector<RuleCount> by_rule;   ///< most frequent first
    std::vector<std::string> faults;  ///< questions that this bank cannot make again
};

/// Marks an exam. A question that the bank can no longer make is left out and named. Some 5 ms.
ExamReport report_on(const Course& course, const Exam& exam);

/// The answers of a finished exam as the record keeps them; unanswered items as skipped, which is
/// no evidence.
std::vector<Answer> answers_of(const Course& course, const Exam& exam, const ExamReport& report);

} // namespace steelyard::learner

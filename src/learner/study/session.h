#pragma once
// A session of practice as a value without a face: which question is asked now and why, what the
// record is told of it, and what the session came to. Sessions of the day (with the placement
// before them), of one skill, and quick quizzes. No window, no terminal, no record, no clock.
//
//     Session session = begin_day(present, seed);
//     while (auto asking = next_question(session, present)) {
//         // show it; hand it what the learner does; after each thing done, before showing more:
//         for (const Answer& answer : new_answers(session, present, *asking, false)) keep(answer);
//         // when the learner goes on:
//         for (const Answer& answer : new_answers(session, present, *asking, true)) keep(answer);
//     }
//
// What holds for both faces, and why:
// - An answer is kept before anything is said to it: whoever has seen the feedback, and loses the
//   program then, could otherwise answer again with it.
// - The time of an answer runs from the moment the question is shown, for a second attempt too: it
//   is how long the question took.
// - A worked example counts as read when the learner goes on from it, not when they leave there.
// - A question is kept as skipped only where nothing was answered; one that is left for good
//   without an answer is not kept at all: both say nothing, and the first can be counted.
// - A skipped question counts among those of the session, so that a session always ends. Questions
//   of the placement and worked examples do not: they come on top.
// - How many questions a day's session has is settled after the placement, which changes the plan.

#include "learner/model/staircase.h"
#include "learner/path/next.h"
#include "learner/study/asking.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace steelyard::learner {

enum class SessionKind { day, skill, quick, redo };

struct Session {
    SessionKind kind = SessionKind::day;
    std::uint64_t seed = 0;
    std::uint64_t drawn = 0;        ///< questions so far; draws the next one's numbers
    std::vector<Next> quiz;         ///< of a quick quiz
    std::size_t skill = 0;          ///< of a session of one skill: index
    std::vector<std::string> codes; ///< of questions that are to be done again
    std::optional<int> target; ///< questions, without the placement's; empty until it is settled
    bool placing = false;      ///< the present question belongs to the placement
    bool pounds_explained = false; ///< that a pound of mass weighs a pound of force
    TimeMs begun_ms = 0;
    std::vector<Stair> before; ///< the staircase when it began

    Next next; ///< why and how the present question is asked
    TimeMs asked_ms = 0;
    std::size_t heeded = 0; ///< attempts at the present question that were taken in

    int done = 0; ///< questions that are done, without the placement's
    int answered = 0;
    int right = 0; ///< at the first try without a hint
    bool ended = false;
    TimeMs ended_ms = 0;
    std::string trouble; ///< why no question could be had
};

/// Where the learner stands when something is asked or answered.
struct Present {
    const Course& course;
    const Standing& standing;
    Clock now;
};

/// Today's session: the placement first for who is new, then what the plan leaves for today.
/// @param count  so many questions instead
Session begin_day(const Present& present, std::uint64_t seed, std::optional<int> count = {});
/// Five questions in less than three minutes.
Session begin_quick(const Present& present, std::uint64_t seed);
/// Practice of one skill by its index; it must have a question.
Session begin_skill(const Present& present, std::size_t skill, std::uint64_t seed);

/// Questions once more, by their codes: mistakes, or what was marked to come back to.
Session begin_redo(const Present& present, std::vector<std::string> codes, std::uint64_t seed);

/// Draws the next question, or ends the session.
std::optional<Asking> next_question(Session& session, const Present& present);

/// Puts a question as the present one, asked as the session's `next` says.
Asking ask_again(Session& session, const Present& present, problems::Question question);

/// Whether the present question is a worked example to be read; nothing is asked.
bool is_example(const Session& session);

/// Whether the present question is the first worked example of a skill: it is taught before. That
/// it was asked in a placement or a quick quiz, which find out what is known, teaches nothing.
bool is_new(const Session& session, const Present& present);

/// The answers that came since the last time, to be kept. An example that was read comes when the
/// learner goes on, and so does a question that was skipped.
/// @param goes_on  from this question to the next; leaving the session is not going on
std::vector<Answer> new_answers(Session& session, const Present& present, const Asking& asking,
                                bool goes_on);

/// Ends a session before its end.
void end_session(Session& session, const Clock& now);

/// Why this question, and how it is to be done: "New: Torque. A worked example first: ..."
std::string introduction(const Session& session, const Course& course, const Asking& asking);

/// "2 of 5", "Placement: question 3, at most 12".
std::string count_text(const Session& session, const Present& present);

/// "3 of 4 right at the first try without a hint".
std::string right_text(int right, int answered);

/// "3 of 4 right at the first try without a hint, in 1:52 minutes."
std::string result_text(const Session& session);

/// A line for each skill that was asked and has another word than when the session began. What the
/// placement infers about others is left out: it would be a list of all skills.
std::vector<std::string> moved_skills(const Session& session, const Course& course,
                                      const std::vector<Stair>& now);

} // namespace steelyard::learner

#pragma once
// A session of practice as a value: which question is asked now and why, what was answered, and
// what that came to. Sessions of the day (with the placement before them), of one skill, and quick
// quizzes. No window, no record, no clock of its own.

#include "app/question/question_model.h"
#include "learner/next.h"
#include "learner/staircase.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

enum class SessionKind { day, skill, quick };

struct Session {
    SessionKind kind = SessionKind::day;
    std::uint64_t seed = 0;
    std::uint64_t drawn = 0;         ///< questions so far; draws the next one's numbers
    std::vector<learner::Next> quiz; ///< of a quick quiz
    std::size_t skill = 0;           ///< of a session of one skill: index
    int target = 0;                  ///< questions, without those of a placement
    bool placing = false;            ///< the present question belongs to the placement
    learner::TimeMs begun_ms = 0;
    std::vector<learner::Stair> before; ///< the staircase when it began

    learner::Next next; ///< why and how the present question is asked
    learner::TimeMs asked_ms = 0;
    std::size_t heeded = 0; ///< attempts at the present question that were taken in

    int done = 0; ///< questions that are done, without the placement's
    int answered = 0;
    int right = 0; ///< at the first try without a hint
    bool ended = false;
    learner::TimeMs ended_ms = 0;
    std::string trouble; ///< why no question could be had
};

/// What stands at the desk when something is asked.
struct Present {
    const learner::Course& course;
    const learner::Standing& standing;
    learner::Clock now;
};

/// Today's session: the placement first for who is new, then what the plan leaves for today.
Session begin_day(const Present& present, std::uint64_t seed);
/// Five questions in less than three minutes.
Session begin_quick(const Present& present, std::uint64_t seed);
/// Practice of one skill by its index; it must have a question.
Session begin_skill(const Present& present, std::size_t skill, std::uint64_t seed);

/// Draws the next question, or ends the session.
std::optional<QuestionModel> next_question(Session& session, const Present& present);

/// Whether the present question is a worked example to be read; nothing is asked.
bool is_example(const Session& session);

/// The answers that came since the last time, to be kept: attempts that were marked. An example
/// that was read counts when `leaving`, and so does a question that was skipped.
std::vector<learner::Answer> new_answers(Session& session, const Present& present,
                                         const QuestionModel& question, bool leaving);

/// Ends a session before its end.
void end_session(Session& session, const learner::Clock& now);

/// "2 of 5", "Placement, question 3, at most 12".
std::string count_text(const Session& session, const Present& present);

/// "4 answered, 3 right at the first try without a hint, in 1:52 minutes."
std::string result_text(const Session& session);

/// A line for each skill that was asked and has another word than when the session began.
std::vector<std::string> moved_skills(const Session& session, const learner::Course& course,
                                      const std::vector<learner::Stair>& now);

} // namespace steelyard::app

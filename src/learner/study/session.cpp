#include "learner/study/session.h"

#include "learner/path/plan.h"
#include "learner/path/quick.h"
#include "problems/draw/random.h"
#include "problems/question/generator.h"

#include <fmt/format.h>

#include <algorithm>

namespace steelyard::learner {

namespace {

Session begin(SessionKind kind, const Present& present, std::uint64_t seed) {
    Session session;
    session.kind = kind;
    session.seed = seed;
    session.begun_ms = present.now.utc_ms;
    session.before = staircase(present.course, present.standing, present.now);
    return session;
}

const std::string& code_of_redo(const Session& session) {
    return session.codes[static_cast<std::size_t>(session.done)];
}

/// A question that is done again is asked plainly, whatever is known of its skill.
Next next_to_redo(const Session& session, const Course& course) {
    Next next;
    next.reason = Reason::chosen;
    const auto question = problems::question_from_code(*course.bank, code_of_redo(session));
    if (!question)
        return next;
    next.skill = course.find(question->skill).value_or(0);
    next.family = course.bank->find_family(question->family);
    return next;
}

Next choose(const Session& session, const Present& present) {
    const std::uint64_t choice = problems::mix(session.seed, session.drawn);
    switch (session.kind) {
    case SessionKind::quick:
        return session.quiz[static_cast<std::size_t>(session.done)];
    case SessionKind::skill:
        return choose_of_skill(present.course, present.standing, present.now, session.skill,
                               choice);
    case SessionKind::redo:
        return next_to_redo(session, present.course);
    case SessionKind::day:
        break;
    }
    return choose_next(present.course, present.standing, present.now, choice);
}

Purpose purpose_of(const Session& session) {
    return session.placing                      ? Purpose::placement
           : session.kind == SessionKind::quick ? Purpose::quick
                                                : Purpose::practice;
}

Outcome outcome_of(const Attempt& attempt) {
    return attempt.gave_up           ? Outcome::gave_up
           : attempt.marking.correct ? Outcome::right
                                     : Outcome::wrong;
}

Answer answer_for(const Session& session, const Present& present, const Asking& asking,
                  double help) {
    Answer answer = answer_to(asking.question, present.course.parameters);
    answer.purpose = purpose_of(session);
    answer.help = help;
    answer.foreseen = foresee(present.course, present.standing, session.next.skill, answer.guess,
                              help, present.now.utc_ms);
    answer.at_ms = present.now.utc_ms;
    answer.took_ms = std::max<std::int64_t>(0, present.now.utc_ms - session.asked_ms);
    return answer;
}

AskRules rules_of(const Session& session, const problems::Question& question) {
    const bool practice = purpose_of(session) == Purpose::practice;
    AskRules rules;
    rules.done_steps = done_steps(session.next, question);
    rules.by_steps = session.next.shown == Shown::faded;
    rules.help = practice;
    rules.may_skip = practice;
    rules.explains = !session.placing;
    rules.explains_pounds = !session.pounds_explained;
    return rules;
}

} // namespace

bool is_new(const Session& session, const Present& present) {
    return session.kind != SessionKind::quick && !session.placing && is_example(session) &&
           present.standing.skills[session.next.skill].examples == 0;
}

Session begin_day(const Present& present, std::uint64_t seed, std::optional<int> count) {
    Session session = begin(SessionKind::day, present, seed);
    session.target = count;
    return session;
}

Session begin_quick(const Present& present, std::uint64_t seed) {
    Session session = begin(SessionKind::quick, present, seed);
    session.quiz = quick_quiz(present.course, present.standing, present.now, seed);
    session.target = static_cast<int>(session.quiz.size());
    return session;
}

Session begin_skill(const Present& present, std::size_t skill, std::uint64_t seed) {
    constexpr int kQuestions = 5;
    Session session = begin(SessionKind::skill, present, seed);
    session.skill = skill;
    session.target = kQuestions;
    return session;
}

Session begin_redo(const Present& present, std::vector<std::string> codes, std::uint64_t seed) {
    Session session = begin(SessionKind::redo, present, seed);
    session.codes = std::move(codes);
    session.target = static_cast<int>(session.codes.size());
    return session;
}

Asking ask_again(Session& session, const Present& present, problems::Question question) {
    session.asked_ms = present.now.utc_ms;
    session.heeded = 0;
    if (is_example(session))
        return asked_before(std::move(question));
    const AskRules rules = rules_of(session, question);
    return begin_asking(std::move(question), rules);
}

std::optional<Asking> next_question(Session& session, const Present& present) {
    if (session.ended || (session.target && session.done >= *session.target)) {
        end_session(session, present.now);
        return std::nullopt;
    }
    session.next = choose(session, present);
    session.placing = session.next.reason == Reason::placement;
    if (!session.placing && !session.target)
        session.target = session_length(plan_study(present.course, present.standing, present.now));
    auto question = session.kind == SessionKind::redo
                        ? problems::question_from_code(*present.course.bank, code_of_redo(session))
                        : question_for(present.course, present.standing, session.next,
                                       problems::mix(session.seed, ++session.drawn));
    if (!question) {
        session.trouble = question.error().message;
        end_session(session, present.now);
        return std::nullopt;
    }
    return ask_again(session, present, std::move(*question));
}

bool is_example(const Session& session) {
    return session.next.shown == Shown::worked_example && !session.placing &&
           session.kind != SessionKind::quick;
}

std::vector<Answer> new_answers(Session& session, const Present& present, const Asking& asking,
                                bool goes_on) {
    std::vector<Answer> answers;
    for (; session.heeded < asking.attempts.size(); ++session.heeded) {
        const Attempt& attempt = asking.attempts[session.heeded];
        Answer answer = answer_for(session, present, asking, attempt.help);
        answer.attempt = static_cast<int>(session.heeded) + 1;
        answer.typed = attempt.typed;
        answer.outcome = outcome_of(attempt);
        session.pounds_explained = session.pounds_explained || attempt.marking.took_pounds;
        answer.wrong_rule = attempt.marking.wrong_rule.value_or("");
        answer.hints = attempt.hints;
        if (session.heeded == 0) {
            ++session.answered;
            session.right += right_at_first(asking) ? 1 : 0;
        }
        answers.push_back(std::move(answer));
    }
    if (!goes_on)
        return answers;
    if (is_example(session)) {
        answers.push_back(answer_for(session, present, asking, 1.0));
        answers.back().outcome = Outcome::example;
    } else if (asking.attempts.empty()) {
        answers.push_back(answer_for(session, present, asking, help_of(asking)));
        answers.back().hints = asking.hints;
    }
    session.done += session.placing || is_example(session) ? 0 : 1;
    return answers;
}

void end_session(Session& session, const Clock& now) {
    if (!session.ended)
        session.ended_ms = now.utc_ms;
    session.ended = true;
}

std::string introduction(const Session& session, const Course& course, const Asking& asking) {
    std::string text = why(course, session.next);
    if (is_example(session))
        text += " A worked example first: read it step by step.";
    else if (asking.rules.by_steps)
        text += asking.rules.done_steps > 0 ? " The first steps are done for you; you do the rest."
                                            : " Do it step by step, or give the answer at once.";
    return text;
}

std::string count_text(const Session& session, const Present& present) {
    if (session.placing)
        return fmt::format("Placement: question {}, at most {}",
                           present.standing.placement.size() + 1,
                           present.course.parameters.placement_questions);
    return fmt::format("{} of {}", session.done + 1, *session.target);
}

std::string right_text(int right, int answered) {
    return fmt::format("{} of {} right at the first try without a hint", right, answered);
}

std::string result_text(const Session& session) {
    if (session.answered == 0)
        return "Nothing was answered.";
    return fmt::format(
        "{}, in {} minutes.", right_text(session.right, session.answered),
        minutes_text(std::max<std::int64_t>(0, session.ended_ms - session.begun_ms)));
}

std::vector<std::string> moved_skills(const Session& session, const Course& course,
                                      const std::vector<Stair>& now) {
    std::vector<std::string> lines;
    for (const Stair& stair : now) {
        const auto then = std::find_if(session.before.begin(), session.before.end(),
                                       [&](const Stair& one) { return one.skill == stair.skill; });
        const bool asked = then != session.before.end() && stair.answers > then->answers;
        if (asked && then->mastery != stair.mastery)
            lines.push_back(fmt::format("{}: {}, now {}", course.skills[stair.skill].skill->title,
                                        word_for(then->mastery), word_for(stair.mastery)));
    }
    return lines;
}

} // namespace steelyard::learner

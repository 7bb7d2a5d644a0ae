#include "cli/learn_command.h"

#include "cli/practice.h"
#include "cli/progress_text.h"
#include "cli/study.h"
#include "cli/terminal.h"
#include "learner/next.h"
#include "learner/plan.h"
#include "learner/quick.h"
#include "learner/readiness.h"
#include "learner/staircase.h"
#include "learner/wall_clock.h"
#include "problems/random.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>
#include <ostream>

namespace steelyard::cli {

namespace {

using learner::Next;
using learner::Outcome;
using learner::Reason;

struct LearnOptions {
    LearnerOptions who;
    std::optional<int> count;
    std::string exam_date;
    std::optional<std::uint64_t> seed;
    bool no_placement = false;
};

/// What a session came to.
struct Tally {
    int answered = 0;
    int right = 0;
    bool quit = false;
    bool failed = false; ///< an answer could not be kept
};

/// A session: asks, and keeps each answer at once.
class Session {
public:
    Session(Study& study, std::uint64_t seed, const Streams& streams)
        : study_(study), seed_(seed), streams_(streams) {}

    /// Asks what comes next, or shows it as a worked example.
    void take(const Next& next, learner::Purpose purpose) {
        const auto question =
            question_for(study_.course(), study_.standing, next, problems::mix(seed_, ++drawn_));
        if (!question) {
            streams_.err << question.error().message << '\n';
            tally_.quit = true;
            return;
        }
        streams_.out << '\n' << wrapped(why(study_.course(), next));
        if (next.shown == learner::Shown::worked_example)
            show_example(next, *question);
        else
            ask(next, *question, purpose);
    }

    const Tally& tally() const { return tally_; }

private:
    void show_example(const Next& next, const problems::Question& question) {
        streams_.out << "A worked example first; read it step by step.\n";
        const learner::TimeMs begun_ms = learner::wall_clock().utc_ms;
        show_worked(question, streams_);
        std::string line;
        if (!read_line(streams_, "\nEnter to go on, q to quit", line) || line == "q")
            tally_.quit = true;
        learner::Answer answer = learner::answer_to(question, study_.course().parameters);
        answer.purpose = learner::Purpose::practice;
        answer.outcome = Outcome::example;
        answer.help = 1.0;
        answer.foreseen = foreseen(next, answer);
        keep(std::move(answer), begun_ms);
    }

    void ask(const Next& next, const problems::Question& question, learner::Purpose purpose) {
        AskRules rules;
        rules.done_steps = done_steps(next, question);
        rules.help = purpose == learner::Purpose::practice;
        rules.explain = purpose != learner::Purpose::placement;
        if (rules.done_steps > 0)
            streams_.out << "The first steps are done for you; you do the rest.\n";
        const learner::TimeMs begun_ms = learner::wall_clock().utc_ms;
        const Ended ended = ask_question(
            *study_.shelf.bank, question, rules, streams_, [&](const Attempt& attempt) {
                learner::Answer answer = learner::answer_to(question, study_.course().parameters);
                answer.purpose = purpose;
                answer.attempt = attempt.number;
                answer.typed = attempt.typed;
                answer.outcome = attempt.gave_up           ? Outcome::gave_up
                                 : attempt.marking.correct ? Outcome::right
                                                           : Outcome::wrong;
                answer.wrong_rule = attempt.marking.wrong_rule.value_or("");
                answer.hints = static_cast<int>(attempt.hints);
                answer.help = attempt.help;
                answer.foreseen = foreseen(next, answer);
                if (attempt.number == 1) {
                    ++tally_.answered;
                    tally_.right += attempt.marking.correct && attempt.hints == 0 ? 1 : 0;
                }
                keep(std::move(answer), begun_ms);
            });
        tally_.quit = tally_.quit || ended == Ended::quit;
        if (ended == Ended::skipped) {
            learner::Answer answer = learner::answer_to(question, study_.course().parameters);
            answer.purpose = purpose;
            answer.foreseen = foreseen(next, answer);
            keep(std::move(answer), begun_ms);
        }
    }

    double foreseen(const Next& next, const learner::Answer& answer) const {
        return foresee(study_.course(), study_.standing, next.skill, answer.guess, answer.help,
                       learner::wall_clock().utc_ms);
    }

    void keep(learner::Answer answer, learner::TimeMs begun_ms) {
        const learner::Clock now = learner::wall_clock();
        answer.at_ms = now.utc_ms;
        answer.took_ms = std::max<std::int64_t>(0, now.utc_ms - begun_ms);
        auto standing = study_.record.add_answer(study_.learner.id, study_.course(), answer, now);
        tell_notices(study_.record, streams_);
        if (standing) {
            study_.standing = std::move(*standing);
            return;
        }
        tell(standing.error(), streams_);
        tally_.quit = true;
        tally_.failed = true;
    }

    Study& study_;
    std::uint64_t seed_;
    const Streams& streams_;
    std::uint64_t drawn_ = 0;
    Tally tally_;
};

/// Sets or takes away the exam date. @return false when the date cannot be read
bool take_exam_date(const std::string& text, Study& study, const Streams& streams) {
    if (text.empty())
        return true;
    std::optional<learner::Day> day;
    if (text != "none") {
        const auto read = learner::read_day(text);
        if (!read) {
            streams.err << read.error() << '\n';
            return false;
        }
        if (*read < learner::day_of(learner::wall_clock())) {
            streams.err << fmt::format("{} is past. Name a day to come, or `none`.\n", text);
            return false;
        }
        day = *read;
    }
    if (const auto done = study.record.set_exam_day(study.learner.id, day); !done) {
        tell(done.error(), streams);
        return false;
    }
    study.standing.exam_day = day;
    return true;
}

void tell_end(const Study& study, const std::vector<learner::Stair>& before, const Tally& tally,
              const Streams& streams) {
    const learner::Clock now = learner::wall_clock();
    streams.out << fmt::format("\n{} answered, {} right at the first try without a hint.\n",
                               tally.answered, tally.right);
    streams.out << moved_skills(study.course(), before,
                                staircase(study.course(), study.standing, now));
    if (tally.answered > 0)
        streams.out << wrapped(
            say(readiness(study.course(), study.standing, now.utc_ms), study.course()));
    streams.out << wrapped(say(plan_study(study.course(), study.standing, now)));
}

ExitStatus end(Study& study, const std::vector<learner::Stair>& before, const Tally& tally,
               const Streams& streams) {
    tell_end(study, before, tally, streams);
    back_up(study.record, streams);
    return tally.failed ? ExitStatus::failed : ExitStatus::ok;
}

void run_session(Session& session, const Study& study, std::optional<int> count, std::uint64_t seed,
                 const Streams& streams) {
    bool placing = false;
    int target = -1;
    int done_before = 0;
    for (std::uint64_t i = 0; !session.tally().quit; ++i) {
        const Next next = choose_next(study.course(), study.standing, learner::wall_clock(),
                                      problems::mix(seed, i));
        if (next.reason == Reason::placement) {
            if (!placing)
                streams.out << wrapped(fmt::format(
                    "First a placement, at most {} questions: it finds out where you stand, so "
                    "that "
                    "you need not do what you know. No hints here; type ? when you do not know.",
                    study.course().parameters.placement_questions));
            placing = true;
            session.take(next, learner::Purpose::placement);
            continue;
        }
        if (target < 0) {
            if (placing)
                streams.out << "\nThe placement is done; thank you. Now practice.\n";
            target = count.value_or(
                session_length(plan_study(study.course(), study.standing, learner::wall_clock())));
            done_before = session.tally().answered;
            streams.out << wrapped(
                say(plan_study(study.course(), study.standing, learner::wall_clock())));
        }
        const int done = session.tally().answered - done_before;
        if (done >= target)
            return;
        streams.out << fmt::format("\n{} {} of {} {}", std::string(20, '-'), done + 1, target,
                                   std::string(20, '-'));
        session.take(next, learner::Purpose::practice);
    }
}

ExitStatus learn(const LearnOptions& options, const Streams& streams) {
    auto study = open_study(options.who, streams);
    if (!study)
        return study.error();
    if (!take_exam_date(options.exam_date, *study, streams))
        return ExitStatus::bad_input;
    if (!study->record.is_writable())
        return ExitStatus::failed;
    const learner::Clock now = learner::wall_clock();
    if (!can_answer(streams)) {
        streams.out << wrapped(say(plan_study(study->course(), study->standing, now)));
        streams.out << "Nobody can type here: `steelyard learn` asks in a terminal.\n";
        return ExitStatus::ok;
    }
    if (options.no_placement)
        study->standing.placement_over = true;
    const std::uint64_t seed = options.seed.value_or(any_seed());
    const auto before = staircase(study->course(), study->standing, now);
    streams.out << fmt::format("{}, welcome{}.\n", study->learner.name,
                               study->standing.answers > 0 ? " back" : "");
    Session session(*study, seed, streams);
    run_session(session, *study, options.count, seed, streams);
    return end(*study, before, session.tally(), streams);
}

ExitStatus quick(const LearnOptions& options, const Streams& streams) {
    auto study = open_study(options.who, streams);
    if (!study)
        return study.error();
    if (!study->record.is_writable())
        return ExitStatus::failed;
    if (!can_answer(streams)) {
        streams.out << "Nobody can type here: `steelyard quick` asks in a terminal.\n";
        return ExitStatus::ok;
    }
    const std::uint64_t seed = options.seed.value_or(any_seed());
    const learner::Clock begun = learner::wall_clock();
    const auto before = staircase(study->course(), study->standing, begun);
    const std::vector<Next> quiz =
        learner::quick_quiz(study->course(), study->standing, begun, seed);
    streams.out << "Five quick questions, no hints. Type ? when you do not know.\n";
    Session session(*study, seed, streams);
    for (std::size_t i = 0; i < quiz.size() && !session.tally().quit; ++i) {
        streams.out << fmt::format("\n{} {} of {} {}", std::string(20, '-'), i + 1, quiz.size(),
                                   std::string(20, '-'));
        session.take(quiz[i], learner::Purpose::quick);
    }
    const std::int64_t took_s = (learner::wall_clock().utc_ms - begun.utc_ms) / learner::kSecond_ms;
    streams.out << fmt::format("\n{}:{:02} minutes.", took_s / 60, took_s % 60);
    return end(*study, before, session.tally(), streams);
}

Work add_learn_options(CLI::App& command) {
    auto options = std::make_shared<LearnOptions>();
    command.add_option("--exam-date", options->exam_date,
                       "Your exam's day, such as 2026-12-03; none takes it away");
    command.add_option("--count", options->count, "Questions this time, if not as planned")
        ->check(CLI::Range(1, 1000));
    command.add_flag("--no-placement", options->no_placement, "Begin at the foot of the staircase");
    command.add_option("--seed", options->seed, "The same seed draws the same numbers");
    add_learner_options(command, options->who);
    return [options](const Streams& streams) { return learn(*options, streams); };
}

Work add_quick_options(CLI::App& command) {
    auto options = std::make_shared<LearnOptions>();
    command.add_option("--seed", options->seed, "The same seed draws the same questions");
    add_learner_options(command, options->who);
    return [options](const Streams& streams) { return quick(*options, streams); };
}

} // namespace

Verb learn_verb() {
    return {"learn", "study what you need most, day by day to the exam",
            "  steelyard learn\n"
            "  steelyard learn --exam-date 2026-12-03\n"
            "  steelyard learn --learner \"Ada\" --new --count 10",
            add_learn_options};
}

Verb quick_verb() {
    return {"quick", "five questions in under three minutes",
            "  steelyard quick\n"
            "  steelyard quick --learner \"Ada\"",
            add_quick_options};
}

} // namespace steelyard::cli

#include "cli/verbs/learn_command.h"

#include "cli/options/checked_options.h"
#include "cli/study/pages.h"
#include "cli/study/practice.h"
#include "cli/study/study.h"
#include "cli/study/terminal.h"
#include "learner/model/readiness.h"
#include "learner/model/staircase.h"
#include "learner/path/plan.h"
#include "learner/study/session.h"
#include "learner/time/wall_clock.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>
#include <ostream>

namespace steelyard::cli {

namespace {

struct LearnOptions {
    LearnerOptions who;
    std::optional<int> count;
    std::string exam_date;
    std::optional<std::uint64_t> seed;
    bool no_placement = false;
};

/// Leads through a session in the terminal, and keeps each answer before saying anything to it.
class Sitting {
public:
    Sitting(Study& study, learner::Session session, const Streams& streams)
        : study_(study), session_(std::move(session)), streams_(streams) {}

    /// @return false when an answer could not be kept; that has been told
    bool run() {
        while (auto asking = next_question(session_, present())) {
            announce(*asking);
            if (is_new(session_, present()))
                show_pages(asking->question.skill, streams_.out);
            const Ended ended = is_example(session_)
                                    ? read_example(asking->question)
                                    : converse(*study_.shelf.bank, *asking, streams_,
                                               [&] { return keep(*asking, false); });
            if (ended == Ended::quit || !keep(*asking, true))
                break;
        }
        end_session(session_, learner::wall_clock());
        if (!session_.trouble.empty())
            streams_.err << session_.trouble << '\n';
        return !failed_;
    }

    const learner::Session& session() const { return session_; }

private:
    learner::Present present() const {
        return {study_.course(), study_.standing, learner::wall_clock()};
    }

    void announce(const learner::Asking& asking) {
        announce_part();
        const std::string dashes(20, '-');
        streams_.out << fmt::format("\n{} {} {}\n", dashes, count_text(session_, present()),
                                    dashes);
        streams_.out << wrapped(introduction(session_, study_.course(), asking));
    }

    /// The beginning of the placement, and that of practice.
    void announce_part() {
        const bool begins = session_.drawn == 1;
        if (session_.placing && begins)
            streams_.out << wrapped(fmt::format(
                "First a placement, at most {} questions: it finds out where you stand, so that "
                "you need not do what you know. No hints here; type ? when you do not know.",
                study_.course().parameters.placement_questions));
        if (!session_.placing && was_placing_)
            streams_.out << "\nThe placement is done; thank you. Now practice.\n";
        if (session_.kind == learner::SessionKind::day && !session_.placing &&
            (begins || was_placing_))
            streams_.out << wrapped(
                say(plan_study(study_.course(), study_.standing, learner::wall_clock())));
        was_placing_ = session_.placing;
    }

    Ended read_example(const problems::Question& question) const {
        show_worked(question, streams_);
        std::string line;
        const bool goes_on = read_line(streams_, "\nEnter to go on, q to quit", line);
        return goes_on && line != "q" ? Ended::finished : Ended::quit;
    }

    bool keep(const learner::Asking& asking, bool goes_on) {
        for (const learner::Answer& answer : new_answers(session_, present(), asking, goes_on)) {
            auto standing = study_.record.add_answer(study_.learner.id, study_.course(), answer,
                                                     learner::wall_clock());
            tell_notices(study_.record, streams_);
            if (!standing) {
                tell(standing.error(), streams_);
                failed_ = true;
                return false;
            }
            study_.standing = std::move(*standing);
        }
        return true;
    }

    Study& study_;
    learner::Session session_;
    const Streams& streams_;
    bool was_placing_ = false;
    bool failed_ = false;
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

void tell_end(const Study& study, const learner::Session& session, const Streams& streams) {
    const learner::Clock now = learner::wall_clock();
    streams.out << '\n' << wrapped(result_text(session));
    for (const std::string& line :
         moved_skills(session, study.course(), staircase(study.course(), study.standing, now)))
        streams.out << wrapped(line, "  ");
    if (session.answered > 0)
        streams.out << wrapped(
            say(readiness(study.course(), study.standing, now.utc_ms), study.course()));
    streams.out << wrapped(say(plan_study(study.course(), study.standing, now)));
}

ExitStatus sit(Study& study, learner::Session session, const Streams& streams) {
    Sitting sitting(study, std::move(session), streams);
    const bool kept = sitting.run();
    tell_end(study, sitting.session(), streams);
    back_up(study.record, streams);
    return kept ? ExitStatus::ok : ExitStatus::failed;
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
    streams.out << fmt::format("{}, welcome{}.\n", study->learner.name,
                               study->standing.answers > 0 ? " back" : "");
    return sit(*study,
               learner::begin_day({study->course(), study->standing, now},
                                  options.seed.value_or(any_seed()), options.count),
               streams);
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
    streams.out << "Five quick questions, no hints. Type ? when you do not know.\n";
    return sit(*study,
               learner::begin_quick({study->course(), study->standing, learner::wall_clock()},
                                    options.seed.value_or(any_seed())),
               streams);
}

Work add_learn_options(CLI::App& command) {
    auto options = std::make_shared<LearnOptions>();
    command
        .add_option("--exam-date", options->exam_date,
                    "your exam's day, such as 2026-12-03; none takes it away")
        ->type_name("DAY");
    command.add_option("--count", options->count, "questions this time, if not as planned")
        ->check(CLI::Range(1, 1000))
        ->type_name("N");
    command.add_flag("--no-placement", options->no_placement, "begin at the foot of the staircase");
    add_seed_option(command, options->seed, "the same seed draws the same numbers");
    add_learner_options(command, options->who);
    return [options](const Streams& streams) { return learn(*options, streams); };
}

Work add_quick_options(CLI::App& command) {
    auto options = std::make_shared<LearnOptions>();
    add_seed_option(command, options->seed, "the same seed draws the same questions");
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

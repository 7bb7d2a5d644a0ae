#include "cli/verbs/learn_command.h"

#include "cli/options/checked_options.h"
#include "cli/study/exam_date.h"
#include "cli/study/kept_beside.h"
#include "cli/study/pages.h"
#include "cli/study/practice.h"
#include "cli/study/study.h"
#include "cli/study/terminal.h"
#include "learner/model/readiness.h"
#include "learner/model/staircase.h"
#include "learner/path/plan.h"
#include "learner/path/welcome.h"
#include "learner/study/kept_session.h"
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
    bool fresh = false; ///< though a session was broken off
};

/// Leads through a session in the terminal, and keeps each answer before saying anything to it.
class Sitting {
public:
    Sitting(Study& study, learner::Session session, const Streams& streams)
        : study_(study), session_(std::move(session)), streams_(streams), beside_(study) {}

    /// A session that was broken off, at its question.
    /// @return false where it cannot go on
    bool resume(learner::KeptSession kept) {
        resumed_ = resume_session(kept, present());
        if (resumed_)
            session_ = std::move(kept.session);
        return resumed_.has_value();
    }

    /// @return false when an answer could not be kept; that has been told
    bool run() {
        while (auto asking = next()) {
            beside_.write(write_session(session_, study_.course(), *asking));
            announce(*asking);
            if (is_new(session_, present()))
                show_pages(asking->question.skill, study_.course().units, streams_.out);
            const Ended ended = is_example(session_)
                                    ? read_example(asking->question)
                                    : converse(*study_.shelf.bank, *asking, streams_,
                                               [&] { return keep(*asking, false); });
            if (ended == Ended::quit || !keep(*asking, true))
                break;
        }
        // Whose terminal was closed has not ended the session.
        if (streams_.in.good())
            beside_.forget();
        end_session(session_, learner::wall_clock());
        if (!session_.trouble.empty())
            streams_.err << session_.trouble << '\n';
        return !failed_;
    }

    const learner::Session& session() const { return session_; }

private:
    std::optional<learner::Asking> next() {
        return resumed_ ? std::exchange(resumed_, std::nullopt)
                        : next_question(session_, present());
    }

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
        if (!goes_on && !asking.attempts.empty())
            beside_.write(write_session(session_, study_.course(), asking));
        return true;
    }

    Study& study_;
    learner::Session session_;
    const Streams& streams_;
    KeptBeside beside_;
    std::optional<learner::Asking> resumed_; ///< the question at which it goes on
    bool was_placing_ = false;
    bool failed_ = false;
};

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

ExitStatus sit(Study& study, Sitting& sitting, const Streams& streams) {
    const bool kept = sitting.run();
    tell_end(study, sitting.session(), streams);
    back_up(study.record, streams);
    return kept ? ExitStatus::ok : ExitStatus::failed;
}

/// Goes on with the session that was broken off, here or in the window, unless another is asked
/// for.
/// @return whether there is one
bool resume(const LearnOptions& options, const Study& study, Sitting& sitting,
            const Streams& streams) {
    if (options.fresh || options.count || options.seed || options.no_placement)
        return false;
    const auto text = KeptBeside(study).read();
    auto kept = text ? learner::read_session(*text, study.course()) : std::nullopt;
    if (!kept || !sitting.resume(std::move(*kept)))
        return false;
    streams.out << "Your last session was broken off; it goes on where it was. (--fresh begins "
                   "another.)\n";
    return true;
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
    const std::string pause =
        say(study->course(), welcome_back(study->course(), study->standing, now));
    streams.out << wrapped(!pause.empty()
                               ? study->learner.name + ". " + pause
                               : fmt::format("{}, welcome{}.", study->learner.name,
                                             study->standing.answers > 0 ? " back" : ""));
    Sitting sitting(*study,
                    learner::begin_day({study->course(), study->standing, now},
                                       options.seed.value_or(any_seed()), options.count),
                    streams);
    resume(options, *study, sitting, streams);
    return sit(*study, sitting, streams);
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
    Sitting sitting(*study,
                    learner::begin_quick({study->course(), study->standing, learner::wall_clock()},
                                         options.seed.value_or(any_seed())),
                    streams);
    return sit(*study, sitting, streams);
}

Work add_learn_options(CLI::App& command) {
    auto options = std::make_shared<LearnOptions>();
    add_exam_date_option(command, options->exam_date);
    command.add_option("--count", options->count, "questions this time, if not as planned")
        ->check(CLI::Range(1, 1000))
        ->type_name("N");
    command.add_flag("--fresh", options->fresh, "a new session, though one was broken off");
    command.add_flag("--no-placement", options->no_placement,
                     "begin at the foot of the staircase, for who is new to this");
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

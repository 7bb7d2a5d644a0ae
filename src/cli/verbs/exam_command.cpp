#include "cli/verbs/exam_command.h"

#include "cli/options/checked_options.h"
#include "cli/reports/exam_report.h"
#include "cli/study/exam_room.h"
#include "cli/study/study.h"
#include "cli/study/terminal.h"
#include "learner/exam/exam.h"
#include "learner/model/readiness.h"
#include "learner/record/exam_record.h"
#include "learner/time/wall_clock.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>
#include <ostream>

namespace steelyard::cli {

namespace {

using learner::Exam;

struct ExamOptions {
    LearnerOptions who;
    std::optional<std::uint64_t> seed;
    bool anew = false;
    bool review = false;
};

/// The exam to sit: the one that was begun, or a new one.
tl::expected<Exam, ExitStatus> exam_to_sit(Study& study, const ExamOptions& options,
                                           const Streams& streams) {
    auto begun = unfinished_exam(study.record, study.learner.id);
    if (!begun)
        return tl::make_unexpected(tell(begun.error(), streams));
    if (*begun && !options.anew) {
        Exam& exam = **begun;
        resume(exam, learner::wall_clock());
        streams.out << wrapped(fmt::format(
            "Your mock exam goes on where you left it: {} of {} answered, {} left. The time in "
            "between does not count. (`steelyard exam --anew` gives it up for another.)",
            exam.answered(), exam.items.size(), learner::minutes_text(exam.left_ms())));
        return std::move(exam);
    }
    if (*begun)
        if (const auto gone = give_up_exam(study.record, study.learner.id, (*begun)->id); !gone)
            return tl::make_unexpected(tell(gone.error(), streams));
    auto exam = new_exam(study.course(), options.seed.value_or(any_seed()), learner::wall_clock());
    if (!exam) {
        streams.err << exam.error().message << '\n';
        return tl::make_unexpected(ExitStatus::bad_input);
    }
    foresee_exam(study.course(), study.standing, *exam);
    if (const auto kept = keep_exam(study.record, study.learner.id, *exam); !kept)
        return tl::make_unexpected(tell(kept.error(), streams));
    streams.out << wrapped(
        fmt::format("{}: {} questions, {} minutes, {} right to pass. No feedback until the end. "
                    "You may leave a "
                    "question and come back; what has no answer at the end is wrong.",
                    exam->title, exam->items.size(), exam->allowed_ms / learner::kMinute_ms,
                    learner::pass_mark(exam->pass_share, static_cast<int>(exam->items.size()))));
    return std::move(*exam);
}

ExitStatus close(Study& study, Exam& exam, const Streams& streams) {
    const auto before = readiness(study.course(), study.standing, learner::wall_clock().utc_ms);
    const learner::ExamReport report = report_on(study.course(), exam);
    auto standing = close_exam(study.record, study.learner.id, study.course(), exam, report,
                               learner::wall_clock());
    if (!standing)
        return tell(standing.error(), streams);
    study.standing = std::move(*standing);
    show_report(study.course(), exam, report, streams.out);
    if (before.answers > 0)
        streams.out << wrapped(fmt::format("Foreseen before: {} to {} of {}.", before.low,
                                           before.high, before.questions));
    streams.out << wrapped(say(
        readiness(study.course(), study.standing, learner::wall_clock().utc_ms), study.course()));
    go_through_mistakes(exam, report, streams);
    back_up(study.record, streams);
    return ExitStatus::ok;
}

/// The newest finished exam again, with its mistakes.
ExitStatus review(Study& study, const Streams& streams) {
    const auto results = finished_exams(study.record, study.learner.id, 1);
    if (!results)
        return tell(results.error(), streams);
    if (results->empty()) {
        streams.out << "No mock exam is finished yet.\n";
        return ExitStatus::ok;
    }
    const auto exam = exam_by_id(study.record, study.learner.id, results->front().id);
    if (!exam)
        return tell(exam.error(), streams);
    const learner::ExamReport report = report_on(study.course(), **exam);
    show_report(study.course(), **exam, report, streams.out);
    go_through_mistakes(**exam, report, streams);
    return ExitStatus::ok;
}

ExitStatus sit(const ExamOptions& options, const Streams& streams) {
    auto study = open_study(options.who, streams);
    if (!study)
        return study.error();
    if (options.review)
        return review(*study, streams);
    if (!study->record.is_writable())
        return ExitStatus::failed;
    if (!can_answer(streams)) {
        streams.out << "Nobody can type here: `steelyard exam` asks in a terminal.\n";
        return ExitStatus::ok;
    }
    auto exam = exam_to_sit(*study, options, streams);
    if (!exam)
        return exam.error();
    ExamRoom room(*study, *exam, streams);
    if (!room.run())
        return room.failed() ? ExitStatus::failed : ExitStatus::ok;
    return close(*study, *exam, streams);
}

Work add_exam_options(CLI::App& command) {
    auto options = std::make_shared<ExamOptions>();
    command.add_flag("--anew", options->anew, "give up an exam that was begun, and begin another");
    command.add_flag("--review", options->review, "go through the last exam's mistakes again");
    add_seed_option(command, options->seed, "the same seed draws the same exam");
    add_learner_options(command, options->who);
    return [options](const Streams& streams) { return sit(*options, streams); };
}

} // namespace

Verb exam_verb() {
    return {"exam", "sit a timed mock exam, or go on with one",
            "  steelyard exam\n"
            "  steelyard exam --review\n"
            "  steelyard exam --anew --seed 7",
            add_exam_options};
}

} // namespace steelyard::cli

#include "cli/verbs/calendar_command.h"

#include "cli/reports/calendar_text.h"
#include "cli/study/exam_date.h"
#include "cli/study/study.h"
#include "cli/study/terminal.h"
#include "learner/time/wall_clock.h"

#include <CLI/CLI.hpp>
#include <memory>
#include <ostream>

namespace steelyard::cli {

namespace {

struct CalendarOptions {
    LearnerOptions who;
    std::string exam_date;
};

ExitStatus calendar(const CalendarOptions& options, const Streams& streams) {
    auto study = open_study(options.who, streams);
    if (!study)
        return study.error();
    if (!take_exam_date(options.exam_date, *study, streams))
        return ExitStatus::bad_input;
    const learner::Clock now = learner::wall_clock();
    const learner::StudyPlan plan = plan_study(study->course(), study->standing, now);
    const learner::StudyCalendar days = plan_calendar(study->course(), study->standing, plan, now);
    const learner::DayOrder order = learner::usual_day_order();
    streams.out << wrapped(say(plan)) << '\n' << calendar_text(study->course(), days, order);
    if (!days.exam)
        streams.out << "`steelyard calendar --exam-date DAY` sets your exam's day.\n";
    return ExitStatus::ok;
}

Work add_calendar_options(CLI::App& command) {
    auto options = std::make_shared<CalendarOptions>();
    add_exam_date_option(command, options->exam_date);
    add_learner_options(command, options->who);
    return [options](const Streams& streams) { return calendar(*options, streams); };
}

} // namespace

Verb calendar_verb() {
    return {"calendar", "what to do on which day until the exam, and what fits",
            "  steelyard calendar\n"
            "  steelyard calendar --exam-date 2026-12-03",
            add_calendar_options};
}

} // namespace steelyard::cli

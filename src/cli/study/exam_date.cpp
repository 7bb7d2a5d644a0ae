#include "cli/study/exam_date.h"

#include "learner/time/wall_clock.h"
#include "learner/time/written_day.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <optional>
#include <ostream>

namespace steelyard::cli {

void add_exam_date_option(CLI::App& command, std::string& text) {
    command
        .add_option("--exam-date", text,
                    "your exam's day, such as 2026-12-03 or as you write it; none takes it away")
        ->type_name("DAY");
}

bool take_exam_date(const std::string& text, Study& study, const Streams& streams) {
    if (text.empty())
        return true;
    std::optional<learner::Day> day;
    if (text != "none") {
        const auto read = learner::read_written_day(text, learner::usual_day_order());
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

} // namespace steelyard::cli

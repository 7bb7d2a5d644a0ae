#include "app/practice/desk.h"

#include "app/platform/folders.h"
#include "learner/path/welcome.h"
#include "learner/record/exchange/exchange.h"
#include "learner/record/file/beside.h"
#include "learner/time/wall_clock.h"
#include "learner/time/written_day.h"
#include "publish/files/whole_file.h"
#include "setup/toml/input_error.h"
#include "words/counted.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdio>
#include <fstream>
#include <iterator>
#include <set>
#include <system_error>

namespace steelyard::app {

using learner::Clock;
using learner::Learner;

Desk::Desk(const problems::Bank& bank, const std::filesystem::path& assets,
           const std::filesystem::path& record_folder, const Clock& now) {
    auto course = learner::load_course(bank, assets / "learner");
    if (!course) {
        notices_.push_back(setup::to_text(course.error()));
        return;
    }
    course_ = std::move(*course);
    if (!bank.faults.empty())
        notices_.push_back("Practice leaves out what cannot be read, and gives no mock exam. " +
                           setup::to_text(bank.faults.front()));
    for (const setup::InputError& fault : bank.own_faults)
        notices_.push_back("One of your own questions is left out. " + setup::to_text(fault));
    standing_ = learner::fresh_standing(*course_);
    open(record_folder, now);
    stand(standing_, now);
}

void Desk::use_units(setup::UnitSystem units) {
    if (course_ && course_->units != units)
        course_ = learner::make_course(*course_->bank, course_->parameters, course_->exam, units);
}

void Desk::open(const std::filesystem::path& folder, const Clock& now) {
    auto opened = learner::open_record(folder, now);
    if (!opened) {
        notices_.push_back(opened.error().message);
        notices_.emplace_back("You can practise all the same; nothing of it is kept.");
        return;
    }
    notices_.insert(notices_.end(), opened->notices.begin(), opened->notices.end());
    record_ = std::move(opened->record);
    refresh(now);
    const auto latest =
        std::max_element(learners_.begin(), learners_.end(),
                         [](const Learner& a, const Learner& b) { return a.last_ms < b.last_ms; });
    if (latest != learners_.end())
        choose(latest->id, now);
}

void Desk::notice(const std::string& sentence) {
    if (std::find(notices_.begin(), notices_.end(), sentence) == notices_.end())
        notices_.push_back(sentence);
}

bool Desk::hear(const learner::Recorded<void>& done) {
    for (const std::string& sentence : record_->take_notices())
        notice(sentence);
    if (!done)
        notice(done.error().message);
    return done.has_value();
}

template <typename T> std::optional<T> Desk::heed(learner::Recorded<T> recorded) {
    if (!hear(recorded.map([](const T&) {})))
        return std::nullopt;
    return std::move(*recorded);
}

void Desk::stand(learner::Standing standing, const Clock& now) {
    standing_ = std::move(standing);
    outlook_ = {plan_study(*course_, standing_, now), readiness(*course_, standing_, now.utc_ms),
                staircase(*course_, standing_, now),
                say(*course_, welcome_back(*course_, standing_, now))};
}

void Desk::refresh(const Clock& now) {
    if (!record_)
        return;
    if (auto learners = heed(record_->learners()))
        learners_ = std::move(*learners);
    if (learner_)
        choose(learner_->id, now);
}

void Desk::choose(std::int64_t learner, const Clock& now) {
    const auto found = std::find_if(learners_.begin(), learners_.end(),
                                    [learner](const Learner& one) { return one.id == learner; });
    if (found == learners_.end())
        return;
    auto standing = heed(record_->standing(learner, *course_, now));
    if (!standing)
        return;
    if (!learner_ || learner_->id != learner)
        waiting_.clear();
    learner_ = *found;
    read_marked();
    stand(std::move(*standing), now);
    if (const std::string sentence = clock_notice(standing_, now); !sentence.empty())
        notice(sentence);
}

std::string Desk::add_learner(const std::string& name, const Clock& now) {
    if (!can_add())
        return "No record can be written here.";
    const auto added = record_->add_learner(name, now);
    if (!added)
        return added.error().message;
    refresh(now);
    choose(added->id, now);
    return {};
}

std::string asked_exam_day() {
    const learner::Day example = std::chrono::year(2026) / std::chrono::December / 3;
    return fmt::format("Your exam's day, such as {}; empty for none",
                       say_day(example, learner::usual_day_order()));
}

std::string Desk::set_exam_day(const std::string& typed, const Clock& now) {
    std::optional<learner::Day> day;
    if (!typed.empty()) {
        const auto read = learner::read_written_day(typed, learner::usual_day_order());
        if (!read)
            return read.error();
        if (*read < learner::day_of(now))
            return typed + " is past. Name a day to come, or none.";
        day = *read;
    }
    if (keeps()) {
        if (const auto done = record_->set_exam_day(learner_->id, day); !done)
            return done.error().message;
        learner_->exam_day = day;
    }
    learner::Standing standing = standing_;
    standing.exam_day = day;
    stand(std::move(standing), now);
    return {};
}

void Desk::keep_answer(const learner::Answer& answer, const Clock& now) {
    if (keeps())
        waiting_.push_back(answer);
    if (!keeps() || !keep_waiting(now))
        stand(after_answer(*course_, standing_, answer, now.offset_s), now);
}

bool Desk::keep_waiting(const Clock& now) {
    if (waiting_.empty())
        return true;
    auto standing = heed(record_->add_answers(learner_->id, *course_, waiting_, now));
    if (!standing)
        return false;
    waiting_.clear();
    stand(std::move(*standing), now);
    return true;
}

std::string Desk::kept_text() const {
    if (!keeps())
        return "Nothing is kept.";
    if (waiting_.empty())
        return "Every answer is kept.";
    return fmt::format("{} could not be kept yet; Steelyard tries again with the next.",
                       words::counted(static_cast<std::int64_t>(waiting_.size()), "answer"));
}

void Desk::back_up(const Clock& now) {
    if (!keeps())
        return;
    keep_waiting(now);
    hear(record_->back_up_if_due(now).map_error([](const learner::RecordError& error) {
        return learner::RecordError{error.trouble, "No backup was made: " + error.message};
    }));
}

// --- beside the record
// ----------------------------------------------------------------------------

std::optional<std::filesystem::path> Desk::beside_record(const char* what) const {
    if (!record_ || !learner_)
        return std::nullopt;
    return record_->folder() / learner::name_beside(what, learner_->id);
}

std::optional<std::string> Desk::kept_session() const {
    const auto path = beside_record(learner::kSessionBeside);
    if (!path)
        return std::nullopt;
    std::ifstream file(*path, std::ios::binary);
    if (!file)
        return std::nullopt;
    return std::string(std::istreambuf_iterator<char>(file), {});
}

void Desk::keep_session(const std::string& text) {
    if (const auto path = beside_record(learner::kSessionBeside); path && keeps())
        if (const auto kept = publish::write_whole_file(*path, text, publish::Readers::owner);
            !kept)
            notice(kept.error().message);
}

void Desk::forget_session() {
    std::error_code ignored; // what cannot be removed cannot have been written
    if (const auto path = beside_record(learner::kSessionBeside); path && keeps())
        std::filesystem::remove(*path, ignored);
}

void Desk::read_marked() {
    marked_.clear();
    if (const auto path = beside_record(learner::kMarksBeside)) {
        std::ifstream file(*path);
        for (std::string code; std::getline(file, code);)
            if (!code.empty())
                marked_.push_back(code);
    }
}

bool Desk::is_marked(const std::string& code) const {
    return std::find(marked_.begin(), marked_.end(), code) != marked_.end();
}

void Desk::mark(const std::string& code, bool wanted) {
    marked_.erase(std::remove(marked_.begin(), marked_.end(), code), marked_.end());
    if (wanted)
        marked_.push_back(code);
    std::string text;
    for (const std::string& one : marked_)
        text += one + '\n';
    if (const auto path = beside_record(learner::kMarksBeside); path && keeps())
        if (const auto kept = publish::write_whole_file(*path, text, publish::Readers::owner);
            !kept)
            notice(kept.error().message);
}

std::vector<std::string> Desk::mistakes(std::size_t most) {
    constexpr int kLookBack = 400;
    std::vector<std::string> wrong;
    std::set<std::string> settled; // by a later answer
    for (const learner::Answer& answer : last_answers(kLookBack)) {
        const bool missed = answer.outcome == learner::Outcome::wrong ||
                            answer.outcome == learner::Outcome::gave_up;
        if (!missed && answer.outcome != learner::Outcome::right)
            continue;
        // Of two tries at a question the first one counts, and it stands behind the second here.
        if (answer.attempt > 1 || !settled.insert(answer.code).second)
            continue;
        if (missed && wrong.size() < most)
            wrong.push_back(answer.code);
    }
    return wrong;
}

// --- mock exams ----------------------------------------------------------------------------------

std::optional<learner::Exam> Desk::unfinished_exam() {
    if (!record_ || !learner_)
        return std::nullopt;
    return heed(learner::unfinished_exam(*record_, learner_->id)).value_or(std::nullopt);
}

void Desk::keep_exam(learner::Exam& exam) {
    if (!keeps())
        return;
    hear(learner::keep_exam(*record_, learner_->id, exam));
}

void Desk::give_up_exam(const learner::Exam& exam) {
    if (!keeps())
        return;
    hear(learner::give_up_exam(*record_, learner_->id, exam.id));
}

void Desk::close_exam(learner::Exam& exam, const learner::ExamReport& report, const Clock& now) {
    if (keeps())
        if (auto standing =
                heed(learner::close_exam(*record_, learner_->id, *course_, exam, report, now)))
            return stand(std::move(*standing), now);
    for (const learner::Answer& answer : answers_of(*course_, exam, report))
        standing_ = after_answer(*course_, std::move(standing_), answer, now.offset_s);
    stand(standing_, now);
}

std::vector<learner::ExamResult> Desk::finished_exams(int most) {
    if (!record_ || !learner_)
        return {};
    return heed(learner::finished_exams(*record_, learner_->id, most))
        .value_or(std::vector<learner::ExamResult>());
}

std::optional<learner::Exam> Desk::exam_by_id(std::int64_t id) {
    if (!record_ || !learner_)
        return std::nullopt;
    return heed(learner::exam_by_id(*record_, learner_->id, id)).value_or(std::nullopt);
}

// --- looking back --------------------------------------------------------------------------------

std::vector<learner::RuleTimes> Desk::frequent_rules(int most) {
    if (!record_ || !learner_)
        return {};
    return heed(record_->frequent_rules(learner_->id, most))
        .value_or(std::vector<learner::RuleTimes>());
}

std::vector<learner::Answer> Desk::last_answers(int most) {
    if (!record_ || !learner_)
        return {};
    return heed(record_->last_answers(learner_->id, most)).value_or(std::vector<learner::Answer>());
}

std::string Desk::export_record(const Clock& now) {
    if (!record_ || !learner_)
        return "There is no record to export.";
    const std::filesystem::path path =
        record_->folder() /
        fmt::format("answers-{}-{}.jsonl", learner_->id, learner::write_day(learner::day_of(now)));
    const auto write = [&](std::FILE* file) -> tl::expected<void, publish::PublishError> {
        return learner::export_json_lines(*record_, *learner_,
                                          [file](std::string_view line) {
                                              std::fwrite(line.data(), 1, line.size(), file);
                                              std::fputc('\n', file);
                                          },
                                          {})
            .map_error([](const learner::RecordError& error) {
                return publish::PublishError{publish::PublishFault::stopped, error.message};
            });
    };
    const auto written = publish::write_whole_file(path, write, publish::Readers::owner);
    if (!written)
        return written.error().message;
    return "Everything about you, one line an answer, is in " + where_given(path) + ".";
}

void Desk::import_record(const std::filesystem::path& path, const Clock& now) {
    if (!has_course() || !can_add())
        return notice("No record can be written here, so nothing was taken in.");
    std::error_code failed;
    if (!std::filesystem::is_regular_file(path, failed))
        return notice(path.filename().string() + " is no plain file; nothing was taken in.");
    std::ifstream file(path);
    const auto imported =
        learner::import_answers(*record_, *course_, file, path.filename().string(), {}, now, {});
    if (!imported)
        return notice(imported.error().message);
    refresh(now);
    const auto whose = std::find_if(learners_.begin(), learners_.end(), [&](const Learner& one) {
        return one.name == imported->learner;
    });
    if (whose != learners_.end())
        choose(whose->id, now);
    notice(fmt::format("{} read, {} new, into the record of {}.", to_text(imported->read),
                       words::counted(imported->added, "line"), imported->learner));
}

} // namespace steelyard::app

#include "learner/record/record.h"

#include "learner/record/file/backups.h"
#include "learner/record/record_rows.h"
#include "setup/files/data_folder.h"
#include "setup/toml/letters.h"
#include "words/counted.h"

#include <fmt/format.h>

#include <algorithm>
#include <system_error>

namespace steelyard::learner {

namespace fs = std::filesystem;

namespace {

/// A backup is due when the newest is older than this: once a day, also for someone who starts a
/// little earlier than the day before.
constexpr TimeMs kBackupEvery_ms = 20 * 60 * kMinute_ms;

Learner read_learner(const Statement& row) {
    Learner learner;
    learner.id = row.integer(0);
    learner.name = setup::short_text(row.text(1)); // the file may come from elsewhere
    learner.created_ms = row.integer(2);
    if (const auto day = read_day(row.text(3)))
        learner.exam_day = *day;
    learner.answers = row.integer(4);
    learner.last_ms = row.integer(5);
    return learner;
}

constexpr const char* kLearnerColumns = "id, name, created_ms, exam_day, answers, last_ms";

RecordError refusal(std::string message) {
    return {Trouble::refused, std::move(message)};
}

std::optional<std::string> fault_of_name(const std::string& name) {
    if (name.empty())
        return "A learner needs a name.";
    const auto fault = setup::fault_of_short_text(name);
    return fault ? std::optional("A name cannot have " + *fault + ".") : std::nullopt;
}

} // namespace

Recorded<std::vector<Learner>> Record::learners() {
    auto rows =
        database_.prepare(fmt::format("SELECT {} FROM learner ORDER BY name", kLearnerColumns));
    if (!rows)
        return tl::make_unexpected(rows.error());
    std::vector<Learner> all;
    return rows->for_each_row([&](const Statement& row) { all.push_back(read_learner(row)); })
        .map([&] { return std::move(all); });
}

Recorded<std::optional<Learner>> Record::learner_named(const std::string& name) {
    auto rows =
        database_.prepare(fmt::format("SELECT {} FROM learner WHERE name = ?", kLearnerColumns));
    if (!rows)
        return tl::make_unexpected(rows.error());
    const auto found = rows->with(name).row();
    if (!found)
        return tl::make_unexpected(found.error());
    return *found ? std::optional(read_learner(*rows)) : std::nullopt;
}

Recorded<Learner> Record::add_learner(const std::string& name, const Clock& clock) {
    if (const auto fault = fault_of_name(name))
        return tl::make_unexpected(refusal(*fault));
    if (const auto done = put_back(); !done)
        return tl::make_unexpected(done.error());
    auto insert =
        database_.prepare("INSERT OR IGNORE INTO learner (name, created_ms) VALUES (?, ?)");
    if (!insert)
        return tl::make_unexpected(insert.error());
    if (const auto done = insert->with(name, clock.utc_ms).run(); !done)
        return tl::make_unexpected(done.error());
    if (database_.changes() == 0)
        return tl::make_unexpected(
            refusal(fmt::format("There is a learner named {} already.", name)));
    Learner learner;
    learner.id = database_.last_id();
    learner.name = name;
    learner.created_ms = clock.utc_ms;
    return learner;
}

Recorded<void> Record::set_exam_day(std::int64_t learner, std::optional<Day> day) {
    if (const auto done = put_back(); !done)
        return done;
    auto update = database_.prepare("UPDATE learner SET exam_day = ? WHERE id = ?");
    if (!update)
        return tl::make_unexpected(update.error());
    return update->with(day ? write_day(*day) : std::string(), learner).run();
}

Recorded<Standing> Record::standing(std::int64_t learner, const Course& course,
                                    const Clock& clock) {
    if (!writable_) {
        // Nothing can be kept, so everything is folded for the moment where it would have to be.
        auto mark = database_.text(fmt::format("SELECT model FROM learner WHERE id = {}", learner));
        if (mark && *mark == model_mark(course))
            return kept_standing(database_, learner, course, clock);
        auto folded = fold_answers(database_, learner, course, clock, {});
        if (!folded)
            return folded;
        return kept_standing(database_, learner, course, clock).map([&](const Standing& kept) {
            folded->exam_day = kept.exam_day;
            return *folded;
        });
    }
    if (const auto done = put_back(); !done)
        return tl::make_unexpected(done.error());
    // Looked at first without a right to write, for which another program's long import would have
    // to be waited for.
    {
        const auto reading = Transaction::begin_reading(database_);
        auto kept = reading ? kept_for_course(database_, learner, course, clock)
                            : tl::make_unexpected(reading.error());
        if (!kept)
            return tl::make_unexpected(kept.error());
        if (*kept)
            return **std::move(kept);
    }
    auto transaction = begin();
    if (!transaction)
        return tl::make_unexpected(transaction.error());
    auto standing = current_standing(database_, learner, course, clock);
    if (!standing)
        return standing;
    if (const auto done = transaction->commit(); !done)
        return tl::make_unexpected(done.error());
    return standing;
}

Recorded<Standing> Record::add_answer(std::int64_t learner, const Course& course,
                                      const Answer& answer, const Clock& clock) {
    return add_answers(learner, course, {answer}, clock);
}

Recorded<Standing> Record::add_answers(std::int64_t learner, const Course& course,
                                       const std::vector<Answer>& answers, const Clock& clock) {
    auto transaction = begin();
    if (!transaction)
        return tl::make_unexpected(transaction.error());
    auto standing = fold_in(database_, learner, course, answers, clock);
    if (!standing)
        return standing;
    if (const auto done = transaction->commit(); !done)
        return tl::make_unexpected(done.error());
    return standing;
}

std::string to_text(const Sums& sums) {
    return words::counted(sums.lines, "line") + ", " + words::counted(sums.questions, "question");
}

Recorded<Sums> Record::sums(std::int64_t learner) {
    auto row =
        database_.prepare("SELECT count(*), total(attempt = 1) FROM answer WHERE learner = ?");
    if (!row)
        return tl::make_unexpected(row.error());
    const auto found = row->with(learner).row();
    if (!found)
        return tl::make_unexpected(found.error());
    return Sums{row->integer(0), row->integer(1)};
}

Recorded<std::vector<Answer>> Record::last_answers(std::int64_t learner, int most) {
    auto rows = database_.prepare(std::string("SELECT ") + answer_names() +
                                  " FROM answer WHERE learner = ? ORDER BY id DESC LIMIT ?");
    if (!rows)
        return tl::make_unexpected(rows.error());
    std::vector<Answer> answers;
    return rows->with(learner, most)
        .for_each_row([&](const Statement& row) { answers.push_back(read_answer(row)); })
        .map([&] { return std::move(answers); });
}

Recorded<std::vector<RuleTimes>> Record::frequent_rules(std::int64_t learner, int most) {
    auto rows = database_.prepare("SELECT rule, times, last_ms FROM rule_count WHERE learner = ? "
                                  "ORDER BY times DESC, last_ms DESC LIMIT ?");
    if (!rows)
        return tl::make_unexpected(rows.error());
    std::vector<RuleTimes> rules;
    return rows->with(learner, most)
        .for_each_row([&](const Statement& row) {
            rules.push_back(
                {setup::short_text(row.text(0)), static_cast<int>(row.integer(1)), row.integer(2)});
        })
        .map([&] { return std::move(rules); });
}

Recorded<void> Record::back_up_if_due(const Clock& clock) {
    if (!writable_)
        return {};
    if (const auto done = put_back(); !done)
        return done;
    const std::vector<fs::path> backups = backups_in(folder_, clock.utc_ms);
    const TimeMs newest = backups.empty() ? 0 : *made_at(backups.front());
    // One named after a moment to come is the first only where there is no other: a new one is due.
    if (newest <= clock.utc_ms && clock.utc_ms - newest < kBackupEvery_ms)
        return {};
    return make_backup(database_, folder_, clock.utc_ms).map([](const fs::path&) {});
}

fs::path usual_record_folder() {
    return setup::own_folder();
}

std::string clock_notice(const Standing& standing, const Clock& clock) {
    // A few minutes are the usual disagreement between two machines.
    if (standing.last_ms <= clock.utc_ms + 5 * kMinute_ms)
        return {};
    return fmt::format(
        "The clock of this machine says {}, but your last answer is from {}. Set the "
        "clock right; until then, what you answered \"later\" counts as due.",
        write_day(day_of(clock)), write_day(day_of({standing.last_ms, clock.offset_s})));
}

} // namespace steelyard::learner

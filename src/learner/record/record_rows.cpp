#include "learner/record/record_rows.h"

#include "learner/record/skill_columns.h"
#include "problems/draw/random.h"

#include <fmt/format.h>

namespace steelyard::learner {

namespace {

/// Sum of answers without end that fade by half in kForesightHalf: 1 / (1 - 2^(-1 / 40)) = 58.2.
constexpr double kMostForesight = 60.0;

Recorded<void> read_skills(Database& database, std::int64_t learner, const Course& course,
                           Standing& standing) {
    auto rows = database.prepare(
        fmt::format("SELECT skill, {} FROM skill_state WHERE learner = ?", skill_names()));
    if (!rows)
        return tl::make_unexpected(rows.error());
    return rows->with(learner).for_each_row([&](const Statement& row) {
        if (const auto skill = course.find(row.text(0)))
            standing.skills[*skill] = read_skill(row, 1);
    });
}

Recorded<void> read_recent(Database& database, std::int64_t learner, Standing& standing) {
    auto rows = database.prepare(
        "SELECT family, code FROM answer WHERE learner = ? ORDER BY id DESC LIMIT ?");
    if (!rows)
        return tl::make_unexpected(rows.error());
    return rows->with(learner, static_cast<std::int64_t>(kRecentCodes))
        .for_each_row([&](const Statement& row) {
            if (standing.recent_families.size() < kRecentFamilies)
                standing.recent_families.push_back(row.text(0));
            // Every attempt at a question is an answer.
            if (standing.recent_codes.empty() || standing.recent_codes.back() != row.text(1))
                standing.recent_codes.push_back(row.text(1));
        });
}

Recorded<void> read_placement(Database& database, std::int64_t learner, const Course& course,
                              Standing& standing) {
    // Only those before the placement was over: with it over, none of them is needed any more.
    if (standing.placement_over)
        return {};
    auto rows = database.prepare(
        "SELECT skill, outcome, guess FROM answer WHERE learner = ? AND purpose <> 'practice' AND "
        "outcome IN ('right', 'wrong', 'gave_up') AND attempt = 1 ORDER BY id");
    if (!rows)
        return tl::make_unexpected(rows.error());
    return rows->with(learner).for_each_row([&](const Statement& row) {
        if (const auto skill = course.find(row.text(0)))
            standing.placement.push_back(
                {*skill, row.text(1) == "right", bounded(row.number(2), 0.0, kHighestGuess)});
    });
}

Recorded<void> count_today(Database& database, std::int64_t learner, const Clock& clock,
                           Standing& standing) {
    standing.today = day_of(clock);
    auto rows = database.prepare(
        "SELECT count(*) FROM answer WHERE learner = ? AND at_ms >= ? AND at_ms < ? AND outcome IN "
        "('right', 'wrong', 'gave_up') AND attempt = 1");
    if (!rows)
        return tl::make_unexpected(rows.error());
    const TimeMs midnight = begin_of(standing.today, clock.offset_s);
    rows->with(learner, midnight, midnight + kDay_ms);
    const auto found = rows->row();
    if (!found)
        return tl::make_unexpected(found.error());
    standing.answered_today = static_cast<int>(rows->integer(0));
    return {};
}

Recorded<void> write_skill(Statement& upsert, std::int64_t learner, const std::string& skill,
                           const SkillState& state) {
    upsert.with(learner, skill);
    bind_skill(upsert, state);
    return upsert.run();
}

Recorded<void> count_rule(Database& database, std::int64_t learner, const Answer& answer) {
    if (answer.wrong_rule.empty())
        return {};
    auto count = database.prepare(
        "INSERT INTO rule_count (learner, rule, times, last_ms) VALUES (?, ?, 1, ?) ON CONFLICT "
        "(learner, rule) DO UPDATE SET times = times + 1, last_ms = max(last_ms, "
        "excluded.last_ms)");
    if (!count)
        return tl::make_unexpected(count.error());
    return count->with(learner, answer.wrong_rule, answer.at_ms).run();
}

} // namespace

Recorded<Statement> prepare_insert(Database& database) {
    return database.prepare(fmt::format("INSERT OR IGNORE INTO answer (learner, {}) VALUES (?, {})",
                                        answer_names(), answer_places()));
}

Recorded<void> insert_answer(Statement& insert, std::int64_t learner, const Answer& answer) {
    insert.with(learner);
    bind_answer(insert, answer);
    return insert.run();
}

std::string model_mark(const Course& course) {
    const Parameters& p = course.parameters;
    std::string text =
        fmt::format("{} {} {} {} {} {} {} {}", p.start, p.learn, p.slip, p.mastered, p.half_life_d,
                    p.longest_half_life_d, p.placed_half_life_d, p.placement_questions);
    for (const CourseSkill& skill : course.skills) {
        text += "\n" + skill.skill->id;
        for (const std::size_t need : skill.needs)
            text += " " + std::to_string(need);
    }
    return fmt::format("{:016x}", problems::hash_of(text.data(), text.size()));
}

Recorded<Standing> kept_standing(Database& database, std::int64_t learner, const Course& course,
                                 const Clock& clock) {
    auto row = database.prepare(
        "SELECT exam_day, answers, last_ms, placement_over, foreseen, foreseen_right, "
        "foreseen_weight FROM learner WHERE id = ?");
    if (!row)
        return tl::make_unexpected(row.error());
    const auto found = row->with(learner).row();
    if (!found)
        return tl::make_unexpected(found.error());
    if (!*found)
        return tl::make_unexpected(
            RecordError{Trouble::refused, "This learner is no longer in the record."});
    Standing standing = fresh_standing(course);
    if (const auto day = read_day(row->text(0)))
        standing.exam_day = *day;
    standing.answers = row->integer(1);
    standing.last_ms = row->integer(2);
    standing.placement_over = row->integer(3) != 0;
    const double weight = bounded(row->number(6), 0.0, kMostForesight);
    standing.foresight = {bounded(row->number(4), 0.0, weight),
                          bounded(row->number(5), 0.0, weight), weight};
    return read_skills(database, learner, course, standing)
        .and_then([&] { return read_recent(database, learner, standing); })
        .and_then([&] { return read_placement(database, learner, course, standing); })
        .and_then([&] { return count_today(database, learner, clock, standing); })
        .map([&] { return standing; });
}

Recorded<void> keep_standing(Database& database, std::int64_t learner, const Course& course,
                             const Standing& before, const Standing& after) {
    auto update = database.prepare(
        "UPDATE learner SET answers = ?, last_ms = ?, placement_over = ?, foreseen = ?, "
        "foreseen_right = ?, foreseen_weight = ? WHERE id = ?");
    if (!update)
        return tl::make_unexpected(update.error());
    const Foresight& foresight = after.foresight;
    if (const auto done = update
                              ->with(after.answers, after.last_ms, after.placement_over,
                                     foresight.foreseen, foresight.right, foresight.weight, learner)
                              .run();
        !done)
        return done;
    auto upsert = database.prepare(
        fmt::format("INSERT OR REPLACE INTO skill_state (learner, skill, {}) VALUES (?, ?, {})",
                    skill_names(), skill_places()));
    if (!upsert)
        return tl::make_unexpected(upsert.error());
    for (std::size_t i = 0; i < after.skills.size(); ++i)
        if (after.skills[i] != before.skills[i])
            if (const auto done =
                    write_skill(*upsert, learner, course.skills[i].skill->id, after.skills[i]);
                !done)
                return done;
    return {};
}

Recorded<Standing> fold_answers(Database& database, std::int64_t learner, const Course& course,
                                const Clock& clock,
                                const std::function<void(std::int64_t)>& progress) {
    auto rows = database.prepare(
        fmt::format("SELECT {} FROM answer WHERE learner = ? ORDER BY id", answer_names()));
    if (!rows)
        return tl::make_unexpected(rows.error());
    Standing standing = fresh_standing(course);
    std::int64_t done = 0;
    return rows->with(learner)
        .for_each_row([&](const Statement& row) {
            standing = after_answer(course, std::move(standing), read_answer(row), clock.offset_s);
            if (++done % kProgressEvery == 0 && progress)
                progress(done);
        })
        .map([&] { return std::move(standing); });
}

Recorded<Standing> refold(Database& database, std::int64_t learner, const Course& course,
                          const Clock& clock) {
    auto folded = fold_answers(database, learner, course, clock, {});
    if (!folded)
        return folded;
    const std::string id = std::to_string(learner);
    // Of skills that the course does not have nothing is known; they come back with their bank.
    const auto cleared = database.run(fmt::format(
        "DELETE FROM skill_state WHERE learner = {0}; DELETE FROM rule_count WHERE learner = {0};"
        "INSERT INTO rule_count SELECT learner, wrong_rule, count(*), max(at_ms) FROM answer "
        "WHERE learner = {0} AND wrong_rule <> '' GROUP BY wrong_rule;"
        "UPDATE learner SET model = '{1}' WHERE id = {0}",
        id, model_mark(course)));
    if (!cleared)
        return tl::make_unexpected(cleared.error());
    if (const auto kept = keep_standing(database, learner, course, fresh_standing(course), *folded);
        !kept)
        return tl::make_unexpected(kept.error());
    return kept_standing(database, learner, course, clock);
}

Recorded<std::optional<Standing>> kept_for_course(Database& database, std::int64_t learner,
                                                  const Course& course, const Clock& clock) {
    auto mark = database.prepare("SELECT model FROM learner WHERE id = ?");
    if (!mark)
        return tl::make_unexpected(mark.error());
    const auto found = mark->with(learner).row();
    if (!found)
        return tl::make_unexpected(found.error());
    if (*found && mark->text(0) != model_mark(course))
        return std::nullopt;
    return kept_standing(database, learner, course, clock).map([](Standing kept) {
        return std::optional(std::move(kept));
    });
}

Recorded<Standing> current_standing(Database& database, std::int64_t learner, const Course& course,
                                    const Clock& clock) {
    auto kept = kept_for_course(database, learner, course, clock);
    if (!kept)
        return tl::make_unexpected(kept.error());
    return *kept ? Recorded<Standing>(**std::move(kept)) : refold(database, learner, course, clock);
}

Recorded<Standing> fold_in(Database& database, std::int64_t learner, const Course& course,
                           const std::vector<Answer>& answers, const Clock& clock) {
    auto standing = current_standing(database, learner, course, clock);
    if (!standing)
        return standing;
    const Standing before = *standing;
    auto insert = prepare_insert(database);
    if (!insert)
        return tl::make_unexpected(insert.error());
    for (const Answer& answer : answers) {
        if (const auto done = insert_answer(*insert, learner, answer); !done)
            return tl::make_unexpected(done.error());
        // The same answer a second time, from a window that was asked to try again.
        if (database.changes() == 0)
            continue;
        if (const auto done = count_rule(database, learner, answer); !done)
            return tl::make_unexpected(done.error());
        *standing = after_answer(course, std::move(*standing), answer, clock.offset_s);
    }
    if (const auto kept = keep_standing(database, learner, course, before, *standing); !kept)
        return tl::make_unexpected(kept.error());
    return standing;
}

Recorded<void> put_in_order(Database& database) {
    return database.run(fmt::format(
        "CREATE TEMP TABLE ordered AS SELECT learner, {0} FROM answer ORDER BY at_ms, id;"
        "DELETE FROM answer;"
        "INSERT INTO answer (learner, {0}) SELECT learner, {0} FROM ordered ORDER BY rowid;"
        "DROP TABLE ordered",
        answer_names()));
}

} // namespace steelyard::learner

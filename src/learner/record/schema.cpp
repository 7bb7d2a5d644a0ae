#include "learner/record/schema.h"

#include "learner/record/answer_columns.h"
#include "learner/record/skill_columns.h"

#include <algorithm>

namespace steelyard::learner {

namespace {

/// What no table of columns says. A step that has been released never changes.
const std::vector<std::string>& written_steps() {
    static const std::vector<std::string> kSteps{
        // 1: who answered what.
        R"(
CREATE TABLE learner (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE COLLATE NOCASE,
    created_ms INTEGER NOT NULL,
    exam_day TEXT NOT NULL DEFAULT '',
    model TEXT NOT NULL DEFAULT '',
    answers INTEGER NOT NULL DEFAULT 0,
    last_ms INTEGER NOT NULL DEFAULT 0,
    placement_over INTEGER NOT NULL DEFAULT 0,
    foreseen REAL NOT NULL DEFAULT 0,
    foreseen_right REAL NOT NULL DEFAULT 0,
    foreseen_weight REAL NOT NULL DEFAULT 0
);
CREATE TABLE answer (
    id INTEGER PRIMARY KEY,
    learner INTEGER NOT NULL REFERENCES learner(id) ON DELETE CASCADE,
    at_ms INTEGER NOT NULL,
    code TEXT NOT NULL,
    skill TEXT NOT NULL,
    family TEXT NOT NULL,
    purpose TEXT NOT NULL,
    outcome TEXT NOT NULL,
    typed TEXT NOT NULL,
    wrong_rule TEXT NOT NULL,
    attempt INTEGER NOT NULL,
    hints INTEGER NOT NULL,
    help REAL NOT NULL,
    guess REAL NOT NULL,
    foreseen REAL NOT NULL,
    took_ms INTEGER NOT NULL
);
CREATE UNIQUE INDEX answer_once ON answer (learner, at_ms, code, attempt);
CREATE INDEX answer_order ON answer (learner);
CREATE TABLE skill_state (
    learner INTEGER NOT NULL REFERENCES learner(id) ON DELETE CASCADE,
    skill TEXT NOT NULL,
    known REAL NOT NULL,
    half_life_d REAL NOT NULL,
    last_ms INTEGER NOT NULL,
    answers INTEGER NOT NULL,
    right_answers INTEGER NOT NULL,
    examples INTEGER NOT NULL,
    misses_in_row INTEGER NOT NULL,
    stage INTEGER NOT NULL,
    PRIMARY KEY (learner, skill)
) WITHOUT ROWID;
CREATE TABLE exam (
    id INTEGER PRIMARY KEY,
    learner INTEGER NOT NULL REFERENCES learner(id) ON DELETE CASCADE,
    title TEXT NOT NULL,
    seed INTEGER NOT NULL,
    pass_share REAL NOT NULL,
    started_ms INTEGER NOT NULL,
    allowed_ms INTEGER NOT NULL,
    used_ms INTEGER NOT NULL,
    seen_ms INTEGER NOT NULL,
    item INTEGER NOT NULL,
    finished_ms INTEGER NOT NULL DEFAULT 0,
    right_answers INTEGER NOT NULL DEFAULT 0,
    questions INTEGER NOT NULL DEFAULT 0,
    UNIQUE (learner, started_ms, seed)
);
CREATE TABLE exam_item (
    exam INTEGER NOT NULL REFERENCES exam(id) ON DELETE CASCADE,
    number INTEGER NOT NULL,
    code TEXT NOT NULL,
    skill TEXT NOT NULL,
    family TEXT NOT NULL,
    answer TEXT NOT NULL,
    flagged INTEGER NOT NULL,
    took_ms INTEGER NOT NULL,
    foreseen REAL NOT NULL,
    PRIMARY KEY (exam, number)
) WITHOUT ROWID;
)",
        // 2: which wrong rules a learner follows, counted.
        R"(
CREATE TABLE rule_count (
    learner INTEGER NOT NULL REFERENCES learner(id) ON DELETE CASCADE,
    rule TEXT NOT NULL,
    times INTEGER NOT NULL,
    last_ms INTEGER NOT NULL,
    PRIMARY KEY (learner, rule)
) WITHOUT ROWID;
INSERT INTO rule_count
    SELECT learner, wrong_rule, count(*), max(at_ms) FROM answer
    WHERE wrong_rule <> '' GROUP BY learner, wrong_rule;
)",
        // 3: no other tables. From here on a file that is closed says in its header that it has no
        // journal, so that a journal that is missing can be noticed: see journal_is_lost().
        "",
    };
    return kSteps;
}

std::vector<std::string> all_steps() {
    std::vector<std::string> steps = written_steps();
    const auto make_room = [&](const auto& table) {
        for (const auto& column : table)
            steps.resize(std::max(steps.size(), static_cast<std::size_t>(column.since)));
    };
    make_room(answer_table());
    make_room(skill_table());
    int version = 0;
    for (std::string& step : steps) {
        ++version;
        step += added_answer_columns(version) + added_skill_columns(version);
    }
    return steps;
}

} // namespace

const std::vector<std::string>& schema_steps() {
    static const std::vector<std::string> kSteps = all_steps();
    return kSteps;
}

} // namespace steelyard::learner

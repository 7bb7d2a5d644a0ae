#include "learner/record/file/salvage.h"

#include "learner/record/record_rows.h"

#include <fmt/format.h>

#include <map>

namespace steelyard::learner {

namespace {

/// Learners of the damaged file by their id there, as ids here. Made where they are missing.
std::map<std::int64_t, std::int64_t> match_learners(Database& into, Database& from) {
    std::map<std::int64_t, std::int64_t> ids;
    auto rows = from.prepare("SELECT id, name, created_ms, exam_day FROM learner");
    auto insert =
        into.prepare("INSERT OR IGNORE INTO learner (name, created_ms, exam_day) VALUES (?, ?, ?)");
    auto find = into.prepare("SELECT id FROM learner WHERE name = ?");
    if (!rows || !insert || !find)
        return ids;
    for (auto more = rows->row(); more && *more; more = rows->row()) {
        if (!insert->with(rows->text(1), rows->integer(2), rows->text(3)).run())
            continue;
        if (const auto found = find->with(rows->text(1)).row(); found && *found)
            ids[rows->integer(0)] = find->integer(0);
    }
    return ids;
}

/// Answers in one direction until the damage. @return how many were new
std::int64_t copy_answers(Database& into, Database& from,
                          const std::map<std::int64_t, std::int64_t>& ids, const char* direction) {
    // The file may be of an earlier version than ours, with fewer columns.
    auto rows = answer_selection(from).and_then([&](const std::string& columns) {
        return from.prepare(
            fmt::format("SELECT {}, learner FROM answer ORDER BY id {}", columns, direction));
    });
    auto insert = prepare_insert(into);
    if (!rows || !insert)
        return 0;
    const int learner_column = static_cast<int>(answer_table().size());
    std::int64_t added = 0;
    for (auto more = rows->row(); more && *more; more = rows->row()) {
        const auto learner = ids.find(rows->integer(learner_column));
        if (learner == ids.end() || !insert_answer(*insert, learner->second, read_answer(*rows)))
            continue;
        added += into.changes();
    }
    return added;
}

} // namespace

std::int64_t bring_over(Database& into, Database& from) {
    auto transaction = Transaction::begin(into);
    if (!transaction)
        return 0;
    const auto ids = match_learners(into, from);
    const std::int64_t added =
        copy_answers(into, from, ids, "ASC") + copy_answers(into, from, ids, "DESC");
    if (added > 0 && !(put_in_order(into) && into.run("UPDATE learner SET model = ''")))
        return 0;
    return transaction->commit() ? added : 0;
}

std::int64_t salvage(Database& into, const std::filesystem::path& damaged) {
    // Beside its journal first: the last answers may lie there.
    for (const Access access : {Access::read, Access::frozen}) {
        auto from = Database::open(damaged, access);
        if (from && from->integer("SELECT count(*) FROM sqlite_schema"))
            return bring_over(into, *from);
    }
    return 0;
}

} // namespace steelyard::learner

#include "learner/record/check.h"

#include "learner/record/file/backups.h"
#include "learner/record/range_check.h"
#include "learner/record/record_rows.h"
#include "learner/record/skill_columns.h"

#include <fmt/format.h>

namespace steelyard::learner {

namespace {

bool same(const Standing& a, const Standing& b) {
    for (std::size_t i = 0; i < a.skills.size(); ++i)
        if (!same_skill(a.skills[i], b.skills[i]))
            return false;
    return a.answers == b.answers && a.last_ms == b.last_ms &&
           a.placement_over == b.placement_over &&
           same_number(a.foresight.right, b.foresight.right) &&
           same_number(a.foresight.foreseen, b.foresight.foreseen) &&
           same_number(a.foresight.weight, b.foresight.weight);
}

Recorded<void> check_learner(Record& record, const Learner& learner, const Course& course,
                             const Clock& clock, const std::function<void(std::int64_t)>& progress,
                             RecordCheck& check) {
    Database& database = record.database();
    auto transaction =
        record.is_writable() ? Transaction::begin(database) : tl::make_unexpected(RecordError{});
    if (record.is_writable() && !transaction)
        return tl::make_unexpected(transaction.error());
    const auto kept = record.is_writable() ? current_standing(database, learner.id, course, clock)
                                           : kept_standing(database, learner.id, course, clock);
    if (!kept)
        return tl::make_unexpected(kept.error());
    const auto folded = fold_answers(database, learner.id, course, clock, progress);
    if (!folded)
        return tl::make_unexpected(folded.error());
    if (same(*kept, *folded))
        return transaction ? transaction->commit() : Recorded<void>();
    const std::string what =
        fmt::format("What was kept of {}'s skills is not what the answers give", learner.name);
    if (!record.is_writable()) {
        check.faults.push_back(what + ", and cannot be mended where nothing can be written.");
        return {};
    }
    if (const auto mended = refold(database, learner.id, course, clock); !mended)
        return tl::make_unexpected(mended.error());
    check.mended.push_back(what + ": made anew from the answers.");
    return transaction->commit();
}

} // namespace

Recorded<RecordCheck> check_record(Record& record, const Course& course, const Clock& clock,
                                   const std::function<void(std::int64_t)>& progress) {
    RecordCheck check;
    if (!is_sound(record.database()))
        check.faults.push_back(fmt::format(
            "The file {} is damaged inside. Start Steelyard again: it will set the file aside and "
            "open the newest good backup.",
            (record.folder() / kRecordFile).string()));
    auto values = values_out_of_range(record.database());
    if (!values)
        return tl::make_unexpected(values.error());
    for (std::string& fault : *values)
        check.faults.push_back(std::move(fault));
    const auto learners = record.learners();
    if (!learners)
        return tl::make_unexpected(learners.error());
    check.learners = static_cast<std::int64_t>(learners->size());
    for (const Learner& learner : *learners) {
        const auto sums = record.sums(learner.id);
        if (!sums)
            return tl::make_unexpected(sums.error());
        check.answers += *sums;
    }
    check.backups = static_cast<int>(backups_in(record.folder()).size());
    for (const Learner& learner : *learners)
        if (const auto done = check_learner(record, learner, course, clock, progress, check); !done)
            return tl::make_unexpected(done.error());
    return check;
}

} // namespace steelyard::learner

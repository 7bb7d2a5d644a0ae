#include "learner/record/file/folder_lock.h"

namespace steelyard::learner {

Recorded<FolderLock> FolderLock::take(const std::filesystem::path& folder, Hold hold) {
    auto file = Database::open(folder / "record.lock", Access::write);
    if (!file)
        return FolderLock(std::nullopt);
    // Within a transaction a read keeps its share of the lock.
    const auto held = file->run(hold == Hold::alone ? "BEGIN EXCLUSIVE"
                                                    : "BEGIN; SELECT count(*) FROM sqlite_schema");
    if (held)
        return FolderLock(std::move(*file));
    if (held.error().trouble != Trouble::busy)
        return FolderLock(std::nullopt);
    return tl::make_unexpected(
        RecordError{Trouble::busy,
                    "Another Steelyard is opening or mending the record. Try again in a moment."});
}

} // namespace steelyard::learner

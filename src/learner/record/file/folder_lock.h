#pragma once
// Programs that open a record at once wait while one of them mends it.

#include "learner/record/file/database.h"

#include <optional>

namespace steelyard::learner {

enum class Hold { with_others, alone };

/// A hold on a record's folder, until it goes out of scope or its program ends in whatever way. It
/// is a lock on a file of its own beside the record, which SQLite makes and which stays empty.
/// Where no such file can be made nothing can be mended either; then there is nothing to hold.
class FolderLock {
public:
    /// Waits while another program holds the folder alone, or, to hold it alone, while any does.
    /// @return busy when that took too long
    static Recorded<FolderLock> take(const std::filesystem::path& folder, Hold hold);

private:
    explicit FolderLock(std::optional<Database> file) : file_(std::move(file)) {}

    std::optional<Database> file_; ///< with a transaction that is open
};

} // namespace steelyard::learner

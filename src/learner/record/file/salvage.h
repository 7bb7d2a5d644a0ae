#pragma once
// What can still be read of a damaged record.

#include "learner/record/file/database.h"

#include <cstdint>
#include <filesystem>

namespace steelyard::learner {

/// Brings learners and answers over that can be read from another file and are not in the record
/// yet, row by row from both ends of its tables until a damage; the folded sums are marked to be
/// made anew. Never fails: what cannot be had is left.
/// @return how many answers were new
std::int64_t bring_over(Database& into, Database& from);

/// The same from a damaged file.
std::int64_t salvage(Database& into, const std::filesystem::path& damaged);

} // namespace steelyard::learner

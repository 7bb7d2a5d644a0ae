#pragma once
// Counts what the program takes from the heap by operator new. ImGui takes its memory by malloc, so
// that what is counted is ours and the standard library's.

namespace steelyard {

/// So many blocks were taken since the program began.
long allocations();

} // namespace steelyard

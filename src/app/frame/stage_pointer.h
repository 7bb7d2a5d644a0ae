#pragma once
// The pointer as the stage sees it.

#include "app/frame/frame_input.h"
#include "app/frame/layout.h"

namespace steelyard::app {

/// Reads where the pointer is over the stage and what its buttons do, from the current ImGui and
/// from what came in, of which a double click is taken.
StagePointer read_stage_pointer(Incoming& incoming, const Layout& layout);

} // namespace steelyard::app

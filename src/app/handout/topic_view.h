#pragma once
// The topics of a sheet that is put together: its title, the skills to choose from, how to keep it.

#include "app/look/style.h"
#include "publish/sheets/sheet_choice.h"

#include <optional>
#include <string>

namespace steelyard::app {

/// Between frames.
struct TopicState {
    std::string said; ///< why the sheet could not be saved
};

struct TopicWishes {
    std::optional<publish::SheetChoice> changed; ///< what is chosen now
    bool save = false;
};

/// Draws the topics into a part of the stage, which scrolls.
/// @param kept  how many sheets are kept; tells the frames before and after saving apart
TopicWishes draw_topics(const Style& style, const scene::Point& corner_px,
                        const scene::Point& size_px, const problems::Bank& bank, std::size_t kept,
                        const TopicState& state, const publish::SheetChoice& choice);

} // namespace steelyard::app

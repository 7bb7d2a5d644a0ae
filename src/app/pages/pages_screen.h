#pragma once
// A page on the screen: the idea and the drawing on the stage; in the column what is predicted,
// what came out, the rail that moves the drawing, and Back and Next.

#include "app/frame/frame_input.h"
#include "app/frame/layout.h"
#include "app/look/style.h"
#include "app/pages/pages_model.h"

#include <optional>
#include <string>

namespace steelyard::app {

struct PagesScreen {
    std::optional<PagesModel> model; ///< empty = no pages are open
    std::string title;               ///< the skill's
    std::string last_word = "Done";  ///< on the button of the last page
};

struct PagesFrame {
    bool read = false; ///< the last page was turned
    bool left = false; ///< before the last one
    scene::Drawing drawing;
};

/// Runs one frame; pages must be open. Keys: digits predict, left and right move the drawing (with
/// Shift farther), Enter and Page Down turn on, Page Up back, Escape leaves.
PagesFrame run_pages(const Style& style, const Layout& layout, const FrameInput& input,
                     PagesScreen& screen);

} // namespace steelyard::app

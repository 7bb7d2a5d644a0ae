#pragma once
// The page on which what is on a stage is saved among the person's own setups, or taken along as a
// picture.

#include "app/look/style.h"
#include "app/own/own_setups.h"
#include "app/own/take_along.h"
#include "app/platform/window.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

/// The page between frames.
struct KeepState {
    setup::Setup setup;             ///< what is to be kept
    std::optional<OwnFile> file;    ///< the own file that it came from
    std::string name;               ///< as typed so far
    std::string fault;              ///< why it could not be kept, and what to do
    std::vector<PictureKind> kinds; ///< of pictures that can be made of it
    std::size_t shape = 0;          ///< of the pictures, in kPictureShapes
    bool has_sheet = true;          ///< false: pictures are see-through behind what is drawn
    bool plot = false;              ///< torques over the range stand beside what is drawn
    std::string copied;             ///< what was copied, in a sentence
    TakeAlong taking;
    bool wants_keyboard = true; ///< the name has yet to get it
};

/// Opens the page for a setup, with a name that is free where it has none of its own yet.
KeepState open_keep(const OwnSetups& own, setup::Setup setup, std::optional<OwnFile> file,
                    const publish::Tools& tools);

/// What came of a frame.
struct KeepFrame {
    bool close = false;
    std::optional<OwnFile> kept;        ///< in this file, under the name that was typed
    std::optional<PictureKind> picture; ///< to be made
};

/// Draws the page over the whole window. Enter keeps in the same file where there is one, and under
/// another name where another was typed; Escape leaves.
KeepFrame draw_keep(const Style& style, const scene::Point& window_px,
                    const std::vector<KeyPress>& keys, const OwnSetups& own, KeepState& state);

} // namespace steelyard::app

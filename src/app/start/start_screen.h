#pragma once
// The first thing that is met: three doors, for trying, practising and teaching, and what was open
// last.

#include "app/frame/frame_input.h"
#include "app/look/style.h"
#include "app/paint/placed_drawing.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

/// A way on from a door: its word, and what its press means to the caller.
struct StartWay {
    std::string word;
    std::size_t id = 0;
};

struct StartDoor {
    std::string title;
    std::string sentence;
    std::vector<StartWay> ways; ///< the first is taken when the door itself is pressed
    /// Makes its picture for a size [px].
    std::function<scene::Drawing(const scene::Point&)> make_picture;
};

/// What stands on the screen.
struct StartContent {
    std::vector<StartDoor> doors;
    std::vector<StartWay> below; ///< what was open last, a look around
};

/// The screen between frames.
struct StartScreen {
    std::size_t chosen = 0;               ///< door
    std::vector<scene::Drawing> pictures; ///< made when the size of the doors changes
    scene::Point pictures_px = scene::Point::Zero();
};

struct StartFrame {
    std::optional<std::size_t> taken; ///< id of the way that was pressed
    std::vector<PlacedDrawing> pictures;
};

/// Runs one frame. Keys: arrows choose a door, 1 to 3 or Enter open it, Space takes the first way
/// below.
StartFrame run_start(const Style& style, const scene::Point& window_px,
                     const std::vector<KeyPress>& keys, const StartContent& content,
                     StartScreen& screen);

} // namespace steelyard::app

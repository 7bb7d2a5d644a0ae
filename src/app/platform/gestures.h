#pragma once
// Fingers on a screen as what a mouse would do: one finger drags, or scrolls where there is more
// than fits, two move the sheet and bring it nearer, one that lies still does what a double click
// does.

#include "scene/drawing.h"

#include <optional>
#include <vector>

namespace steelyard::app {

enum class PointerButton { left, middle, right };

/// What a pointer does.
struct PointerAct {
    enum class Kind { move, press, release, wheel, scroll, double_click, leave };
    Kind kind = Kind::move;
    scene::Point at_px = scene::Point::Zero();
    PointerButton button = PointerButton::left; ///< of a press and a release
    double notches = 0.0;                       ///< of a wheel, positive = nearer
    double scroll_px = 0.0; ///< how far a finger pulls down what lay under it at at_px
};

enum class TouchPhase { down, moved, up, cancelled };

struct Touch {
    TouchPhase phase = TouchPhase::down;
    int finger = 0; ///< by the browser's number
    scene::Point at_px = scene::Point::Zero();
    double at_s = 0.0;    ///< by now_s
    bool scrolls = false; ///< when it goes down: on something that holds more than fits
};

class Gestures {
public:
    std::vector<PointerAct> take(const Touch& touch);

    /// What lying still does, if it has lasted long enough at this time.
    std::vector<PointerAct> wait(double now_s);
    /// When that will be so [s by now_s]; empty while no finger lies still.
    std::optional<double> due_s() const;

private:
    struct Finger {
        int number = 0;
        scene::Point at_px = scene::Point::Zero();
    };
    /// What the only finger does.
    enum class Alone {
        nothing,
        waits, ///< lies where it may come to scroll: presses nothing yet
        drags, ///< holds the left button down
        scrolls
    };
    std::vector<PointerAct> put_down(const Touch& touch);
    std::vector<PointerAct> move(const Touch& touch);
    std::vector<PointerAct> move_alone(const Touch& touch, const scene::Point& from_px);
    std::vector<PointerAct> lift(const Touch& touch);
    scene::Point middle_px() const;
    double distance_px() const;

    std::vector<Finger> fingers_;
    scene::Point begun_at_px_ = scene::Point::Zero();
    std::optional<double> still_since_s_; ///< of the only finger; empty once it has moved
    Alone alone_ = Alone::nothing;
    bool pans_ = false; ///< the right button is held down by two
};

} // namespace steelyard::app

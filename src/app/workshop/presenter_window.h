#pragma once
// The presenter's window: the note, this step and the next, what the room has said, the clock.
// It can be opened and closed at any time; the lesson goes on without it.

#include "app/look/style.h"
#include "app/platform/window.h"
#include "app/workshop/show_model.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

class PresenterWindow {
public:
    bool is_open() const { return window_.has_value(); }

    /// Opens the window beside the main one, on another monitor where there is one.
    /// @return why it could not be opened; empty when it was
    std::string open(const Window& main);
    void close(const Window& main);

    /// True when something came in for this window since the last time.
    bool stirred();
    /// What was pressed and typed in it, taken out.
    std::vector<KeyPress> take_keys();

    /// Draws the window, or closes it when the person wants that. The main window is current
    /// afterwards.
    /// @param show  null while no lesson is shown
    /// @return what was drawn, to be narrated; null when nothing was
    const Narration* draw(const Window& main, const Style& main_style, const ShowModel* show);

    /// Seconds until the clock or the step's timer shows something else.
    double until_tick_s(const ShowModel* show) const;

private:
    void prepare_style(const Style& main_style);

    std::optional<Window> window_;
    Style style_;
    double fonts_for_ = 0.0;
    Narration narration_;
};

} // namespace steelyard::app

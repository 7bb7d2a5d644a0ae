#pragma once
// What a frame shows, in words and places: for a reader that is not an eye. Tests of the real
// window read it, and so can any program that speaks the screen.

#include "scene/drawing.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::app {

/// Collects every text as it is drawn, and every spot that can be taken hold of.
class Narration {
public:
    struct Entry {
        std::string text;
        scene::Point at_px = scene::Point::Zero(); ///< left end of its baseline
        double width_px = 0.0;
        double em_px = 0.0; ///< size of the type; 0 for a spot
    };

    void begin_frame() {
        texts_.clear();
        grips_.clear();
    }
    void add_text(std::string_view text, const scene::Point& at_px, double width_px, double em_px) {
        texts_.push_back({std::string(text), at_px, width_px, em_px});
    }
    void add_grip(std::string name, const scene::Point& at_px) {
        grips_.push_back({std::move(name), at_px});
    }

    /// Every text of the frame, in the order of drawing.
    const std::vector<Entry>& texts() const { return texts_; }

    /// The first text or grip that begins so; nothing for an empty beginning.
    std::optional<Entry> find(std::string_view beginning) const;

    /// One frame as a line of JSON: {"frame": 12, "texts": [{"text", "x", "y", "width", "em"}],
    /// "grips": [{"text", "x", "y", "width", "em"}]}.
    /// @param window  of a further window its name, told as "window"; empty for the main one
    std::string to_json(long frame, const std::string& window = {}) const;

    /// The line that is told when no further frame comes until something happens, and when
    /// something has: {"kept": true, "rest": true}. `kept` is false while work waits to be written.
    static std::string rest_to_json(bool rests, bool kept);

private:
    std::vector<Entry> texts_;
    std::vector<Entry> grips_;
};

} // namespace steelyard::app

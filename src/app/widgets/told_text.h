#pragma once
// Text whose terms can be pressed: each leads to the glossary.

#include "app/look/style.h"
#include "lesson/term_spots.h"

#include <filesystem>
#include <optional>
#include <vector>

namespace steelyard::app {

/// The glossary as texts use it: which terms stand on the screen, and which was pressed. Read when
/// a text is first drawn; nothing is found where it cannot be read.
class TermLinks {
public:
    /// @param assets  the folder that holds pages/glossary.toml
    explicit TermLinks(std::filesystem::path assets) : assets_(std::move(assets)) {}

    void begin_frame();
    /// Where a text names terms.
    std::vector<lesson::TermSpot> spots(std::string_view text);
    void show(std::size_t term);
    void press(std::size_t term) { pressed_ = term; }

    /// The first one on the screen, which one key leads to.
    std::optional<std::size_t> first() const { return first_; }
    std::optional<std::size_t> pressed() const { return pressed_; }

private:
    std::filesystem::path assets_;
    std::optional<lesson::TermFinder> finder_;
    std::optional<std::size_t> first_;
    std::optional<std::size_t> pressed_;
};

/// Draws text broken to a width, first baseline at `at.y`, with its terms underlined; pressing one
/// is noted in the style's links. Indices of symbols stand low.
/// @param id  tells the texts of a frame apart
/// @return the y of the next baseline
float draw_told(ImDrawList& list, const Style& style, const char* id, const TextStyle& how,
                ImVec2 at, float width_px, std::string_view text);

/// The same on the stage, where no area is begun: each term gets one of its own.
float draw_told_on_stage(const Style& style, const char* id, const TextStyle& how, ImVec2 at,
                         float width_px, std::string_view text);

} // namespace steelyard::app

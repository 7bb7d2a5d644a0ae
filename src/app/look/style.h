#pragma once
// What every view needs to draw in the sheet's own manner: fonts, look and scale.

#include "app/look/colours.h"
#include "app/look/fonts.h"
#include "app/look/narration.h"

#include <string>
#include <string_view>
#include <vector>

namespace steelyard::app {

class PressLetters;
class TermLinks;

/// Fonts, look and scale of the sheet in this frame.
struct Style {
    Fonts fonts;
    scene::Look look = scene::Look::light;
    Narration* narration = nullptr; ///< hears every text that is drawn; null = nobody listens
    /// Offers what can be pressed to the keys; null = by the mouse only.
    PressLetters* letters = nullptr;
    /// Leads from terms in texts to the glossary; null = texts are only read.
    TermLinks* terms = nullptr;

    /// A length of the layout at the present text size [px].
    float px(float at_100_percent) const { return at_100_percent * fonts.scale; }
    /// Height of a text size as it is set [px].
    float em_px(scene::TextSize size) const {
        return px(static_cast<float>(scene::text_height_px(size)));
    }
    ImU32 mark(scene::Role role, double opacity = 1.0) const {
        return colour_u32(role, look, opacity);
    }
    ImU32 text(scene::Role role) const { return text_u32(role, look); }
};

/// How a piece of text is set.
struct TextStyle {
    scene::TextSize size = scene::TextSize::body;
    bool strong = false;
    scene::Role role = scene::Role::ink;
};

/// Width of a line of text as it will be shown [px].
float text_width(const Style& style, const TextStyle& how, std::string_view text);

/// Draws a line of text with its left end on the baseline at `at`.
/// @return its width [px]
float draw_text(ImDrawList& list, const Style& style, const TextStyle& how, ImVec2 at,
                std::string_view text);

/// The text itself where it fits a width, else its beginning and an ellipsis.
std::string shortened(const Style& style, const TextStyle& how, std::string_view text,
                      float width_px);

/// Text broken at blanks to fit a width; a single word that is too long has a line of its own.
std::vector<std::string_view> broken_lines(const Style& style, const TextStyle& how,
                                           std::string_view text, float width_px);

/// Draws text broken to a width, first baseline at `at.y`.
/// @return the y of the next baseline
float draw_paragraph(ImDrawList& list, const Style& style, const TextStyle& how, ImVec2 at,
                     float width_px, std::string_view text);

/// Lines that a paragraph breaks into.
int paragraph_lines(const Style& style, const TextStyle& how, float width_px,
                    std::string_view text);

/// Distance between the baselines of a paragraph [px].
float line_height(const Style& style, scene::TextSize size);

/// ImGui's own widgets (text fields, scroll bars) in the sheet's colours and spacing.
void apply_to_imgui(const Style& style);

} // namespace steelyard::app

#pragma once
// The colours of each look. Okabe–Ito hues (Okabe & Ito 2008, "Color Universal Design") with
// darker inks for text, so that text reaches 4.5:1 and marks 3:1 against the sheet.

#include "scene/drawing.h"

#include <cstdint>

namespace steelyard::scene {

/// How the sheet looks. `high_contrast` is black and white where it can be; `print` is for paper:
/// white, and readable in greys.
enum class Look { light, dark, high_contrast, print };

struct Rgb {
    std::uint8_t red = 0;
    std::uint8_t green = 0;
    std::uint8_t blue = 0;
};

/// Colour of lines and fills.
Rgb colour_of(Role role, Look look);

/// Colour of text of the same meaning: darker on a light sheet where the mark's own colour would
/// stay under 4.5:1.
Rgb text_colour_of(Role role, Look look);

/// Contrast ratio of two colours, 1 to 21. Source: WCAG 2.2, "contrast ratio".
double contrast_ratio(Rgb one, Rgb other);

} // namespace steelyard::scene

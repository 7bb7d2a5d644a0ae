#include "scene/palette.h"

#include <algorithm>
#include <cmath>

namespace steelyard::scene {
namespace {

constexpr Rgb rgb(std::uint32_t hex) {
    return {static_cast<std::uint8_t>(hex >> 16 & 0xFFU),
            static_cast<std::uint8_t>(hex >> 8 & 0xFFU), static_cast<std::uint8_t>(hex & 0xFFU)};
}

/// What a role looks like as a line or a fill, and as text.
struct Inks {
    Rgb mark;
    Rgb text;
};

constexpr Inks same(std::uint32_t hex) {
    return {rgb(hex), rgb(hex)};
}

Inks light_inks(Role role) {
    switch (role) {
    case Role::sheet:
        return same(0xFBFAF7);
    case Role::panel:
        return same(0xF1EFE8);
    case Role::hairline:
        return same(0xDDD9CF);
    case Role::ink:
        return same(0x1B1F24);
    case Role::quiet_ink:
    case Role::own_weight:
        return same(0x5B6470);
    case Role::skin:
        return same(0xD9CFC1);
    case Role::far_skin:
        return same(0xC6BBAB);
    case Role::shirt:
        return same(0xC3C9CE);
    case Role::far_shirt:
        return same(0xB1B8BE);
    case Role::shorts:
        return same(0xA9B0B7);
    case Role::far_shorts:
        return same(0x98A0A8);
    case Role::shoe:
        return same(0x8D949B);
    case Role::far_shoe:
        return same(0x7F868E);
    case Role::hair:
        return same(0x8F8678);
    case Role::iron:
        return same(0x3A4048);
    case Role::pad:
        return same(0xCFCBC1);
    case Role::beam:
        return same(0xF6F4EE);
    case Role::muscle:
        return same(0x9CC6E2);
    case Role::resting_muscle:
        return same(0xC9A9A0);
    case Role::effort:
    case Role::right:
        return {rgb(0x0072B2), rgb(0x006BA8)};
    case Role::load:
    case Role::wrong:
        return {rgb(0xD55E00), rgb(0xA84700)};
    case Role::reaction:
        return {rgb(0x009E73), rgb(0x00724F)};
    }
    return same(0x1B1F24);
}

Inks dark_inks(Role role) {
    switch (role) {
    case Role::sheet:
        return same(0x14181D);
    case Role::panel:
        return same(0x1E242B);
    case Role::hairline:
        return same(0x343C46);
    case Role::ink:
        return same(0xECEFF2);
    case Role::quiet_ink:
    case Role::own_weight:
        return same(0x9AA4B0);
    case Role::skin:
        return same(0x857A6E);
    case Role::far_skin:
        return same(0x6A6158);
    case Role::shirt:
        return same(0x56616D);
    case Role::far_shirt:
        return same(0x454F5A);
    case Role::shorts:
        return same(0x3F4852);
    case Role::far_shorts:
        return same(0x333B44);
    case Role::shoe:
        return same(0x69737E);
    case Role::far_shoe:
        return same(0x545D67);
    case Role::hair:
        return same(0xA0957F);
    case Role::iron:
        return same(0xB4BDC7);
    case Role::pad:
        return same(0x39424C);
    case Role::beam:
        return same(0x222931);
    case Role::muscle:
        return same(0x2F6C94);
    case Role::resting_muscle:
        return same(0x6B4F4A);
    case Role::effort:
    case Role::right:
        return same(0x56B4E9);
    case Role::load:
    case Role::wrong:
        return same(0xE69F00);
    case Role::reaction:
        return {rgb(0x009E73), rgb(0x1FBF92)};
    }
    return same(0xECEFF2);
}

// Every text and mark reaches 7:1 on black; what only separates reaches 3:1.
Inks high_contrast_inks(Role role) {
    switch (role) {
    case Role::sheet:
        return same(0x000000);
    case Role::panel:
        return same(0x1C1C1C);
    case Role::hairline:
        return same(0x8A8A8A);
    case Role::ink:
        return same(0xFFFFFF);
    case Role::quiet_ink:
    case Role::own_weight:
        return same(0xD9DDE2);
    case Role::skin:
        return same(0x5E5851);
    case Role::far_skin:
        return same(0x423D38);
    case Role::shirt:
        return same(0x464E57);
    case Role::far_shirt:
        return same(0x32383F);
    case Role::shorts:
        return same(0x32393F);
    case Role::far_shorts:
        return same(0x24292E);
    case Role::shoe:
        return same(0x59626B);
    case Role::far_shoe:
        return same(0x434A52);
    case Role::hair:
        return same(0x8A8170);
    case Role::iron:
        return same(0xE4E8EC);
    case Role::pad:
        return same(0x33383E);
    case Role::beam:
        return same(0x000000);
    case Role::muscle:
        return same(0x24608F);
    case Role::resting_muscle:
        return same(0x5B3F3A);
    case Role::effort:
    case Role::right:
        return same(0x6EC6FF);
    case Role::load:
    case Role::wrong:
        return same(0xFFB000);
    case Role::reaction:
        return same(0x2EE6B0);
    }
    return same(0xFFFFFF);
}

// On paper the hues may be gone: effort, load and ink are kept far apart in lightness, the
// reaction differs by its dots and the own weight by its thin shaft.
Inks print_inks(Role role) {
    switch (role) {
    case Role::sheet:
        return same(0xFFFFFF);
    case Role::panel:
        return same(0xF4F4F2);
    case Role::hairline:
        return same(0xC9CCD0);
    case Role::ink:
        return same(0x14171A);
    case Role::quiet_ink:
    case Role::own_weight:
        return same(0x58606A);
    case Role::skin:
        return same(0xDEDEDE);
    case Role::far_skin:
        return same(0xCECECE);
    case Role::shirt:
        return same(0xC8C8C8);
    case Role::far_shirt:
        return same(0xB9B9B9);
    case Role::shorts:
        return same(0xAFAFAF);
    case Role::far_shorts:
        return same(0xA0A0A0);
    case Role::shoe:
        return same(0x8E8E8E);
    case Role::far_shoe:
        return same(0x808080);
    case Role::hair:
        return same(0x868686);
    case Role::iron:
        return same(0x3C3C3C);
    case Role::pad:
        return same(0xD2D2D2);
    case Role::beam:
        return same(0xFFFFFF);
    case Role::muscle:
        return same(0xB4C3CF);
    case Role::resting_muscle:
        return same(0xA9A9A9);
    case Role::effort:
    case Role::right:
        return same(0x004C7D);
    case Role::load:
    case Role::wrong:
        return {rgb(0xDC6A10), rgb(0xA84700)};
    case Role::reaction:
        return {rgb(0x009E73), rgb(0x00724F)};
    }
    return same(0x14171A);
}

Inks inks_of(Role role, Look look) {
    switch (look) {
    case Look::light:
        return light_inks(role);
    case Look::dark:
        return dark_inks(role);
    case Look::high_contrast:
        return high_contrast_inks(role);
    case Look::print:
        return print_inks(role);
    }
    return light_inks(role);
}

/// Source: WCAG 2.2, "relative luminance", which uses the transfer function of IEC 61966-2-1.
double relative_luminance(Rgb colour) {
    const auto linear = [](std::uint8_t channel) {
        const double c = channel / 255.0;
        return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) +
           0.0722 * linear(colour.blue);
}

} // namespace

Rgb colour_of(Role role, Look look) {
    return inks_of(role, look).mark;
}

Rgb text_colour_of(Role role, Look look) {
    return inks_of(role, look).text;
}

double contrast_ratio(Rgb one, Rgb other) {
    const double a = relative_luminance(one);
    const double b = relative_luminance(other);
    return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05);
}

} // namespace steelyard::scene

#include "catch.h"
#include "scene/palette.h"

#include <cmath>
#include <cstdlib>
#include <string>
#include <vector>

using namespace steelyard::scene;

namespace {

struct Named {
    Role role;
    const char* name;
};

const std::vector<Named> kWritten{
    {Role::ink, "ink"},     {Role::quiet_ink, "quiet ink"},   {Role::effort, "effort"},
    {Role::load, "load"},   {Role::own_weight, "own weight"}, {Role::reaction, "reaction"},
    {Role::right, "right"}, {Role::wrong, "wrong"},
};

const std::vector<Look> kLooks{Look::light, Look::dark, Look::print};

/// Lightness L* of CIE 1976 L*a*b*, 0 black to 100 white: what remains of a colour on a grey
/// printer. Source: CIE 15:2004, section 8.2.1; white point luminance 1.
double lightness(Rgb colour) {
    // The contrast against black gives the luminance back: (Y + 0.05) / 0.05.
    const double luminance = contrast_ratio(colour, Rgb{0, 0, 0}) * 0.05 - 0.05;
    return luminance > 216.0 / 24389.0 ? 116.0 * std::cbrt(luminance) - 16.0
                                       : luminance * 24389.0 / 27.0;
}

} // namespace

TEST_CASE("contrast is 21 for black on white and 1 for a colour on itself") {
    // Source: WCAG 2.2, "contrast ratio": ratios range from 1 to 21.
    CHECK(contrast_ratio({0, 0, 0}, {255, 255, 255}) == Approx(21.0).epsilon(1e-12));
    CHECK(contrast_ratio({12, 200, 90}, {12, 200, 90}) == Approx(1.0).epsilon(1e-12));
}

TEST_CASE("contrast agrees with the published threshold grey") {
    // Source: WCAG 2.2 understanding documents name #767676 as the lightest grey that passes
    // 4.5:1 on white, at 4.54:1, and #777777 as failing. Tolerance: two printed decimals.
    CHECK(contrast_ratio({0x76, 0x76, 0x76}, {255, 255, 255}) == Approx(4.54).margin(0.005));
    CHECK(contrast_ratio({0x77, 0x77, 0x77}, {255, 255, 255}) < 4.5);
}

TEST_CASE("text of every meaning reaches 4.5 to 1 on the sheet and on the panel") {
    for (const Look look : kLooks) {
        for (const Named& written : kWritten) {
            INFO(written.name << " in look " << static_cast<int>(look));
            const Rgb text = text_colour_of(written.role, look);
            CHECK(contrast_ratio(text, colour_of(Role::sheet, look)) >= 4.5);
            CHECK(contrast_ratio(text, colour_of(Role::panel, look)) >= 4.5);
        }
    }
}

TEST_CASE("marks of every meaning reach 3 to 1 on the sheet") {
    for (const Look look : kLooks) {
        for (const Named& mark : kWritten) {
            INFO(mark.name << " in look " << static_cast<int>(look));
            CHECK(contrast_ratio(colour_of(mark.role, look), colour_of(Role::sheet, look)) >= 3.0);
        }
    }
}

TEST_CASE("effort and load on the panel of the balance strip reach 3 to 1") {
    for (const Look look : kLooks)
        for (const Role role : {Role::effort, Role::load})
            CHECK(contrast_ratio(colour_of(role, look), colour_of(Role::panel, look)) >= 3.0);
}

TEST_CASE("effort, load and ink stay apart on a grey printer") {
    // 15 steps of L* are told apart at a glance on paper: judgement, no source.
    const double ink = lightness(colour_of(Role::ink, Look::print));
    const double effort = lightness(colour_of(Role::effort, Look::print));
    const double load = lightness(colour_of(Role::load, Look::print));
    CHECK(effort - ink >= 15.0);
    CHECK(load - effort >= 15.0);
}

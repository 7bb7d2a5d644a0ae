#include "scene/marks/text_width.h"

#include <algorithm>
#include <array>

namespace steelyard::scene {

namespace {

/// Advance widths of the characters 32 to 126 of Inter Regular, digits levelled [em/1000].
constexpr std::array<short, 95> kRegular = {
    281, 278, 403, 631, 638, 812, 639, 222, 362, 362, 500, 659, 280, 460, 276, 357, 642, 642, 642,
    642, 642, 642, 642, 642, 642, 642, 276, 280, 659, 659, 659, 507, 936, 676, 651, 727, 719, 598,
    587, 743, 740, 264, 543, 652, 562, 889, 753, 761, 635, 761, 639, 638, 642, 741, 676, 949, 642,
    665, 625, 362, 357, 362, 469, 452, 497, 564, 621, 558, 621, 582, 361, 609, 591, 237, 237, 544,
    237, 869, 585, 597, 609, 609, 372, 523, 364, 581, 557, 812, 540, 557, 541, 362, 327, 362, 659};
/// SemiBold is wider by this much on average.
constexpr double kStrongWidening = 1.035;
constexpr double kAverage = 600.0;
constexpr double kThinSpace = 182.0;

bool continues_character(char byte) {
    return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U;
}

} // namespace

double text_width_px(std::string_view utf8, TextSize size, bool strong, double scale) {
    double thousandths = 0.0;
    for (std::size_t i = 0; i < utf8.size(); ++i) {
        const char byte = utf8[i];
        if (continues_character(byte))
            continue;
        const bool thin = utf8.substr(i, 3) == "\u2009" || utf8.substr(i, 3) == "\u202F";
        if (byte >= ' ' && byte <= '~')
            thousandths += kRegular[static_cast<std::size_t>(byte - ' ')];
        else
            thousandths += thin ? kThinSpace : kAverage;
    }
    const double em_px = text_height_px(size) * scale;
    return thousandths / 1000.0 * em_px * (strong ? kStrongWidening : 1.0);
}

std::vector<std::string> broken_lines(const std::string& utf8, TextSize size, double scale,
                                      double width_px) {
    std::vector<std::string> lines;
    std::size_t start = 0;
    while (start < utf8.size()) {
        const std::size_t end = std::min(utf8.find(' ', start), utf8.size());
        const std::string word = utf8.substr(start, end - start);
        start = end + 1;
        const std::string longer = lines.empty() ? word : lines.back() + ' ' + word;
        if (lines.empty() || text_width_px(longer, size, false, scale) > width_px)
            lines.push_back(word);
        else
            lines.back() = longer;
    }
    return lines;
}

} // namespace steelyard::scene

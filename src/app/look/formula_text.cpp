#include "app/look/formula_text.h"

#include "words/formula_parts.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace steelyard::app {

namespace {

/// Of the size that the line has; the drop too. Smaller indices are hard to read at 100 %.
constexpr float kIndexSize = 0.8F;
constexpr float kIndexDrop = 0.2F;

/// A word of the line in its parts, as wide as it is drawn.
struct SetWord {
    std::vector<words::FormulaPart> parts;
    float width_px = 0.0F;
};

float part_height(const Style& style, const TextStyle& how, const words::FormulaPart& part) {
    return (part.index ? kIndexSize : 1.0F) * style.fonts.height(how.size);
}

float part_width(const Style& style, const TextStyle& how, const words::FormulaPart& part) {
    return style.fonts.get(how.size, how.strong)
        ->CalcTextSizeA(part_height(style, how, part), 1.0e9F, 0.0F, part.text.data(),
                        part.text.data() + part.text.size())
        .x;
}

SetWord set_word(const Style& style, const TextStyle& how, std::string_view word) {
    SetWord set{words::formula_parts(word), 0.0F};
    for (const words::FormulaPart& part : set.parts)
        set.width_px += part_width(style, how, part);
    return set;
}

void draw_word(ImDrawList& list, const Style& style, const TextStyle& how, ImVec2 at,
               const SetWord& word) {
    ImFont* const font = style.fonts.get(how.size, how.strong);
    for (const words::FormulaPart& part : word.parts) {
        const float height_px = part_height(style, how, part);
        const float drop_px = part.index ? kIndexDrop * style.em_px(how.size) : 0.0F;
        const ImVec2 corner{std::round(at.x),
                            std::round(at.y + drop_px - baseline_of(*font, height_px))};
        list.AddText(font, height_px, corner, style.text(how.role), part.text.data(),
                     part.text.data() + part.text.size());
        at.x += part_width(style, how, part);
    }
}

/// Takes the word at the front of a text, and the blank after it.
std::string_view take_word(std::string_view& text) {
    const std::size_t end = std::min(text.find(' '), text.size());
    const std::string_view word = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    return word;
}

} // namespace

float draw_formula(ImDrawList& list, const Style& style, const TextStyle& how, ImVec2 at,
                   float width_px, std::string_view text) {
    if (words::formula_parts(text).size() == 1)
        return draw_paragraph(list, style, how, at, width_px, text);
    const float blank_px = text_width(style, how, " ");
    const float step_px = line_height(style, how.size);
    for (std::string_view rest = text; !rest.empty();) {
        // What is heard is the line as it is written, of the words that stand on it.
        const char* const begin = rest.data();
        const char* end = begin;
        float x = 0.0F;
        while (!rest.empty()) {
            std::string_view after = rest;
            const std::string_view next = take_word(after);
            const SetWord word = set_word(style, how, next);
            if (x > 0.0F && x + word.width_px > width_px)
                break;
            draw_word(list, style, how, {at.x + x, at.y}, word);
            x += word.width_px + blank_px;
            end = next.data() + next.size();
            rest = after;
        }
        if (style.narration != nullptr)
            style.narration->add_text({begin, static_cast<std::size_t>(end - begin)}, {at.x, at.y},
                                      x - blank_px, style.em_px(how.size));
        at.y += step_px;
    }
    return at.y;
}

} // namespace steelyard::app

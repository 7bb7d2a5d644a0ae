#include "app/widgets/told_text.h"

#include "app/look/formula_text.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "words/formula_parts.h"

#include <algorithm>
#include <functional>

namespace steelyard::app {

namespace {

using scene::Role;

/// A term as it stands on a line.
struct Underlined {
    std::size_t term = 0;
    ImVec2 from; ///< left end, on the baseline
    float width_px = 0.0F;
};

/// Where the spots of a text lie once it is broken into lines.
std::vector<Underlined> underlined(const Style& style, const TextStyle& how, ImVec2 at,
                                   float width_px, std::string_view text,
                                   const std::vector<lesson::TermSpot>& spots) {
    std::vector<Underlined> result;
    for (const std::string_view line : broken_lines(style, how, text, width_px)) {
        const auto begin = static_cast<std::size_t>(line.data() - text.data());
        for (const lesson::TermSpot& spot : spots) {
            const std::size_t from = std::max(spot.begin, begin);
            const std::size_t to = std::min(spot.end, begin + line.size());
            if (from >= to)
                continue;
            const float x = text_width(style, how, line.substr(0, from - begin));
            result.push_back({spot.term,
                              {at.x + x, at.y},
                              text_width(style, how, text.substr(from, to - from))});
        }
        at.y += line_height(style, how.size);
    }
    return result;
}

using Press = std::function<bool(const Underlined&, ImVec2 corner, ImVec2 size)>;

float draw_with_terms(ImDrawList& list, const Style& style, const char* id, const TextStyle& how,
                      ImVec2 at, float width_px, std::string_view text, const Press& is_pressed) {
    const bool is_formula = words::formula_parts(text).size() > 1; // its words are set otherwise
    if (style.terms != nullptr && !is_formula) {
        ImGui::PushID(id);
        int number = 0;
        for (const Underlined& one :
             underlined(style, how, at, width_px, text, style.terms->spots(text))) {
            ImGui::PushID(number++);
            const ImVec2 corner{one.from.x, one.from.y - style.em_px(how.size)};
            const ImVec2 size{one.width_px, 1.3F * style.em_px(how.size)};
            style.terms->show(one.term);
            if (is_pressed(one, corner, size))
                style.terms->press(one.term);
            const float y = one.from.y + style.px(3.0F);
            const bool hovered =
                ImGui::IsMouseHoveringRect(corner, {corner.x + size.x, corner.y + size.y}, false);
            list.AddLine({one.from.x, y}, {one.from.x + one.width_px, y},
                         style.mark(hovered ? Role::ink : Role::quiet_ink, hovered ? 1.0 : 0.55),
                         style.px(1.0F));
            ImGui::PopID();
        }
        ImGui::PopID();
    }
    return draw_formula(list, style, how, at, width_px, text);
}

} // namespace

void TermLinks::begin_frame() {
    first_.reset();
    pressed_.reset();
}

std::vector<lesson::TermSpot> TermLinks::spots(std::string_view text) {
    if (!finder_) {
        const auto terms = lesson::read_glossary(assets_ / "pages" / "glossary.toml");
        finder_.emplace(terms ? *terms : std::vector<lesson::Term>{});
    }
    return finder_->spots(text);
}

void TermLinks::show(std::size_t term) {
    if (!first_)
        first_ = term;
}

float draw_told(ImDrawList& list, const Style& style, const char* id, const TextStyle& how,
                ImVec2 at, float width_px, std::string_view text) {
    return draw_with_terms(list, style, id, how, at, width_px, text,
                           [&](const Underlined&, ImVec2 corner, ImVec2 size) {
                               return press_area(style, "term", corner, size);
                           });
}

float draw_told_on_stage(const Style& style, const char* id, const TextStyle& how, ImVec2 at,
                         float width_px, std::string_view text) {
    ImDrawList& list = *ImGui::GetBackgroundDrawList();
    return draw_with_terms(list, style, id, how, at, width_px, text,
                           [&](const Underlined& one, ImVec2 corner, ImVec2 size) {
                               const std::string area = std::string(id) + std::to_string(one.term);
                               begin_area(area.c_str(), scene::Point(corner.x, corner.y),
                                          scene::Point(size.x, size.y));
                               const bool pressed = press_area(style, "term", corner, size);
                               end_area();
                               return pressed;
                           });
}

} // namespace steelyard::app

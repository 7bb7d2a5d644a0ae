#include "app/handout/topic_view.h"

#include "app/look/text_styles.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "app/widgets/column_pen.h"
#include "setup/toml/letters.h"
#include "words/counted.h"

#include <imgui_stdlib.h>

#include <algorithm>

namespace steelyard::app {

namespace {

using scene::Role;
using scene::TextSize;

/// A box that is filled where the topic is chosen, so that colour is not the only signal.
void draw_box(const Style& style, ImDrawList& list, ImVec2 corner, bool chosen) {
    const float side = style.px(12.0F);
    const ImVec2 end{corner.x + side, corner.y + side};
    list.AddRect(corner, end, style.mark(Role::ink), style.px(2.0F), 0, style.px(1.5F));
    if (!chosen)
        return;
    const ImVec2 tick[] = {{corner.x + 0.2F * side, corner.y + 0.5F * side},
                           {corner.x + 0.45F * side, corner.y + 0.78F * side},
                           {corner.x + 0.85F * side, corner.y + 0.2F * side}};
    list.AddPolyline(tick, 3, style.mark(Role::ink), 0, style.px(2.5F));
}

/// @return true when the title was changed
bool draw_title(const Style& style, ColumnPen& pen, std::string& title) {
    pen.line(kCaption, "Title of the sheet");
    pen.skip(8.0F);
    ImGui::SetCursorScreenPos({pen.left(), pen.y()});
    ImGui::SetNextItemWidth(pen.width());
    const bool changed = ImGui::InputText("##title", &title);
    if (style.narration != nullptr)
        style.narration->add_text(title, {pen.left(), pen.y() + style.px(23.0F)}, pen.width(),
                                  style.em_px(TextSize::body));
    if (setup::fault_of_short_text(title))
        title = setup::typed_name(title);
    pen.skip(60.0F);
    return changed;
}

/// A topic in its row. @return true when it was pressed
bool draw_topic(const Style& style, ColumnPen& pen, const problems::Skill& skill, bool chosen) {
    ImGui::PushID(skill.id.c_str());
    const float height_px = style.px(26.0F);
    const bool pressed = press_area(style, "topic", {pen.left() - style.px(4.0F), pen.y()},
                                    {pen.width() + style.px(8.0F), height_px});
    const bool hovered = ImGui::IsItemHovered();
    ImGui::PopID();
    draw_box(style, pen.list(), {pen.left(), pen.y() + style.px(7.0F)}, chosen);
    const TextStyle how{TextSize::body, chosen, chosen || hovered ? Role::ink : Role::quiet_ink};
    draw_text(pen.list(), style, how, {pen.left() + style.px(22.0F), pen.y() + style.px(18.0F)},
              shortened(style, how, skill.title, pen.width() - style.px(22.0F)));
    pen.skip_px(height_px);
    return pressed;
}

std::string how_many(const publish::SheetChoice& choice) {
    const auto topics = static_cast<std::int64_t>(choice.skills.size());
    if (topics == 0)
        return "None chosen: the questions come from all of them.";
    return words::counted(topics * choice.each, "question") + ".";
}

} // namespace

TopicWishes draw_topics(const Style& style, const scene::Point& corner_px,
                        const scene::Point& size_px, const problems::Bank& bank, std::size_t kept,
                        const TopicState& state, const publish::SheetChoice& choice) {
    TopicWishes wishes;
    begin_area("topics", corner_px, size_px, true);
    ImGui::PushID(static_cast<int>(kept));
    Layout part;
    part.column_at_px = corner_px - scene::Point(24.0, 0.0);
    part.column_px = size_px + scene::Point(36.0, 0.0);
    ColumnPen pen(style, part);
    pen.skip(18.0F);
    publish::SheetChoice next = choice;
    draw_title(style, pen, next.title);
    pen.line(kStrong, "Topics");
    pen.skip(20.0F);
    pen.paragraph(kCaption, how_many(choice));
    pen.skip(-8.0F);
    for (const problems::Skill& skill : bank.skills) {
        const bool chosen =
            std::find(choice.skills.begin(), choice.skills.end(), skill.id) != choice.skills.end();
        if (draw_topic(style, pen, skill, chosen))
            next = publish::toggled(std::move(next), skill.id);
    }
    pen.skip(16.0F);
    if (main_button(style, "save", {pen.left(), pen.y()}, pen.width(), "Save as a blueprint"))
        wishes.save = true;
    pen.skip_px(main_button_height(style));
    pen.skip(24.0F);
    if (!state.said.empty())
        pen.paragraph(kFault, state.said);
    pen.paragraph(kCaption, "It then stands among the sheets, as a text file of your own.");
    pen.finish(12.0F);
    ImGui::PopID();
    end_area();
    if (!(next == choice))
        wishes.changed = std::move(next);
    return wishes;
}

} // namespace steelyard::app

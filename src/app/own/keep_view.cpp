#include "app/own/keep_view.h"

#include "app/platform/folders.h"
#include "app/platform/key.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "app/widgets/keyboard_wish.h"
#include "app/widgets/pressed_key.h"
#include "app/widgets/word_row.h"
#include "setup/toml/letters.h"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <algorithm>

namespace steelyard::app {

namespace {

using scene::Role;
using scene::TextSize;

enum class KeepWish {
    same_file, ///< in the file that it came from, renamed where the name is another
    new_file,
};

std::string free_name(const OwnSetups& own, const std::string& wanted) {
    std::vector<std::string> faults;
    const std::vector<OwnSetup> all = own.all(faults);
    const auto is_taken = [&](const std::string& name) {
        return std::any_of(all.begin(), all.end(),
                           [&](const OwnSetup& one) { return head_of(one.setup).name == name; });
    };
    constexpr std::size_t kMostOfIt = setup::kMostLetters - 5; // a number stands after it
    std::string name = wanted;
    for (int number = 2; is_taken(name); ++number)
        name = fmt::format("{} {}", setup::short_text(wanted, kMostOfIt), number);
    return name;
}

void keep(const OwnSetups& own, KeepWish wish, KeepState& state, KeepFrame& frame) {
    const bool renamed = state.name != head_of(state.setup).name;
    const auto kept = wish == KeepWish::new_file ? own.keep_new(state.setup, state.name)
                      : renamed ? own.keep_renamed(state.setup, state.name, *state.file)
                                : own.keep_again(state.setup, *state.file);
    if (!kept) {
        state.fault = kept.error();
        state.wants_keyboard = true;
        return;
    }
    frame.kept = *kept;
    frame.close = true;
}

/// @return true when Enter ended it
bool draw_name(ImVec2 at, float width_px, KeepState& state, KeepFrame& frame) {
    ImGui::SetCursorScreenPos(at);
    ImGui::SetNextItemWidth(width_px);
    if (gives_keyboard(state.wants_keyboard))
        state.wants_keyboard = false;
    const bool entered = ImGui::InputTextWithHint("##name", "Its name", &state.name,
                                                  ImGuiInputTextFlags_EnterReturnsTrue |
                                                      ImGuiInputTextFlags_AutoSelectAll);
    if (ImGui::IsItemDeactivated() && is_pressed(ImGuiKey_Escape))
        frame.close = true;
    if (setup::fault_of_short_text(state.name))
        state.name = setup::typed_name(state.name);
    return entered;
}

/// The setup as text for the clipboard, and what cannot be put there.
/// @return the baseline below which the next thing may stand
float draw_copying(const Style& style, ImVec2 at, float width_px, KeepState& state) {
    if (word_button(style, "copy", at, "Copy it as text", false)) {
        ImGui::SetClipboardText(setup::write_setup(state.setup).c_str());
        state.copied = "Its text is in the clipboard.";
    }
    const std::string said =
        state.copied.empty() ? "For an e-mail, or a file of your own. A picture cannot be put into "
                               "the clipboard from here: write one below, and insert its file."
                             : state.copied;
    return draw_paragraph(*ImGui::GetWindowDrawList(), style,
                          {TextSize::caption, false, Role::quiet_ink},
                          {at.x, at.y + style.px(24.0F)}, width_px, said);
}

/// The kinds of pictures, and what has come of the last one.
/// @return the baseline below which the next thing may stand
float draw_pictures(const Style& style, ImVec2 at, float width_px, KeepState& state,
                    KeepFrame& frame) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    draw_text(list, style, {TextSize::reading, true, Role::ink}, at, "Or take a picture along");
    at.y += style.px(36.0F);
    look_after(state.taking);
    if (state.taking.is_busy()) {
        const std::string share =
            fmt::format("Painting: {:.0f} %", 100.0 * state.taking.work->share());
        draw_text(list, style, {TextSize::body, false, Role::ink}, at, share);
        const float word_px = text_width(style, {TextSize::body, false}, "Painting: 100 %");
        if (word_button(style, "stop", {at.x + word_px + style.px(20.0F), at.y}, "Stop", false))
            state.taking.work->stop();
        return at.y;
    }
    std::vector<RowWord> shapes;
    for (const PictureShape& shape : kPictureShapes)
        shapes.push_back({shape.word, shapes.size() == state.shape});
    shapes.push_back({"see-through", !state.has_sheet});
    if (can_have_plot(state.setup))
        shapes.push_back({"with the plot", state.plot});
    if (const auto pressed = draw_word_row(style, "shapes", shapes, at, at.x + width_px)) {
        if (*pressed < std::size(kPictureShapes))
            state.shape = *pressed;
        else if (*pressed == std::size(kPictureShapes))
            state.has_sheet = !state.has_sheet;
        else
            state.plot = !state.plot;
    }
    at.y += style.px(36.0F);
    std::vector<RowWord> words;
    for (const PictureKind& kind : state.kinds)
        words.push_back({kind.word, false});
    if (const auto pressed = draw_word_row(style, "pictures", words, at, at.x + width_px))
        frame.picture = state.kinds[*pressed];
    if (state.taking.said.empty())
        return at.y;
    const Role role = state.taking.is_fault ? Role::wrong : Role::quiet_ink;
    return draw_paragraph(list, style, {TextSize::caption, false, role},
                          {at.x, at.y + style.px(28.0F)}, width_px, state.taking.said);
}

} // namespace

KeepState open_keep(const OwnSetups& own, setup::Setup setup, std::optional<OwnFile> file,
                    const publish::Tools& tools) {
    KeepState state;
    state.kinds = picture_kinds(setup, tools);
    state.name = file ? head_of(setup).name : free_name(own, head_of(setup).name);
    state.setup = std::move(setup);
    state.file = std::move(file);
    return state;
}

KeepFrame draw_keep(const Style& style, const scene::Point& window_px,
                    const std::vector<KeyPress>& keys, const OwnSetups& own, KeepState& state) {
    KeepFrame frame;
    std::optional<KeepWish> wish;
    const KeepWish usual = state.file ? KeepWish::same_file : KeepWish::new_file;
    for (const KeyPress& key : keys) // those that the name has no use for
        if (key.key == key::kEscape)
            frame.close = true;
        else if (key.key == key::kEnter || key.key == key::kKeypadEnter)
            wish = usual;
    begin_area("keep", scene::Point::Zero(), window_px, true);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float left_px = 24.0F;
    const float width_px =
        std::min(static_cast<float>(window_px.x()) - 2.0F * left_px, style.px(520.0F));
    float y = style.px(48.0F) - ImGui::GetScrollY();
    draw_text(list, style, {TextSize::reading, true, Role::ink}, {left_px, y},
              "Save as one of yours");
    y += style.px(24.0F);
    if (draw_name({left_px, y}, width_px, state, frame))
        wish = usual;
    y += style.px(60.0F);
    if (!state.fault.empty())
        y = draw_paragraph(list, style, {TextSize::body, false, Role::wrong}, {left_px, y},
                           width_px, state.fault) +
            style.px(8.0F);
    const bool renamed = state.name != head_of(state.setup).name;
    if (state.file) {
        if (main_button(style, "same", {left_px, y}, width_px,
                        renamed ? "Save under the new name" : "Save"))
            wish = KeepWish::same_file;
        y += main_button_height(style) + style.px(8.0F);
        if (side_button(style, "new", {left_px, y}, width_px, "Save as another one", renamed))
            wish = KeepWish::new_file;
    } else if (main_button(style, "new", {left_px, y}, width_px, "Save")) {
        wish = KeepWish::new_file;
    }
    y += main_button_height(style) + style.px(32.0F);
    if (!own.folder().empty())
        y = draw_paragraph(list, style, {TextSize::caption, false, Role::quiet_ink}, {left_px, y},
                           width_px,
                           "Saved in " + where_kept(own.folder()) +
                               ", as a text file that you can read and edit.");
    y = draw_copying(style, {left_px, y + style.px(32.0F)}, width_px, state);
    y = draw_pictures(style, {left_px, y + style.px(40.0F)}, width_px, state, frame);
    if (word_button(style, "leave", {left_px, y + style.px(32.0F)}, "Back", false))
        frame.close = true;
    ImGui::SetCursorScreenPos({0.0F, y + style.px(56.0F)});
    ImGui::Dummy({1.0F, 1.0F});
    end_area();
    if (wish)
        keep(own, *wish, state, frame);
    return frame;
}

} // namespace steelyard::app

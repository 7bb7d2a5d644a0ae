#include "app/widgets/press_letters.h"

#include "app/platform/key.h"

#include <algorithm>
#include <utility>

namespace steelyard::app {

namespace {

using scene::Role;
using scene::TextSize;

constexpr std::size_t kLetters = 26;
constexpr std::size_t kMost = kLetters * kLetters;

char letter(std::size_t index) {
    return static_cast<char>('A' + index % kLetters);
}

/// The letter that a typed character stands for; 0 for any other.
char letter_typed(unsigned character) {
    if (character >= 'a' && character <= 'z')
        character -= 'a' - 'A';
    return character >= 'A' && character <= 'Z' ? static_cast<char>(character) : '\0';
}

} // namespace

std::string letters_of(std::size_t index, std::size_t count) {
    if (count <= kLetters)
        return {letter(index)};
    return {letter(index / kLetters), letter(index)};
}

void PressLetters::show() {
    shown_ = true;
    typed_.clear();
    ImGui::SetWindowFocus(nullptr); // letters are not to go into a text field
}

void PressLetters::begin_frame(const std::vector<KeyPress>& keys) {
    offered_last_ = std::min(std::exchange(offered_, 0), kMost);
    bring_up_ = 0;
    if (!shown_)
        return;
    for (const KeyPress& key : keys) {
        const char typed = letter_typed(key.character);
        if (typed != '\0')
            typed_ += typed;
        else if (key.key == key::kBackspace && !typed_.empty())
            typed_.pop_back();
        else if (key.key == key::kDown || key.key == key::kUp)
            bring_up_ = key.key == key::kDown ? 1 : -1;
        else if (key.key == key::kEscape || key.key == key::kF9)
            shown_ = false;
    }
    const std::size_t length = letters_of(0, offered_last_).size();
    shown_ = shown_ && typed_.size() <= length && !ImGui::IsMouseClicked(ImGuiMouseButton_Left);
}

bool PressLetters::offer(const Style& style) {
    const std::size_t index = offered_++;
    if (!shown_ || index >= offered_last_)
        return false;
    if (!ImGui::IsItemVisible()) {
        const bool below = ImGui::GetItemRectMin().y > ImGui::GetWindowPos().y;
        // Of all that lies above the last one asks last, and it is the nearest.
        if (bring_up_ == (below ? 1 : -1)) {
            ImGui::SetScrollHereY(below ? 1.0F : 0.0F);
            bring_up_ = below ? 0 : bring_up_;
        }
        return false;
    }
    const std::string letters = letters_of(index, offered_last_);
    if (letters == typed_) {
        shown_ = false;
        return true;
    }
    if (letters.compare(0, typed_.size(), typed_) == 0)
        draw(style, letters);
    return false;
}

void PressLetters::draw(const Style& style, const std::string& letters) const {
    const TextStyle how{TextSize::caption, true, Role::sheet};
    const ImVec2 corner = ImGui::GetItemRectMin();
    const float pad_px = style.px(4.0F);
    const float width_px = text_width(style, how, letters) + 2.0F * pad_px;
    ImDrawList& list = *ImGui::GetForegroundDrawList();
    list.AddRectFilled(corner, {corner.x + width_px, corner.y + style.px(18.0F)},
                       style.mark(Role::ink), 3.0F);
    draw_text(list, style, how, {corner.x + pad_px, corner.y + style.px(13.5F)}, letters);
}

} // namespace steelyard::app

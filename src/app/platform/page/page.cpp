#include "app/platform/page/page.h"

#include "app/platform/clock.h"
#include "app/platform/key.h"

#include <imgui.h>
#include <imgui_internal.h>

#include <algorithm>
#include <cmath>
#include <emscripten.h>
#include <utility>

namespace steelyard::app {

namespace {

/// The browser calls C functions and hands them no address: the page whose canvas it is.
Page* the_page = nullptr;

ImVec2 px(const scene::Point& at) {
    return {static_cast<float>(at.x()), static_cast<float>(at.y())};
}

/// The area at a place that holds more than fits; null when there is none, or another lies upon it.
ImGuiWindow* scrolled_at(const scene::Point& at_px) {
    const ImVector<ImGuiWindow*>& areas = ImGui::GetCurrentContext()->Windows;
    for (int i = areas.Size - 1; i >= 0; --i) {
        ImGuiWindow* const area = areas[i];
        const bool takes_it = area->Active && (area->Flags & ImGuiWindowFlags_NoMouseInputs) == 0 &&
                              area->Rect().Contains(px(at_px));
        if (takes_it)
            return area->ScrollMax.y > 0.0F ? area : nullptr;
    }
    return nullptr;
}

void stir(void* /*nothing*/) {
    if (the_page != nullptr)
        the_page->incoming.anything = true;
}
} // namespace

Page::Page() {
    the_page = this;
}

Page::~Page() {
    the_page = nullptr;
}

void Page::feed(const PointerAct& act) {
    incoming.anything = true;
    has_moved_ = has_moved_ || act.kind == PointerAct::Kind::move;
    incoming.pointer_px = act.at_px;
    if (act.kind == PointerAct::Kind::press) {
        incoming.press(act.at_px, now_s(), act.button == PointerButton::left);
        pressed_[static_cast<std::size_t>(act.button)] = true;
        down_[static_cast<std::size_t>(act.button)] = true;
    } else if (act.kind == PointerAct::Kind::release) {
        down_[static_cast<std::size_t>(act.button)] = false;
        // The last of the way is still dragged: the release comes with the next frame.
        pressed_[static_cast<std::size_t>(act.button)] =
            pressed_[static_cast<std::size_t>(act.button)] || has_moved_;
    } else if (act.kind == PointerAct::Kind::wheel) {
        wheel_ += act.notches;
    } else if (act.kind == PointerAct::Kind::scroll) {
        pull_px_ += act.scroll_px;
    } else if (act.kind == PointerAct::Kind::double_click) {
        incoming.double_clicked = true;
        incoming.pressed_at_px = act.at_px;
    }
    is_pointer_gone_ = act.kind == PointerAct::Kind::leave;
}

void Page::pointer(TouchPhase phase, int id, bool is_touch, PointerButton button,
                   const scene::Point& at_px) {
    if (is_touch) {
        last_was_touch_ = true;
        const bool scrolls = scrolled_at(at_px) != nullptr;
        for (const PointerAct& act : gestures_.take({phase, id, at_px, now_s(), scrolls}))
            feed(act);
        // Nothing comes in while a finger lies still, and that does something in the end.
        if (const auto due_s = gestures_.due_s(); due_s && phase == TouchPhase::down)
            emscripten_async_call(stir, nullptr,
                                  static_cast<int>(std::ceil(1000.0 * (*due_s - now_s()))) + 1);
        return;
    }
    last_was_touch_ = false;
    switch (phase) {
    case TouchPhase::down:
        return feed({PointerAct::Kind::press, at_px, button});
    case TouchPhase::moved:
        return feed({PointerAct::Kind::move, at_px});
    case TouchPhase::up:
    case TouchPhase::cancelled:
        return feed({PointerAct::Kind::release, at_px, button});
    }
}

void Page::scroll(double notches) {
    feed({PointerAct::Kind::wheel, incoming.pointer_px, PointerButton::left, notches});
}

void Page::key(bool goes_down, int key, int modifiers) {
    incoming.anything = true;
    modifiers_ = modifiers;
    if (goes_down) {
        incoming.keys.push_back({key, modifiers, 0});
        keys_down_.insert(key);
        went_down_.insert(key);
    } else {
        keys_down_.erase(key);
    }
}

void Page::text(const char* utf8) {
    incoming.anything = true;
    typed_ += utf8;
    for (const char* at = utf8; *at != '\0';) {
        unsigned character = static_cast<unsigned char>(*at++);
        const int more = character >= 0xF0 ? 3 : character >= 0xE0 ? 2 : character >= 0xC0 ? 1 : 0;
        if (more > 0)
            character &= 0x3FU >> more;
        for (int i = 0; i < more && *at != '\0'; ++i)
            character = (character << 6U) | (static_cast<unsigned char>(*at++) & 0x3FU);
        incoming.keys.push_back({0, 0, character});
    }
}

void Page::lose_focus() {
    incoming.anything = true;
    keys_down_.clear();
    modifiers_ = 0;
}

void Page::feed_imgui() {
    for (const PointerAct& act : gestures_.wait(now_s()))
        feed(act);
    ImGuiIO& io = ImGui::GetIO();
    // A finger that goes presses what lies under it: the pointer goes when ImGui has heard of that.
    const bool was_down = io.MouseDown[0] || io.MouseDown[1] || io.MouseDown[2];
    const bool presses = pressed_[0] || pressed_[1] || pressed_[2];
    const bool is_gone = is_pointer_gone_ && !was_down && !presses;
    io.MousePos = is_gone ? ImVec2(-1.0e6F, -1.0e6F) : px(incoming.pointer_px);
    // A press that came and went between two frames is still one; ImGui hears of its end in the
    // next.
    for (std::size_t i = 0; i < down_.size(); ++i)
        io.MouseDown[i] = down_[i] || std::exchange(pressed_[i], false);
    has_moved_ = false;
    io.MouseWheel += static_cast<float>(std::exchange(wheel_, 0.0));
    const auto pull_px = static_cast<float>(std::exchange(pull_px_, 0.0));
    if (ImGuiWindow* const area = pull_px != 0.0F ? scrolled_at(incoming.pointer_px) : nullptr)
        ImGui::SetScrollY(area, std::clamp(area->Scroll.y - pull_px, 0.0F, area->ScrollMax.y));
    for (bool& one : io.KeysDown)
        one = false;
    for (const int key : keys_down_)
        io.KeysDown[key] = true;
    for (const int key : std::exchange(went_down_, {}))
        io.KeysDown[key] = true;
    io.KeyShift = (modifiers_ & key::kWithShift) != 0;
    io.KeyCtrl = (modifiers_ & key::kWithControl) != 0;
    io.KeyAlt = (modifiers_ & key::kWithAlt) != 0;
    io.AddInputCharactersUTF8(std::exchange(typed_, {}).c_str());
}

bool Page::owes_another_frame() const {
    bool held_too_long = false;
    for (std::size_t i = 0; i < down_.size(); ++i)
        held_too_long = held_too_long || (ImGui::GetIO().MouseDown[i] && !down_[i]);
    return held_too_long;
}

void Page::map_keys() {
    ImGuiIO& io = ImGui::GetIO();
    io.KeyMap[ImGuiKey_Tab] = key::kTab;
    io.KeyMap[ImGuiKey_LeftArrow] = key::kLeft;
    io.KeyMap[ImGuiKey_RightArrow] = key::kRight;
    io.KeyMap[ImGuiKey_UpArrow] = key::kUp;
    io.KeyMap[ImGuiKey_DownArrow] = key::kDown;
    io.KeyMap[ImGuiKey_PageUp] = key::kPageUp;
    io.KeyMap[ImGuiKey_PageDown] = key::kPageDown;
    io.KeyMap[ImGuiKey_Home] = key::kHome;
    io.KeyMap[ImGuiKey_End] = key::kEnd;
    io.KeyMap[ImGuiKey_Insert] = key::kInsert;
    io.KeyMap[ImGuiKey_Delete] = key::kDelete;
    io.KeyMap[ImGuiKey_Backspace] = key::kBackspace;
    io.KeyMap[ImGuiKey_Space] = key::kSpace;
    io.KeyMap[ImGuiKey_Enter] = key::kEnter;
    io.KeyMap[ImGuiKey_Escape] = key::kEscape;
    io.KeyMap[ImGuiKey_KeyPadEnter] = key::kKeypadEnter;
    io.KeyMap[ImGuiKey_A] = key::kA;
    io.KeyMap[ImGuiKey_C] = key::kC;
    io.KeyMap[ImGuiKey_V] = key::kV;
    io.KeyMap[ImGuiKey_X] = key::kX;
    io.KeyMap[ImGuiKey_Y] = key::kY;
    io.KeyMap[ImGuiKey_Z] = key::kZ;
}

} // namespace steelyard::app

// --- what page.js calls --------------------------------------------------------------------------

using namespace steelyard;
using namespace steelyard::app;

extern "C" {

EMSCRIPTEN_KEEPALIVE void page_pointer(int phase, int id, int is_touch, int button, double x,
                                       double y) {
    if (the_page != nullptr)
        the_page->pointer(static_cast<TouchPhase>(phase), id, is_touch != 0,
                          static_cast<PointerButton>(button), {x, y});
}

EMSCRIPTEN_KEEPALIVE void page_scroll(double notches) {
    if (the_page != nullptr)
        the_page->scroll(notches);
}

EMSCRIPTEN_KEEPALIVE void page_key(int goes_down, int key, int modifiers) {
    if (the_page != nullptr && key > 0 && key < 512)
        the_page->key(goes_down != 0, key, modifiers);
}

EMSCRIPTEN_KEEPALIVE void page_text(const char* utf8) {
    if (the_page != nullptr)
        the_page->text(utf8);
}

EMSCRIPTEN_KEEPALIVE void page_lost_focus() {
    if (the_page != nullptr)
        the_page->lose_focus();
}

EMSCRIPTEN_KEEPALIVE void page_stirred() {
    stir(nullptr);
}

EMSCRIPTEN_KEEPALIVE void page_dropped(const char* path) {
    if (the_page == nullptr)
        return;
    the_page->incoming.anything = true;
    the_page->incoming.dropped_files.emplace_back(path);
}
}

#include "app/settings/settings_view.h"

#include "app/platform/extras.h"
#include "app/platform/key.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "app/widgets/word_row.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>

namespace steelyard::app {

namespace {

using scene::Look;
using scene::Role;
using scene::TextSize;

constexpr double kTextSizes[] = {0.8, 0.9, 1.0, 1.1, 1.25, 1.5, 1.75, 2.0, 2.5};

/// One value that a row can take.
struct Choice {
    std::string word;
    bool in_force = false;
    Preferences chosen; ///< what the preferences are after it was chosen
};

struct Row {
    const char* name;
    std::vector<Choice> choices;
};

template <typename Value>
Choice choice(const Preferences& present, Value Preferences::*member, Value value,
              std::string word) {
    Preferences chosen = present;
    chosen.*member = value;
    return {std::move(word), present.*member == value, chosen};
}

std::vector<Row> setting_rows(const Preferences& now) {
    Row sizes{"Text", {}};
    for (const double size : kTextSizes)
        sizes.choices.push_back(
            choice(now, &Preferences::text_size, size, fmt::format("{:.0f} %", 100.0 * size)));
    return {{"Units",
             {choice(now, &Preferences::units, setup::UnitSystem::si, "SI (N, m, kg)"),
              choice(now, &Preferences::units, setup::UnitSystem::us, "US (lbf, ft, lb)")}},
            {"Look",
             {choice(now, &Preferences::look, Look::light, "light"),
              choice(now, &Preferences::look, Look::dark, "dark"),
              choice(now, &Preferences::look, Look::high_contrast, "high contrast")}},
            sizes,
            {"Motion",
             {choice(now, &Preferences::less_motion, false, "settles and eases"),
              choice(now, &Preferences::less_motion, true, "less motion")}}};
}

void step_choice(const Row& row, int step, Preferences& preferences) {
    const auto& choices = row.choices;
    const auto now = std::find_if(choices.begin(), choices.end(),
                                  [](const Choice& one) { return one.in_force; });
    const std::ptrdiff_t at = now == choices.end() ? 0 : now - choices.begin();
    const std::ptrdiff_t next = std::clamp<std::ptrdiff_t>(at + step, 0, std::ssize(choices) - 1);
    preferences = choices[static_cast<std::size_t>(next)].chosen;
}

/// @return the baseline for what comes below
float draw_extras(const Style& style, ImVec2 at, float right_px) {
    std::vector<RowWord> words;
    for (const Extra& extra : extras())
        words.push_back({extra.words, false});
    if (words.empty())
        return at.y;
    if (const auto pressed = draw_word_row(style, "extras", words, at, right_px))
        extras()[*pressed].act();
    return at.y + style.px(48.0F);
}

/// @return true when the page is to be closed
bool read_keys(const std::vector<KeyPress>& keys, SettingsState& state, Preferences& preferences) {
    bool close = false;
    for (const KeyPress& key : keys) {
        const std::vector<Row> rows = setting_rows(preferences);
        const std::size_t last = rows.size() - 1;
        if (key.key == key::kEscape)
            close = true;
        else if (key.key == key::kDown || key.key == key::kTab)
            state.chosen = std::min(state.chosen + 1, last);
        else if (key.key == key::kUp)
            state.chosen -= state.chosen > 0 ? 1 : 0;
        else if (key.key == key::kLeft || key.key == key::kRight)
            step_choice(rows[state.chosen], key.key == key::kRight ? 1 : -1, preferences);
    }
    return close;
}

/// Draws a row's words, broken into lines where they do not fit.
/// @return the baseline of its last line
float draw_row(const Style& style, const Row& row, ImVec2 at, float right_px, bool has_keys,
               Preferences& preferences) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (has_keys)
        list.AddRectFilled({at.x - style.px(12.0F), at.y - style.px(18.0F)},
                           {at.x - style.px(8.0F), at.y + style.px(8.0F)}, style.mark(Role::ink));
    draw_text(list, style, {TextSize::body, true, Role::ink}, at, row.name);
    std::vector<RowWord> words;
    for (const Choice& one : row.choices)
        words.push_back({one.word, one.in_force});
    at.x += style.px(110.0F);
    if (const auto pressed = draw_word_row(style, row.name, words, at, right_px))
        preferences = row.choices[*pressed].chosen;
    return at.y;
}

} // namespace

double next_text_size(double size, int step) {
    const auto* found =
        std::min_element(std::begin(kTextSizes), std::end(kTextSizes), [&](double a, double b) {
            return std::abs(a - size) < std::abs(b - size);
        });
    const auto at = std::clamp<std::ptrdiff_t>(found - std::begin(kTextSizes) + step, 0,
                                               std::ssize(kTextSizes) - 1);
    return kTextSizes[at];
}

Look next_look(Look look) {
    switch (look) {
    case Look::light:
        return Look::dark;
    case Look::dark:
        return Look::high_contrast;
    case Look::high_contrast:
    case Look::print:
        return Look::light;
    }
    return Look::light;
}

bool draw_settings(const Style& style, const scene::Point& window_px,
                   const std::vector<KeyPress>& keys, SettingsState& state,
                   Preferences& preferences) {
    const bool close = read_keys(keys, state, preferences);
    begin_area("settings", scene::Point::Zero(), window_px, true);
    const float scroll = ImGui::GetScrollY();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    draw_text(list, style, {TextSize::reading, true, Role::ink}, {24.0F, style.px(48.0F) - scroll},
              "Settings");
    const TextStyle quiet{TextSize::caption, false, Role::quiet_ink};
    const char* how = "click a word, or arrows; Escape goes back; all is remembered";
    if (24.0F + text_width(style, quiet, how) > static_cast<float>(window_px.x()))
        how = "all is remembered";
    draw_text(list, style, quiet, {24.0F, style.px(72.0F) - scroll}, how);
    float y = style.px(124.0F) - scroll;
    const std::vector<Row> rows = setting_rows(preferences);
    for (std::size_t i = 0; i < rows.size(); ++i)
        y = draw_row(style, rows[i], {style.px(36.0F), y},
                     static_cast<float>(window_px.x()) - 24.0F, i == state.chosen, preferences) +
            style.px(48.0F);
    y = draw_extras(style, {style.px(36.0F), y}, static_cast<float>(window_px.x()) - 24.0F);
    const bool leave = word_button(style, "back", {style.px(36.0F), y}, "Back", true);
    ImGui::SetCursorScreenPos({0.0F, y + style.px(16.0F)});
    ImGui::Dummy({1.0F, 1.0F});
    end_area();
    return !close && !leave;
}

} // namespace steelyard::app

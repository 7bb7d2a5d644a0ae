#include "app/handout/handout_column.h"

#include "app/look/text_styles.h"
#include "app/platform/folders.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "app/widgets/column_pen.h"
#include "app/widgets/word_row.h"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <cstdlib>

namespace steelyard::app {

namespace {

using scene::Role;
using scene::TextSize;

/// A text field over a width; it holds the keyboard while it is typed in.
/// @return true when its text changed
bool text_field(const Style& style, const char* id, float width_px, std::string& text,
                ColumnPen& pen) {
    ImGui::SetCursorScreenPos({pen.left(), pen.y()});
    ImGui::SetNextItemWidth(width_px);
    const bool changed = ImGui::InputText(id, &text);
    if (style.narration != nullptr)
        style.narration->add_text(text, {pen.left(), pen.y() + style.px(23.0F)}, width_px,
                                  style.em_px(TextSize::body));
    return changed;
}

/// A folder within the person's home as people write it: "~/.local/share".
std::string short_path(const std::filesystem::path& path) {
    const char* home = std::getenv("HOME");
    const auto within = path.lexically_relative(home != nullptr ? home : "");
    return within.empty() || *within.begin() == ".." ? path.string() : "~/" + within.string();
}

void type_seed(HandoutScreen& screen) {
    const auto read = read_seed(screen.typed_seed, screen.choices, screen.shelf.blueprints);
    screen.seed_fault = read ? "" : read.error();
    if (read)
        screen.choices = *read;
}

void draw_seed(const Style& style, const HandoutRow& row, HandoutScreen& screen, ColumnPen& pen) {
    const float word_px = text_width(style, {TextSize::body}, row.words.front().word);
    const float field_px = pen.width() - word_px - style.px(20.0F);
    if (text_field(style, "##seed", field_px, screen.typed_seed, pen))
        type_seed(screen);
    if (word_button(style, "another",
                    {pen.left() + pen.width() - word_px, pen.y() + style.px(23.0F)},
                    row.words.front().word, false))
        choose(screen, row.words.front().chosen);
    pen.skip(46.0F);
    if (!screen.seed_fault.empty()) {
        pen.paragraph(kFault, screen.seed_fault);
        pen.skip(4.0F);
    }
}

/// Which files gave no sheet, and why.
void draw_faults(const HandoutScreen& screen, const problems::Bank& bank, ColumnPen& pen) {
    if (screen.shelf.faults.empty() && bank.own_faults.empty())
        return;
    pen.skip(-10.0F);
    for (const std::string& fault : screen.shelf.faults)
        pen.paragraph(kFault, fault);
    for (const setup::InputError& fault : bank.own_faults)
        pen.paragraph(kFault, "One of your own questions is left out. " + setup::to_text(fault));
    pen.skip(10.0F);
}

/// Where further sheets come from.
void draw_hint(const HandoutScreen& screen, ColumnPen& pen) {
    pen.skip(12.0F);
    pen.paragraph(kCaption, "A blueprint of your own can be dropped on the window" +
                                (screen.places.own.empty() || !has_folders()
                                     ? std::string(".")
                                     : ", or kept in " + short_path(screen.places.own) + '.'));
}

/// Putting a sheet together, or what keeps one from being changed so.
void draw_own_word(const Style& style, const problems::Bank& bank, HandoutScreen& screen,
                   ColumnPen& pen) {
    if (screen.choices.own)
        return;
    if (word_button(style, "own", {pen.left(), pen.y()}, "Choose topics yourself (N)", false))
        choose(screen, with_own_sheet(screen.choices, screen.shelf.blueprints, bank));
    pen.skip(27.0F);
}

void draw_row(const Style& style, const HandoutRow& row, std::size_t index,
              const problems::Bank& bank, HandoutScreen& screen, ColumnPen& pen) {
    if (index == screen.row)
        pen.list().AddRectFilled({pen.left() - style.px(12.0F), pen.y() - style.px(10.0F)},
                                 {pen.left() - style.px(8.0F), pen.y() + style.px(2.0F)},
                                 style.mark(Role::ink));
    pen.line(kCaption, row.name);
    if (row.kind == RowKind::seed) {
        pen.skip(8.0F);
        return draw_seed(style, row, screen, pen);
    }
    pen.skip(23.0F);
    std::vector<RowWord> words;
    for (const HandoutWord& one : row.words)
        words.push_back({one.word, one.in_force});
    ImVec2 at{pen.left(), pen.y()};
    const auto pressed = draw_word_row(style, row.name, words, at, pen.left() + pen.width());
    pen.skip_px(at.y - pen.y());
    pen.skip(27.0F);
    if (row.kind == RowKind::sheet) {
        draw_own_word(style, bank, screen, pen);
        draw_faults(screen, bank, pen);
    }
    if (pressed)
        choose(screen, row.words[*pressed].chosen);
}

/// A pen for a part of the column's width, at the same height.
ColumnPen part_pen(const Style& style, const Layout& layout, const ColumnPen& whole, bool right) {
    constexpr double kLeftShare = 0.46; // the words at the right are longer
    const double edges_px = layout.column_px.x() - whole.width();
    const double gap_px = style.px(10.0F);
    Layout part = layout;
    part.column_px.x() = edges_px + kLeftShare * whole.width() - gap_px;
    if (right) {
        part.column_at_px.x() += kLeftShare * whole.width();
        part.column_px.x() = edges_px + (1.0 - kLeftShare) * whole.width();
    }
    ColumnPen pen(style, part);
    pen.skip_px(whole.y() - pen.y());
    return pen;
}

void draw_rows(const Style& style, const Layout& layout, const problems::Bank& bank,
               HandoutScreen& screen, ColumnPen& pen) {
    const std::vector<HandoutRow> rows = rows_of(screen.choices, screen.shelf.blueprints);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (!rows[i].beside_next || i + 1 == rows.size()) {
            draw_row(style, rows[i], i, bank, screen, pen);
            continue;
        }
        ColumnPen left = part_pen(style, layout, pen, false);
        ColumnPen right = part_pen(style, layout, pen, true);
        draw_row(style, rows[i], i, bank, screen, left);
        draw_row(style, rows[i + 1], i + 1, bank, screen, right);
        pen.skip_px(std::max(left.y(), right.y()) - pen.y());
        ++i;
    }
}

void draw_folder(const Style& style, HandoutScreen& screen, ColumnPen& pen) {
    if (!has_folders())
        return;
    pen.line(kCaption, "Into the folder");
    pen.skip(8.0F);
    text_field(style, "##folder", pen.width(), screen.choices.folder, pen);
    pen.skip(58.0F);
}

/// How far the writing is: a bar that fills from the left.
void draw_progress(const Style& style, const HandoutScreen& screen, ColumnPen& pen) {
    const double share = std::clamp(screen.writing.share(), 0.0, 1.0);
    pen.line({TextSize::body}, fmt::format("{:.0f} % made", 100.0 * share));
    pen.skip(12.0F);
    const ImVec2 corner{pen.left(), pen.y()};
    const float bar_px = style.px(10.0F);
    pen.list().AddRectFilled(corner, {corner.x + pen.width(), corner.y + bar_px},
                             style.mark(Role::panel), 5.0F);
    pen.list().AddRectFilled(
        corner,
        {corner.x + std::max(static_cast<float>(share) * pen.width(), bar_px), corner.y + bar_px},
        style.mark(Role::ink), 5.0F);
    pen.skip(30.0F);
}

void draw_outcome(const HandoutScreen& screen, ColumnPen& pen) {
    if (!screen.write_fault.empty())
        pen.paragraph(kFault, screen.write_fault);
    if (screen.written.empty())
        return;
    pen.paragraph({TextSize::body, true, Role::ink},
                  screen.written.size() == 1
                      ? "1 file is there:"
                      : fmt::format("{} files are there:", screen.written.size()));
    for (const std::filesystem::path& path : screen.written)
        pen.paragraph(kCaption, has_folders() ? path.filename().string() : where_given(path) + '.');
}

std::string button_words(const HandoutScreen& screen) {
    const std::size_t files = files_of(screen.choices);
    return screen.writing.running() ? "Stop"
           : files == 1             ? "Make 1 file"
           : has_folders()          ? fmt::format("Make {} files", files)
                                    : fmt::format("Make {} files in one package", files);
}

} // namespace

HandoutWish draw_handout_column(const Style& style, const Layout& layout,
                                const problems::Bank& bank, HandoutScreen& screen) {
    begin_column(style, layout);
    ColumnPen pen(style, layout);
    pen.skip(layout.narrow ? 34.0F : 42.0F);
    pen.line({TextSize::reading, true, Role::ink}, "Worksheet and key");
    pen.skip(28.0F);
    // What came of the button at the foot is told where it is seen without scrolling.
    if (screen.writing.running())
        draw_progress(style, screen, pen);
    draw_outcome(screen, pen);
    draw_rows(style, layout, bank, screen, pen);
    draw_folder(style, screen, pen);
    draw_hint(screen, pen);
    if (!end_column(style, layout, pen, button_words(screen)))
        return HandoutWish::none;
    return screen.writing.running() ? HandoutWish::stop : HandoutWish::make;
}

} // namespace steelyard::app

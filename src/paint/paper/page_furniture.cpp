#include "paint/paper/page_furniture.h"

#include "mechanics/constants.h"
#include "paint/picture/painter.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::paint {
using namespace publish;
namespace {

using scene::Look;
using scene::Role;

/// 5 mm in points.
constexpr double kGrid_pt = 5.0 * 72.0 / 25.4;

void paint_rule(cairo_t* surface, double from_x, double to_x, double y, Role role, double width) {
    set_colour(surface, colour_of(role, Look::print));
    cairo_set_line_width(surface, width);
    cairo_set_line_cap(surface, CAIRO_LINE_CAP_BUTT);
    cairo_set_dash(surface, nullptr, 0, 0.0);
    cairo_move_to(surface, from_x, y);
    cairo_line_to(surface, to_x, y);
    cairo_stroke(surface);
}

/// The letter of the version in a box at the right end of the line.
void paint_version(cairo_t* surface, const PageSetting& page, const std::string& version) {
    const double side = 34.0 * page.format.scale;
    const double left = page.format.content_width_pt() - side;
    set_colour(surface, colour_of(Role::ink, Look::print));
    cairo_set_line_width(surface, 1.5);
    cairo_rectangle(surface, left, 0.0, side, side);
    cairo_stroke(surface);
    const TextStyle style{page.format.title_pt(), true, Role::ink, false, Tag::none};
    const Piece letter = page.type.line(version, style);
    paint_at(surface, letter, left + 0.5 * (side - page.type.width(version, style)),
             0.5 * (side - letter.height_pt));
}

/// "Name ____  Date ____  Score ____ / 12"
Piece name_line(const PageSetting& page, std::size_t questions) {
    const TextStyle style{page.format.small_pt(), false, Role::quiet_ink, false, Tag::paragraph};
    const double width = page.format.content_width_pt();
    return {page.format.body_pt() * 2.4,
            [page, style, width, questions](cairo_t* surface) {
                const double baseline = page.format.body_pt() * 1.7;
                const std::string total = fmt::format("/ {}", questions);
                const auto put = [&](const std::string& text, double x) {
                    paint_at(surface, page.type.line(text + " ", style), x,
                             baseline - 1.05 * page.format.small_pt());
                    return x + page.type.width(text, style) + page.format.step_pt();
                };
                const double date_x = 0.56 * width;
                const double score_x = 0.78 * width;
                const double gap_pt = 3.0 * page.format.step_pt();
                paint_rule(surface, put("Name", 0.0), date_x - gap_pt, baseline, Role::ink, 0.6);
                paint_rule(surface, put("Date", date_x), score_x - gap_pt, baseline, Role::ink,
                           0.6);
                const double total_x = width - page.type.width(total, style);
                paint_rule(surface, put("Score", score_x), total_x - page.format.step_pt(),
                           baseline, Role::ink, 0.6);
                put(total, total_x);
            },
            Tag::paragraph, false};
}

} // namespace

Piece notched_rule(const PageSetting& page) {
    const double width = page.format.content_width_pt();
    const double size = 3.5 * page.format.scale;
    return {2.0 * size,
            [width, size](cairo_t* surface) {
                const double y = size;
                paint_rule(surface, 0.0, width, y, Role::ink, 0.8);
                cairo_move_to(surface, 0.5 * width, y + 0.4);
                cairo_line_to(surface, 0.5 * width - size, y - 1.6 * size);
                cairo_line_to(surface, 0.5 * width + size, y - 1.6 * size);
                cairo_close_path(surface);
                cairo_fill(surface);
            },
            Tag::none, false};
}

Pieces paper_head(const PageSetting& page, const Worksheet& sheet, bool is_key) {
    const double step = page.format.step_pt();
    const bool boxed = !sheet.version.empty();
    const double width = page.format.content_width_pt() - (boxed ? 12.0 * step : 0.0);
    Pieces words;
    const std::string title = is_key ? "Key: " + sheet.title : sheet.title;
    append(words,
           page.type.paragraph(
               title, {page.format.title_pt(), true, Role::ink, false, Tag::heading_1}, width));
    for (const std::string& note : {sheet.note, sheet.how_to_mark()})
        if (!note.empty() && !is_key)
            append(words,
                   page.type.paragraph(
                       note, {page.format.body_pt(), false, Role::quiet_ink, false, Tag::paragraph},
                       width));
    Pieces head;
    if (boxed) {
        words.insert(words.begin(), {0.0,
                                     [page, version = sheet.version](cairo_t* surface) {
                                         paint_version(surface, page, version);
                                     },
                                     Tag::paragraph, false});
    }
    // The rule below keeps clear of the version's box.
    const double box = 38.0 * page.format.scale;
    const double missing = boxed ? box - height_of(words) : 0.0;
    append(head, std::move(words));
    if (missing > 0.0)
        head.push_back(gap(missing));
    if (!is_key)
        head.push_back(name_line(page, sheet.count()));
    head.push_back(gap(2.0 * step));
    head.push_back(notched_rule(page));
    head.push_back(gap(4.0 * step));
    return head;
}

void paint_foot(cairo_t* surface, const PageSetting& page, const std::string& code, int number,
                int pages) {
    const TextStyle style{page.format.small_pt(), false, Role::quiet_ink, false, Tag::none};
    const double width = page.format.content_width_pt();
    cairo_save(surface);
    cairo_translate(surface, page.format.left_pt,
                    page.format.height_pt - page.format.bottom_pt + 4.0 * page.format.step_pt());
    paint_rule(surface, 0.0, width, 0.0, Role::hairline, 0.6);
    cairo_translate(surface, 0.0, page.format.step_pt());
    paint_at(surface, page.type.line(code, style), 0.0);
    const std::string where = fmt::format("page {} of {}", number, pages);
    paint_at(surface, page.type.line(where, style), width - page.type.width(where, style));
    cairo_restore(surface);
}

Piece working_room(double width_pt, double height_pt) {
    return {height_pt,
            [width_pt, height_pt](cairo_t* surface) {
                set_colour(surface, colour_of(Role::hairline, Look::print));
                cairo_set_line_width(surface, 1.2);
                cairo_set_line_cap(surface, CAIRO_LINE_CAP_ROUND);
                const double dots[] = {0.0, kGrid_pt};
                cairo_set_dash(surface, dots, 2, 0.0);
                const double columns = std::floor(width_pt / kGrid_pt);
                for (double y = 0.5 * kGrid_pt; y < height_pt - 0.25 * kGrid_pt; y += kGrid_pt) {
                    cairo_move_to(surface, 0.5, y);
                    cairo_line_to(surface, 0.5 + columns * kGrid_pt, y);
                }
                cairo_stroke(surface);
                cairo_set_dash(surface, nullptr, 0, 0.0);
            },
            Tag::none, false,
            [width_pt](double other_pt) { return working_room(width_pt, other_pt); }};
}

Piece tick_box(const PageFormat& format, TickBox box) {
    const double size = 0.92 * format.body_pt();
    const double leading = 1.4 * format.body_pt();
    return {leading,
            [box, size, leading](cairo_t* surface) {
                set_colour(surface, colour_of(Role::ink, Look::print));
                cairo_set_line_width(surface, 0.9);
                const double middle = 0.5 * leading;
                switch (box) {
                case TickBox::round:
                    cairo_new_sub_path(surface);
                    cairo_arc(surface, 0.5 * size, middle, 0.5 * size, 0.0, 2.0 * mechanics::kPi);
                    break;
                case TickBox::square:
                    cairo_rectangle(surface, 0.0, middle - 0.5 * size, size, size);
                    break;
                case TickBox::line:
                    cairo_move_to(surface, 0.0, middle + 0.45 * size);
                    cairo_line_to(surface, 1.4 * size, middle + 0.45 * size);
                    break;
                }
                cairo_stroke(surface);
            },
            Tag::none, false};
}

Piece answer_rule(const PageSetting& page, const std::string& before, const std::string& unit,
                  double width_pt) {
    const TextStyle style{page.format.body_pt(), true, Role::ink, false, Tag::paragraph};
    const double step = page.format.step_pt();
    return {2.0 * page.format.body_pt(),
            [page, style, step, before, unit, width_pt](cairo_t* surface) {
                const double baseline = 1.55 * page.format.body_pt();
                const auto put = [&](const std::string& text, double x) {
                    paint_at(surface, page.type.line(text + " ", style), x,
                             baseline - 1.05 * page.format.body_pt());
                };
                const std::string equals = before + " =";
                const double from = page.type.width(equals, style) + 1.5 * step;
                const double unit_width = page.type.width(unit, style) + 1.5 * step;
                const double to = std::min(width_pt - unit_width, from + 28.0 * step);
                put(equals, 0.0);
                paint_rule(surface, from, std::max(to, from + 8.0 * step), baseline + 1.0,
                           Role::ink, 0.7);
                put(unit, std::max(to, from + 8.0 * step) + 1.5 * step);
            },
            Tag::paragraph, false};
}

Piece verdict_mark(const PageFormat& format, bool right) {
    const double size = 0.62 * format.body_pt();
    const double leading = 1.4 * format.body_pt();
    return {leading,
            [right, size, leading](cairo_t* surface) {
                set_colour(surface, colour_of(right ? Role::right : Role::wrong, Look::print));
                cairo_set_line_width(surface, 0.22 * size);
                cairo_set_line_cap(surface, CAIRO_LINE_CAP_ROUND);
                cairo_set_line_join(surface, CAIRO_LINE_JOIN_ROUND);
                cairo_translate(surface, 0.0, 0.5 * (leading - size));
                if (right) {
                    cairo_move_to(surface, 0.0, 0.55 * size);
                    cairo_line_to(surface, 0.38 * size, 0.95 * size);
                    cairo_line_to(surface, size, 0.1 * size);
                } else {
                    cairo_move_to(surface, 0.0, 0.1 * size);
                    cairo_line_to(surface, 0.85 * size, 0.95 * size);
                    cairo_move_to(surface, 0.85 * size, 0.1 * size);
                    cairo_line_to(surface, 0.0, 0.95 * size);
                }
                cairo_stroke(surface);
            },
            Tag::none, false};
}

} // namespace steelyard::paint

#pragma once
// What stands on every page around the text: the head of a paper, the line at the foot, rules to
// write on, boxes to tick.

#include "paint/paper/flow.h"
#include "paint/type/typesetting.h"
#include "publish/sheets/page_format.h"
#include "publish/sheets/worksheet.h"

#include <string>

namespace steelyard::paint {

/// What a page needs to be set.
struct PageSetting {
    const publish::PageFormat& format;
    const Typesetter& type;
};

/// Title, note, version and, on a sheet for learners, the line for name, date and score.
Pieces paper_head(const PageSetting& page, const publish::Worksheet& sheet, bool is_key);

/// Paints the foot: the code on the left, the page's number on the right.
void paint_foot(cairo_t* surface, const PageSetting& page, const std::string& code, int number,
                int pages);

/// A hairline with the notch of the balance in its middle.
Piece notched_rule(const PageSetting& page);

/// Room to work in: points on a grid of 5 mm. It can grow.
Piece working_room(double width_pt, double height_pt);

/// What stands before a choice.
enum class TickBox { round, square, line };
Piece tick_box(const publish::PageFormat& format, TickBox box);

/// "effort = ________ N".
Piece answer_rule(const PageSetting& page, const std::string& before, const std::string& unit,
                  double width_pt);

/// A small mark in the colour of right or wrong: a tick or a cross.
Piece verdict_mark(const publish::PageFormat& format, bool right);

} // namespace steelyard::paint

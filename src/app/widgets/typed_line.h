#pragma once
// A line of text that is typed into a column: a name, a day, a code.

#include "app/widgets/column_pen.h"

#include <string>

namespace steelyard::app {

struct TypedLine {
    std::string text;
    std::string fault;          ///< what is wrong with it, and what to do
    bool wants_keyboard = true; ///< when it was just opened
};

enum class TypedLineEnd { none, entered, left };

/// Draws what is asked for, the field, and its fault.
/// @return how typing ended in this frame: by Enter, or by Escape
TypedLineEnd draw_typed_line(ColumnPen& pen, const char* id, std::string_view asked,
                             TypedLine& line);

/// Keeps the line open with a sentence under it.
void refuse_line(TypedLine& line, std::string fault);

} // namespace steelyard::app

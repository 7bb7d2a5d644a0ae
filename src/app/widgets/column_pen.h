#pragma once
// Draws down a column: keeps where the next line goes.

#include "app/frame/layout.h"
#include "app/look/style.h"

namespace steelyard::app {

class ColumnPen {
public:
    /// Starts at the top of the column's area, which must be begun; heeds its scrolling.
    ColumnPen(const Style& style, const Layout& layout);

    float left() const { return left_; }
    float width() const { return width_; }
    float y() const { return y_; }
    ImDrawList& list() const { return list_; }

    void skip(float at_100_percent) { y_ += style_.px(at_100_percent); }
    void skip_px(float px) { y_ += px; }
    /// A line of text with its baseline here; does not move on.
    float line(const TextStyle& how, std::string_view text);
    /// The one line that matters, smaller where it would run out of the column.
    void headline(std::string_view text);
    /// Text broken to the column's width; moves on to the baseline after it.
    void paragraph(const TextStyle& how, std::string_view text);
    /// The same with the indices of symbols small and low.
    void formula(const TextStyle& how, std::string_view text);
    /// The same with the terms of the glossary to be pressed.
    void told(const TextStyle& how, std::string_view text);
    void divider();
    /// Marks the end of what scrolls.
    void finish(float below_px);

private:
    const Style& style_;
    ImDrawList& list_;
    float left_;
    float width_;
    float y_;
    int texts_told_ = 0;
};

/// Begins the area of a column whose one action stays at its foot while what is above it scrolls.
/// In a narrow layout the action scrolls too, below everything.
void begin_column(const Style& style, const Layout& layout);
/// Ends it with its action.
/// @return true in the frame in which it was pressed
bool end_column(const Style& style, const Layout& layout, ColumnPen& pen, std::string_view words);

/// The one action of a column, at its foot or below what stands there, and the end of what scrolls.
/// @return true in the frame in which it was pressed
bool column_button(const Style& style, const Layout& layout, ColumnPen& pen,
                   std::string_view words);

/// The other action beside the one of a column.
struct SideAction {
    std::string_view words;
    bool enabled = true;
};
enum class FootPress { none, side, main };

/// The same with another action at its left, which is quieter and narrower.
FootPress column_buttons(const Style& style, const Layout& layout, ColumnPen& pen,
                         const SideAction& side, std::string_view words);

} // namespace steelyard::app

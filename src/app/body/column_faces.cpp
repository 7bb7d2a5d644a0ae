#include "app/body/column_faces.h"

#include "app/widgets/area.h"
#include "app/widgets/word_row.h"

namespace steelyard::app {

void begin_face(const Style& style, const Layout& layout, bool moves) {
    if (moves)
        begin_column(style, layout);
    else
        begin_area("column", layout.column_at_px, layout.column_px, true);
}

bool end_face(const Style& style, const Layout& layout, const FacePlay& play, ColumnPen& pen) {
    if (play.moves)
        return end_column(style, layout, pen, play.playing ? "Stop" : "Play the repetition");
    pen.finish(0.0F);
    end_area();
    return false;
}

ColumnFace draw_column_faces(const Style& style, const Layout& layout, ColumnFace face,
                             ColumnPen& pen) {
    pen.skip(layout.narrow ? 24.0F : 40.0F);
    ImVec2 at{pen.left(), pen.y()};
    const auto pressed = draw_word_row(
        style, "faces",
        {{"Readings", face == ColumnFace::readings}, {"Make", face == ColumnFace::make}}, at,
        pen.left() + pen.width());
    pen.skip(12.0F);
    return pressed ? static_cast<ColumnFace>(*pressed) : face;
}

} // namespace steelyard::app

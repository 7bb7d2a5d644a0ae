// Every word on every shipped exercise, from every side: nothing that is read may be written over,
// struck by a line, laid over the figure or cut off.

#include "catch.h"
#include "scene/body/body_drawing.h"
#include "scene/body/posed_exercise.h"
#include "scene/figure/ring_union.h"
#include "scene/marks/label_board.h"
#include "setup/muscle/muscle_file.h"
#include "words/body/body_words.h"

#include <algorithm>
#include <array>
#include <filesystem>

using namespace steelyard;
using namespace steelyard::scene;

namespace {

std::vector<std::string> shipped_exercises() {
    const std::string ending = ".setup.toml";
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(std::string(STEELYARD_SOURCE_DIR) +
                                                                 "/assets/setups/body")) {
        const std::string file = entry.path().filename().string();
        if (file.size() > ending.size() && file.ends_with(ending))
            names.push_back(file.substr(0, file.size() - ending.size()));
    }
    std::sort(names.begin(), names.end());
    return names;
}

/// A straight piece of something drawn, with half its width.
struct Piece {
    Point from;
    Point to;
    double half_px;
};

/// What may strike a word: lines, arrows, rims. Hairlines in the colour of the sheet are none.
std::vector<Piece> strokes_of(const Drawing& drawing) {
    std::vector<Piece> pieces;
    const auto add = [&](const Point& from, const Point& to, const Stroke& stroke) {
        if (stroke.role != Role::sheet)
            pieces.push_back({from, to, 0.5 * stroke.width_px});
    };
    for (const Shape& shape : drawing.shapes) {
        if (const auto* line = std::get_if<Line>(&shape))
            add(line->from, line->to, line->stroke);
        if (const auto* line = std::get_if<Polyline>(&shape))
            for (std::size_t i = 1; i < line->corners.size(); ++i)
                add(line->corners[i - 1], line->corners[i], line->stroke);
        if (const auto* head = std::get_if<Triangle>(&shape)) {
            pieces.push_back({head->a, head->b, 0.0});
            pieces.push_back({head->b, head->c, 0.0});
            pieces.push_back({head->c, head->a, 0.0});
        }
    }
    return pieces;
}

bool strikes(const Piece& piece, const Rect& room) {
    const Point span = piece.to - piece.from;
    const int steps = 1 + static_cast<int>(span.norm());
    for (int i = 0; i <= steps; ++i) {
        const Point at = piece.from + (static_cast<double>(i) / steps) * span;
        const Point near = at.cwiseMax(room.low).cwiseMin(room.high);
        if ((at - near).norm() < piece.half_px || room.contains(at))
            return true;
    }
    return false;
}

/// True when a filled form lies under a word, by a raster of three pixels.
bool lies_under(const Outline& outline, const Rect& room) {
    for (double x = room.low.x(); x <= room.high.x(); x += 3.0)
        for (double y = room.low.y(); y <= room.high.y(); y += 3.0)
            for (const Ring& ring : outline.rings)
                if (is_inside({x, y}, ring))
                    return true;
    return false;
}

/// The letters themselves, without the hair of air around them.
Rect letters_of(const Label& label, double text_scale) {
    Rect room = room_of(label, text_scale);
    room.low += Point(1.0, 1.0);
    room.high -= Point(1.0, 1.0);
    return room;
}

struct Counts {
    int drawings = 0;
    int words = 0;
    int on_words = 0;
    int struck = 0;
    int on_figure = 0;
    int off_sheet = 0;
    std::string told;

    void add(const Drawing& drawing, double text_scale, const std::string& where) {
        ++drawings;
        std::vector<std::pair<const Label*, Rect>> labels;
        for (const Shape& shape : drawing.shapes)
            if (const auto* label = std::get_if<Label>(&shape))
                labels.emplace_back(label, letters_of(*label, text_scale));
        const auto strokes = strokes_of(drawing);
        const auto fault = [&](int& count, const Label& label, const char* what) {
            ++count;
            told += where + ": '" + label.text + "' " + what + '\n';
        };
        for (std::size_t i = 0; i < labels.size(); ++i) {
            const auto& [label, room] = labels[i];
            ++words;
            for (std::size_t j = 0; j < i; ++j)
                if (room.overlaps(labels[j].second))
                    fault(on_words, *label, "on words");
            if (std::any_of(strokes.begin(), strokes.end(),
                            [&room = room](const Piece& piece) { return strikes(piece, room); }))
                fault(struck, *label, "struck");
            if (std::any_of(drawing.shapes.begin(), drawing.shapes.end(),
                            [&room = room](const Shape& shape) {
                                const auto* outline = std::get_if<Outline>(&shape);
                                return outline != nullptr && lies_under(*outline, room);
                            }))
                fault(on_figure, *label, "on the figure");
            if (room.low.minCoeff() < 0.0 || (drawing.size_px - room.high).minCoeff() < 0.0)
                fault(off_sheet, *label, "off the sheet");
        }
    }
};

/// One size where the sanitizers make every drawing slow: they look for other mistakes.
std::vector<Point> sizes_px() {
#ifdef STEELYARD_SANITIZED
    return {{940.0, 720.0}};
#else
    return {{880.0, 560.0}, {940.0, 720.0}, {1421.0, 1080.0}};
#endif
}

} // namespace

TEST_CASE(
    "no word on a shipped exercise is struck, covered, on the figure or cut off, from any side",
    "[body-labels]") {
    const auto muscles = setup::shipped_muscles();
    REQUIRE(muscles);
    Counts counts;
    for (const std::string& name : shipped_exercises()) {
        const PosedExercise posed(name, 0.7);
        const auto reading = words::read_body(posed.setup, *muscles, posed.setup.axes, 0.7);
        REQUIRE(reading);
        for (const auto view : {setup::BodyView::side, setup::BodyView::front,
                                setup::BodyView::above, setup::BodyView::oblique})
            for (const Point& size_px : sizes_px())
                for (const double text_scale : {1.0, 1.5}) {
                    const BodyMargins margins{0.2 * size_px.x(), 0.2 * size_px.x(),
                                              0.16 * size_px.y() * text_scale,
                                              0.18 * size_px.y() * text_scale};
                    BodyDrawing how;
                    how.name = posed.setup.head.name;
                    how.text_scale = text_scale;
                    how.axes = posed.setup.axes;
                    how.muscles = reading->hinges.front().muscles;
                    const Drawing drawing = draw_body(
                        posed.here, posed.result,
                        fit_body(posed.here, {posed.result}, camera_of(view), size_px, margins),
                        how);
                    counts.add(drawing, text_scale,
                               name + " in view " + std::to_string(static_cast<int>(view)) +
                                   " on " + std::to_string(size_px.x()) + " px at " +
                                   std::to_string(text_scale));
                }
    }
    INFO(counts.told);
    CHECK(counts.drawings >= 60 * 4 * 2 * static_cast<int>(sizes_px().size()));
    CHECK(counts.words > 8 * counts.drawings);
    CHECK(counts.on_words == 0);
    CHECK(counts.struck == 0);
    CHECK(counts.on_figure == 0);
    CHECK(counts.off_sheet == 0);
}

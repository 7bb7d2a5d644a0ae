#include "catch.h"
#include "scene/marks/label_board.h"
#include "scene/marks/text_width.h"

#include <cmath>

using namespace steelyard::scene;

namespace {

Label label_at(const Point& at, const std::string& text = "118 N") {
    Label label;
    label.at = at;
    label.text = text;
    return label;
}

constexpr double kHalfTurn_rad = 3.14159265358979323846;

} // namespace

TEST_CASE("the first free way is taken") {
    LabelBoard board({{0.0, 0.0}, {400.0, 300.0}}, 1.0);
    CHECK(board.place({label_at({50.0, 50.0}), label_at({50.0, 90.0})}).at.y() == 50.0);
    CHECK(board.place({label_at({50.0, 50.0}), label_at({50.0, 90.0})}).at.y() == 90.0);
}

TEST_CASE("a label avoids strokes, taken room and the edge of the sheet") {
    const Rect sheet{{0.0, 0.0}, {400.0, 300.0}};
    const std::vector<Label> ways{label_at({50.0, 50.0}), label_at({50.0, 150.0})};
    LabelBoard crossed(sheet, 1.0);
    crossed.keep_clear({0.0, 45.0}, {400.0, 45.0}, 2.0);
    CHECK(crossed.place(ways).at.y() == 150.0);
    LabelBoard taken(sheet, 1.0);
    taken.keep_clear(Rect{{40.0, 30.0}, {90.0, 60.0}});
    CHECK(taken.place(ways).at.y() == 150.0);
    LabelBoard small({{0.0, 100.0}, {400.0, 300.0}}, 1.0);
    CHECK(small.place(ways).at.y() == 150.0);
}

TEST_CASE("where nothing is free the way that covers least is taken") {
    LabelBoard board({{0.0, 0.0}, {400.0, 300.0}}, 1.0);
    board.keep_clear(Rect{{0.0, 0.0}, {400.0, 145.0}});   // all of the first
    board.keep_clear(Rect{{0.0, 149.0}, {400.0, 300.0}}); // between them a strip of the second
    CHECK(board.place({label_at({50.0, 50.0}), label_at({50.0, 150.0})}).at.y() == 150.0);
}

TEST_CASE("where every way covers text the nearest free place is taken") {
    LabelBoard board({{0.0, 0.0}, {400.0, 300.0}}, 1.0);
    const Rect taken{{0.0, 0.0}, {400.0, 100.0}};
    board.keep_clear(taken);
    const Label placed = board.place({label_at({50.0, 80.0}), label_at({50.0, 40.0})});
    const Rect room = room_of(placed, 1.0);
    CHECK_FALSE(room.overlaps(taken));
    CHECK(room.low.y() < 110.0); // a step of the search below what is taken
    CHECK(placed.at.x() == Approx(50.0).margin(9.0));
    // What merely crosses a stroke stays where it wants to be.
    LabelBoard crossed({{0.0, 0.0}, {400.0, 300.0}}, 1.0);
    crossed.keep_clear({0.0, 45.0}, {400.0, 45.0}, 2.0);
    CHECK(crossed.place({label_at({50.0, 50.0})}).at.y() == 50.0);
}

TEST_CASE("where nothing is free a label is brought onto the sheet rather than cut off") {
    const Rect sheet{{0.0, 0.0}, {150.0, 120.0}};
    LabelBoard board(sheet, 1.0);
    board.keep_clear(sheet); // all of it is taken
    for (const Point& at : {Point(140.0, 60.0), Point(-30.0, 60.0), Point(20.0, 2.0)}) {
        const Rect room = room_of(board.place({label_at(at)}), 1.0);
        CHECK(room.low.x() >= -1e-9); // rounding
        CHECK(room.high.x() <= 150.0 + 1e-9);
        CHECK(room.low.y() >= -1e-9);
    }
}

TEST_CASE("words that belong to a place find the nearest free paper, or none") {
    const Rect sheet{{0.0, 0.0}, {400.0, 300.0}};
    const Point anchor(200.0, 150.0);
    const std::vector<Label> ways{label_at({190.0, 155.0})};
    Disc drawn;
    drawn.centre = anchor;
    drawn.radius_px = 60.0;
    drawn.fill = Role::ink;
    LabelBoard board(sheet, 1.0);
    board.keep_clear(std::vector<Shape>{drawn});
    const auto placed = board.place_free(ways, anchor);
    REQUIRE(placed);
    const Rect room = room_of(*placed, 1.0);
    const Point nearest = anchor.cwiseMax(room.low).cwiseMin(room.high);
    CHECK((nearest - anchor).norm() > 60.0);
    CHECK((nearest - anchor).norm() < 90.0);
    drawn.radius_px = 400.0;
    LabelBoard full(sheet, 1.0);
    full.keep_clear(std::vector<Shape>{drawn});
    CHECK_FALSE(full.place_free(ways, anchor));
}

TEST_CASE("a leader does not cross other words") {
    const Rect sheet{{0.0, 0.0}, {400.0, 300.0}};
    const Point anchor(20.0, 150.0);
    // The only way out leads to the right, through a gap that is too low for words.
    LabelBoard open(sheet, 1.0);
    open.keep_clear(Rect{{0.0, 0.0}, {56.0, 140.0}});
    open.keep_clear(Rect{{0.0, 160.0}, {56.0, 300.0}});
    LabelBoard barred = open;
    barred.keep_clear(Rect{{60.0, 100.0}, {120.0, 200.0}});
    const std::vector<Label> ways{label_at({200.0, 155.0})};
    CHECK(open.place_free(ways, anchor));
    CHECK_FALSE(barred.place_free(ways, anchor));
    const Rect behind{{130.0, 140.0}, {200.0, 160.0}};
    CHECK(leader_end(anchor, behind).x() < behind.low.x());
    CHECK(leader_end(anchor, behind).y() == 150.0);
}

TEST_CASE("the last point inside lies on the edge, on the way") {
    const Rect room{{0.0, 0.0}, {100.0, 50.0}};
    CHECK(room.last_inside({50.0, 25.0}, {80.0, 30.0}) == Point(80.0, 30.0));
    const Point out = room.last_inside({50.0, 25.0}, {250.0, 65.0});
    CHECK(out.x() == Approx(100.0));
    CHECK(out.y() == Approx(35.0));
}

TEST_CASE("room below a line belongs to it") {
    LabelBoard board({{0.0, 0.0}, {400.0, 300.0}}, 1.0);
    static_cast<void>(board.place({label_at({50.0, 50.0})}, 22.0));
    CHECK(board.place({label_at({50.0, 72.0}), label_at({50.0, 150.0})}).at.y() == 150.0);
}

TEST_CASE("a label's room follows its alignment, its size and the text size") {
    Label label = label_at({100.0, 100.0});
    const double width_px = text_width_px(label.text, label.size, false, 1.0);
    CHECK(room_of(label, 1.0).low.x() == 100.0);
    CHECK(room_of(label, 1.0).high.x() == Approx(100.0 + width_px));
    label.align = Align::right;
    CHECK(room_of(label, 1.0).high.x() == Approx(100.0));
    CHECK(room_of(label, 1.0).low.x() == Approx(100.0 - width_px));
    label.align = Align::centre;
    CHECK(room_of(label, 1.0).low.x() == Approx(100.0 - 0.5 * width_px));
    CHECK(room_of(label, 2.0).low.x() == Approx(100.0 - width_px));
    CHECK(room_of(label, 1.0).low.y() < 100.0);
    CHECK(room_of(label, 1.0).high.y() > 100.0);
}

TEST_CASE("a label turned by a quarter is as high as it was wide") {
    Label label = label_at({100.0, 100.0});
    const Rect level = room_of(label, 1.0);
    label.turn_rad = -0.5 * kHalfTurn_rad;
    const Rect turned = room_of(label, 1.0);
    CHECK(turned.high.y() - turned.low.y() == Approx(level.high.x() - level.low.x()));
    CHECK(turned.high.x() - turned.low.x() == Approx(level.high.y() - level.low.y()));
    CHECK(turned.high.y() == Approx(100.0)); // it reads upwards from its place
}

TEST_CASE("digits are equally wide, and a longer text is wider") {
    const auto width = [](const char* text) {
        return text_width_px(text, TextSize::reading, false, 1.0);
    };
    CHECK(width("111") == width("888"));
    CHECK(width("1 118 N") > width("118 N"));
    CHECK(width("") == 0.0);
    // A true minus, a thin space and a middle dot count as one character each.
    CHECK(width("−5") < width("--5") + 10.0);
    CHECK(width("2\u2009300") < width("2 300"));
}

#include "catch.h"
#include "scene/marks/name_plate.h"

using namespace steelyard;
using namespace steelyard::scene;

namespace {

const Rect kSheet{{0.0, 0.0}, {900.0, 700.0}};

/// The two lines of a plate, number first.
std::pair<Label, Label> lines_of(const std::vector<Shape>& shapes, std::size_t plate = 0) {
    return {std::get<Label>(shapes.at(2 * plate)), std::get<Label>(shapes.at(2 * plate + 1))};
}

} // namespace

TEST_CASE("a plate is its number with the name right below, and takes the room of both",
          "[name-plate]") {
    LabelBoard board(kSheet, 1.0);
    std::vector<Shape> shapes;
    const Rect room = add_name_plate({"118 N", "right dumbbell", Role::load},
                                     {{{300.0, 200.0}, Align::left}}, 1.0, board, shapes);
    const auto [number, name] = lines_of(shapes);
    CHECK(number.text == "118 N");
    CHECK(number.strong);
    CHECK(name.text == "right dumbbell");
    CHECK(number.at == Point(300.0, 200.0));
    CHECK(name.at.x() == 300.0);
    CHECK_FALSE(room_of(number, 1.0).overlaps(room_of(name, 1.0)));
    for (const Label& line : {number, name}) {
        CHECK((room_of(line, 1.0).low.array() >= room.low.array()).all());
        CHECK((room_of(line, 1.0).high.array() <= room.high.array()).all());
    }
    Label over; // what comes later keeps off the name, too
    over.text = "x";
    over.at = name.at + Point(90.0, 0.0);
    CHECK_FALSE(board.is_free(over));
}

TEST_CASE("two plates that want the same place stand apart", "[name-plate]") {
    LabelBoard board(kSheet, 1.0);
    std::vector<Shape> shapes;
    const auto places = places_around({400.0, 300.0}, {46.0, 80.0, 120.0});
    const Rect one = add_name_plate({"30.6 N·m", "elbow"}, places, 1.0, board, shapes);
    const Rect other = add_name_plate({"34.8 N·m", "shoulder"}, places, 1.0, board, shapes);
    const Rect third =
        add_name_plate({"5 N·m", "a name longer than its number"}, places, 1.0, board, shapes);
    CHECK_FALSE(one.overlaps(other));
    CHECK_FALSE(one.overlaps(third));
    CHECK_FALSE(other.overlaps(third));
}

TEST_CASE("places around a point begin at its sides, the nearest first", "[name-plate]") {
    const auto places = places_around({100.0, 100.0}, {40.0, 80.0});
    CHECK(places[0].align == Align::left); // at the right of the point, reading away from it
    CHECK(places[0].at.x() == 140.0);
    CHECK(places[1].align == Align::right);
    CHECK(places[1].at.x() == 60.0);
    CHECK(places.size() % 4 == 0);
    CHECK((places[places.size() / 2].at - Point(100.0, 100.0)).norm() >
          (places[0].at - Point(100.0, 100.0)).norm());
}

TEST_CASE("places beside an arrow begin near its head, and exist for an arrow of no length",
          "[name-plate]") {
    const auto places = places_beside({200.0, 100.0}, {200.0, 200.0}, 1.0);
    CHECK(places[0].at.x() > 200.0);
    CHECK(places[0].at.y() > 180.0);
    CHECK(places[1].at.x() < 200.0);
    for (const WordPlace& place : places_beside({200.0, 100.0}, {200.0, 100.0}, 1.0))
        CHECK(place.at.allFinite());
}

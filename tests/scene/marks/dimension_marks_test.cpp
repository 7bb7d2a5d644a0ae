#include "catch.h"
#include "scene/marks/dimension_marks.h"

using namespace steelyard::scene;

namespace {

const Rect kSheet{{0.0, 0.0}, {600.0, 400.0}};

std::vector<Shape> marked(std::vector<DimensionLine> dimensions, double text_scale = 1.0) {
    LabelBoard board(kSheet, text_scale);
    std::vector<Shape> shapes;
    add_dimension_marks(std::move(dimensions), {40.0, text_scale}, board, shapes);
    return shapes;
}

template <typename Kind> std::vector<Kind> all_of(const std::vector<Shape>& shapes) {
    std::vector<Kind> found;
    for (const Shape& shape : shapes)
        if (const auto* one = std::get_if<Kind>(&shape))
            found.push_back(*one);
    return found;
}

/// The measuring lines themselves, without the thin lines from their ends.
std::vector<Line> measured(const std::vector<Shape>& shapes) {
    std::vector<Line> lines;
    for (const Line& line : all_of<Line>(shapes))
        if (line.stroke.role != Role::hairline)
            lines.push_back(line);
    return lines;
}

DimensionLine level(double from_px, double to_px, const char* text) {
    return {{from_px, 100.0}, {to_px, 100.0}, text};
}

} // namespace

TEST_CASE("a length is marked beside what it measures, as long as that, with two heads") {
    const auto shapes = marked({level(100.0, 340.0, "0.60 m")});
    const auto lines = measured(shapes);
    REQUIRE(lines.size() == 1);
    CHECK(lines[0].from == Point(100.0, 140.0)); // 40 px below
    CHECK(lines[0].to == Point(340.0, 140.0));
    const auto heads = all_of<Triangle>(shapes);
    REQUIRE(heads.size() == 2);
    CHECK(heads[0].a == lines[0].from);
    CHECK(heads[1].a == lines[0].to);
    REQUIRE(all_of<Label>(shapes).size() == 1);
    CHECK(all_of<Label>(shapes)[0].text == "0.60 m");
}

TEST_CASE("the shortest length is nearest, and lengths share a shelf where they do not overlap") {
    const auto lines = measured(marked(
        {level(100.0, 500.0, "all"), level(100.0, 250.0, "left"), level(250.0, 500.0, "right")}));
    REQUIRE(lines.size() == 3);
    CHECK(lines[0].from.y() == 140.0); // left and right, side by side
    CHECK(lines[1].from.y() == 140.0);
    CHECK(lines[2].from.y() == 140.0 + kShelf_px);
    CHECK((lines[2].to - lines[2].from).norm() == 400.0);
}

TEST_CASE("larger text stands on shelves farther apart") {
    const auto lines = measured(marked({level(100.0, 500.0, "a"), level(100.0, 300.0, "b")}, 2.0));
    REQUIRE(lines.size() == 2);
    CHECK(lines[1].from.y() - lines[0].from.y() == Approx(2.0 * kShelf_px));
}

TEST_CASE("a length of nothing has no mark") {
    CHECK(marked({level(100.0, 100.4, "0 m")}).empty());
}

TEST_CASE("mark and words have the role that is asked for, and words are never upside down") {
    DimensionLine wrong = level(340.0, 100.0, "taken: 0.60 m"); // from right to left
    wrong.role = wrong.words_role = Role::wrong;
    const auto shapes = marked({wrong});
    CHECK(measured(shapes)[0].stroke.role == Role::wrong);
    for (const Triangle& head : all_of<Triangle>(shapes))
        CHECK(head.fill == Role::wrong);
    const Label words = all_of<Label>(shapes)[0];
    CHECK(words.role == Role::wrong);
    CHECK(words.turn_rad == Approx(0.0).margin(1e-12)); // rounding of an arctangent
}

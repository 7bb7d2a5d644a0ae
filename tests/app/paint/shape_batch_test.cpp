#include "app/paint/shape_batch.h"
#include "catch.h"

#include <cmath>

using namespace steelyard;
using namespace steelyard::app;
using scene::Point;

namespace {

std::vector<ShapeRecord> records_of(const std::vector<scene::Shape>& shapes,
                                    const Point& offset_px = Point::Zero()) {
    scene::Drawing drawing;
    drawing.shapes = shapes;
    std::vector<ShapeRecord> records;
    append_shapes(drawing, offset_px, scene::Look::light, records);
    return records;
}

bool is_kind(const ShapeRecord& record, ShapeKind kind) {
    return record.kind == static_cast<float>(kind);
}

} // namespace

TEST_CASE("each shape becomes as many records as it has strokes and fills") {
    const scene::Stroke stroke;
    CHECK(records_of({scene::Line{}}).size() == 1);
    CHECK(records_of({scene::Polyline{{{0, 0}, {1, 0}, {1, 1}, {5, 5}}, stroke}}).size() == 3);
    CHECK(records_of({scene::Polyline{{{3, 3}}, stroke}}).empty());
    CHECK(records_of({scene::Arc{}}).size() == 1);
    CHECK(records_of({scene::Triangle{{0, 0}, {1, 0}, {0, 1}, scene::Role::ink}}).size() == 1);
    CHECK(records_of({scene::Triangle{}}).empty()); // without area there is nothing to see
    scene::Disc disc;
    CHECK(records_of({disc}).empty());
    disc.fill = scene::Role::ink;
    CHECK(records_of({disc}).size() == 1);
    disc.outline = stroke;
    CHECK(records_of({disc}).size() == 2);
    scene::Box box;
    box.outline = stroke;
    CHECK(records_of({box}).size() == 1);
    CHECK(records_of({scene::Label{}}).empty()); // text is painted apart
}

TEST_CASE("a line is a box along it with round ends, moved by the offset") {
    // 3-4-5: length 50 px, middle (15, 20).
    const auto records =
        records_of({scene::Line{{0.0, 0.0}, {30.0, 40.0}, {scene::Role::ink, 4.0}}}, {100.0, 0.0});
    REQUIRE(records.size() == 1);
    const ShapeRecord& line = records.front();
    CHECK(is_kind(line, ShapeKind::box_fill));
    CHECK(line.centre == std::array{115.0F, 20.0F});
    CHECK(line.half == std::array{27.0F, 2.0F}); // half of 50 and half the width; round ends
    CHECK(line.turn[0] == Approx(0.6F));
    CHECK(line.turn[1] == Approx(0.8F));
    CHECK(line.form[2] == 2.0F); // corners as round as the line is wide
}

TEST_CASE("dashes carry their pattern to the shader") {
    const auto records = records_of({scene::Line{
        {0.0, 0.0}, {100.0, 0.0}, {scene::Role::effort, 1.5, scene::Dash::dashed, 0.7}}});
    REQUIRE(records.size() == 1);
    CHECK(is_kind(records.front(), ShapeKind::dashes));
    CHECK(records.front().form == std::array{50.75F, 0.75F, 6.0F, 6.0F});
    CHECK(records.front().colour[3] == 0.7F);
}

TEST_CASE("a triangle is told by its inscribed circle and the directions out of its sides") {
    // Sides 30, 40 and 50: the circle has the radius (30 + 40 - 50) / 2 = 10 (Euclid IV.4).
    for (const bool other_way : {false, true}) {
        const Point b{40.0, 0.0};
        const Point c{0.0, 30.0};
        const auto records = records_of(
            {scene::Triangle{{0.0, 0.0}, other_way ? c : b, other_way ? b : c, scene::Role::load}});
        REQUIRE(records.size() == 1);
        const ShapeRecord& triangle = records.front();
        CHECK(triangle.centre == std::array{10.0F, 10.0F});
        CHECK(triangle.half[0] == Approx(30.0F)); // along the long side, and square to it
        CHECK(triangle.half[1] == Approx(14.0F));
        CHECK(triangle.form_more[2] == Approx(10.0F));
        const auto on_sheet = [&](float x, float y) {
            const auto& turn = triangle.turn;
            return std::array{turn[0] * x - turn[1] * y, turn[1] * x + turn[0] * y};
        };
        // Up, left, and square to the long side: 3-4-5.
        const auto first = on_sheet(triangle.form[0], triangle.form[1]);
        const auto second = on_sheet(triangle.form[2], triangle.form[3]);
        const auto last = on_sheet(triangle.form_more[0], triangle.form_more[1]);
        CHECK(first[0] == Approx(other_way ? -1.0 : 0.0).margin(1e-6));
        CHECK(first[1] == Approx(other_way ? 0.0 : -1.0).margin(1e-6));
        CHECK(second[0] == Approx(0.6));
        CHECK(second[1] == Approx(0.8));
        CHECK(last[0] == Approx(other_way ? 0.0 : -1.0).margin(1e-6));
        CHECK(last[1] == Approx(other_way ? -1.0 : 0.0).margin(1e-6));
    }
}

TEST_CASE("a form is its triangles, whose sides within it overlap") {
    const auto records = records_of({scene::Outline{
        {{{0.0, 0.0}, {40.0, 0.0}, {40.0, 30.0}, {0.0, 30.0}}}, scene::Role::skin}});
    REQUIRE(records.size() == 2);
    for (const ShapeRecord& record : records) {
        CHECK(is_kind(record, ShapeKind::triangle));
        CHECK(record.colour[3] == 1.0F);
        // Directions are of length 1, whatever the side: a soft edge is a pixel wide.
        for (const auto& way : {std::array{record.form[0], record.form[1]},
                                std::array{record.form[2], record.form[3]},
                                std::array{record.form_more[0], record.form_more[1]}})
            CHECK(std::hypot(way[0], way[1]) == Approx(1.0F));
        // One side lies within: the diagonal, which is the longest. Its nearer end is where the
        // sides of 30 and 50 meet: half of 30 + 50 - 40 from where the circle touches.
        const float sum = std::floor(record.form_more[3] / 4096.0F);
        const float within = std::fmod(sum, 8.0F);
        CHECK((within == 1.0F || within == 2.0F || within == 4.0F));
        CHECK(record.form_more[3] - 4096.0F * sum == Approx(20.0F).margin(0.01));
    }
}

TEST_CASE("an arc is told by its middle direction and half its opening") {
    const scene::Arc arc{{50.0, 60.0}, 38.0, -1.5, -0.5, {scene::Role::load, 3.0}};
    const auto records = records_of({arc});
    REQUIRE(records.size() == 1);
    CHECK(is_kind(records.front(), ShapeKind::arc));
    CHECK(records.front().turn[0] == Approx(std::cos(-1.0)));
    CHECK(records.front().turn[1] == Approx(std::sin(-1.0)));
    CHECK(records.front().form[0] == 38.0F);
    CHECK(records.front().form[1] == 1.5F);
    CHECK(records.front().form[2] == Approx(0.5));
    CHECK(records.front().form_more[0] == Approx(std::cos(0.5)));
    CHECK(records.front().form_more[1] == Approx(std::sin(0.5)));
    // More than a full turn is a full circle.
    const auto full = records_of({scene::Arc{{0.0, 0.0}, 10.0, 0.0, 100.0, {}}});
    CHECK(full.front().form[2] == Approx(3.14159265));
}

TEST_CASE("corners are never rounder than the box allows") {
    scene::Box box;
    box.size_px = {20.0, 8.0};
    box.corner_px = 6.0;
    box.fill = scene::Role::load;
    CHECK(records_of({box}).front().form[2] == 4.0F);
}

TEST_CASE("colours are the palette's for the look") {
    scene::Drawing drawing;
    drawing.shapes.emplace_back(scene::Triangle{{0, 0}, {1, 0}, {0, 1}, scene::Role::effort});
    for (const scene::Look look : {scene::Look::light, scene::Look::dark}) {
        std::vector<ShapeRecord> records;
        append_shapes(drawing, Point::Zero(), look, records);
        const scene::Rgb rgb = scene::colour_of(scene::Role::effort, look);
        CHECK(std::lround(records.front().colour[0] * 255.0F) == rgb.red);
        CHECK(std::lround(records.front().colour[1] * 255.0F) == rgb.green);
        CHECK(std::lround(records.front().colour[2] * 255.0F) == rgb.blue);
    }
}

TEST_CASE("records are appended after those that are there, in painting order") {
    scene::Drawing drawing;
    drawing.shapes.emplace_back(scene::Triangle{{0, 0}, {1, 0}, {0, 1}, scene::Role::effort});
    drawing.shapes.emplace_back(scene::Line{});
    std::vector<ShapeRecord> records(2);
    append_shapes(drawing, Point::Zero(), scene::Look::light, records);
    REQUIRE(records.size() == 4);
    CHECK(is_kind(records[2], ShapeKind::triangle));
    CHECK(is_kind(records[3], ShapeKind::box_fill));
}

#include "catch.h"
#include "publish/files/written_text.h"
#include "publish/hostile_text.h"
#include "publish/pictures/sample_drawing.h"
#include "publish/pictures/svg.h"

#include <limits>
#include <pugixml.hpp>
#include <sstream>

using namespace steelyard;
using namespace steelyard::publish;

namespace {

/// The SVG as an independent XML reader sees it.
pugi::xml_document read_back(const scene::Drawing& drawing, const SvgStyle& style = {}) {
    const auto svg = svg_of(drawing, style);
    REQUIRE(svg);
    pugi::xml_document document;
    const auto parsed = document.load_buffer(svg->data(), svg->size(),
                                             pugi::parse_default | pugi::parse_ws_pcdata_single);
    INFO(parsed.description());
    REQUIRE(parsed);
    return document;
}

scene::Drawing only(const scene::Shape& shape) {
    scene::Drawing drawing;
    drawing.shapes = {shape};
    return drawing;
}

} // namespace

TEST_CASE("an SVG states its size, its title and its description") {
    const auto document = read_back(sample_drawing());
    const auto svg = document.child("svg");
    CHECK(std::string(svg.attribute("viewBox").value()) == "0 0 400 300");
    CHECK(std::string(svg.child("title").text().get()) == "A boat trolley");
    CHECK(std::string(svg.child("desc").text().get()) == "A second-class lever.");
    CHECK(std::string(svg.attribute("role").value()) == "img");
    const std::string labelled = svg.attribute("aria-labelledby").value();
    CHECK_THAT(labelled, ContainsSubstring(svg.child("title").attribute("id").value()));
    CHECK_THAT(labelled, ContainsSubstring(svg.child("desc").attribute("id").value()));
}

TEST_CASE("a drawing without a sheet has nothing behind its shapes") {
    scene::Drawing drawing = sample_drawing();
    const auto sheets = [](const scene::Drawing& of) {
        const auto document = read_back(of);
        const auto rect = document.child("svg").child("rect");
        return rect && std::string(rect.attribute("width").value()) == "400";
    };
    CHECK(sheets(drawing));
    drawing.has_sheet = false;
    CHECK_FALSE(sheets(drawing));
}

TEST_CASE("every shape of a drawing is an element of its SVG, in painting order") {
    const auto document = read_back(sample_drawing());
    const auto svg = document.child("svg");
    std::string names;
    for (const auto element : svg.children())
        names += std::string(element.name()) + ' ';
    CHECK(names ==
          "title desc rect rect rect line line line polyline path path circle polygon path "
          "text text ");
}

TEST_CASE("labels are text on their baseline, in Inter, with digits of one width") {
    const auto document = read_back(sample_drawing());
    const auto svg = document.child("svg");
    CHECK_THAT(std::string(svg.attribute("font-family").value()), ContainsSubstring("Inter"));
    CHECK_THAT(std::string(svg.attribute("style").value()), ContainsSubstring("tabular-nums"));
    const auto label = svg.child("text");
    CHECK(std::string(label.text().get()) == "441 N");
    CHECK(label.attribute("x").as_double() == 200.0);
    CHECK(label.attribute("y").as_double() == 280.0);
    CHECK(label.attribute("font-size").as_double() == 22.0);
    CHECK(std::string(label.attribute("text-anchor").value()) == "middle");
    const auto turned = label.next_sibling("text");
    CHECK(std::string(turned.attribute("text-anchor").value()) == "end");
    CHECK(std::string(turned.attribute("transform").value()) == "rotate(-22.92 380 260)");
}

TEST_CASE("dotted lines are round dots and dashed lines are dashes") {
    const auto dotted = read_back(
        only(scene::Line{{0.0, 0.0}, {9.0, 0.0}, {scene::Role::ink, 4.0, scene::Dash::dotted}}));
    const auto dots = dotted.child("svg").child("line");
    CHECK(std::string(dots.attribute("stroke-dasharray").value()) == "0 9");
    CHECK(std::string(dots.attribute("stroke-linecap").value()) == "round");
    const auto dashed = read_back(
        only(scene::Line{{0.0, 0.0}, {9.0, 0.0}, {scene::Role::ink, 4.0, scene::Dash::dashed}}));
    CHECK(std::string(dashed.child("svg").child("line").attribute("stroke-dasharray").value()) ==
          "6 6");
}

TEST_CASE("an arc keeps its turn: clockwise on the sheet for a growing angle") {
    // Quarter of a circle of radius 10 from +x to +y (down the sheet), by hand: (10,0) to (0,10),
    // the small arc, sweep flag 1 (SVG 1.1, section 8.3.8: "positive-angle" direction).
    const auto quarter =
        read_back(only(scene::Arc{{0.0, 0.0}, 10.0, 0.0, 0.5 * 3.14159265358979, {}}));
    CHECK(std::string(quarter.child("svg").child("path").attribute("d").value()) ==
          "M10 0A10 10 0 0 1 0 10");
    const auto most =
        read_back(only(scene::Arc{{0.0, 0.0}, 10.0, 0.0, -1.5 * 3.14159265358979, {}}));
    CHECK(std::string(most.child("svg").child("path").attribute("d").value()) ==
          "M10 0A10 10 0 1 0 0 10");
    const auto whole = read_back(only(scene::Arc{{0.0, 0.0}, 10.0, 1.0, 8.0, {}}));
    CHECK(whole.child("svg").child("circle"));
}

TEST_CASE("hostile text comes through an SVG unharmed and harmless") {
    for (const std::string& text : hostile_texts()) {
        scene::Drawing drawing = only(scene::Label{{10.0, 10.0}, text});
        drawing.title = text;
        drawing.description = text;
        const auto document = read_back(drawing, {scene::Look::light, "a\"b", true});
        const auto svg = document.child("svg");
        CHECK(svg.child("text").text().get() == one_line(text));
        CHECK(svg.child("title").text().get() == one_line(text));
        CHECK(svg.child("desc").text().get() == one_line(text));
        CHECK_FALSE(svg.child("script"));
    }
}

TEST_CASE("a drawing inside a page has no XML declaration") {
    CHECK(svg_of(sample_drawing())->substr(0, 5) == "<?xml");
    CHECK(svg_of(sample_drawing(), {scene::Look::print, "q1", false})->substr(0, 4) == "<svg");
}

TEST_CASE("each look paints its own colours") {
    const auto light = svg_of(sample_drawing(), {scene::Look::light, "d", true});
    const auto dark = svg_of(sample_drawing(), {scene::Look::dark, "d", true});
    CHECK_THAT(*light, ContainsSubstring("#0072B2"));
    CHECK_THAT(*dark, ContainsSubstring("#56B4E9"));
    CHECK_THAT(*dark, !ContainsSubstring("#0072B2"));
}

TEST_CASE("a broken drawing gives an error, not an SVG with nan in it") {
    scene::Drawing drawing;
    drawing.shapes = {scene::Line{{std::numeric_limits<double>::quiet_NaN(), 0.0}, {1.0, 1.0}, {}}};
    REQUIRE_FALSE(svg_of(drawing));
    CHECK(svg_of(drawing).error().fault == PublishFault::bad_place);
}

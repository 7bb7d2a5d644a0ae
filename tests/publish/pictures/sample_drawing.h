#pragma once
// One drawing with every kind of shape, for the tests of what is written from drawings.

#include "scene/drawing.h"

inline steelyard::scene::Drawing sample_drawing() {
    using namespace steelyard::scene;
    Drawing drawing;
    drawing.size_px = {400.0, 300.0};
    drawing.title = "A boat trolley";
    drawing.description = "A second-class lever.";
    drawing.shapes = {
        Box{{100.0, 50.0}, {80.0, 40.0}, 6.0, 0.0, Role::effort, 1.0, std::nullopt},
        Box{{300.0, 50.0}, {80.0, 40.0}, 0.0, 0.5, std::nullopt, 1.0, Stroke{Role::ink, 2.0}},
        Line{{20.0, 100.0}, {380.0, 100.0}, {Role::load, 6.0}},
        Line{{20.0, 120.0}, {380.0, 120.0}, {Role::reaction, 4.0, Dash::dotted}},
        Line{{20.0, 140.0}, {380.0, 140.0}, {Role::load, 1.5, Dash::dashed, 0.7}},
        Polyline{{{20.0, 160.0}, {60.0, 180.0}, {100.0, 160.0}}, {Role::ink, 2.5}},
        Arc{{200.0, 200.0}, 30.0, 0.0, 1.5, {Role::effort, 2.5}},
        Arc{{200.0, 200.0}, 40.0, 0.0, -4.0, {Role::load, 2.5}},
        Disc{{320.0, 200.0}, 20.0, Role::load, 0.5, Stroke{Role::ink, 2.5}},
        Triangle{{60.0, 200.0}, {40.0, 240.0}, {80.0, 240.0}, Role::ink, 1.0},
        Outline{{{{120.0, 200.0}, {160.0, 200.0}, {160.0, 240.0}, {120.0, 240.0}},
                 {{130.0, 210.0}, {130.0, 230.0}, {150.0, 230.0}, {150.0, 210.0}}},
                Role::shirt},
        Label{{200.0, 280.0}, "441 N", TextSize::reading, true, Role::load, Align::centre, 0.0},
        Label{
            {380.0, 260.0}, "arm 0.244 m", TextSize::body, false, Role::effort, Align::right, -0.4},
    };
    return drawing;
}

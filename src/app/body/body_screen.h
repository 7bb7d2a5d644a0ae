#pragma once
// The body: an exercise on the stage, its curves, and the column that says which joint carries
// what.

#include "app/body/body_model.h"
#include "app/frame/frame_input.h"
#include "app/frame/layout.h"
#include "app/look/style.h"
#include "scene/body_stage.h"
#include "scene/curve_plot.h"

namespace steelyard::app {

/// The body between frames.
struct BodyScreen {
    BodyModel model;
    scene::Camera camera;
    scene::BodyStage stage;
    bool stage_fits = false;
    bool playing = false;
    double played_s = 0.0; ///< into the repetition
    bool holds_plot = false;
    int gesture = 1;

    bool moving() const { return playing; }
};

/// Puts an exercise on the stage and looks at it as its setup says.
void open_exercise(BodyScreen& screen, const setup::BodySetup& setup);

struct BodyOutcome {
    scene::Drawing drawing;
    bool changed = false; ///< the exercise on the stage is another than before
};

/// Runs one frame. Keys: left and right scrub, Space plays, Tab chooses the next axis, up and down
/// make the load heavier or lighter, 1 2 3 look from the side, the front, above.
BodyOutcome run_body(const Style& style, const Layout& layout, const FrameInput& input,
                     setup::UnitSystem units, BodyScreen& screen);

} // namespace steelyard::app

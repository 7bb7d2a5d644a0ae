#pragma once
// The bench: stage, column and the numbers of the chosen part, in one frame.

#include "app/bench/column.h"
#include "app/bench/number_field.h"
#include "app/bench/settle.h"
#include "app/bench/stage_input.h"
#include "app/frame/frame_input.h"
#include "app/frame/layout.h"

namespace steelyard::app {

/// The bench between frames.
struct BenchScreen {
    BenchModel model;
    StageState stage;
    ColumnState column;
    NumberField field;
    Settle settle;
    double bar_bottom_px = 0.0; ///< how far down the numbers of some part have reached
    bool less_motion = false;   ///< nothing is animated

    scene::LeverPose pose() const { return {model.state.hand_N, settle.tilt_rad()}; }
    bool moving() const { return !settle.at_rest(); }
};

/// What a frame of the bench asks of the application.
struct BenchFrame {
    scene::Drawing drawing; ///< of the stage; to be painted under what was drawn with ImGui
    bool ask_question = false;
    bool changed = false; ///< the setup on the bench is another than before
};

/// Runs one frame: input first, so that what is drawn already shows its result.
BenchFrame run_bench(const Style& style, const Layout& layout, const FrameInput& input,
                     BenchScreen& screen);

} // namespace steelyard::app

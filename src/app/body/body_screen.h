#pragma once
// The body: an exercise on the stage, its curves, and the column that says which joint carries
// what.

#include "app/bench/bench_screen.h"
#include "app/body/body_bar.h"
#include "app/body/body_column.h"
#include "app/body/body_picture.h"
#include "app/build/build_column.h"
#include "setup/lever/lever_setup.h"

#include <filesystem>

namespace steelyard::app {

/// The body between frames.
struct BodyScreen {
    BodyModel model;
    scene::Camera camera;
    scene::BodyStage stage;
    bool stage_fits = false;
    BodyLooks looks;
    bool playing = false;
    double played_s = 0.0; ///< into the repetition
    BodyStageState hand;
    BodyNumberField field;
    ColumnFace face = ColumnFace::readings;
    BodyColumnState column;
    BuildColumnState build;
    std::vector<setup::BodySetup> stances; ///< to begin an exercise from, or to change to
    PlotPanel plot;
    BodyPicture picture;
    SpreadKeeper spread;
    std::string notice; ///< of what was copied or written last
    /// Where pictures are written; empty = nowhere.
    std::filesystem::path folder;
    publish::Tools tools; ///< what makes them

    bool moving() const { return playing || (column.spread && spread.busy()); }
};

/// Puts an exercise on the stage and looks at it as its setup says.
void open_exercise(BodyScreen& screen, const setup::BodySetup& setup);

struct BodyFrame {
    const scene::Drawing* drawing = nullptr; ///< kept by the screen until its next frame
    bool changed = false; ///< the exercise on the stage, or its place, is another than before
    std::optional<setup::LeverSetup> lever; ///< of the chosen joint, to be shown on the bench
};

/// Runs one frame. Keys besides those of press_on_body: Space plays, 1 2 3 look from the side, the
/// front, above, Home looks as the setup says, R unfolds the next reading, P chooses what is
/// plotted, S shows how much bodies differ, C shows the chosen joint near by and goes back, N shows
/// the muscles that rest, M turns the column to how the exercise is made and
/// back, + and - go nearer and farther.
BodyFrame run_body(const Style& style, const Layout& layout, const FrameInput& input,
                   setup::UnitSystem units, BodyScreen& screen);

} // namespace steelyard::app

#pragma once
// The stage of side by side: A and B at one scale, the curves with the one cursor that scrubs both,
// and the strip on which their hardest moments meet.

#include "app/frame/layout.h"
#include "app/look/style.h"
#include "app/side_by_side/side_by_side_model.h"
#include "mechanics/muscle/muscle.h"
#include "scene/body/body_stage.h"
#include "scene/plot/curve_plot.h"

#include <array>

namespace steelyard::app {

/// Where things lie on the stage.
struct PairLayout {
    double scale = 1.0; ///< of text
    scene::Point stage_px = scene::Point::Zero();
    double head_px = 0.0;  ///< above: the row of places and the names of A and B
    double plot_px = 0.0;  ///< height of the curves with their words; 0 = nothing moves
    bool low = false;      ///< little height: only what is needed stands beside the figures
    bool bare = false;     ///< hardly any: with very large text there are no figures
    double strip_px = 0.0; ///< height of the strip with its words

    scene::Point panel_px() const {
        return {0.5 * stage_px.x(), stage_px.y() - plot_px - strip_px};
    }
};
PairLayout lay_out_pair(const Style& style, const Layout& layout, const SideBySideModel& model);

/// Both exercises at one scale, each in its half.
std::array<scene::BodyStage, 2> fit_pair(const PairLayout& place, const SideBySideModel& model);

/// Torque at the chosen joint through both ranges; its cursor is the scrubber.
scene::CurvePlot plot_of_pair(const PairLayout& place, const SideBySideModel& model,
                              const ComparedBody& b);

/// Draws the stage without the names of A and B.
/// @param b        B as it is to be shown: the model's, or on its way there
/// @param muscles  all that are known; those of the chosen joint are drawn
scene::Drawing draw_pair(const PairLayout& place, const SideBySideModel& model,
                         const ComparedBody& b, const std::array<scene::BodyStage, 2>& stages,
                         const std::vector<mechanics::Muscle>& muscles, setup::UnitSystem units);

} // namespace steelyard::app

#pragma once
// The plot on the body's stage: what is plotted is chosen by a word, the cursor is dragged, the
// values under the pointer are told, and all of it can be taken away as numbers or as a picture.

#include "app/body/body_plot.h"
#include "app/frame/frame_input.h"
#include "app/frame/layout.h"
#include "app/kept.h"
#include "app/look/style.h"
#include "publish/tools.h"
#include "scene/marks/label_board.h"

#include <filesystem>
#include <optional>

namespace steelyard::app {

/// What the line of values under the pointer is made from.
struct ToldFrom {
    int plot = 0; ///< PlotPanel::made_for
    double hover = 0.0;
    float width_px = 0.0F;
    float text_scale = 1.0F;

    bool operator==(const ToldFrom&) const = default;
};

/// The plot between frames.
struct PlotPanel {
    PlotSubject subject = PlotSubject::torque;
    scene::CurvePlot plot; ///< as it was made last
    bool held = false;     ///< the cursor follows the pointer
    std::optional<double> hover;
    int made_for = -1; ///< what the curves were made from
    Kept<ToldFrom, std::string> told;
};

/// Room for the plot on a stage: at the top right. No room (zero size) on a small stage.
scene::Rect plot_room(const Layout& layout, double text_scale);

/// Makes the plot anew where something changed, and moves its cursor.
void keep_plot(const BodyModel& model, setup::UnitSystem units, const scene::PlotBand* band,
               const Style& style, const Layout& layout, PlotPanel& panel);

/// Reads the pointer.
/// @return where the repetition is to go, while the cursor is dragged
std::optional<double> point_at_plot(const StagePointer& pointer, PlotPanel& panel);

/// Draws the words around the plot: subjects above, what can be taken away below.
/// @param folder  of the person's own, for pictures
/// @param tools   what makes pictures
/// @return what was done, in a sentence; empty when nothing was
std::string draw_plot_words(const Style& style, const BodyModel& model, setup::UnitSystem units,
                            const std::filesystem::path& folder, const publish::Tools& tools,
                            PlotPanel& panel);

} // namespace steelyard::app

#include "publish/figures/lever_figure.h"

#include "publish/figures/caption.h"
#include "scene/lever/lever_drawing.h"
#include "scene/stage_view.h"
#include "words/lever/lever_words.h"

#include <algorithm>

namespace steelyard::publish {
namespace {

/// Room for labels and strip on a large sheet, less on a small one.
scene::StageMargins stage_margins_on(const scene::Point& sheet_px) {
    return {std::min(120.0, 0.16 * sheet_px.x()), std::min(150.0, 0.3 * sheet_px.y()),
            std::min(140.0, 0.28 * sheet_px.y())};
}

} // namespace

scene::Drawing lever_figure(const setup::LeverSetup& setup, const mechanics::LeverResult& result,
                            const scene::Point& sheet_px) {
    scene::LeverDrawing how;
    how.limb = setup.limb;
    how.name = setup.head.name;
    how.sentence = setup.head.description;
    how.units = setup.head.units;
    scene::Drawing drawing = scene::draw_lever(
        setup.lever, result,
        scene::fit_lever(setup.lever, result, sheet_px, stage_margins_on(sheet_px)), how);
    drawing.description += ' ' + words::lever_summary(setup.lever, result, setup.head.units);
    return drawing;
}

scene::Drawing captioned_lever_figure(const setup::LeverSetup& setup,
                                      const mechanics::LeverResult& result,
                                      const scene::Point& sheet_px) {
    const Caption caption(words::lever_summary(setup.lever, result, setup.head.units),
                          sheet_px.x());
    scene::Drawing drawing =
        lever_figure(setup, result, sheet_px - scene::Point(0.0, caption.height_px()));
    caption.put_below(drawing);
    return drawing;
}

} // namespace steelyard::publish

#pragma once
// A body in one place of an exercise, drawn with the forces on it and the arms to every joint that
// could be the axis.

#include "mechanics/muscle/muscle_on_body.h"
#include "scene/body_stage.h"
#include "setup/body_words.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::scene {

struct BodyDrawing {
    std::string name;
    std::string sentence;
    setup::UnitSystem units = setup::UnitSystem::si;
    double text_scale = 1.0;
    double heading_top_px = 34.0;
    /// Hinges that could be called the axis, and which of them is looked at.
    std::vector<mechanics::Hinge> axes;
    std::size_t chosen = 0;
    /// Muscles of the chosen hinge; empty = none are drawn.
    std::optional<mechanics::HingeMuscles> muscles;
    bool torques = true; ///< sizes of torques and muscle forces; false while they are predicted
    bool strip = true;
    double strip_right_px = 0.0; ///< room kept free at the right of the strip
};

using setup::joint_word;

Drawing draw_body(const mechanics::BodyCase& body_case, const mechanics::BodyResult& result,
                  const BodyStage& stage, const BodyDrawing& how);

} // namespace steelyard::scene

#pragma once
// What the body's column says about the chosen axis. Made from the model alone, so that it can be
// tested without a window.

#include "app/body/body_model.h"
#include "scene/drawing.h"
#include "words/body/body_steps.h"

#include <string>
#include <vector>

namespace steelyard::app {

/// One candidate axis beside the others.
struct BodyBar {
    std::string name;   ///< "low back", "both hips"
    std::string value;  ///< "28.7 N·m"
    double share = 0.0; ///< of the largest torque, 0 to 1
};

/// One line of the column.
struct BodyRow {
    words::BodyQuantity id{}; ///< which steps it unfolds into
    std::string name;         ///< "Load arm"
    std::string value;        ///< "31.2 cm", or "none"
    scene::Role role = scene::Role::ink;
};

/// Muscle force beside load, as two bars from a shared zero.
struct ForcePair {
    double load_N = 0.0;
    double muscles_N = 0.0;
    std::string words; ///< "15.8 times the load"
};

struct BodyReadings {
    std::string headline;      ///< "the elbow", "both hips"
    std::string sentence;      ///< how much of it the next joint has, or what the muscles must do
    std::vector<BodyBar> bars; ///< one for each candidate axis
    bool both_sides = false;   ///< some of the bars are of two sides
    std::string at;            ///< "At the elbow", "At each hip": whose the rows are
    std::vector<BodyRow> rows;
    std::string why_no_force;      ///< empty where a muscle force is said, or the muscles rest
    std::optional<ForcePair> pair; ///< with the load on that joint; empty without load or force
    std::string balance;           ///< how it would fall; empty when it stands
};

BodyReadings read_axes(const BodyModel& model, setup::UnitSystem units);

/// How a row of the chosen axis was computed.
std::vector<words::ComputedStep> steps_of(const BodyModel& model, words::BodyQuantity id,
                                          setup::UnitSystem units);

} // namespace steelyard::app

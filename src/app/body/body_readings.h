#pragma once
// What the body's column says about the chosen axis. Made from the model alone, so that it can be
// tested without a window.

#include "app/body/body_model.h"
#include "scene/drawing.h"
#include "words/body/body_steps.h"

#include <string>
#include <vector>

namespace steelyard::app {

/// What stands at a bar: whose torque, and how large.
struct BarWords {
    std::string name;  ///< "low back", "both hips", "each hip"
    std::string value; ///< "28.7 N·m"
};

/// One candidate axis beside the others. Where its joint is paired the bar is of both sides, and
/// one side a part of it: one hip is never set against the whole low back.
struct BodyBar {
    BarWords both;      ///< of both sides together, where there are two
    BarWords one;       ///< of one side; the same where there is but one
    double share = 0.0; ///< of the largest torque, 0 to 1
    double part = 1.0;  ///< of the bar that one side has, 0 to 1
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
    std::string strength;          ///< the torque beside what people could hold; may be empty
    std::string basis;             ///< what the muscles' arms rest on; empty without a force
    std::string why_no_force;      ///< empty where a muscle force is said, or the muscles rest
    std::optional<ForcePair> pair; ///< with the load on that joint; empty without load or force
    std::string balance;           ///< how it would fall; empty when it stands
    std::string sunk;              ///< what lies below the floor; empty when nothing does
};

BodyReadings read_axes(const BodyModel& model, setup::UnitSystem units);

/// How a row of the chosen axis was computed.
std::vector<words::ComputedStep> steps_of(const BodyModel& model, words::BodyQuantity id,
                                          setup::UnitSystem units);

} // namespace steelyard::app

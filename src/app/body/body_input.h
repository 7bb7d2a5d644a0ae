#pragma once
// What the pointer and the keyboard mean on the body's stage.
//
// A grip that the repetition moves slides along its way: dragging it goes through the repetition.
// Pulled off its way by more than kLeavesTrail_px, or with Alt held, it poses the body from then
// on: the limb follows within the ranges of its joints, and the whole path moves along with it. A
// grip that the repetition leaves where it is poses the body at once. So nothing that only looks
// through the repetition ever changes the exercise.

#include "app/body/body_grips.h"
#include "app/frame/frame_input.h"
#include "app/kept.h"

#include <optional>

namespace steelyard::app {

/// What the grips and their places are made from.
struct GripsFrom {
    BodyStamp model;
    scene::BodyStage stage;

    bool operator==(const GripsFrom&) const = default;
};

/// What the stage remembers between frames.
struct BodyStageState {
    std::optional<BodyPart> chosen; ///< by Tab or by hand; empty: keys go through the repetition
    std::optional<BodyGrip> hovered;
    std::optional<BodyGrip> held;
    scene::Point held_offset_px = scene::Point::Zero(); ///< from the pointer to the grip
    scene::Point taken_at_px = scene::Point::Zero();    ///< pointer when the grip was taken
    double taken_size = 0.0;              ///< of the load when its arrow's head was taken [SI]
    std::vector<mechanics::Vec3> trail_m; ///< way of the held grip; empty: it poses
    int gesture = 0;                      ///< counts drags and runs of nudges
    std::optional<BodyPart> nudged;       ///< part of the run of nudges that goes on
    std::optional<BodyNumber> to_type;    ///< asked for: type this number
    Kept<GripsFrom, std::vector<BodyGrip>> grips;
};

/// How far a grip is pulled off its way before it poses the body [px].
inline constexpr double kLeavesTrail_px = 36.0;

/// The grips of what is shown now, made when they are first asked for.
const std::vector<BodyGrip>& grips_of(const BodyModel& model, const scene::BodyStage& stage,
                                      BodyStageState& state);

/// Turns what the pointer did into an intent; choice goes to the state at once.
std::optional<BodyIntent> point_on_body(const BodyModel& model, const scene::BodyStage& stage,
                                        const StagePointer& pointer, setup::UnitSystem units,
                                        BodyStageState& state);

/// Turns one key press into an intent, or into a change of what is chosen.
/// With nothing chosen left and right go through the repetition, up and down make the load heavier
/// or lighter. Tab chooses the next grip: the arrows then move it by a centimetre (Shift: five),
/// Enter types its number, Escape lets go. Page Up and Page Down size the load, A chooses the next
/// axis, Ctrl+Z and Ctrl+Y undo and redo.
std::optional<BodyIntent> press_on_body(const BodyModel& model, const scene::BodyStage& stage,
                                        const KeyPress& key, setup::UnitSystem units,
                                        BodyStageState& state);

/// What the hovered grip does, for a caption beside it.
std::string caption_of(const BodyModel& model, const scene::BodyStage& stage, const BodyGrip& grip);

} // namespace steelyard::app

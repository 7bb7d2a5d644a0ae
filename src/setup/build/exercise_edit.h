#pragma once
// An exercise made piece by piece: whose body, what it stands on, what it carries, how it moves,
// which axes are compared. Each edit gives an exercise that can be read again from its file, or
// says why it cannot be.

#include "setup/body/body_setup.h"

#include <tl/expected.hpp>

#include <cstddef>
#include <variant>
#include <vector>

namespace steelyard::setup {

struct ChangePerson {
    Person person;
};
/// Stands, sits, lies or hangs as another exercise does: its pose, what carries it and its axes.
/// The person, what they carry and the tempo stay; the way of a repetition does not.
struct TakeStance {
    BodySetup stance;
};
struct AddLoads {
    std::vector<mechanics::Resistance> loads;
};
struct ReplaceLoad {
    std::size_t index = 0;
    mechanics::Resistance load;
};
struct DropLoad {
    std::size_t index = 0;
};
/// A further part of the body touches, at the height at which it is, and stays there.
struct TouchWith {
    mechanics::Segment segment = mechanics::Segment::right_hand;
    mechanics::Patch patch = mechanics::Patch::palm;
};
/// A part that touched no longer does. One contact is always left.
struct LetGo {
    std::size_t contact = 0;
};
/// Whether a contact stays where it is while the body moves.
struct KeepContact {
    std::size_t contact = 0;
    bool sticks = true;
};
/// Moves from the present pose to itself, for the end to be posed; or holds it still.
struct Move {
    bool moves = true;
    double held_at = 0.0; ///< the place of the path at which it then holds still, 0 to 1
};
struct SetTempo {
    std::optional<mechanics::Tempo> tempo;
};
/// Which hinges could be called the axis, the one it is meant for first; at least one.
struct CompareAxes {
    std::vector<mechanics::Hinge> axes;
};
struct LookFrom {
    BodyView view = BodyView::side;
};

using ExerciseEdit =
    std::variant<ChangePerson, TakeStance, AddLoads, ReplaceLoad, DropLoad, TouchWith, LetGo,
                 KeepContact, Move, SetTempo, CompareAxes, LookFrom>;

/// The exercise with one edit made. Where a part that should touch no longer does, the least turn
/// that brings it back is made with it.
/// @return the exercise, ready to be solved; or what cannot be and what to turn
tl::expected<BodySetup, InputError> edited(BodySetup setup, const ExerciseEdit& edit,
                                           const std::vector<NamedSegmentTable>& tables);

/// Brings what touches back to where it touches, by turns that find_touch_fault finds, and looks
/// whether all can be computed with.
/// @return nothing, or what cannot be
std::optional<InputError> settle(BodySetup& setup);

/// Parts of the body that do not touch yet and could, the likeliest first: those nearest to the
/// floor.
std::vector<TouchWith> could_touch(const BodySetup& setup);

/// Hinges that are not compared and hold more than a trifle, those of the largest torque first.
std::vector<mechanics::Hinge> could_compare(const BodySetup& setup,
                                            const mechanics::BodyResult& solved);

} // namespace steelyard::setup

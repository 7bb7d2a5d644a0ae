#pragma once
// The numbers of an exercise that can be set: which ones a part has, their names, their values, and
// the exercise with one of them changed. Drags, nudges and typed numbers all go through here.

#include "mechanics/whatif/exercise.h"
#include "setup/units/units.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

enum class BodyPartKind {
    load,    ///< a resistance; index: which one
    fixture, ///< the pulley of a cable or the anchor of a band in the room; index: whose
    joint,   ///< index: number of the mechanics::Joint
};

/// What can be chosen on the body's stage.
struct BodyPart {
    BodyPartKind kind = BodyPartKind::load;
    std::size_t index = 0;

    bool operator==(const BodyPart&) const = default;
};

enum class BodyField {
    size,    ///< of a load: mass [kg], of a cable or partner its pull or push [N]
    along,   ///< of a load on a limb: from the limb's upper joint [m]
    slack,   ///< length of a band that does not pull [m]
    forward, ///< of a fixture: in front of the world's origin [m]
    up,      ///< of a fixture: above the floor [m]
    right,   ///< of a fixture: to the person's right [m]
    angle,   ///< of a hinge where the repetition stands [rad]
};

/// One number that can be set.
struct BodyNumber {
    BodyPart part;
    BodyField field = BodyField::size;
    mechanics::Hinge hinge = mechanics::Hinge::right_elbow_flexion; ///< for angles

    bool operator==(const BodyNumber&) const = default;
};

/// An exercise and where in its repetition it stands, 0 to 1.
struct StandingExercise {
    const mechanics::Exercise& exercise;
    double progress = 0.0;
};

/// The numbers that a part has, the most important first. A joint has the angles of its hinges.
std::vector<BodyNumber> numbers_of(const mechanics::Exercise& exercise, const BodyPart& part);

/// Present value [SI]; empty when the exercise has no such number.
std::optional<double> value_of(const StandingExercise& standing, const BodyNumber& number);

/// The exercise with one number set, kept within what can be: sizes at or above zero, angles within
/// the hinge's range from the start of the path to its end. An angle shifts start and end alike, so
/// that the joint makes the same way. Loads that go together (a pair of dumbbells) change together.
mechanics::Exercise with_value(const StandingExercise& standing, const BodyNumber& number,
                               double value_SI);

setup::Dimension dimension_of(const mechanics::Exercise& exercise, const BodyNumber& number);

/// What a number is called on the sheet: "mass", "pull", "elbow flexion".
std::string name_of(const mechanics::Exercise& exercise, const BodyNumber& number);
/// What a part is called: the load's name, "pulley", "right elbow".
std::string name_of(const mechanics::Exercise& exercise, const BodyPart& part);

/// Where a fixture is [m]; empty when the resistance has none in the room.
std::optional<mechanics::Vec3> fixture_place(const mechanics::Exercise& exercise,
                                             std::size_t resistance);
/// The exercise with a fixture elsewhere, at or above the floor.
mechanics::Exercise with_fixture(mechanics::Exercise exercise, std::size_t resistance,
                                 mechanics::Vec3 place_m);

} // namespace steelyard::app

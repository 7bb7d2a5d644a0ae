#include "setup/body_words.h"

#include "setup/format_quantity.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::setup {
namespace {

using mechanics::Hinge;

std::string quantity(double value, Dimension dimension, UnitSystem units) {
    return format_quantity(value, dimension, units);
}

/// Below it a joint is said to hold nothing, and in no direction.
constexpr double kSmallTorque_Nm = 0.05;

/// "hip 212 N·m (extension), low back 180 N·m (extension)".
std::string torques(const BodyReading& reading, UnitSystem units) {
    std::string text;
    for (const HingeReading& hinge : reading.hinges) {
        const double size_Nm = std::abs(hinge.muscle_Nm);
        text += fmt::format("{}{} {}", text.empty() ? "" : ", ", joint_word(hinge.hinge),
                            quantity(size_Nm, Dimension::torque, units));
        if (size_Nm >= kSmallTorque_Nm) {
            text += fmt::format(" ({})", asked_of_muscles(hinge.hinge, hinge.muscle_Nm));
        }
    }
    return text;
}

/// " The muscles of the hip pull with 4 200 N, and the joint bears 4 900 N."
std::string muscle_sentence(const HingeReading& hinge, UnitSystem units) {
    if (!hinge.muscles || hinge.muscles->solution.outcome != mechanics::MuscleOutcome::balanced) {
        return "";
    }
    const mechanics::MuscleSolution& solution = hinge.muscles->solution;
    double pull_N = 0.0;
    for (const mechanics::MuscleReading& muscle : solution.muscles) {
        pull_N += muscle.tension_N;
    }
    std::string text = fmt::format(" The muscles of the {} pull with {}", joint_word(hinge.hinge),
                                   quantity(pull_N, Dimension::force, units));
    if (solution.joint_reaction_N) {
        text += fmt::format(", and the joint bears {}",
                            quantity(solution.joint_reaction_N->norm(), Dimension::force, units));
    }
    return text + '.';
}

} // namespace

std::string joint_word(Hinge hinge) {
    const auto joint = mechanics::hinge_info(hinge).joint;
    std::string_view label = mechanics::joint_info(joint).label;
    for (const std::string_view side : {"right ", "left "}) {
        if (label.substr(0, side.size()) == side) {
            label.remove_prefix(side.size());
        }
    }
    return joint == mechanics::Joint::lumbar ? "low back" : std::string(label);
}

std::string axis_word(const std::vector<Hinge>& axes, Hinge axis) {
    const auto joint = mechanics::hinge_info(axis).joint;
    const auto same = std::count_if(axes.begin(), axes.end(), [&](Hinge other) {
        return mechanics::hinge_info(other).joint == joint;
    });
    std::string word = joint_word(axis);
    if (same > 1) {
        word += fmt::format(" {}", mechanics::hinge_info(axis).positive);
    }
    return word;
}

std::string_view asked_of_muscles(Hinge hinge, double muscle_Nm) {
    const mechanics::HingeInfo& info = mechanics::hinge_info(hinge);
    return muscle_Nm >= 0.0 ? info.positive : info.negative;
}

std::string body_summary(const BodySetup& setup, const BodyReading& reading, UnitSystem units) {
    std::string text = "Torques of the muscles";
    if (setup.exercise.path) {
        text += fmt::format(" at {:.0f} % of the way", 100.0 * reading.progress);
    }
    text += fmt::format(": {}.", torques(reading, units));
    if (!reading.hinges.empty()) {
        text += muscle_sentence(reading.hinges.front(), units);
    }
    return text;
}

} // namespace steelyard::setup

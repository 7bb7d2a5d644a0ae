#include "words/body/body_words.h"

#include "setup/muscle/muscle_file.h"
#include "setup/units/format_quantity.h"
#include "words/body/axis_shares.h"
#include "words/body/muscle_credit.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::words {
namespace {

using mechanics::Hinge;

std::string quantity(double value, setup::Dimension dimension, setup::UnitSystem units) {
    return setup::format_quantity(value, dimension, units);
}

/// "one hip 212 N·m (extension), low back 180 N·m (extension)".
std::string torques(const BodyReading& reading, setup::UnitSystem units) {
    std::vector<Hinge> axes;
    for (const HingeReading& hinge : reading.hinges)
        axes.push_back(hinge.hinge);
    std::string text;
    for (const HingeReading& hinge : reading.hinges) {
        const double size_Nm = std::abs(hinge.muscle_Nm);
        text += fmt::format("{}{} {}", text.empty() ? "" : ", ", one_side_word(axes, hinge.hinge),
                            quantity(size_Nm, setup::Dimension::torque, units));
        if (size_Nm >= kSmallTorque_Nm)
            text += fmt::format(" ({})", hinge.motion);
    }
    return text;
}

std::string not_modelled_sentence(const mechanics::MissingMovers& missing, Hinge hinge) {
    if (missing.action.empty()) {
        return "The muscles of this movement are not modelled here: no main mover of it is on "
               "file.";
    }
    std::string why;
    if (!missing.without_arms.empty())
        why = fmt::format("no moment arm is on file for {}", listing(missing.without_arms));
    if (!missing.arms_elsewhere.empty()) {
        why += fmt::format("{}there is no table for this position; the moment arms on file for {} "
                           "are of other positions",
                           why.empty() ? "" : "; ", listing(missing.arms_elsewhere));
    }
    return fmt::format("The muscles of this movement, {} of the {}, are not modelled here: {}.",
                       missing.action, joint_word(hinge), why);
}

std::string beyond_sentence(const mechanics::MuscleSolution& solution, setup::UnitSystem units) {
    std::string text;
    for (const mechanics::MuscleReading& muscle : solution.muscles) {
        if (!muscle.most_N || muscle.tension_N <= *muscle.most_N)
            continue;
        text += fmt::format("{}the {} {}, when its cross-section gives {} at most",
                            text.empty() ? "" : "; ", muscle.muscle,
                            quantity(muscle.tension_N, setup::Dimension::force, units),
                            quantity(*muscle.most_N, setup::Dimension::force, units));
    }
    return "No muscle force is given here, because by the moment arms on file it would be more "
           "than a muscle can produce: " +
           text + ".";
}

/// " The muscles of the hip pull with 4 200 N, and the joint bears 4 900 N."
std::string muscle_sentence(const HingeReading& hinge, setup::UnitSystem units) {
    const mechanics::MuscleSolution& solution = hinge.muscles.solution;
    if (solution.outcome != mechanics::MuscleOutcome::balanced) {
        const std::string why = why_no_force(solution, hinge.hinge, units);
        return why.empty() ? why : ' ' + why;
    }
    double pull_N = 0.0;
    for (const mechanics::MuscleReading& muscle : solution.muscles)
        pull_N += muscle.tension_N;
    const auto basis = least_sure_basis(hinge.listed, hinge.muscles);
    std::string text =
        fmt::format(" The muscles of the {} pull with {}{}", joint_word(hinge.hinge),
                    quantity(pull_N, setup::Dimension::force, units),
                    basis ? fmt::format(" (moment arms: {})", setup::basis_name(*basis)) : "");
    if (solution.joint_reaction_N) {
        text += fmt::format(", and the joint bears {}", quantity(solution.joint_reaction_N->norm(),
                                                                 setup::Dimension::force, units));
    }
    return text + '.';
}

} // namespace

std::string joint_word(Hinge hinge) {
    const auto joint = mechanics::hinge_info(hinge).joint;
    std::string_view label = mechanics::joint_info(joint).label;
    for (const std::string_view side : {"right ", "left "})
        if (label.substr(0, side.size()) == side)
            label.remove_prefix(side.size());
    return joint == mechanics::Joint::lumbar ? "low back" : std::string(label);
}

std::string movement_word(Hinge hinge) {
    const mechanics::HingeInfo& info = mechanics::hinge_info(hinge);
    const std::string_view joint = mechanics::joint_info(info.joint).name;
    const bool of_joint = info.name.substr(0, joint.size()) == joint; // not "forearm_rotation"
    std::string word(info.name.substr(of_joint ? joint.size() + 1 : info.name.rfind('_') + 1));
    std::replace(word.begin(), word.end(), '_', ' ');
    return word;
}

std::string axis_word(const std::vector<Hinge>& axes, Hinge axis) {
    const auto joint = mechanics::hinge_info(axis).joint;
    const auto same = std::count_if(axes.begin(), axes.end(), [&](Hinge other) {
        return mechanics::hinge_info(other).joint == joint;
    });
    const Hinge mirror = mechanics::hinge_info(axis).mirror;
    const bool both = mirror != axis && std::find(axes.begin(), axes.end(), mirror) != axes.end();
    std::string word = both ? std::string(mechanics::joint_info(joint).label) : joint_word(axis);
    if (same > 1)
        word += ' ' + movement_word(axis);
    return word;
}

std::string_view asked_of_muscles(Hinge hinge, double muscle_Nm) {
    const mechanics::HingeInfo& info = mechanics::hinge_info(hinge);
    return muscle_Nm >= 0.0 ? info.positive : info.negative;
}

std::string why_no_force(const mechanics::MuscleSolution& solution, Hinge hinge,
                         setup::UnitSystem units) {
    using mechanics::MuscleOutcome;
    switch (solution.outcome) {
    case MuscleOutcome::balanced:
    case MuscleOutcome::no_torque:
        return "";
    case MuscleOutcome::not_modelled:
        return not_modelled_sentence(solution.missing, hinge);
    case MuscleOutcome::beyond_cross_section:
        return beyond_sentence(solution, units);
    case MuscleOutcome::antagonists_work:
        return "The muscles on file cannot do it: their antagonists work.";
    case MuscleOutcome::no_arm:
        return "The muscles on file pass through the axis and cannot turn it.";
    }
    return "";
}

std::string body_summary(const setup::BodySetup& setup, const BodyReading& reading,
                         setup::UnitSystem units) {
    std::string text = "Torques of the muscles";
    if (setup.exercise.path)
        text += fmt::format(" at {:.0f} % of the way", 100.0 * reading.progress);
    text += fmt::format(": {}.", torques(reading, units));
    if (!reading.hinges.empty())
        text += muscle_sentence(reading.hinges.front(), units);
    return text;
}

} // namespace steelyard::words

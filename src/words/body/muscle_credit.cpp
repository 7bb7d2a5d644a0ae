#include "words/body/muscle_credit.h"

#include "mechanics/muscle/movers.h"
#include "setup/muscle/muscle_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace steelyard::words {
namespace {

using mechanics::Basis;
using mechanics::Hinge;
using mechanics::HingeMuscles;
using mechanics::Muscle;
using mechanics::MuscleLever;

constexpr std::array kBases{Basis::measured, Basis::open_model, Basis::illustrative, Basis::given};

/// The names of the muscles that pull, by what their arms rest on.
std::vector<std::string> pulling_by(Basis basis, const std::vector<Muscle>& listed,
                                    const HingeMuscles& at) {
    std::vector<std::string> names;
    for (std::size_t i = 0; i < at.solution.muscles.size(); ++i) {
        const auto credit = arm_credit(listed[i], at.pulls[i]);
        if (at.solution.muscles[i].tension_N > 0.0 && credit && credit->basis == basis)
            names.push_back(listed[i].name);
    }
    return names;
}

std::string_view class_about(const std::optional<MuscleLever>& lever) {
    constexpr std::array<std::string_view, 4> kNames{"no", "first", "second", "third"};
    const auto found = lever ? lever->of_whole.lever_class : std::nullopt;
    return kNames[found ? static_cast<std::size_t>(*found) : 0];
}

/// The bone whose lever it is, without its side.
std::string bone_word(Hinge hinge) {
    const auto segment = mechanics::joint_info(mechanics::hinge_info(hinge).joint).segment;
    std::string word(mechanics::segment_info(segment).label);
    for (const std::string_view side : {"right ", "left "})
        if (word.rfind(side, 0) == 0)
            word.erase(0, side.size());
    return word;
}

bool is_across_the_spine(Hinge hinge) {
    const auto joint = mechanics::hinge_info(hinge).joint;
    return joint == mechanics::Joint::lumbar || joint == mechanics::Joint::neck;
}

} // namespace

std::optional<ArmCredit> arm_credit(const Muscle& muscle, const mechanics::Pull& pull) {
    if (pull.source) {
        const mechanics::ArmSource& source = muscle.arms[*pull.source];
        return ArmCredit{source.citation, source.basis};
    }
    if (muscle.arms.empty() && muscle.line)
        return ArmCredit{muscle.line_citation, Basis::illustrative};
    return std::nullopt;
}

std::optional<Basis> least_sure_basis(const std::vector<Muscle>& listed, const HingeMuscles& at) {
    std::optional<Basis> least;
    for (const Basis basis : kBases)
        if (!pulling_by(basis, listed, at).empty())
            least = basis;
    return least;
}

std::string basis_sentence(const std::vector<Muscle>& listed, const HingeMuscles& at) {
    std::string parts;
    std::size_t kinds = 0;
    std::string_view last;
    for (const Basis basis : kBases) {
        const std::vector<std::string> names = pulling_by(basis, listed, at);
        if (names.empty())
            continue;
        ++kinds;
        last = setup::basis_name(basis);
        parts += fmt::format("{}{} {}", parts.empty() ? "" : "; ", listing(names, ""), last);
    }
    if (kinds == 0)
        return "";
    return kinds == 1 ? fmt::format("Moment arms of the muscles: {}.", last)
                      : fmt::format("Moment arms: {}.", parts);
}

std::string class_words(const HingeMuscles& at, std::size_t i, Hinge hinge) {
    if (!at.levers[i])
        return "";
    if (at.levers[i]->of_whole.reason == mechanics::ClassReason::loads_disagree)
        return fmt::format("no one class for the {}: what the muscle works against lies on both "
                           "sides of it",
                           bone_word(hinge));
    const std::string_view name = class_about(at.levers[i]);
    if (is_across_the_spine(hinge))
        return fmt::format("{} class across the spine", name);
    if (!at.levers_about_support[i])
        return fmt::format("{} class for the {}", name, bone_word(hinge));
    return fmt::format("{} class about the {}, {} about the ball of the foot", name,
                       mechanics::joint_info(mechanics::hinge_info(hinge).joint).label,
                       class_about(at.levers_about_support[i]));
}

std::string motion_asked(const std::vector<Muscle>& listed, const mechanics::Pose& pose,
                         Hinge hinge, double muscle_Nm) {
    const mechanics::HingeInfo& info = mechanics::hinge_info(hinge);
    const std::string motion(muscle_Nm >= 0.0 ? info.positive : info.negative);
    const mechanics::JointAction* action = mechanics::action_asked(listed, pose, hinge, muscle_Nm);
    return action && action->name.find(motion) != std::string::npos ? action->name : motion;
}

std::string listing(const std::vector<std::string>& names, std::string_view before_each) {
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        const bool last = i > 0 && i + 1 == names.size();
        text += fmt::format("{}{}{}", last ? " and " : i > 0 ? ", " : "", before_each, names[i]);
    }
    return text;
}

} // namespace steelyard::words

#include "words/body/body_reading.h"

#include "mechanics/bounds.h"
#include "mechanics/range/sweep.h"
#include "words/body/body_steps.h"
#include "words/body/muscle_credit.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace steelyard::words {
namespace {

using mechanics::BodyCase;
using mechanics::BodyResult;
using mechanics::Hinge;
using mechanics::MechanicsError;
using mechanics::Muscle;

std::vector<ForceAtHinge> forces_at(const BodyCase& body_case, const BodyResult& result,
                                    Hinge hinge) {
    std::vector<ForceAtHinge> forces;
    constexpr double kNoCouple_Nm = 1e-9;
    for (std::size_t i = 0; i < result.forces.size(); ++i) {
        if (!mechanics::acts_distally(result.forces[i], hinge))
            continue;
        const std::string name = name_of_force(body_case, result.forces[i]);
        forces.push_back({name, mechanics::arm_of(result, i, hinge)});
        mechanics::HingeArm twist;
        twist.torque_Nm = result.forces[i].couple_Nm.dot(result.placement.axis(hinge));
        if (std::abs(twist.torque_Nm) > kNoCouple_Nm)
            forces.push_back({name + ", twist", twist});
    }
    forces.push_back({"own weight", mechanics::weight_arm(body_case, result, hinge)});
    return forces;
}

tl::expected<HingeReading, MechanicsError> read_hinge(const BodyCase& body_case,
                                                      const BodyResult& result, Hinge hinge,
                                                      std::vector<Muscle> listed) {
    HingeReading reading;
    reading.hinge = hinge;
    reading.angle_rad = body_case.pose[hinge];
    reading.external_Nm = result.external(hinge);
    reading.muscle_Nm = result.muscle(hinge);
    reading.forces = forces_at(body_case, result, hinge);
    const mechanics::Joint joint = mechanics::hinge_info(hinge).joint;
    reading.joint_force_N = result.joint_force(mechanics::joint_info(joint).segment);
    reading.listed = std::move(listed);
    reading.motion = motion_asked(reading.listed, body_case.pose, hinge, reading.muscle_Nm);
    reading.rule = mechanics::usual_sharing(reading.listed);
    auto muscles =
        mechanics::solve_muscles_at(body_case, result, hinge, reading.listed, reading.rule);
    if (!muscles)
        return tl::make_unexpected(muscles.error());
    reading.muscles = std::move(*muscles);
    return reading;
}

/// Whether anatomy calls it a main mover of its hinge, one way or the other.
bool is_main_mover(const Muscle& muscle) {
    return std::any_of(muscle.actions.begin(), muscle.actions.end(),
                       [&](const mechanics::JointAction& action) {
                           return std::find(action.movers.begin(), action.movers.end(),
                                            muscle.name) != action.movers.end();
                       });
}

} // namespace

std::vector<Muscle> shown_muscles(const setup::BodySetup& setup, const std::vector<Muscle>& muscles,
                                  Hinge hinge) {
    const std::vector<Muscle> here =
        setup::with_given_arms(setup.person, mechanics::muscles_at(muscles, hinge), hinge);
    const auto is_named = [&](const Muscle& muscle) {
        return std::find(setup.muscles.begin(), setup.muscles.end(), muscle.name) !=
               setup.muscles.end();
    };
    if (std::none_of(here.begin(), here.end(), is_named))
        return here;
    std::vector<Muscle> shown;
    for (const Muscle& muscle : here)
        if (is_named(muscle) || is_main_mover(muscle))
            shown.push_back(muscle);
    return shown;
}

std::optional<mechanics::HingeMuscles> solved_muscles(const setup::BodySetup& setup,
                                                      const BodyCase& posed,
                                                      const mechanics::BodyResult& result,
                                                      Hinge hinge,
                                                      const std::vector<Muscle>& muscles) {
    const std::vector<Muscle> listed = shown_muscles(setup, muscles, hinge);
    auto shared =
        mechanics::solve_muscles_at(posed, result, hinge, listed, mechanics::usual_sharing(listed));
    if (!shared)
        return std::nullopt;
    return *std::move(shared);
}

tl::expected<BodyReading, MechanicsError> read_body(const setup::BodySetup& setup,
                                                    const std::vector<Muscle>& muscles,
                                                    const std::vector<Hinge>& hinges,
                                                    double progress) {
    if (auto fault = mechanics::outside(progress, 0.0, 1.0, "progress", "a part from 0 to 1"))
        return tl::make_unexpected(*std::move(fault));
    BodyCase body_case = setup.exercise.body_case;
    if (setup.exercise.path)
        body_case.pose = mechanics::pose_at(body_case.pose, *setup.exercise.path, progress);
    const auto result = mechanics::solve_body(body_case);
    if (!result)
        return tl::make_unexpected(result.error());
    BodyReading reading;
    reading.progress = setup.exercise.path ? progress : 0.0;
    reading.ground = result->ground;
    reading.shares = axis_shares(setup.axes, *result);
    for (const Hinge hinge : hinges) {
        auto one = read_hinge(body_case, *result, hinge, shown_muscles(setup, muscles, hinge));
        if (!one)
            return tl::make_unexpected(one.error());
        one->strength =
            strength_beside(setup.person, one->listed, body_case.pose, hinge, one->muscle_Nm);
        reading.hinges.push_back(std::move(*one));
    }
    return reading;
}

tl::expected<double, MechanicsError> hardest_place(const setup::BodySetup& setup) {
    if (setup.axes.empty())
        return 0.0;
    mechanics::Exercise slow = setup.exercise;
    slow.tempo.reset();
    return mechanics::read_repetition(slow, {setup.axes.front()})
        .map([](const mechanics::RepetitionReading& reading) {
            return reading.peaks.front().progress;
        });
}

std::string_view word_of(mechanics::SharingRule rule) {
    constexpr std::array<std::string_view, 3> kWords{"equal_stress", "least_squared_stress",
                                                     "equal_force"};
    return kWords[static_cast<std::size_t>(rule)];
}

std::string_view word_of(mechanics::MuscleOutcome outcome) {
    constexpr std::array<std::string_view, 6> kWords{"balanced",         "no_torque",
                                                     "antagonists_work", "no_arm",
                                                     "not_modelled",     "beyond_cross_section"};
    return kWords[static_cast<std::size_t>(outcome)];
}

std::string_view word_of(mechanics::BalanceStatus status) {
    constexpr std::array<std::string_view, 6> kWords{"held",         "balanced",   "steadied",
                                                     "would_topple", "would_slip", "lifts_off"};
    return kWords[static_cast<std::size_t>(status)];
}

} // namespace steelyard::words

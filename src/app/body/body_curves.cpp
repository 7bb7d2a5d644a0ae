#include "app/body/body_curves.h"

#include "words/body/load_at_joint.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace steelyard::app {

namespace {

using mechanics::BodyResult;
using mechanics::ForceOrigin;
using mechanics::Hinge;

constexpr std::size_t kCurvePlaces = 49;
constexpr double kNone = std::numeric_limits<double>::quiet_NaN();
/// Muscles that pull with less than this rest [N]: an advantage would compare with nothing.
constexpr double kResting_N = 1.0;

void resize(std::size_t places, std::size_t axes, const AxisMuscles& muscles, BodyCurves& curves) {
    curves.progress.resize(places);
    for (auto* rows : {&curves.torque_Nm, &curves.load_Nm}) {
        rows->resize(axes);
        for (auto& row : *rows)
            row.resize(places);
    }
    std::size_t rows = 0;
    for (const mechanics::Muscle& muscle : muscles.muscles)
        rows += muscle.is_known() ? 1 : 0;
    curves.muscles.resize(rows);
    curves.muscle_N.resize(rows);
    for (std::size_t i = 0, row = 0; i < muscles.muscles.size(); ++i) {
        if (!muscles.muscles[i].is_known())
            continue;
        curves.muscles[row] = muscles.muscles[i].name;
        curves.muscle_N[row++].resize(places);
    }
    for (auto* row : {&curves.muscles_N, &curves.reaction_N, &curves.advantage})
        row->resize(places);
}

void note_muscles(std::size_t place, double load_N, const AxisMuscles& muscles,
                  const mechanics::MuscleSolution& solution, BodyCurves& curves) {
    const bool known = solution.outcome == mechanics::MuscleOutcome::balanced ||
                       solution.outcome == mechanics::MuscleOutcome::no_torque;
    double sum_N = 0.0;
    for (std::size_t i = 0, row = 0; i < muscles.muscles.size(); ++i) {
        if (!muscles.muscles[i].is_known())
            continue;
        const double tension_N = solution.muscles[i].tension_N;
        curves.muscle_N[row++][place] = known ? tension_N : kNone;
        sum_N += tension_N;
    }
    curves.muscles_N[place] = known ? sum_N : kNone;
    curves.reaction_N[place] =
        known && solution.joint_reaction_N ? solution.joint_reaction_N->norm() : kNone;
    curves.advantage[place] = known && sum_N > kResting_N ? load_N / sum_N : kNone;
}

/// Where no place of the path has a muscle force there is nothing to plot.
void forget_muscles_never_said(BodyCurves& curves) {
    if (std::any_of(curves.muscles_N.begin(), curves.muscles_N.end(),
                    [](double sum_N) { return std::isfinite(sum_N); }))
        return;
    curves.muscles.clear();
    curves.muscle_N.clear();
    for (auto* row : {&curves.muscles_N, &curves.reaction_N, &curves.advantage})
        row->clear();
}

} // namespace

double resistance_Nm(const BodyResult& result, Hinge hinge) {
    double sum_Nm = 0.0;
    for (std::size_t i = 0; i < result.forces.size(); ++i)
        if (result.forces[i].origin == ForceOrigin::resistance &&
            mechanics::acts_distally(result.forces[i], hinge))
            sum_Nm += mechanics::arm_of(result, i, hinge).torque_Nm;
    return sum_Nm;
}

tl::expected<void, mechanics::MechanicsError> curves_into(const setup::BodySetup& setup,
                                                          std::size_t chosen,
                                                          const AxisMuscles& muscles,
                                                          BodyCurves& curves) {
    const mechanics::Exercise& exercise = setup.exercise;
    if (!exercise.path) {
        resize(0, setup.axes.size(), muscles, curves);
        return {};
    }
    resize(kCurvePlaces, setup.axes.size(), muscles, curves);
    mechanics::BodyCase here = exercise.body_case;
    for (std::size_t place = 0; place < kCurvePlaces; ++place) {
        const double progress = static_cast<double>(place) / static_cast<double>(kCurvePlaces - 1);
        here.pose = mechanics::pose_at(exercise.body_case.pose, *exercise.path, progress);
        const auto result = mechanics::solve_body(here);
        if (!result)
            return tl::unexpected(result.error());
        curves.progress[place] = progress;
        for (std::size_t axis = 0; axis < setup.axes.size(); ++axis) {
            curves.torque_Nm[axis][place] = result->muscle(setup.axes[axis]);
            curves.load_Nm[axis][place] = resistance_Nm(*result, setup.axes[axis]);
        }
        const auto at = mechanics::solve_muscles_at(here, *result, setup.axes[chosen],
                                                    muscles.muscles, muscles.rule);
        if (!at)
            return tl::unexpected(at.error());
        const auto load = words::load_at_joint(*result, setup.axes[chosen]);
        note_muscles(place, load ? load->size_N() : 0.0, muscles, at->solution, curves);
    }
    forget_muscles_never_said(curves);
    return {};
}

} // namespace steelyard::app

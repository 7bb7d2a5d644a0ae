#include "problems/draw/setup_solution.h"

#include "problems/draw/body_build.h"
#include "problems/draw/body_quantities.h"

#include <algorithm>
#include <cmath>

namespace steelyard::problems {

namespace {

/// Fills in what the solution says, or checks that what is known already agrees with it.
template <typename Value>
Refusal take_over(const Family& family, const Value& value_from, double* quantities) {
    for (const Family::FromSolution& from : family.from_solution) {
        const double value = value_from(from.provided);
        double& quantity = quantities[from.quantity];
        if (!std::isfinite(value))
            return from.provided.quantity == SetupQuantity::lever_class ? Refusal::no_class
                                                                        : Refusal::no_value;
        if (!from.checks)
            quantity = value;
        else if (std::abs(value - quantity) >
                 kAgreement * std::max(1.0, std::max(std::abs(value), std::abs(quantity))))
            return Refusal::disagrees;
    }
    return Refusal::none;
}

Refusal solve_lever_of(const Family& family, double* quantities, SetupSolution& solution) {
    if (!solution.lever)
        solution.lever.emplace();
    build_lever(*family.lever, quantities, family.gravity_m_s2, *solution.lever);
    tl::expected<mechanics::LeverResult, mechanics::MechanicsError> result =
        mechanics::solve_lever(*solution.lever);
    if (!result)
        return Refusal::not_solvable;
    solution.solved = std::move(*result);
    const mechanics::LeverResult& solved = *solution.solved;
    mechanics::fill_in_found_load(solved, *solution.lever);
    if (family.lever->has_effort && solved.status != mechanics::LeverStatus::ok &&
        solved.status != mechanics::LeverStatus::coincident_points)
        return Refusal::wrong_status;
    return take_over(
        family, [&](const Provided& provided) { return value_of(provided, solved); }, quantities);
}

/// Whether the body stays where it is: nothing topples, slips or lifts off, and the supports leave
/// nothing over.
bool stands(const mechanics::BodyResult& result) {
    using mechanics::BalanceStatus;
    const bool held = result.ground.status == BalanceStatus::held ||
                      result.ground.status == BalanceStatus::balanced ||
                      result.ground.status == BalanceStatus::steadied;
    constexpr double kRounding = 1.0e-8; // [N], [N·m]: far above that of sums of a body's weights
    return held && result.leftover_force_N.norm() < kRounding &&
           result.leftover_couple_Nm.norm() < kRounding;
}

Refusal solve_body_of(const Family& family, double* quantities, SetupSolution& solution) {
    if (!solution.body)
        solution.body.emplace();
    BodySolution& body = *solution.body;
    if (!build_body(*family.body, quantities, family.gravity_m_s2, body.body_case))
        return Refusal::not_solvable;
    body.effort_arm_m = family.body->effort ? family.body->effort->arm.evaluate(quantities) : 0.0;
    tl::expected<mechanics::BodyResult, mechanics::MechanicsError> result =
        mechanics::solve_body(body.body_case);
    if (!result)
        return Refusal::not_solvable;
    body.result = *result;
    if (!stands(body.result))
        return Refusal::wrong_status;
    return take_over(
        family, [&](const Provided& provided) { return value_of(provided, *family.body, body); },
        quantities);
}

} // namespace

void compute(const std::vector<Let>& lets, double* quantities) {
    for (const Let& let : lets)
        quantities[let.quantity] = let.value(quantities);
}

bool all_finite(const std::vector<double>& values) {
    return std::all_of(values.begin(), values.end(), [](double v) { return std::isfinite(v); });
}

Refusal solve(const Family& family, double* quantities, SetupSolution& solution) {
    Refusal refusal = Refusal::none;
    if (family.lever)
        refusal = solve_lever_of(family, quantities, solution);
    else if (family.body)
        refusal = solve_body_of(family, quantities, solution);
    if (refusal == Refusal::none)
        compute(family.after, quantities);
    return refusal;
}

Refusal solve_changed(const Family& family, const Changes& sets, const Instance& instance,
                      std::vector<double>& quantities) {
    quantities = instance.quantities;
    for (const Let& set : sets)
        quantities[set.quantity] = set.value(instance.quantities.data());
    for (const Let& let : family.before)
        if (!let.fixed)
            quantities[let.quantity] = let.value(quantities.data());
    SetupSolution solution;
    return solve(family, quantities.data(), solution);
}

} // namespace steelyard::problems

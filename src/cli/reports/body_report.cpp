#include "cli/reports/body_report.h"

#include "mechanics/range/sweep.h"
#include "setup/muscle/muscle_file.h"
#include "setup/units/format_quantity.h"
#include "words/body/body_words.h"
#include "words/body/muscle_credit.h"
#include "words/body/rope_words.h"
#include "words/caution.h"
#include "words/letter_case.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::cli {
namespace {

using mechanics::Interval;
using mechanics::MuscleReading;
using setup::Dimension;
using setup::UnitSystem;
using words::HingeReading;

/// Less than these is rounding.
constexpr double kNoForce_N = 1e-9;
constexpr double kNoAngle_rad = 1e-6;

Json range_json(const std::optional<Interval>& range) {
    return range ? Json{range->low, range->high} : Json();
}

Json vector_json(const mechanics::Vec3& v) {
    return {v.x(), v.y(), v.z()};
}

Json class_json(const std::optional<mechanics::MuscleLever>& lever) {
    return lever && lever->of_whole.lever_class
               ? Json(static_cast<int>(*lever->of_whole.lever_class))
               : Json();
}

/// Whether a solution's tensions are results: of balance, or of rest.
bool names_forces(const mechanics::MuscleSolution& solution) {
    return solution.outcome == mechanics::MuscleOutcome::balanced ||
           solution.outcome == mechanics::MuscleOutcome::no_torque;
}

Json force_json(const mechanics::MuscleSolution& solution, std::size_t i) {
    return names_forces(solution) ? Json(solution.muscles[i].tension_N) : Json();
}

Json muscles_json(const HingeReading& hinge) {
    Json json = Json::object();
    const mechanics::HingeMuscles& at = hinge.muscles;
    for (std::size_t i = 0; i < at.solution.muscles.size(); ++i) {
        if (!hinge.listed[i].is_known())
            continue;
        const MuscleReading& muscle = at.solution.muscles[i];
        const bool pulls = names_forces(at.solution) && muscle.parts;
        const auto credit = words::arm_credit(hinge.listed[i], at.pulls[i]);
        const Interval arms_m = at.pulls[i].arm_range_m;
        Json one;
        one["moment_arm_m"] = credit ? Json(muscle.arm_m) : Json();
        one["moment_arm_range_m"] = credit ? Json{arms_m.low, arms_m.high} : Json();
        one["basis"] = credit ? Json(setup::basis_name(credit->basis)) : Json();
        one["moment_arm_outside_valid_range"] = at.pulls[i].arm_clamped;
        one["force_N"] = force_json(at.solution, i);
        one["force_range_N"] = range_json(muscle.tension_range_N);
        one["most_force_N"] = or_null(muscle.most_N);
        one["turning_N"] = pulls ? Json(muscle.parts->turning_N) : Json();
        one["compressing_N"] = pulls ? Json(muscle.parts->compressing_N) : Json();
        one["lever_class"] = class_json(at.levers[i]);
        one["lever_class_about_support"] = class_json(at.levers_about_support[i]);
        one["lever_class_note"] =
            hinge.listed[i].class_note.empty() ? Json() : Json(hinge.listed[i].class_note);
        one["source"] = credit ? Json(credit->citation.text) : Json();
        one["mark"] = credit ? Json(setup::mark_name(credit->citation.mark)) : Json();
        json[muscle.muscle] = std::move(one);
    }
    return json;
}

Json strength_json(const words::StrengthBeside& beside) {
    Json json;
    json["mean_Nm"] = beside.strength.mean_Nm;
    json["sd_Nm"] = beside.strength.sd_Nm > 0.0 ? Json(beside.strength.sd_Nm) : Json();
    json["share"] = beside.share.mean;
    json["share_range"] = range_json(beside.share.band);
    json["people"] = beside.measured.people;
    json["remark"] = beside.measured.remark;
    json["source"] = beside.measured.citation.text;
    json["mark"] = setup::mark_name(beside.measured.citation.mark);
    return json;
}

/// What each force does about the hinge. A couple has no arm.
Json forces_json(const std::vector<words::ForceAtHinge>& forces) {
    Json json = Json::array();
    for (const words::ForceAtHinge& force : forces) {
        const bool is_couple = force.arm.force_in_plane_N == 0.0 && force.arm.torque_Nm != 0.0;
        json.push_back({{"name", force.name},
                        {"moment_arm_m", is_couple ? Json() : Json(force.arm.arm_m)},
                        {"torque_Nm", force.arm.torque_Nm},
                        {"force_in_plane_N", force.arm.force_in_plane_N}});
    }
    return json;
}

Json muscle_forces_json(const HingeReading& hinge) {
    const mechanics::MuscleSolution& solution = hinge.muscles.solution;
    if (!names_forces(solution))
        return nullptr;
    Json forces = Json::object();
    for (std::size_t i = 0; i < solution.muscles.size(); ++i)
        if (hinge.listed[i].is_known())
            forces[solution.muscles[i].muscle] = solution.muscles[i].tension_N;
    return forces;
}

Json hinge_json(const HingeReading& hinge, UnitSystem units) {
    const mechanics::MuscleSolution& solution = hinge.muscles.solution;
    const auto& reaction_N = solution.joint_reaction_N;
    const std::string why = words::why_no_force(solution, hinge.hinge, units);
    Json json;
    json["outcome"] = words::word_of(solution.outcome);
    json["why_no_force"] = why.empty() ? Json() : Json(why);
    json["angle_rad"] = hinge.angle_rad;
    json["effort_torque_Nm"] = hinge.muscle_Nm;
    json["load_torque_Nm"] = hinge.external_Nm;
    json["forces"] = forces_json(hinge.forces);
    json["muscle_force_N"] = muscle_forces_json(hinge);
    json["reaction_N"] = reaction_N ? Json(reaction_N->norm()) : Json();
    json["reaction_vector_N"] = reaction_N ? vector_json(*reaction_N) : Json();
    json["reaction_range_N"] = range_json(solution.joint_reaction_range_N);
    json["measured_strength"] = hinge.strength ? strength_json(*hinge.strength) : Json();
    json["sharing_rule"] = words::word_of(hinge.rule);
    json["muscles"] = muscles_json(hinge);
    return json;
}

Json curves_json(const HingeCurves& curves) {
    Json json;
    for (const mechanics::MuscleStep& step : curves.steps) {
        json["progress"].push_back(step.progress);
        json["time_s"].push_back(step.time_s);
        json["angle_rad"].push_back(step.angle_rad);
        json["effort_torque_Nm"].push_back(step.torque_Nm);
        for (std::size_t i = 0; i < step.solution.muscles.size(); ++i) {
            json["muscle_force_N"][step.solution.muscles[i].muscle].push_back(
                force_json(step.solution, i));
        }
        json["reaction_N"].push_back(
            step.solution.joint_reaction_N ? Json(step.solution.joint_reaction_N->norm()) : Json());
    }
    return json;
}

std::string quantity(double value, Dimension dimension, UnitSystem units) {
    return setup::format_quantity(value, dimension, units);
}

std::string range_text(const std::optional<Interval>& range, UnitSystem units) {
    if (!range || range->high - range->low < 1e-6 * std::abs(range->high))
        return range ? "" : ", no upper bound known";
    return fmt::format(", {} to {} over the sources", quantity(range->low, Dimension::force, units),
                       quantity(range->high, Dimension::force, units));
}

/// "4.2 cm, open model; third class for the thigh": what a muscle's force rests on.
std::string arm_text(const HingeReading& hinge, std::size_t i, UnitSystem units) {
    const auto credit = words::arm_credit(hinge.listed[i], hinge.muscles.pulls[i]);
    const std::string lever = words::class_words(hinge.muscles, i, hinge.hinge);
    return fmt::format("moment arm {}{}{}{}",
                       quantity(std::abs(hinge.muscles.pulls[i].arm_m), Dimension::length, units),
                       credit ? fmt::format(", {}", setup::basis_name(credit->basis)) : "",
                       hinge.muscles.pulls[i].arm_clamped ? ", from the nearest angle on file" : "",
                       lever.empty() ? "" : "; " + lever);
}

std::string muscle_lines(const HingeReading& hinge, UnitSystem units) {
    const mechanics::MuscleSolution& solution = hinge.muscles.solution;
    std::size_t pulling = 0;
    std::string text;
    for (std::size_t i = 0; i < solution.muscles.size(); ++i) {
        const MuscleReading& muscle = solution.muscles[i];
        if (muscle.tension_N == 0.0)
            continue;
        ++pulling;
        text += fmt::format("    {:<27} {}{} ({})\n", muscle.muscle,
                            quantity(muscle.tension_N, Dimension::force, units),
                            range_text(muscle.tension_range_N, units), arm_text(hinge, i, units));
        if (!hinge.listed[i].class_note.empty())
            text += fmt::format("    {:<27} {}\n", "", hinge.listed[i].class_note);
    }
    if (solution.joint_reaction_N) {
        text += fmt::format("    {:<27} {}{}\n", "joint reaction",
                            quantity(solution.joint_reaction_N->norm(), Dimension::force, units),
                            range_text(solution.joint_reaction_range_N, units));
    }
    if (pulling > 1) {
        text += fmt::format("    shared by {}\n", hinge.rule == mechanics::SharingRule::equal_stress
                                                      ? "equal stress in each muscle"
                                                      : "equal force in each muscle");
    }
    return text;
}

/// What one force does about the hinge.
std::string force_line(const words::ForceAtHinge& force, UnitSystem units) {
    const std::string torque = quantity(force.arm.torque_Nm, Dimension::torque, units);
    std::string how =
        fmt::format(" with an arm of {}", quantity(force.arm.arm_m, Dimension::length, units));
    if (force.arm.arm_m == 0.0 && force.arm.torque_Nm != 0.0)
        how = ", a couple without an arm";
    else if (force.arm.force_in_plane_N < kNoForce_N)
        how = ": it pulls along the axis";
    return fmt::format("    {:<27} {}{}\n", force.name, torque, how);
}

std::string hinge_lines(const HingeReading& hinge, UnitSystem units) {
    const mechanics::HingeInfo& info = mechanics::hinge_info(hinge.hinge);
    const double angle_rad = std::abs(hinge.angle_rad) < kNoAngle_rad ? 0.0 : hinge.angle_rad;
    const double size_Nm = std::abs(hinge.muscle_Nm);
    std::string text =
        fmt::format("{}, {}\n  {:<29} {}", info.label, quantity(angle_rad, Dimension::angle, units),
                    "muscle torque", quantity(size_Nm, Dimension::torque, units));
    if (size_Nm >= words::kSmallTorque_Nm)
        text += " in " + hinge.motion;
    text += '\n';
    if (hinge.strength) {
        text += fmt::format("    {} ({})\n", words::share_words(*hinge.strength),
                            hinge.strength->measured.citation.text);
    }
    for (const words::ForceAtHinge& force : hinge.forces)
        text += force_line(force, units);
    if (const std::string why = words::why_no_force(hinge.muscles.solution, hinge.hinge, units);
        !why.empty())
        return text + "  " + why + '\n';
    if (hinge.muscles.solution.outcome == mechanics::MuscleOutcome::no_torque)
        return text + "  its muscles have nothing to hold\n";
    return text + "  muscle forces\n" + muscle_lines(hinge, units);
}

/// Some rows of the curves: the whole is for machines.
std::string curve_table(const HingeCurves& curves, UnitSystem units) {
    constexpr std::size_t kRows = 11;
    std::string text = fmt::format("\n{} along the path\n{:>8}{:>10}{:>14}{:>16}\n",
                                   mechanics::hinge_info(curves.hinge).label, "place", "angle",
                                   "torque", "muscle force");
    for (std::size_t row = 0; row < kRows; ++row) {
        const mechanics::MuscleStep& step =
            curves.steps[row * (curves.steps.size() - 1) / (kRows - 1)];
        double force_N = 0.0;
        for (const MuscleReading& muscle : step.solution.muscles)
            force_N += muscle.tension_N;
        const std::string force =
            names_forces(step.solution) ? quantity(force_N, Dimension::force, units) : "not said";
        text += fmt::format("{:>7.0f}%{:>10}{:>14}{:>16}\n", 100.0 * step.progress,
                            quantity(step.angle_rad, Dimension::angle, units),
                            quantity(step.torque_Nm, Dimension::torque, units), force);
    }
    return text;
}

/// What each cable column's stack and rope are.
std::string column_lines(const setup::BodySetup& setup) {
    const mechanics::BodyCase& body_case = setup.exercise.body_case;
    std::string text;
    for (const mechanics::Resistance& resistance : body_case.resistances)
        if (const std::string rope =
                words::rope_words(resistance, body_case.gravity_m_s2, setup.head.units);
            !rope.empty())
            text += fmt::format("{}: {}.\n", words::capitalised(resistance.name), rope);
    return text.empty() ? text : text + '\n';
}

Json columns_json(const setup::BodySetup& setup) {
    const mechanics::BodyCase& body_case = setup.exercise.body_case;
    Json json;
    for (const mechanics::Resistance& resistance : body_case.resistances)
        if (const auto* column = std::get_if<mechanics::CableColumn>(&resistance.kind))
            json[resistance.name] = {
                {"stack_kg", column->stack_kg},
                {"rope_ratio", column->rope_ratio},
                {"tension_N", mechanics::rope_tension(*column, body_case.gravity_m_s2)}};
    return json;
}

std::string balance_words(const mechanics::GroundReading& ground) {
    if (ground.status == mechanics::BalanceStatus::would_topple)
        return "Without another hold the body would topple in this pose.";
    if (ground.status == mechanics::BalanceStatus::would_slip)
        return "The feet would slip in this pose.";
    return ground.status == mechanics::BalanceStatus::lifts_off
               ? "The resistance would lift the body off the ground."
               : "";
}

} // namespace

Json body_json(const setup::BodySetup& setup, const words::BodyReading& reading,
               const std::vector<HingeCurves>& curves) {
    Json json;
    json["format"] = format_name("solve");
    json["kind"] = "body";
    json["name"] = setup.head.name;
    json["progress"] = reading.progress;
    json["balance"] = words::word_of(reading.ground.status);
    json["ground_reaction_N"] = vector_json(reading.ground.reaction_N);
    json["axes"] = Json::array();
    for (const mechanics::Hinge axis : setup.axes)
        json["axes"].push_back(mechanics::hinge_info(axis).name);
    json["compared"] = Json::object();
    for (const words::AxisShare& share : reading.shares)
        json["compared"][share.name] = share.torque_Nm;
    if (Json columns = columns_json(setup); !columns.is_null())
        json["cable_columns"] = std::move(columns);
    for (const HingeReading& hinge : reading.hinges) {
        json["joints"][std::string(mechanics::hinge_info(hinge.hinge).name)] =
            hinge_json(hinge, setup.head.units);
    }
    for (const HingeCurves& one : curves)
        json["sweep"][std::string(mechanics::hinge_info(one.hinge).name)] = curves_json(one);
    json["messages"] = Json::array();
    if (const std::string balance = balance_words(reading.ground); !balance.empty())
        json["messages"].push_back(balance);
    json["caution"] = words::kCaution;
    return json;
}

std::string body_report(const setup::BodySetup& setup, const words::BodyReading& reading,
                        const std::vector<HingeCurves>& curves) {
    std::string text = fmt::format("{}\n{}\n\n", setup.head.name, setup.head.description);
    if (setup.exercise.path) {
        text += fmt::format("At {:.0f} % of the path, where the first joint works hardest.\n\n",
                            100.0 * reading.progress);
    }
    if (const std::string balance = balance_words(reading.ground); !balance.empty())
        text += balance + '\n';
    text += column_lines(setup);
    if (const std::string shares = words::shares_sentence(reading.shares, setup.head.units);
        !shares.empty())
        text += fmt::format("Torque of the muscles: {}\n\n", shares);
    for (const mechanics::Hinge axis : setup.axes) {
        for (const HingeReading& hinge : reading.hinges)
            if (hinge.hinge == axis)
                text += hinge_lines(hinge, setup.head.units);
    }
    for (const HingeCurves& one : curves)
        text += curve_table(one, setup.head.units);
    const bool compares =
        std::any_of(reading.hinges.begin(), reading.hinges.end(), [&](const HingeReading& hinge) {
            const auto& axes = setup.axes;
            return hinge.strength && std::find(axes.begin(), axes.end(), hinge.hinge) != axes.end();
        });
    if (compares)
        text += fmt::format("\n{}\n", words::kStrengthCaution);
    return text + fmt::format("\n{}\n", words::kCaution);
}

} // namespace steelyard::cli

#include "cli/reports/lever_report.h"

#include "setup/units/format_quantity.h"
#include "words/caution.h"
#include "words/lever/lever_steps.h"
#include "words/lever/lever_words.h"

#include <fmt/format.h>

#include <optional>
#include <set>

namespace steelyard::cli {
namespace {

using mechanics::LeverResult;
using setup::LeverSetup;
using words::LeverReading;

/// What one force does about the axis. A couple has no arm.
Json force_json(const std::string& name, const mechanics::ForceReading& force, bool is_couple) {
    return {{"name", name},
            {"moment_arm_m", is_couple ? Json() : Json(force.arm_m)},
            {"torque_Nm", force.torque_Nm},
            {"point_m", {force.point_m.x(), force.point_m.y()}},
            {"force_N", {force.force_N.x(), force.force_N.y()}}};
}

/// Every load in its order, then the lever's own weight where it has one.
Json forces_json(const mechanics::Lever& lever, const LeverResult& result) {
    Json forces = Json::array();
    for (std::size_t i = 0; i < lever.loads.size(); ++i) {
        forces.push_back(
            force_json(lever.loads[i].name, result.loads[i],
                       std::holds_alternative<mechanics::Couple>(lever.loads[i].action)));
    }
    if (lever.own_weight.mass_kg > 0.0)
        forces.push_back(force_json("own weight", result.own_weight, false));
    return forces;
}

std::string class_lines(const LeverSetup& setup, const LeverResult& result) {
    return fmt::format("{}. {}\n", words::class_name(result),
                       words::class_sentence(setup.lever, result));
}

std::string reading_line(LeverReading reading, const LeverSetup& setup, const LeverResult& result) {
    const auto steps = words::lever_steps(reading, setup.lever, result, setup.head.units);
    if (steps.empty())
        return "";
    const std::string value = reading == LeverReading::found_load
                                  ? words::found_load_text(setup.lever, result, setup.head.units)
                                  : steps.back().result;
    return fmt::format("  {:<28}{}\n", words::name_of(reading, setup.lever), value);
}

std::string step_lines(const words::ComputedStep& step) {
    std::string formula = step.symbols;
    for (const std::string& part : {step.numbers, step.result})
        if (!part.empty())
            formula += (formula.empty() ? "" : " = ") + part;
    return fmt::format("  {}\n      {}\n", step.title, formula);
}

/// Every step of every reading, each once: later readings build on the steps of earlier ones.
std::string computation(const LeverSetup& setup, const LeverResult& result) {
    std::string text;
    std::set<std::string> shown;
    for (const LeverReading reading : words::readings_of(setup.lever)) {
        for (const auto& step :
             words::lever_steps(reading, setup.lever, result, setup.head.units)) {
            const std::string lines = step_lines(step);
            if (shown.insert(lines).second)
                text += lines;
        }
    }
    return text;
}

} // namespace

Json lever_json(const LeverSetup& setup, const LeverResult& result) {
    Json json;
    json["format"] = format_name("solve");
    json["kind"] = "lever";
    json["name"] = setup.head.name;
    json["outcome"] = words::word_of(result.status);
    json["lever_class"] = result.lever_class ? Json(static_cast<int>(*result.lever_class)) : Json();
    json["lever_class_reason"] = words::word_of(result.class_reason);
    json["effort_N"] = or_null(result.effort_N);
    json["effort_holding_N"] = or_null(result.effort_holding_N);
    if (const auto sought = mechanics::sought_load(setup.lever)) {
        json["sought_load"] = setup.lever.loads[*sought].name;
        const bool turns =
            std::holds_alternative<mechanics::Couple>(setup.lever.loads[*sought].action);
        json[turns ? "load_found_Nm" : "load_found_N"] = or_null(result.load_found);
    }
    if (mechanics::rests_on_two(setup.lever)) {
        json["first_support_N"] = result.axis_reaction_N.y();
        json["second_support_N"] = or_null(result.effort_N);
    }
    json["effort_arm_m"] = result.effort_arm_m;
    json["load_arm_m"] = or_null(result.load_arm_m);
    json["ideal_advantage"] = or_null(result.ideal_advantage);
    json["actual_advantage"] = or_null(result.actual_advantage);
    json["efficiency"] = or_null(result.efficiency);
    json["effort_torque_Nm"] = result.torque_effort_Nm;
    json["load_torque_Nm"] = result.torque_load_Nm;
    json["friction_torque_Nm"] = result.torque_friction_Nm;
    json["forces"] = forces_json(setup.lever, result);
    json["reaction_N"] = result.axis_reaction_N.norm();
    json["reaction_vector_N"] = {result.axis_reaction_N.x(), result.axis_reaction_N.y()};
    json["messages"] = words::lever_messages(setup.lever, result, setup.head.units);
    json["caution"] = words::kCaution;
    return json;
}

std::string lever_report(const LeverSetup& setup, const LeverResult& result) {
    std::string text = fmt::format("{}\n{}\n\n", setup.head.name, setup.head.description);
    text += class_lines(setup, result) + '\n';
    for (const LeverReading reading : words::readings_of(setup.lever))
        text += reading_line(reading, setup, result);
    for (const std::string& message : words::lever_messages(setup.lever, result, setup.head.units))
        text += fmt::format("\n{}\n", message);
    text += "\nHow it was computed\n" + computation(setup, result);
    return text;
}

} // namespace steelyard::cli

#include "cli/reports/lever_report.h"

#include "setup/units/format_quantity.h"
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

nlohmann::ordered_json or_null(const std::optional<double>& value) {
    return value ? nlohmann::ordered_json(*value) : nlohmann::ordered_json();
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

nlohmann::ordered_json lever_json(const LeverSetup& setup, const LeverResult& result) {
    nlohmann::ordered_json json;
    json["name"] = setup.head.name;
    json["status"] = words::word_of(result.status);
    json["class"] = result.lever_class
                        ? nlohmann::ordered_json(static_cast<int>(*result.lever_class))
                        : nlohmann::ordered_json();
    json["class_reason"] = words::word_of(result.class_reason);
    json["effort_N"] = or_null(result.effort_N);
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
    json["axis_reaction_N"] = {result.axis_reaction_N.x(), result.axis_reaction_N.y()};
    json["torque_effort_Nm"] = result.torque_effort_Nm;
    json["torque_load_Nm"] = result.torque_load_Nm;
    json["messages"] = words::lever_messages(setup.lever, result, setup.head.units);
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

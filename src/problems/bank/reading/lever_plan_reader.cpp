#include "problems/bank/reading/lever_plan_reader.h"

#include <fmt/format.h>

#include <algorithm>

namespace steelyard::problems {

namespace {

using setup::Need;
using setup::TomlReader;

Expression needed(TomlReader& table, std::string_view key, FamilyNames& names) {
    return names.expression(table, key, Need::required).value_or(Expression{});
}

bool is_sought(TomlReader& table, std::string_view key) {
    const setup::TomlNode* const node = table.has(key) ? table.node(key) : nullptr;
    const auto* word = node ? std::get_if<std::string>(&node->value) : nullptr;
    return word && *word == "sought";
}

/// The size of a load; 0 where it is sought.
Expression read_size(TomlReader& table, std::string_view key, FamilyNames& names) {
    if (is_sought(table, key))
        return names.expression_in(table, key, "0").value_or(Expression{});
    return needed(table, key, names);
}

LoadPlan read_load(TomlReader& table, FamilyNames& names) {
    LoadPlan plan;
    plan.name = names.text(table, "name", Need::required);
    const int sizes = int{table.has("mass")} + int{table.has("force")} + int{table.has("torque")};
    if (sizes != 1)
        table.add_error("mass", fmt::format("{} of mass, force and torque", sizes),
                        "exactly one of them");
    if (table.has("mass")) {
        plan.is = LoadPlan::Is::mass;
        plan.size = read_size(table, "mass", names);
    } else if (table.has("force")) {
        plan.is = LoadPlan::Is::force;
        plan.size = read_size(table, "force", names);
        plan.direction = read_direction(table, "direction", names);
    } else if (table.has("torque")) {
        plan.is = LoadPlan::Is::torque;
        plan.size = read_size(table, "torque", names);
    }
    plan.at = names.expression(table, "at",
                               plan.is == LoadPlan::Is::torque ? Need::optional : Need::required);
    table.finish();
    return plan;
}

/// A straight lever of a length, or corners.
void read_path(TomlReader& table, FamilyNames& names, LeverPlan& plan) {
    if (table.has("length")) {
        const Expression zero = names.expression_in(table, "length", "0").value_or(Expression{});
        plan.path.emplace_back(zero, zero);
        plan.path.emplace_back(needed(table, "length", names), zero);
        return;
    }
    for (TomlReader& corner : table.tables("corner", Need::required)) {
        plan.path.emplace_back(needed(corner, "x", names), needed(corner, "y", names));
        corner.finish();
    }
    if (plan.path.size() == 1)
        table.add_error("corner", "one corner", "two [[setup.corner]] or more, or a length");
}

/// The word "none" for a scene in which the lever is a beam.
std::optional<LimbPlan> read_limb(TomlReader& table, FamilyNames& names) {
    std::optional<TomlReader> limb = table.table("limb");
    if (!limb)
        return std::nullopt;
    LimbPlan plan;
    const std::vector<std::string_view>& known = setup::limb_shape_names();
    for (const std::string& word : names.in_each_scene(names.text(*limb, "is", Need::required))) {
        const auto found = std::find(known.begin(), known.end(), word);
        plan.shapes.emplace_back();
        if (found != known.end())
            plan.shapes.back() = static_cast<setup::LimbShape>(found - known.begin());
        else if (word != "none")
            limb->add_error("is", fmt::format("\"{}\"", word),
                            fmt::format("none or one of {}", fmt::join(known, ", ")));
    }
    plan.from = names.expression(*limb, "from");
    plan.to = names.expression(*limb, "to");
    limb->finish();
    return plan;
}

void read_effort(TomlReader& table, FamilyNames& names, LeverPlan& plan) {
    std::optional<TomlReader> effort = table.table("effort");
    if (!effort) {
        // Nobody asks for it; it only has to stand somewhere.
        plan.has_effort = false;
        plan.effort_at = plan.path.empty() ? Expression{} : plan.path.front().second;
        return;
    }
    plan.effort_name = names.text(*effort, "name", Need::required);
    plan.effort_at = needed(*effort, "at", names);
    plan.effort_direction = read_direction(*effort, "direction", names);
    plan.effort_force = names.expression(*effort, "force");
    effort->finish();
}

/// The other end of a beam, in the effort's part.
bool read_second_support(TomlReader& table, FamilyNames& names, LeverPlan& plan) {
    std::optional<TomlReader> support = table.table("second_support");
    if (!support)
        return false;
    plan.two_supports = true;
    plan.effort_name = names.text(*support, "name", Need::required);
    plan.effort_at = needed(*support, "at", names);
    support->finish();
    if (table.has("effort"))
        table.add_error("effort", "an effort beside a second support", "one of the two",
                        "A beam on two supports has no effort.");
    return true;
}

void read_loads(TomlReader& table, FamilyNames& names, LeverPlan& plan) {
    std::size_t sought = 0;
    for (TomlReader& load : table.tables("load")) {
        if (is_sought(load, "mass") || is_sought(load, "force") || is_sought(load, "torque")) {
            plan.sought_load = plan.loads.size();
            ++sought;
        }
        plan.loads.push_back(read_load(load, names));
    }
    if (sought != (plan.effort_force ? 1U : 0U))
        table.add_error("load", fmt::format("{} loads that are sought", sought),
                        plan.effort_force ? "one, for the effort's force is known"
                                          : "none, or a force of the effort");
}

void check_known_before(TomlReader& table, const LeverPlan& plan, FamilyNames& names) {
    std::vector<const Expression*> all{&plan.axis_at, &plan.effort_at};
    const auto add = [&](const std::optional<Expression>& expression) {
        if (expression)
            all.push_back(&*expression);
    };
    for (const auto& [x, y] : plan.path) {
        all.push_back(&x);
        all.push_back(&y);
    }
    for (const LoadPlan& load : plan.loads) {
        all.push_back(&load.size);
        add(load.at);
        add(load.direction);
    }
    if (plan.limb)
        for (const auto* each : {&plan.limb->from, &plan.limb->to})
            add(*each);
    for (const auto* each :
         {&plan.effort_direction, &plan.effort_force, &plan.own_mass, &plan.own_centre, &plan.tilt,
          &plan.friction_coefficient, &plan.friction_radius})
        add(*each);
    for (const Expression* expression : all)
        if (names.reads_solved(*expression))
            table.add_error("length", "a setup that reads its own solution",
                            "expressions on drawn and [let] quantities only");
}

} // namespace

std::optional<Expression> read_direction(TomlReader& table, std::string_view key,
                                         FamilyNames& names) {
    const setup::TomlNode* const node = table.node(key);
    if (!node)
        return std::nullopt;
    if (const auto* text = std::get_if<std::string>(&node->value)) {
        static constexpr std::pair<std::string_view, const char*> kWords[] = {
            {"up", "pi / 2"}, {"down", "-pi / 2"}, {"left", "pi"}, {"right", "0"}};
        for (const auto& [word, angle] : kWords)
            if (*text == word)
                return names.expression_in(table, key, angle);
    }
    return names.expression(table, key);
}

LeverPlan read_lever_plan(TomlReader& table, FamilyNames& names) {
    LeverPlan plan;
    read_path(table, names, plan);
    plan.axis_at = needed(table, "axis", names);
    plan.axis_name = names.text(table, "axis_name", Need::required);
    plan.tilt = names.expression(table, "tilt");
    plan.own_mass = names.expression(table, "own_mass");
    plan.own_centre = names.expression(table, "own_centre");
    plan.friction_coefficient = names.expression(table, "friction");
    plan.friction_radius = names.expression(table, "axle_radius");
    plan.from_above = table.boolean("from_above").value_or(false);
    plan.limb = read_limb(table, names);
    if (!read_second_support(table, names, plan))
        read_effort(table, names, plan);
    read_loads(table, names, plan);
    check_known_before(table, plan, names);
    return plan;
}

} // namespace steelyard::problems

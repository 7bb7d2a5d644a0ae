#include "setup/lever/direction.h"
#include "setup/lever/lever_keys.h"
#include "setup/lever/lever_setup.h"
#include "setup/units/format_quantity.h"

#include <fmt/format.h>

namespace steelyard::setup {
namespace {

using mechanics::Couple;
using mechanics::Lever;
using mechanics::Load;
using mechanics::PointForce;
using mechanics::SoughtLoad;
using mechanics::SoughtReactions;
using mechanics::Weight;

/// The units that values without an author's unit are written in.
struct Fallback {
    std::string_view length;
    std::string_view mass;
    std::string_view force;
    std::string_view torque;
    std::string_view acceleration;
};

Fallback fallback_of(UnitSystem system) {
    if (system == UnitSystem::us)
        return {"in", "lb", "lbf", "ft·lbf", "ft/s²"};
    return {"cm", "kg", "N", "N·m", "m/s²"};
}

/// True for a lever that a length alone describes.
bool is_plain_beam(const Lever& lever) {
    return lever.path_m.size() == 2 && lever.path_m[0] == mechanics::Vec2(0.0, 0.0) &&
           lever.path_m[1].y() == 0.0 && lever.path_m[1].x() > 0.0;
}

std::string write_path(const LeverSetup& setup, const Fallback& units) {
    const Lever& lever = setup.lever;
    const auto length = [&](double value_m, const std::string& key) {
        return value_m == 0.0 && !setup.source.find(key)
                   ? std::string("0")
                   : written_quantity(value_m, Dimension::length, key, setup.source, units.length);
    };
    const bool author_wrote_path = setup.source.find("path[0].x") != nullptr;
    if (is_plain_beam(lever) && !author_wrote_path)
        return fmt::format("length = {}\n", length(lever.path_m[1].x(), "length"));
    std::string text = "path = [\n";
    for (std::size_t i = 0; i < lever.path_m.size(); ++i)
        text += fmt::format("    [{}, {}],\n", length(lever.path_m[i].x(), corner_key(i, 0)),
                            length(lever.path_m[i].y(), corner_key(i, 1)));
    return text + "]\n";
}

/// The axis and the effort, or two supports in their place.
/// @param top  further lines that belong above the tables
std::string write_held(const Lever& lever, const std::string& top, const SourceNotes& source,
                       const Fallback& units) {
    const auto place = [&](double at_m, std::string_view key) {
        return written_quantity(at_m, Dimension::length, key, source, units.length);
    };
    if (const auto* beam = std::get_if<SoughtReactions>(&lever.sought))
        return fmt::format(
            "{}\n[[support]]\nname = {}\nat = {}\n\n[[support]]\nname = {}\nat = {}\n", top,
            toml_name(beam->first_support), place(lever.axis_at_m, "axis"),
            toml_name(lever.effort.name), place(lever.effort.at_m, "effort.at"));
    std::string text =
        fmt::format("axis = {}\n{}\n[effort]\nname = {}\nat = {}\ndirection = {}\n",
                    place(lever.axis_at_m, "axis"), top, toml_name(lever.effort.name),
                    place(lever.effort.at_m, "effort.at"),
                    written_direction(lever.effort.direction_rad, "effort.direction", source));
    if (const auto* known = std::get_if<SoughtLoad>(&lever.sought))
        text += fmt::format("force = {}\n",
                            written_quantity(known->effort_N, Dimension::force, "effort.force",
                                             source, units.force, true));
    return text;
}

std::string write_load(const Load& load, bool is_sought, const std::string& key,
                       const SourceNotes& source, const Fallback& units) {
    std::string text = fmt::format("\n[[load]]\nname = {}\n", toml_name(load.name));
    const auto line = [&](std::string_view name, double value, Dimension dimension,
                          std::string_view unit, bool mass_as_force = false) {
        text += fmt::format("{} = {}\n", name,
                            written_quantity(value, dimension, fmt::format("{}.{}", key, name),
                                             source, unit, mass_as_force));
    };
    const auto size = [&](std::string_view name, double value, Dimension dimension,
                          std::string_view unit, bool mass_as_force = false) {
        if (is_sought)
            text += fmt::format("{} = {}\n", name, toml_string(kSought));
        else
            line(name, value, dimension, unit, mass_as_force);
    };
    if (const auto* weight = std::get_if<Weight>(&load.action)) {
        line("at", weight->at_m, Dimension::length, units.length);
        size("mass", weight->mass_kg, Dimension::mass, units.mass);
    } else if (const auto* force = std::get_if<PointForce>(&load.action)) {
        line("at", force->at_m, Dimension::length, units.length);
        size("force", force->magnitude_N, Dimension::force, units.force, true);
        text += fmt::format("direction = {}\n",
                            written_direction(force->direction_rad, key + ".direction", source));
    } else if (const auto* couple = std::get_if<Couple>(&load.action)) {
        size("torque", couple->torque_Nm, Dimension::torque, units.torque);
    }
    return text;
}

} // namespace

std::string write_lever_setup(const LeverSetup& setup) {
    const Lever& lever = setup.lever;
    const SourceNotes& source = setup.source;
    const Fallback units = fallback_of(setup.head.units);
    const auto quantity = [&](double value, Dimension dimension, std::string_view key,
                              std::string_view unit) {
        return written_quantity(value, dimension, key, source, unit);
    };
    std::string text = write_head(setup.head, "lever") + "\n";
    if (setup.limb)
        text += fmt::format("limb = \"{}\"\n",
                            limb_shape_names()[static_cast<std::size_t>(*setup.limb)]);
    text += write_path(setup, units);
    const std::string gravity =
        lever.gravity_m_s2 != mechanics::kStandardGravity || source.find("gravity")
            ? fmt::format("gravity = {}\n", quantity(lever.gravity_m_s2, Dimension::acceleration,
                                                     "gravity", units.acceleration))
            : std::string();
    text += write_held(lever, gravity, source, units);
    for (std::size_t i = 0; i < lever.loads.size(); ++i)
        text += write_load(lever.loads[i], mechanics::sought_load(lever) == i,
                           fmt::format("load[{}]", i), source, units);
    if (lever.own_weight.mass_kg != 0.0 || lever.own_weight.centre_at_m) {
        text += fmt::format(
            "\n[own_weight]\nmass = {}\n",
            quantity(lever.own_weight.mass_kg, Dimension::mass, "own_weight.mass", units.mass));
        if (lever.own_weight.centre_at_m)
            text += fmt::format("centre = {}\n",
                                quantity(*lever.own_weight.centre_at_m, Dimension::length,
                                         "own_weight.centre", units.length));
    }
    if (lever.friction.coefficient != 0.0 || lever.friction.radius_m != 0.0)
        text += fmt::format(
            "\n[friction]\ncoefficient = {}\nradius = {}\n",
            quantity(lever.friction.coefficient, Dimension::number, "friction.coefficient", ""),
            quantity(lever.friction.radius_m, Dimension::length, "friction.radius", units.length));
    return text;
}

} // namespace steelyard::setup

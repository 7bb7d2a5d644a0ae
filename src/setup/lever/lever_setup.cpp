#include "setup/lever/lever_setup.h"

#include "mechanics/lever/lever_geometry.h"
#include "mechanics/lever/lever_solve.h"
#include "setup/lever/direction.h"
#include "setup/units/format_quantity.h"

#include <fmt/format.h>

namespace steelyard::setup {
namespace {

using mechanics::Couple;
using mechanics::Lever;
using mechanics::Load;
using mechanics::PointForce;
using mechanics::Weight;

std::string corner_key(std::size_t corner, std::size_t part) {
    return fmt::format("path[{}].{}", corner, part == 0 ? "x" : "y");
}

/// One corner of a path, written ["40 cm", "0 cm"].
std::optional<mechanics::Vec2> read_corner(TomlReader& top, const TomlNode& node,
                                           std::size_t corner, SourceNotes& source) {
    const auto* pair = std::get_if<TomlArray>(&node.value);
    const std::string key = fmt::format("path[{}]", corner + 1);
    if (!pair || pair->items.size() != 2) {
        top.add_error_at(node, key, describe(node), "two lengths such as [\"40 cm\", \"0 cm\"]");
        return std::nullopt;
    }
    mechanics::Vec2 point_m = mechanics::Vec2::Zero();
    for (std::size_t part = 0; part < 2; ++part) {
        const auto written = top.quantity_of(pair->items[part], key, Dimension::length);
        if (!written)
            return std::nullopt;
        point_m[static_cast<Eigen::Index>(part)] = written->value_SI;
        source.by_key[corner_key(corner, part)] = {written->text, written->bare, written->line,
                                                   written->column};
    }
    return point_m;
}

void read_corners(TomlReader& top, Lever& lever, SourceNotes& source) {
    const TomlNode* node = top.node("path");
    const auto* corners = std::get_if<TomlArray>(&node->value);
    if (!corners) {
        top.add_error("path", describe(*node),
                      "a list of corners such as [[0, 0], [\"40 cm\", 0], [\"40 cm\", \"30 cm\"]]");
        return;
    }
    source.by_key["path"] = {describe(*node), true, node->line, node->column};
    lever.path_m.clear();
    for (std::size_t i = 0; i < corners->items.size(); ++i)
        if (const auto point_m = read_corner(top, corners->items[i], i, source))
            lever.path_m.push_back(*point_m);
}

void read_path(TomlReader& top, Lever& lever, SourceNotes& source) {
    if (top.has("path")) {
        read_corners(top, lever, source);
        if (top.node("length"))
            top.add_error("length", "both length and path", "one of the two",
                          "A straight lever has a length, a bent one a path.");
        return;
    }
    if (!top.has("length")) {
        top.add_error("length", "neither length nor path", "one of the two",
                      "A straight lever has a length, a bent one a path.");
        top.node("length");
        return;
    }
    const auto length_m = noted_quantity(top, "length", Dimension::length, "length", source);
    if (!length_m)
        return;
    source.by_key["path"] = source.by_key["length"];
    lever.path_m = {{0.0, 0.0}, {*length_m, 0.0}};
    if (*length_m < 0.0)
        top.add_error("length", describe(*top.node("length")), "a length above 0");
}

/// What a load is, from which of its three keys is there.
void read_action(TomlReader& table, const std::string& key, Load& load, SourceNotes& source) {
    const int kinds = int{table.has("mass")} + int{table.has("force")} + int{table.has("torque")};
    const auto mass_kg = noted_quantity(table, "mass", Dimension::mass, key + ".mass", source);
    const auto force_N = noted_quantity(table, "force", Dimension::force, key + ".force", source,
                                        Need::optional, true);
    const auto torque_Nm =
        noted_quantity(table, "torque", Dimension::torque, key + ".torque", source);
    const Need place_needed = table.has("torque") ? Need::optional : Need::required;
    const double at_m =
        noted_quantity(table, "at", Dimension::length, key + ".at", source, place_needed)
            .value_or(0.0);
    const auto direction_rad = noted_direction(table, "direction", key + ".direction", source);
    if (kinds != 1) {
        table.add_error(kinds == 0           ? "mass"
                        : table.has("force") ? "force"
                                             : "torque",
                        kinds == 0 ? "no mass, force or torque" : "more than one of them",
                        "exactly one of \"mass\", \"force\" and \"torque\"");
        return;
    }
    if (direction_rad && !table.has("force"))
        table.add_error("direction", "a direction of what is no force", "no direction",
                        "Weight always pulls down; for any other pull write force instead.");
    if (table.has("torque") && table.has("at"))
        table.add_error("at", "a place of a torque", "no place",
                        "A torque turns the lever the same wherever it acts.");
    if (mass_kg)
        load.action = Weight{at_m, *mass_kg};
    else if (force_N)
        load.action = PointForce{at_m, *force_N, direction_rad.value_or(mechanics::kDown_rad)};
    else if (torque_Nm)
        load.action = Couple{*torque_Nm};
}

void note_table(const TomlReader& table, const std::string& key, SourceNotes& source) {
    source.by_key[key] = {key, true, table.line(), 1};
}

void read_loads(TomlReader& top, Lever& lever, SourceNotes& source) {
    lever.loads.clear();
    for (TomlReader& table : top.tables("load")) {
        const std::string key = fmt::format("load[{}]", lever.loads.size());
        note_table(table, key, source);
        Load load;
        load.name = table.short_text("name").value_or("load");
        read_action(table, key, load, source);
        table.finish();
        lever.loads.push_back(load);
    }
}

void read_effort(TomlReader& top, Lever& lever, SourceNotes& source) {
    auto table = top.table("effort", Need::required);
    if (!table)
        return;
    note_table(*table, "effort", source);
    lever.effort.name = table->short_text("name").value_or("effort");
    lever.effort.at_m =
        noted_quantity(*table, "at", Dimension::length, "effort.at", source, Need::required)
            .value_or(0.0);
    lever.effort.direction_rad =
        noted_direction(*table, "direction", "effort.direction", source, Need::required)
            .value_or(mechanics::kDown_rad);
    table->finish();
}

void read_own_weight(TomlReader& top, Lever& lever, SourceNotes& source) {
    auto table = top.table("own_weight");
    if (!table)
        return;
    note_table(*table, "own_weight", source);
    lever.own_weight.mass_kg =
        noted_quantity(*table, "mass", Dimension::mass, "own_weight.mass", source, Need::required)
            .value_or(0.0);
    lever.own_weight.centre_at_m =
        noted_quantity(*table, "centre", Dimension::length, "own_weight.centre", source);
    table->finish();
}

void read_friction(TomlReader& top, Lever& lever, SourceNotes& source) {
    auto table = top.table("friction");
    if (!table)
        return;
    note_table(*table, "friction", source);
    lever.friction.coefficient = noted_quantity(*table, "coefficient", Dimension::number,
                                                "friction.coefficient", source, Need::required)
                                     .value_or(0.0);
    lever.friction.radius_m = noted_quantity(*table, "radius", Dimension::length, "friction.radius",
                                             source, Need::required)
                                  .value_or(0.0);
    table->finish();
}

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

std::string write_load(const Load& load, const std::string& key, const SourceNotes& source,
                       const Fallback& units) {
    std::string text = fmt::format("\n[[load]]\nname = {}\n", toml_name(load.name));
    const auto line = [&](std::string_view name, double value, Dimension dimension,
                          std::string_view unit, bool mass_as_force = false) {
        text += fmt::format("{} = {}\n", name,
                            written_quantity(value, dimension, fmt::format("{}.{}", key, name),
                                             source, unit, mass_as_force));
    };
    if (const auto* weight = std::get_if<Weight>(&load.action)) {
        line("at", weight->at_m, Dimension::length, units.length);
        line("mass", weight->mass_kg, Dimension::mass, units.mass);
    } else if (const auto* force = std::get_if<PointForce>(&load.action)) {
        line("at", force->at_m, Dimension::length, units.length);
        line("force", force->magnitude_N, Dimension::force, units.force, true);
        text += fmt::format("direction = {}\n",
                            written_direction(force->direction_rad, key + ".direction", source));
    } else if (const auto* couple = std::get_if<Couple>(&load.action)) {
        line("torque", couple->torque_Nm, Dimension::torque, units.torque);
    }
    return text;
}

} // namespace

tl::expected<LeverSetup, InputError> lever_setup_of(const TomlDocument& document) {
    LeverSetup setup;
    setup.source.file = document.file;
    InputErrors errors;
    TomlReader top(document, errors);
    setup.head = read_head(top);
    Lever& lever = setup.lever;
    if (const auto limb = top.choice("limb", limb_shape_names()))
        setup.limb = static_cast<LimbShape>(*limb);
    read_path(top, lever, setup.source);
    lever.axis_at_m =
        noted_quantity(top, "axis", Dimension::length, "axis", setup.source, Need::required)
            .value_or(0.0);
    lever.gravity_m_s2 =
        noted_quantity(top, "gravity", Dimension::acceleration, "gravity", setup.source)
            .value_or(mechanics::kStandardGravity);
    read_effort(top, lever, setup.source);
    read_loads(top, lever, setup.source);
    read_own_weight(top, lever, setup.source);
    read_friction(top, lever, setup.source);
    top.finish();
    if (!errors.empty())
        return tl::make_unexpected(first_of(errors));
    if (const auto solved = mechanics::solve_lever(lever); !solved)
        return tl::make_unexpected(placed_error(solved.error(), setup.source));
    return setup;
}

tl::expected<LeverSetup, InputError> parse_lever_setup(std::string_view text,
                                                       const std::string& file) {
    return parse_toml(text, file).and_then(lever_setup_of);
}

tl::expected<LeverSetup, InputError> read_lever_setup(const std::filesystem::path& path) {
    return read_toml_file(path).and_then(lever_setup_of);
}

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
    text += fmt::format("axis = {}\n",
                        quantity(lever.axis_at_m, Dimension::length, "axis", units.length));
    if (lever.gravity_m_s2 != mechanics::kStandardGravity || source.find("gravity"))
        text += fmt::format("gravity = {}\n", quantity(lever.gravity_m_s2, Dimension::acceleration,
                                                       "gravity", units.acceleration));
    text += fmt::format("\n[effort]\nname = {}\nat = {}\ndirection = {}\n",
                        toml_name(lever.effort.name),
                        quantity(lever.effort.at_m, Dimension::length, "effort.at", units.length),
                        written_direction(lever.effort.direction_rad, "effort.direction", source));
    for (std::size_t i = 0; i < lever.loads.size(); ++i)
        text += write_load(lever.loads[i], fmt::format("load[{}]", i), source, units);
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

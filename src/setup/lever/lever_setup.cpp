#include "setup/lever/lever_setup.h"

#include "mechanics/lever/lever_geometry.h"
#include "mechanics/lever/lever_solve.h"
#include "setup/lever/direction.h"
#include "setup/lever/lever_keys.h"

#include <fmt/format.h>

#include <limits>

namespace steelyard::setup {
namespace {

using mechanics::Couple;
using mechanics::Lever;
using mechanics::Load;
using mechanics::PointForce;
using mechanics::SoughtLoad;
using mechanics::SoughtReactions;
using mechanics::Weight;

/// The effort is known, and no load that is sought has been read.
constexpr std::size_t kNoLoadYet = std::numeric_limits<std::size_t>::max();

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

/// The size of a load; 0, and a mark, where it is sought.
std::optional<double> read_size(TomlReader& table, std::string_view name, Dimension dimension,
                                const std::string& key, SourceNotes& source, bool& is_sought) {
    const TomlNode* node = table.has(name) ? table.node(name) : nullptr;
    const auto* word = node ? std::get_if<std::string>(&node->value) : nullptr;
    const std::string noted = fmt::format("{}.{}", key, name);
    if (!word || *word != kSought)
        return noted_quantity(table, name, dimension, noted, source, Need::optional,
                              dimension == Dimension::force);
    source.by_key[noted] = {*word, false, node->line, node->column};
    is_sought = true;
    return 0.0;
}

/// What a load is, from which of its three keys is there.
/// @return whether its size is sought
bool read_action(TomlReader& table, const std::string& key, Load& load, SourceNotes& source) {
    const int kinds = int{table.has("mass")} + int{table.has("force")} + int{table.has("torque")};
    bool is_sought = false;
    const auto mass_kg = read_size(table, "mass", Dimension::mass, key, source, is_sought);
    const auto force_N = read_size(table, "force", Dimension::force, key, source, is_sought);
    const auto torque_Nm = read_size(table, "torque", Dimension::torque, key, source, is_sought);
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
        return is_sought;
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
    return is_sought;
}

void note_table(const TomlReader& table, const std::string& key, SourceNotes& source) {
    source.by_key[key] = {key, true, table.line(), 1};
}

/// Takes the load that is being read as the one that is sought.
void add_sought(TomlReader& table, Lever& lever) {
    auto* known = std::get_if<SoughtLoad>(&lever.sought);
    if (!known)
        table.add_error("name", "a load that is sought, and no force of the effort",
                        "force = \"200 N\" or another below [effort]",
                        "Of effort and loads all but one size must be known.");
    else if (known->load < lever.loads.size())
        table.add_error("name", "a second load that is sought", "one unknown load",
                        "One balance of moments gives one size: write the other load's.");
    else
        known->load = lever.loads.size();
}

void read_loads(TomlReader& top, Lever& lever, SourceNotes& source) {
    lever.loads.clear();
    for (TomlReader& table : top.tables("load")) {
        const std::string key = fmt::format("load[{}]", lever.loads.size());
        note_table(table, key, source);
        Load load;
        load.name = table.short_text("name").value_or("load");
        if (read_action(table, key, load, source))
            add_sought(table, lever);
        table.finish();
        lever.loads.push_back(load);
    }
    if (const auto* known = std::get_if<SoughtLoad>(&lever.sought);
        known && known->load >= lever.loads.size())
        top.add_error("effort", "a force of the effort, and no load that is sought",
                      "one load with mass = \"sought\" or force = \"sought\"",
                      "Or leave the effort's force out: then it is found.");
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
    if (const auto force_N = noted_quantity(*table, "force", Dimension::force, "effort.force",
                                            source, Need::optional, true))
        lever.sought = SoughtLoad{kNoLoadYet, *force_N};
    table->finish();
}

/// Two places that bear a beam, in place of an axis and an effort.
void read_supports(TomlReader& top, Lever& lever, SourceNotes& source) {
    std::vector<TomlReader> tables = top.tables("support");
    if (tables.size() != 2) {
        top.add_error("support", fmt::format("{} of them", tables.size()),
                      "two [[support]] tables, or an axis and an [effort]",
                      tables.size() > 2 ? "Statics alone does not say how three supports share."
                                        : "A beam on one support has an axis.");
        return;
    }
    SoughtReactions beam;
    const auto read_one = [&](std::size_t index, const std::string& key, std::string& name) {
        TomlReader& table = tables[index];
        note_table(table, fmt::format("support[{}]", index), source);
        name = table.text("name").value_or(name);
        const double at_m =
            noted_quantity(table, "at", Dimension::length, key, source, Need::required)
                .value_or(0.0);
        table.finish();
        return at_m;
    };
    lever.effort = {"second support", 0.0, mechanics::kUp_rad};
    lever.axis_at_m = read_one(0, "axis", beam.first_support);
    lever.effort.at_m = read_one(1, "effort.at", lever.effort.name);
    for (const char* key : {"axis", "effort", "friction"})
        if (top.has(key))
            top.add_error(key, fmt::format("{} of a beam on two supports", key), "no such key",
                          "Its supports stand in place of axis and effort, and no axle turns.");
    lever.sought = beam;
}

/// The axis and the effort, or two supports in their place.
void read_held(TomlReader& top, Lever& lever, SourceNotes& source) {
    if (top.has("support"))
        return read_supports(top, lever, source);
    lever.axis_at_m = noted_quantity(top, "axis", Dimension::length, "axis", source, Need::required)
                          .value_or(0.0);
    read_effort(top, lever, source);
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
    read_held(top, lever, setup.source);
    lever.gravity_m_s2 =
        noted_quantity(top, "gravity", Dimension::acceleration, "gravity", setup.source)
            .value_or(mechanics::kStandardGravity);
    read_loads(top, lever, setup.source);
    read_own_weight(top, lever, setup.source);
    read_friction(top, lever, setup.source);
    top.finish();
    if (!errors.empty())
        return tl::make_unexpected(first_of(errors));
    const auto solved = mechanics::solve_lever(lever);
    if (!solved)
        return tl::make_unexpected(placed_error(solved.error(), setup.source));
    mechanics::fill_in_found_load(*solved, lever);
    return setup;
}

tl::expected<LeverSetup, InputError> parse_lever_setup(std::string_view text,
                                                       const std::string& file) {
    return parse_toml(text, file).and_then(lever_setup_of);
}

tl::expected<LeverSetup, InputError> read_lever_setup(const std::filesystem::path& path) {
    return read_toml_file(path).and_then(lever_setup_of);
}

} // namespace steelyard::setup

#include "setup/body/body_names.h"
#include "setup/body/body_places.h"
#include "setup/resistance/resistance_file.h"

#include <fmt/format.h>

#include <array>

namespace steelyard::setup {
namespace {

using namespace mechanics;

Dumbbell read_dumbbell(const NotedTable& in) {
    Dumbbell dumbbell;
    dumbbell.hand = read_hand(in.table, "hand", Need::required).value_or(dumbbell.hand);
    dumbbell.mass_kg = in.quantity("mass", Dimension::mass, 0.0, Need::required);
    return dumbbell;
}

Barbell read_barbell(const NotedTable& in) {
    Barbell barbell;
    barbell.mass_kg = in.quantity("mass", Dimension::mass, 0.0, Need::required);
    if (in.table.has("resting_on"))
        barbell.resting_on = read_body_point(in, "resting_on", BodyPoint{});
    return barbell;
}

Kettlebell read_kettlebell(const NotedTable& in) {
    Kettlebell bell;
    bell.hand = read_hand(in.table, "hand", Need::required).value_or(bell.hand);
    bell.mass_kg = in.quantity("mass", Dimension::mass, 0.0, Need::required);
    bell.offset_m = in.quantity("offset", Dimension::length, bell.offset_m);
    bell.follows_hand = in.table.boolean("follows_hand").value_or(false);
    bell.direction = read_direction(in, "direction", bell.direction);
    if (in.table.has("direction") && !bell.follows_hand)
        in.table.add_error("direction", "a direction of a bell that hangs", "no direction",
                           "A bell that hangs points down; with follows_hand = true it goes with "
                           "the hand.");
    return bell;
}

Cuff read_cuff(const NotedTable& in) {
    Cuff cuff;
    cuff.at = read_body_point(in, "at", cuff.at, Need::required);
    cuff.mass_kg = in.quantity("mass", Dimension::mass, 0.0, Need::required);
    return cuff;
}

/// The tables inside a list that is written in line: [{ ... }, { ... }].
std::vector<CamEntry> read_cam(const NotedTable& in) {
    in.note_place("cam");
    std::vector<CamEntry> cam;
    for (TomlReader& table : in.table.tables("cam", Need::required)) {
        const NotedTable entry{table, in.source,
                               fmt::format("{}[{}]", in.key_of("cam"), cam.size())};
        CamEntry read;
        read.angle_rad = entry.quantity("angle", Dimension::angle, 0.0, Need::required);
        read.radius_m = entry.quantity("radius", Dimension::length, 0.0, Need::required);
        table.finish();
        cam.push_back(read);
    }
    return cam;
}

PlateMachine read_machine(const NotedTable& in) {
    PlateMachine machine;
    std::vector<std::string_view> names;
    for (const HingeInfo& info : all_hinges())
        names.push_back(info.name);
    if (const auto hinge = in.table.choice("hinge", names, Need::required)) {
        in.note_place("hinge");
        machine.hinge = all_hinges()[*hinge].hinge;
        const HingeInfo& info = all_hinges()[*hinge];
        const auto pushes =
            in.table.choice("pushes", {info.positive, info.negative}, Need::required);
        machine.pushes = pushes == 1u ? -1 : 1;
    }
    machine.stack_kg = in.quantity("stack", Dimension::mass, 0.0, Need::required);
    machine.cam = read_cam(in);
    machine.pad = read_body_point(in, "pad", machine.pad, Need::required);
    return machine;
}

Cable read_cable(const NotedTable& in) {
    Cable cable;
    cable.at = read_body_point(in, "at", cable.at, Need::required);
    cable.pulley_m = read_place(in, "pulley", Need::required);
    cable.tension_N = in.quantity("tension", Dimension::force, 0.0, Need::required, true);
    return cable;
}

TableBand read_stretch_table(const NotedTable& in) {
    in.note_place("table");
    TableBand law;
    law.entries.clear();
    for (TomlReader& table : in.table.tables("table")) {
        const NotedTable entry{table, in.source,
                               fmt::format("{}[{}]", in.key_of("law"), law.entries.size())};
        StretchEntry read;
        read.stretch = entry.quantity("stretch", Dimension::number, 0.0, Need::required);
        read.force_N = entry.quantity("force", Dimension::force, 0.0, Need::required, true);
        table.finish();
        law.entries.push_back(read);
    }
    return law;
}

Band read_band(const NotedTable& in) {
    Band band;
    band.at = read_body_point(in, "at", band.at, Need::required);
    if (is_on_body(in.table, "anchor"))
        band.anchor = read_body_point(in, "anchor", BodyPoint{}, Need::required);
    else
        band.anchor = read_place(in, "anchor", Need::required);
    band.slack_length_m = in.quantity("slack_length", Dimension::length, 1.0, Need::required);
    const bool has_table = in.table.has("table");
    if (has_table == in.table.has("stiffness"))
        in.table.add_error(
            "stiffness", has_table ? "both stiffness and table" : "neither stiffness nor table",
            "one of the two", "Write stiffness = \"150 N/m\", or a table of stretch and force.");
    const auto stiffness = noted_quantity(in.table, "stiffness", Dimension::stiffness,
                                          in.key_of("law.stiffness"), in.source);
    if (has_table)
        band.law = read_stretch_table(in);
    else
        band.law = LinearBand{stiffness.value_or(0.0)};
    return band;
}

PartnerPush read_partner(const NotedTable& in) {
    PartnerPush partner;
    partner.at = read_body_point(in, "at", partner.at, Need::required);
    partner.direction = read_direction(in, "direction", partner.direction, Need::required);
    partner.force_N = in.quantity("force", Dimension::force, 0.0, Need::required, true);
    partner.follows_segment = in.table.boolean("follows_segment").value_or(false);
    return partner;
}

} // namespace

std::vector<Resistance> read_resistances(TomlReader& top, SourceNotes& source) {
    std::vector<Resistance> resistances;
    for (TomlReader& table : top.tables("resistance")) {
        const NotedTable in{table, source, fmt::format("resistances[{}]", resistances.size())};
        source.by_key[in.prefix] = {"", true, table.line(), 1,
                                    fmt::format("resistance[{}]", resistances.size() + 1)};
        Resistance resistance;
        const auto kind = table.choice("kind",
                                       {"dumbbell", "barbell", "kettlebell", "cuff",
                                        "plate_machine", "cable", "band", "partner"},
                                       Need::required);
        if (!kind)
            continue; // its other keys cannot be judged
        resistance.name = table.text("name").value_or(
            *kind == 4 ? "machine" : std::get<std::string>(table.node("kind")->value));
        switch (*kind) {
        case 0:
            resistance.kind = read_dumbbell(in);
            break;
        case 1:
            resistance.kind = read_barbell(in);
            break;
        case 2:
            resistance.kind = read_kettlebell(in);
            break;
        case 3:
            resistance.kind = read_cuff(in);
            break;
        case 4:
            resistance.kind = read_machine(in);
            break;
        case 5:
            resistance.kind = read_cable(in);
            break;
        case 6:
            resistance.kind = read_band(in);
            break;
        default:
            resistance.kind = read_partner(in);
            break;
        }
        table.finish();
        resistances.push_back(resistance);
    }
    return resistances;
}

} // namespace steelyard::setup

// Each kind of resistance in files: how it is read and, beside it, how it is written.

#include "setup/resistance/resistance_file.h"

#include "mechanics/resistance/resistance_kinds.h"
#include "setup/body/body_names.h"
#include "setup/body/body_places.h"
#include "setup/units/format_quantity.h"

#include <fmt/format.h>

#include <array>

namespace steelyard::setup {
namespace {

using namespace mechanics;

void read(const NotedTable& in, Dumbbell& dumbbell) {
    dumbbell.hand = read_hand(in.table, "hand", Need::required).value_or(dumbbell.hand);
    dumbbell.mass_kg = in.quantity("mass", Dimension::mass, 0.0, Need::required);
}

void read(const NotedTable& in, Barbell& barbell) {
    barbell.mass_kg = in.quantity("mass", Dimension::mass, 0.0, Need::required);
    if (in.table.has("resting_on"))
        barbell.resting_on = read_body_point(in, "resting_on", BodyPoint{});
    barbell.straight = in.table.boolean("straight").value_or(false);
}

void read(const NotedTable& in, Kettlebell& bell) {
    bell.hand = read_hand(in.table, "hand", Need::required).value_or(bell.hand);
    bell.mass_kg = in.quantity("mass", Dimension::mass, 0.0, Need::required);
    bell.offset_m = in.quantity("offset", Dimension::length, bell.offset_m);
    bell.follows_hand = in.table.boolean("follows_hand").value_or(false);
    bell.direction = read_direction(in, "direction", bell.direction);
    if (in.table.has("direction") && !bell.follows_hand)
        in.table.add_error("direction", "a direction of a bell that hangs", "no direction",
                           "A bell that hangs points down; with follows_hand = true it goes with "
                           "the hand.");
}

void read(const NotedTable& in, Cuff& cuff) {
    cuff.at = read_body_point(in, "at", cuff.at, Need::required);
    cuff.mass_kg = in.quantity("mass", Dimension::mass, 0.0, Need::required);
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

void read(const NotedTable& in, PlateMachine& machine) {
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
}

void read(const NotedTable& in, Cable& cable) {
    cable.at = read_body_point(in, "at", cable.at, Need::required);
    cable.pulley_m = read_place(in, "pulley", Need::required);
    cable.tension_N = in.quantity("tension", Dimension::force, 0.0, Need::required, true);
}

/// How many parts of the rope carry the stack, as gyms write it.
constexpr std::array<std::string_view, 4> kRopeRatios = {"1:1", "2:1", "3:1", "4:1"};

void read(const NotedTable& in, CableColumn& column) {
    column.at = read_body_point(in, "at", column.at, Need::required);
    column.pulley_m = read_place(in, "pulley", Need::required);
    column.stack_kg = in.quantity("stack", Dimension::mass, 0.0, Need::required);
    if (const auto ratio =
            in.table.choice("rope_ratio", {kRopeRatios.begin(), kRopeRatios.end()}, Need::required))
        column.rope_ratio = static_cast<int>(*ratio) + 1;
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

void read(const NotedTable& in, Band& band) {
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
}

void read(const NotedTable& in, PartnerPush& partner) {
    partner.at = read_body_point(in, "at", partner.at, Need::required);
    partner.direction = read_direction(in, "direction", partner.direction, Need::required);
    partner.force_N = in.quantity("force", Dimension::force, 0.0, Need::required, true);
    partner.follows_segment = in.table.boolean("follows_segment").value_or(false);
}

/// Puts one resistance into lines.
class ResistanceWriter {
public:
    ResistanceWriter(std::string prefix, const SourceNotes& source, UnitSystem units)
        : prefix_(std::move(prefix)), source_(source), us_(units == UnitSystem::us) {}

    std::string text() const { return text_; }

    void line(std::string_view key, const std::string& value) {
        text_ += fmt::format("{} = {}\n", key, value);
    }

    void operator()(const Dumbbell& dumbbell) {
        line("hand", toml_string(side_of_hand(dumbbell.hand)));
        mass("mass", dumbbell.mass_kg);
    }

    void operator()(const Barbell& barbell) {
        mass("mass", barbell.mass_kg);
        if (barbell.resting_on)
            point("resting_on", *barbell.resting_on);
        if (barbell.straight)
            line("straight", "true");
    }

    void operator()(const Kettlebell& bell) {
        line("hand", toml_string(side_of_hand(bell.hand)));
        mass("mass", bell.mass_kg);
        length("offset", bell.offset_m);
        if (bell.follows_hand) {
            line("follows_hand", "true");
            line("direction", written_direction_in_space(bell.direction));
        }
    }

    void operator()(const Cuff& cuff) {
        point("at", cuff.at);
        mass("mass", cuff.mass_kg);
    }

    void operator()(const PlateMachine& machine) {
        const HingeInfo& info = hinge_info(machine.hinge);
        line("hinge", toml_string(info.name));
        line("pushes", toml_string(machine.pushes > 0 ? info.positive : info.negative));
        mass("stack", machine.stack_kg);
        point("pad", machine.pad);
        std::string cam = "[\n";
        for (std::size_t i = 0; i < machine.cam.size(); ++i) {
            const std::string key = fmt::format("{}.cam[{}]", prefix_, i);
            cam += fmt::format("    {{ angle = {}, radius = {} }},\n",
                               written_quantity(machine.cam[i].angle_rad, Dimension::angle,
                                                key + ".angle", source_, "°"),
                               written_quantity(machine.cam[i].radius_m, Dimension::length,
                                                key + ".radius", source_, length_unit()));
        }
        line("cam", cam + "]");
    }

    void operator()(const Cable& cable) {
        point("at", cable.at);
        line("pulley", written_place(cable.pulley_m, prefix_ + ".pulley", source_, length_unit()));
        force("tension", cable.tension_N);
    }

    void operator()(const CableColumn& column) {
        point("at", column.at);
        line("pulley", written_place(column.pulley_m, prefix_ + ".pulley", source_, length_unit()));
        mass("stack", column.stack_kg);
        line("rope_ratio",
             toml_string(kRopeRatios[static_cast<std::size_t>(column.rope_ratio - 1)]));
    }

    void operator()(const Band& band) {
        point("at", band.at);
        if (const auto* on_body = std::get_if<BodyPoint>(&band.anchor))
            point("anchor", *on_body);
        else
            line("anchor", written_place(std::get<Vec3>(band.anchor), prefix_ + ".anchor", source_,
                                         length_unit()));
        length("slack_length", band.slack_length_m);
        if (const auto* linear = std::get_if<LinearBand>(&band.law))
            line("stiffness",
                 written_quantity(linear->stiffness_N_m, Dimension::stiffness,
                                  prefix_ + ".law.stiffness", source_, us_ ? "lbf/in" : "N/m"));
        else
            stretch_table(std::get<TableBand>(band.law));
    }

    void operator()(const PartnerPush& partner) {
        point("at", partner.at);
        line("direction", written_direction_in_space(partner.direction));
        force("force", partner.force_N);
        if (partner.follows_segment)
            line("follows_segment", "true");
    }

private:
    std::string_view length_unit() const { return us_ ? "in" : "cm"; }

    void quantity(std::string_view key, double value, Dimension dimension, std::string_view unit,
                  bool mass_as_force = false) {
        line(key, written_quantity(value, dimension, fmt::format("{}.{}", prefix_, key), source_,
                                   unit, mass_as_force));
    }
    void mass(std::string_view key, double value_kg) {
        quantity(key, value_kg, Dimension::mass, us_ ? "lb" : "kg");
    }
    void length(std::string_view key, double value_m) {
        quantity(key, value_m, Dimension::length, length_unit());
    }
    void force(std::string_view key, double value_N) {
        quantity(key, value_N, Dimension::force, us_ ? "lbf" : "N", true);
    }
    void point(std::string_view key, const BodyPoint& at) {
        line(key,
             written_body_point(at, fmt::format("{}.{}", prefix_, key), source_, length_unit()));
    }
    void stretch_table(const TableBand& law) {
        std::string table = "[\n";
        for (std::size_t i = 0; i < law.entries.size(); ++i) {
            const std::string key = fmt::format("{}.law[{}]", prefix_, i);
            table +=
                fmt::format("    {{ stretch = {}, force = {} }},\n",
                            written_quantity(law.entries[i].stretch, Dimension::number,
                                             key + ".stretch", source_, ""),
                            written_quantity(law.entries[i].force_N, Dimension::force,
                                             key + ".force", source_, us_ ? "lbf" : "N", true));
        }
        line("table", table + "]");
    }

    std::string prefix_;
    const SourceNotes& source_;
    bool us_;
    std::string text_;
};

/// A kind by its index in the variant, read from a table.
template <std::size_t Index = 0>
void read_kind(std::size_t wanted, const NotedTable& in, Resistance& resistance) {
    if constexpr (Index < std::variant_size_v<decltype(Resistance::kind)>) {
        if (Index == wanted)
            read(in, resistance.kind.emplace<Index>());
        else
            read_kind<Index + 1>(wanted, in, resistance);
    }
}

} // namespace

std::vector<Resistance> read_resistances(TomlReader& top, SourceNotes& source) {
    std::vector<Resistance> resistances;
    for (TomlReader& table : top.tables("resistance")) {
        const NotedTable in{table, source, fmt::format("resistances[{}]", resistances.size())};
        source.by_key[in.prefix] = {"", true, table.line(), 1,
                                    fmt::format("resistance[{}]", resistances.size() + 1)};
        const auto kind = table.choice("kind", resistance_kind_names(), Need::required);
        if (!kind)
            continue; // its other keys cannot be judged
        const std::optional<std::string> name = table.short_text("name");
        Resistance resistance;
        read_kind(*kind, in, resistance);
        resistance.name = name.value_or(std::string(usual_name(resistance)));
        table.finish();
        resistances.push_back(std::move(resistance));
    }
    return resistances;
}

std::string write_resistance(const Resistance& resistance, std::size_t index,
                             const SourceNotes& source, UnitSystem units) {
    ResistanceWriter writer(fmt::format("resistances[{}]", index), source, units);
    writer.line("kind", toml_string(kind_name(resistance)));
    writer.line("name", toml_name(resistance.name));
    std::visit([&](const auto& kind) { writer(kind); }, resistance.kind);
    return "\n[[resistance]]\n" + writer.text();
}

} // namespace steelyard::setup

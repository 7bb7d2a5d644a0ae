#include "setup/body/body_names.h"
#include "setup/body/body_places.h"
#include "setup/resistance/resistance_file.h"
#include "setup/units/format_quantity.h"

#include <fmt/format.h>

namespace steelyard::setup {
namespace {

using namespace mechanics;

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

constexpr std::string_view kKindNames[] = {"dumbbell",      "barbell", "kettlebell", "cuff",
                                           "plate_machine", "cable",   "band",       "partner"};

} // namespace

std::string write_resistance(const Resistance& resistance, std::size_t index,
                             const SourceNotes& source, UnitSystem units) {
    ResistanceWriter writer(fmt::format("resistances[{}]", index), source, units);
    writer.line("kind", toml_string(kKindNames[resistance.kind.index()]));
    writer.line("name", toml_string(resistance.name));
    std::visit([&](const auto& kind) { writer(kind); }, resistance.kind);
    return "\n[[resistance]]\n" + writer.text();
}

} // namespace steelyard::setup

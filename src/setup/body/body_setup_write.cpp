#include "setup/body/body_names.h"
#include "setup/body/body_places.h"
#include "setup/body/body_setup.h"
#include "setup/body/given_arms.h"
#include "setup/resistance/resistance_file.h"
#include "setup/units/format_quantity.h"

#include <fmt/format.h>

namespace steelyard::setup {
namespace {

using namespace mechanics;

std::string list_of_texts(const std::vector<std::string>& texts) {
    std::string list;
    for (const std::string& text : texts)
        list += (list.empty() ? "" : ", ") + toml_string(text);
    return "[" + list + "]";
}

/// What the parts of a setup are written with.
struct Writing {
    const BodySetup& setup;
    std::string_view length_unit;
    std::string_view mass_unit;

    std::string quantity(double value, Dimension dimension, std::string_view key,
                         std::string_view unit) const {
        return written_quantity(value, dimension, key, setup.source, unit);
    }
};

std::string write_person(const Writing& writing) {
    const Person& person = writing.setup.person;
    std::string text = "\n[body]\n";
    if (!person.name.empty())
        text += fmt::format("person = {}\n", toml_string(person.name));
    text += fmt::format(
        "sex = \"{}\"\nheight = {}\nmass = {}\ntable = {}\n",
        person.sex == Sex::male ? "male" : "female",
        writing.quantity(person.height_m, Dimension::length, "height", writing.length_unit),
        writing.quantity(person.mass_kg, Dimension::mass, "mass", writing.mass_unit),
        toml_string(person.table));
    for (std::size_t i = 0; i < person.measured.size(); ++i) {
        const MeasuredValue& measured = person.measured[i];
        const std::string key = fmt::format("measured[{}].value", i);
        text += fmt::format("\n[[body.measured]]\npart = {}\n",
                            toml_string(table_part_name(measured.part)));
        switch (measured.measure) {
        case Measure::length_m:
            text += "length = " +
                    writing.quantity(measured.value, Dimension::length, key, writing.length_unit);
            break;
        case Measure::mass_kg:
            text += "mass = " +
                    writing.quantity(measured.value, Dimension::mass, key, writing.mass_unit);
            break;
        case Measure::com_fraction:
            text += "centre = " + writing.quantity(measured.value, Dimension::number, key, "");
            break;
        }
        text += "\n";
    }
    return text + write_given_arms(person.arms, writing.setup.source, writing.length_unit);
}

/// Angles that differ from those given, both sides in one line where they are alike.
std::string write_angles(const Writing& writing, const std::string& prefix,
                         const PerHinge& angles_rad, const PerHinge& unless_rad) {
    std::string text;
    const auto differs = [&](Hinge hinge) {
        return !same_bits(angles_rad[index_of(hinge)], unless_rad[index_of(hinge)]);
    };
    for (const HingeInfo& info : all_hinges()) {
        const bool is_left = info.name.substr(0, 5) == "left_";
        const bool alike =
            info.mirror != info.hinge && differs(info.hinge) && differs(info.mirror) &&
            same_bits(angles_rad[index_of(info.hinge)], angles_rad[index_of(info.mirror)]);
        if (!differs(info.hinge) || (alike && is_left))
            continue;
        text += fmt::format("{} = {}\n", alike ? without_side(info.name) : info.name,
                            writing.quantity(angles_rad[index_of(info.hinge)], Dimension::angle,
                                             fmt::format("{}.{}", prefix, info.name), "°"));
    }
    return text;
}

std::string write_anchor(const Writing& writing) {
    const Anchor& anchor = writing.setup.exercise.body_case.pose.anchor;
    const Anchor usual;
    std::string text;
    const bool usual_point = anchor.point.segment == usual.point.segment &&
                             anchor.point.spot == usual.point.spot &&
                             anchor.point.offset_m == usual.point.offset_m;
    if (!usual_point)
        text += "point = " +
                written_body_point(anchor.point, "pose.anchor.point", writing.setup.source,
                                   writing.length_unit) +
                "\n";
    if (anchor.at_m != Vec3::Zero())
        text += "at = " +
                written_place(anchor.at_m, "pose.anchor.at", writing.setup.source,
                              writing.length_unit) +
                "\n";
    for (const auto& [key, angle_rad] :
         {std::pair("turn", anchor.turn_rad), std::pair("lean", anchor.lean_rad),
          std::pair("side_lean", anchor.side_lean_rad)})
        if (angle_rad != 0.0)
            text += fmt::format("{} = {}\n", key,
                                writing.quantity(angle_rad, Dimension::angle,
                                                 fmt::format("pose.anchor.{}", key), "°"));
    return text.empty() ? text : "\n[pose.anchor]\n" + text;
}

std::string write_movement(const Writing& writing) {
    const BodySetup& setup = writing.setup;
    std::string text;
    const std::string angles =
        write_angles(writing, "pose", setup.exercise.body_case.pose.angle_rad, PerHinge{});
    if (!angles.empty())
        text += "\n[pose]\n" + angles;
    text += write_anchor(writing);
    const PerHinge& start_rad = setup.exercise.body_case.pose.angle_rad;
    if (const auto& path = setup.exercise.path) {
        text += "\n[path]\n" + write_angles(writing, "path", path->end_angle_rad, start_rad);
        if (path->halfway_rad)
            text += "\n[path.halfway]\n" + write_angles(writing, "path.halfway", *path->halfway_rad,
                                                        even_halfway_rad(start_rad, *path));
    }
    if (setup.exercise.tempo) {
        text += "\n[tempo]\n";
        for (const auto& [key, time_s] : {std::pair("out", setup.exercise.tempo->out_s),
                                          std::pair("hold", setup.exercise.tempo->hold_s),
                                          std::pair("back", setup.exercise.tempo->back_s)})
            text += fmt::format(
                "{} = {}\n", key,
                writing.quantity(time_s, Dimension::time, fmt::format("tempo.{}", key), "s"));
    }
    return text;
}

std::string write_support(const Writing& writing) {
    const Support& support = writing.setup.exercise.body_case.support;
    if (const auto* held = std::get_if<Held>(&support))
        return fmt::format("\n[support]\nheld = {}\n",
                           toml_string(segment_info(held->segment).name));
    const auto& on = std::get<OnContacts>(support);
    std::string text =
        fmt::format("\n[support]\nfriction = {}\n",
                    writing.quantity(on.friction, Dimension::number, "support.friction", ""));
    for (std::size_t i = 0; i < on.contacts.size(); ++i) {
        const Contact& contact = on.contacts[i];
        text += fmt::format("\n[[support.contact]]\nsegment = {}\npatch = {}\n",
                            toml_string(segment_info(contact.segment).name),
                            toml_string(patch_name(contact.patch)));
        if (contact.pressure_at)
            text += fmt::format("pressure_at = {}\n",
                                writing.quantity(*contact.pressure_at, Dimension::number,
                                                 fmt::format("support.contacts[{}].pressure_at", i),
                                                 ""));
        if (contact.tilts)
            text += "tilts = true\n";
        if (contact.level_m != 0.0)
            text += fmt::format("height = {}\n",
                                writing.quantity(contact.level_m, Dimension::length,
                                                 fmt::format("support.contacts[{}].height", i),
                                                 writing.length_unit));
        if (contact.sticks)
            text += "stick = true\n";
    }
    return text;
}

} // namespace

std::string write_body_setup(const BodySetup& setup) {
    const bool us = setup.head.units == UnitSystem::us;
    const Writing writing{setup, us ? "in" : "cm", us ? "lb" : "kg"};
    std::vector<std::string> axes;
    for (const Hinge hinge : setup.axes)
        axes.emplace_back(hinge_info(hinge).name);

    std::string text = write_head(setup.head, "body");
    text +=
        fmt::format("view = \"{}\"\naxes = {}\n",
                    body_view_names()[static_cast<std::size_t>(setup.view)], list_of_texts(axes));
    if (!setup.muscles.empty())
        text += fmt::format("muscles = {}\n", list_of_texts(setup.muscles));
    if (setup.exercise.body_case.gravity_m_s2 != kStandardGravity || setup.source.find("gravity"))
        text +=
            fmt::format("gravity = {}\n", writing.quantity(setup.exercise.body_case.gravity_m_s2,
                                                           Dimension::acceleration, "gravity",
                                                           us ? "ft/s²" : "m/s²"));
    text += write_person(writing) + write_movement(writing);
    for (std::size_t i = 0; i < setup.exercise.body_case.resistances.size(); ++i)
        text += write_resistance(setup.exercise.body_case.resistances[i], i, setup.source,
                                 setup.head.units);
    return text + write_support(writing);
}

} // namespace steelyard::setup

#include "setup/body/body_setup.h"

#include "setup/body/body_names.h"
#include "setup/body/body_places.h"
#include "setup/body/finish_movement.h"
#include "setup/body/given_arms.h"
#include "setup/resistance/resistance_file.h"
#include "setup/units/format_quantity.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace steelyard::setup {
namespace {

using namespace mechanics;

constexpr std::array<std::string_view, 3> kMeasureKeys = {"length", "mass", "centre"};
constexpr std::array kMeasureDimensions = {Dimension::length, Dimension::mass, Dimension::number};

/// One [[body.measured]] table: a part and one or more of its length, mass and centre.
void read_measured(TomlReader& table, Person& person, SourceNotes& source) {
    const auto part = table.choice("part", table_part_names(), Need::required);
    bool any = false;
    for (std::size_t i = 0; i < kMeasureKeys.size(); ++i) {
        const std::string key = fmt::format("measured[{}].value", person.measured.size());
        const auto value =
            noted_quantity(table, kMeasureKeys[i], kMeasureDimensions[i], key, source);
        any = any || table.has(kMeasureKeys[i]);
        if (part && value)
            person.measured.push_back(
                {static_cast<TablePart>(*part), static_cast<Measure>(i), *value});
    }
    if (!any)
        table.add_error("length", "nothing measured", "a length, a mass or a centre");
    table.finish();
}

Person read_person(TomlReader& top, SourceNotes& source,
                   const std::vector<NamedSegmentTable>& tables) {
    Person person;
    auto table = top.table("body", Need::required);
    if (!table)
        return person;
    source.by_key["table"] = {"", true, table->line(), 1, "body"};
    person.name = table->text("person").value_or("");
    person.sex =
        table->choice("sex", {"female", "male"}, Need::required) == 1u ? Sex::male : Sex::female;
    person.height_m =
        noted_quantity(*table, "height", Dimension::length, "height", source, Need::required)
            .value_or(person.height_m);
    person.mass_kg = noted_quantity(*table, "mass", Dimension::mass, "mass", source, Need::required)
                         .value_or(person.mass_kg);
    std::vector<std::string_view> ids;
    ids.reserve(tables.size());
    for (const NamedSegmentTable& named : tables)
        ids.push_back(named.id);
    if (const auto id = table->choice("table", ids))
        person.table = ids[*id];
    for (TomlReader& measured : table->tables("measured"))
        read_measured(measured, person, source);
    read_given_arms(*table, person.arms, source);
    table->finish();
    return person;
}

/// Angles by names of hinges, with or without a side.
/// @param prefix  of the notes: "pose" or "path"
void read_hinge_angles(TomlReader& table, const std::string& prefix, PerHinge& angles_rad,
                       SourceNotes& source) {
    std::array<bool, kHingeCount> set{};
    for (const std::string& key : table.free_keys()) {
        if (key == "anchor" || key == "halfway")
            continue;
        const std::vector<Hinge> hinges = hinges_named(key);
        if (hinges.empty()) {
            const std::string nearest = nearest_spelling(key, all_hinge_names());
            table.add_error(key, "no hinge of the body", "a hinge such as \"elbow_flexion\"",
                            nearest.empty() ? std::string()
                                            : fmt::format("Did you mean \"{}\"?", nearest));
            continue;
        }
        for (const Hinge hinge : hinges) {
            const std::string note = fmt::format("{}.{}", prefix, hinge_info(hinge).name);
            const auto angle_rad = noted_quantity(table, key, Dimension::angle, note, source);
            if (set[index_of(hinge)])
                table.add_error(key, "a second angle of the same hinge", "one",
                                "A name without a side means both sides.");
            set[index_of(hinge)] = true;
            angles_rad[index_of(hinge)] = angle_rad.value_or(0.0);
        }
    }
}

void read_anchor(TomlReader& pose, Anchor& anchor, SourceNotes& source) {
    auto table = pose.table("anchor");
    if (!table)
        return;
    const NotedTable in{*table, source, "pose.anchor"};
    source.by_key[in.prefix] = {"", true, table->line(), 1, "pose.anchor"};
    anchor.point = read_body_point(in, "point", anchor.point);
    anchor.at_m = read_place(in, "at", Need::optional);
    anchor.turn_rad = in.quantity("turn", Dimension::angle, 0.0);
    anchor.lean_rad = in.quantity("lean", Dimension::angle, 0.0);
    anchor.side_lean_rad = in.quantity("side_lean", Dimension::angle, 0.0);
    table->finish();
}

/// Angles half-way; a hinge that is not named is then half-way between start and end.
void read_halfway(TomlReader& path_table, const PerHinge& start_rad, PosePath& path,
                  SourceNotes& source) {
    auto table = path_table.table("halfway");
    if (!table)
        return;
    path.halfway_rad = even_halfway_rad(start_rad, path);
    read_hinge_angles(*table, "path.halfway", *path.halfway_rad, source);
}

void read_movement(TomlReader& top, BodySetup& setup) {
    Pose& pose = setup.exercise.body_case.pose;
    if (auto table = top.table("pose")) {
        read_anchor(*table, pose.anchor, setup.source);
        read_hinge_angles(*table, "pose", pose.angle_rad, setup.source);
    }
    if (auto table = top.table("path")) {
        setup.exercise.path = PosePath{pose.angle_rad};
        read_hinge_angles(*table, "path", setup.exercise.path->end_angle_rad, setup.source);
        read_halfway(*table, pose.angle_rad, *setup.exercise.path, setup.source);
    }
    if (auto table = top.table("tempo")) {
        const NotedTable in{*table, setup.source, "tempo"};
        Tempo tempo;
        tempo.out_s = in.quantity("out", Dimension::time, tempo.out_s, Need::required);
        tempo.hold_s = in.quantity("hold", Dimension::time, 0.0);
        tempo.back_s = in.quantity("back", Dimension::time, tempo.back_s, Need::required);
        if (!(tempo.out_s > 0.0) || !(tempo.back_s > 0.0) || tempo.hold_s < 0.0)
            table->add_error("out", "a time that cannot be", "times above 0, and a hold from 0 s");
        if (!setup.exercise.path)
            table->add_error("out", "a tempo without a [path]", "a [path] to move along");
        table->finish();
        setup.exercise.tempo = tempo;
    }
}

Contact read_contact(TomlReader& table, std::size_t index, SourceNotes& source) {
    Contact contact;
    const NotedTable in{table, source, fmt::format("support.contacts[{}]", index)};
    source.by_key[in.prefix] = {"", true, table.line(), 1, table.path_of("")};
    contact.segment = read_segment(table, "segment", Need::required).value_or(contact.segment);
    in.note_place("segment");
    if (const auto patch = table.choice("patch", patch_names(), Need::required))
        contact.patch = static_cast<Patch>(*patch);
    contact.pressure_at =
        noted_quantity(table, "pressure_at", Dimension::number, in.key_of("pressure_at"), source);
    contact.tilts = table.boolean("tilts").value_or(contact.tilts);
    contact.level_m = in.quantity("height", Dimension::length, contact.level_m);
    contact.sticks = table.boolean("stick").value_or(contact.sticks);
    in.note_place("stick");
    table.finish();
    return contact;
}

Support read_support(TomlReader& top, SourceNotes& source) {
    OnContacts on;
    auto table = top.table("support");
    if (!table)
        return on;
    source.by_key["support"] = {"", true, table->line(), 1, "support"};
    if (table->has("held")) {
        const auto held = read_segment(*table, "held", Need::required);
        table->finish();
        return Held{held.value_or(Segment::pelvis)};
    }
    const NotedTable in{*table, source, "support"};
    on.friction = in.quantity("friction", Dimension::number, on.friction);
    if (table->has("contact")) {
        on.contacts.clear();
        for (TomlReader& contact : table->tables("contact"))
            on.contacts.push_back(read_contact(contact, on.contacts.size(), source));
    }
    table->finish();
    return on;
}

std::vector<Hinge> read_axes(TomlReader& top) {
    std::vector<Hinge> axes;
    for (const std::string& name :
         top.texts("axes", Need::required).value_or(std::vector<std::string>{})) {
        const auto hinge = hinge_named(name);
        if (hinge && std::find(axes.begin(), axes.end(), *hinge) == axes.end()) {
            axes.push_back(*hinge);
            continue;
        }
        const std::string nearest = nearest_spelling(name, all_hinge_names());
        top.add_error("axes", fmt::format("\"{}\"", name),
                      hinge ? "each hinge once" : "names of hinges such as \"right_elbow_flexion\"",
                      hinge || nearest.empty() ? std::string()
                                               : fmt::format("Did you mean \"{}\"?", nearest));
    }
    return axes;
}

} // namespace

tl::expected<Body, MechanicsError> body_of(const Person& person,
                                           const std::vector<NamedSegmentTable>& tables) {
    for (const NamedSegmentTable& named : tables)
        if (named.id == person.table)
            return body_from(named.table, person.sex, person.height_m, person.mass_kg,
                             person.measured);
    return tl::make_unexpected(
        MechanicsError{Fault::unknown_name, "table", "the name of a segment table"});
}

tl::expected<BodySetup, InputError> body_setup_of(const TomlDocument& document,
                                                  const std::vector<NamedSegmentTable>& tables) {
    BodySetup setup;
    setup.source.file = document.file;
    InputErrors errors;
    TomlReader top(document, errors);
    setup.head = read_head(top);
    setup.exercise.name = setup.head.name;
    const std::optional<std::size_t> view = top.choice("view", body_view_names());
    setup.axes = read_axes(top);
    setup.muscles = top.texts("muscles").value_or(std::vector<std::string>{});
    setup.exercise.body_case.gravity_m_s2 =
        noted_quantity(top, "gravity", Dimension::acceleration, "gravity", setup.source)
            .value_or(kStandardGravity);
    setup.person = read_person(top, setup.source, tables);
    read_movement(top, setup);
    setup.exercise.body_case.resistances = read_resistances(top, setup.source);
    setup.exercise.body_case.support = read_support(top, setup.source);
    top.finish();
    if (!errors.empty())
        return tl::make_unexpected(first_of(errors));
    auto body = body_of(setup.person, tables);
    if (!body)
        return tl::make_unexpected(placed_error(body.error(), setup.source));
    setup.exercise.body_case.body = *std::move(body);
    if (auto error = finish_movement(setup))
        return tl::make_unexpected(*std::move(error));
    setup.view =
        view ? static_cast<BodyView>(*view) : best_view(setup.exercise, setup.axes.front());
    return setup;
}

tl::expected<BodySetup, InputError> parse_body_setup(std::string_view text, const std::string& file,
                                                     const std::vector<NamedSegmentTable>& tables) {
    return parse_toml(text, file).and_then([&](const TomlDocument& document) {
        return body_setup_of(document, tables);
    });
}

} // namespace steelyard::setup

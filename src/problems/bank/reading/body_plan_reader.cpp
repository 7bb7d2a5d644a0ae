#include "problems/bank/reading/body_plan_reader.h"

#include "setup/body/body_names.h"
#include "setup/body/body_setup.h"
#include "setup/toml/spelling.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>

namespace steelyard::problems {

namespace {

using mechanics::Segment;
using setup::Need;
using setup::TomlReader;

std::string did_you_mean(std::string_view text, const std::vector<std::string_view>& known) {
    const std::string nearest = setup::nearest_spelling(text, known);
    return nearest.empty() ? std::string() : fmt::format("Did you mean \"{}\"?", nearest);
}

/// The person before the family's own numbers.
std::optional<mechanics::Body> read_person(TomlReader& table, FamilyNames& names, BodyPlan& plan,
                                           const Published& published) {
    setup::Person person;
    if (std::optional<TomlReader> written = table.table("person")) {
        if (written->choice("sex", {"female", "male"}) == 1u)
            person.sex = mechanics::Sex::male;
        if (const auto height = written->quantity("height", setup::Dimension::length))
            person.height_m = height->value_SI;
        plan.body_mass = names.expression(*written, "mass");
        written->finish();
    }
    tl::expected<mechanics::Body, mechanics::MechanicsError> body =
        setup::body_of(person, published.tables);
    if (body)
        return *body;
    table.add_error("person", "a person whose " + body.error().key + " cannot be",
                    body.error().expected);
    return std::nullopt;
}

void read_axes(TomlReader& table, BodyPlan& plan) {
    std::optional<TomlReader> axes = table.table("axes", Need::required);
    if (!axes)
        return;
    for (const std::string& key : axes->free_keys()) {
        AxisPlan axis;
        std::vector<std::string_view> known;
        bool found = false;
        for (std::size_t i = 0; i < kBodyAxes; ++i) {
            known.push_back(name_of(static_cast<BodyAxis>(i)));
            if (known.back() == key) {
                axis.axis = static_cast<BodyAxis>(i);
                found = true;
            }
        }
        if (!found) {
            axes->add_error(key, "no joint", "a joint such as shoulder, elbow, hip or low_back",
                            did_you_mean(key, known));
            continue;
        }
        const std::string hinge = axes->text(key).value_or("");
        axis.hinges = setup::hinges_named(hinge);
        if (axis.hinges.empty())
            axes->add_error(key, fmt::format("\"{}\"", hinge),
                            "a hinge such as \"right_elbow_flexion\", or \"hip_flexion\" for both",
                            did_you_mean(hinge, setup::all_hinge_names()));
        else
            plan.axes.push_back(std::move(axis));
    }
}

void read_pose(TomlReader& table, FamilyNames& names, BodyPlan& plan) {
    std::optional<TomlReader> pose = table.table("pose");
    if (!pose)
        return;
    for (const std::string& key : pose->free_keys()) {
        const std::vector<mechanics::Hinge> hinges = setup::hinges_named(key);
        if (hinges.empty())
            pose->add_error(key, "no hinge of the body", "a hinge such as \"elbow_flexion\"",
                            did_you_mean(key, setup::all_hinge_names()));
        const std::optional<Expression> angle = names.expression(*pose, key);
        for (const mechanics::Hinge hinge : hinges)
            if (angle)
                plan.pose.emplace_back(hinge, *angle);
    }
}

void read_parts(TomlReader& table, FamilyNames& names, BodyPlan& plan) {
    std::vector<std::string_view> known;
    for (std::size_t i = 0; i < kBodyParts; ++i)
        known.push_back(name_of(static_cast<BodyPart>(i)));
    for (TomlReader& part : table.tables("part")) {
        BodyPartPlan each;
        each.part = static_cast<BodyPart>(part.choice("is", known, Need::required).value_or(0));
        each.mass = names.expression(part, "mass");
        each.length = names.expression(part, "length");
        each.centre = names.expression(part, "centre");
        if (each.part == BodyPart::trunk) {
            each.shoulders = names.expression(part, "shoulders");
            each.half_breadth = names.expression(part, "half_breadth");
        }
        if (each.part == BodyPart::hand)
            each.grip = names.expression(part, "grip");
        part.finish();
        plan.parts.push_back(std::move(each));
    }
}

SpacePlan read_space(TomlReader& table, std::string_view key, FamilyNames& names) {
    SpacePlan plan;
    std::optional<TomlReader> space = table.table(key, Need::required);
    if (!space)
        return plan;
    if (const std::optional<std::string> from = space->text("from")) {
        const std::optional<mechanics::Joint> joint = mechanics::joint_named(*from);
        if (joint)
            plan.from_joint = mechanics::joint_info(*joint).segment;
        else
            space->add_error("from", fmt::format("\"{}\"", *from),
                             "a joint such as \"right_shoulder\"");
    }
    plan.forward = names.expression(*space, "forward");
    plan.up = names.expression(*space, "up");
    plan.right = names.expression(*space, "right");
    space->finish();
    return plan;
}

/// { segment = "right_shank", distance = "0.3 m" } or with a spot such as "grip".
BodyPointPlan read_point(TomlReader& table, FamilyNames& names) {
    BodyPointPlan plan;
    std::optional<TomlReader> at = table.table("at", Need::required);
    if (!at)
        return plan;
    plan.point.segment =
        setup::read_segment(*at, "segment", Need::required).value_or(plan.point.segment);
    if (at->has("spot")) {
        const std::optional<std::size_t> spot = at->choice("spot", setup::spot_names());
        plan.point.spot = static_cast<mechanics::Spot>(spot.value_or(0));
    } else {
        plan.point.spot = mechanics::Spot::along;
        plan.distance = names.expression(*at, "distance", Need::required);
    }
    at->finish();
    return plan;
}

ResistancePlan read_resistance(TomlReader& table, FamilyNames& names) {
    using Is = ResistancePlan::Is;
    static const std::vector<std::string_view> kKinds{"dumbbell", "barbell", "cuff",
                                                      "cable",    "band",    "push"};
    static constexpr std::array<std::string_view, 6> kSizes{"mass",  "mass",      "mass",
                                                            "force", "stiffness", "force"};
    static constexpr std::array<std::string_view, 6> kSpaces{"",       "",       "",
                                                             "pulley", "anchor", "direction"};
    ResistancePlan plan;
    plan.is = static_cast<Is>(table.choice("kind", kKinds, Need::required).value_or(0));
    const auto kind = static_cast<std::size_t>(plan.is);
    plan.name = names.text(table, "name", Need::required);
    plan.size = names.expression(table, kSizes[kind], Need::required).value_or(Expression{});
    if (plan.is == Is::dumbbell)
        plan.at.point.segment =
            setup::read_hand(table, "hand", Need::optional).value_or(Segment::right_hand);
    else if (plan.is != Is::barbell)
        plan.at = read_point(table, names);
    if (!kSpaces[kind].empty())
        plan.space = read_space(table, kSpaces[kind], names);
    if (plan.is == Is::band)
        plan.slack_length = names.expression(table, "slack_length", Need::required);
    table.finish();
    return plan;
}

/// What holds the body: a segment, or the floor under both feet or their balls.
void read_support(TomlReader& table, BodyPlan& plan) {
    if (table.has("held")) {
        plan.support = mechanics::Held{
            setup::read_segment(table, "held", Need::required).value_or(Segment::pelvis)};
        return;
    }
    const std::optional<std::size_t> stands = table.choice("stands", {"feet", "balls"});
    if (!stands)
        return;
    mechanics::OnContacts on;
    if (*stands == 1)
        for (mechanics::Contact& contact : on.contacts) {
            contact.patch = mechanics::Patch::ball;
            contact.pressure_at = 0.5;
        }
    plan.support = on;
}

void check_known_before(TomlReader& table, const BodyPlan& plan, FamilyNames& names) {
    bool reads = false;
    const auto look = [&](const std::optional<Expression>& expression) {
        reads = reads || (expression && names.reads_solved(*expression));
    };
    look(plan.body_mass);
    look(plan.lean);
    for (const BodyPartPlan& part : plan.parts)
        for (const auto* each : {&part.mass, &part.length, &part.centre, &part.shoulders,
                                 &part.half_breadth, &part.grip})
            look(*each);
    for (const auto& [hinge, angle] : plan.pose)
        look(angle);
    for (const ResistancePlan& resistance : plan.resistances) {
        look(resistance.size);
        for (const auto* each :
             {&resistance.at.distance, &resistance.space.forward, &resistance.space.up,
              &resistance.space.right, &resistance.slack_length})
            look(*each);
    }
    if (plan.effort)
        look(plan.effort->arm);
    if (reads)
        table.add_error("axes", "a setup that reads its own solution",
                        "expressions on drawn and [let] quantities only");
}

} // namespace

bool is_body_setup(const TomlReader& table) {
    return table.has("axes");
}

std::optional<BodyPlan> read_body_plan(TomlReader& table, FamilyNames& names,
                                       const Published& published) {
    BodyPlan plan;
    const std::optional<mechanics::Body> person = read_person(table, names, plan, published);
    plan.view =
        static_cast<setup::BodyView>(table.choice("view", setup::plane_view_names()).value_or(0));
    read_axes(table, plan);
    plan.axis_name = table.text("axis_name").value_or("");
    read_pose(table, names, plan);
    plan.lean = names.expression(table, "lean");
    read_support(table, plan);
    read_parts(table, names, plan);
    for (TomlReader& resistance : table.tables("resistance"))
        plan.resistances.push_back(read_resistance(resistance, names));
    if (plan.resistances.size() > 4)
        table.add_error("resistance", fmt::format("{} resistances", plan.resistances.size()),
                        "at most 4");
    if (std::optional<TomlReader> effort = table.table("effort")) {
        MusclePlan muscle;
        muscle.name = names.text(*effort, "name", Need::required);
        muscle.arm = names.expression(*effort, "arm", Need::required).value_or(Expression{});
        effort->finish();
        plan.effort = std::move(muscle);
    }
    check_known_before(table, plan, names);
    if (!person || plan.axes.empty())
        return std::nullopt;
    plan.person = *person;
    return plan;
}

} // namespace steelyard::problems

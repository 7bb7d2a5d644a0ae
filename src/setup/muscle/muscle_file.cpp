#include "setup/muscle/muscle_file.h"

#include "setup/files/data_folder.h"
#include "setup/files/folder.h"
#include "setup/muscle/muscle_arms.h"
#include "setup/muscle/muscle_words.h"
#include "setup/muscle/strength_file.h"
#include "setup/toml/toml_reader.h"

#include <algorithm>
#include <array>

namespace steelyard::setup {
namespace {

using mechanics::BodyPoint;
using mechanics::Hinge;
using mechanics::JointAction;
using mechanics::LineOnBody;
using mechanics::Muscle;

BodyPoint read_point(TomlReader& table, std::string_view key) {
    BodyPoint point;
    point.spot = mechanics::Spot::along;
    auto place = table.table(key, Need::required);
    if (!place)
        return point;
    static const auto kSegmentNames = names_without_side(mechanics::all_segments());
    if (const auto index = place->choice("segment", kSegmentNames, Need::required))
        point.segment = *named_without_side(kSegmentNames[*index], mechanics::segment_named);
    if (const auto spot = place->text("spot"))
        if (const auto named = mechanics::spot_named(*spot))
            point.spot = *named;
        else
            place->add_error("spot", "\"" + *spot + "\"", "a spot such as heel, or no spot");
    else if (const auto along = place->number("along", Need::required))
        point.along = *along;
    const std::array<std::string_view, 3> axes{"forward", "up", "to_the_right"};
    for (std::size_t i = 0; i < axes.size(); ++i)
        if (const auto offset = place->quantity(axes[i], Dimension::length))
            point.offset_m[static_cast<Eigen::Index>(i)] = offset->value_SI;
    place->finish();
    return point;
}

LineOnBody read_line(TomlReader& table, const TurnWords& words) {
    static const std::vector<std::string_view> kConventions{"attachment points",
                                                            "fixed angle to the bone"};
    const auto convention = table.choice("convention", kConventions, Need::required);
    if (convention == std::size_t{1}) {
        mechanics::FixedAngleOnBody line;
        line.insertion = read_point(table, "insertion");
        if (const auto angle = table.quantity("angle", Dimension::angle, Need::required))
            line.angle_to_bone_rad = angle->value_SI;
        line.turns = sense_of(read_sign(table, "turns", words, Need::required).value_or(1.0));
        return line;
    }
    mechanics::AttachmentsOnBody line;
    line.origin = read_point(table, "origin");
    line.insertion = read_point(table, "insertion");
    if (auto wrap = table.table("wrap")) {
        mechanics::WrapCylinder cylinder;
        if (const auto radius = wrap->quantity("radius", Dimension::length, Need::required))
            cylinder.radius_m = radius->value_SI;
        cylinder.side = sense_of(read_sign(*wrap, "side", words, Need::required).value_or(1.0));
        line.wrap = cylinder;
        wrap->finish();
    }
    return line;
}

std::optional<mechanics::CrossSection> read_cross_section(TomlReader& muscle) {
    auto table = muscle.table("cross_section");
    if (!table)
        return std::nullopt;
    mechanics::CrossSection section;
    section.citation = read_citation(*table);
    if (const auto area = table->number("area_cm2", Need::required)) {
        // From a thread of muscle to more than a whole thigh.
        if (!(*area > 0.0 && *area <= 1000.0))
            table->add_error("area_cm2", std::to_string(*area), "an area above 0 up to 1000 cm²");
        section.area_m2 = *area * 1.0e-4;
    }
    static const std::vector<std::string_view> kMethods{"dissection", "imaging"};
    if (const auto by = table->choice("by", kMethods, Need::required))
        section.by = static_cast<mechanics::AreaMethod>(*by);
    table->finish();
    return section;
}

JointAction read_action(TomlReader& table) {
    JointAction action;
    action.name = table.short_text("name", Need::required).value_or("");
    if (const auto hinge = read_hinge_name(table, Need::required)) {
        action.hinge = *hinge;
        action.turns =
            sense_of(read_sign(table, "turns", turn_words(hinge), Need::required).value_or(1.0));
    }
    action.where = read_pose_ranges(table, "where");
    action.movers = table.texts("movers").value_or(std::vector<std::string>{});
    if (action.movers.empty())
        table.add_error("movers", "no muscle", "one main mover or more");
    action.helpers = table.texts("helpers").value_or(std::vector<std::string>{});
    action.citation = read_citation(table);
    action.strength = read_strengths(table);
    table.finish();
    return action;
}

Muscle read_muscle(TomlReader& table) {
    Muscle muscle;
    muscle.name = table.short_text("name", Need::required).value_or("");
    muscle.group = table.text("group", Need::required).value_or("");
    muscle.hinge = read_hinge_name(table, Need::optional);
    const TurnWords words = turn_words(muscle.hinge);
    for (TomlReader& arm : table.tables("arm"))
        muscle.arms.push_back(read_arm_source(arm, words));
    if (auto line = table.table("line")) {
        muscle.line = read_line(*line, words);
        muscle.line_citation = read_citation(*line);
        line->finish();
    }
    muscle.cross_section = read_cross_section(table);
    const std::vector<mechanics::PoseRange> all_hold = read_pose_ranges(table, "arms_hold");
    for (mechanics::ArmSource& source : muscle.arms)
        if (source.holds.empty())
            source.holds = all_hold;
    muscle.class_note = table.text("class_note").value_or("");
    if (muscle.arms.empty() && !muscle.line)
        table.add_error("arm", "neither arms nor a line of pull", "one [[muscle.arm]] or more");
    if (!muscle.arms.empty())
        if (const auto checked = check_arm_sources(muscle.arms, "arm"); !checked)
            table.add_error("arm",
                            "arms that cannot be computed with (" + checked.error().key + ")",
                            checked.error().expected);
    table.finish();
    return muscle;
}

/// Tells the muscles what they do, and adds the main movers of which only the name is known.
void add_actions(const std::vector<JointAction>& actions, std::vector<Muscle>& muscles) {
    for (const JointAction& action : actions) {
        for (const std::string& mover : action.movers) {
            const bool listed =
                std::any_of(muscles.begin(), muscles.end(), [&](const Muscle& muscle) {
                    return muscle.name == mover && muscle.hinge == action.hinge;
                });
            if (!listed) {
                Muscle by_name;
                by_name.name = mover;
                by_name.hinge = action.hinge;
                muscles.push_back(std::move(by_name));
            }
        }
        for (Muscle& muscle : muscles)
            if (muscle.hinge == action.hinge)
                muscle.actions.push_back(action);
    }
}

tl::expected<std::vector<Muscle>, InputError>
muscles_of(const tl::expected<TomlDocument, InputError>& document) {
    if (!document)
        return tl::unexpected(document.error());
    InputErrors errors;
    TomlReader root(*document, errors);
    std::vector<Muscle> muscles;
    for (TomlReader& table : root.tables("muscle", Need::required)) {
        muscles.push_back(read_muscle(table));
        const Muscle& last = muscles.back();
        const auto same = [&last](const Muscle& other) {
            return other.name == last.name && other.hinge == last.hinge;
        };
        if (std::any_of(muscles.begin(), muscles.end() - 1, same))
            table.add_error("name", "\"" + last.name + "\" a second time for this hinge",
                            "each muscle once for each hinge");
    }
    std::vector<JointAction> actions;
    for (TomlReader& table : root.tables("action"))
        actions.push_back(read_action(table));
    add_actions(actions, muscles);
    root.finish();
    if (!errors.empty())
        return tl::unexpected(first_of(errors));
    return muscles;
}

} // namespace

tl::expected<std::vector<Muscle>, InputError> parse_muscles(std::string_view text,
                                                            const std::string& file) {
    return muscles_of(parse_toml(text, file));
}

tl::expected<std::vector<Muscle>, InputError> read_muscle_file(const std::filesystem::path& path) {
    return muscles_of(read_toml_file(path));
}

tl::expected<std::vector<Muscle>, InputError>
read_muscle_folder(const std::filesystem::path& folder) {
    const auto files = files_ending(folder, ".toml");
    if (!files)
        return tl::unexpected(files.error());
    std::vector<Muscle> all;
    for (const std::filesystem::path& file : *files) {
        auto muscles = read_muscle_file(file);
        if (!muscles)
            return muscles;
        all.insert(all.end(), muscles->begin(), muscles->end());
    }
    return all;
}

tl::expected<std::vector<Muscle>, InputError> shipped_muscles() {
    return read_muscle_folder(data_folder() / "assets" / "muscles");
}

} // namespace steelyard::setup

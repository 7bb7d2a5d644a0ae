#include "setup/muscle_file.h"

#include "setup/data_folder.h"
#include "setup/folder.h"
#include "setup/toml_reader.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace steelyard::setup {
namespace {

using mechanics::ArmPolynomial;
using mechanics::ArmSource;
using mechanics::ArmTable;
using mechanics::BodyPoint;
using mechanics::Citation;
using mechanics::Evidence;
using mechanics::Hinge;
using mechanics::LineOnBody;
using mechanics::Muscle;
using mechanics::TurnSense;

const std::vector<std::string_view> kMarks{"verified", "verified-2", "memory"};

/// The words for the two ways in which a joint turns.
struct TurnWords {
    std::string_view positive = "closing"; ///< of the jaw, the one joint that is not a hinge here
    std::string_view negative = "opening";

    std::vector<std::string_view> both() const { return {positive, negative}; }
};

TurnWords words_of(const std::optional<Hinge>& hinge) {
    if (!hinge)
        return {};
    return {mechanics::hinge_info(*hinge).positive, mechanics::hinge_info(*hinge).negative};
}

/// +1 or -1 by one of the two words.
std::optional<double> read_sign(TomlReader& table, std::string_view key, const TurnWords& words,
                                Need need) {
    const auto word = table.choice(key, words.both(), need);
    if (!word)
        return std::nullopt;
    return *word == 0 ? 1.0 : -1.0;
}

/// Files name what the right side and the middle have in common: "forearm", not "right_forearm".
template <typename Named> auto without_side(std::string_view name, const Named& named) {
    auto found = named("right_" + std::string(name));
    return found ? found : named(name);
}

template <typename Row> std::vector<std::string_view> names_without_side(const Row& rows) {
    std::vector<std::string_view> names;
    for (const auto& row : rows) {
        if (row.name.substr(0, 5) == "left_")
            continue;
        names.push_back(row.name.substr(0, 6) == "right_" ? row.name.substr(6) : row.name);
    }
    return names;
}

Citation read_citation(TomlReader& table) {
    Citation citation;
    citation.text = table.text("source", Need::required).value_or("");
    if (const auto mark = table.choice("mark", kMarks, Need::required))
        citation.mark = static_cast<Evidence>(*mark);
    return citation;
}

/// Pure numbers of an array.
std::vector<double> read_numbers(TomlReader& table, std::string_view key) {
    std::vector<double> numbers;
    const TomlNode* node = table.node(key);
    const auto* array = node ? std::get_if<TomlArray>(&node->value) : nullptr;
    if (!array) {
        if (node)
            table.add_error(key, describe(*node), "an array of numbers");
        return numbers;
    }
    for (std::size_t i = 0; i < array->items.size(); ++i) {
        const std::string place = table.path_of(key) + "[" + std::to_string(i + 1) + "]";
        if (const auto number = table.quantity_of(array->items[i], place, Dimension::number))
            numbers.push_back(number->value_SI);
    }
    return numbers;
}

/// Two angles, from and to [rad].
mechanics::Interval read_valid(TomlReader& table) {
    const TomlNode* node = table.node("valid", Need::required);
    const auto* array = node ? std::get_if<TomlArray>(&node->value) : nullptr;
    if (!array || array->items.size() != 2) {
        if (node)
            table.add_error("valid", describe(*node),
                            "two angles such as [\"0 deg\", \"140 deg\"]");
        return {};
    }
    std::array<double, 2> ends{};
    for (std::size_t i = 0; i < 2; ++i) {
        const std::string place = table.path_of("valid") + "[" + std::to_string(i + 1) + "]";
        if (const auto end = table.quantity_of(array->items[i], place, Dimension::angle))
            ends[i] = end->value_SI;
    }
    return {ends[0], ends[1]};
}

/// A printed polynomial: arm in `arm_unit` over the angle in `angle_unit`.
ArmPolynomial read_polynomial(TomlReader& table) {
    static const std::vector<std::string_view> kArmUnits{"mm", "cm", "m"};
    static const std::vector<std::string_view> kAngleUnits{"deg", "rad"};
    ArmPolynomial polynomial;
    polynomial.coefficients = read_numbers(table, "polynomial");
    polynomial.valid_rad = read_valid(table);
    const auto arm_unit = table.choice("arm_unit", kArmUnits, Need::required);
    const auto angle_unit = table.choice("angle_unit", kAngleUnits, Need::required);
    if (!arm_unit || !angle_unit)
        return polynomial;
    const double per_metre = std::array{1000.0, 100.0, 1.0}[*arm_unit];
    const double per_radian = *angle_unit == 0 ? 180.0 / mechanics::kPi : 1.0;
    double power = 1.0;
    for (double& coefficient : polynomial.coefficients) {
        coefficient *= power / per_metre;
        power *= per_radian;
    }
    return polynomial;
}

ArmTable read_table(TomlReader& table) {
    ArmTable arms;
    if (table.has("constant")) {
        const auto constant = table.quantity("constant", Dimension::length);
        arms.knots = {{0.0, constant ? constant->value_SI : 0.0}};
        return arms;
    }
    for (TomlReader& row : table.tables("table", Need::required)) {
        const auto angle = row.quantity("angle", Dimension::angle, Need::required);
        const auto arm = row.quantity("arm", Dimension::length, Need::required);
        if (angle && arm)
            arms.knots.push_back({angle->value_SI, arm->value_SI});
        row.finish();
    }
    return arms;
}

/// Turns a curve whose angle or arm counts the other way into the hinge's own senses.
void turn_into_hinge_sense(ArmPolynomial& polynomial, double arm_sign, double angle_sign) {
    double sign = arm_sign;
    for (double& coefficient : polynomial.coefficients) {
        coefficient *= sign;
        sign *= angle_sign;
    }
    if (angle_sign < 0.0)
        polynomial.valid_rad = {-polynomial.valid_rad.high, -polynomial.valid_rad.low};
}

void turn_into_hinge_sense(ArmTable& table, double arm_sign, double angle_sign) {
    for (mechanics::ArmKnot& knot : table.knots)
        knot = {angle_sign * knot.angle_rad, arm_sign * knot.arm_m};
    if (angle_sign < 0.0)
        std::reverse(table.knots.begin(), table.knots.end());
}

ArmSource read_arm(TomlReader& table, const TurnWords& words) {
    ArmSource source;
    source.citation = read_citation(table);
    if (table.has("polynomial"))
        source.curve = read_polynomial(table);
    else
        source.curve = read_table(table);
    const double arm_sign = read_sign(table, "positive", words, Need::required).value_or(1.0);
    const double angle_sign = read_sign(table, "angle", words, Need::optional).value_or(1.0);
    std::visit([&](auto& curve) { turn_into_hinge_sense(curve, arm_sign, angle_sign); },
               source.curve);
    if (const auto spread = table.quantity("spread", Dimension::length))
        source.spread_m = spread->value_SI;
    table.finish();
    return source;
}

BodyPoint read_point(TomlReader& table, std::string_view key) {
    BodyPoint point;
    point.spot = mechanics::Spot::along;
    auto place = table.table(key, Need::required);
    if (!place)
        return point;
    static const auto kSegmentNames = names_without_side(mechanics::all_segments());
    if (const auto index = place->choice("segment", kSegmentNames, Need::required))
        point.segment = *without_side(kSegmentNames[*index], mechanics::segment_named);
    if (const auto spot = place->text("spot")) {
        if (const auto named = mechanics::spot_named(*spot))
            point.spot = *named;
        else
            place->add_error("spot", "\"" + *spot + "\"", "a spot such as heel, or no spot");
    } else if (const auto along = place->number("along", Need::required)) {
        point.along = *along;
    }
    const std::array<std::string_view, 3> axes{"forward", "up", "to_the_right"};
    for (std::size_t i = 0; i < axes.size(); ++i)
        if (const auto offset = place->quantity(axes[i], Dimension::length))
            point.offset_m[static_cast<Eigen::Index>(i)] = offset->value_SI;
    place->finish();
    return point;
}

TurnSense sense_of(double sign) {
    return sign < 0.0 ? TurnSense::negative : TurnSense::positive;
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
    table->finish();
    return section;
}

Muscle read_muscle(TomlReader& table) {
    Muscle muscle;
    muscle.name = table.text("name", Need::required).value_or("");
    muscle.group = table.text("group", Need::required).value_or("");
    static const auto kHingeNames = names_without_side(mechanics::all_hinges());
    if (const auto hinge = table.choice("hinge", kHingeNames))
        muscle.hinge = *without_side(kHingeNames[*hinge], mechanics::hinge_named);
    const TurnWords words = words_of(muscle.hinge);
    for (TomlReader& arm : table.tables("arm"))
        muscle.arms.push_back(read_arm(arm, words));
    if (auto line = table.table("line")) {
        muscle.line = read_line(*line, words);
        muscle.line_citation = read_citation(*line);
        line->finish();
    }
    muscle.cross_section = read_cross_section(table);
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
    root.finish();
    if (!errors.empty())
        return tl::unexpected(first_of(errors));
    return muscles;
}

} // namespace

std::string_view mark_name(Evidence mark) {
    return kMarks[static_cast<std::size_t>(mark)];
}

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

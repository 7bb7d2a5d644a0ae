#include "setup/body/body_places.h"

#include "setup/body/body_names.h"
#include "setup/units/format_quantity.h"

#include <fmt/format.h>

#include <array>

namespace steelyard::setup {
namespace {

using mechanics::BodyPoint;
using mechanics::Spot;
using mechanics::Vec3;

/// Axes of the world in words: x forward, y up, z to the person's right.
constexpr std::array<std::string_view, 3> kAxes = {"forward", "up", "right"};

struct NamedArrow {
    std::string_view word;
    Eigen::Index axis;
    double sign;
};

constexpr std::array<NamedArrow, 6> kArrows = {
    NamedArrow{"forward", 0, 1.0}, NamedArrow{"backward", 0, -1.0}, NamedArrow{"up", 1, 1.0},
    NamedArrow{"down", 1, -1.0},   NamedArrow{"right", 2, 1.0},     NamedArrow{"left", 2, -1.0}};

Vec3 arrow_of(const NamedArrow& named) {
    Vec3 arrow = Vec3::Zero();
    arrow[named.axis] = named.sign;
    return arrow;
}

/// Length parts of a table that is already open.
Vec3 read_parts(const NotedTable& in) {
    Vec3 place_m = Vec3::Zero();
    for (std::size_t i = 0; i < kAxes.size(); ++i)
        place_m[static_cast<Eigen::Index>(i)] = in.quantity(kAxes[i], Dimension::length, 0.0);
    return place_m;
}

std::string written_parts(const Vec3& place_m, const std::string& mechanics_key,
                          const SourceNotes& source, std::string_view unit) {
    std::string text;
    for (std::size_t i = 0; i < kAxes.size(); ++i) {
        const double part_m = place_m[static_cast<Eigen::Index>(i)];
        const std::string key = fmt::format("{}.{}", mechanics_key, kAxes[i]);
        if (part_m == 0.0)
            continue;
        text += fmt::format("{}{} = {}", text.empty() ? "" : ", ", kAxes[i],
                            written_quantity(part_m, Dimension::length, key, source, unit));
    }
    return text;
}

} // namespace

std::string NotedTable::key_of(std::string_view key) const {
    return prefix.empty() ? std::string(key) : fmt::format("{}.{}", prefix, key);
}

double NotedTable::quantity(std::string_view key, Dimension dimension, double otherwise, Need need,
                            bool mass_as_force) const {
    return noted_quantity(table, key, dimension, key_of(key), source, need, mass_as_force)
        .value_or(otherwise);
}

void NotedTable::note_place(std::string_view key) const {
    if (const TomlNode* node = table.node(key))
        source.by_key[key_of(key)] = {describe(*node), true, node->line, node->column,
                                      table.path_of(key)};
}

mechanics::Vec3 read_place(const NotedTable& in, std::string_view key, Need need) {
    in.note_place(key);
    auto inner = in.table.table(key, need);
    if (!inner)
        return Vec3::Zero();
    const Vec3 place_m = read_parts({*inner, in.source, in.key_of(key)});
    inner->finish();
    return place_m;
}

mechanics::Vec3 read_direction(const NotedTable& in, std::string_view key, const Vec3& otherwise,
                               Need need) {
    const TomlNode* node = in.table.node(key, need);
    if (!node)
        return otherwise;
    in.note_place(key);
    if (std::holds_alternative<TomlTable>(node->value)) {
        auto inner = in.table.table(key);
        Vec3 direction = Vec3::Zero();
        for (std::size_t i = 0; i < kAxes.size(); ++i)
            direction[static_cast<Eigen::Index>(i)] = inner->number(kAxes[i]).value_or(0.0);
        inner->finish();
        return direction;
    }
    std::vector<std::string_view> words;
    words.reserve(kArrows.size());
    for (const NamedArrow& named : kArrows)
        words.push_back(named.word);
    const auto index = in.table.choice(key, words);
    return index ? arrow_of(kArrows[*index]) : otherwise;
}

mechanics::BodyPoint read_body_point(const NotedTable& in, std::string_view key,
                                     const BodyPoint& otherwise, Need need) {
    in.note_place(key);
    auto inner = in.table.table(key, need);
    if (!inner)
        return otherwise;
    BodyPoint point = otherwise;
    point.segment = read_segment(*inner, "segment", Need::required).value_or(otherwise.segment);
    const auto spot = inner->choice("spot", spot_names());
    const NotedTable noted{*inner, in.source, in.key_of(key)};
    const bool has_along = inner->has("along");
    const double along = noted.quantity("along", Dimension::number, 0.0);
    if (inner->has("spot") == has_along)
        inner->add_error("spot", has_along ? "both spot and along" : "neither spot nor along",
                         "one of the two",
                         "Write a spot such as \"grip\", or along = 0.5 for the middle.");
    point.spot = spot && !has_along ? static_cast<Spot>(*spot) : Spot::along;
    point.along = along;
    point.offset_m = read_parts(noted);
    inner->finish();
    return point;
}

bool is_on_body(const TomlReader& table, std::string_view key) {
    return table.has_in(key, "segment");
}

std::string written_place(const Vec3& place_m, const std::string& mechanics_key,
                          const SourceNotes& source, std::string_view unit) {
    const std::string parts = written_parts(place_m, mechanics_key, source, unit);
    return parts.empty() ? "{ forward = 0 }" : "{ " + parts + " }";
}

std::string written_direction_in_space(const Vec3& direction) {
    for (const NamedArrow& named : kArrows)
        if (arrow_of(named) == direction)
            return toml_string(named.word);
    std::string text;
    for (std::size_t i = 0; i < kAxes.size(); ++i)
        text += fmt::format("{}{} = {}", text.empty() ? "{ " : ", ", kAxes[i],
                            exact_number(direction[static_cast<Eigen::Index>(i)]));
    return text + " }";
}

std::string written_body_point(const BodyPoint& point, const std::string& mechanics_key,
                               const SourceNotes& source, std::string_view unit) {
    std::string text =
        fmt::format("{{ segment = {}, ", toml_string(mechanics::segment_info(point.segment).name));
    if (point.spot == Spot::along)
        text += fmt::format("along = {}", written_quantity(point.along, Dimension::number,
                                                           mechanics_key + ".along", source, ""));
    else
        text += fmt::format("spot = {}", toml_string(mechanics::spot_name(point.spot)));
    const std::string offset = written_parts(point.offset_m, mechanics_key, source, unit);
    return text + (offset.empty() ? "" : ", " + offset) + " }";
}

} // namespace steelyard::setup

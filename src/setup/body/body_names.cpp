#include "setup/body/body_names.h"

namespace steelyard::setup {

using mechanics::Hinge;
using mechanics::Segment;

std::string_view without_side(std::string_view name) {
    for (const std::string_view side : {std::string_view("right_"), std::string_view("left_")})
        if (name.substr(0, side.size()) == side)
            return name.substr(side.size());
    return name;
}

std::vector<Hinge> hinges_named(std::string_view name) {
    if (const auto hinge = mechanics::hinge_named(name))
        return {*hinge};
    std::vector<Hinge> both;
    for (const mechanics::HingeInfo& info : mechanics::all_hinges())
        if (without_side(info.name) == name)
            both.push_back(info.hinge);
    return both;
}

std::vector<std::string_view> all_hinge_names() {
    std::vector<std::string_view> names;
    for (const mechanics::HingeInfo& info : mechanics::all_hinges()) {
        const bool right = info.name.substr(0, 6) == "right_";
        if (right)
            names.push_back(without_side(info.name));
        names.push_back(info.name);
    }
    return names;
}

std::optional<Segment> read_segment(TomlReader& table, std::string_view key, Need need) {
    std::vector<std::string_view> names;
    for (const mechanics::SegmentInfo& info : mechanics::all_segments())
        names.push_back(info.name);
    const auto index = table.choice(key, names, need);
    return index ? std::optional(mechanics::all_segments()[*index].segment) : std::nullopt;
}

std::optional<Segment> read_hand(TomlReader& table, std::string_view key, Need need) {
    const auto side = table.choice(key, {"right", "left"}, need);
    if (!side)
        return std::nullopt;
    return *side == 0 ? Segment::right_hand : Segment::left_hand;
}

std::string_view side_of_hand(Segment hand) {
    return hand == Segment::left_hand ? "left" : "right";
}

std::vector<std::string_view> spot_names() {
    std::vector<std::string_view> names;
    for (int i = 0; i <= static_cast<int>(mechanics::Spot::knee_front); ++i)
        names.push_back(mechanics::spot_name(static_cast<mechanics::Spot>(i)));
    return names;
}

std::vector<std::string_view> patch_names() {
    std::vector<std::string_view> names;
    for (int i = 0; i <= static_cast<int>(mechanics::Patch::grip); ++i)
        names.push_back(mechanics::patch_name(static_cast<mechanics::Patch>(i)));
    return names;
}

std::vector<std::string_view> table_part_names() {
    std::vector<std::string_view> names;
    for (int i = 0; i <= static_cast<int>(mechanics::TablePart::foot); ++i)
        names.push_back(mechanics::table_part_name(static_cast<mechanics::TablePart>(i)));
    return names;
}

} // namespace steelyard::setup

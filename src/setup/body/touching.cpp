#include "setup/body/touching.h"

#include "mechanics/constants.h"
#include "mechanics/range/stick.h"
#include "mechanics/range/touch.h"
#include "setup/body/body_names.h"
#include "setup/units/format_quantity.h"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <utility>

namespace steelyard::setup {
namespace {

using namespace mechanics;

/// The verb of a turn, by how the hinge's name ends.
std::string_view verb_of(std::string_view hinge) {
    constexpr std::array<std::pair<std::string_view, std::string_view>, 3> kVerbs{
        {{"_flexion", "Bend"}, {"_abduction", "Spread"}, {"_extension", "Extend"}}};
    for (const auto& [ending, verb] : kVerbs)
        if (hinge.size() > ending.size() && hinge.substr(hinge.size() - ending.size()) == ending)
            return verb;
    return "Turn";
}

/// "left knee" without its side.
std::string_view without_side_words(std::string_view label) {
    const std::size_t space = label.find(' ');
    const std::string_view first = label.substr(0, space);
    return first == "right" || first == "left" ? label.substr(space + 1) : label;
}

double tenths_of_degree(double angle_rad) {
    return std::round(angle_rad * 1800.0 / kPi) / 10.0 + 0.0;
}

/// "Bend the left knee by 12° less (left_knee_flexion = 8)"
std::string told_turn(const MendingTurn& turn, bool first) {
    const HingeInfo& info = hinge_info(turn.hinge);
    const double to_deg = tenths_of_degree(turn.to_rad);
    const double by_deg = tenths_of_degree(turn.to_rad - turn.from_rad);
    const std::string_view label = joint_info(info.joint).label;
    std::string verb(verb_of(info.name));
    if (!first)
        verb.front() = static_cast<char>(verb.front() - 'A' + 'a');
    return fmt::format("{} {} by {}° {} ({} = {})", verb,
                       turn.both_sides ? fmt::format("each {}", without_side_words(label))
                                       : fmt::format("the {}", label),
                       exact_number(std::abs(by_deg)), by_deg < 0.0 ? "less" : "more",
                       turn.both_sides ? without_side(info.name) : info.name, exact_number(to_deg));
}

std::string told_mend(const TouchFault& fault, const Contact& contact) {
    if (fault.progress > 0.0 && !contact.sticks)
        return "stick = true keeps it where it is at the start; or change the end of the path.";
    std::string text;
    for (const MendingTurn& turn : fault.mend)
        text += (text.empty() ? "" : ", ") + told_turn(turn, text.empty());
    return text.empty() ? "No turn of this limb brings it there: change what carries the body, or "
                          "the height of what is touched."
                        : text + ".";
}

std::string told_where(const TouchFault& fault) {
    if (fault.progress == 0.0)
        return "";
    return fmt::format(", {} % along the path", std::lround(100.0 * fault.progress));
}

} // namespace

std::optional<InputError> keep_in_place(BodySetup& setup) {
    Exercise& exercise = setup.exercise;
    auto movement = stick(exercise.body_case, exercise.path, exercise.body_case.pose);
    if (!movement)
        return placed_error(movement.error(), setup.source);
    exercise.body_case.pose = movement->start;
    exercise.path = std::move(movement->path);
    return std::nullopt;
}

std::optional<InputError> untouched_contact(const BodySetup& setup) {
    const BodyCase& body_case = setup.exercise.body_case;
    const auto fault = find_touch_fault(body_case, setup.exercise.path);
    if (!fault)
        return std::nullopt;
    const Contact& contact = std::get<OnContacts>(body_case.support).contacts[fault->contact];
    const std::string key = fmt::format("support.contacts[{}]", fault->contact);
    InputError error = placed_error({Fault::inconsistent, key, ""}, setup.source);
    if (!error.key.empty() && error.key.back() == '.')
        error.key.pop_back(); // of the table itself
    const std::string_view touched = contact.level_m == 0.0 ? "the floor" : "what it is to touch";
    error.found = fmt::format(
        "the {} of the {} {} {} {}{}", patch_name(contact.patch),
        segment_info(contact.segment).label,
        format_quantity(std::abs(fault->gap_m), Dimension::length, setup.head.units, {2, true}),
        fault->gap_m > 0.0 ? "above" : "below", touched, told_where(*fault));
    error.expected = fmt::format(
        "it on {}, within {}",
        contact.level_m == 0.0
            ? std::string(touched)
            : fmt::format("its height of {}",
                          format_quantity(contact.level_m, Dimension::length, setup.head.units)),
        format_quantity(kTouches_m, Dimension::length, setup.head.units, {2, false}));
    error.mend = told_mend(*fault, contact);
    return error;
}

} // namespace steelyard::setup

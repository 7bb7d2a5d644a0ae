#include "cli/options/whatif_question.h"

#include "setup/body/body_names.h"
#include "setup/toml/spelling.h"
#include "setup/units/format_quantity.h"
#include "words/whatif/gym_moves.h"
#include "words/whatif/whatif_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace steelyard::cli {
namespace {

using mechanics::Change;
using mechanics::Exercise;
using mechanics::Hinge;
using setup::InputError;

constexpr std::array<std::string_view, 7> kChangeWords{"load",   "angle", "distance", "place",
                                                       "pulley", "slack", "tempo"};

InputError about(const std::string& option, const std::string& found, std::string expected,
                 std::string mend = {}) {
    InputError error;
    error.key = option;
    error.found = fmt::format("\"{}\"", found);
    error.expected = std::move(expected);
    error.mend = std::move(mend);
    return error;
}

std::string did_you_mean(const std::string& word, const std::vector<std::string_view>& words) {
    const std::string nearest = setup::nearest_spelling(word, words);
    return nearest.empty() ? "" : fmt::format("Did you mean \"{}\"?", nearest);
}

/// Hinges of a hinge's or a joint's name, with or without a side.
std::vector<Hinge> hinges_of(const std::string& name) {
    std::vector<Hinge> hinges = setup::hinges_named(name);
    if (!hinges.empty())
        return hinges;
    for (const mechanics::HingeInfo& info : mechanics::all_hinges()) {
        const std::string_view joint = mechanics::joint_info(info.joint).name;
        if (joint == name || setup::without_side(joint) == name)
            hinges.push_back(info.hinge);
    }
    return hinges;
}

std::vector<std::string_view> joint_and_hinge_names() {
    std::vector<std::string_view> names = setup::all_hinge_names();
    for (const mechanics::JointInfo& info : mechanics::all_joints()) {
        names.push_back(info.name);
        names.push_back(setup::without_side(info.name));
    }
    return names;
}

tl::expected<double, InputError> quantity_meant(const std::string& text, setup::Dimension dimension,
                                                const std::string& option,
                                                std::string_view bare_unit = {}) {
    setup::ReadingRules rules;
    rules.bare_unit = bare_unit;
    const auto value = setup::parse_quantity(text, dimension, rules);
    if (!value) {
        return tl::make_unexpected(about(
            option, text, fmt::format("a {}", setup::name_of(dimension)), to_text(value.error())));
    }
    return *value;
}

/// True when the part after the colon names what the change is about.
bool names_it(const Change& change, const std::string& name, const Exercise& exercise) {
    if (const auto* angle = std::get_if<mechanics::JointAngle>(&change)) {
        const std::vector<Hinge> hinges = hinges_of(name);
        return std::find(hinges.begin(), hinges.end(), angle->hinge) != hinges.end();
    }
    return describe(change, exercise).find(name) != std::string::npos;
}

} // namespace

InputError question_error(const mechanics::MechanicsError& error) {
    InputError told;
    told.key = error.key;
    told.found = "something that cannot be computed with";
    told.expected = error.expected;
    return told;
}

tl::expected<Hinge, InputError> hinge_meant(const std::string& name, const Exercise& exercise,
                                            const std::string& option) {
    const std::vector<Hinge> hinges = hinges_of(name);
    if (hinges.empty()) {
        return tl::make_unexpected(
            about(option, name, "a joint such as lumbar_flexion, elbow_flexion or right_hip",
                  did_you_mean(name, joint_and_hinge_names())));
    }
    const auto reading = read_repetition(exercise, hinges);
    if (!reading)
        return tl::make_unexpected(question_error(reading.error()));
    const auto largest =
        std::max_element(reading->peaks.begin(), reading->peaks.end(),
                         [](const mechanics::PeakTorque& one, const mechanics::PeakTorque& other) {
                             return std::abs(one.torque_Nm) < std::abs(other.torque_Nm);
                         });
    return largest->hinge;
}

tl::expected<std::vector<mechanics::Cap>, InputError>
caps_meant(const std::vector<std::string>& texts, const Exercise& exercise,
           setup::UnitSystem units) {
    std::vector<mechanics::Cap> caps;
    for (const std::string& text : texts) {
        const std::size_t equals = text.find('=');
        if (equals == std::string::npos) {
            return tl::make_unexpected(
                about("--cap", text, "a joint and a torque such as \"lumbar_flexion=120 Nm\""));
        }
        const auto hinge = hinge_meant(text.substr(0, equals), exercise, "--cap");
        if (!hinge)
            return tl::make_unexpected(hinge.error());
        const auto most_Nm =
            quantity_meant(text.substr(equals + 1), setup::Dimension::torque, "--cap",
                           setup::formula_unit(setup::Dimension::torque, units));
        if (!most_Nm)
            return tl::make_unexpected(most_Nm.error());
        caps.push_back({*hinge, *most_Nm});
    }
    return caps;
}

tl::expected<double, InputError> part_meant(const std::string& text, const std::string& option) {
    return quantity_meant(text, setup::Dimension::number, option);
}

tl::expected<double, InputError> torque_meant(const WhatIfWords& words, const Exercise& exercise,
                                              Hinge hinge, setup::UnitSystem units) {
    if (!words.torque.empty())
        return quantity_meant(words.torque, setup::Dimension::torque, "--torque",
                              setup::formula_unit(setup::Dimension::torque, units));
    const auto part = part_meant(words.less, "--less");
    if (!part)
        return tl::make_unexpected(part.error());
    auto wanted = peak_less(exercise, hinge, *part);
    if (!wanted)
        return tl::make_unexpected(about("--less", words.less, wanted.error().expected));
    return *wanted;
}

tl::expected<std::vector<Change>, InputError> changes_meant(const std::string& text,
                                                            const Exercise& exercise, Hinge hinge) {
    if (text.empty())
        return words::gym_changes(exercise, hinge);
    const std::vector<Change> all = possible_changes(exercise, hinge);
    const std::size_t colon = text.find(':');
    const std::string word = text.substr(0, colon);
    const std::string name = colon == std::string::npos ? "" : text.substr(colon + 1);
    if (std::find(kChangeWords.begin(), kChangeWords.end(), word) == kChangeWords.end()) {
        return tl::make_unexpected(
            about("--change", word, fmt::format("one of {}", fmt::join(kChangeWords, ", ")),
                  did_you_mean(word, {kChangeWords.begin(), kChangeWords.end()})));
    }
    // An angle that is not named is that of the joint asked about.
    for (const Change& change : all) {
        const bool same_word = words::change_word(change) == word;
        const auto* angle = std::get_if<mechanics::JointAngle>(&change);
        const bool meant =
            !name.empty() ? names_it(change, name, exercise)
            : angle       ? angle->hinge == hinge ||
                          (angle->both_sides && mechanics::hinge_info(hinge).mirror == angle->hinge)
                    : true;
        if (same_word && meant)
            return std::vector<Change>{change};
    }
    std::vector<std::string> has;
    for (const Change& change : all) {
        const std::string kind(words::change_word(change));
        if (std::find(has.begin(), has.end(), kind) == has.end())
            has.push_back(kind);
    }
    return tl::make_unexpected(about("--change", text, "a change that this exercise has",
                                     fmt::format("It has {}.", fmt::join(has, ", "))));
}

} // namespace steelyard::cli

#include "lesson/lesson_quantity.h"

#include "setup/body/body_names.h"
#include "words/body/axis_shares.h"
#include "words/body/body_reading.h"
#include "words/body/body_words.h"
#include "words/body/load_at_joint.h"
#include "words/lever/lever_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>

namespace steelyard::lesson {
namespace {

namespace mech = mechanics;
using Reading = tl::expected<QuantityValue, std::string>;

/// Two values of one quantity count as the same within half a per cent: what three figures show.
constexpr double kSame = 0.005;
/// Between two quantities: their ratio, and how they compare.
constexpr std::string_view kOver = " over ";
constexpr std::string_view kAgainst = " against ";

constexpr std::string_view kLeverNames[] = {
    "effort",          "effort arm",       "load",     "load arm", "load torque", "effort torque",
    "ideal advantage", "actual advantage", "reaction", "class",    "class lever"};
constexpr std::string_view kBodyNames[] = {"torque",      "both torques", "arm",    "load",
                                           "load torque", "own torque",   "muscle", "joint force",
                                           "angle",       "direction",    "axis",   "most loaded"};

QuantityValue number(double value_SI, setup::Dimension dimension) {
    return {std::abs(value_SI), dimension, {}};
}

Reading missing(std::string_view name, std::string_view why) {
    return tl::make_unexpected(fmt::format("This stage has no {}: {}", name, why));
}

Reading or_missing(const std::optional<double>& value, setup::Dimension dimension,
                   std::string_view name) {
    if (value)
        return number(*value, dimension);
    return missing(name, "the lever's special case leaves it open.");
}

std::string decapitalised(std::string text) {
    if (!text.empty())
        text[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(text[0])));
    return text;
}

Reading read_lever(std::string_view name, const mech::LeverResult& solved) {
    if (name == "class")
        return QuantityValue{std::nullopt, setup::Dimension::number,
                             decapitalised(words::class_name(solved))};
    if (name == "class lever")
        return QuantityValue{std::nullopt, setup::Dimension::number, words::class_lever(solved)};
    if (name == "effort")
        return or_missing(solved.effort_N, setup::Dimension::force, name);
    if (name == "effort arm")
        return number(solved.effort_arm_m, setup::Dimension::length);
    if (name == "load arm")
        return or_missing(solved.load_arm_m, setup::Dimension::length, name);
    if (name == "load torque")
        return number(solved.torque_load_Nm, setup::Dimension::torque);
    if (name == "effort torque")
        return number(solved.torque_effort_Nm, setup::Dimension::torque);
    if (name == "ideal advantage")
        return or_missing(solved.ideal_advantage, setup::Dimension::number, name);
    if (name == "actual advantage")
        return or_missing(solved.actual_advantage, setup::Dimension::number, name);
    if (name == "reaction")
        return number(solved.axis_reaction_N.norm(), setup::Dimension::force);
    mech::Vec2 sum_N = mech::Vec2::Zero(); // "load"
    for (const mech::ForceReading& load : solved.loads)
        sum_N += load.force_N;
    return number(sum_N.norm(), setup::Dimension::force);
}

std::string most_loaded_word(const SolvedStage& solved) {
    const auto shares = words::axis_shares(solved.body_setup().axes, solved.body);
    const words::AxisShare& most = shares[words::most_loaded(shares)];
    return most.both ? most.name : words::joint_word(most.axis);
}

double torque_of_both_Nm(const SolvedStage& solved, mech::Hinge hinge) {
    const mech::Hinge other = mech::hinge_info(hinge).mirror;
    const double one_Nm = std::abs(solved.body.muscle(hinge));
    return other == hinge ? one_Nm : one_Nm + std::abs(solved.body.muscle(other));
}

Reading read_muscles(std::string_view name, const SolvedStage& solved, mech::Hinge hinge,
                     const std::vector<mech::Muscle>& muscles) {
    const auto listed = words::shown_muscles(solved.body_setup(), muscles, hinge);
    const auto shared = mech::solve_muscles_at(solved.posed, solved.body, hinge, listed,
                                               mech::usual_sharing(listed));
    if (!shared)
        return missing(name, "its muscles cannot be solved.");
    if (shared->solution.outcome == mech::MuscleOutcome::no_torque)
        return missing(name, "the muscles rest.");
    if (const std::string why =
            words::why_no_force(shared->solution, hinge, solved.body_setup().head.units);
        !why.empty())
        return missing(name, decapitalised(why));
    if (name == "joint force") {
        if (!shared->solution.joint_reaction_N)
            return missing(name, "a muscle's line of pull is not known.");
        return number(shared->solution.joint_reaction_N->norm(), setup::Dimension::force);
    }
    double sum_N = 0.0;
    for (const mech::MuscleReading& muscle : shared->solution.muscles)
        sum_N += muscle.tension_N;
    return number(sum_N, setup::Dimension::force);
}

Reading read_at_hinge(std::string_view name, const SolvedStage& solved, mech::Hinge hinge,
                      const std::vector<mech::Muscle>& muscles) {
    if (name == "torque")
        return number(solved.body.muscle(hinge), setup::Dimension::torque);
    if (name == "both torques")
        return number(torque_of_both_Nm(solved, hinge), setup::Dimension::torque);
    if (name == "own torque")
        return number(mech::weight_arm(solved.posed, solved.body, hinge).torque_Nm,
                      setup::Dimension::torque);
    if (name == "angle")
        return number(solved.posed.pose[hinge], setup::Dimension::angle);
    if (name == "axis")
        return QuantityValue{std::nullopt, setup::Dimension::number, words::joint_word(hinge)};
    if (name == "most loaded")
        return QuantityValue{std::nullopt, setup::Dimension::number, most_loaded_word(solved)};
    if (name == "direction")
        return QuantityValue{
            std::nullopt, setup::Dimension::number,
            std::string(words::asked_of_muscles(hinge, solved.body.muscle(hinge)))};
    if (name == "muscle" || name == "joint force")
        return read_muscles(name, solved, hinge, muscles);
    const auto at = words::load_at_joint(solved.body, hinge);
    if (!at)
        return missing(name, "nothing but the body's own weight loads it.");
    if (name == "arm")
        return number(at->arm_m, setup::Dimension::length);
    if (name == "load torque")
        return number(at->torque_Nm, setup::Dimension::torque);
    return number(at->size_N(), setup::Dimension::force); // "load"
}

/// A quantity's name taken apart: "torque lumbar_flexion before".
struct NameParts {
    std::string name;
    std::string hinge; ///< empty = the axis that is looked at
    bool before = false;
    bool compared = false;
};

NameParts parts_of(std::string_view text) {
    NameParts parts;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        const std::string word(text.substr(at, end - at));
        at = end + 1;
        if (word.empty())
            continue;
        if (word == "before")
            parts.before = true;
        else if (word == "compared")
            parts.compared = true;
        else if (word.find('_') != std::string::npos)
            parts.hinge = word;
        else
            parts.name += (parts.name.empty() ? "" : " ") + word;
    }
    return parts;
}

Reading unknown_name(const NameParts& parts, bool lever) {
    const std::vector<std::string_view> names = quantity_names(lever);
    const std::string nearest = setup::nearest_spelling(parts.name, names);
    std::string list;
    for (const std::string_view name : names)
        list += fmt::format("{}{}", list.empty() ? "" : ", ", name);
    return tl::make_unexpected(fmt::format(
        "\"{}\" is no quantity of a {}: {}{}.", parts.name, lever ? "lever" : "body",
        nearest.empty() ? "" : fmt::format("did you mean \"{}\"? There are: ", nearest), list));
}

tl::expected<mech::Hinge, std::string> hinge_of(const std::string& name,
                                                const SolvedStage& solved) {
    if (name.empty())
        return solved.axis();
    const std::vector<mech::Hinge> hinges = setup::hinges_named(name);
    for (const mech::Hinge hinge : hinges) // of two sides the one that is an axis of the setup
        for (const mech::Hinge axis : solved.body_setup().axes)
            if (hinge == axis)
                return hinge;
    if (!hinges.empty())
        return hinges.front();
    const std::string nearest = setup::nearest_spelling(name, setup::all_hinge_names());
    return tl::make_unexpected(
        fmt::format("\"{}\" is no hinge of the body.{}", name,
                    nearest.empty() ? "" : fmt::format(" Did you mean \"{}\"?", nearest)));
}

Reading read_on(const SolvedStage& solved, const NameParts& parts,
                const std::vector<mech::Muscle>* muscles) {
    const std::vector<std::string_view> names = quantity_names(solved.is_lever());
    if (std::find(names.begin(), names.end(), parts.name) == names.end())
        return unknown_name(parts, solved.is_lever());
    if (solved.is_lever()) {
        if (!parts.hinge.empty())
            return tl::make_unexpected(
                fmt::format("\"{}\" is a hinge of the body; a lever has none.", parts.hinge));
        return read_lever(parts.name, solved.lever);
    }
    return hinge_of(parts.hinge, solved).and_then([&](mech::Hinge hinge) {
        return read_at_hinge(parts.name, solved, hinge,
                             muscles ? *muscles : std::vector<mech::Muscle>{});
    });
}

/// How one quantity compares with another, in a word.
Reading comparison(const QuantityValue& one, const QuantityValue& other, std::string_view name) {
    if (!one.value_SI || !other.value_SI || one.dimension != other.dimension)
        return tl::make_unexpected(
            fmt::format("\"{}\" compares two things that are not of one kind.", name));
    const double scale = std::max(std::abs(*one.value_SI), std::abs(*other.value_SI));
    const double step = *one.value_SI - *other.value_SI;
    const bool length = one.dimension == setup::Dimension::length;
    const char* word = std::abs(step) <= kSame * scale ? "the same"
                       : step > 0.0                    ? (length ? "longer" : "more")
                                                       : (length ? "shorter" : "less");
    return QuantityValue{std::nullopt, setup::Dimension::number, word};
}

Reading read_single(std::string_view name, const QuantitySource& source) {
    const NameParts parts = parts_of(name);
    if ((parts.before || parts.compared) && !source.before)
        return tl::make_unexpected(fmt::format("\"{}\" needs a step before this one.", name));
    if (parts.before)
        return read_on(*source.before, parts, source.muscles);
    const Reading now = read_on(*source.now, parts, source.muscles);
    if (!now || !parts.compared)
        return now;
    const Reading before = read_on(*source.before, parts, source.muscles);
    return before ? comparison(*now, *before, name) : before;
}

Reading ratio(const QuantityValue& over, const QuantityValue& under, std::string_view name) {
    if (!over.value_SI || !under.value_SI || over.dimension != under.dimension)
        return tl::make_unexpected(
            fmt::format("\"{}\" divides two things that are not of one kind.", name));
    if (*under.value_SI == 0.0)
        return tl::make_unexpected(fmt::format("\"{}\" divides by nothing.", name));
    return QuantityValue{*over.value_SI / *under.value_SI, setup::Dimension::number, {}};
}

bool same_text(std::string_view one, std::string_view other) {
    return std::equal(one.begin(), one.end(), other.begin(), other.end(), [](char a, char b) {
        return std::tolower(static_cast<unsigned char>(a)) ==
               std::tolower(static_cast<unsigned char>(b));
    });
}

} // namespace

std::vector<std::string_view> quantity_names(bool lever) {
    if (lever)
        return {std::begin(kLeverNames), std::end(kLeverNames)};
    return {std::begin(kBodyNames), std::end(kBodyNames)};
}

Reading read_quantity(std::string_view name, const QuantitySource& source) {
    for (const std::string_view between : {kOver, kAgainst}) {
        const std::size_t at = name.find(between);
        if (at == std::string_view::npos)
            continue;
        const Reading one = read_single(name.substr(0, at), source);
        if (!one)
            return one;
        const Reading other = read_single(name.substr(at + between.size()), source);
        if (!other)
            return other;
        return between == kOver ? ratio(*one, *other, name) : comparison(*one, *other, name);
    }
    return read_single(name, source);
}

setup::QuantityText quantity_text(const QuantityValue& quantity, setup::UnitSystem units) {
    if (!quantity.value_SI)
        return {quantity.word, {}};
    return setup::format_quantity_parts(*quantity.value_SI, quantity.dimension, units);
}

std::string spoken_name(std::string_view name, const QuantitySource& source) {
    if (name.find(kOver) != std::string_view::npos)
        return "times";
    const NameParts parts = parts_of(name);
    const SolvedStage& solved = parts.before && source.before ? *source.before : *source.now;
    if (solved.is_lever())
        return parts.name;
    const auto hinge = hinge_of(parts.hinge, solved);
    if (parts.name == "muscle")
        return "muscle force";
    if (parts.name == "own torque")
        return "torque of the body's own weight";
    if (hinge && parts.name == "both torques")
        return "torque of " + words::both_sides_word(*hinge);
    if (!hinge || parts.name == "load" || parts.name == "axis" || parts.name == "most loaded")
        return parts.name;
    return words::joint_word(*hinge) + " " + parts.name;
}

tl::expected<std::string, std::string>
filled_text(std::string_view text, const QuantitySource& source, setup::UnitSystem units) {
    std::string filled;
    while (!text.empty()) {
        const std::size_t open = std::min(text.find('{'), text.size());
        filled += text.substr(0, open);
        if (open == text.size())
            break;
        const std::size_t close = text.find('}', open);
        if (close == std::string_view::npos)
            return tl::make_unexpected(std::string("A brace { is not closed with }."));
        const std::string_view name = text.substr(open + 1, close - open - 1);
        text.remove_prefix(close + 1);
        if (const std::size_t bar = name.find('|'); bar != std::string_view::npos) {
            filled += units == setup::UnitSystem::us ? name.substr(bar + 1) : name.substr(0, bar);
            continue;
        }
        const auto value = read_quantity(name, source);
        if (!value)
            return tl::make_unexpected(value.error());
        filled += quantity_text(*value, units).joined();
    }
    return filled;
}

tl::expected<std::optional<std::size_t>, std::string>
right_choice(const Prediction& prediction, const QuantitySource& source, setup::UnitSystem units) {
    if (prediction.answer.empty())
        return std::nullopt;
    const auto answer = filled_text(prediction.answer, source, units);
    if (!answer)
        return tl::make_unexpected(answer.error());
    for (std::size_t i = 0; i < prediction.choices.size(); ++i)
        if (same_text(filled_text(prediction.choices[i], source, units).value_or(""), *answer))
            return std::optional(i);
    return tl::make_unexpected(
        fmt::format("The answer here is \"{}\", which is none of the choices.", *answer));
}

} // namespace steelyard::lesson

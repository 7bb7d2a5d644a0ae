#include "problems/language/vocabulary.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <unordered_map>

namespace steelyard::problems {

namespace {

using setup::Dimension;

struct Part {
    std::string name;
    std::string symbol;
    std::string words;
    SetupPart part;
};

/// Two words that stay on one line.
constexpr const char* kMomentArm = "moment\u00a0arm";

constexpr std::array<std::string_view, kBodyParts> kPartNames{
    "pelvis", "trunk", "head", "upper_arm", "forearm", "hand", "thigh", "shank", "foot"};
constexpr std::array<std::string_view, kBodyAxes> kAxisNames{
    "shoulder", "elbow", "wrist", "hip", "knee", "ankle", "low_back", "neck"};

std::string spelt_out(std::string_view name) {
    std::string words(name);
    std::replace(words.begin(), words.end(), '_', ' ');
    return words;
}

/// As a subscript: one word.
std::string subscript(std::string_view name) {
    std::string word(name);
    word.erase(std::remove(word.begin(), word.end(), '_'), word.end());
    return word;
}

std::vector<Part> parts() {
    static constexpr std::array<const char*, 4> kOrdinals{"", "second ", "third ", "fourth "};
    std::vector<Part> result{
        {"effort", "effort", "effort", {SetupPart::Is::effort, 0, {}}},
        {"own", "own", "own weight", {SetupPart::Is::own_weight, 0, {}}},
    };
    for (std::size_t i = 0; i < kOrdinals.size(); ++i) {
        const std::string number = i == 0 ? "" : std::to_string(i + 1);
        result.push_back({i == 0 ? "load" : "load_" + number,
                          "load" + number,
                          fmt::format("{}load", kOrdinals[i]),
                          {SetupPart::Is::load, i, {}}});
    }
    return result;
}

void add_part(std::vector<Term>& terms, const Part& part) {
    const auto add = [&](const char* suffix, const char* symbol, Dimension dimension,
                         const char* words, std::optional<SetupQuantity> quantity) {
        std::optional<Provided> provided;
        if (quantity)
            provided = Provided{part.part, *quantity, std::nullopt};
        terms.push_back({fmt::format("{}_{}", part.name, suffix),
                         fmt::format("{}_{}", symbol, part.symbol), dimension,
                         fmt::format(fmt::runtime(words), part.words), provided});
    };
    using Q = SetupQuantity;
    add("mass", "mass", Dimension::mass, "the mass of the {}", std::nullopt);
    add("force", "force", Dimension::force, "the force of the {}", Q::force);
    add("arm", kMomentArm, Dimension::length, "the moment arm of the {}", Q::arm);
    add("distance", "distance", Dimension::length, "the distance from the axis to the {}",
        Q::distance);
    add("torque", "torque", Dimension::torque, "the torque of the {}", Q::torque);
    add("at", "place", Dimension::length, "the place of the {} along the lever", std::nullopt);
    add("angle", "angle", Dimension::angle, "the angle between the {} and the lever", std::nullopt);
    add("travel", "travel", Dimension::length, "how far the {} moves", std::nullopt);
    if (part.part.is == SetupPart::Is::load)
        add("to_effort", "way", Dimension::length, "the distance from the {} to the effort",
            Q::to_effort);
}

/// What a part of the body is and what its weight does about the first axis.
void add_body_part(std::vector<Term>& terms, BodyPart body) {
    using Q = SetupQuantity;
    const std::string name(name_of(body));
    const std::string symbol = subscript(name);
    const std::string words = words_of(body);
    const auto add = [&](const char* suffix, const char* letter, Dimension dimension,
                         const char* phrase, Q quantity) {
        terms.push_back({fmt::format("{}_{}", name, suffix), fmt::format("{}_{}", letter, symbol),
                         dimension, fmt::format(fmt::runtime(phrase), words),
                         Provided{{SetupPart::Is::body_part, 0, body}, quantity, std::nullopt}});
    };
    add("mass", "mass", Dimension::mass, "the mass of the {}", Q::mass);
    add("length", "length", Dimension::length, "the length of the {}", Q::length);
    add("centre", "centre", Dimension::length,
        "how far the centre of mass of the {} is from its joint", Q::centre);
    add("angle", "angle", Dimension::angle, "the angle of the {} to the horizontal", Q::angle);
    add("force", "force", Dimension::force, "the weight of the {}", Q::force);
    add("arm", kMomentArm, Dimension::length, "the moment arm of the weight of the {}", Q::arm);
    add("torque", "torque", Dimension::torque, "the torque of the weight of the {}", Q::torque);
}

/// What forces do about one of the joints: "elbow_load_arm", "hip_trunk_torque", "hip_torque".
void add_body_axis(std::vector<Term>& terms, BodyAxis axis) {
    using Q = SetupQuantity;
    const std::string joint = words_of(axis);
    const std::string under = subscript(name_of(axis));
    const auto add = [&](const std::string& part, const std::string& part_symbol,
                         const std::string& words, const SetupPart& of) {
        const auto term = [&](const char* suffix, const char* letter, Dimension dimension,
                              const char* phrase, Q quantity) {
            terms.push_back({fmt::format("{}_{}_{}", name_of(axis), part, suffix),
                             fmt::format("{}_{},{}", letter, part_symbol, under), dimension,
                             fmt::format(fmt::runtime(phrase), words, joint),
                             Provided{of, quantity, axis}});
        };
        term("arm", kMomentArm, Dimension::length, "the moment arm of the {} about the {}", Q::arm);
        term("distance", "distance", Dimension::length, "the distance of the {} from the {}",
             Q::distance);
        term("torque", "torque", Dimension::torque, "the torque of the {} about the {}", Q::torque);
    };
    for (const Part& part : parts())
        if (part.part.is != SetupPart::Is::effort)
            add(part.name, part.symbol, part.words, part.part);
    for (std::size_t i = 0; i < kBodyParts; ++i) {
        const auto body = static_cast<BodyPart>(i);
        add(std::string(name_of(body)), subscript(name_of(body)), "weight of the " + words_of(body),
            {SetupPart::Is::body_part, 0, body});
    }
    terms.push_back({fmt::format("{}_torque", name_of(axis)), "torque_" + under, Dimension::torque,
                     fmt::format("the torque about the {}", joint),
                     Provided{SetupPart{}, Q::total_torque, axis}});
}

std::vector<Term> make_vocabulary() {
    std::vector<Term> terms;
    for (const Part& part : parts())
        add_part(terms, part);
    const auto add = [&](const char* name, const char* symbol, Dimension dimension,
                         const char* words, std::optional<SetupQuantity> quantity) {
        std::optional<Provided> provided;
        if (quantity)
            provided = Provided{SetupPart{}, *quantity, std::nullopt};
        terms.push_back({name, symbol, dimension, words, provided});
    };
    using Q = SetupQuantity;
    add("total_torque", "torque_total", Dimension::torque, "the torque of all loads together",
        Q::total_torque);
    add("axis_force", "force_axis", Dimension::force, "the force at the axis", Q::axis_force);
    add("axis_force_x", "force_axis,x", Dimension::force, "the force at the axis to the right",
        Q::axis_force_x);
    add("axis_force_y", "force_axis,y", Dimension::force, "the force at the axis upwards",
        Q::axis_force_y);
    add("ideal_advantage", "advantage", Dimension::number, "the ideal mechanical advantage",
        Q::ideal_advantage);
    add("actual_advantage", "advantage_actual", Dimension::number,
        "the actual mechanical advantage", Q::actual_advantage);
    add("lever_class", "class", Dimension::number, "the class of the lever", Q::lever_class);
    add("efficiency", "efficiency", Dimension::number, "the efficiency", Q::efficiency);
    add("gravity", "g", Dimension::acceleration, "the strength of gravity", std::nullopt);
    add("axis_at", "place_axis", Dimension::length, "the place of the axis along the lever",
        std::nullopt);
    add("body_mass", "mass_body", Dimension::mass, "the mass of the body", std::nullopt);
    add("lever_length", "length", Dimension::length, "the length of the lever", std::nullopt);
    add("lever_angle", "angle_lever", Dimension::angle,
        "the angle of the lever above the horizontal", std::nullopt);
    add("hand_distance", "distance_hand", Dimension::length, "how far the hand is from the axis",
        std::nullopt);
    add("pulley_forward", "forward_pulley", Dimension::length, "how far the pulley is in front",
        std::nullopt);
    add("pulley_below", "below_pulley", Dimension::length, "how far the pulley is below",
        std::nullopt);
    add("shoulders", "distance_shoulders", Dimension::length,
        "the distance from the hips to the shoulders", std::nullopt);
    add("spine", "distance_spine", Dimension::length,
        "the distance from the hips to the spine's joint", std::nullopt);
    add("upper_centre", "distance_body", Dimension::length, "the centre of mass of the upper body",
        std::nullopt);
    add("ball", "distance_ball", Dimension::length,
        "how far the ball of the foot is from the ankle", std::nullopt);
    for (const char* name : {"from_vertical", "raised", "bend"})
        add(name, "angle", Dimension::angle, "the angle from hanging straight down", std::nullopt);
    for (std::size_t i = 0; i < kBodyParts; ++i)
        add_body_part(terms, static_cast<BodyPart>(i));
    for (std::size_t i = 0; i < kBodyAxes; ++i)
        add_body_axis(terms, static_cast<BodyAxis>(i));
    return terms;
}

} // namespace

std::string_view name_of(BodyPart part) {
    return kPartNames[static_cast<std::size_t>(part)];
}

std::string_view name_of(BodyAxis axis) {
    return kAxisNames[static_cast<std::size_t>(axis)];
}

std::string words_of(BodyPart part) {
    return spelt_out(name_of(part));
}

std::string words_of(BodyAxis axis) {
    return spelt_out(name_of(axis));
}

const std::vector<Term>& vocabulary() {
    static const std::vector<Term> terms = make_vocabulary();
    return terms;
}

const Term* find_term(std::string_view name) {
    static const auto by_name = [] {
        std::unordered_map<std::string_view, const Term*> map;
        for (const Term& term : vocabulary())
            map.emplace(term.name, &term);
        return map;
    }();
    const auto found = by_name.find(name);
    return found == by_name.end() ? nullptr : found->second;
}

} // namespace steelyard::problems

#include "problems/vocabulary.h"

#include <fmt/core.h>

#include <array>

namespace steelyard::problems {

namespace {

using setup::Dimension;

struct Part {
    std::string name;
    std::string symbol;
    std::string words;
    LeverPart part;
};

std::vector<Part> parts() {
    static constexpr std::array<const char*, 4> kOrdinals{"", "second ", "third ", "fourth "};
    std::vector<Part> result{
        {"effort", "effort", "effort", {LeverPart::Is::effort, 0}},
        {"own", "own", "lever's own weight", {LeverPart::Is::own_weight, 0}},
    };
    for (std::size_t i = 0; i < kOrdinals.size(); ++i) {
        const std::string number = i == 0 ? "" : std::to_string(i + 1);
        result.push_back({i == 0 ? "load" : "load_" + number,
                          "load" + number,
                          fmt::format("{}load", kOrdinals[i]),
                          {LeverPart::Is::load, i}});
    }
    return result;
}

void add_part(std::vector<Term>& terms, const Part& part) {
    const auto add = [&](const char* suffix, const char* symbol, Dimension dimension,
                         const char* words, std::optional<LeverQuantity> quantity) {
        std::optional<Provided> provided;
        if (quantity)
            provided = Provided{part.part, *quantity};
        terms.push_back({fmt::format("{}_{}", part.name, suffix),
                         fmt::format("{}_{}", symbol, part.symbol), dimension,
                         fmt::format(fmt::runtime(words), part.words), provided});
    };
    using Q = LeverQuantity;
    add("mass", "m", Dimension::mass, "the mass of the {}", std::nullopt);
    add("force", "F", Dimension::force, "the force of the {}", Q::force);
    add("arm", "d", Dimension::length, "the moment arm of the {}", Q::arm);
    add("distance", "r", Dimension::length, "the distance from the axis to the {}", Q::distance);
    add("torque", "τ", Dimension::torque, "the torque of the {}", Q::torque);
    add("at", "x", Dimension::length, "the place of the {} along the lever", std::nullopt);
    add("angle", "θ", Dimension::angle, "the angle between the {} and the lever", std::nullopt);
    add("travel", "s", Dimension::length, "how far the {} moves", std::nullopt);
    if (part.part.is == LeverPart::Is::load)
        add("to_effort", "e", Dimension::length, "the distance from the {} to the effort",
            Q::to_effort);
}

std::vector<Term> make_vocabulary() {
    std::vector<Term> terms;
    for (const Part& part : parts())
        add_part(terms, part);
    const auto add = [&](const char* name, const char* symbol, Dimension dimension,
                         const char* words, std::optional<LeverQuantity> quantity) {
        std::optional<Provided> provided;
        if (quantity)
            provided = Provided{LeverPart{}, *quantity};
        terms.push_back({name, symbol, dimension, words, provided});
    };
    using Q = LeverQuantity;
    add("total_torque", "τ_total", Dimension::torque, "the torque of all loads together",
        Q::total_torque);
    add("axis_force", "R", Dimension::force, "the force at the axis", Q::axis_force);
    add("axis_force_x", "R_x", Dimension::force, "the force at the axis to the right",
        Q::axis_force_x);
    add("axis_force_y", "R_y", Dimension::force, "the force at the axis upwards", Q::axis_force_y);
    add("ideal_advantage", "MA", Dimension::number, "the ideal mechanical advantage",
        Q::ideal_advantage);
    add("actual_advantage", "MA_actual", Dimension::number, "the actual mechanical advantage",
        Q::actual_advantage);
    add("lever_class", "class", Dimension::number, "the class of the lever", Q::lever_class);
    add("efficiency", "η", Dimension::number, "the efficiency", Q::efficiency);
    add("gravity", "g", Dimension::acceleration, "the strength of gravity", std::nullopt);
    add("axis_at", "x_axis", Dimension::length, "the place of the axis along the lever",
        std::nullopt);
    add("lever_length", "L", Dimension::length, "the length of the lever", std::nullopt);
    add("lever_angle", "α", Dimension::angle, "the angle of the lever above the horizontal",
        std::nullopt);
    return terms;
}

} // namespace

const std::vector<Term>& vocabulary() {
    static const std::vector<Term> terms = make_vocabulary();
    return terms;
}

const Term* find_term(std::string_view name) {
    for (const Term& term : vocabulary())
        if (term.name == name)
            return &term;
    return nullptr;
}

} // namespace steelyard::problems

#include "setup/body/given_arms.h"

#include "setup/body/body_names.h"
#include "setup/muscle/muscle_file.h"
#include "setup/muscle/muscle_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::setup {
namespace {

using mechanics::Hinge;
using mechanics::Muscle;

std::string arm_key(std::size_t index) {
    return fmt::format("muscle_arm[{}].arm", index);
}

/// A muscle of that name must turn that hinge, or the arm would be read and never used.
void check_muscle(TomlReader& table, const std::string& name, Hinge hinge) {
    const auto muscles = shipped_muscles();
    if (!muscles)
        return; // whoever shows muscles says so
    std::vector<std::string_view> names;
    for (const Muscle& muscle : *muscles)
        if (muscle.hinge == hinge)
            names.push_back(muscle.name);
    if (std::find(names.begin(), names.end(), name) != names.end())
        return;
    const std::string nearest = nearest_spelling(name, names);
    std::string known;
    for (const std::string_view one : names)
        known += fmt::format("{}{}", known.empty() ? "" : ", ", one);
    table.add_error("muscle", fmt::format("\"{}\"", name),
                    known.empty() ? "a hinge whose muscles are on file"
                                  : "a muscle of this hinge: " + known,
                    nearest.empty() ? std::string() : fmt::format("Did you mean \"{}\"?", nearest));
}

void read_arm(TomlReader& table, std::vector<GivenArm>& arms, SourceNotes& source) {
    GivenArm arm;
    const auto name = table.text("muscle", Need::required);
    const auto hinge = read_hinge_name(table, Need::required);
    const auto sign = read_sign(table, "turns", turn_words(hinge), Need::required);
    const auto size_m = noted_quantity(table, "arm", Dimension::length, arm_key(arms.size()),
                                       source, Need::required);
    if (size_m && (*size_m < 0.0 || *size_m > kLongestMuscleArm_m))
        table.add_error("arm", describe(*table.node("arm")), "a moment arm from 0 to 50 cm",
                        "The key turns says which way the muscle turns the joint.");
    if (name && hinge)
        check_muscle(table, *name, *hinge);
    table.finish();
    if (name && hinge && sign && size_m)
        arms.push_back({*name, *hinge, *sign * *size_m});
}

} // namespace

void read_given_arms(TomlReader& body, std::vector<GivenArm>& arms, SourceNotes& source) {
    for (TomlReader& table : body.tables("muscle_arm"))
        read_arm(table, arms, source);
}

std::string write_given_arms(const std::vector<GivenArm>& arms, const SourceNotes& source,
                             std::string_view length_unit) {
    std::string text;
    for (std::size_t i = 0; i < arms.size(); ++i) {
        const mechanics::HingeInfo& info = mechanics::hinge_info(arms[i].hinge);
        const bool negative = std::signbit(arms[i].arm_m);
        text +=
            fmt::format("\n[[body.muscle_arm]]\nmuscle = {}\nhinge = {}\nturns = {}\narm = {}\n",
                        toml_string(arms[i].muscle), toml_string(without_side(info.name)),
                        toml_string(negative ? info.negative : info.positive),
                        written_quantity(std::abs(arms[i].arm_m), Dimension::length, arm_key(i),
                                         source, length_unit));
    }
    return text;
}

std::vector<Muscle> with_given_arms(const Person& person, std::vector<Muscle> muscles,
                                    Hinge hinge) {
    for (const GivenArm& given : person.arms) {
        if (given.hinge != hinge && given.hinge != mechanics::hinge_info(hinge).mirror)
            continue;
        for (Muscle& muscle : muscles)
            if (muscle.name == given.muscle && muscle.hinge == given.hinge)
                muscle.arms = {mechanics::ArmSource{mechanics::ArmTable{{{0.0, given.arm_m}}},
                                                    0.0,
                                                    {"this setup", mechanics::Evidence::memory},
                                                    mechanics::Basis::given,
                                                    {}}};
    }
    return muscles;
}

} // namespace steelyard::setup

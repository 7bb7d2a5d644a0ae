#include "words/body/strength_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::words {
namespace {

/// Whole steps of 5 %: finer would claim what nobody knows.
int per_cent(double share) {
    return 5 * static_cast<int>(std::lround(20.0 * share));
}

/// A torque below it is nothing to compare [N·m].
constexpr double kLeastDemand_Nm = 0.5;

} // namespace

std::optional<StrengthBeside> strength_beside(const setup::Person& person,
                                              const std::vector<mechanics::Muscle>& muscles,
                                              const mechanics::Pose& pose, mechanics::Hinge hinge,
                                              double muscle_Nm) {
    if (std::abs(muscle_Nm) < kLeastDemand_Nm)
        return std::nullopt;
    const mechanics::JointAction* action = mechanics::action_asked(muscles, pose, hinge, muscle_Nm);
    if (action == nullptr)
        return std::nullopt;
    for (const mechanics::MeasuredStrength& measured : action->strength) {
        if (measured.sex != person.sex)
            continue;
        if (const auto strength =
                mechanics::strength_at(measured, pose[hinge], person.mass_kg, person.height_m))
            return StrengthBeside{measured, *strength, mechanics::share_of(muscle_Nm, *strength)};
    }
    return std::nullopt;
}

std::string share_words(const StrengthBeside& beside) {
    const int mean = per_cent(beside.share.mean);
    const std::string& people = beside.measured.people;
    std::string text =
        mean > 100 ? fmt::format("more than the average of {} at this angle", people)
                   : fmt::format("{} {} % of what {} could hold on average at this angle",
                                 mean < 5 ? "less than" : "about", std::max(mean, 5), people);
    if (const auto& band = beside.share.band; band && per_cent(band->high) > 5)
        text += fmt::format(" ({} to {} % by their spread)", std::max(per_cent(band->low), 5),
                            per_cent(band->high));
    if (!beside.measured.remark.empty())
        text += "; " + beside.measured.remark;
    return text;
}

} // namespace steelyard::words

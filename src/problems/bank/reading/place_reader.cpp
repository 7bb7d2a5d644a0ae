#include "problems/bank/reading/place_reader.h"

#include "problems/bank/answer_kinds.h"
#include "problems/bank/reading/lever_plan_reader.h"

#include <array>

namespace steelyard::problems {

using setup::Need;
using setup::TomlReader;

namespace {

SpotPlan read_spot(TomlReader& spot, FamilyNames& names) {
    static const std::vector<std::string_view> kPoints{"axis", "effort_point", "effort_foot",
                                                       "load_point", "load_foot"};
    SpotPlan plan;
    plan.reason = names.text(spot, "reason", Need::required);
    plan.rule = spot.text("rule").value_or("");
    if (const std::optional<std::size_t> point = spot.choice("point", kPoints)) {
        plan.is = static_cast<SpotPlan::Is>(*point + 1);
    } else if (spot.has("toward")) {
        plan.is = SpotPlan::Is::toward;
        plan.toward = read_direction(spot, "toward", names);
        plan.reach = names.expression(spot, "reach", Need::required);
    } else {
        plan.at = names.expression(spot, "at", Need::required);
    }
    spot.finish();
    return plan;
}

/// Whether the lever has what a place or a spot is about.
bool has_part(const LeverPlan& lever, bool load, bool effort) {
    return (!load || !lever.loads.empty()) && (!effort || lever.has_effort);
}

bool can_stand(const LeverPlan& lever, const SpotPlan& spot) {
    using Is = SpotPlan::Is;
    return has_part(lever, spot.is == Is::load_point || spot.is == Is::load_foot,
                    spot.is == Is::effort_point || spot.is == Is::effort_foot ||
                        spot.is == Is::toward);
}

void check_place(TomlReader& table, const Family& family, const PlacePlan& plan) {
    if (!family.lever) {
        table.add_error("place", "a place without a lever",
                        "a [setup] with a lever to place it on");
        return;
    }
    const bool arm = plan.target == PlaceTarget::arm_foot;
    if (!has_part(*family.lever, arm && plan.of_load,
                  (arm && !plan.of_load) || plan.target == PlaceTarget::effort_line))
        table.add_error("place", "a target that the setup does not have",
                        "a target among what acts on the lever");
    for (const SpotPlan& spot : plan.spots)
        if (!can_stand(*family.lever, spot))
            table.add_error("place", "a spot at something that the setup does not have",
                            "spots at what acts on the lever");
}

} // namespace

void read_place(TomlReader& table, Family& family, FamilyNames& names) {
    std::optional<TomlReader> place =
        table.table("place", row_of(family.kind).has_place ? Need::required : Need::optional);
    if (!place)
        return;
    static const std::vector<std::string_view> kTargets{"axis", "effort_line", "effort_arm",
                                                        "load_arm", "load_place"};
    static constexpr std::array<PlaceTarget, 5> kMeaning{
        PlaceTarget::axis, PlaceTarget::effort_line, PlaceTarget::arm_foot, PlaceTarget::arm_foot,
        PlaceTarget::load_place};
    PlacePlan plan;
    const std::size_t target = place->choice("target", kTargets, Need::required).value_or(0);
    plan.target = kMeaning[target];
    plan.of_load = kTargets[target] == "load_arm";
    plan.at = names.expression(
        *place, "at", plan.target == PlaceTarget::load_place ? Need::required : Need::optional);
    if (const auto tolerance = place->quantity("tolerance", setup::Dimension::length))
        plan.tolerance_m = tolerance->value_SI;
    for (TomlReader& spot : place->tables("spot", Need::required))
        plan.spots.push_back(read_spot(spot, names));
    place->finish();
    check_place(table, family, plan);
    family.place = std::move(plan);
}

} // namespace steelyard::problems

#include "mechanics/whatif/change.h"
#include "mechanics/whatif/reach.h"

#include <algorithm>

namespace steelyard::mechanics {
namespace {

/// Adds changes of one kind, one for each set of resistances that are alike: same kind of
/// resistance, same present value.
template <typename OfResistances>
void add_for_resistances(const Exercise& exercise, std::vector<Change>& changes) {
    const std::vector<Resistance>& all = exercise.body_case.resistances;
    std::vector<bool> taken(all.size(), false);
    for (std::size_t i = 0; i < all.size(); ++i) {
        const auto range = range_of(OfResistances{{i}}, exercise);
        if (taken[i] || !range)
            continue;
        OfResistances change{{i}};
        for (std::size_t k = i + 1; k < all.size(); ++k) {
            const auto other = range_of(OfResistances{{k}}, exercise);
            if (!other || all[k].kind.index() != all[i].kind.index() ||
                other->present != range->present)
                continue;
            taken[k] = true;
            change.resistances.push_back(k);
        }
        changes.push_back(change);
    }
}

bool is_left(Hinge hinge) {
    return index_of(hinge_info(hinge).mirror) < index_of(hinge);
}

void add_angles(const Exercise& exercise, std::vector<Change>& changes) {
    for (const HingeInfo& info : all_hinges()) {
        const bool alike = held_alike_on_both_sides(exercise, info.hinge);
        if (alike && is_left(info.hinge))
            continue;
        changes.push_back(JointAngle{info.hinge, alike});
    }
}

/// The hands that hold alike swing together, so one reach stands for all of them.
void add_reach(const Exercise& exercise, Hinge from, std::vector<Change>& changes) {
    for (std::size_t i = 0; i < exercise.body_case.resistances.size(); ++i) {
        if (!range_of(LoadReach{i, from}, exercise))
            continue;
        changes.push_back(LoadReach{i, from});
        return;
    }
}

/// The change with the indices that its resistances have in another exercise.
struct Renumbering {
    const Exercise& from;
    const Exercise& to;

    std::optional<std::size_t> index_there(std::size_t index) const {
        const std::string& name = from.body_case.resistances[index].name;
        const std::vector<Resistance>& all = to.body_case.resistances;
        const auto found = std::find_if(all.begin(), all.end(),
                                        [&](const Resistance& one) { return one.name == name; });
        if (found == all.end())
            return std::nullopt;
        return static_cast<std::size_t>(found - all.begin());
    }

    template <typename OfResistances>
    std::optional<Change> operator()(const OfResistances& x) const {
        OfResistances there{{}};
        for (const std::size_t index : x.resistances) {
            const auto found = index_there(index);
            if (!found)
                return std::nullopt;
            there.resistances.push_back(*found);
        }
        std::sort(there.resistances.begin(), there.resistances.end());
        return there;
    }
    std::optional<Change> operator()(const LoadReach& x) const {
        const auto found = index_there(x.resistance);
        return found ? std::optional<Change>(LoadReach{*found, x.from}) : std::nullopt;
    }
    std::optional<Change> operator()(const JointAngle& x) const { return x; }
    std::optional<Change> operator()(const RepetitionTempo& x) const { return x; }
};

std::string names_of(const std::vector<std::size_t>& indices, const Exercise& exercise) {
    std::string names;
    for (const std::size_t index : indices)
        names += (names.empty() ? "" : " and ") + exercise.body_case.resistances[index].name;
    return names;
}

struct Describer {
    const Exercise& exercise;

    std::string operator()(const LoadSize& x) const {
        return "load of " + names_of(x.resistances, exercise);
    }
    std::string operator()(const JointAngle& x) const {
        const std::string label(hinge_info(x.hinge).label);
        return x.both_sides ? label + ", both sides" : label;
    }
    std::string operator()(const LoadReach& x) const {
        return "horizontal distance of " + names_of({x.resistance}, exercise) + " from the " +
               std::string(joint_info(hinge_info(x.from).joint).label) + " joint";
    }
    std::string operator()(const LoadAlongLimb& x) const {
        return "place of " + names_of(x.resistances, exercise) + " along the limb";
    }
    std::string operator()(const PulleyHeight& x) const {
        return "pulley height of " + names_of(x.resistances, exercise);
    }
    std::string operator()(const BandSlack& x) const {
        return "slack length of " + names_of(x.resistances, exercise);
    }
    std::string operator()(const RepetitionTempo&) const { return "tempo"; }
};

} // namespace

std::vector<Change> possible_changes(const Exercise& exercise, Hinge reach_from) {
    std::vector<Change> changes;
    add_for_resistances<LoadSize>(exercise, changes);
    add_reach(exercise, reach_from, changes);
    add_for_resistances<LoadAlongLimb>(exercise, changes);
    add_for_resistances<PulleyHeight>(exercise, changes);
    add_for_resistances<BandSlack>(exercise, changes);
    if (range_of(RepetitionTempo{}, exercise))
        changes.push_back(RepetitionTempo{});
    add_angles(exercise, changes);
    return changes;
}

std::optional<Change> same_change(const Change& change, const Exercise& exercise,
                                  const Exercise& other, Hinge reach_from) {
    const auto renumbered = std::visit(Renumbering{exercise, other}, change);
    const std::vector<Change> all = possible_changes(other, reach_from);
    if (!renumbered || std::find(all.begin(), all.end(), *renumbered) == all.end())
        return std::nullopt;
    return renumbered;
}

std::string describe(const Change& change, const Exercise& exercise) {
    return std::visit(Describer{exercise}, change);
}

} // namespace steelyard::mechanics

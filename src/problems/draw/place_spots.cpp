#include "problems/draw/place_spots.h"

#include "mechanics/lever/lever_geometry.h"

#include <cmath>

namespace steelyard::problems {

namespace {

using mechanics::Vec2;

/// Places that should be one point differ by rounding only [m].
constexpr double kSamePlace_m = 1.0e-9;
/// Wrong spots keep this many tolerances away from the right place.
constexpr double kSpotGap = 2.5;

Vec2 spot_point(const SpotPlan& spot, const Instance& instance) {
    const mechanics::LeverResult& solved = *instance.setup.solved;
    const double* const quantities = instance.quantities.data();
    switch (spot.is) {
    case SpotPlan::Is::axis:
        return solved.axis_m;
    case SpotPlan::Is::effort_point:
        return solved.effort.point_m;
    case SpotPlan::Is::effort_foot:
        return solved.effort.foot_m;
    case SpotPlan::Is::load_point:
        return solved.loads.front().point_m;
    case SpotPlan::Is::load_foot:
        return solved.loads.front().foot_m;
    case SpotPlan::Is::toward:
        return solved.effort.point_m +
               spot.reach->evaluate(quantities) *
                   mechanics::unit_vector(spot.toward->evaluate(quantities));
    case SpotPlan::Is::along:
        break;
    }
    return mechanics::point_at(instance.setup.lever->path_m, spot.at->evaluate(quantities));
}

/// How far a point lies from the right place, or from the line when that is asked [m].
double distance_to_target(const Family& family, const Instance& instance, const Vec2& point) {
    const Vec2 away = point - place_target(family, instance);
    if (family.place->target != PlaceTarget::effort_line)
        return away.norm();
    return std::abs(
        mechanics::cross(mechanics::unit_vector(instance.setup.lever->effort.direction_rad), away));
}

bool stand_apart(const std::vector<Vec2>& spots, double gap_m) {
    for (std::size_t i = 0; i < spots.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            if ((spots[i] - spots[j]).norm() < gap_m)
                return false;
    return true;
}

} // namespace

Vec2 place_target(const Family& family, const Instance& instance) {
    const PlacePlan& plan = *family.place;
    const mechanics::LeverResult& solved = *instance.setup.solved;
    switch (plan.target) {
    case PlaceTarget::axis:
        return solved.axis_m;
    case PlaceTarget::effort_line:
        return solved.effort.point_m;
    case PlaceTarget::arm_foot:
        return plan.of_load ? solved.loads.front().foot_m : solved.effort.foot_m;
    case PlaceTarget::load_place:
        break;
    }
    return mechanics::point_at(instance.setup.lever->path_m,
                               plan.at->evaluate(instance.quantities.data()));
}

Refusal find_spots(const Family& family, Random& random, Instance& instance) {
    const PlacePlan& plan = *family.place;
    instance.spots.clear();
    for (const SpotPlan& spot : plan.spots) {
        instance.spots.push_back(spot_point(spot, instance));
        if (!instance.spots.back().allFinite())
            return Refusal::no_value;
    }
    if (!stand_apart(instance.spots, plan.tolerance_m))
        return Refusal::choices_unclear;
    // Letters in a drawn order: by place, the right spot of some families would always have the
    // same.
    instance.shown = in_order(plan.spots.size());
    shuffle(random, instance.shown);
    instance.correct.clear();
    for (std::size_t at = 0; at < instance.shown.size(); ++at) {
        const double distance_m =
            distance_to_target(family, instance, instance.spots[instance.shown[at]]);
        if (distance_m <= kSamePlace_m)
            instance.correct.push_back(at);
        else if (distance_m < kSpotGap * plan.tolerance_m)
            return Refusal::choices_unclear;
    }
    return instance.correct.size() == 1 ? Refusal::none : Refusal::choices_unclear;
}

} // namespace steelyard::problems

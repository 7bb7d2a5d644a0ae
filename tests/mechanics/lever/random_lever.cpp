#include "mechanics/lever/random_lever.h"

#include "mechanics/lever/lever_geometry.h"

namespace steelyard::mechanics {

namespace {

std::vector<Vec2> random_path(RandomNumbers& random) {
    std::vector<Vec2> path{{random.between(-1.0, 1.0), random.between(-1.0, 1.0)}};
    double heading_rad = random.between(-kPi, kPi);
    const std::size_t sides = random.one_in(2) ? 1 : 2 + random.below(4);
    for (std::size_t i = 0; i < sides; ++i) {
        path.push_back(path.back() + unit_vector(heading_rad) * random.between(0.2, 1.0));
        heading_rad += random.between(-1.5, 1.5);
    }
    return path;
}

Load random_load(RandomNumbers& random, double length_m, bool couples) {
    const double at_m = random.between(0.0, length_m);
    switch (random.below(couples ? 3 : 2)) {
    case 0:
        return {"weight", Weight{at_m, random.between(0.1, 100.0)}};
    case 1:
        return {"force", PointForce{at_m, random.between(1.0, 1000.0), random.between(-kPi, kPi)}};
    default:
        return {"couple", Couple{random.between(-200.0, 200.0)}};
    }
}

void place_effort(RandomNumbers& random, double length_m, Lever& lever) {
    const Vec2 axis_m = point_at(lever.path_m, lever.axis_at_m);
    for (;;) {
        lever.effort = {"effort", random.between(0.0, length_m), random.between(-kPi, kPi)};
        const Vec2 point_m = point_at(lever.path_m, lever.effort.at_m);
        const double distance_m = (point_m - axis_m).norm();
        const double arm_m = moment_arm(axis_m, point_m, unit_vector(lever.effort.direction_rad));
        if (distance_m > 0.05 && arm_m > 0.1 * distance_m)
            return;
    }
}

} // namespace

Lever random_lever(RandomNumbers& random, const LeverKind& kind) {
    Lever lever;
    lever.path_m = random_path(random);
    const double length_m = path_length(lever.path_m);
    lever.axis_at_m = random.between(0.0, length_m);
    lever.loads.clear();
    const std::size_t loads = 1 + random.below(5);
    for (std::size_t i = 0; i < loads; ++i)
        lever.loads.push_back(random_load(random, length_m, kind.couples));
    if (kind.own_weight && random.one_in(2))
        lever.own_weight.mass_kg = random.between(0.1, 20.0);
    if (random.one_in(2))
        lever.own_weight.centre_at_m = random.between(0.0, length_m);
    if (kind.friction)
        lever.friction = {random.between(0.01, 0.6), random.between(0.001, 0.02)};
    place_effort(random, length_m, lever);
    return lever;
}

} // namespace steelyard::mechanics

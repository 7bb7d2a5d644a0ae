#include "app/bench/lever_shape.h"

#include "mechanics/lever/lever_geometry.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <utility>

namespace steelyard::app {

using mechanics::Vec2;

mechanics::Lever on_path(mechanics::Lever lever, std::vector<Vec2> path_m) {
    assert(path_m.size() >= 2);
    const auto move = [&](double& at_m) {
        at_m = mechanics::nearest_at(path_m, mechanics::point_at(lever.path_m, at_m));
    };
    move(lever.axis_at_m);
    move(lever.effort.at_m);
    if (lever.own_weight.centre_at_m)
        move(*lever.own_weight.centre_at_m);
    for (mechanics::Load& load : lever.loads)
        if (auto* weight = std::get_if<mechanics::Weight>(&load.action))
            move(weight->at_m);
        else if (auto* pull = std::get_if<mechanics::PointForce>(&load.action))
            move(pull->at_m);
    lever.path_m = std::move(path_m);
    return lever;
}

std::optional<double> place_of(const mechanics::Load& load) {
    if (const auto* weight = std::get_if<mechanics::Weight>(&load.action))
        return weight->at_m;
    if (const auto* pull = std::get_if<mechanics::PointForce>(&load.action))
        return pull->at_m;
    return std::nullopt;
}

double free_place_m(const mechanics::Lever& lever) {
    const double length_m = mechanics::path_length(lever.path_m);
    const double share = lever.axis_at_m > 0.5 * length_m ? 0.25 : 0.75;
    return std::min(std::round(share * length_m * 100.0) / 100.0, length_m);
}

std::vector<Vec2> with_corner(std::vector<Vec2> path_m) {
    std::size_t longest = 1; // the piece that ends at this corner
    for (std::size_t i = 2; i < path_m.size(); ++i)
        if ((path_m[i] - path_m[i - 1]).norm() > (path_m[longest] - path_m[longest - 1]).norm())
            longest = i;
    const Vec2 middle = 0.5 * (path_m[longest] + path_m[longest - 1]);
    path_m.insert(path_m.begin() + static_cast<std::ptrdiff_t>(longest), middle);
    return path_m;
}

std::vector<Vec2> without_corner(std::vector<Vec2> path_m, std::size_t corner) {
    if (path_m.size() > 2 && corner < path_m.size())
        path_m.erase(path_m.begin() + static_cast<std::ptrdiff_t>(corner));
    return path_m;
}

} // namespace steelyard::app

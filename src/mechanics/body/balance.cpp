#include "mechanics/body/balance.h"

#include "mechanics/bounds.h"
#include "mechanics/portable.h"

#include <Eigen/Eigenvalues>

#include <algorithm>
#include <cmath>

namespace steelyard::mechanics {

namespace {

/// A balance that misses the edge, or a setup's centre of pressure, by less than this is no miss
/// [m]: a tenth of a millimetre, far below what a setup can mean.
constexpr double kSamePressure_m = 1.0e-4;
/// A touch that moves the resultant less than this is rounding error [m].
constexpr double kNoTouch_m = 1.0e-9;
/// Contacts spread less than this in a direction do not share a tilt that way [m].
constexpr double kLeastSpread_m = 0.02;
/// Farthest that what a contact touches lies above or below the floor [m]: no room is higher.
constexpr double kMaxLevel_m = 10.0;
/// Contacts press when they carry at least this part of the load's size [-].
constexpr double kLeastPress = 1.0e-9;

/// Horizontal place or shift: x and z [m].
using Flat = Eigen::Vector2d;

Flat flat(const Vec3& point_m) {
    return {point_m.x(), point_m.z()};
}

struct Pressing {
    std::size_t contact = 0;
    std::array<Vec3, 4> corners_m; ///< world
    Vec3 point_m = Vec3::Zero();   ///< where its share acts
    bool placed = false;           ///< by the setup; does not move
    double share = 0.0;
};

struct PressingList {
    std::array<Pressing, kMaxContacts> items;
    std::size_t count = 0;

    Pressing* begin() { return items.data(); }
    Pressing* end() { return items.data() + count; }
    void drop(std::size_t i) {
        for (; i + 1 < count; ++i)
            items[i] = items[i + 1];
        --count;
    }
};

PressingList pressing_contacts(const Body& body, const Placement& placement,
                               const std::vector<Contact>& contacts) {
    PressingList list;
    for (std::size_t i = 0; i < contacts.size() && i < kMaxContacts; ++i) {
        const auto local = patch_corners(body, contacts[i]);
        if (!local)
            continue;
        Pressing& item = list.items[list.count++];
        item.contact = i;
        for (std::size_t k = 0; k < 4; ++k)
            item.corners_m[k] = placement[contacts[i].segment].at((*local)[k]);
        const auto& c = item.corners_m;
        const double at = contacts[i].pressure_at.value_or(0.5);
        item.point_m = 0.5 * ((1.0 - at) * (c[0] + c[1]) + at * (c[2] + c[3]));
        item.placed = contacts[i].pressure_at.has_value() || contacts[i].tilts;
    }
    return list;
}

/// Where the resultant's line crosses the level of a point, less that point, weighted use: how far
/// a contact's own line is from doing the whole job [m].
Flat miss_at(const Wrench& reaction, const Vec3& point_m) {
    const Vec3& f = reaction.force_N;
    const double x = (reaction.moment_Nm.z() + point_m.y() * f.x()) / f.y();
    const double z = (point_m.y() * f.z() - reaction.moment_Nm.x()) / f.y();
    return {x - point_m.x(), z - point_m.z()};
}

/// The most equal shares that bring the misses' weighted mean to zero as far as they can.
/// @return the mean miss that is left
Flat share_out(const Wrench& reaction, PressingList& list) {
    std::array<Flat, kMaxContacts> miss;
    Flat mean = Flat::Zero();
    const double equal = 1.0 / static_cast<double>(list.count);
    for (std::size_t i = 0; i < list.count; ++i) {
        miss[i] = miss_at(reaction, list.items[i].point_m);
        mean += equal * miss[i];
    }
    Eigen::Matrix2d spread = Eigen::Matrix2d::Zero();
    for (std::size_t i = 0; i < list.count; ++i)
        spread += (miss[i] - mean) * (miss[i] - mean).transpose();

    // Pseudo-inverse of the symmetric spread: only directions in which the contacts lie apart.
    // Solved in closed form by square roots alone, which are the same everywhere.
    Eigen::SelfAdjointEigenSolver<Eigen::Matrix2d> directions;
    directions.computeDirect(spread);
    Flat lever = Flat::Zero();
    Flat left = mean;
    for (const Eigen::Index i : {Eigen::Index{1}, Eigen::Index{0}}) {
        const double value = directions.eigenvalues()[i];
        const Flat axis = directions.eigenvectors().col(i);
        if (value < kLeastSpread_m * kLeastSpread_m)
            continue;
        const double part = axis.dot(mean);
        lever -= axis * (part / value);
        left -= axis * part;
    }
    for (std::size_t i = 0; i < list.count; ++i)
        list.items[i].share = equal + lever.dot(miss[i] - mean);
    return left;
}

/// Shares with every contact pushing: one that would have to pull lets go.
Flat share_pushing(const Wrench& reaction, PressingList& list) {
    while (true) {
        const Flat left = share_out(reaction, list);
        const auto least =
            std::min_element(list.begin(), list.end(),
                             [](const auto& a, const auto& b) { return a.share < b.share; });
        if (least->share >= 0.0 || list.count == 1)
            return left;
        list.drop(static_cast<std::size_t>(least - list.begin()));
    }
}

/// The point of a convex quadrilateral (seen from above) nearest to a point.
Flat nearest_inside(const std::array<Vec3, 4>& corners_m, const Flat& point_m) {
    bool inside = true;
    Flat best = flat(corners_m[0]);
    double best_m = (point_m - best).norm();
    double turn = 0.0;
    for (std::size_t i = 0; i < 4; ++i) {
        const Flat from = flat(corners_m[i]);
        const Flat side = flat(corners_m[(i + 1) % 4]) - from;
        const Flat to_point = point_m - from;
        const double cross = side.x() * to_point.y() - side.y() * to_point.x();
        inside = inside && cross * turn >= 0.0;
        if (cross != 0.0)
            turn = cross;
        const double length2 = side.squaredNorm();
        const double along =
            length2 > 0.0 ? std::clamp(to_point.dot(side) / length2, 0.0, 1.0) : 0.0;
        const Flat nearest = from + along * side;
        if ((point_m - nearest).norm() < best_m) {
            best_m = (point_m - nearest).norm();
            best = nearest;
        }
    }
    return inside && turn != 0.0 ? point_m : best;
}

ToppleDirection direction_of(const Flat& beyond_m) {
    if (std::abs(beyond_m.x()) >= std::abs(beyond_m.y()))
        return beyond_m.x() >= 0.0 ? ToppleDirection::forward : ToppleDirection::backward;
    return beyond_m.y() >= 0.0 ? ToppleDirection::right : ToppleDirection::left;
}

/// Moves the free contacts' centres of pressure by what shares could not reach, within their
/// patches.
/// @return what still misses: how far the resultant stays from where balance needs it
Flat move_pressure(PressingList& list, const Flat& left) {
    double free_share = 0.0;
    for (const Pressing& item : list)
        free_share += item.placed ? 0.0 : item.share;
    if (free_share <= 0.0)
        return left;
    Flat reached = Flat::Zero();
    for (Pressing& item : list) {
        if (item.placed)
            continue;
        const Flat from = flat(item.point_m);
        const Flat to = nearest_inside(item.corners_m, from + left / free_share);
        item.point_m.x() = to.x();
        item.point_m.z() = to.y();
        reached += item.share * (to - from);
    }
    return left - reached;
}

/// How far the contacts that the setup has placed could still move towards a miss: what is left of
/// it when they do.
Flat miss_if_unplaced(PressingList list, const Flat& left) {
    for (Pressing& item : list)
        item.placed = false;
    return move_pressure(list, left);
}

void append_contact_forces(const std::vector<Contact>& contacts, const Wrench& reaction,
                           PressingList& list, ForceList& forces) {
    double vertical_Nm = reaction.moment_Nm.y();
    for (const Pressing& item : list)
        vertical_Nm -= item.point_m.cross(item.share * reaction.force_N).y();
    for (const Pressing& item : list) {
        BodyForce force;
        force.segment = contacts[item.contact].segment;
        force.origin = ForceOrigin::contact;
        force.index = static_cast<unsigned char>(item.contact);
        force.point_m = item.point_m;
        force.force_N = item.share * reaction.force_N;
        force.couple_Nm = Vec3(0.0, item.share * vertical_Nm, 0.0);
        forces.push_back(force);
    }
}

GroundReading balance_on(const Body& body, const Placement& placement, const OnContacts& support,
                         const Wrench& load, ForceList& forces) {
    GroundReading reading;
    const Wrench reaction{-load.force_N, -load.moment_Nm};
    const double press_N = reaction.force_N.y();
    if (press_N <= kLeastPress * (reaction.force_N.norm() + 1.0)) {
        reading.status = BalanceStatus::lifts_off;
        return reading;
    }
    reading.reaction_N = reaction.force_N;
    reading.needed_friction = portable::hypot(reaction.force_N.x(), reaction.force_N.z()) / press_N;

    PressingList list = pressing_contacts(body, placement, support.contacts);
    double level_m = 0.0;
    for (const Pressing& item : list)
        level_m += item.point_m.y() / static_cast<double>(list.count);
    const Vec3 level(0.0, level_m, 0.0);
    const Flat needed = miss_at(reaction, level);
    reading.centre_of_pressure_m = Vec3(needed.x(), level_m, needed.y());

    const Flat left = share_pushing(reaction, list);
    const Flat beyond = miss_if_unplaced(list, left);
    const Flat missing = move_pressure(list, left);
    append_contact_forces(support.contacts, reaction, list, forces);

    // The resultant stays `missing` away from its needed line: a couple of its horizontal part.
    const Vec3 offset(missing.x(), 0.0, missing.y());
    const Vec3 couple_Nm = offset.cross(reaction.force_N);
    reading.unbalanced_Nm = Vec3(couple_Nm.x(), 0.0, couple_Nm.z());

    if (beyond.norm() > kSamePressure_m) {
        reading.status = BalanceStatus::would_topple;
        reading.topples = direction_of(beyond);
        reading.beyond_edge_m = beyond.norm();
    } else if (reading.needed_friction > support.friction) {
        reading.status = BalanceStatus::would_slip;
    } else {
        reading.status =
            missing.norm() > kSamePressure_m ? BalanceStatus::steadied : BalanceStatus::balanced;
    }
    // A steadying touch gives the couple that the setup's centre of pressure leaves over.
    if (reading.status != BalanceStatus::would_topple && missing.norm() > kNoTouch_m) {
        BodyForce touch;
        touch.segment = Segment::pelvis;
        touch.origin = ForceOrigin::steadying;
        touch.point_m = placement[Segment::pelvis].joint_m;
        touch.couple_Nm = reading.unbalanced_Nm;
        forces.push_back(touch);
    }
    return reading;
}

GroundReading balance_held(const Placement& placement, const Held& support, const Wrench& load,
                           ForceList& forces) {
    BodyForce held;
    held.segment = support.segment;
    held.origin = ForceOrigin::held;
    held.point_m = placement[support.segment].com_m;
    held.force_N = -load.force_N;
    held.couple_Nm = -load.moment_Nm - held.point_m.cross(held.force_N);
    forces.push_back(held);

    GroundReading reading;
    reading.reaction_N = held.force_N;
    reading.centre_of_pressure_m = held.point_m;
    return reading;
}

} // namespace

std::optional<MechanicsError> check_support(const Body& body, const Support& support) {
    if (const auto* held = std::get_if<Held>(&support)) {
        if (index_of(held->segment) >= kSegmentCount)
            return MechanicsError{Fault::unknown_name, "support.segment", "a segment of the body"};
        return std::nullopt;
    }
    const auto& on = std::get<OnContacts>(support);
    if (on.contacts.empty() || on.contacts.size() > kMaxContacts)
        return MechanicsError{Fault::inconsistent, "support.contacts", "from 1 to 6 contacts"};
    if (auto fault = outside(on.friction, 0.001, 10.0, "support.friction",
                             "a friction coefficient from 0.001 to 10"))
        return fault;
    for (std::size_t i = 0; i < on.contacts.size(); ++i) {
        const Contact& contact = on.contacts[i];
        if (const auto corners = patch_corners(body, contact); !corners)
            return within_key(indexed("support.contacts", i), corners.error());
        if (auto fault = outside(contact.level_m, -kMaxLevel_m, kMaxLevel_m, "height",
                                 "a height of at most 10 m above or below the floor"))
            return within_key(indexed("support.contacts", i), *std::move(fault));
        if (!contact.pressure_at)
            continue;
        if (auto fault = outside(*contact.pressure_at, 0.0, 1.0, "pressure_at",
                                 "a place from 0 (rear edge) to 1 (front edge)"))
            return within_key(indexed("support.contacts", i), *std::move(fault));
    }
    return std::nullopt;
}

GroundReading balance(const Body& body, const Placement& placement, const Support& support,
                      const Wrench& load, ForceList& forces) {
    if (const auto* held = std::get_if<Held>(&support))
        return balance_held(placement, *held, load, forces);
    return balance_on(body, placement, std::get<OnContacts>(support), load, forces);
}

} // namespace steelyard::mechanics

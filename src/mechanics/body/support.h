#pragma once
// What carries the body: a seat or frame that holds one segment, or contacts with the ground.

#include "mechanics/body/force.h"

#include <optional>
#include <variant>
#include <vector>

namespace steelyard::mechanics {

/// One segment is held by a seat, a bench or a frame that takes any force and any couple. Which
/// joints that loads depends on where it holds: those on the way from the pelvis to the segment.
struct Held {
    Segment segment = Segment::pelvis;
};

/// Which part of a segment touches.
enum class Patch : unsigned char {
    sole,    ///< foot: heel to ball, with the toes
    ball,    ///< foot: the ball, as on tiptoe
    toes,    ///< toes: from the ball to the tip
    palm,    ///< hand: from the wrist to the fingertips
    seat,    ///< pelvis
    knee,    ///< shank: below the knee cap, as in kneeling
    back,    ///< trunk: from the lumbar joint to the shoulders
    forearm, ///< forearm: its little-finger side, from the elbow to the wrist
    grip,    ///< hand: what it holds on to, such as a bar; the bar may also carry what hangs
};

/// A patch of the body that presses on something level. It can push, not pull; all that counts is
/// that the support pushes it up, so hands that hang from a bar are contacts too.
struct Contact {
    Segment segment = Segment::right_foot;
    Patch patch = Patch::sole;
    /// Where the setup puts the centre of pressure, from the rear (or proximal) edge of the patch
    /// = 0 to its front (or distal) edge = 1. Empty: wherever balance needs it.
    std::optional<double> pressure_at;
    /// Only a line across the patch touches, where its pressure is, and the patch may stand at an
    /// angle: shoulders on the floor under a lifted hip.
    bool tilts = false;
    /// Height of what it touches [m]: 0 is the floor.
    double level_m = 0.0;
    /// It stays where it is while the body moves: see range/stick.h.
    bool sticks = false;

    Contact() = default;
    Contact(Segment of, Patch touching, std::optional<double> at = std::nullopt)
        : segment(of), patch(touching), pressure_at(at) {}
};

/// Friction coefficient of a rubber sole on a dry floor [-]: common practice, no source.
inline constexpr double kSoleFriction = 0.8;

/// The contacts carry the body together.
///
/// Reaction: the whole body's force and moment balance gives the resultant. Each contact takes a
/// share of it, all in the same direction. Shares are the most equal ones (least sum of squares)
/// that put the resultant where balance needs it; with feet and hands on the floor that is the law
/// of the lever between them, and left equals right in a symmetric pose. What shares alone cannot
/// reach (two feet side by side, body leaning forward) moves all centres of pressure alike.
/// A turn about the vertical is taken as free couples, in proportion to the shares.
struct OnContacts {
    std::vector<Contact> contacts{{Segment::right_foot, Patch::sole},
                                  {Segment::left_foot, Patch::sole}};
    double friction = kSoleFriction; ///< coefficient between contacts and ground [-], > 0
};

using Support = std::variant<Held, OnContacts>;

enum class BalanceStatus {
    held,         ///< a segment is held: nothing to balance
    balanced,     ///< the contacts carry the body
    steadied,     ///< the setup's centre of pressure is not where balance needs it, but could be:
                  ///< a light touch supplies the rest, as a couple on the pelvis
    would_topple, ///< balance needs the centre of pressure outside the patches
    would_slip,   ///< the contacts would have to grip harder than friction allows
    lifts_off,    ///< nothing presses on the contacts: the resistances lift the body
};

/// Which way it would topple, by the compass of a person who faces +x.
enum class ToppleDirection { none, forward, backward, left, right };

struct GroundReading {
    BalanceStatus status = BalanceStatus::held;
    ToppleDirection topples = ToppleDirection::none;
    Vec3 reaction_N = Vec3::Zero(); ///< resultant of the supports on the body [N]
    /// Where the resultant needs to act for balance, at the mean height of the contacts [m].
    Vec3 centre_of_pressure_m = Vec3::Zero();
    double beyond_edge_m = 0.0;   ///< how far that lies outside the patches [m]; 0 inside
    double needed_friction = 0.0; ///< horizontal part / vertical part [-]; 0 when nothing presses
    /// Couple that the contacts leave unbalanced [N·m]: carried by the steadying touch, or what
    /// topples the body.
    Vec3 unbalanced_Nm = Vec3::Zero();
};

/// Corners of a contact's patch in the segment's frame [m]: rear left, rear right, front right,
/// front left (proximal for rear, distal for front where the patch is not on a foot).
/// An error when the segment has no such patch ("contact.patch": "a patch of a foot: ...").
tl::expected<std::array<Vec3, 4>, MechanicsError> patch_corners(const Body& body,
                                                                const Contact& contact);

/// What of a contact has to touch, in the segment's frame [m]: the corners of its patch, or the
/// ends of the line on which it tilts. Empty when the segment has no such patch.
std::vector<Vec3> touching_points(const Body& body, const Contact& contact);

std::optional<Patch> patch_named(std::string_view name);
std::string_view patch_name(Patch patch);

} // namespace steelyard::mechanics

#pragma once
// A slice of trunk or foot as a rod of varying density with breadth, that can be cut in two, and
// rigid pieces that can be joined into one.

#include "mechanics/body/body.h"

namespace steelyard::mechanics {

/// Part of a table row between two places along it.
struct Slice {
    double mass_kg = 0.0;
    double com_along_m = 0.0; ///< from the row's first end [m]
    /// Moments of inertia about its own centre of mass, about the axes of the segment's frame.
    Vec3 inertia_kg_m2 = Vec3::Zero();
};

/// Which axis of the segment's frame a row runs along: 1 (y) for the trunk, 0 (x) for the foot.
enum class Along : unsigned char { x = 0, y = 1 };

/// True when a linear density can place the row's centre of mass without becoming negative: in its
/// middle third.
bool can_be_cut(const SegmentRow& row);

/// The part of a row from `from` to `to`, fractions of its length: one end is an end of the row.
/// Density along the row changes linearly so that both parts together keep the row's mass and
/// centre of mass; breadth is the same everywhere, such that they keep its radii of gyration.
/// The whole row (0 to 1) is returned as the table has it.
Slice cut(const SegmentRow& row, double length_m, double mass_kg, Along along, double from,
          double to);

/// Adds a rigid piece to a segment, by the parallel axis theorem.
/// @param com_m    centre of mass of the piece in the segment's frame [m]
/// @param inertia  of the piece about it, about the frame's axes [kg·m²]
void join(SegmentBody& segment, double mass_kg, const Vec3& com_m, const Vec3& inertia_kg_m2);

} // namespace steelyard::mechanics

#pragma once
// The class of a lever by the order of axis, load and effort along it.

#include "mechanics/lever/lever_solve.h"

namespace steelyard::mechanics {

/// A class and why, or no class and why not.
struct Classification {
    std::optional<LeverClass> lever_class;
    ClassReason reason = ClassReason::no_placed_load;
};

/// Class of one load, by what lies in the middle along the lever.
/// @param axis_at_m, load_at_m, effort_at_m  places along the lever [m], by arc length when bent
/// Source: any anatomy or physics text; Davis, Body Physics, section 6.2.
Classification classify_places(double axis_at_m, double load_at_m, double effort_at_m);

/// Class of the whole lever. Loads without a size do not count, couples have no place. Loads that
/// sit on the axis or on the effort have no class of their own and leave it to the others; when
/// the others are of different classes, the lever has none.
Classification classify_lever(const Lever& lever);

} // namespace steelyard::mechanics

#pragma once
// A rounded part as a stack of ellipses, and the one outline that it has on the sheet.

#include "scene/body/body_stage.h"

#include <span>
#include <vector>

namespace steelyard::scene {

/// One cross-section of a part: an ellipse that is as wide to either side, and has a depth of its
/// own to the front and to the back. World frame [m].
struct Section {
    Vec3 centre_m = Vec3::Zero();
    Vec3 across_m = Vec3::Zero(); ///< from the centre to its rim at the side
    Vec3 front_m = Vec3::Zero();  ///< from the centre to its rim in front
    Vec3 back_m = Vec3::Zero();   ///< from the centre to its rim behind
};

/// A section as round as a ball seen from anywhere.
Section ball(const Vec3& centre_m, double radius_m, const Camera& camera);

/// A rim of a section as the stage shows it.
struct FlatSection {
    Point centre = Point::Zero();
    Point across = Point::Zero();
    Point front = Point::Zero();
    Point back = Point::Zero();

    /// Its farthest point in a direction of the sheet.
    Point farthest(const Point& direction) const;
};
FlatSection flat(const Section& section, const BodyStage& stage);

/// The outline on the sheet of a stack of sections: the union of the hulls of neighbours, as far as
/// it is one piece along the line from the first section to the last (what lies between two pieces
/// across that line counts as flesh). Its corners and edges leave the true one by about a pixel at
/// most.
/// @param sections  two or more
Ring loft_outline(std::span<const Section> sections, const BodyStage& stage);

/// The same of sections that are convex rows of corners on the sheet, none of them empty.
Ring loft_outline(std::span<const Ring> sections, const Point& along);

/// Between the sections further ones, so that the profile bends instead of having corners.
std::vector<Section> smoothed(std::span<const Section> sections, int steps);

} // namespace steelyard::scene

#pragma once
// From which side an exercise is looked at.

#include "mechanics/whatif/exercise.h"

#include <string_view>
#include <vector>

namespace steelyard::setup {

/// From where the movement is best looked at.
enum class BodyView {
    side,    ///< from the person's right: sagittal plane
    front,   ///< frontal plane
    above,   ///< transverse plane
    oblique, ///< from the front, the right and somewhat above: no plane at its true shape
};

/// What files and commands call them, in the order of the enumeration.
const std::vector<std::string_view>& body_view_names();

/// Those of a plane, which a question may measure in: the same order, without the oblique one.
const std::vector<std::string_view>& plane_view_names();

/// The view in which an axis is seen most nearly end on in the middle of an exercise's path, so
/// that moment arms about it show their true length; oblique where it is far from end on in all
/// planes.
BodyView best_view(const mechanics::Exercise& exercise, mechanics::Hinge axis);

} // namespace steelyard::setup

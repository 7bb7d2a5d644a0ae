#pragma once
// From which side an exercise is looked at.

namespace steelyard::setup {

/// From where the movement is best looked at.
enum class BodyView {
    side,  ///< from the person's right: sagittal plane
    front, ///< frontal plane
    above, ///< transverse plane
};

} // namespace steelyard::setup

#include "app/exam/beam_layout.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace steelyard::app {

namespace {

constexpr float kInset_px = 12.0F; ///< from an end of the beam to the notch next to it
constexpr float kNumberGap_px = 12.0F;
constexpr double kWay_s = 0.15; ///< however far it is

} // namespace

float BeamLayout::pitch_px() const {
    const float room_px = width_px - 2.0F * scale * kInset_px;
    return count > 1 ? room_px / static_cast<float>(count - 1) : room_px;
}

float BeamLayout::at(double notch) const {
    return left_px + scale * kInset_px + pitch_px() * static_cast<float>(notch);
}

std::size_t BeamLayout::nearest(float x_px) const {
    assert(count > 0);
    const float notch = std::round((x_px - at(0.0)) / pitch_px());
    return static_cast<std::size_t>(std::clamp(notch, 0.0F, static_cast<float>(count - 1)));
}

std::size_t BeamLayout::numbered_every(float number_px) const {
    std::size_t every = 5;
    while (static_cast<float>(every) * pitch_px() < number_px + scale * kNumberGap_px &&
           every < count)
        every *= 2;
    return every;
}

void BeamPointer::aim(std::size_t notch, bool at_once) {
    const auto target = static_cast<double>(notch);
    if (at_once || at_ < 0.0) {
        at_ = target_ = target;
        left_s_ = 0.0;
    } else if (target != target_) {
        target_ = target;
        left_s_ = kWay_s;
    }
}

void BeamPointer::advance(double seconds) {
    if (at_rest())
        return;
    // A frame after a long rest is not the time of the way.
    const double step_s = std::min({seconds, 1.0 / 30.0, left_s_});
    at_ += (target_ - at_) * step_s / left_s_;
    left_s_ -= step_s;
    if (left_s_ <= 0.0) {
        at_ = target_;
        left_s_ = 0.0;
    }
}

} // namespace steelyard::app

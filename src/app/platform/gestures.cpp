#include "app/platform/gestures.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace steelyard::app {

namespace {

using Kind = PointerAct::Kind;

/// As phones have them; common practice, no source.
constexpr double kLongPress_s = 0.5;
constexpr double kStill_px = 10.0;
/// Two fingers this much farther apart are one notch of a wheel.
constexpr double kNotch = 1.1;

} // namespace

scene::Point Gestures::middle_px() const {
    return 0.5 * (fingers_[0].at_px + fingers_[1].at_px);
}

double Gestures::distance_px() const {
    return std::max(1.0, (fingers_[0].at_px - fingers_[1].at_px).norm());
}

std::vector<PointerAct> Gestures::take(const Touch& touch) {
    switch (touch.phase) {
    case TouchPhase::down:
        return put_down(touch);
    case TouchPhase::moved:
        return move(touch);
    case TouchPhase::up:
    case TouchPhase::cancelled:
        return lift(touch);
    }
    return {};
}

std::vector<PointerAct> Gestures::put_down(const Touch& touch) {
    if (fingers_.size() >= 2)
        return {};
    fingers_.push_back({touch.finger, touch.at_px});
    if (fingers_.size() == 1) {
        begun_at_px_ = touch.at_px;
        still_since_s_ = touch.at_s;
        alone_ = touch.scrolls ? Alone::waits : Alone::drags;
        if (alone_ == Alone::waits)
            return {{Kind::move, touch.at_px}};
        return {{Kind::move, touch.at_px}, {Kind::press, touch.at_px, PointerButton::left}};
    }
    still_since_s_.reset();
    std::vector<PointerAct> acts;
    if (alone_ == Alone::drags) // let go where it was, so that what was dragged stays there
        acts.push_back({Kind::release, fingers_[0].at_px, PointerButton::left});
    alone_ = Alone::nothing;
    pans_ = true;
    acts.push_back({Kind::move, middle_px()});
    acts.push_back({Kind::press, middle_px(), PointerButton::right});
    return acts;
}

std::vector<PointerAct> Gestures::move(const Touch& touch) {
    const auto found = std::find_if(fingers_.begin(), fingers_.end(),
                                    [&](const Finger& one) { return one.number == touch.finger; });
    if (found == fingers_.end())
        return {};
    const double before_px = fingers_.size() == 2 ? distance_px() : 1.0;
    const scene::Point from_px = std::exchange(found->at_px, touch.at_px);
    if (pans_ && fingers_.size() == 2)
        return {{Kind::move, middle_px()},
                {Kind::wheel, middle_px(), PointerButton::left,
                 std::log(distance_px() / before_px) / std::log(kNotch)}};
    if ((touch.at_px - begun_at_px_).norm() > kStill_px)
        still_since_s_.reset();
    return move_alone(touch, from_px);
}

/// Up and down scrolls; to the side drags what was touched, such as a slider's grip.
std::vector<PointerAct> Gestures::move_alone(const Touch& touch, const scene::Point& from_px) {
    const scene::Point way_px = touch.at_px - begun_at_px_;
    switch (alone_) {
    case Alone::nothing:
        return {};
    case Alone::waits:
        if (still_since_s_)
            return {};
        if (std::abs(way_px.y()) < std::abs(way_px.x())) {
            alone_ = Alone::drags;
            return {{Kind::move, begun_at_px_},
                    {Kind::press, begun_at_px_, PointerButton::left},
                    {Kind::move, touch.at_px}};
        }
        alone_ = Alone::scrolls;
        return {{Kind::scroll, begun_at_px_, PointerButton::left, 0.0, way_px.y()}};
    case Alone::scrolls:
        return {
            {Kind::scroll, begun_at_px_, PointerButton::left, 0.0, touch.at_px.y() - from_px.y()}};
    case Alone::drags:
        return {{Kind::move, touch.at_px}};
    }
    return {};
}

std::vector<PointerAct> Gestures::lift(const Touch& touch) {
    const auto found = std::find_if(fingers_.begin(), fingers_.end(),
                                    [&](const Finger& one) { return one.number == touch.finger; });
    if (found == fingers_.end())
        return {};
    const scene::Point at_px = found->at_px;
    fingers_.erase(found);
    const bool tapped = alone_ == Alone::waits && still_since_s_ && touch.phase == TouchPhase::up;
    still_since_s_.reset();
    std::vector<PointerAct> acts;
    if (tapped)
        acts.push_back({Kind::press, at_px, PointerButton::left});
    if (tapped || alone_ == Alone::drags)
        acts.push_back({Kind::release, at_px, PointerButton::left});
    if (pans_)
        acts.push_back({Kind::release, at_px, PointerButton::right});
    alone_ = Alone::nothing;
    pans_ = false;
    if (fingers_.empty()) // no finger, no pointer: nothing stays lit up under it
        acts.push_back({Kind::leave, at_px});
    return acts;
}

std::vector<PointerAct> Gestures::wait(double now_s) {
    const auto due = due_s();
    if (!due || now_s < *due)
        return {};
    still_since_s_.reset();
    std::vector<PointerAct> acts;
    if (alone_ == Alone::drags)
        acts.push_back({Kind::release, begun_at_px_, PointerButton::left});
    alone_ = Alone::nothing;
    acts.push_back({Kind::double_click, begun_at_px_});
    return acts;
}

std::optional<double> Gestures::due_s() const {
    if (!still_since_s_)
        return std::nullopt;
    return *still_since_s_ + kLongPress_s;
}

} // namespace steelyard::app

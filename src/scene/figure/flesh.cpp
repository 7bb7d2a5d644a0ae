#include "scene/figure/flesh.h"

#include <algorithm>
#include <cmath>
#include <span>

namespace steelyard::scene {

namespace {

using mechanics::Mat3;
using mechanics::Segment;
using mechanics::SegmentFrame;

constexpr double kUsualHeight_m = 1.75;
constexpr double kUsualMass_kg = 73.0;
/// Breadth of the shoulders between their joints, as a part of height: de Leva's men.
constexpr double kUsualShoulders = 0.22;

/// A section by its place along a bone and its half sizes [m].
struct Station {
    double along; ///< from the proximal joint (0) to the distal one (1)
    double half_width;
    double front;
    double back;
};

constexpr std::array kPelvis{
    Station{-1.05, 0.064, 0.048, 0.056}, Station{-0.85, 0.110, 0.072, 0.086},
    Station{-0.45, 0.154, 0.090, 0.112}, Station{0.0, 0.170, 0.099, 0.124},
    Station{0.5, 0.166, 0.103, 0.115},   Station{0.9, 0.152, 0.102, 0.102},
    Station{1.1, 0.138, 0.096, 0.094}};
constexpr std::array kTrunk{
    Station{-0.10, 0.163, 0.106, 0.107}, Station{0.05, 0.150, 0.105, 0.096},
    Station{0.20, 0.143, 0.106, 0.092},  Station{0.35, 0.150, 0.111, 0.098},
    Station{0.50, 0.160, 0.117, 0.106},  Station{0.62, 0.168, 0.120, 0.111},
    Station{0.72, 0.173, 0.115, 0.112},  Station{0.80, 0.168, 0.103, 0.109},
    Station{0.87, 0.148, 0.085, 0.100},  Station{0.93, 0.108, 0.066, 0.088},
    Station{0.97, 0.080, 0.050, 0.077},  Station{1.00, 0.060, 0.036, 0.068}};
constexpr std::array kUpperArm{
    Station{-0.185, 0.016, 0.018, 0.018}, Station{-0.16, 0.032, 0.035, 0.035},
    Station{-0.10, 0.046, 0.049, 0.049},  Station{0.0, 0.053, 0.057, 0.057},
    Station{0.12, 0.053, 0.058, 0.056},   Station{0.28, 0.048, 0.054, 0.050},
    Station{0.50, 0.043, 0.049, 0.046},   Station{0.80, 0.037, 0.039, 0.041},
    Station{1.0, 0.038, 0.036, 0.038}};
constexpr std::array kForearm{
    Station{0.0, 0.039, 0.037, 0.039},  Station{0.12, 0.045, 0.042, 0.041},
    Station{0.30, 0.044, 0.041, 0.038}, Station{0.60, 0.035, 0.031, 0.029},
    Station{0.85, 0.028, 0.021, 0.021}, Station{1.0, 0.028, 0.019, 0.019}};
constexpr std::array kThigh{
    Station{-0.09, 0.044, 0.060, 0.082}, Station{-0.05, 0.064, 0.078, 0.100},
    Station{0.0, 0.078, 0.087, 0.110},   Station{0.12, 0.084, 0.090, 0.108},
    Station{0.22, 0.083, 0.089, 0.096},  Station{0.40, 0.075, 0.081, 0.078},
    Station{0.70, 0.060, 0.065, 0.060},  Station{0.90, 0.052, 0.056, 0.053},
    Station{1.0, 0.050, 0.053, 0.048}};
constexpr std::array kShank{Station{0.0, 0.050, 0.050, 0.047},  Station{0.08, 0.050, 0.047, 0.053},
                            Station{0.22, 0.056, 0.043, 0.068}, Station{0.36, 0.053, 0.041, 0.064},
                            Station{0.60, 0.040, 0.036, 0.043}, Station{0.85, 0.031, 0.030, 0.032},
                            Station{1.0, 0.034, 0.035, 0.040}};
/// From the chin (0) to the top of the head (1).
constexpr std::array kHead{
    Station{-0.035, 0.012, 0.068, -0.040}, Station{-0.02, 0.026, 0.080, -0.020},
    Station{0.04, 0.042, 0.089, 0.000},    Station{0.12, 0.053, 0.091, 0.040},
    Station{0.22, 0.060, 0.092, 0.068},    Station{0.34, 0.066, 0.093, 0.084},
    Station{0.48, 0.071, 0.094, 0.094},    Station{0.62, 0.075, 0.096, 0.100},
    Station{0.74, 0.074, 0.092, 0.100},    Station{0.85, 0.065, 0.078, 0.089},
    Station{0.93, 0.048, 0.056, 0.068},    Station{0.98, 0.027, 0.030, 0.040},
    Station{1.0, 0.010, 0.010, 0.014}};
constexpr std::array kNose{Station{0.28, 0.010, 0.100, -0.070}, Station{0.33, 0.016, 0.113, -0.070},
                           Station{0.38, 0.016, 0.115, -0.070}, Station{0.46, 0.011, 0.106, -0.070},
                           Station{0.54, 0.008, 0.094, -0.070}};
/// From the wrist to the knuckles [m], closed and open.
constexpr std::array kFist{
    Station{0.0, 0.028, 0.020, 0.020},   Station{0.030, 0.034, 0.023, 0.025},
    Station{0.055, 0.040, 0.032, 0.030}, Station{0.085, 0.042, 0.037, 0.031},
    Station{0.105, 0.040, 0.034, 0.026}, Station{0.118, 0.032, 0.020, 0.014}};
constexpr std::array kPalm{Station{0.0, 0.028, 0.020, 0.020}, Station{0.030, 0.035, 0.021, 0.018},
                           Station{0.070, 0.042, 0.017, 0.015}, Station{0.100, 0.042, 0.012, 0.012},
                           Station{0.108, 0.038, 0.009, 0.009}};
/// From the ankle forward, and from the ball [m]; the back of a station is its height.
constexpr std::array kRearFoot{
    Station{-0.0645, 0.022, 0.0, 0.030}, Station{-0.058, 0.030, 0.0, 0.055},
    Station{-0.035, 0.036, 0.0, 0.080},  Station{0.0, 0.038, 0.0, 0.086},
    Station{0.030, 0.041, 0.0, 0.084},   Station{0.070, 0.048, 0.0, 0.067},
    Station{0.105, 0.053, 0.0, 0.055},   Station{0.124, 0.055, 0.0, 0.051}};
constexpr std::array kForeFoot{Station{-0.012, 0.055, 0.0, 0.052},
                               Station{0.015, 0.055, 0.0, 0.048}, Station{0.040, 0.051, 0.0, 0.042},
                               Station{0.058, 0.041, 0.0, 0.034},
                               Station{0.070, 0.022, 0.0, 0.020}};

/// Hems, along the bone.
constexpr double kSleeveEnd = 0.46;
constexpr double kShortsEnd = 0.55;

/// A section square to the y axis of a frame. One whose back lies before the bone has its centre
/// there.
Section level(const SegmentFrame& frame, const Vec3& centre_m, const Station& station,
              double girth) {
    const double before = std::max(-station.back, 0.0);
    const Vec3 forward = frame.rotation.col(0);
    return {frame.at(centre_m) + girth * before * forward,
            girth * station.half_width * frame.rotation.col(2),
            girth * (station.front - before) * forward, -girth * (station.back + before) * forward};
}

Stack stack_of(std::span<const Station> stations, const SegmentFrame& frame, const Vec3& tip_m,
               double girth) {
    Stack stack;
    for (const Station& station : stations)
        stack.push_back(level(frame, station.along * tip_m, station, girth));
    return smoothed(stack, 2);
}

/// A limb by its hem: what cloth covers, and what is bare.
struct Split {
    std::vector<Station> before;
    std::vector<Station> beyond;
};

Split split(std::span<const Station> stations, double hem) {
    Split parts;
    for (std::size_t i = 0; i < stations.size(); ++i) {
        const Station& here = stations[i];
        if (here.along >= hem && parts.beyond.empty()) {
            const Station& last = stations[i - 1];
            const double share = (hem - last.along) / (here.along - last.along);
            const Station at_hem{hem, std::lerp(last.half_width, here.half_width, share),
                                 std::lerp(last.front, here.front, share),
                                 std::lerp(last.back, here.back, share)};
            parts.before.push_back(at_hem);
            parts.beyond.push_back(at_hem);
        }
        (here.along < hem ? parts.before : parts.beyond).push_back(here);
    }
    return parts;
}

Stack tube(std::span<const Vec3> places_m, std::span<const double> radii_m, const Camera& camera) {
    Stack stack;
    for (std::size_t i = 0; i < places_m.size(); ++i)
        stack.push_back(ball(places_m[i], radii_m[i], camera));
    return stack;
}

/// Between the shoulder joints, the girdle at rest [m].
double breadth_of_shoulders(const mechanics::Body& body) {
    const auto beside_m = [&](Segment girdle, Segment arm) {
        return (body[girdle].joint_m + body[arm].joint_m).z();
    };
    return beside_m(Segment::right_girdle, Segment::right_upper_arm) -
           beside_m(Segment::left_girdle, Segment::left_upper_arm);
}

} // namespace

Flesh::Flesh(const mechanics::Body& body, const mechanics::Placement& placement,
             const Camera& camera)
    : body_(body), placement_(placement), camera_(camera), tall_(body.height_m / kUsualHeight_m),
      stout_(std::clamp(std::sqrt(body.mass_kg / body.height_m / (kUsualMass_kg / kUsualHeight_m)),
                        0.7 * tall_, 1.7 * tall_)),
      shoulders_(breadth_of_shoulders(body) / (kUsualShoulders * body.height_m)) {}

Stack Flesh::pelvis() const {
    return stack_of(kPelvis, placement_[Segment::pelvis], body_[Segment::pelvis].tip_m, stout_);
}

Stack Flesh::trunk() const {
    Stack stack;
    const SegmentFrame& frame = placement_[Segment::trunk];
    for (Station station : kTrunk) {
        // What lies between the shoulders is as broad as they are, below that it goes with the
        // mass.
        const double bony = std::clamp((station.along - 0.5) / 0.3, 0.0, 1.0);
        station.half_width *= std::lerp(1.0, shoulders_ * tall_ / stout_, 0.7 * bony);
        stack.push_back(level(frame, station.along * body_[Segment::trunk].tip_m, station, stout_));
    }
    return smoothed(stack, 2);
}

Stack Flesh::waist() const {
    const Stack below = pelvis();
    const Stack above = trunk();
    return {below[below.size() - 4], above[3]};
}

Stack Flesh::shoulder(const BodySide& side) const {
    const SegmentFrame& trunk = placement_[Segment::trunk];
    const Vec3 tip_m = body_[Segment::trunk].tip_m;
    const std::array places_m{
        trunk.at(0.945 * tip_m + Vec3(-0.012, 0.0, 0.045 * side.outward) * tall_),
        Vec3(placement_[side.upper_arm].joint_m + trunk.rotation.col(1) * tall(0.004))};
    return tube(places_m, std::array{tall(0.046), stout(0.047)}, camera_);
}

Stack Flesh::armpit(const BodySide& side) const {
    const SegmentFrame& trunk = placement_[Segment::trunk];
    const SegmentFrame& arm = placement_[side.upper_arm];
    const Vec3 chest_m = trunk.at(0.66 * body_[Segment::trunk].tip_m +
                                  Vec3(0.0, 0.0, 0.115 * side.outward) * stout_);
    const Section chest{chest_m, stout(0.045) * trunk.rotation.col(2),
                        stout(0.085) * trunk.rotation.col(0),
                        -stout(0.085) * trunk.rotation.col(0)};
    const Section corner = level(
        trunk, 0.80 * body_[Segment::trunk].tip_m + Vec3(0.0, 0.0, 0.148 * side.outward) * tall_,
        {0.0, 0.045, 0.074, 0.080}, stout_);
    return {chest, corner,
            level(arm, 0.16 * body_[side.upper_arm].tip_m, {0.0, 0.045, 0.050, 0.050}, stout_)};
}

Stack Flesh::neck() const {
    const SegmentFrame& trunk = placement_[Segment::trunk];
    const SegmentFrame& head = placement_[Segment::head];
    // The root of the neck slopes from the nape down to the pit of the throat.
    constexpr double kSlope_rad = 0.42;
    const Vec3 forward =
        std::cos(kSlope_rad) * trunk.rotation.col(0) - std::sin(kSlope_rad) * trunk.rotation.col(1);
    const Section root{
        trunk.at(0.945 * body_[Segment::trunk].tip_m + Vec3(0.004, 0.0, 0.0) * tall_),
        stout(0.068) * trunk.rotation.col(2), stout(0.066) * forward, -stout(0.066) * forward};
    const Section middle =
        level(head, Vec3(0.008, 0.025, 0.0) * tall_, {0.0, 0.056, 0.052, 0.056}, stout_);
    const Section top =
        level(head, Vec3(0.016, 0.095, 0.0) * tall_, {0.0, 0.053, 0.050, 0.060}, stout_);
    return smoothed(Stack{root, middle, top}, 3);
}

namespace {

/// Chin to crown; the skull's middle lies before the line of the spine.
Stack head_stack(std::span<const Station> stations, const mechanics::Body& body,
                 const SegmentFrame& frame, double tall) {
    const double crown_m = body[Segment::head].tip_m.y();
    const double chin_m = crown_m - 0.222 * tall;
    Stack stack;
    for (const Station& station : stations)
        stack.push_back(level(frame,
                              Vec3(0.016 * tall, std::lerp(chin_m, crown_m, station.along), 0.0),
                              station, tall));
    return stack;
}

} // namespace

Stack Flesh::head() const {
    return smoothed(head_stack(kHead, body_, placement_[Segment::head], tall_), 2);
}

Stack Flesh::nose() const {
    return head_stack(kNose, body_, placement_[Segment::head], tall_);
}

Stack Flesh::ear(const BodySide& side) const {
    const SegmentFrame& head = placement_[Segment::head];
    const double middle_m = body_[Segment::head].tip_m.y() - tall(0.118);
    const auto place = [&](double up_m, double back_m) {
        return head.at(
            Vec3(tall(0.008 - back_m), middle_m + tall(up_m), side.outward * tall(0.072)));
    };
    Stack stack;
    for (const auto& [up_m, back_m, half_m] :
         {std::array{0.030, 0.010, 0.006}, std::array{0.022, 0.010, 0.014},
          std::array{0.004, 0.006, 0.014}, std::array{-0.016, 0.001, 0.009},
          std::array{-0.027, 0.000, 0.004}})
        stack.push_back({place(up_m, back_m), tall(0.5 * half_m) * head.rotation.col(2),
                         tall(half_m) * head.rotation.col(0),
                         -tall(half_m) * head.rotation.col(0)});
    return smoothed(stack, 2);
}

Stack Flesh::upper_arm(const BodySide& side) const {
    return stack_of(split(kUpperArm, kSleeveEnd).beyond, placement_[side.upper_arm],
                    body_[side.upper_arm].tip_m, stout_);
}

Stack Flesh::sleeve(const BodySide& side) const {
    return stack_of(split(kUpperArm, kSleeveEnd).before, placement_[side.upper_arm],
                    body_[side.upper_arm].tip_m, 1.06 * stout_);
}

Stack Flesh::elbow(const BodySide& side) const {
    return {ball(placement_[side.forearm].joint_m, stout(0.0365), camera_),
            ball(placement_[side.forearm].at(0.05 * body_[side.forearm].tip_m), stout(0.0375),
                 camera_)};
}

Stack Flesh::forearm(const BodySide& side) const {
    const double slim = std::lerp(tall_, stout_, 0.7);
    return stack_of(kForearm, placement_[side.forearm], body_[side.forearm].tip_m, slim);
}

Stack Flesh::wrist(const BodySide& side) const {
    return {ball(placement_[side.hand].joint_m, tall(0.019), camera_),
            ball(placement_[side.hand].at(Vec3(0.0, -0.01, 0.0)), tall(0.020), camera_)};
}

std::vector<Stack> Flesh::hand(const BodySide& side, HandForm form) const {
    const SegmentFrame& frame = placement_[side.hand];
    const auto palm_of = [&](std::span<const Station> stations) {
        Stack stack;
        for (Station station : stations) {
            if (form == HandForm::flat) { // its skin in the plane of the hand's axis, which touches
                station.back = 0.85 * (station.front + station.back);
                station.front = 0.001;
            }
            stack.push_back(level(frame, Vec3(0.0, -station.along * tall_, 0.0), station, tall_));
        }
        return smoothed(stack, 2);
    };
    const auto at = [&](double forward, double down, double to_thumb) {
        return frame.at(Vec3(forward, -down, side.outward * to_thumb) * tall_);
    };
    std::vector<Stack> parts;
    if (form == HandForm::gripping) {
        parts.push_back(palm_of(kFist));
        parts.push_back(tube(std::array{at(0.004, 0.024, 0.030), at(0.026, 0.052, 0.043),
                                        at(0.040, 0.080, 0.030), at(0.042, 0.092, 0.018)},
                             std::array{tall(0.014), tall(0.012), tall(0.010), tall(0.008)},
                             camera_));
        return parts;
    }
    const bool lies = form == HandForm::flat;
    parts.push_back(palm_of(kPalm));
    // What lies on something touches it from above: its middle is its radius away.
    const auto tube_of = [&](std::array<Vec3, 4> places, const std::array<double, 4>& radii) {
        if (lies)
            for (std::size_t i = 0; i < places.size(); ++i)
                places[i].x() = -radii[i];
        std::array<double, 4> radii_m{};
        for (std::size_t i = 0; i < places.size(); ++i) {
            places[i] = at(places[i].x(), places[i].y(), places[i].z());
            radii_m[i] = tall(radii[i]);
        }
        return tube(places, radii_m, camera_);
    };
    parts.push_back(tube_of({Vec3(0.004, 0.024, 0.026), Vec3(0.012, 0.060, 0.048),
                             Vec3(0.022, 0.088, 0.054), Vec3(0.032, 0.106, 0.050)},
                            {0.015, 0.0115, 0.0095, 0.007}));
    constexpr std::array kFingers{std::array{0.032, 0.080}, std::array{0.011, 0.090},
                                  std::array{-0.011, 0.084}, std::array{-0.031, 0.064}};
    for (const auto& [to_thumb, length] : kFingers) {
        const double spread = lies ? 1.25 : 1.0;
        parts.push_back(
            tube_of({Vec3(0.0, 0.092, to_thumb),
                     Vec3(0.006, 0.098 + 0.45 * length, to_thumb * std::lerp(1.0, spread, 0.5)),
                     Vec3(0.018, 0.098 + 0.8 * length, to_thumb * spread),
                     Vec3(0.028, 0.098 + length, to_thumb * spread)},
                    {0.0105, 0.0095, 0.0085, 0.0065}));
    }
    return parts;
}

Stack Flesh::thigh(const BodySide& side) const {
    return stack_of(split(kThigh, kShortsEnd).beyond, placement_[side.thigh],
                    body_[side.thigh].tip_m, stout_);
}

Stack Flesh::leg_of_shorts(const BodySide& side) const {
    return stack_of(split(kThigh, kShortsEnd).before, placement_[side.thigh],
                    body_[side.thigh].tip_m, 1.04 * stout_);
}

Stack Flesh::knee(const BodySide& side) const {
    const SegmentFrame& shank = placement_[side.shank];
    return {ball(shank.at(Vec3(0.003, 0.012, 0.0) * tall_), stout(0.048), camera_),
            ball(shank.at(Vec3(0.003, -0.012, 0.0) * tall_), stout(0.048), camera_)};
}

Stack Flesh::shank(const BodySide& side) const {
    const double slim = std::lerp(tall_, stout_, 0.7);
    return stack_of(kShank, placement_[side.shank], body_[side.shank].tip_m, slim);
}

Stack Flesh::ankle(const BodySide& side) const {
    return {ball(placement_[side.foot].joint_m, tall(0.035), camera_),
            ball(placement_[side.foot].at(Vec3(0.004, -0.02, 0.0) * tall_), tall(0.036), camera_)};
}

std::vector<Stack> Flesh::shoe(const BodySide& side) const {
    const auto along = [&](std::span<const Station> stations, const SegmentFrame& frame,
                           double sole_m, double stretch) {
        Stack stack;
        for (const Station& station : stations)
            stack.push_back({frame.at(Vec3(stretch * station.along, sole_m, 0.0)),
                             tall(station.half_width) * frame.rotation.col(2),
                             -tall(0.001) * frame.rotation.col(1),
                             tall(station.back) * frame.rotation.col(1)});
        return smoothed(stack, 2);
    };
    const SegmentFrame& foot = placement_[side.foot];
    const Stack collar{
        level(foot, Vec3(-0.002, 0.022, 0.0) * tall_, {0.0, 0.037, 0.038, 0.041}, tall_),
        level(foot, Vec3(0.002, -0.010, 0.0) * tall_, {0.0, 0.038, 0.045, 0.045}, tall_),
        level(foot, Vec3(0.004, -0.045, 0.0) * tall_, {0.0, 0.037, 0.055, 0.052}, tall_)};
    const double rear = (body_.heel_behind_ankle_m + body_.ball_before_ankle_m) / 0.1885;
    const double fore = body_.toe_tip_before_ball_m / 0.0700;
    return {collar, along(kRearFoot, foot, -body_.ankle_height_m, rear),
            along(kForeFoot, placement_[side.toes], 0.0, fore)};
}

} // namespace steelyard::scene

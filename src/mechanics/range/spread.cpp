#include "mechanics/range/spread.h"

#include "mechanics/body/body_check.h"
#include "mechanics/body/solve_pose.h"
#include "mechanics/bounds.h"

#include <algorithm>
#include <vector>

namespace steelyard::mechanics {

namespace {

/// A parameter stays within this part of its table value, so that no draw makes a body that cannot
/// be computed with [-].
constexpr double kLeastFactor = 0.5;
constexpr double kMostFactor = 1.5;

double factor(Random& random, double deviation) {
    return std::clamp(1.0 + deviation * nearly_normal(random), kLeastFactor, kMostFactor);
}

/// Parts that a joint divides need their centre of mass in the middle third.
double kept_within(double com_fraction, bool divided) {
    return divided ? std::clamp(com_fraction, 1.0 / 3.0, 2.0 / 3.0)
                   : std::clamp(com_fraction, 0.0, 1.0);
}

void vary_row(const SegmentRow& from, const BodyVariation& variation, bool divided, Random& random,
              double length_factor, SegmentRow& to) {
    to.length_m = from.length_m * length_factor;
    to.mass_fraction = from.mass_fraction * factor(random, variation.mass);
    to.com_fraction = kept_within(from.com_fraction * factor(random, variation.com), divided);
    to.gyration = from.gyration * factor(random, variation.gyration);
}

/// Another person of the same height and mass. Both sides stay alike; what a length carries with it
/// (the grip on the hand, the ankle on the foot, the shoulder on the trunk) goes along in
/// proportion.
void vary(const SegmentColumn& from, const BodyVariation& variation, Random& random,
          SegmentColumn& to) {
    const auto length = [&] { return factor(random, variation.length); };
    vary_row(from.head, variation, false, random, length(), to.head);
    vary_row(from.upper_arm, variation, false, random, length(), to.upper_arm);
    vary_row(from.forearm, variation, false, random, length(), to.forearm);
    const double hand = length();
    vary_row(from.hand, variation, false, random, hand, to.hand);
    to.grip_from_wrist_m = from.grip_from_wrist_m * hand;
    to.fingertip_from_wrist_m = from.fingertip_from_wrist_m * hand;
    vary_row(from.thigh, variation, false, random, length(), to.thigh);
    vary_row(from.shank, variation, false, random, length(), to.shank);
    const double foot = length();
    vary_row(from.foot, variation, true, random, foot, to.foot);
    to.heel_behind_ankle_m = from.heel_behind_ankle_m * foot;
    to.ball_from_heel_m = from.ball_from_heel_m * foot;
    const double trunk = length();
    const std::size_t divided = slice_at_lumbar(from);
    for (std::size_t i = 0; i < from.trunk.size(); ++i)
        vary_row(from.trunk[i], variation, i == divided, random, trunk, to.trunk[i]);
    to.lumbar_height_m = from.lumbar_height_m * trunk;
    to.shoulder_height_m = from.shoulder_height_m * trunk;
    to.neck_height_m = from.neck_height_m * trunk;
    to.shoulder_half_breadth_m = from.shoulder_half_breadth_m * length();
    to.hip_half_breadth_m = from.hip_half_breadth_m * length();
    to.ankle_height_m = from.ankle_height_m * length();
}

std::optional<MechanicsError> check_input(const SpreadInput& input) {
    for (const auto& [value, key] : {std::pair(input.variation.length, "variation.length"),
                                     std::pair(input.variation.mass, "variation.mass"),
                                     std::pair(input.variation.com, "variation.com"),
                                     std::pair(input.variation.gyration, "variation.gyration")})
        if (auto fault = outside(value, 0.0, 0.5, key, "a relative deviation from 0 to 0.5"))
            return fault;
    if (input.bodies < kLeastBodies || input.bodies > kMostBodies)
        return MechanicsError{Fault::out_of_range, "bodies", "from 20 to 1000000 bodies"};
    return std::nullopt;
}

/// Value below which a part of the sorted values lies, straight between neighbours.
double percentile(std::vector<double>& values, double part) {
    const double place = part * static_cast<double>(values.size() - 1);
    const auto below = static_cast<std::size_t>(place);
    const auto at = values.begin() + static_cast<std::ptrdiff_t>(below);
    std::nth_element(values.begin(), at, values.end());
    const double low = *at;
    if (below + 1 >= values.size())
        return low;
    const double high = *std::min_element(at + 1, values.end());
    return low + (place - static_cast<double>(below)) * (high - low);
}

Band90 band_of(std::vector<double>& values) {
    Band90 band;
    band.low = percentile(values, 0.05);
    band.middle = percentile(values, 0.50);
    band.high = percentile(values, 0.95);
    return band;
}

} // namespace

/// Other bodies one after another, and the case solved on each.
struct Spread::Sampler {
    Sampler(SpreadInput of, BodyCase posed)
        : input(std::move(of)), on_typical(std::move(posed)), random(input.seed),
          other(input.column) {}

    tl::expected<void, MechanicsError> begin() {
        if (auto fault = check_input(input))
            return tl::unexpected(*std::move(fault));
        auto typical = body_from(input.column, input.height_m, input.mass_kg, input.measured);
        if (!typical)
            return tl::unexpected(typical.error());
        on_typical.body = *typical;
        if (auto checked = check_case(on_typical); !checked)
            return checked;
        return check_pose(*typical, on_typical.pose);
    }

    tl::expected<void, MechanicsError> next() {
        if (done == 0)
            if (auto begun = begin(); !begun)
                return begun;
        vary(input.column, input.variation, random, other);
        const auto body = body_from(other, input.height_m, input.mass_kg, input.measured);
        if (!body)
            return tl::unexpected(body.error());
        ++done;
        return solve_pose(on_typical, *body, on_typical.pose, nullptr, result);
    }

    SpreadInput input;
    BodyCase on_typical;
    Random random;
    SegmentColumn other;
    BodyResult result; ///< of the last body
    std::size_t done = 0;
};

Spread::Spread(SpreadInput input, BodyCase body_case,
               std::function<double(const BodyResult&)> measure)
    : sampler_(std::make_unique<Sampler>(std::move(input), std::move(body_case))),
      measure_(std::move(measure)) {}
Spread::Spread(Spread&&) noexcept = default;
Spread& Spread::operator=(Spread&&) noexcept = default;
Spread::~Spread() = default;

tl::expected<void, MechanicsError> Spread::go_on(std::size_t bodies) {
    for (std::size_t i = 0; i < bodies && !is_complete(); ++i) {
        if (auto solved = sampler_->next(); !solved)
            return solved;
        values_.push_back(measure_(sampler_->result));
    }
    return {};
}

bool Spread::is_complete() const {
    return !values_.empty() && values_.size() >= sampler_->input.bodies;
}

Band90 Spread::band() {
    return band_of(values_);
}

tl::expected<Band90, MechanicsError>
spread_of(const SpreadInput& input, const BodyCase& body_case,
          const std::function<double(const BodyResult&)>& measure) {
    Spread spread(input, body_case, measure);
    if (const auto done = spread.go_on(std::max<std::size_t>(input.bodies, 1)); !done)
        return tl::unexpected(done.error());
    return spread.band();
}

} // namespace steelyard::mechanics

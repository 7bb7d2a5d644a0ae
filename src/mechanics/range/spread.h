#pragma once
// How much a result depends on the person: the same setup on many plausible bodies.

#include "mechanics/body/solve_body.h"
#include "mechanics/range/random.h"

#include <cstdint>
#include <functional>
#include <memory>
#include <vector>

namespace steelyard::mechanics {

/// Standard deviations of segment parameters among people of one sex, height and mass, relative to
/// the table's value [-]. Common practice, no source: tables by different authors differ from each
/// other by about this much.
struct BodyVariation {
    double length = 0.03;
    double mass = 0.08;
    double com = 0.04;
    double gyration = 0.08;
};

/// What 5, 50 and 95 of 100 bodies stay below.
struct Band90 {
    double low = 0.0;    ///< 5th percentile
    double middle = 0.0; ///< median
    double high = 0.0;   ///< 95th percentile
};

/// Fewest and most bodies of a spread.
inline constexpr std::size_t kLeastBodies = 20;
inline constexpr std::size_t kMostBodies = 1000000;

struct SpreadInput {
    SegmentColumn column; ///< table of the person's sex
    double height_m = 1.75;
    double mass_kg = 75.0;
    std::vector<MeasuredValue> measured; ///< measured values do not vary
    BodyVariation variation;
    std::size_t bodies = 10000; ///< kLeastBodies to kMostBodies
    std::uint64_t seed = 1;
};

/// A spread that is computed body after body: what takes long can be done in parts.
class Spread {
public:
    /// @param measure  takes the result of each body; must return a finite number
    Spread(SpreadInput input, BodyCase body_case, std::function<double(const BodyResult&)> measure);
    Spread(Spread&&) noexcept;
    Spread& operator=(Spread&&) noexcept;
    ~Spread();

    /// Solves the next bodies, up to a number of them.
    /// @return nothing, or what cannot be computed
    tl::expected<void, MechanicsError> go_on(std::size_t bodies);
    bool is_complete() const;
    /// Of all bodies; to be asked for once, when it is complete.
    Band90 band();

private:
    struct Sampler;
    std::unique_ptr<Sampler> sampler_;
    std::function<double(const BodyResult&)> measure_;
    std::vector<double> values_;
};

/// Band of one number of the result, all at once.
/// @param measure  see Spread
tl::expected<Band90, MechanicsError>
spread_of(const SpreadInput& input, const BodyCase& body_case,
          const std::function<double(const BodyResult&)>& measure);

} // namespace steelyard::mechanics

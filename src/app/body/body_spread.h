#pragma once
// The spread of a torque over plausible bodies, through the range, computed beside the window's
// frames.

#include "app/platform/background.h"
#include "scene/plot/curve_plot.h"
#include "setup/body/body_setup.h"

#include <functional>
#include <optional>
#include <string>

namespace steelyard::app {

/// Muscle torque at one hinge over many bodies like the person: 90 of 100 lie in the band.
struct TorqueSpread {
    scene::PlotBand band;       ///< signed like the hinge [N·m], at places evenly spaced
    std::vector<double> median; ///< likewise
    std::string fault;          ///< why there is none; empty when there is
};

/// Bodies of one spread, and places of the range at which it is computed.
inline constexpr std::size_t kSpreadBodies = 10000;
inline constexpr std::size_t kSpreadPlaces = 17;

/// Computes the spread piece by piece, some tenths of a second in all.
/// @return what to call until it gives the spread; each call takes about a millisecond
std::function<std::optional<TorqueSpread>()> spread_through_range(const setup::BodySetup& setup,
                                                                  mechanics::Hinge hinge);

/// The spread of the exercise on the stage, made beside the frames and kept until something else is
/// asked for.
class SpreadKeeper {
public:
    /// Asks for a spread; nothing happens when it is that of the same version.
    void ask(const setup::BodySetup& setup, mechanics::Hinge hinge, int version);
    /// Stops asking.
    void drop();
    /// True when the last spread that was asked for is of this version.
    bool is_of(int version) const;
    /// The spread that was asked for last, once it is there.
    const TorqueSpread* found() const;
    /// True until what was asked for is there.
    bool busy() const;

private:
    int version_ = -1; ///< of what was asked for; negative = nothing
    mutable Background<TorqueSpread> work_;
    mutable std::optional<TorqueSpread> found_;
};

} // namespace steelyard::app

#pragma once
// How the lever on the stage moves: it settles like a damped balance.

namespace steelyard::app {

/// A tilt on its way to rest.
class Settle {
public:
    /// Where it wants to rest [rad]; with `at_once` it is there.
    void aim(double rest_rad, bool at_once);
    /// Moves on by some time [s].
    void advance(double seconds);
    double tilt_rad() const { return tilt_rad_; }
    bool at_rest() const { return tilt_rad_ == rest_rad_ && speed_ == 0.0; }

private:
    double rest_rad_ = 0.0;
    double tilt_rad_ = 0.0;
    double speed_ = 0.0; ///< [rad/s]
};

/// The tilt at which a lever rests that the hand does not balance [rad], counter-clockwise
/// positive: 0 when balanced, up to 10° when one side has no counterpart. It shows which side wins
/// and roughly by how much; a real lever without a stop would turn all the way.
/// @param net_Nm     torque left over, counter-clockwise positive
/// @param larger_Nm  the larger of load and effort torque
double resting_tilt(double net_Nm, double larger_Nm);

} // namespace steelyard::app

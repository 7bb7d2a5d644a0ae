#pragma once
// Where things stand on the graduated beam of an exam: a notch for each question, numbers at some,
// a weight hung below others.

#include <cstddef>

namespace steelyard::app {

/// A beam that lies level. Heights are at 100 % of the text size, from the top of its strip.
struct BeamLayout {
    float left_px = 0.0F;
    float top_px = 0.0F;
    float width_px = 0.0F; ///< of the beam itself
    std::size_t count = 0; ///< of questions
    float scale = 1.0F;    ///< of the text

    /// Distance between two notches [px].
    float pitch_px() const;
    /// Where a notch stands, by its index [px]; between two for a pointer on its way.
    float at(double notch) const;
    /// The notch that a place is nearest to; the beam must have one.
    std::size_t nearest(float x_px) const;
    /// Every so many notches has a number: 5, 10, 20 ..., so that numbers keep apart.
    /// @param number_px  width of the longest number
    std::size_t numbered_every(float number_px) const;
    float y(float at_100_percent) const { return top_px + scale * at_100_percent; }
};

/// What is pressed to go to a question: 44 px high, which a finger finds.
/// Source: WCAG 2.2, success criterion 2.5.5 (enhanced): targets of 44 by 44 CSS pixels.
inline constexpr float kBeamStrip_px = 44.0F;
/// Below it what is pressed to hang a weight.
inline constexpr float kWeightStrip_px = 28.0F;
/// Both together.
inline constexpr float kBeamHeight_px = kBeamStrip_px + kWeightStrip_px;

/// The pointer on the beam on its way from one notch to another.
class BeamPointer {
public:
    /// Where it wants to stand; with `at_once`, or the first time, it is there.
    void aim(std::size_t notch, bool at_once);
    /// Moves on by some time [s].
    void advance(double seconds);
    double at() const { return at_; } ///< notch; between two on its way
    bool at_rest() const { return left_s_ == 0.0; }

private:
    double at_ = -1.0; ///< negative before it was ever aimed
    double target_ = -1.0;
    double left_s_ = 0.0;
};

} // namespace steelyard::app

#pragma once
// What the parts of a person look like around their bones: stacks of sections placed by the pose.
//
// Sizes are for the drawing only and nothing is computed from them: own estimates for an adult of
// 1.75 m and 73 kg, brought to a person's height, and to their mass by girths that grow with the
// square root of mass over height.

#include "mechanics/body/solve_body.h"
#include "scene/figure/loft.h"

#include <array>
#include <vector>

namespace steelyard::scene {

/// The segments of one side, and which way is outward (+1: the right side).
struct BodySide {
    mechanics::Segment upper_arm;
    mechanics::Segment forearm;
    mechanics::Segment hand;
    mechanics::Segment thigh;
    mechanics::Segment shank;
    mechanics::Segment foot;
    mechanics::Segment toes;
    double outward;
};
inline constexpr std::array kBodySides{
    BodySide{mechanics::Segment::right_upper_arm, mechanics::Segment::right_forearm,
             mechanics::Segment::right_hand, mechanics::Segment::right_thigh,
             mechanics::Segment::right_shank, mechanics::Segment::right_foot,
             mechanics::Segment::right_toes, 1.0},
    BodySide{mechanics::Segment::left_upper_arm, mechanics::Segment::left_forearm,
             mechanics::Segment::left_hand, mechanics::Segment::left_thigh,
             mechanics::Segment::left_shank, mechanics::Segment::left_foot,
             mechanics::Segment::left_toes, -1.0}};

/// What a hand does.
enum class HandForm {
    relaxed,
    gripping, ///< closed round something
    flat,     ///< leaning on something
};

using Stack = std::vector<Section>;

/// The parts of one person in one pose.
class Flesh {
public:
    Flesh(const mechanics::Body& body, const mechanics::Placement& placement, const Camera& camera);

    Stack pelvis() const;
    Stack trunk() const;
    /// The shirt between trunk and pelvis, wherever the back is bent to.
    Stack waist() const;
    /// From the neck to the shoulder joint.
    Stack shoulder(const BodySide& side) const;
    /// What spans the armpit when the arm is raised.
    Stack armpit(const BodySide& side) const;
    Stack neck() const;
    Stack head() const;
    Stack nose() const;
    Stack ear(const BodySide& side) const;

    Stack sleeve(const BodySide& side) const;
    Stack upper_arm(const BodySide& side) const; ///< below the sleeve
    Stack elbow(const BodySide& side) const;
    Stack forearm(const BodySide& side) const;
    Stack wrist(const BodySide& side) const;
    /// Palm, thumb and, where they stand apart, the fingers.
    std::vector<Stack> hand(const BodySide& side, HandForm form) const;

    Stack leg_of_shorts(const BodySide& side) const;
    Stack thigh(const BodySide& side) const; ///< below the shorts
    Stack knee(const BodySide& side) const;
    Stack shank(const BodySide& side) const;
    Stack ankle(const BodySide& side) const;
    /// Collar, heel to ball, and the toes.
    std::vector<Stack> shoe(const BodySide& side) const;

    /// A length of a body of 1.75 m brought to this one's height [m].
    double tall(double length_m) const { return tall_ * length_m; }
    /// A girth brought to this body's height and mass [m].
    double stout(double girth_m) const { return stout_ * girth_m; }

private:
    const mechanics::Body& body_;
    const mechanics::Placement& placement_;
    const Camera& camera_;
    double tall_;
    double stout_;
    double shoulders_; ///< breadth, as a part of what goes with the height
};

} // namespace steelyard::scene

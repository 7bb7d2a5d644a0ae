#pragma once
// A muscle and its bone as a lever: which class, about which pivot, of which free body. The class
// comes from where axis, effort and load lie along the bone, never from a label. One rule for every
// joint and muscle:
//
//   - The places are read along the bone that the joint carries: the thigh at the hip, from heel to
//     toes at the ankle.
//   - What acts on a part beyond this bone (the dumbbell, for the upper arm; the ground, for the
//     thigh) reaches it at its far end, and stands there in the order, however the parts beyond are
//     bent.
//   - A load is what the muscle works against; a force that helps it gives no class where another
//     opposes it.
//   - The muscles of spine and neck run beside the bones, from one to the next, so that their lever
//     is the vertebra: the disc between the muscle on one side and the load that bends towards the
//     other. That is a first-class lever wherever the load is held.
//
// The same foot on tiptoe is a lever of two classes, and both are right: about the ankle the muscle
// at the heel and the ground at the ball lie on either side (first class); about the ball of the
// foot the load is the ankle joint's push, between ball and heel (second class). The forces are the
// same and balance about both. Only when the load about the ball is taken to be the body weight
// alone do the numbers come out wrong, because the calf itself pulls the leg down on the ankle.

#include "mechanics/lever/lever_class.h"
#include "mechanics/muscle/free_body.h"
#include "mechanics/muscle/muscle_solve.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::mechanics {

/// The lever seen about one pivot.
struct MuscleLever {
    std::string free_body; ///< what is cut free
    Vec3 pivot_m = Vec3::Zero();
    NamedForce effort;                    ///< the muscle's pull
    std::vector<NamedForce> loads;        ///< what it works against
    Classification of_whole;              ///< by all the loads; none when they disagree
    std::vector<Classification> of_loads; ///< by each load alone, in order
    double effort_arm_m = 0.0;            ///< moment arm of the effort, >= 0
    double effort_torque_Nm = 0.0;        ///< about the pivot
    double load_torque_Nm = 0.0;          ///< of the loads above, about the pivot
    /// Of every force on the free body, muscles, weights and joint reaction too, about the pivot:
    /// zero when the solution is in balance [N·m].
    double net_torque_Nm = 0.0;
    /// |resultant load| / effort; empty without tension.
    std::optional<double> advantage;
};

/// The lever about the joint at which the body is cut free. The loads are the body's loads; its own
/// weight counts as load only where no other opposes the muscle, as with the bench levers.
/// @param muscle_index which of the pulls is the effort
/// @return nothing when the muscle's line is not known, so that its place along the bone is not
///         either
std::optional<MuscleLever> lever_about_joint(const FreeBody& body, const std::vector<Pull>& pulls,
                                             const MuscleSolution& solution,
                                             std::size_t muscle_index);

/// The same free body seen about a place where something outside supports it (the ball of the
/// foot): the joint's reaction, found from the balance of all forces, is now the load.
/// @param support_index which of the body's loads is the support
/// @return nothing when the joint reaction or the muscle's line is not known
std::optional<MuscleLever> lever_about_support(const FreeBody& body, const std::vector<Pull>& pulls,
                                               const MuscleSolution& solution,
                                               std::size_t muscle_index, std::size_t support_index);

} // namespace steelyard::mechanics

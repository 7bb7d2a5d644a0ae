#pragma once
// A published table of body segment parameters, as values. Tables are data and are read from files
// by another layer; mechanics only says what a table holds.

#include "mechanics/body/segments.h"

#include <string>
#include <vector>

namespace steelyard::mechanics {

enum class Sex { female, male };

/// One row of a table. Lengths are those of the table's reference body; a body of another height
/// gets them in proportion.
struct SegmentRow {
    double length_m = 0.0;      ///< between the row's end points, reference body [m]
    double mass_fraction = 0.0; ///< of body mass, one side [-]
    /// Centre of mass from the proximal (for head and trunk: upper; for the foot: rear) end point,
    /// fraction of the length [-].
    double com_fraction = 0.0;
    /// Radii of gyration about the centre of mass, fractions of the length [-], about the axes of
    /// the segment's frame. x = sagittal axis, y = longitudinal, z = transverse; for the foot
    /// x = longitudinal, y = sagittal, z = transverse.
    Vec3 gyration = Vec3::Zero();
};

/// The rows for one sex, and the places of the joints that the rows do not give.
struct SegmentColumn {
    double reference_height_m = 1.0; ///< 1 when the table gives fractions of stature

    SegmentRow head;      ///< head and neck, from the vertex down to the neck joint
    SegmentRow upper_arm; ///< shoulder to elbow
    SegmentRow forearm;   ///< elbow to wrist
    SegmentRow hand;      ///< wrist to the end point that the table measures the hand by
    SegmentRow thigh;     ///< hip to knee
    SegmentRow shank;     ///< knee to ankle
    SegmentRow foot;      ///< heel to toe tip

    /// The trunk in one or more slices, from the top down to midway between the hips. Where the
    /// lumbar joint cuts a slice, its mass is divided as if spread along its length with a density
    /// that changes linearly, which keeps the slice's mass and centre of mass.
    std::vector<SegmentRow> trunk;

    double lumbar_height_m = 0.0;         ///< L5/S1 above the hips [m]
    double shoulder_height_m = 0.0;       ///< shoulder joints above the hips [m]
    double neck_height_m = 0.0;           ///< neck joint above the hips [m]
    double shoulder_half_breadth_m = 0.0; ///< shoulder joint from the middle [m]
    double hip_half_breadth_m = 0.0;      ///< hip joint from the middle [m]
    double ankle_height_m = 0.0;          ///< ankle joint above the sole [m]
    double heel_behind_ankle_m = 0.0;     ///< rearmost point of the heel behind the ankle [m]
    double ball_from_heel_m = 0.0;        ///< ball of the foot before the heel [m]
    double grip_from_wrist_m = 0.0;      ///< middle of what a closed hand holds, from the wrist [m]
    double fingertip_from_wrist_m = 0.0; ///< tip of the middle finger, from the wrist [m]
};

struct SegmentTable {
    std::string name;   ///< "de Leva 1996"
    std::string source; ///< the full citation, shown beside results
    SegmentColumn female;
    SegmentColumn male;
};

} // namespace steelyard::mechanics

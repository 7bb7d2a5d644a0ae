#pragma once
// The shape of the body tree as compile-time tables: who hangs on whom, which hinges a joint has
// and about which axes they turn. Parents stand before their children.

#include "mechanics/body/segments.h"

namespace steelyard::mechanics::tree {

using Index = unsigned char;

/// Parent of each segment; the pelvis (0) names itself.
inline constexpr std::array<Index, kSegmentCount> kParent{0, 0, 1,  1,  3, 4,  1,  6, 7,
                                                          0, 9, 10, 11, 0, 13, 14, 15};
inline constexpr std::array<Index, kSegmentCount> kFirstHinge{0,  0,  3,  6,  9,  11, 13, 16, 18,
                                                              20, 23, 24, 26, 27, 30, 31, 33};
inline constexpr std::array<Index, kSegmentCount> kHingesOf{0, 3, 3, 3, 2, 2, 3, 2, 2,
                                                            3, 1, 2, 1, 3, 1, 2, 1};

/// Axis of each hinge (0, 1, 2: x, y, z of the frame left by the joint's earlier hinges) and the
/// sign of its positive turn. x and y turns change sign between right and left, z turns do not.
struct Turn {
    Index axis;
    signed char sign;
};
inline constexpr std::array<Turn, kHingeCount> kTurn{{
    {2, -1}, {0, 1},  {1, -1},                                     // lumbar
    {2, -1}, {0, 1},  {1, -1},                                     // neck
    {2, 1},  {0, -1}, {1, 1},  {2, 1},  {1, 1},  {2, 1},  {0, -1}, // right arm
    {2, 1},  {0, 1},  {1, -1}, {2, 1},  {1, -1}, {2, 1},  {0, 1},  // left arm
    {2, 1},  {0, -1}, {1, 1},  {2, -1}, {2, 1},  {0, 1},  {2, 1},  // right leg
    {2, 1},  {0, 1},  {1, -1}, {2, -1}, {2, 1},  {0, -1}, {2, 1},  // left leg
}};

} // namespace steelyard::mechanics::tree

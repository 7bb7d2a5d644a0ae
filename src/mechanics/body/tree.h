#pragma once
// The shape of the body tree as compile-time tables: who hangs on whom, which hinges a joint has
// and about which axes they turn. Parents stand before their children.

#include "mechanics/body/segments.h"

namespace steelyard::mechanics::tree {

using Index = unsigned char;

/// Parent of each segment; the pelvis (0) names itself.
inline constexpr std::array<Index, kSegmentCount> kParent{0, 0, 1,  1,  3,  4, 5,  1,  7, 8,
                                                          9, 0, 11, 12, 13, 0, 15, 16, 17};
inline constexpr std::array<Index, kSegmentCount> kFirstHinge{
    0, 0, 3, 6, 9, 12, 14, 16, 19, 22, 24, 26, 29, 30, 32, 33, 36, 37, 39};
inline constexpr std::array<Index, kSegmentCount> kHingesOf{0, 3, 3, 3, 3, 2, 2, 3, 3, 2,
                                                            2, 3, 1, 2, 1, 3, 1, 2, 1};

/// Axis of each hinge (0, 1, 2: x, y, z of the frame left by the joint's earlier hinges) and the
/// sign of its positive turn. x and y turns change sign between right and left, z turns do not.
struct Turn {
    Index axis;
    signed char sign;
};
inline constexpr std::array<Turn, kHingeCount> kTurn{{
    {2, -1}, {0, 1},  {1, -1},                                     // lumbar
    {2, -1}, {0, 1},  {1, -1},                                     // neck
    {1, 1},  {0, -1}, {2, 1},                                      // right shoulder girdle
    {2, 1},  {0, -1}, {1, 1},  {2, 1},  {1, 1},  {2, 1},  {0, -1}, // right arm
    {1, -1}, {0, 1},  {2, 1},                                      // left shoulder girdle
    {2, 1},  {0, 1},  {1, -1}, {2, 1},  {1, -1}, {2, 1},  {0, 1},  // left arm
    {2, 1},  {0, -1}, {1, 1},  {2, -1}, {2, 1},  {0, 1},  {2, 1},  // right leg
    {2, 1},  {0, 1},  {1, -1}, {2, -1}, {2, 1},  {0, -1}, {2, 1},  // left leg
}};

} // namespace steelyard::mechanics::tree

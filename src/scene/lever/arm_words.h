#pragma once
// The words of a moment arm on a lever.

#include "scene/marks/force_marks.h"
#include "scene/marks/label_board.h"

#include <string>
#include <vector>

namespace steelyard::scene {

/// A drawn moment arm and its length as it is written.
struct ArmWords {
    ArmMark arm;
    Role role = Role::load;
    std::string length;
};

/// Writes "moment arm" and its length along an arm: in one line, or in two where one would stand
/// over the arm on the other side of the axis; beyond its ends or beside it where neither is free.
void add_arm_words(const ArmWords& words, double text_scale, LabelBoard& board,
                   std::vector<Shape>& shapes);

} // namespace steelyard::scene

#pragma once
// Published data that families may build on: tables of body segments and muscles' moment arms.

#include "mechanics/muscle/muscle.h"
#include "setup/segment_table_file.h"

#include <vector>

namespace steelyard::problems {

struct Published {
    std::vector<setup::NamedSegmentTable> tables;
    std::vector<mechanics::Muscle> muscles;
};

} // namespace steelyard::problems

#pragma once
// Data that families may build on: published tables of body segments, and muscles with their moment
// arms, each of which says by its mark whether it was published or is from memory.

#include "mechanics/muscle/muscle.h"
#include "setup/body/segment_table_file.h"

#include <vector>

namespace steelyard::problems {

struct Published {
    std::vector<setup::NamedSegmentTable> tables;
    std::vector<mechanics::Muscle> muscles;
};

} // namespace steelyard::problems

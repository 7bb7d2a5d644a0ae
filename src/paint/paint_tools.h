#pragma once
// All that this layer makes, as values to lend to those who only know `publish`.

#include "publish/tools.h"

namespace steelyard::paint {

/// Pages as pixels, PDF, PNG and compressed packages, by Cairo, Pango and libzip.
publish::Tools paint_tools();

} // namespace steelyard::paint

#pragma once
// Reads the values that a quantity can be drawn from: "10..60 kg step 5", "30, 40, 60 °".

#include "problems/bank/family.h"

#include <tl/expected.hpp>

#include <string>
#include <string_view>

namespace steelyard::problems {

/// A draw as written, before its quantity is known.
struct WrittenDraw {
    Draw draw;
    const setup::Unit* unit = nullptr; ///< null for a pure number
};

/// @return the draw, or a sentence on what is wrong and how to mend it
tl::expected<WrittenDraw, std::string> read_draw(std::string_view text, setup::Dimension wanted);

/// More values than this are a typing slip.
inline constexpr std::int64_t kMaxDrawValues = 100000;

} // namespace steelyard::problems

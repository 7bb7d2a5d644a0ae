#pragma once
// The body's column: which joint carries most, how it is shared, what the muscles must pull.

#include "app/body/body_model.h"
#include "app/frame/layout.h"
#include "app/look/style.h"

#include <optional>

namespace steelyard::app {

/// What was asked for in the column.
struct BodyColumnOutcome {
    std::optional<std::size_t> chosen_axis;
    bool play = false; ///< start or stop
};

BodyColumnOutcome draw_body_column(const Style& style, const Layout& layout, const BodyModel& model,
                                   setup::UnitSystem units, bool playing);

} // namespace steelyard::app

#pragma once
// The builder: the column in which an exercise is made, beside its figure. Each row says what there
// is and unfolds what else there could be.

#include "app/body/body_model.h"
#include "app/body/column_faces.h"
#include "app/build/build_numbers.h"
#include "app/frame/layout.h"
#include "app/look/style.h"
#include "app/widgets/typed_field.h"

#include <optional>
#include <string_view>

namespace steelyard::app {

enum class BuildRowKind { person, carried, load, add_load, movement, axes, seen_from };

/// One row of the builder.
struct BuildRow {
    BuildRowKind kind = BuildRowKind::person;
    std::size_t index = 0; ///< of a load

    bool operator==(const BuildRow&) const = default;
};

/// What is unfolded and typed between frames.
struct BuildColumnState {
    std::optional<BuildRow> open;
    std::optional<BuildNumber> number; ///< that is being typed
    TypedField typed;
};

/// What the builder shows besides the model.
struct BuildShown {
    setup::UnitSystem units = setup::UnitSystem::si;
    bool playing = false;
    const std::vector<setup::BodySetup>& stances; ///< to begin from, or to change to
    std::vector<std::string> faults;              ///< why nobody stands like this
    std::string_view notice;                      ///< of what was copied or written; may be empty
};

/// What was asked for in the column.
struct BuildWishes {
    std::optional<BodyIntent> intent;
    bool play = false;                  ///< start or stop
    ColumnFace face = ColumnFace::make; ///< the one that is to be shown
};

BuildWishes draw_build_column(const Style& style, const Layout& layout, const BodyModel& model,
                              const BuildShown& shown, BuildColumnState& state);

} // namespace steelyard::app

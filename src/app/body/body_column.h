#pragma once
// The body's column: which joint carries most, how it is shared, what the muscles must pull; each
// reading unfolds how it was computed.

#include "app/body/body_picture.h"
#include "app/body/body_readings.h"
#include "app/body/body_spread.h"
#include "app/body/column_faces.h"
#include "app/frame/layout.h"
#include "app/kept.h"
#include "app/look/style.h"
#include "app/widgets/steps_box.h"
#include "app/widgets/typed_chips.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::app {

/// What the column's words are made from.
struct ReadFrom {
    BodyStamp model;
    setup::UnitSystem units = setup::UnitSystem::si;

    bool operator==(const ReadFrom&) const = default;
};
struct StepsFrom {
    ReadFrom read;
    words::BodyQuantity id{};

    bool operator==(const StepsFrom&) const = default;
};

/// What is unfolded between frames, and the words that are kept.
struct BodyColumnState {
    std::optional<words::BodyQuantity> unfolded;
    bool spread = false;   ///< how much bodies differ is asked for
    bool one_side = false; ///< the bars tell one side of a paired joint, not both together
    Kept<ReadFrom, BodyReadings> readings;
    Kept<StepsFrom, std::vector<StepLines>> steps;
    Kept<ReadFrom, std::string> spread_words; ///< of a spread that is there
    TypedChipsState arms;                     ///< the moment arm that is being typed
};

/// What the column shows besides the model.
struct BodyColumnShown {
    setup::UnitSystem units = setup::UnitSystem::si;
    bool playing = false;
    const TorqueSpread* spread = nullptr; ///< null while it is not there
    std::string_view notice;              ///< of what was copied or written; may be empty
    BodyLooks looks;
};

/// What was asked for in the column.
struct BodyColumnWishes {
    std::optional<std::size_t> chosen_axis;
    std::optional<BodyIntent> intent;
    bool play = false;                      ///< start or stop
    bool close_up = false;                  ///< show the chosen joint near by, or all again
    bool resting_muscles = false;           ///< show the muscles that rest, or hide them
    bool as_lever = false;                  ///< take the chosen joint to the bench
    ColumnFace face = ColumnFace::readings; ///< the one that is to be shown
};

/// What the column says of the model, made when it is first asked for.
const BodyReadings& readings_of(const BodyModel& model, setup::UnitSystem units,
                                BodyColumnState& state);

BodyColumnWishes draw_body_column(const Style& style, const Layout& layout, const BodyModel& model,
                                  const BodyColumnShown& shown, BodyColumnState& state);

/// Unfolds the next reading, or the one before; after the last none is unfolded.
void unfold_next(const BodyReadings& readings, int step, BodyColumnState& state);

} // namespace steelyard::app

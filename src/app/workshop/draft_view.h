#pragma once
// The page on which a lesson is made: its steps at the left, the chosen one's stage in the middle,
// its words at the right.

#include "app/look/style.h"
#include "app/platform/window.h"
#include "app/workshop/draft_model.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

/// What is on the page only: texts as they stand in their fields.
struct DraftViewState {
    std::vector<std::string> fields; ///< by DraftField
    int gesture = 0;                 ///< one for each run of typing in a field
    int typed_in = -1;               ///< the field that gesture belongs to
    int wants_keyboard = -1;         ///< the field that is to take the keyboard
};

/// What is asked of the place around the page.
/// Showing begins at the chosen step.
enum class DraftWish { none, leave, show, add_lever, add_exercise };

struct DraftFrame {
    std::vector<DraftIntent> intents;
    DraftWish wish = DraftWish::none;
    /// The chosen step's stage, for the middle of the page; empty when there is no step.
    scene::Drawing stage;
    scene::Point stage_at_px = scene::Point::Zero();
};

/// Draws the page below the row of places and reads its keys.
DraftFrame draw_draft(const Style& style, const scene::Point& window_px,
                      const std::vector<KeyPress>& keys, const DraftModel& draft,
                      const std::vector<mechanics::Muscle>& muscles, setup::UnitSystem units,
                      DraftViewState& ui);

} // namespace steelyard::app

#pragma once
// What every place of the window is to the application: something that runs a frame and is kept
// from one run to the next. What only some places can do stands in abilities.h.

#include "app/frame/frame_input.h"
#include "app/frame/layout.h"
#include "app/look/style.h"
#include "app/paint/placed_drawing.h"
#include "app/place/library.h"
#include "app/saved/saved_work.h"
#include "lesson/lesson.h"
#include "publish/tools.h"
#include "setup/setup.h"

#include <filesystem>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace steelyard::app {

/// The places to be, in the order of the row at the top.
enum class PlaceName { start, bench, body, side_by_side, practice, workshop, handout };
inline constexpr std::size_t kPlaces = 7;

/// What all places share.
struct Surroundings {
    Library library;
    SavedWork saved;
    std::filesystem::path record_folder; ///< of the learners; empty = the usual one
    publish::Tools tools;                ///< what this edition can make
    setup::UnitSystem units = setup::UnitSystem::si;
    bool less_motion = false; ///< nothing is animated
};

/// What a place is given in a frame.
struct PlaceInput {
    const Style& style;
    Layout layout;
    scene::Point window_px = scene::Point::Zero();
    FrameInput frame;
    Surroundings& around;
};

// --- what a place asks of the window -------------------------------------------------------------

/// To go to another place, and to a part of it where the place has parts.
struct GoTo {
    PlaceName place;
    std::string part;
};
/// To be shown around.
struct LookAround {};
/// To be shown what is on the stage of another place.
struct BringFrom {
    PlaceName place;
};
/// To have a setup shown at the place where such setups stand.
struct ShowSetup {
    setup::Setup setup;
};
using PlaceWish = std::variant<GoTo, LookAround, BringFrom, ShowSetup>;

/// What came of a frame of a place.
struct PlaceFrame {
    scene::Drawing drawing;               ///< of the stage; painted under what was drawn with ImGui
    const scene::Drawing* kept = nullptr; ///< the same where the place keeps it between frames
    std::vector<PlacedDrawing> pictures;  ///< smaller ones upon it
    std::optional<PlaceWish> wish;
    bool changed = false; ///< there is something new to keep

    const scene::Drawing& stage() const { return kept != nullptr ? *kept : drawing; }
};

/// What a place takes of the window.
struct PlaceShape {
    bool covers_window = false; ///< all of it, without the row of places
    bool has_column = true;     ///< false: what is drawn takes the column's part, too
    /// Enlargement of the type that the place needs, whatever the person has chosen; empty =
    /// theirs.
    std::optional<double> type_scale = std::nullopt;
};

class Place {
public:
    Place() = default;
    Place(const Place&) = delete;
    Place& operator=(const Place&) = delete;
    virtual ~Place() = default;

    /// Runs one frame: input first, so that what is drawn already shows its result.
    virtual PlaceFrame run(const PlaceInput& input) = 0;

    /// Called each time before the place is shown.
    virtual void enter(Surroundings& /*around*/) {}
    /// The text size changed: what was fitted to it has to be fitted anew.
    virtual void refit() {}
    /// True while frames are owed although nothing comes in.
    virtual bool moving() const { return false; }
    /// Seconds after a frame at which the next is owed although nothing comes in; empty = none.
    virtual std::optional<double> next_frame_in_s() const { return std::nullopt; }
    /// What it takes of the window.
    virtual PlaceShape shape(const scene::Point& /*window_px*/) const { return {}; }
    /// True for a key that means something here although the window has a use for it.
    virtual bool claims(const KeyPress& /*key*/) const { return false; }
    /// Keeps what is here for the next run.
    /// @return why it could not be kept; empty when it was
    virtual std::string keep(const SavedWork& /*saved*/) const { return {}; }
};

} // namespace steelyard::app

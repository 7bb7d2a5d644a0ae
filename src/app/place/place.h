#pragma once
// What every place of the window is to the application: something that runs a frame, and may be
// able to undo, to hold a setup and to be kept from one run to the next.

#include "app/frame/frame_input.h"
#include "app/frame/layout.h"
#include "app/look/style.h"
#include "app/paint/placed_drawing.h"
#include "app/place/library.h"
#include "app/saved/saved_work.h"
#include "lesson/lesson.h"
#include "publish/tools.h"

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
/// To go where a setup belongs and put it there.
struct ShowSetup {
    setup::Setup setup;
};
/// To be shown around.
struct LookAround {};
/// To be shown what is on the stage of another place.
struct BringFrom {
    PlaceName place;
};
using Errand = std::variant<GoTo, ShowSetup, LookAround, BringFrom>;

/// What came of a frame of a place.
struct PlaceFrame {
    scene::Drawing drawing;               ///< of the stage; painted under what was drawn with ImGui
    const scene::Drawing* kept = nullptr; ///< the same where the place keeps it between frames
    std::vector<PlacedDrawing> pictures;  ///< smaller ones upon it
    std::optional<Errand> errand;
    bool changed = false; ///< there is something new to keep

    const scene::Drawing& stage() const { return kept != nullptr ? *kept : drawing; }
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
    /// Goes to a part of the place by its word, where it has parts.
    virtual void enter_part(const std::string& /*part*/) {}
    /// The text size changed: what was fitted to it has to be fitted anew.
    virtual void refit() {}
    /// True while frames are owed although nothing comes in.
    virtual bool moving() const { return false; }
    /// Seconds after a frame at which the next is owed although nothing comes in; empty = none.
    virtual std::optional<double> next_frame_in_s() const { return std::nullopt; }
    /// Enlargement of the type that the place needs, whatever the person has chosen; empty =
    /// theirs.
    virtual std::optional<double> own_type_scale(const scene::Point& /*window_px*/) const {
        return std::nullopt;
    }
    /// True while the place has the whole window, without the row of places.
    virtual bool covers_window() const { return false; }
    /// False for a place that takes the column's part of the window, too.
    virtual bool has_column() const { return true; }
    /// True for a key that means something here although the window has a use for it.
    virtual bool claims(const KeyPress& /*key*/) const { return false; }

    virtual bool can_undo() const { return false; }
    virtual bool can_redo() const { return false; }
    virtual void undo() {}
    virtual void redo() {}

    /// What can be chosen from here, as a word; null = nothing can.
    virtual const char* shelf_word() const { return nullptr; }
    virtual void open_shelf() {}

    /// Puts a setup on the stage, where the place has one for its kind.
    virtual void show(const setup::Setup& /*setup*/, Surroundings& /*around*/) {}
    /// What is on the stage now, for other places to take up; empty where there is no stage.
    virtual std::optional<setup::Setup> shown() const { return std::nullopt; }
    /// The same with where a body stands on its path and which axis is looked at.
    virtual std::optional<lesson::LessonStage> stage() const {
        auto setup = shown();
        if (!setup)
            return std::nullopt;
        return lesson::LessonStage{*std::move(setup)};
    }
    /// Takes up what another place has shown.
    virtual void take_up(const lesson::LessonStage& stage, Surroundings& around) {
        show(stage.setup, around);
    }
    /// Takes up a lesson that was read from a file, where the place shows lessons.
    virtual void show_lesson(const lesson::Lesson& /*lesson*/,
                             const std::filesystem::path& /*path*/, Surroundings& /*around*/) {}
    /// Takes up the blueprint of a file, where the place makes sheets.
    virtual void show_blueprint(const std::filesystem::path& /*path*/) {}

    // --- further windows, such as the presenter's ---
    /// True when something came in for a further window since the last time.
    virtual bool beside_stirred() { return false; }
    /// Seconds until a further window has something new to show by itself; empty = never.
    virtual std::optional<double> beside_due_s() const { return std::nullopt; }
    /// Draws further windows. The main one is current before and after.
    /// @return what was drawn, to be narrated; null when nothing was
    virtual const Narration* run_beside(const Window& /*main*/, const Style& /*style*/) {
        return nullptr;
    }

    /// Keeps what is here for the next run.
    /// @return why it could not be kept; empty when it was
    virtual std::string keep(const SavedWork& /*saved*/) const { return {}; }
};

} // namespace steelyard::app

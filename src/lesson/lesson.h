#pragma once
// A lesson for a room: a row of steps, each with a setup on the stage, a sentence, what the room is
// to predict, and what is then revealed. The format is taught in assets/lessons/README.md.

#include "setup/setup.h"

#include <filesystem>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace steelyard::lesson {

/// Ending of the names of lesson files.
inline constexpr std::string_view kLessonEnding = ".lesson.toml";

/// What the stage shows beyond the bare thing, and a step can hide until its reveal.
enum class StageMark {
    axis,       ///< where it turns
    loads,      ///< sizes of the loads and resistances
    effort,     ///< size of the effort
    arms,       ///< moment arms
    lines,      ///< lines of action
    torques,    ///< torques and which way they turn
    muscles,    ///< muscles and their forces
    reaction,   ///< force of the axis or the ground
    own_weight, ///< weight of the lever itself
    strip,      ///< the balance strip
};
using StageMarks = std::set<StageMark>;

/// "own weight": how files spell a mark.
std::string_view name_of(StageMark mark);

/// What must be hidden together with some marks, so that these cannot be guessed from the rest:
/// whoever sees the reaction knows the effort.
StageMarks with_tell_tales(const StageMarks& hidden);

/// What the room is asked for.
enum class PredictionKind {
    none,   ///< only shown
    number, ///< numbers with a unit, called out and typed
    choice, ///< the room settles on one of several answers
    hands,  ///< hands are counted for each of several answers
};

struct Prediction {
    PredictionKind kind = PredictionKind::none;
    std::vector<std::string> choices; ///< of a choice or a show of hands: two to five
    /// Which of the choices is right: its text, or a text with quantities in braces that becomes
    /// one of them. Empty where there is no right one.
    std::string answer;
    std::string of; ///< of a number: the quantity that is sought
};

/// One change of the setup for a step.
struct LessonChange {
    /// One value, as it was written.
    struct Value {
        std::string key; ///< "at", "mass", "direction", ...
        setup::WrittenQuantity written;
    };
    std::string part; ///< a load, "effort", "axis", "own weight"; a resistance, a hinge
    std::vector<Value> values;
    int line = 0; ///< of the file; 0 = made in the window
};

/// One value of a step's stage that whoever reads the step moves between two ends.
struct LessonMove {
    std::string part;               ///< as in a change; "progress" alone: along a body's path
    std::string key;                ///< as in a change; empty with "progress"
    setup::WrittenQuantity from;    ///< of the least end; of "progress" a part of the path
    setup::WrittenQuantity to;      ///< of the other; either may be the larger
    std::vector<std::string> shows; ///< quantities that are read while it moves: one to three
    int line = 0;                   ///< of the file; 0 = made in the window
};

/// What stands on the stage in a step, ready to be solved and drawn.
struct LessonStage {
    setup::Setup setup;
    double progress = 0.0;                        ///< of a body: where on its path, 0 to 1
    std::size_t axis = 0;                         ///< of a body: which of its axes is looked at
    setup::BodyView view = setup::BodyView::side; ///< of a body
};

struct LessonStep {
    std::string title;               ///< a few words for lists
    std::string setup_name;          ///< of a file; empty when own or as before
    std::optional<setup::Setup> own; ///< a setup that the lesson itself holds
    std::vector<LessonChange> changes;
    std::optional<double> progress; ///< set by the step, 0 to 1
    std::string axis; ///< name of the hinge to look at; empty = the first, or as before
    std::optional<setup::BodyView> view;
    std::string prompt; ///< one sentence to the room
    Prediction prediction;
    std::optional<StageMarks> hide; ///< until the reveal; empty = what the prediction asks for
    StageMarks leave_out;           ///< not shown at all
    std::string reveal;             ///< one sentence, quantities in braces
    std::string key;                ///< the quantity that stands large at the reveal; may be empty
    std::string also;               ///< what the step's term is also called; may be empty
    std::optional<LessonMove> move; ///< after the reveal
    std::string note;               ///< for the presenter only
    std::optional<double> time_s;   ///< planned [s]

    LessonStage stage; ///< what all this makes of the setup

    bool as_before() const { return setup_name.empty() && !own; }
    bool has_reveal() const { return prediction.kind != PredictionKind::none || !reveal.empty(); }
};

struct Lesson {
    setup::SetupHead head; ///< its note is for the presenter, before the first step
    std::vector<LessonStep> steps;
};

/// What a step hides until its reveal, tell-tales included.
StageMarks hidden_marks(const LessonStep& step);

/// Where the setups that a lesson names are looked for: beside it, then those that come with the
/// program, then the person's own.
/// @param lesson_folder  empty for a lesson that is no file yet
std::vector<std::filesystem::path> setup_folders(const std::filesystem::path& lesson_folder);

/// Reads a lesson from a text. Every step of a lesson that is returned can be solved, and every
/// quantity that it names exists.
/// @param file     the name that errors are to give
/// @param folders  where the setups are, see setup_folders
tl::expected<Lesson, setup::InputError>
parse_lesson(std::string_view text, const std::string& file,
             const std::vector<std::filesystem::path>& folders);

/// Reads a lesson from a file.
tl::expected<Lesson, setup::InputError> read_lesson(const std::filesystem::path& path);

/// The lesson as the text of a file; own setups are written into it, so that it is whole by itself.
/// Comments are not kept.
std::string write_lesson(const Lesson& lesson);

/// Makes a step's stage from its setup and changes.
/// @param before  stage of the step before; null for the first
/// @param base    the setup that the step names; null where it holds its own or stays as before
/// @return the stage, or what cannot be (its key is below the step)
tl::expected<LessonStage, setup::InputError>
make_stage(const LessonStep& step, const LessonStage* before, const setup::Setup* base);

/// A file of a folder: a lesson, or what is wrong with it.
struct LessonListing {
    std::filesystem::path path;
    tl::expected<Lesson, setup::InputError> lesson;
};

/// All lesson files of a folder, in their order and then by name; the broken ones at the end.
tl::expected<std::vector<LessonListing>, setup::InputError>
list_lessons(const std::filesystem::path& folder);

} // namespace steelyard::lesson

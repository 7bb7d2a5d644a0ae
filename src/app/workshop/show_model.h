#pragma once
// A lesson as it runs before a room: which step, what was predicted, what is revealed. No window.

#include "lesson/lesson_quantity.h"

#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace steelyard::app {

/// What the room has said in a step, and how far the step has come.
struct StepProgress {
    bool revealed = false;
    std::vector<int> hands;            ///< for each choice of a show of hands
    std::optional<std::size_t> picked; ///< of a choice
    std::vector<double> guesses_SI;    ///< numbers called out
    double spent_s = 0.0;              ///< on this step, all visits together
};

/// What the room's screen shows.
struct ShownStep {
    std::size_t step = 0;
    StepProgress progress;
};

/// A step's words, filled in from the solver.
struct StepWords {
    std::string prompt;
    std::string reveal;
    std::optional<std::size_t> right; ///< which choice
    /// The number that stands large at the reveal; empty = none.
    std::optional<setup::QuantityText> key;
    std::string key_name; ///< "effort"
    /// Of a number that is asked for: its value and kind.
    std::optional<lesson::QuantityValue> sought;
};

/// What is typed within this time after letters that meant nothing here belongs to them [s]: a hand
/// that types a number too late, "25 ft lbf", gives no commands.
inline constexpr double kQuiet_s = 1.0;

struct ShowModel {
    std::shared_ptr<const lesson::Lesson> lesson; ///< never changes while it is shown
    std::vector<lesson::SolvedStage> solved;      ///< one for each step
    std::shared_ptr<const std::vector<mechanics::Muscle>> muscles;
    setup::UnitSystem units = setup::UnitSystem::si;

    std::size_t step = 0;
    std::vector<StepProgress> progress; ///< one for each step
    std::size_t row = 0;                ///< the answer whose hands the digits count
    std::string entry;                  ///< a number on its way: all that was typed since its digit
    /// Since something was typed that was no command; what is typed soon after is none either.
    double since_typed_s = kQuiet_s;
    bool asks_to_leave = false;
    std::string message; ///< why the last entry was refused
    bool blank = false;
    std::optional<ShownStep> frozen; ///< what the room goes on seeing

    const lesson::LessonStep& lesson_step() const { return lesson->steps[step]; }
    const StepProgress& now() const { return progress[step]; }
    bool at_end() const { return step + 1 == lesson->steps.size(); }
    /// Digits begin a number, or are counted as hands.
    bool takes_number() const;
    /// A number may be coming: letters are no commands.
    bool awaits_number() const;
    /// What the room sees now.
    ShownStep shown() const { return frozen ? *frozen : ShownStep{step, progress[step]}; }
    lesson::QuantitySource source(std::size_t index) const {
        return {&solved[index], index > 0 ? &solved[index - 1] : nullptr, muscles.get()};
    }
};

/// Makes a lesson ready. The lesson must be one that was read: it has steps, all of them solvable.
ShowModel make_show(lesson::Lesson lesson, std::vector<mechanics::Muscle> muscles,
                    setup::UnitSystem units);

/// The words of a step, from the same solution that is drawn.
StepWords words_of(const ShowModel& show, std::size_t step);

/// The unit in which a step's numbers are called out: "N", empty for pure numbers and words.
std::string asked_unit(const ShowModel& show, std::size_t step);

// --- intents -------------------------------------------------------------------------------------

/// On: the reveal first, then the next step.
struct GoOn {};
/// To the step before; it stands there as it was left.
struct GoBack {};
struct GoToStep {
    std::size_t step = 0;
};
/// Hides again what was revealed, or reveals it.
struct TurnReveal {};
/// A character that is no command: of a number, of an answer, or a slip.
struct TypeCharacter {
    unsigned character = 0; ///< Unicode
};
/// Ends an entry; without one it does nothing, so that one too many does no harm.
struct Enter {};
/// Takes back the last character, or the last that was entered.
struct TakeBack {};
/// Moves the answer that is counted: +1 down, -1 up.
struct MoveRow {
    int by = 1;
};
/// A hand more for an answer, or less; or the answer the room settles on.
struct PressAnswer {
    std::size_t index = 0;
    int by = 1;
};
struct TurnBlank {};
struct TurnFreeze {};
/// The first of the two that leave a lesson; any other intent takes it back.
struct AskToLeave {};
struct Stay {};
/// Time goes by on the present step.
struct PassTime {
    double seconds = 0.0;
};

using ShowIntent =
    std::variant<GoOn, GoBack, GoToStep, TurnReveal, TypeCharacter, Enter, TakeBack, MoveRow,
                 PressAnswer, TurnBlank, TurnFreeze, AskToLeave, Stay, PassTime>;

void update(ShowModel& show, const ShowIntent& intent);

/// Most hands that are counted for one answer.
inline constexpr int kMostHands = 999;
/// Most numbers that are taken from a room.
inline constexpr std::size_t kMostGuesses = 12;

} // namespace steelyard::app

#pragma once
// The home of practice: who learns, the plan in a sentence, the exam's day, and the doors to
// today's session, a quick quiz, the mock exam, progress and the calendar.

#include "app/frame/frame_input.h"
#include "app/frame/layout.h"
#include "app/look/style.h"
#include "app/practice/desk.h"
#include "app/widgets/typed_line.h"

#include <string>
#include <variant>
#include <vector>

namespace steelyard::app {

/// What can be done at home; all of it can be reached by arrows and Enter.
enum class Door { session, quick, exam, progress, calendar };

/// One thing to choose at home.
struct ChooseLearner {
    std::int64_t id = 0;
};
struct AddLearner {};
struct SetExamDay {};
struct SkipPlacement {};
struct TypeCode {};
using HomeChoice =
    std::variant<Door, ChooseLearner, AddLearner, SetExamDay, SkipPlacement, TypeCode>;

/// A line of the home that can be chosen.
struct HomeLine {
    HomeChoice choice;
    std::string words;
    std::string below; ///< a quiet sentence
};

/// What is being typed at home.
enum class Typing { nothing, name, exam_day, code };

struct HomeScreen {
    std::size_t chosen = 0;
    Typing typing = Typing::nothing;
    TypedLine line;          ///< while something is typed
    bool exam_waits = false; ///< a mock exam was begun and not finished
    /// A session that was begun and not ended: where it goes on; empty without one.
    std::string session_waits;
};

/// The doors at the left.
std::vector<HomeLine> door_lines(const Desk& desk, const HomeScreen& screen);
/// The choices in the column: learners, exam day, a question by its code.
std::vector<HomeLine> desk_lines(const Desk& desk, const learner::Clock& now);

/// Begins typing a name or a day.
void begin_typing(HomeScreen& screen, Typing what, std::string text);

/// Takes what was typed to the desk. @return true when it was taken
bool take_typed(HomeScreen& screen, Desk& desk, const learner::Clock& now);

/// Reads codes of questions, with blanks or commas between them.
/// @return each as the question itself has it, or a sentence on the first that is none
tl::expected<std::vector<std::string>, std::string> read_codes(const std::string& typed,
                                                               const problems::Bank& bank);

struct HomeFrame {
    std::optional<HomeChoice> chosen; ///< doors, learners and the placement; typing it does itself
    bool named = false;               ///< a learner was added in this frame
    std::vector<std::string> codes;   ///< of questions that were typed, each of the bank
};

/// Runs one frame. Keys: up and down choose, Enter opens, Q a quick quiz, E the mock exam, P
/// progress, C the calendar, K types a question's code, T today's session, N the first one of
/// somebody new without a placement.
HomeFrame run_home(const Style& style, const Layout& layout, Desk& desk, const learner::Clock& now,
                   const FrameInput& input, HomeScreen& screen);

} // namespace steelyard::app

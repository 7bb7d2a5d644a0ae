#pragma once
// Practice as a place: its home, sessions, the mock exam, progress and the calendar.

#include "app/calendar/calendar_screen.h"
#include "app/exam/exam_screen.h"
#include "app/pages/pages_screen.h"
#include "app/place/abilities.h"
#include "app/place/place.h"
#include "app/practice/home.h"
#include "app/practice/session_screen.h"
#include "app/progress/progress_screen.h"

#include <optional>

namespace steelyard::app {

class PracticePlace final : public Place, public Parted, public Opening {
public:
    explicit PracticePlace(Surroundings& /*around*/) {}

    PlaceFrame run(const PlaceInput& input) override;
    /// The first time the course and the record are opened; later the record is read again.
    void enter(Surroundings& around) override;
    /// "session", "quick", "exam", "progress", "calendar"; whoever has no name yet says it first.
    void enter_part(const std::string& part) override;
    /// Takes an exported record in; the home says what came.
    void open(const OpenedFile& file, Surroundings& around) override;
    bool claims(const KeyPress& key) const override;
    /// While the pointer of an exam is on its way.
    bool moving() const override { return screen_ == Screen::exam && is_moving(exam_); }
    /// While an exam runs, for its clock.
    std::optional<double> next_frame_in_s() const override;

private:
    enum class Screen { home, session, exam, progress, calendar, pages, past };

    void open(Door door, const learner::Clock& now);
    void go_home(const learner::Clock& now);
    void note_what_waits(const learner::Clock& now);
    void redo(std::vector<std::string> codes, const learner::Clock& now);
    void reopen(const learner::Answer& answer);
    scene::Drawing run_past_screen(const PlaceInput& input, const learner::Clock& now);
    void run_home_screen(const PlaceInput& input, const learner::Clock& now);
    scene::Drawing run_screen(const PlaceInput& input, const learner::Clock& now);
    scene::Drawing run_session_screen(const PlaceInput& input, const learner::Clock& now);
    scene::Drawing run_calendar_screen(const PlaceInput& input, const learner::Clock& now);
    scene::Drawing run_progress_screen(const PlaceInput& input, const learner::Clock& now);
    /// Opens the pages of a skill over the present screen; without any it stays.
    /// @param back  what the last page's button says
    /// @return why there are none; empty when they are open
    std::string open_pages_of(std::size_t skill, const std::string& back, Surroundings& around);
    /// Says above the question what went wrong; nothing for an empty sentence.
    void tell(const std::string& trouble);
    const QuestionScreen* open_question() const;

    std::optional<Desk> desk_; ///< empty until the place is entered
    Screen screen_ = Screen::home;
    HomeScreen home_;
    SessionScreen session_;
    ExamScreen exam_;
    ProgressScreen progress_;
    CalendarScreen calendar_;
    QuestionScreen past_; ///< a question that was answered before
    PagesScreen pages_;
    Screen beneath_ = Screen::home; ///< where the pages lead back to
    std::optional<Door> wanted_;    ///< to be opened once there is a name
};

} // namespace steelyard::app

#pragma once
// The workshop as a place: choose a lesson, show it to a room, make one.

#include "app/place/abilities.h"
#include "app/place/place.h"
#include "app/workshop/draft_view.h"
#include "app/workshop/lesson_shelf.h"
#include "app/workshop/lesson_shelf_view.h"
#include "app/workshop/presenter_window.h"
#include "app/workshop/show_keys.h"
#include "app/workshop/show_model.h"

namespace steelyard::app {

class WorkshopPlace final : public Place,
                            public Undoing,
                            public Opening,
                            public TakingUp,
                            public FurtherWindows {
public:
    explicit WorkshopPlace(Surroundings& /*around*/) {}

    PlaceFrame run(const PlaceInput& input) override;
    void enter(Surroundings& around) override;
    PlaceShape shape(const scene::Point& window_px) const override;
    bool claims(const KeyPress& key) const override;
    /// Puts a lesson on the shelf, chosen.
    void open(const OpenedFile& file, Surroundings& around) override;
    void take_up(const lesson::LessonStage& stage, Surroundings& around) override;
    bool can_undo() const override { return draft_ && draft_->history.can_undo(); }
    bool can_redo() const override { return draft_ && draft_->history.can_redo(); }
    void undo() override { update(*draft_, UndoDraft{}); }
    void redo() override { update(*draft_, RedoDraft{}); }
    /// The lesson that is being made goes to its own file.
    std::string keep(const SavedWork& saved) const override;

    bool beside_stirred() override { return presenter_.stirred(); }
    std::optional<double> beside_due_s() const override;
    const Narration* run_beside(const Window& main, const Style& style) override;

private:
    PlaceFrame run_shelf(const PlaceInput& input);
    PlaceFrame run_draft(const PlaceInput& input);
    PlaceFrame run_show(const PlaceInput& input);
    std::vector<KeyPress> keys_of(const PlaceInput& input);
    void start(const lesson::Lesson& lesson, Surroundings& around, std::size_t step = 0);
    void start_draft(Surroundings& around, std::size_t step);
    void open_draft(std::size_t shelved);
    void leave_draft(Surroundings& around);
    void read_shelf(const Library& library);
    void grant(const ShowInput& asked, Surroundings& around);
    void pass_time();

    LessonShelf shelf_;
    std::vector<ShelvedLesson> opened_; ///< from files anywhere, in this run
    LessonShelfState shelf_state_;
    std::optional<DraftModel> draft_;
    DraftViewState draft_ui_;
    scene::Drawing draft_stage_; ///< lives until the frame is painted
    std::optional<ShowModel> show_;
    PresenterWindow presenter_;
    bool wants_presenter_ = false; ///< to be opened once the main window is drawn
    bool note_below_ = false;
    double passed_at_s_ = 0.0; ///< when the time on the present step was last counted
    std::string message_;
};

} // namespace steelyard::app

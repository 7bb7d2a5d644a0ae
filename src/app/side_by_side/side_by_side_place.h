#pragma once
// Side by side as a place: two exercises or two levers, and the shelf from which either is chosen.

#include "app/place/abilities.h"
#include "app/place/place_parts.h"
#include "app/side_by_side/lever_pair_screen.h"
#include "app/side_by_side/side_by_side_screen.h"

namespace steelyard::app {

class SideBySidePlace final : public Place, public Undoing, public Choosing, public TakingUp {
public:
    explicit SideBySidePlace(Surroundings& /*around*/) {}

    PlaceFrame run(const PlaceInput& input) override;
    /// The first time the pair of the last run is put up, else one that shows what the place is
    /// for.
    void enter(Surroundings& around) override;
    void refit() override;
    bool moving() const override {
        return shows_levers() ? levers_->moving() : pair_ && pair_->moving();
    }
    PlaceShape shape(const scene::Point& /*window_px*/) const override { return {chooses()}; }
    bool can_undo() const override {
        return shows_levers() ? levers_->model.history.can_undo()
                              : pair_ && pair_->model.history.can_undo();
    }
    bool can_redo() const override {
        return shows_levers() ? levers_->model.history.can_redo()
                              : pair_ && pair_->model.history.can_redo();
    }
    void undo() override;
    void redo() override;
    const char* shelf_word() const override { return shows_levers() ? "Levers" : "Exercises"; }
    void open_shelf() override { choose(Side::b); }
    /// Puts an exercise or a lever on side A.
    void take_up(const lesson::LessonStage& stage, Surroundings& around) override;
    std::string keep(const SavedWork& saved) const override;

private:
    PlaceFrame run_choosing(const PlaceInput& input);
    SideBySideFrame run_pair(const PlaceInput& input);
    bool chooses() const { return lever_shelf_.state.open || exercise_shelf_.state.open; }
    bool shows_levers() const { return wants_levers_ && levers_; }
    void show_levers(Surroundings& around);
    void choose(Side side);
    void put(Side side, const setup::BodySetup& setup);
    void put(Side side, const setup::LeverSetup& setup);

    std::optional<SideBySideScreen> pair_;  ///< empty until the place is entered
    std::optional<LeverPairScreen> levers_; ///< empty until two levers are compared
    bool wants_levers_ = false;
    Choosable<setup::LeverSetup> lever_shelf_;
    Choosable<setup::BodySetup> exercise_shelf_;
    Side chosen_for_ = Side::b; ///< the side that the shelf is open for
    std::string trouble_;       ///< why there is no pair
};

} // namespace steelyard::app

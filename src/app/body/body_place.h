#pragma once
// The body as a place: an exercise on the stage, and the shelf of exercises.

#include "app/body/body_screen.h"
#include "app/place/abilities.h"
#include "app/place/place.h"
#include "app/place/place_parts.h"

namespace steelyard::app {

class BodyPlace final : public Place,
                        public Undoing,
                        public Choosing,
                        public Opening,
                        public Keeping,
                        public Lending {
public:
    explicit BodyPlace(Surroundings& /*around*/) {}

    PlaceFrame run(const PlaceInput& input) override;
    /// The first time the muscles are read and what was there last is put on the stage, else the
    /// first exercise of the shelf.
    void enter(Surroundings& around) override;
    void refit() override;
    bool moving() const override { return body_ && body_->moving(); }
    PlaceShape shape(const scene::Point& /*window_px*/) const override {
        return {shelf_.state.open || stances_.open};
    }
    bool can_undo() const override { return body_ && body_->model.history.can_undo(); }
    bool can_redo() const override { return body_ && body_->model.history.can_redo(); }
    void undo() override { update(body_->model, UndoBody{}); }
    void redo() override { update(body_->model, RedoBody{}); }
    const char* shelf_word() const override { return "Exercises"; }
    void open_shelf() override { app::open_shelf(shelf_.state); }
    void open(const OpenedFile& file, Surroundings& around) override;
    std::optional<lesson::LessonStage> stage() const override;
    std::optional<setup::Setup> to_keep() const override;
    const KeptAs& kept_as() const override { return kept_; }
    void was_kept(const std::string& name, const OwnFile& file) override;
    std::string keep(const SavedWork& saved) const override;

private:
    void put(const Shelved<setup::BodySetup>& exercise);
    void begin_with(const setup::BodySetup& stance);

    std::optional<BodyScreen> body_; ///< empty until the place is entered
    KeptAs kept_;
    Choosable<setup::BodySetup> shelf_;
    ShelfState stances_;  ///< open while an exercise is begun
    std::string trouble_; ///< why there is no body
};

} // namespace steelyard::app

#pragma once
// The bench as a place: the lever, its shelf, and a question that is like it.

#include "app/bench/bench_screen.h"
#include "app/place/abilities.h"
#include "app/place/place.h"
#include "app/place/place_parts.h"
#include "app/question/question_screen.h"

#include <cstdint>

namespace steelyard::app {

class BenchPlace final : public Place,
                         public Undoing,
                         public Choosing,
                         public Opening,
                         public Keeping,
                         public Lending {
public:
    /// Puts on the bench what was there last, else the first lever of the shelf, else a plain one.
    explicit BenchPlace(Surroundings& around);

    PlaceFrame run(const PlaceInput& input) override;
    void enter(Surroundings& around) override;
    void refit() override;
    bool moving() const override { return bench_.moving(); }
    PlaceShape shape(const scene::Point& /*window_px*/) const override {
        return {shelf_.state.open};
    }
    bool can_undo() const override { return bench_.model.history.can_undo(); }
    bool can_redo() const override { return bench_.model.history.can_redo(); }
    void undo() override { update(bench_.model, Undo{}); }
    void redo() override { update(bench_.model, Redo{}); }
    const char* shelf_word() const override { return "Levers"; }
    void open_shelf() override { app::open_shelf(shelf_.state); }
    void open(const OpenedFile& file, Surroundings& around) override;
    std::optional<lesson::LessonStage> stage() const override {
        return lesson::LessonStage{bench_.model.state.setup};
    }
    std::optional<setup::Setup> to_keep() const override { return bench_.model.state.setup; }
    const KeptAs& kept_as() const override { return kept_; }
    void was_kept(const std::string& name, const OwnFile& file) override;
    std::string keep(const SavedWork& saved) const override;

private:
    PlaceFrame run_open_question(const PlaceInput& input);
    PlaceFrame run_stage(const PlaceInput& input);
    void put(const Shelved<setup::LeverSetup>& lever);
    void ask(Library& library);

    BenchScreen bench_;
    KeptAs kept_;
    Choosable<setup::LeverSetup> shelf_;
    QuestionScreen question_;
    std::uint64_t question_seed_;
};

} // namespace steelyard::app

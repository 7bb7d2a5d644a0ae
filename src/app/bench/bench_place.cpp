#include "app/bench/bench_place.h"

#include "app/place/place_parts.h"
#include "app/platform/key.h"

#include <algorithm>
#include <random>

namespace steelyard::app {

namespace {

SavedBench first_bench(Surroundings& around) {
    if (auto last = around.saved.load_bench())
        return *last;
    SavedBench bench;
    if (const LeverShelf& shelf = around.library.levers(); !shelf.setups.empty())
        bench.setup = shelf.setups.front().setup;
    bench.kept.text = setup::write_lever_setup(bench.setup);
    return bench;
}

/// A lever to begin with: plain, balanced by a pull that can be held.
setup::LeverSetup new_lever() {
    setup::LeverSetup lever;
    lever.head.name = "New lever";
    return lever;
}

} // namespace

BenchPlace::BenchPlace(Surroundings& around) : question_seed_(std::random_device{}()) {
    const SavedBench first = first_bench(around);
    bench_.model = make_bench(first.setup, first.hand_N);
    kept_ = first.kept;
    bench_.stage.chosen = {scene::PartKind::effort, 0};
}

void BenchPlace::enter(Surroundings& /*around*/) {
    question_.model.reset();
}

void BenchPlace::refit() {
    bench_.stage.view_fits = bench_.stage.view_is_own;
}

void BenchPlace::open(const OpenedFile& file, Surroundings& around) {
    const auto& lever = std::get<setup::LeverSetup>(std::get<setup::Setup>(file));
    put({lever, Origin::shipped, around.library.own().file_at(lever.source.file)});
}

void BenchPlace::put(const Shelved<setup::LeverSetup>& lever) {
    leave_behind(bench_.model.state.setup, kept_, shelf_);
    kept_ = kept_as_shelved(lever);
    question_.model.reset();
    update(bench_.model, OpenSetup{lever.setup});
    bench_.stage.view_fits = false;
    bench_.stage.view_is_own = false;
    bench_.stage.chosen = {scene::PartKind::effort, 0};
}

std::string BenchPlace::keep(const SavedWork& saved) const {
    return saved.save_bench({bench_.model.state.setup, bench_.model.state.hand_N, kept_});
}

void BenchPlace::was_kept(const std::string& name, const OwnFile& file) {
    update(bench_.model, NameSetup{name});
    kept_ = {file, file.text};
}

/// Opens a question like the lever on the bench; each is another one.
void BenchPlace::ask(Library& library) {
    auto asked = ask_like(library.bank(), bench_.model.solved.lever_class, bench_.model.units,
                          ++question_seed_);
    if (!asked) {
        bench_.model.message = asked.error();
        question_.model.reset();
        return;
    }
    const problems::Skill* skill = library.bank().find_skill(asked->question().skill);
    QuestionWords words;
    words.above = skill != nullptr ? skill->title : asked->question().skill;
    open_question(question_, std::move(*asked), std::move(words));
}

PlaceFrame BenchPlace::run(const PlaceInput& input) {
    bench_.model.units = input.around.units;
    bench_.less_motion = input.around.less_motion;
    if (shelf_.state.open)
        return run_shelf(input, "Choose a lever", {"New lever", [&] { put({new_lever()}); }},
                         shelf_, [&](const Shelved<setup::LeverSetup>& one) { put(one); });
    return question_.model ? run_open_question(input) : run_stage(input);
}

PlaceFrame BenchPlace::run_open_question(const PlaceInput& input) {
    PlaceFrame frame;
    QuestionFrame result = run_question(input.style, input.layout, input.around.library.bank(),
                                        input.frame, question_);
    if (result.wish == QuestionWish::next_question)
        ask(input.around.library);
    else if (result.wish == QuestionWish::leave)
        question_.model.reset();
    frame.drawing = std::move(result.drawing);
    return frame;
}

PlaceFrame BenchPlace::run_stage(const PlaceInput& input) {
    PlaceFrame frame;
    BenchFrame result = run_bench(input.style, input.layout, input.frame, bench_);
    input.around.units = bench_.model.units;
    const bool asked_by_key = std::any_of(input.frame.keys->begin(), input.frame.keys->end(),
                                          [](const KeyPress& key) { return key.key == key::kQ; });
    if (result.ask_question || asked_by_key)
        ask(input.around.library);
    frame.drawing = std::move(result.drawing);
    frame.changed = result.changed;
    return frame;
}

} // namespace steelyard::app

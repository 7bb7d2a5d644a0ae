#include "app/bench/sample_bench.h"
#include "catch.h"

#include <cmath>
#include <limits>

using namespace steelyard;
using namespace steelyard::app;

namespace {

/// One intent of every kind that changes the lever, each applicable to the sample.
std::vector<BenchIntent> changing_intents() {
    return {SetNumber{{kAxis, LeverField::place}, 0.3},
            SetNumber{{kCrate, LeverField::mass}, 12.5},
            SetNumber{{kHand, LeverField::direction}, -1.0},
            SetPull{kHand, -2.0, 50.0},
            AddLoad{0.2, 3.0},
            RemoveLoad{0},
            TakeByHand{},
            MoveCorner{1, {1.2, 0.1}, 0},
            AddCorner{},
            ChangeLoad{0, LoadKind::pull},
            NamePart{kHand, "foot"},
            SeekLoad{0},
            ChangeSupports{true},
            NameSetup{"Another name"}};
}

} // namespace

TEST_CASE("a set number is solved in the same step") {
    BenchModel model = sample_bench();
    update(model, SetNumber{{kAxis, LeverField::place}, 0.2});
    CHECK(model.state.setup.lever.axis_at_m == 0.2);
    // By hand: 98.0665 N × 0.2 m = F × 0.8 m.
    REQUIRE(model.solved.effort_N);
    CHECK(*model.solved.effort_N == Approx(98.0665 * 0.25).epsilon(1e-14)); // a few roundings
}

TEST_CASE("every change is undone and done again exactly") {
    for (const BenchIntent& intent : changing_intents()) {
        BenchModel model = sample_bench();
        const std::string before = exact_text(model.state);
        const auto effort_before_N = model.solved.effort_N;
        update(model, intent);
        const std::string after = exact_text(model.state);
        INFO("intent " << intent.index());
        CHECK(after != before);
        CHECK(model.message.empty());
        update(model, Undo{});
        CHECK(exact_text(model.state) == before);
        CHECK(model.solved.effort_N == effort_before_N);
        CHECK_FALSE(model.history.can_undo());
        update(model, Redo{});
        CHECK(exact_text(model.state) == after);
        CHECK_FALSE(model.history.can_redo());
    }
}

TEST_CASE("undo never leads into the setup that was there before") {
    BenchModel model = sample_bench();
    update(model, SetNumber{{kAxis, LeverField::place}, 0.3});
    setup::LeverSetup other = sample_setup();
    other.lever.axis_at_m = 0.7;
    update(model, OpenSetup{other});
    CHECK_FALSE(model.history.can_undo());
    CHECK(exact_text(model.state) == exact_text({other, std::nullopt}));
}

TEST_CASE("all changes in a row are undone in the opposite order") {
    BenchModel model = sample_bench();
    std::vector<std::string> states{exact_text(model.state)};
    for (const BenchIntent& intent : changing_intents()) {
        update(model, intent);
        states.push_back(exact_text(model.state));
    }
    for (std::size_t i = states.size() - 1; i-- > 0;) {
        update(model, Undo{});
        CHECK(exact_text(model.state) == states[i]);
    }
}

TEST_CASE("a drag is undone as one step") {
    BenchModel model = sample_bench();
    const std::string before = exact_text(model.state);
    for (int i = 1; i <= 20; ++i)
        update(model, SetNumber{{kCrate, LeverField::place}, 0.01 * i, 7});
    update(model, SetNumber{{kCrate, LeverField::place}, 0.3, 8});
    update(model, Undo{});
    CHECK(value_of(model.state.handled(), {kCrate, LeverField::place}) == 0.01 * 20);
    update(model, Undo{});
    CHECK(exact_text(model.state) == before);
    CHECK_FALSE(model.history.can_undo());
}

TEST_CASE("a number that stays what it is leaves nothing to undo") {
    BenchModel model = sample_bench();
    update(model, SetNumber{{kCrate, LeverField::place}, -3.0}); // already at the end
    update(model, SetNumber{{kCrate, LeverField::mass}, 10.0});
    update(model, SetPull{kHand, mechanics::kDown_rad, 12.0});  // no size while it is solved for
    update(model, SetNumber{{kHand, LeverField::torque}, 5.0}); // the effort has no such number
    CHECK_FALSE(model.history.can_undo());
}

TEST_CASE("a change after an undo forgets what was undone") {
    BenchModel model = sample_bench();
    update(model, SetNumber{{kAxis, LeverField::place}, 0.3});
    update(model, Undo{});
    update(model, SetNumber{{kAxis, LeverField::place}, 0.6});
    CHECK_FALSE(model.history.can_redo());
}

TEST_CASE("what cannot be computed with is refused with a reason and changes nothing") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double infinite = std::numeric_limits<double>::infinity();
    setup::LeverSetup no_length = sample_setup();
    no_length.lever.path_m = {{0.0, 0.0}, {0.0, 0.0}};
    const std::vector<BenchIntent> refused{
        SetNumber{{kCrate, LeverField::mass}, nan},
        SetNumber{{kCrate, LeverField::mass}, infinite},
        SetNumber{{kCrate, LeverField::mass}, 1.0e30},
        SetNumber{{kCrate, LeverField::place}, nan},
        SetNumber{{kHand, LeverField::direction}, nan},
        AddLoad{5.0, 1.0},  // off the lever
        AddLoad{0.5, -1.0}, // nothing weighs less than nothing
        RemoveLoad{9},
        OpenSetup{no_length},
    };
    for (const BenchIntent& intent : refused) {
        BenchModel model = sample_bench();
        const std::string before = exact_text(model.state);
        update(model, intent);
        INFO("intent " << intent.index() << ", message: " << model.message);
        CHECK(exact_text(model.state) == before);
        CHECK_FALSE(model.history.can_undo());
        CHECK(model.message.size() > 20);
        CHECK(model.message.back() == '.');
        update(model, SetNumber{{kAxis, LeverField::place}, 0.3});
        CHECK(model.message.empty());
    }
}

TEST_CASE("the hand starts with the effort that balances, and gives it back") {
    BenchModel model = sample_bench();
    update(model, TakeByHand{});
    CHECK(model.state.hand_N == model.solved.effort_N);
    const std::string taken = exact_text(model.state);
    update(model, TakeByHand{}); // it has it already
    CHECK(exact_text(model.state) == taken);
    update(model, SetNumber{{kHand, LeverField::force}, 80.0});
    CHECK(model.state.hand_N == 80.0);
    update(model, SolveForEffort{});
    CHECK_FALSE(model.state.hand_N);
    update(model, Undo{});
    CHECK(model.state.hand_N == 80.0);
}

TEST_CASE("switching units changes what is shown, not the lever, and is no step of undo") {
    BenchModel model = sample_bench();
    const std::string before = exact_text(model.state);
    update(model, SwitchUnits{});
    CHECK(model.units == setup::UnitSystem::us);
    CHECK(exact_text(model.state) == before);
    CHECK_FALSE(model.history.can_undo());
    update(model, SwitchUnits{});
    CHECK(model.units == setup::UnitSystem::si);
}

TEST_CASE("a lever from a file comes with its effort solved for") {
    BenchModel model = sample_bench();
    update(model, TakeByHand{});
    update(model, OpenSetup{sample_setup()});
    CHECK_FALSE(model.state.hand_N);
}

TEST_CASE("undo with nothing to undo leaves everything as it is") {
    BenchModel model = sample_bench();
    const std::string before = exact_text(model.state);
    update(model, Undo{});
    update(model, Redo{});
    CHECK(exact_text(model.state) == before);
}

TEST_CASE("a load whose size is sought follows the effort, and keeps its own hands off") {
    BenchModel model = sample_bench();
    update(model, SeekLoad{0});
    const auto mass_kg = [&] {
        return std::get<mechanics::Weight>(model.state.setup.lever.loads[0].action).mass_kg;
    };
    CHECK(mass_kg() == Approx(10.0).epsilon(1e-12));
    update(model, SetNumber{{kHand, LeverField::force}, 2.0 * *model.solved.effort_N});
    CHECK(mass_kg() == Approx(20.0).epsilon(1e-12));
    update(model, SetNumber{{kCrate, LeverField::mass}, 1.0});
    CHECK(mass_kg() == Approx(20.0).epsilon(1e-12));
    update(model, SolveForEffort{});
    CHECK_FALSE(mechanics::sought_load(model.state.setup.lever));
    CHECK(mass_kg() == Approx(20.0).epsilon(1e-12)); // it stays where it was found
    update(model, SeekLoad{0});
    update(model, RemoveLoad{0});
    CHECK(model.message.empty());
    CHECK_FALSE(mechanics::sought_load(model.state.setup.lever));
}

TEST_CASE("a beam on two supports has no effort to take by hand, and both can be moved and named") {
    BenchModel model = sample_bench();
    update(model, ChangeSupports{true});
    update(model, TakeByHand{});
    CHECK(model.message.find("no effort") != std::string::npos);
    CHECK_FALSE(model.state.hand_N);
    update(model, SetNumber{{kHand, LeverField::place}, 0.8});
    CHECK(model.state.setup.lever.effort.at_m == 0.8);
    update(model, SetNumber{{kHand, LeverField::direction}, 0.0});
    CHECK(model.state.setup.lever.effort.direction_rad == mechanics::kUp_rad);
    update(model, NamePart{kAxis, "left block"});
    CHECK(name_of(model.state.setup.lever, kAxis) == "left block");
    update(model, ChangeSupports{false});
    CHECK(model.solved.lever_class);
}

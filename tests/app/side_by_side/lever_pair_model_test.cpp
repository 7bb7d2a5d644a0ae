#include "app/bench/sample_bench.h"
#include "app/side_by_side/lever_pair_model.h"
#include "catch.h"

#include <cmath>
#include <limits>

using namespace steelyard;
using namespace steelyard::app;

namespace {

/// A: the sample, 65.3777 N of effort; B: the same with twice the load.
LeverPairModel sample_levers() {
    setup::LeverSetup heavier = sample_setup();
    heavier.lever.loads = {{"crate", mechanics::Weight{0.0, 20.0}}};
    return make_lever_pair(sample_setup(), heavier);
}

std::string exact_text(const LeverPairState& state) {
    return setup::write_lever_setup(state.a) + setup::write_lever_setup(state.b);
}

constexpr mechanics::LeverChange kMass{mechanics::LeverKnob::load_size, 0};

} // namespace

TEST_CASE("every way offered makes B's effort equal A's, and then none is left") {
    const LeverPairModel start = sample_levers();
    REQUIRE(start.ways.ways.size() >= 3); // mass, place of the load, axis
    for (const mechanics::LeverWay& way : start.ways.ways) {
        LeverPairModel model = sample_levers();
        update(model, ChangeLeverB{way.change, way.value, 0});
        CHECK(model.message.empty());
        CHECK(model.efforts_are_equal());
        CHECK(model.ways.ways.empty());
    }
}

TEST_CASE("every change of two levers is undone and done again exactly") {
    for (const LeverPairIntent& intent :
         std::vector<LeverPairIntent>{PutLever{Side::b, sample_setup()}, SwapLevers{},
                                      CopyLeverToB{}, ChangeLeverB{kMass, 3.0, 0}}) {
        LeverPairModel model = sample_levers();
        const std::string before = exact_text(model.state);
        const double effort_N = effort_size_N(model.b);
        update(model, intent);
        const std::string after = exact_text(model.state);
        INFO("intent " << intent.index());
        CHECK(after != before);
        update(model, UndoLevers{});
        CHECK(exact_text(model.state) == before);
        CHECK(effort_size_N(model.b) == effort_N);
        update(model, RedoLevers{});
        CHECK(exact_text(model.state) == after);
    }
}

TEST_CASE("what lever B cannot be is refused with a reason and changes nothing") {
    LeverPairModel model = sample_levers();
    const std::string before = exact_text(model.state);
    for (const double mass_kg : {-1.0, std::nan(""), std::numeric_limits<double>::infinity()}) {
        update(model, ChangeLeverB{kMass, mass_kg, 0});
        CHECK_FALSE(model.message.empty());
        CHECK(exact_text(model.state) == before);
    }
}

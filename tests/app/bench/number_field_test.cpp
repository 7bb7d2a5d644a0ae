#include "app/bench/number_field.h"
#include "app/bench/sample_bench.h"
#include "catch.h"
#include "setup/units/format_quantity.h"

using namespace steelyard;
using namespace steelyard::app;

namespace {

/// What the lever has after a text was typed; fails the test when it was refused.
double typed(BenchModel model, const LeverNumber& number, const std::string& text) {
    const auto intent = read_typed(model, number, text);
    INFO(text << ": " << (intent ? "" : intent.error()));
    REQUIRE(intent);
    update(model, *intent);
    return value_of(model.state.handled(), number).value();
}

constexpr LeverNumber kPlace{kHand, LeverField::place};
constexpr LeverNumber kMass{kCrate, LeverField::mass};
constexpr LeverNumber kPull{kHand, LeverField::force};
constexpr LeverNumber kDirection{kHand, LeverField::direction};

BenchModel bench_by_hand() {
    BenchModel model = sample_bench();
    update(model, TakeByHand{});
    return model;
}

} // namespace

TEST_CASE("a number is typed in any unit of its kind") {
    const BenchModel model = bench_by_hand();
    CHECK(typed(model, kPlace, "45 cm") == 0.45);
    CHECK(typed(model, kPlace, "18 in") == Approx(0.4572).epsilon(1e-15));
    CHECK(typed(model, kMass, "2500 g") == 2.5);
    // Source: 1 lbf = 0.45359237 kg × 9.80665 m/s², exact by definition.
    CHECK(typed(model, kPull, "30 lbf") == Approx(30.0 * 0.45359237 * 9.80665).epsilon(1e-15));
    CHECK(typed(model, kPull, "12 kgf") == Approx(12.0 * 9.80665).epsilon(1e-15));
    CHECK(typed(model, kPull, "2 kg") == Approx(2.0 * 9.80665).epsilon(1e-15)); // as a weight
    CHECK(typed(model, kDirection, "-45°") == Approx(-mechanics::kPi / 4.0).epsilon(1e-15));
    CHECK(typed(model, kPlace, "1/2 m") == 0.5);
    CHECK(typed(model, kPlace, "0,25 m") == 0.25);
}

TEST_CASE("a bare number is in the unit that is shown") {
    BenchModel model = bench_by_hand();
    CHECK(typed(model, kPlace, "0.7") == 0.7); // shown as 1.00 m
    CHECK(typed(model, kPull, "70") == 70.0);
    CHECK(typed(model, kDirection, "30") == Approx(mechanics::kPi / 6.0).epsilon(1e-15));
    update(model, SetNumber{kPlace, 0.05}); // shown as 5.00 cm
    CHECK(typed(model, kPlace, "7") == Approx(0.07).epsilon(1e-15));
    update(model, SwitchUnits{}); // shown as 1.97 in
    CHECK(typed(model, kPlace, "7") == Approx(7.0 * 0.0254).epsilon(1e-15));
    CHECK(typed(model, kPull, "70") == Approx(70.0 * 4.4482216152605).epsilon(1e-15));
    CHECK(typed(model, kMass, "5") == Approx(5.0 * 0.45359237).epsilon(1e-15));
}

TEST_CASE("what cannot be the number is answered with sentences that say what to do") {
    const BenchModel model = bench_by_hand();
    const std::pair<LeverNumber, const char*> refused[] = {
        {kPlace, ""},        {kPlace, "about there"}, {kPlace, "45 kg"},    {kPlace, "3 furlongz"},
        {kPlace, "2,300 m"}, {kPlace, "inf m"},       {kPlace, "nan"},      {kPlace, "1e999 m"},
        {kMass, "12 N"},     {kMass, "5 cm"},         {kDirection, "3 m"},  {kPull, "3 m"},
        {kPull, "1/0 N"},    {kPull, "5 N and more"}, {kPull, "\xff\xfe 5"}};
    for (const auto& [number, text] : refused) {
        const auto intent = read_typed(model, number, text);
        INFO("'" << text << "': " << (intent ? "accepted" : intent.error()));
        REQUIRE_FALSE(intent);
        CHECK(intent.error().size() > 15);
        CHECK(intent.error().back() == '.');
    }
}

TEST_CASE("an absurd number is refused by the lever, which stays as it was") {
    BenchModel model = bench_by_hand();
    const std::string before = exact_text(model.state);
    const auto intent = read_typed(model, kMass, "1e30 kg");
    REQUIRE(intent);
    update(model, *intent);
    CHECK(exact_text(model.state) == before);
    CHECK_FALSE(model.message.empty());
}

TEST_CASE("the field opens with a text that gives the number back") {
    BenchModel model = bench_by_hand();
    for (const auto units : {setup::UnitSystem::si, setup::UnitSystem::us}) {
        model.units = units;
        for (const LeverNumber& number : {kPlace, kMass, kPull, kDirection}) {
            NumberField field;
            open_field(field, model, number);
            CHECK(field.number == number);
            CHECK(field.typed.opened);
            INFO(field.typed.text);
            const double shown = value_of(model.state.handled(), number).value();
            // Six figures stand in the field.
            CHECK(typed(model, number, field.typed.text) == Approx(shown).epsilon(5e-6));
        }
    }
}

TEST_CASE("a number that the part does not have opens no field") {
    NumberField field;
    open_field(field, sample_bench(), {kAxis, LeverField::mass});
    CHECK_FALSE(field.number);
}

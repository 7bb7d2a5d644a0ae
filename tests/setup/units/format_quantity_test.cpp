#include "catch.h"
#include "setup/setup_head.h"
#include "setup/units/format_quantity.h"

#include <cmath>
#include <random>

using namespace steelyard::setup;

namespace {

/// No-break and thin spaces as '_' and '\'', so that expectations can be read.
std::string plain(std::string text) {
    for (const auto& [from, to] :
         {std::pair<std::string, std::string>{"\u00A0", "_"}, {"\u2009", "'"}})
        for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from))
            text.replace(at, from.size(), to);
    return text;
}

/// Sizes from a millionth to a million, both signs.
double random_value(std::mt19937_64& engine) {
    std::uniform_real_distribution<double> exponent(-6.0, 6.0);
    return std::pow(10.0, exponent(engine)) * (engine() % 2 ? 1.0 : -1.0);
}

} // namespace

TEST_CASE("numbers are rounded half away from zero to their significant figures", "[units]") {
    const auto three = [](double value) { return plain(format_number(value)); };
    CHECK(three(0.0) == "0");
    CHECK(three(-0.0) == "0");
    CHECK(three(20.0) == "20.0");
    CHECK(three(2.675) == "2.68"); // the double below the half: digits decide, not the binary
    CHECK(three(2.665) == "2.67");
    CHECK(three(-2.675) == "−2.68");
    CHECK(three(2345.0) == "2'350");
    CHECK(three(9.996) == "10.0");
    CHECK(three(0.09996) == "0.100");
    CHECK(three(999.9) == "1'000");
    CHECK(three(1234567.0) == "1'230'000");
    CHECK(three(0.00123456) == "0.00123");
    CHECK(three(2.6749999999999994) == "2.68"); // rounding noise in the 16th figure
    CHECK(three(1e-10) == "0");
    CHECK(three(-1e-10) == "0");
    CHECK(three(1.5e20) == "1.50 × 10²⁰");
    CHECK(three(2.5e-8) == "2.50 × 10⁻⁸");
    CHECK(plain(format_number(1234.5, {5, true})) == "1'234.5");
    CHECK(plain(format_number(2.5, {1, true})) == "3");
}

TEST_CASE("zeros are dropped on request where the number is exact", "[units]") {
    const NumberStyle given{3, false};
    CHECK(format_number(20.0, given) == "20");
    CHECK(format_number(0.45, given) == "0.45");
    CHECK(format_number(20.04, given) == "20.0");
    CHECK(format_number(100.0, given) == "100");
}

TEST_CASE("quantities are shown in the unit that suits them", "[units]") {
    const auto si = [](double value, Dimension dimension) {
        return plain(format_quantity(value, dimension, UnitSystem::si));
    };
    const auto us = [](double value, Dimension dimension) {
        return plain(format_quantity(value, dimension, UnitSystem::us));
    };
    CHECK(si(0.45, Dimension::length) == "0.450_m");
    CHECK(si(0.048, Dimension::length) == "4.80_cm");
    CHECK(si(0.0, Dimension::length) == "0_m");
    CHECK(si(2300.0, Dimension::force) == "2'300_N");
    CHECK(si(123456.0, Dimension::force) == "123_kN");
    CHECK(si(-20.0, Dimension::torque) == "−20.0_N·m");
    CHECK(si(0.25, Dimension::mass) == "250_g");
    CHECK(si(0.5235987755982988, Dimension::angle) == "30.0°");
    CHECK(si(2.5, Dimension::number) == "2.50");
    CHECK(us(0.254, Dimension::length) == "10.0_in");
    CHECK(us(1.2192, Dimension::length) == "4.00_ft");
    CHECK(us(444.82216152605, Dimension::force) == "100_lbf");
    CHECK(us(13.558179483314004, Dimension::torque) == "10.0_ft·lbf");
    CHECK(us(4.5359237, Dimension::mass) == "10.0_lb");
    const QuantityText parts = format_in_unit(0.45, Dimension::length, "cm");
    CHECK(parts.number == "45.0");
    CHECK(parts.unit == "cm");
}

TEST_CASE("what is shown can be typed back", "[units]") {
    std::mt19937_64 engine(11);
    for (int i = 0; i < 1000; ++i) {
        const double value = random_value(engine);
        for (const Dimension dimension : {Dimension::length, Dimension::force, Dimension::torque,
                                          Dimension::mass, Dimension::angle})
            for (const UnitSystem system : {UnitSystem::si, UnitSystem::us}) {
                const std::string text = format_quantity(value, dimension, system);
                const auto read = parse_quantity(text, dimension);
                INFO(text);
                REQUIRE(read.has_value());
                // Three figures: at most half a unit in the third, 0.5 % of the smallest.
                if (std::abs(value) > 1e-4)
                    REQUIRE(*read == Approx(value).epsilon(0.0051));
            }
    }
}

TEST_CASE("exact text reads back to the very same double", "[units]") {
    CHECK(exact_number(0.45) == "0.45");
    CHECK(exact_number(-0.0) == "0");
    CHECK(exact_quantity(0.45, Dimension::length, "cm") == "45 cm");
    CHECK(exact_quantity(0.35, Dimension::length, "cm") == "35 cm");
    CHECK(exact_quantity(0.0254, Dimension::length, "in") == "1 in");
    CHECK(exact_quantity(30 * 4.4482216152605, Dimension::force, "lbf") == "30 lbf");

    std::mt19937_64 engine(12);
    int kept_unit = 0;
    int all = 0;
    for (int i = 0; i < 1000; ++i) {
        const double value = random_value(engine);
        for (const Dimension dimension : {Dimension::length, Dimension::force, Dimension::torque,
                                          Dimension::mass, Dimension::angle})
            for (const std::string_view unit : unit_symbols(dimension)) {
                if (dimension == Dimension::torque && unit.substr(0, 2) == "kg")
                    continue; // "kg·m" is read on request only
                const std::string text = exact_quantity(value, dimension, unit);
                const auto read = parse_quantity(text, dimension);
                INFO(text);
                REQUIRE(read.has_value());
                REQUIRE(same_bits(*read, value));
                ++all;
                kept_unit += text.find(" " + std::string(unit)) != std::string::npos ? 1 : 0;
            }
    }
    // Where the unit's own doubles are the coarser ones some values fall between them, but the
    // stated unit must be the rule.
    CHECK(kept_unit > 0.8 * all);
}

#include "catch.h"
#include "mechanics/constants.h"
#include "setup/units/units.h"

#include <string>
#include <utility>
#include <vector>

using namespace steelyard::setup;

namespace {

double read(const std::string& text, Dimension wanted, const ReadingRules& rules = {}) {
    const auto value = parse_quantity(text, wanted, rules);
    INFO(text << ": " << (value ? "" : to_text(value.error())));
    REQUIRE(value.has_value());
    return *value;
}

UnitError refuse(const std::string& text, Dimension wanted, const ReadingRules& rules = {}) {
    const auto value = parse_typed_quantity(text, wanted, rules);
    INFO(text);
    REQUIRE_FALSE(value.has_value());
    INFO(to_text(value.error()));
    CHECK_FALSE(to_text(value.error()).empty());
    return value.error();
}

} // namespace

TEST_CASE("numbers are read in every usual notation", "[units]") {
    const std::vector<std::pair<std::string, double>> cases = {
        {"45", 45.0},
        {" 45 ", 45.0},
        {"+4.5", 4.5},
        {"4,5", 4.5},
        {".5", 0.5},
        {",5", 0.5},
        {"5.", 5.0},
        {"-3", -3.0},
        {"−3", -3.0},
        {"− 3", -3.0},
        {"2e3", 2000.0},
        {"2E-3", 0.002},
        {"2 × 10^3", 2000.0},
        {"2·10³", 2000.0},
        {"2x10^-3", 0.002},
        {"2.5 × 10⁻³", 0.0025},
        {"10^3", 1000.0},
        {"1/2", 0.5},
        {"1 1/2", 1.5},
        {"1-1/2", 1.5},
        {"-1 1/2", -1.5},
        {"½", 0.5},
        {"2½", 2.5},
        {"3⅛", 3.125},
        {"2 300", 2300.0},
        {"2\u00A0300,5", 2300.5},
        {"12\u2009345\u2009678", 12345678.0},
        {"1,234,567", 1234567.0},
        {"1.234.567", 1234567.0},
        {"1,234.5", 1234.5},
        {"1.234,5", 1234.5},
        {"0,125", 0.125},
        {"2300,125", 2300.125},
        {"2.300", 2.3},
        {"45 %", 0.45},
        {"3:1", 3.0},
        {"1 : 4", 0.25},
    };
    for (const auto& [text, value] : cases)
        CHECK(read(text, Dimension::number) == value); // exact: each is one correctly rounded step
}

TEST_CASE("a thousands comma that could be a decimal comma is refused with both readings",
          "[units]") {
    const UnitError error = refuse("2,300 N", Dimension::force);
    CHECK(error.fault == UnitFault::ambiguous_number);
    CHECK(error.mend.find("2300") != std::string::npos);
    CHECK(error.mend.find("2.300") != std::string::npos);
}

TEST_CASE("what is no number is said to be none", "[units]") {
    for (const char* text :
         {"abc", "N", "--3 N", "- N", ".", "1..2 N", "1.2,3,4 N", "1,23,456 N"}) {
        const auto fault = refuse(text, Dimension::force).fault;
        CHECK((fault == UnitFault::no_number || fault == UnitFault::unknown_unit));
    }
    CHECK(refuse("", Dimension::force).fault == UnitFault::empty);
    CHECK(refuse(" \t ", Dimension::force).fault == UnitFault::empty);
    CHECK(refuse(std::string(100000, '7') + " N", Dimension::force).fault == UnitFault::no_number);
}

TEST_CASE("numbers that are not finite are refused", "[units]") {
    for (const char* text :
         {"nan", "inf N", "-inf", "Infinity N", "1e999 N", "1/0 N", "1.7e308 kN", "2 1/0 N"})
        CHECK(refuse(text, Dimension::force).fault == UnitFault::not_finite);
    CHECK(refuse("3:0", Dimension::number).fault == UnitFault::not_finite);
}

TEST_CASE("lengths are read in any unit, with or without a blank", "[units]") {
    CHECK(read("45 cm", Dimension::length) == 0.45);
    CHECK(read("45cm", Dimension::length) == 0.45);
    CHECK(read("35 cm", Dimension::length) == 0.35); // 35 × 0.01 would not be
    CHECK(read("450 mm", Dimension::length) == 0.45);
    CHECK(read("1.2 metres", Dimension::length) == 1.2);
    CHECK(read("10 in", Dimension::length) == 0.254);
    CHECK(read("10 inches", Dimension::length) == 0.254);
    CHECK(read("10\"", Dimension::length) == 0.254);
    CHECK(read("3/4 in", Dimension::length) == Approx(0.01905).epsilon(1e-15));
    CHECK(read("1-1/2 in", Dimension::length) == Approx(0.0381).epsilon(1e-15));
    CHECK(read("1½″", Dimension::length) == Approx(0.0381).epsilon(1e-15));
    CHECK(read("10 CM", Dimension::length) == 0.1);
    CHECK(read("0", Dimension::length) == 0.0);
}

TEST_CASE("compounds of feet and inches, pounds and ounces add up", "[units]") {
    // 2 ft 3 in = 27 in = 0.6858 m; one rounding in each part and in the sum.
    const double kRounding = 1e-15;
    CHECK(read("2 ft 3 in", Dimension::length) == Approx(0.6858).epsilon(kRounding));
    CHECK(read("2ft 3in", Dimension::length) == Approx(0.6858).epsilon(kRounding));
    CHECK(read("5'10\"", Dimension::length) == Approx(1.778).epsilon(kRounding));
    CHECK(read("5'10", Dimension::length) == Approx(1.778).epsilon(kRounding));
    CHECK(read("5’10”", Dimension::length) == Approx(1.778).epsilon(kRounding));
    CHECK(read("5 ft 10 1/2 in", Dimension::length) == Approx(1.7907).epsilon(kRounding));
    CHECK(read("-2 ft 3 in", Dimension::length) == Approx(-0.6858).epsilon(kRounding));
    CHECK(read("1 m 20 cm", Dimension::length) == Approx(1.2).epsilon(kRounding));
    CHECK(read("6 lb 4 oz", Dimension::mass) == Approx(6.25 * 0.45359237).epsilon(kRounding));
    CHECK(read("1 min 30 s", Dimension::time) == 90.0);
    CHECK(refuse("3 in 2 ft", Dimension::length).fault == UnitFault::unknown_unit);
    CHECK(refuse("3 cm 20", Dimension::length).fault == UnitFault::missing_unit);
}

TEST_CASE("torques are read in every usual spelling", "[units]") {
    for (const char* text : {"20 N·m", "20 Nm", "20 N m", "20 N*m", "20 N-m", "20 N.m", "20N⋅m",
                             "20 nm", "20 newton metres", "20 newton-meters", "2000 N·cm"})
        CHECK(read(text, Dimension::torque) == 20.0);
    const double foot_pound_Nm = 1.3558179483314004;
    for (const char* text :
         {"15 ft·lbf", "15 ft-lb", "15 ft lb", "15 ftlb", "15 lb-ft", "15 lbf·ft", "15 foot-pounds",
          "15 pound-feet", "15 ft.lb.", "180 in·lbf"})
        CHECK(read(text, Dimension::torque) == Approx(15 * foot_pound_Nm).epsilon(1e-15));
    CHECK(read("2 kgf·m", Dimension::torque) == Approx(19.6133).epsilon(1e-15));
}

TEST_CASE("angles are read with a degree sign, a word or in radians", "[units]") {
    using steelyard::mechanics::kPi;
    CHECK(read("90°", Dimension::angle) == 0.5 * kPi); // exactly: through half turns
    CHECK(read("90 deg", Dimension::angle) == 0.5 * kPi);
    CHECK(read("-90 degrees", Dimension::angle) == -0.5 * kPi);
    CHECK(read("1.5 rad", Dimension::angle) == 1.5);
    CHECK(read("30", Dimension::angle, {.bare_unit = "°"}) == Approx(kPi / 6).epsilon(1e-15));
}

TEST_CASE("a mass is taken as a force only where the caller allows it", "[units]") {
    const UnitError error = refuse("2 kg", Dimension::force);
    CHECK(error.fault == UnitFault::wrong_dimension);
    CHECK(error.found_dimension == Dimension::mass);
    CHECK(error.found_value_SI == 2.0);
    CHECK(read("2 kg", Dimension::force, {.mass_as_force = true}) == 2 * 9.80665);
    CHECK(read("12 kgf", Dimension::force) == Approx(12 * 9.80665).epsilon(1e-15));
    CHECK(refuse("3 kg·m", Dimension::torque).fault == UnitFault::unknown_unit);
    CHECK(read("3 kg·m", Dimension::torque, {.mass_as_force = true}) ==
          Approx(3 * 9.80665).epsilon(1e-15));
}

TEST_CASE("a unit of another dimension, an unknown one and a missing one are told apart",
          "[units]") {
    const UnitError other = refuse("20 N", Dimension::length);
    CHECK(other.fault == UnitFault::wrong_dimension);
    CHECK(other.found_dimension == Dimension::force);
    CHECK(other.number == 20.0);

    const UnitError unknown = refuse("45 cmm", Dimension::length);
    CHECK(unknown.fault == UnitFault::unknown_unit);
    CHECK(unknown.nearest == "cm");
    CHECK(unknown.found == "cmm");

    CHECK(refuse("45 nweton", Dimension::force).nearest == "newton");
    CHECK(refuse("45 zorkmid", Dimension::length).nearest.empty());

    const UnitError missing = refuse("45", Dimension::length);
    CHECK(missing.fault == UnitFault::missing_unit);
    CHECK(missing.number == 45.0);
    CHECK(read("45", Dimension::length, {.bare_unit = "cm"}) == 0.45);

    CHECK(refuse("m/s 3", Dimension::speed).fault == UnitFault::no_number);
    CHECK(refuse("20 N extra", Dimension::force).fault == UnitFault::unknown_unit);
}

TEST_CASE("the reading reports the unit found and the significant figures typed", "[units]") {
    const auto figures = [](const std::string& text) {
        const auto number = parse_number(text);
        REQUIRE(number.has_value());
        return std::pair(number->figures_least, number->figures_most);
    };
    CHECK(figures("2300") == std::pair(2, 4));
    CHECK(figures("2300.") == std::pair(4, 4));
    CHECK(figures("0.0450") == std::pair(3, 3));
    CHECK(figures("4.50e3") == std::pair(3, 3));
    CHECK(figures("0") == std::pair(1, 1));
    CHECK(figures("1/2") == std::pair(17, 17));

    const auto quantity = parse_typed_quantity("15.5 lbs", Dimension::mass);
    REQUIRE(quantity.has_value());
    CHECK(quantity->unit == "lb");
    CHECK(quantity->unit_dimension == Dimension::mass);
    CHECK(quantity->number.value == 15.5);
    CHECK(quantity->last_place_SI == Approx(0.1 * 0.45359237).epsilon(1e-15));
    CHECK(parse_typed_quantity("12", Dimension::number)->unit.empty());
    CHECK(parse_typed_quantity("12", Dimension::length, {.bare_unit = "cm"})->unit.empty());
}

TEST_CASE("whatever is typed, reading ends in a finite value or a sentence", "[units]") {
    // Every text of up to three of these pieces.
    const std::vector<std::string> pieces = {"",  "1",  "0", "-", "+", ".", ",",   "/", " ",  "e",
                                             "^", "10", "×", "N", "m", ":", "deg", "'", "\"", "½"};
    for (const std::string& a : pieces)
        for (const std::string& b : pieces)
            for (const std::string& c : pieces)
                for (const Dimension wanted :
                     {Dimension::length, Dimension::number, Dimension::torque}) {
                    const auto value = parse_quantity(a + b + c, wanted, {"m", true});
                    if (value)
                        REQUIRE(std::isfinite(*value));
                    else
                        REQUIRE_FALSE(to_text(value.error()).empty());
                }
}

#include "catch.h"
#include "problems/language/expression.h"

#include <cmath>
#include <string>

using namespace steelyard::problems;

namespace {

constexpr double kPi = 3.14159265358979323846;

std::optional<std::uint16_t> quantity_of(std::string_view name) {
    if (name == "a")
        return std::uint16_t{0};
    if (name == "load_mass")
        return std::uint16_t{1};
    return std::nullopt;
}

std::optional<double> unit_of(std::string_view unit) {
    if (unit == "cm")
        return 0.01;
    if (unit == "deg" || unit == "°")
        return kPi / 180.0;
    return std::nullopt;
}

const double kQuantities[] = {3.0, 12.5};

double value_of(const std::string& text) {
    const auto parsed = parse_expression(text, quantity_of, unit_of);
    INFO(text);
    REQUIRE(parsed.has_value());
    return parsed->evaluate(kQuantities);
}

std::string fault_of(const std::string& text) {
    const auto parsed = parse_expression(text, quantity_of, unit_of);
    INFO(text);
    REQUIRE_FALSE(parsed.has_value());
    return parsed.error().message;
}

// A few roundings of a double.
constexpr double kRounding = 1e-14;

} // namespace

TEST_CASE("an expression follows the usual order of operations") {
    CHECK(value_of("1 + 2 * 3") == 7.0);
    CHECK(value_of("(1 + 2) * 3") == 9.0);
    CHECK(value_of("8 / 4 / 2") == 1.0);
    CHECK(value_of("8 - 4 - 2") == 2.0);
    CHECK(value_of("-2 ^ 2") == -4.0);
    CHECK(value_of("2 ^ 3 ^ 2") == 512.0);
    CHECK(value_of("2 ^ -1") == 0.5);
    CHECK(value_of("1 + 1 == 2 and not 3 < 2 or 0") == 1.0);
}

TEST_CASE("an expression reads quantities, units and functions") {
    CHECK(value_of("load_mass * a") == 37.5);
    CHECK_THAT(value_of("sin(30 deg)"), WithinAbs(0.5, kRounding));
    CHECK_THAT(value_of("cos(60°) + 50 cm"), WithinAbs(1.0, kRounding));
    CHECK_THAT(value_of("atan(1) / pi"), WithinAbs(0.25, kRounding));
    CHECK(value_of("max(min(1, 2), -3)") == 1.0);
    CHECK(value_of("if(a > 2, 10, 20)") == 10.0);
    CHECK(value_of("if(a > 3, 10, 20)") == 20.0);
    CHECK(value_of("abs(-2) + sqrt(16) + floor(2.9) + round(2.5)") == 11.0);
}

TEST_CASE("numbers that differ by rounding only are equal") {
    CHECK(value_of("0.1 + 0.2 == 0.3") == 1.0);
    CHECK(value_of("0.1 + 0.2 > 0.3") == 0.0);
    CHECK(value_of("0.1 + 0.2 <= 0.3") == 1.0);
    CHECK(value_of("1 == 1.00001") == 0.0);
}

TEST_CASE("what has no value is refused by every constraint on it") {
    for (const char* text : {"1 / 0 > 3", "0 / 0 != 1", "not (0 / 0)", "sqrt(-1) == 0 or 1",
                             "(0 / 0) ^ 0", "if(0 / 0, 1, 1)", "max(0 / 0, 1)"}) {
        const auto parsed = parse_expression(text, quantity_of, unit_of);
        INFO(text);
        REQUIRE(parsed.has_value());
        CHECK_FALSE(parsed->holds(kQuantities));
    }
}

TEST_CASE("a faulty expression says what is wrong and where") {
    CHECK(fault_of("load_mas * 2") == "there is no quantity 'load_mas'");
    CHECK(fault_of("2 load_mass").find("'load_mass' is not a unit") == 0);
    CHECK(fault_of("(1 + 2") == "a closing bracket ')' is missing");
    CHECK(fault_of("1 +").find("ends too early") != std::string::npos);
    CHECK(fault_of("sin 3") == "'sin' needs its value in brackets: sin(...)");
    CHECK(fault_of("min(1)") == "'min' takes 2 values with commas between");
    CHECK(fault_of("1 # 2").find("unexpected '#'") == 0);
    CHECK(fault_of("").find("ends too early") != std::string::npos);
    const auto parsed = parse_expression("1 + b", quantity_of, unit_of);
    CHECK(parsed.error().column == 5);
}

TEST_CASE("an expression is bounded in length and depth") {
    CHECK(fault_of(std::string(kMaxExpressionLength, '1') + "1").find("longer than") !=
          std::string::npos);
    CHECK(fault_of(std::string(200, '(')).find("levels of brackets") != std::string::npos);
    CHECK(fault_of(std::string(200, '-') + "1").find("levels of brackets") != std::string::npos);
    std::string deep;
    for (int i = 0; i < 35; ++i)
        deep += "1 < 1 + 1 * 1 ^ (";
    CHECK(fault_of(deep + "1").find("too deep") != std::string::npos);
}

TEST_CASE("an expression tells which quantities it reads") {
    const auto parsed = parse_expression("a * a + load_mass", quantity_of, unit_of);
    REQUIRE(parsed.has_value());
    CHECK(parsed->reads() == std::vector<std::uint16_t>{0, 1});
}

TEST_CASE("what is infinite within an expression leaves the whole without a value") {
    for (const char* text : {"atan(1 / 0)", "not (1 / 0)", "if(1 / 0, 1, 2)", "1 / (1 / 0)"}) {
        INFO(text);
        const auto parsed = parse_expression(text, quantity_of, unit_of);
        REQUIRE(parsed);
        CHECK_FALSE(std::isfinite(parsed->evaluate(kQuantities)));
        CHECK_FALSE(parsed->holds(kQuantities));
    }
}

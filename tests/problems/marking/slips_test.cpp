// Each slip of the table by a question of its own: where it can happen, and what it gives.

#include "catch.h"
#include "problems/marking/slips.h"

#include <algorithm>

using namespace steelyard::problems;

namespace {

Given given(const std::string& name, double value_si, const std::string& unit) {
    Given stated;
    stated.name = name;
    stated.value = value_si;
    stated.value_si = value_si;
    stated.unit = unit;
    return stated;
}

Question asking(std::vector<Given> stated) {
    Question question;
    question.given = std::move(stated);
    return question;
}

/// The factors of one rule, the smallest first.
std::vector<double> factors(const Question& question, const std::string& rule) {
    std::vector<double> found;
    for (const Slip& slip : slips_of(question))
        if (slip.rule == rule)
            found.push_back(slip.factor);
    std::sort(found.begin(), found.end());
    return found;
}

const Question kBare = asking({given("advantage", 2.0, "")});
/// On the Moon: Lunar gravity 1.62 m/s² (NASA, Moon Fact Sheet).
const Question kMoon = asking({given("load_mass", 20.0, "kg"), given("gravity", 1.62, "m/s²")});
const Question kRope = asking({given("effort_distance", 0.5, "m")});
const Question kFeet = asking({given("load_arm", 2.0, "ft"), given("load_mass", 20.0, "lb")});

void check_both(const std::vector<double>& found, double factor) {
    REQUIRE(found.size() == 2);
    CHECK_THAT(found[0], WithinRel(1.0 / factor, 1e-12));
    CHECK_THAT(found[1], WithinRel(factor, 1e-12));
}

} // namespace

TEST_CASE("centimetres taken for metres give a hundred times as much, where a length is given") {
    check_both(factors(kRope, "length-not-converted"), 100.0);
    CHECK(factors(kMoon, "length-not-converted").empty());
    CHECK(factors(kBare, "length-not-converted").empty());
}

TEST_CASE("a slip between a unit and its thousand can happen anywhere") {
    check_both(factors(kBare, "thousand-slip"), 1000.0);
}

TEST_CASE("inches taken for feet give twelve times as much, where either is given") {
    check_both(factors(kFeet, "inches-for-feet"), 12.0);
    check_both(factors(asking({given("load_arm", 2.0, "in")}), "inches-for-feet"), 12.0);
    CHECK(factors(kRope, "inches-for-feet").empty());
}

TEST_CASE("gravity used twice multiplies by the gravity that the question states") {
    REQUIRE(factors(kMoon, "gravity-twice").size() == 1);
    CHECK(factors(kMoon, "gravity-twice")[0] == 1.62);
    CHECK(factors(kFeet, "gravity-twice").empty());
}

TEST_CASE("a mass taken for its weight lacks the gravity that the question states") {
    REQUIRE(factors(kMoon, "mass-for-weight").size() == 1);
    CHECK_THAT(factors(kMoon, "mass-for-weight")[0], WithinRel(1.0 / 1.62, 1e-15));
    CHECK(factors(kFeet, "mass-for-weight").empty());
}

TEST_CASE("ten for gravity is more by ten over the gravity that the question states") {
    REQUIRE(factors(kMoon, "gravity-as-ten").size() == 1);
    CHECK_THAT(factors(kMoon, "gravity-as-ten")[0], WithinRel(10.0 / 1.62, 1e-15));
    CHECK(factors(kFeet, "gravity-as-ten").empty());
}

TEST_CASE("a decimal point can stand one place off anywhere") {
    check_both(factors(kBare, "decimal-slip"), 10.0);
}

TEST_CASE("a sign can be the other one anywhere") {
    CHECK(factors(kBare, "sign") == std::vector<double>{-1.0});
}

// 1 lb = 0.45359237 kg exactly (International yard and pound agreement, 1959).
TEST_CASE("pounds taken for kilograms give more by their ratio, where either is given") {
    check_both(factors(kMoon, "pounds-for-kilograms"), 1.0 / 0.45359237);
    check_both(factors(kFeet, "pounds-for-kilograms"), 1.0 / 0.45359237);
    CHECK(factors(kRope, "pounds-for-kilograms").empty());
}

TEST_CASE("where two slips give the same number, the likelier is named first") {
    // Where g is 1, ten for gravity is ten times as much, and so is a decimal point one place off.
    std::vector<std::string_view> tenfold;
    for (const Slip& slip : slips_of(asking({given("gravity", 1.0, "m/s²")})))
        if (slip.factor == 10.0)
            tenfold.push_back(slip.rule);
    CHECK(tenfold == std::vector<std::string_view>{"gravity-as-ten", "decimal-slip"});
}

// A calculation typed where a number is asked. Values worked by hand, the work beside them.

#include "catch.h"
#include "problems/marking/typed_arithmetic.h"

#include <cmath>
#include <random>
#include <string>

using namespace steelyard::problems;

namespace {

double value(const std::string& typed) {
    const auto read = read_arithmetic(typed);
    INFO(typed);
    REQUIRE(read.has_value());
    return read->value;
}

std::string rest(const std::string& typed) {
    const auto read = read_arithmetic(typed);
    return read ? read->rest : "fault: " + read.error();
}

} // namespace

TEST_CASE("sums, products, powers and brackets are worked out in their order") {
    CHECK(value("70*0.4+50*1.2") == Approx(88.0)); // 28 + 60
    CHECK(value("4.5/37.5") == Approx(0.12));
    CHECK(value("45/37.5") == Approx(1.2)); // no fraction 45/37
    CHECK(value("(70 + 50) × 0,5") == Approx(60.0));
    CHECK(value("10 - 4 - 3") == 3.0); // from the left
    CHECK(value("24 / 4 / 3") == 2.0);
    CHECK(value("24 ÷ 4") == 6.0);
    CHECK(value("-2^2") == -4.0);
    CHECK(value("2*10^3*5") == 10000.0);
    CHECK(value("1.5e2*2") == 300.0);
    CHECK(value("70 x 0.4") == Approx(28.0));
    CHECK(value("2(3+4)") == 14.0);
    CHECK(value("√16 + sqrt(9)") == 7.0);
}

TEST_CASE("a function takes degrees, with or without brackets") {
    CHECK(value("20 sin 30") == Approx(10.0));    // the sine of 30° is one half
    CHECK(value("20 sin 35") == Approx(11.4715)); // 20 × 0.573576
    CHECK(value("20*sin(35°)") == Approx(11.4715));
    CHECK(value("2 cos 60 * 3") == Approx(3.0));
    CHECK(value("tan 45") == Approx(1.0));
    CHECK(value("sin 0.5 rad") == Approx(0.479426)); // series: 0.5 − 0.0208333 + 0.0002604 − …
    CHECK(value("asin 0.5") == Approx(30.0));
    CHECK(value("10 sin -30") == Approx(-5.0));
}

TEST_CASE("the calculation ends where the unit begins") {
    CHECK(rest("70*0.4+50*1.2 N·m") == "N*m");
    CHECK(rest("20 sin 35 N") == "N");
    CHECK(rest("20 sin 35° N") == "N");
    CHECK(rest("4.5/37.5 m") == "m");
    CHECK(rest("70*0.4").empty());
    CHECK_FALSE(read_arithmetic("12.5 kg")->computed);
    CHECK(read_arithmetic("12.5/2 kg")->computed);
}

TEST_CASE("what has no value is a fault, however it is put") {
    for (const char* typed :
         {"1/0", "1/(2-2)", "10^400", "1e999", "1/10^400", "1e300*1e300", "sqrt(-1)", "asin 2",
          "tan 90", "(-1)^0.5", "0^-1", "3+", "(3", "*3", "", "sin", "1,255*2"}) {
        INFO(typed);
        CHECK_FALSE(read_arithmetic(typed).has_value());
    }
}

TEST_CASE("length and depth are bounded") {
    CHECK_FALSE(read_arithmetic(std::string(kLongestArithmetic, '1') + "1").has_value());
    CHECK_FALSE(read_arithmetic(std::string(50, '(') + "1" + std::string(50, ')')).has_value());
    CHECK_FALSE(read_arithmetic(std::string(100, '-') + "1").has_value());
    std::string functions;
    for (int i = 0; i < 29; ++i)
        functions += "sin ";
    CHECK_FALSE(read_arithmetic(functions + "1").has_value());
}

TEST_CASE("whatever is typed gives a finite value or a fault") {
    std::mt19937 random(7);
    const std::string signs = "0123456789.,+-*/^() sincotaqrtxeE°√÷ N";
    int read = 0;
    for (int i = 0; i < 50'000; ++i) {
        std::string typed;
        for (std::size_t length = 1 + random() % 14; length > 0; --length)
            typed += signs[random() % signs.size()];
        if (const auto result = read_arithmetic(typed)) {
            ++read;
            CHECK(std::isfinite(result->value));
        }
    }
    CHECK(read > 1000);
}

TEST_CASE("what stands around a number is cut away") {
    CHECK(plain_number_text("= 187 N", true) == "187 N");
    CHECK(plain_number_text("~187", true) == "187");
    CHECK(plain_number_text("≈ 187 N", true) == "187 N");
    CHECK(plain_number_text("F = 70*0.4 = 28 N", true) == "28 N");
    CHECK(plain_number_text("about 3", true) == "3");
    CHECK(plain_number_text("1'255", true) == "1255");
    CHECK(plain_number_text("1’255’000.5 N", true) == "1255000.5 N");
    CHECK(plain_number_text("5'10", true) == "5'10"); // two digits are inches
    CHECK(plain_number_text("1'255", false) == "1'255");
}

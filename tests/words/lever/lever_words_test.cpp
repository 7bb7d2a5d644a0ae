#include "catch.h"
#include "setup/lever/direction.h"
#include "words/lever/lever_words.h"

using namespace steelyard::setup;
using namespace steelyard::words;
namespace mechanics = steelyard::mechanics;
using mechanics::kPi;

namespace {

struct Solved {
    mechanics::Lever lever;
    mechanics::LeverResult result;
    explicit Solved(const mechanics::Lever& given)
        : lever(given), result(*mechanics::solve_lever(given)) {}
    std::string sentence() const { return class_sentence(lever, result); }
    std::vector<std::string> messages() const {
        return lever_messages(lever, result, UnitSystem::si);
    }
};

mechanics::Lever beam(double axis_at_m, double load_at_m, double effort_at_m,
                      double direction_rad) {
    mechanics::Lever lever;
    lever.axis_at_m = axis_at_m;
    lever.loads = {{"boat", mechanics::Weight{load_at_m, 10.0}}};
    lever.effort = {"hand", effort_at_m, direction_rad};
    return lever;
}

} // namespace

TEST_CASE("directions are said as a person would", "[words]") {
    const auto degrees = [](double value) { return direction_in_words(value * kPi / 180.0); };
    CHECK(degrees(0) == "right");
    CHECK(degrees(90) == "up");
    CHECK(degrees(-90) == "down");
    CHECK(degrees(180) == "left");
    CHECK(degrees(-180) == "left");
    CHECK(degrees(270) == "down");
    CHECK(degrees(30) == "30° above right");
    CHECK(degrees(60) == "30° right of up");
    CHECK(degrees(120) == "30° left of up");
    CHECK(degrees(150) == "30° above left");
    CHECK(degrees(200) == "20° below left");
    CHECK(degrees(250) == "20° left of down");
    CHECK(degrees(-60) == "30° right of down");
    CHECK(degrees(-20) == "20° below right");
    CHECK(degrees(3600 + 90) == "up");
}

TEST_CASE("each class has its name and its reason", "[words]") {
    using mechanics::kDown_rad;
    using mechanics::kUp_rad;
    const Solved first(beam(0.5, 0.0, 1.0, kDown_rad));
    CHECK(class_name(first.result) == "First class");
    CHECK(first.sentence() == "The axis is between the load (boat) and the effort.");
    CHECK(first.messages().empty());
    const Solved second(beam(0.0, 0.5, 1.0, kUp_rad));
    CHECK(class_name(second.result) == "Second class");
    CHECK(second.sentence() == "The load (boat) is between axis and effort.");
    const Solved third(beam(0.0, 1.0, 0.5, kUp_rad));
    CHECK(class_name(third.result) == "Third class");
    CHECK(third.sentence() == "The effort is between axis and the load (boat).");
    CHECK(Solved(beam(0.5, 0.5, 1.0, kUp_rad)).sentence().find("at the axis") != std::string::npos);
}

TEST_CASE("special cases are told, most important first", "[words]") {
    const Solved through(beam(0.0, 0.5, 1.0, 0.0));
    REQUIRE(through.messages().size() == 1);
    CHECK(through.messages()[0].find("passes through the axis") != std::string::npos);

    const Solved reversed(beam(0.0, 0.5, 1.0, mechanics::kDown_rad));
    REQUIRE_FALSE(reversed.messages().empty());
    CHECK(reversed.messages()[0].find("must pull up") != std::string::npos);

    mechanics::Lever gripped = beam(0.0, 0.5, 0.01, mechanics::kUp_rad);
    gripped.friction = {1.0, 0.05};
    const Solved locked(gripped);
    CHECK(locked.result.status == mechanics::LeverStatus::friction_locks);
    CHECK(locked.messages()[0].find("grips so hard") != std::string::npos);

    mechanics::Lever balanced = beam(0.5, 0.0, 0.75, mechanics::kDown_rad);
    balanced.loads.push_back({"other", mechanics::Weight{1.0, 10.0}});
    CHECK(Solved(balanced).messages().back().find("no effort is needed") != std::string::npos);
}

TEST_CASE("the summary tells class, effort and advantage", "[words]") {
    const Solved second(beam(0.0, 0.5, 1.0, mechanics::kUp_rad));
    CHECK(lever_summary(second.lever, second.result, UnitSystem::si) ==
          "Second class: The load (boat) is between axis and effort. The effort is 49.0\u00A0N, "
          "up, on an arm of 1.00\u00A0m. The advantage is 2.00.");
    CHECK(word_of(second.result.status) == "ok");
    CHECK(word_of(second.result.class_reason) == "load_between");
}

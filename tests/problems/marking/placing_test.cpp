// A place question answered by hand: points slide on the lever, lines and arms are judged by where
// they run.

#include "catch.h"
#include "mechanics/lever/lever_geometry.h"
#include "problems/bank/bank.h"
#include "problems/marking/placing.h"
#include "problems/question/generator.h"
#include "problems/small_bank.h"

#include <cmath>

using namespace steelyard;
using namespace steelyard::problems;
using mechanics::Vec2;

namespace {

const Bank& our_bank() {
    static const Bank bank = load_bank(std::string(STEELYARD_SOURCE_DIR) + "/question_bank");
    return bank;
}

Question question_of(const std::string& family, std::uint64_t seed = 5) {
    const Family* const found = our_bank().find_family(family);
    REQUIRE(found);
    auto question = question_of_family(our_bank(), *found, seed);
    REQUIRE(question.has_value());
    return *question;
}

Marking marked(const Question& question, const Vec2& from, const Vec2& to) {
    return mark_placed(our_bank(), question, {from, to});
}

Vec2 turned(const Vec2& v, double angle_rad) {
    return {std::cos(angle_rad) * v.x() - std::sin(angle_rad) * v.y(),
            std::sin(angle_rad) * v.x() + std::cos(angle_rad) * v.y()};
}

} // namespace

TEST_CASE("the right place, drawn, is right in every place family") {
    for (const Family& family : our_bank().families) {
        if (family.kind != Kind::place)
            continue;
        INFO(family.id);
        for (std::uint64_t seed = 0; seed < 20; ++seed) {
            const Question question = question_of(family.id, seed);
            const Placed right = right_place(question);
            CHECK(mark_placed(our_bank(), question, right).correct);
            CHECK_FALSE(mark_placed(our_bank(), question, first_place(question)).correct);
        }
    }
}

TEST_CASE("an axis slides along the lever and is marked where it comes to rest") {
    const Question question = question_of("place-the-axis");
    REQUIRE(gesture_of(question) == Gesture::point_on_lever);
    const Vec2 above = wanted_place(question)->at_m + Vec2(0.01, 0.4);
    const Placed settled_there = settled(question, {above, above});
    // The lever lies level: the nearest place of it is straight below.
    CHECK(settled_there.to_m.x() == Approx(above.x()));
    CHECK(settled_there.to_m.y() == Approx(wanted_place(question)->at_m.y()));
    CHECK(mark_placed(our_bank(), question, settled_there).correct);
    const Vec2 beyond(50.0, 0.0);
    CHECK_FALSE(mark_placed(our_bank(), question, settled(question, {beyond, beyond})).correct);
}

TEST_CASE("a line of action may be drawn from either end and of any length") {
    const Question question = question_of("place-the-line-of-a-rope");
    REQUIRE(gesture_of(question) == Gesture::line);
    const auto& lever = std::get<LeverPicture>(question.picture).lever;
    const Vec2 point = wanted_place(question)->at_m;
    const Vec2 pull = mechanics::unit_vector(lever.effort.direction_rad);
    CHECK(marked(question, point, point + 0.3 * pull).correct);
    CHECK(marked(question, point + 0.5 * pull, point - 0.2 * pull).correct);
    // 5° off is a hand's slip, 12° is another line; the tolerance is 8°.
    CHECK(marked(question, point, point + 0.4 * turned(pull, 0.087)).correct);
    CHECK_FALSE(marked(question, point, point + 0.4 * turned(pull, 0.21)).correct);
    // Beside the point by more than the tolerance.
    const Vec2 aside = 2.0 * wanted_place(question)->tolerance_m * turned(pull, 1.5708);
    CHECK_FALSE(marked(question, point + aside, point + aside + 0.4 * pull).correct);
    CHECK(marked(question, point, point).verdict == Verdict::unreadable);
}

TEST_CASE("a line at 90° to the lever gets the reason of that spot") {
    const Question question = question_of("place-the-line-of-a-rope");
    const Marking marking = marked(question, wanted_place(question)->at_m,
                                   wanted_place(question)->at_m + Vec2(0.0, 0.4));
    CHECK_FALSE(marking.correct);
    CHECK(marking.feedback.find("at 90° to the lever") != std::string::npos);
}

TEST_CASE("a moment arm runs from the axis to the foot of the perpendicular") {
    const Question question = question_of("place-the-arm-of-a-muscle");
    REQUIRE(gesture_of(question) == Gesture::arm);
    const auto& lever = std::get<LeverPicture>(question.picture).lever;
    const Vec2 axis = mechanics::point_at(lever.path_m, lever.axis_at_m);
    CHECK(marked(question, axis, wanted_place(question)->at_m).correct);
    const Vec2 insertion = mechanics::point_at(lever.path_m, lever.effort.at_m);
    CHECK(marked(question, axis, insertion).wrong_rule == "distance-for-arm");
    CHECK(marked(question, insertion, wanted_place(question)->at_m)
              .feedback.find("begins at the axis") != std::string::npos);
    // Half of it points the right way but does not reach the line.
    CHECK(marked(question, axis, axis + 0.5 * (wanted_place(question)->at_m - axis))
              .feedback.find("ends on the line") != std::string::npos);
    CHECK(marked(question, axis, Vec2(std::nan(""), 0.0)).verdict == Verdict::unreadable);
}

TEST_CASE("a place at something that the setup lacks is a fault of the file, not a crash") {
    // A bar with an axis and nothing else on it.
    const std::string family = R"toml(id = "bare"
title = "Bare bar"
skill = "arms"
strategy = "look"
kind = "place"
prompt = "Where?"
draw = { lever_length = "1 m" }
setup = { length = "lever_length", axis = 0, axis_name = "the pin" }

[place]
target = "TARGET"

[[place.spot]]
SPOT
reason = "Here."

[[place.spot]]
at = "0.5 m"
reason = "There."
)toml";
    const auto faults = [&](const std::string& target, const std::string& spot) {
        const SmallBank files;
        files.write("families/bare.toml",
                    replaced(replaced(family, "TARGET", target), "SPOT", spot));
        std::string told;
        for (const auto& fault : files.load().faults)
            told += setup::to_text(fault);
        return told;
    };
    const std::string axis = "point = \"axis\"";
    CHECK(faults("axis", axis).empty());
    for (const char* target : {"effort_line", "effort_arm", "load_arm"})
        CHECK_THAT(faults(target, axis),
                   ContainsSubstring("a target that the setup does not have"));
    for (const char* point : {"effort_point", "effort_foot", "load_point", "load_foot"})
        CHECK_THAT(faults("axis", "point = \"" + std::string(point) + "\""),
                   ContainsSubstring("a spot at something that the setup does not have"));
}

TEST_CASE("a clicked point of a line of action may lie anywhere along it, but not beside it") {
    const Question question = question_of("place-the-line-of-a-rope");
    REQUIRE(wanted_place(question)->target == PlaceTarget::effort_line);
    const auto& lever = std::get<LeverPicture>(question.picture).lever;
    const Vec2 pull = mechanics::unit_vector(lever.effort.direction_rad);
    const Vec2 across(-pull.y(), pull.x());
    const double tolerance_m = wanted_place(question)->tolerance_m;
    const auto correct = [&](double along_m, double across_m) {
        return mark_place(our_bank(), question,
                          wanted_place(question)->at_m + along_m * pull + across_m * across)
            .correct;
    };
    for (const double along_m : {-0.4, 0.0, 0.1, 0.5}) {
        CHECK(correct(along_m, 0.9 * tolerance_m));
        CHECK(correct(along_m, -0.9 * tolerance_m));
        CHECK_FALSE(correct(along_m, 1.1 * tolerance_m));
        CHECK_FALSE(correct(along_m, -1.1 * tolerance_m));
    }
}

TEST_CASE("a moment arm is drawn to within the tolerance at both of its ends") {
    const Question question = question_of("place-the-arm-of-a-muscle");
    const auto& lever = std::get<LeverPicture>(question.picture).lever;
    const Vec2 axis = mechanics::point_at(lever.path_m, lever.axis_at_m);
    const double tolerance_m = wanted_place(question)->tolerance_m;
    for (const Vec2& way : {Vec2(1.0, 0.0), Vec2(0.0, 1.0), Vec2(-1.0, 0.0), Vec2(0.0, -1.0)}) {
        const Vec2 in = 0.9 * tolerance_m * way;
        const Vec2 out = 1.1 * tolerance_m * way;
        CHECK(marked(question, axis + in, wanted_place(question)->at_m).correct);
        CHECK_FALSE(marked(question, axis + out, wanted_place(question)->at_m).correct);
        CHECK(marked(question, axis, wanted_place(question)->at_m + in).correct);
        CHECK_FALSE(marked(question, axis, wanted_place(question)->at_m + out).correct);
    }
}

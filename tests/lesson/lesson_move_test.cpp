#include "catch.h"
#include "lesson/lesson_move.h"

#include <string>

using namespace steelyard::setup;
using namespace steelyard::lesson;

namespace {

const char* const kPages = R"(kind = "lesson"
name = "Farther out"
description = "What a longer effort arm does."

[[step]]
title = "Handles"
setup = "wheelbarrow"
prompt = "Hold the handles farther back: the lift becomes …"
also = "effort arm: force arm"
reveal = "{effort} now."

[step.predict]
ask = "choice"
choices = ["smaller", "larger"]
answer = "smaller"

[step.move]
part = "effort"
key = "at"
from = "0.9 m"
to = "1.4 m"
shows = ["effort", "effort arm"]

[[step]]
setup = "curl-dumbbell"
prompt = "Through the repetition."

[step.move]
part = "progress"
from = "0 %"
to = "100 %"
shows = ["torque", "angle"]
)";

tl::expected<Lesson, InputError> parse(const std::string& text) {
    return parse_lesson(text, "x.lesson.toml", setup_folders({}));
}

Lesson pages() {
    const auto lesson = parse(kPages);
    INFO((lesson ? std::string() : to_text(lesson.error())));
    REQUIRE(lesson.has_value());
    return *lesson;
}

InputError broken(const std::string& piece, const std::string& by) {
    std::string text = kPages;
    const std::size_t at = text.find(piece);
    REQUIRE(at != std::string::npos);
    text.replace(at, piece.size(), by);
    const auto lesson = parse(text);
    INFO(text);
    REQUIRE_FALSE(lesson.has_value());
    return lesson.error();
}

double value_of(std::string_view name, const LessonStage& stage) {
    const auto solved = solve_stage(stage);
    REQUIRE(solved);
    const auto quantity = read_quantity(name, {&*solved, nullptr, nullptr});
    REQUIRE(quantity);
    return quantity->value_SI.value();
}

} // namespace

TEST_CASE("a move goes from one end to the other, and the solver follows", "[lesson]") {
    const Lesson lesson = pages();
    const LessonStep& step = lesson.steps[0];
    REQUIRE(step.move);
    CHECK(step.also == "effort arm: force arm");
    // The lift is the same torque over a longer moment arm: the product stays.
    const auto near = moved_stage(step.stage, *step.move, 0.0);
    const auto far = moved_stage(step.stage, *step.move, 1.0);
    REQUIRE((near && far));
    CHECK(value_of("effort arm", *far) > value_of("effort arm", *near));
    CHECK(std::abs(value_of("effort", *near) * value_of("effort arm", *near) -
                   value_of("effort", *far) * value_of("effort arm", *far)) < 1e-9);
}

TEST_CASE("a move begins where the stage stands", "[lesson]") {
    const Lesson lesson = pages();
    const LessonStep& step = lesson.steps[0];
    const auto share = share_now(step.stage, *step.move);
    REQUIRE(share);
    CHECK(*share == 1.0); // the handles end there
    const auto there = moved_stage(step.stage, *step.move, *share);
    REQUIRE(there);
    CHECK(std::abs(value_of("effort", *there) - value_of("effort", step.stage)) < 1e-9);
    CHECK(share_now(lesson.steps[1].stage, *lesson.steps[1].move).value() == 0.0);
}

TEST_CASE("a body is moved along its path", "[lesson]") {
    const Lesson lesson = pages();
    const LessonStep& step = lesson.steps[1];
    const auto half = moved_stage(step.stage, *step.move, 0.5);
    REQUIRE(half);
    CHECK(half->progress == 0.5);
    CHECK(value_of("torque", *half) > value_of("torque", step.stage));
}

TEST_CASE("a move is written as it was read", "[lesson]") {
    const Lesson lesson = pages();
    const auto again = parse(write_lesson(lesson));
    REQUIRE(again);
    CHECK(again->steps[0].also == lesson.steps[0].also);
    for (std::size_t i = 0; i < lesson.steps.size(); ++i) {
        const LessonMove& one = *lesson.steps[i].move;
        const LessonMove& other = again->steps[i].move.value();
        CHECK(one.part == other.part);
        CHECK(one.key == other.key);
        CHECK(one.from.value_SI == other.from.value_SI);
        CHECK(one.to.value_SI == other.to.value_SI);
        CHECK(one.shows == other.shows);
    }
}

TEST_CASE("a move that cannot be says which key and why", "[lesson]") {
    CHECK(broken("part = \"effort\"", "part = \"efort\"").mend.find("effort") != std::string::npos);
    CHECK(broken("key = \"at\"", "key = \"mass\"").key.find("move") != std::string::npos);
    CHECK(broken("to = \"1.4 m\"", "to = \"0.9 m\"").key.find("move.to") != std::string::npos);
    CHECK(broken("shows = [\"effort\", \"effort arm\"]", "shows = [\"efort\"]")
              .key.find("move.shows") != std::string::npos);
    CHECK(broken("shows = [\"effort\", \"effort arm\"]", "shows = []").expected.find("one to") !=
          std::string::npos);
    CHECK(broken("part = \"progress\"", "part = \"progress\"\nkey = \"at\"").key.find("key") !=
          std::string::npos);
}

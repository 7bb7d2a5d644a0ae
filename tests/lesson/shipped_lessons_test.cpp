#include "catch.h"
#include "lesson/lesson_quantity.h"
#include "setup/muscle/muscle_file.h"

#include <algorithm>
#include <cctype>
#include <fstream>
#include <iterator>
#include <string>

using namespace steelyard::setup;
using namespace steelyard::lesson;
namespace mechanics = steelyard::mechanics;

namespace {

const std::vector<LessonListing>& shipped() {
    static const std::vector<LessonListing> all =
        *list_lessons(std::string(STEELYARD_SOURCE_DIR) + "/assets/lessons");
    return all;
}

/// True where a digit stands outside of braces: a number that somebody typed.
bool has_typed_number(const std::string& text) {
    int depth = 0;
    return std::any_of(text.begin(), text.end(), [&](char c) {
        depth += c == '{' ? 1 : c == '}' ? -1 : 0;
        return depth == 0 && std::isdigit(static_cast<unsigned char>(c)) != 0;
    });
}

bool reads_low_back(const LessonStep& step) {
    return (step.prompt + step.reveal + step.key + step.axis).find("lumbar") != std::string::npos;
}

} // namespace

TEST_CASE("every shipped lesson reads, and there are enough for a winter") {
    CHECK(shipped().size() >= 6);
    for (const LessonListing& listing : shipped()) {
        INFO(listing.path.string());
        INFO((listing.lesson ? std::string() : to_text(listing.lesson.error())));
        REQUIRE(listing.lesson.has_value());
        CHECK(listing.lesson->steps.size() >= 4);
        CHECK(listing.lesson->steps.size() <= 8);
    }
}

TEST_CASE("no shipped lesson holds a number that the solver could give") {
    for (const LessonListing& listing : shipped())
        for (const LessonStep& step : listing.lesson->steps) {
            INFO(listing.path.string() << ": " << step.prompt);
            CHECK_FALSE(has_typed_number(step.prompt));
            CHECK_FALSE(has_typed_number(step.reveal));
            for (const std::string& choice : step.prediction.choices)
                CHECK_FALSE(has_typed_number(choice));
        }
}

TEST_CASE("a shipped lesson that reads a low back cautions its presenter") {
    for (const LessonListing& listing : shipped()) {
        const Lesson& lesson = *listing.lesson;
        if (std::none_of(lesson.steps.begin(), lesson.steps.end(), reads_low_back))
            continue;
        INFO(listing.path.string());
        std::string notes = lesson.head.note;
        for (const LessonStep& step : lesson.steps)
            notes += step.note;
        CHECK(notes.find("not medical advice") != std::string::npos);
        CHECK(notes.find("top if it hurts") != std::string::npos);
    }
}

TEST_CASE(
    "every step of a shipped lesson can be shown, and every right answer is among its choices") {
    const auto muscles = *shipped_muscles();
    for (const LessonListing& listing : shipped()) {
        std::optional<SolvedStage> before;
        for (const LessonStep& step : listing.lesson->steps) {
            INFO(listing.path.string() << ": " << step.prompt);
            auto now = solve_stage(step.stage);
            REQUIRE(now.has_value());
            const QuantitySource source{&*now, before ? &*before : nullptr, &muscles};
            const auto reveal = filled_text(step.reveal, source, UnitSystem::si);
            REQUIRE(reveal.has_value());
            CHECK(reveal->size() < 200); // three lines in front of a room
            CHECK(step.prompt.size() < 130);
            const auto right = right_choice(step.prediction, source, UnitSystem::si);
            REQUIRE(right.has_value());
            if (step.prediction.kind == PredictionKind::hands ||
                step.prediction.kind == PredictionKind::choice)
                CHECK(right->has_value());
            before = std::move(*now);
        }
    }
}

TEST_CASE("lessons are listed in their order, broken ones at the end") {
    int last = -1;
    for (const LessonListing& listing : shipped()) {
        CHECK(listing.lesson->head.order > last);
        last = listing.lesson->head.order;
    }
}

TEST_CASE("the lessons that the guide shows are lessons") {
    std::ifstream file(std::string(STEELYARD_SOURCE_DIR) + "/assets/lessons/README.md");
    const std::string guide{std::istreambuf_iterator<char>(file), {}};
    const std::string fence = "```toml\n";
    int shown = 0;
    for (std::size_t at = guide.find(fence); at != std::string::npos; at = guide.find(fence, at)) {
        at += fence.size();
        const std::string text = guide.substr(at, guide.find("```", at) - at);
        const auto lesson = parse_lesson(text, "README.md", setup_folders({}));
        INFO(text << (lesson ? std::string() : to_text(lesson.error())));
        CHECK(lesson.has_value());
        ++shown;
    }
    CHECK(shown == 2);
}

#include "catch.h"
#include "lesson/lesson.h"

#include <string>

using namespace steelyard::setup;
using namespace steelyard::lesson;

namespace {

const char* const kLesson = R"(kind = "lesson"
name = "Trolley"
description = "Who lifts what."
place = "Slipway"
order = 7
units = "SI"

[[step]]
title = "Seesaw"
setup = "seesaw"
prompt = "How hard? {load}."
reveal = "{effort}."
note = "Wait."
time = "90 s"

[step.predict]
ask = "number"
of = "effort"

[[step]]
prompt = "Closer in, it is …"
hide = ["arms"]
leave_out = ["strip"]
reveal = "{effort} instead of {effort before}."
key = "effort"

[step.predict]
ask = "hands"
choices = ["more", "less", "the same"]
answer = "{effort compared}"

[[step.change]]
part = "heavier child"
at = "95 cm"

[[step]]
setup = "hinge-bar-near"
progress = "50 %"
axis = "lumbar_flexion"
view = "front"
prompt = "Look."
)";

tl::expected<Lesson, InputError> parse(const std::string& text) {
    return parse_lesson(text, "x.lesson.toml", setup_folders({}));
}

Lesson parsed(const std::string& text) {
    const auto lesson = parse(text);
    INFO((lesson ? std::string() : to_text(lesson.error())));
    REQUIRE(lesson.has_value());
    return *lesson;
}

/// The lesson with one piece of its text replaced, which must break it.
InputError broken(const std::string& piece, const std::string& by) {
    std::string text = kLesson;
    const std::size_t at = text.find(piece);
    REQUIRE(at != std::string::npos);
    text.replace(at, piece.size(), by);
    const auto lesson = parse(text);
    INFO(text);
    REQUIRE_FALSE(lesson.has_value());
    INFO(to_text(lesson.error()));
    CHECK(lesson.error().file == "x.lesson.toml");
    return lesson.error();
}

} // namespace

TEST_CASE("a lesson is read with its steps, predictions and marks") {
    const Lesson lesson = parsed(kLesson);
    CHECK(lesson.head.name == "Trolley");
    CHECK(lesson.head.order == 7);
    REQUIRE(lesson.steps.size() == 3);

    const LessonStep& first = lesson.steps[0];
    CHECK(first.title == "Seesaw");
    CHECK(first.prediction.kind == PredictionKind::number);
    CHECK(first.prediction.of == "effort");
    CHECK(first.key == "effort"); // a number's own quantity stands large
    CHECK(first.note == "Wait.");
    CHECK(first.time_s == 90.0);

    const LessonStep& second = lesson.steps[1];
    CHECK(second.as_before());
    CHECK(second.hide == StageMarks{StageMark::arms});
    CHECK(second.leave_out == StageMarks{StageMark::strip});
    CHECK(second.prediction.choices == std::vector<std::string>{"more", "less", "the same"});

    const LessonStep& third = lesson.steps[2];
    CHECK(third.progress == 0.5);
    CHECK(third.view == BodyView::front);
    CHECK_FALSE(third.has_reveal());
}

TEST_CASE("a step without a setup goes on with the stage before, changed") {
    const Lesson lesson = parsed(kLesson);
    const auto weight_of = [&](std::size_t step) {
        const auto& lever = std::get<LeverSetup>(lesson.steps[step].stage.setup).lever;
        return std::get<steelyard::mechanics::Weight>(lever.loads[0].action);
    };
    CHECK(weight_of(0).at_m == 0.40);
    CHECK(weight_of(1).at_m == 0.95);
    CHECK(weight_of(1).mass_kg == 32.0);
    const LessonStage& body = lesson.steps[2].stage;
    CHECK(body.progress == 0.5);
    const auto& setup = std::get<BodySetup>(body.setup);
    CHECK(setup.axes[body.axis] == steelyard::mechanics::Hinge::lumbar_flexion);
    CHECK(body.view == BodyView::front);
}

TEST_CASE("what would give a hidden mark away is hidden with it") {
    const StageMarks effort = with_tell_tales({StageMark::effort});
    CHECK(effort.count(StageMark::reaction) == 1);
    CHECK(effort.count(StageMark::torques) == 1);
    CHECK(effort.count(StageMark::strip) == 1);
    CHECK(effort.count(StageMark::arms) == 0);
    const StageMarks torques = with_tell_tales({StageMark::torques});
    CHECK(torques.count(StageMark::muscles) == 1);
    CHECK(torques.count(StageMark::loads) == 0);
    CHECK(with_tell_tales({}).empty());
    const Lesson lesson = parsed(kLesson);
    CHECK(hidden_marks(lesson.steps[0]).count(StageMark::effort) == 1);
    CHECK(hidden_marks(lesson.steps[1]) == StageMarks{StageMark::arms});
    CHECK(hidden_marks(lesson.steps[2]).empty());
}

TEST_CASE("a lesson that is written reads back as the same lesson") {
    Lesson lesson = parsed(kLesson);
    // A stage of the window's own stands in the lesson itself.
    lesson.steps[2].own = lesson.steps[2].stage.setup;
    lesson.steps[2].setup_name.clear();
    lesson.steps[0].own = lesson.steps[0].stage.setup;
    lesson.steps[0].setup_name.clear();
    const std::string text = write_lesson(lesson);
    INFO(text);
    const Lesson again = parsed(text);
    CHECK(write_lesson(again) == text);
    REQUIRE(again.steps.size() == lesson.steps.size());
    for (std::size_t i = 0; i < again.steps.size(); ++i) {
        CHECK(again.steps[i].prompt == lesson.steps[i].prompt);
        CHECK(again.steps[i].reveal == lesson.steps[i].reveal);
        CHECK(again.steps[i].hide == lesson.steps[i].hide);
        CHECK(again.steps[i].leave_out == lesson.steps[i].leave_out);
        CHECK(again.steps[i].prediction.answer == lesson.steps[i].prediction.answer);
        CHECK(write_setup(again.steps[i].stage.setup) == write_setup(lesson.steps[i].stage.setup));
    }
}

TEST_CASE("a mistake in a lesson is told with its line, and what was probably meant") {
    InputError error = broken("setup = \"seesaw\"", "setup = \"seesaww\"");
    CHECK(error.line == 10);
    CHECK(error.key == "step[1].setup");
    CHECK(error.mend == "Did you mean \"seesaw\"?");

    error = broken("{effort}.", "{efort}.");
    CHECK(error.line == 12);
    CHECK(error.key == "step[1].reveal");
    CHECK(error.mend.find("did you mean \"effort\"") != std::string::npos);

    error = broken("part = \"heavier child\"", "part = \"heavier chlid\"");
    CHECK(error.line == 32);
    CHECK(error.mend == "Did you mean \"heavier child\"?");

    error = broken("at = \"95 cm\"", "at = \"9.5 m\"");
    CHECK(error.key == "step[2].change");

    error = broken("at = \"95 cm\"", "angle = 12");
    CHECK(error.found == "angle of \"heavier child\"");
    CHECK(error.expected == "one of: at, mass");

    error = broken("hide = [\"arms\"]", "hide = [\"arm\"]");
    CHECK(error.mend == "Did you mean \"arms\"?");

    error =
        broken("choices = [\"more\", \"less\", \"the same\"]", "choices = [\"more\", \"rather\"]");
    CHECK(error.mend.find("The answer here is \"less\"") != std::string::npos);

    error = broken("axis = \"lumbar_flexion\"", "axis = \"lumbar_flexon\"");
    CHECK(error.key == "step[3].axis");
    CHECK(error.mend == "Did you mean \"lumbar_flexion\"?");

    error = broken("ask = \"hands\"", "ask = \"hand\"");
    CHECK(error.mend == "Did you mean \"hands\"?");

    error = broken("progress = \"50 %\"", "progress = \"150 %\"");
    CHECK(error.key == "step[3].progress");

    error = broken("note = \"Wait.\"", "nte = \"Wait.\"");
    CHECK(error.mend == "Did you mean \"note\"?");
}

TEST_CASE("the first step of a lesson must have a setup and nothing to compare with") {
    const std::string head = "kind = \"lesson\"\nname = \"x\"\ndescription = \"y\"\n";
    CHECK(parse(head).error().key == "step");
    CHECK(parse(head + "[[step]]\nprompt = \"p\"\n").error().key == "step[1].setup");
    const auto first = parse(head + "[[step]]\nsetup = \"seesaw\"\nprompt = \"{effort before}\"\n");
    REQUIRE_FALSE(first.has_value());
    CHECK(first.error().mend.find("needs a step before") != std::string::npos);
    CHECK(parse("kind = \"lever\"\n").error().key == "kind");
}

TEST_CASE("one choice is no choice, and six cannot be read from the back row") {
    const auto with = [](const std::string& choices) {
        return broken("choices = [\"more\", \"less\", \"the same\"]", "choices = [" + choices + "]")
            .expected;
    };
    CHECK(with("\"more\"") == "two to five choices");
    CHECK(with("\"a\", \"b\", \"c\", \"d\", \"e\", \"less\"") == "two to five choices");
}

TEST_CASE("a lesson names setups of its folders, and no other file") {
    const std::string head = "kind = \"lesson\"\nname = \"x\"\ndescription = \"x\"\n[[step]]\n";
    for (const char* name : {"../../../../../../../../etc/passwd", "/etc/passwd",
                             "../setups/seesaw", "./seesaw", "..", ""}) {
        INFO(name);
        const auto lesson = parse_lesson(head + "prompt = \"x\"\nsetup = \"" + name + "\"\n", "my",
                                         setup_folders({}));
        REQUIRE_FALSE(lesson);
        CHECK(lesson.error().key == "step[1].setup");
        CHECK(to_text(lesson.error()).find("root:") == std::string::npos);
    }
    CHECK(parse_lesson(head + "prompt = \"x\"\nsetup = \"seesaw\"\n", "my", setup_folders({})));
}

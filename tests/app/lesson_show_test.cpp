#include "app/platform/key.h"
#include "app/workshop/room_stage.h"
#include "app/workshop/show_keys.h"
#include "app/workshop/show_view.h"
#include "catch.h"
#include "setup/muscle/muscle_file.h"

#include <string>

using namespace steelyard;
using namespace steelyard::app;

namespace {

const char* const kLesson = R"(kind = "lesson"
name = "Trolley"
description = "Who lifts what."

[[step]]
setup = "seesaw"
prompt = "How hard?"
reveal = "{effort}."
[step.predict]
ask = "number"
of = "effort"

[[step]]
prompt = "Closer in, it is …"
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
prompt = "Look."

[[step]]
setup = "hinge-bar-near"
prompt = "Which carries more?"
reveal = "{torque lumbar_flexion}"
[step.predict]
ask = "choice"
choices = ["both hips", "low back"]
answer = "{most loaded}"
)";

ShowModel show() {
    const auto lesson = lesson::parse_lesson(kLesson, "x.lesson.toml", lesson::setup_folders({}));
    INFO((lesson ? std::string() : setup::to_text(lesson.error())));
    REQUIRE(lesson.has_value());
    return make_show(*lesson, *setup::shipped_muscles(), setup::UnitSystem::si);
}

void press(ShowModel& model, const std::vector<KeyPress>& keys) {
    for (const ShowIntent& intent : read_show_keys(model, keys).intents)
        update(model, intent);
}

void press(ShowModel& model, int key) {
    press(model, std::vector<KeyPress>{{key, 0, 0}});
}

void type(ShowModel& model, const std::string& text) {
    for (const char c : text)
        press(model, std::vector<KeyPress>{{0, 0, static_cast<unsigned>(c)}});
}

} // namespace

TEST_CASE("the key that goes on reveals first, and only then goes to the next step") {
    ShowModel model = show();
    press(model, key::kPageDown);
    CHECK(model.step == 0);
    CHECK(model.now().revealed);
    press(model, key::kPageDown);
    CHECK(model.step == 1);
    CHECK_FALSE(model.now().revealed);
    press(model, key::kPageUp);
    CHECK(model.step == 0);
    CHECK(model.now().revealed); // it stands there as it was left
}

TEST_CASE("a step with nothing to reveal is left at once, and the last step stays") {
    ShowModel model = show();
    update(model, GoToStep{2});
    press(model, key::kRight);
    CHECK(model.step == 3);
    press(model, key::kRight);
    CHECK(model.now().revealed);
    press(model, key::kRight);
    CHECK(model.step == 3);
    press(model, key::kHome);
    CHECK(model.step == 0);
    press(model, key::kEnd);
    CHECK(model.step == 3);
}

TEST_CASE("hands are counted answer by answer, and can be taken back") {
    ShowModel model = show();
    update(model, GoToStep{1});
    type(model, "12");
    press(model, key::kEnter);
    type(model, "7");
    CHECK(model.now().hands == std::vector<int>{12, 7, 0});
    press(model, key::kBackspace);
    CHECK(model.now().hands == std::vector<int>{12, 0, 0});
    update(model, PressAnswer{2});
    update(model, PressAnswer{2});
    CHECK(model.now().hands == std::vector<int>{12, 0, 2});
    type(model, "99999");
    CHECK(model.now().hands[2] == kMostHands);
    press(model, key::kUp);
    press(model, key::kBackspace);
    CHECK(model.now().hands[1] == 0);
    CHECK_FALSE(model.now().revealed);
}

TEST_CASE("after the reveal nobody's answer changes any more") {
    ShowModel model = show();
    update(model, GoToStep{1});
    type(model, "5");
    update(model, TurnReveal{});
    type(model, "9");
    update(model, PressAnswer{0});
    press(model, key::kBackspace);
    CHECK(model.now().hands == std::vector<int>{5, 0, 0});
}

TEST_CASE("numbers are taken in the asked unit or any other of the kind") {
    ShowModel model = show();
    CHECK(asked_unit(model, 0) == "N");
    type(model, "250");
    press(model, key::kEnter);
    type(model, "30 kgf");
    press(model, key::kEnter);
    REQUIRE(model.now().guesses_SI.size() == 2);
    CHECK(model.now().guesses_SI[0] == 250.0);
    CHECK(model.now().guesses_SI[1] == Approx(30.0 * 9.80665));
    type(model, "12 cm");
    press(model, key::kEnter);
    CHECK(model.now().guesses_SI.size() == 2);
    CHECK(model.message.find("length") != std::string::npos);
    CHECK(model.entry == "12 cm"); // it can be mended
    press(model, key::kEscape);
    CHECK(model.entry.empty());
    press(model, key::kBackspace);
    CHECK(model.now().guesses_SI.size() == 1);
}

TEST_CASE("numbers are taken after the reveal too, and letters after a digit are its unit") {
    ShowModel model = show();
    press(model, key::kPageDown);
    REQUIRE(model.now().revealed);
    const ShowModel before = model;
    type(model, "25 ft lbf");
    CHECK(model.entry == "25 ft lbf");
    CHECK(model.step == before.step);
    CHECK_FALSE(model.blank);
    CHECK_FALSE(model.frozen);
    press(model, key::kEnter);
    CHECK(model.message.find("torque") != std::string::npos); // a force was asked for
    press(model, key::kEscape);
    CHECK(model.entry.empty());
    CHECK_FALSE(model.asks_to_leave);
    type(model, "25 lbf");
    press(model, key::kEnter);
    CHECK(model.now().guesses_SI.size() == 1);
    CHECK(model.now().revealed);
    CHECK(model.step == 0);
}

TEST_CASE("a number that was not entered yet counts when the lesson goes on") {
    ShowModel model = show();
    type(model, "250");
    press(model, key::kPageDown);
    CHECK(model.now().revealed);
    CHECK(model.now().guesses_SI == std::vector<double>{250.0});
    type(model, "7 apples");
    press(model, key::kPageDown);
    CHECK(model.step == 1);
    CHECK(model.progress[0].guesses_SI.size() == 1);
}

TEST_CASE("one Enter too many does nothing in any step") {
    ShowModel model = show();
    for (std::size_t step = 0; step < model.lesson->steps.size(); ++step) {
        update(model, GoToStep{step});
        for (const bool revealed : {false, true}) {
            INFO(step << (revealed ? ", revealed" : ""));
            press(model, {{key::kEnter, 0, 0}, {key::kKeypadEnter, 0, 0}});
            CHECK(model.step == step);
            CHECK((model.now().revealed == revealed || !model.lesson_step().has_reveal()));
            CHECK(read_show_keys(model, {{key::kEnter, 0, 0}}).wish == ShowWish::none);
            update(model, TurnReveal{});
        }
    }
}

TEST_CASE("before a number is revealed no letter is a command, with Ctrl it is") {
    ShowModel model = show();
    for (const std::size_t step : {0U, 1U}) {
        update(model, GoToStep{step});
        for (const char letter : std::string("bBfFrRnNiIuUdD")) {
            const ShowInput input = read_show_keys(model, {{0, 0, static_cast<unsigned>(letter)}});
            INFO(letter);
            CHECK(input.wish == ShowWish::none);
            type(model, std::string(1, letter));
            CHECK_FALSE(model.blank);
            CHECK_FALSE(model.frozen);
            CHECK_FALSE(model.now().revealed);
            CHECK_FALSE(letters_are_commands(model));
            update(model, PassTime{60.0});
        }
    }
    press(model, {{key::kB, key::kWithControl, 0}});
    CHECK(model.blank);
    type(model, "b"); // what was hidden may always be shown again
    CHECK_FALSE(model.blank);
    CHECK(read_show_keys(model, {{key::kN, key::kWithControl, 0}}).wish == ShowWish::notes_window);
}

TEST_CASE("what is typed on after letters that mean nothing gives no commands") {
    ShowModel model = show();
    type(model, "25");
    press(model, key::kEnter);
    type(model, "ft lbf"); // the unit comes after Enter
    CHECK_FALSE(model.now().revealed);
    CHECK(model.step == 0);
    update(model, GoToStep{3}); // too late by a step, where choices are asked for
    type(model, "25 ft lbf");
    CHECK(model.step == 3);
    CHECK_FALSE(model.now().revealed);
    CHECK_FALSE(model.blank);
    CHECK_FALSE(model.frozen);
    update(model, PassTime{kQuiet_s});
    type(model, " ");
    CHECK(model.now().revealed);
}

TEST_CASE("a full stop blanks the screen, but in a number it is a decimal point") {
    ShowModel model = show();
    update(model, GoToStep{2});
    type(model, ".");
    CHECK(model.blank);
    type(model, "b");
    CHECK_FALSE(model.blank);
    update(model, GoToStep{0});
    type(model, "12.5");
    press(model, key::kEnter);
    type(model, ".5");
    press(model, key::kEnter);
    CHECK_FALSE(model.blank);
    CHECK(model.now().guesses_SI == std::vector<double>{12.5, 0.5});
    type(model, " "); // nothing is being typed: it goes on
    CHECK(model.now().revealed);
    type(model, "b"); // as remotes send it
    CHECK(model.blank);
}

TEST_CASE("the mouse counts hands up and down") {
    ShowModel model = show();
    update(model, GoToStep{1});
    update(model, PressAnswer{1});
    update(model, PressAnswer{1});
    update(model, PressAnswer{1, -1});
    CHECK(model.now().hands == std::vector<int>{0, 1, 0});
    update(model, PressAnswer{0, -1});
    CHECK(model.now().hands[0] == 0);
}

TEST_CASE("frozen, the room keeps its picture while the presenter goes ahead") {
    ShowModel model = show();
    type(model, "250");
    press(model, key::kEnter);
    press(model, {{key::kF, key::kWithControl, 0}});
    press(model, key::kPageDown);
    press(model, key::kPageDown);
    CHECK(model.step == 1);
    CHECK(model.shown().step == 0);
    CHECK_FALSE(model.shown().progress.revealed);
    CHECK(model.shown().progress.guesses_SI.size() == 1);
    press(model, {{key::kF, key::kWithControl, 0}});
    CHECK(model.shown().step == 1);
}

TEST_CASE("escape leaves at its second press, and any other key stays") {
    ShowModel model = show();
    const auto wish = [&] { return read_show_keys(model, {{key::kEscape, 0, 0}}).wish; };
    CHECK(wish() == ShowWish::none);
    press(model, key::kEscape);
    CHECK(model.asks_to_leave);
    CHECK(wish() == ShowWish::leave);
    update(model, PassTime{5.0}); // waiting is no answer
    CHECK(wish() == ShowWish::leave);
    press(model, key::kEnter);
    CHECK_FALSE(model.asks_to_leave);
    CHECK(wish() == ShowWish::none);
    type(model, "250");
    press(model, key::kEscape); // of the number
    CHECK(model.entry.empty());
    CHECK_FALSE(model.asks_to_leave);
}

TEST_CASE("letters ask for the notes window and note where no number is coming") {
    ShowModel model = show();
    update(model, GoToStep{2});
    const auto wish = [&](const KeyPress& key) { return read_show_keys(model, {key}).wish; };
    CHECK(wish({0, 0, 'n'}) == ShowWish::notes_window);
    CHECK(wish({0, 0, 'I'}) == ShowWish::notes_below);
    CHECK(wish({0, 0, 'x'}) == ShowWish::none);
    CHECK(wish({key::kF5, 0, 0}) == ShowWish::none);
    press(model, key::kF5);
    CHECK(model.step == 2);
}

TEST_CASE("the words of a step are the solver's, and the right answer follows from them") {
    const ShowModel model = show();
    // 32 kg at 1.10 m, then at 0.55 m, against 1.50 m
    const StepWords second = words_of(model, 1);
    CHECK(second.reveal == "115\u00A0N instead of 230\u00A0N.");
    CHECK(second.right == 1u);
    CHECK(second.key->number == "115");
    CHECK(second.key_name == "effort");
    CHECK(words_of(model, 3).right == 0u);
}

TEST_CASE("time is counted on the step that is open") {
    ShowModel model = show();
    update(model, PassTime{10.0});
    update(model, GoToStep{1});
    update(model, PassTime{5.0});
    update(model, GoBack{});
    update(model, PassTime{2.5});
    CHECK(model.progress[0].spent_s == 12.5);
    CHECK(model.progress[1].spent_s == 5.0);
}

TEST_CASE("a low back is never read without a caution") {
    const ShowModel model = show();
    CHECK_FALSE(reads_low_back(model.lesson->steps[0]));
    CHECK(reads_low_back(model.lesson->steps[3]));
}

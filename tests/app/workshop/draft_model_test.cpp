#include "app/workshop/draft_model.h"
#include "app/workshop/lesson_shelf.h"
#include "catch.h"

#include <filesystem>
#include <fstream>
#include <string>

using namespace steelyard;
using namespace steelyard::app;

namespace {

lesson::LessonStage stage_of(const std::string& name) {
    const std::string text = "kind = \"lesson\"\nname = \"x\"\ndescription = \"y\"\n[[step]]\n"
                             "prompt = \"p\"\nsetup = \"" +
                             name + "\"\n";
    const auto lesson = lesson::parse_lesson(text, "x.lesson.toml", lesson::setup_folders({}));
    REQUIRE(lesson.has_value());
    return lesson->steps.front().stage;
}

DraftModel two_steps() {
    DraftModel draft = new_draft("/nowhere/x.lesson.toml");
    update(draft, AddStep{stage_of("seesaw")});
    update(draft, AddStep{stage_of("hinge-bar-near")});
    return draft;
}

std::string title(const DraftModel& draft, std::size_t step) {
    return draft.state.lesson.steps[step].title;
}

/// The lesson as a reader of its file gets it.
lesson::Lesson read_back(const DraftModel& draft) {
    const auto lesson = lesson::parse_lesson(lesson::write_lesson(draft.state.lesson),
                                             "x.lesson.toml", lesson::setup_folders({}));
    INFO((lesson ? std::string() : setup::to_text(lesson.error())));
    REQUIRE(lesson.has_value());
    return *lesson;
}

} // namespace

TEST_CASE("stages become steps behind the chosen one and are whole in the lesson's own file") {
    const DraftModel draft = two_steps();
    CHECK(draft.fault.empty());
    CHECK(draft.state.chosen == 1);
    const lesson::Lesson lesson = read_back(draft);
    REQUIRE(lesson.steps.size() == 2);
    CHECK(lesson.steps[0].title == "Seesaw");
    CHECK(setup::write_setup(lesson.steps[1].stage.setup) ==
          setup::write_setup(stage_of("hinge-bar-near").setup));
}

TEST_CASE("steps are moved, taken out and brought back") {
    DraftModel draft = two_steps();
    const std::string first = title(draft, 0);
    const std::string second = title(draft, 1);
    update(draft, MoveStep{-1});
    CHECK(title(draft, 0) == second);
    CHECK(draft.state.chosen == 0);
    update(draft, MoveStep{-1}); // there is nothing above
    CHECK(title(draft, 0) == second);
    update(draft, DeleteStep{});
    CHECK(draft.state.lesson.steps.size() == 1);
    update(draft, UndoDraft{});
    update(draft, UndoDraft{});
    CHECK(title(draft, 0) == first);
    update(draft, RedoDraft{});
    CHECK(title(draft, 0) == second);
    update(draft, ChooseStep{7});
    CHECK(draft.state.chosen < 2);
}

TEST_CASE("a run of typing is one step to take back") {
    DraftModel draft = two_steps();
    update(draft, SetDraftText{DraftField::prompt, "W", 5});
    update(draft, SetDraftText{DraftField::prompt, "Wh", 5});
    update(draft, SetDraftText{DraftField::prompt, "Who", 5});
    update(draft, UndoDraft{});
    CHECK(text_of(draft.state, DraftField::prompt) == "What do you expect?");
}

TEST_CASE("a quantity that does not exist is told at once, and what is wrong is not shown") {
    DraftModel draft = two_steps();
    update(draft, SetDraftText{DraftField::reveal, "It is {tork}.", 1});
    CHECK(draft.fault.find("tork") != std::string::npos);
    CHECK(draft.fault.find("step[2].reveal") != std::string::npos);
    update(draft, SetDraftText{DraftField::reveal, "It is {torque}.", 1});
    CHECK(draft.fault.empty());
}

TEST_CASE("asking for a number makes it the one that stands large") {
    DraftModel draft = two_steps();
    update(draft, SetPrediction{lesson::PredictionKind::number});
    CHECK(draft.state.step().key == "torque"); // of a body
    update(draft, SetSought{"muscle"});
    CHECK(draft.state.step().prediction.of == "muscle");
    CHECK(draft.fault.empty());
    update(draft, SetPrediction{lesson::PredictionKind::hands});
    CHECK(draft.state.step().key.empty());
    CHECK(text_of(draft.state, DraftField::choices) == "more\nless\nthe same");
    update(draft, SetDraftText{DraftField::choices, "yes\n\nno\n", 1});
    CHECK(draft.state.step().prediction.choices == std::vector<std::string>{"yes", "no"});
}

TEST_CASE("steps of a shipped lesson stand by themselves once it is changed") {
    const auto shipped = lesson::read_lesson(std::string(STEELYARD_SOURCE_DIR) +
                                             "/assets/lessons/moment-arms.lesson.toml");
    REQUIRE(shipped.has_value());
    DraftModel draft = draft_of(*shipped, "/nowhere/x.lesson.toml");
    CHECK(draft.fault.empty());
    const std::string second = setup::write_setup(shipped->steps[1].stage.setup);
    update(draft, MoveStep{1}); // what was first comes second: the other has kept its own stage
    CHECK(setup::write_setup(draft.state.lesson.steps[0].stage.setup) == second);
    CHECK(draft.fault.find("a step before") != std::string::npos); // "{effort before}" has none now
}

TEST_CASE("a lesson is written whole into its folder and found on the shelf") {
    namespace fs = std::filesystem;
    const fs::path folder = fs::temp_directory_path() / "steelyard-draft-test" / "lessons";
    fs::remove_all(folder);
    const fs::path path = free_lesson_path(folder, "Bar close, bar far!");
    CHECK(path.filename() == "bar-close-bar-far.lesson.toml");
    DraftModel draft = two_steps();
    CHECK(save_lesson(draft.state.lesson, path).empty());
    CHECK(free_lesson_path(folder, "Bar close, bar far").filename() ==
          "bar-close-bar-far-2.lesson.toml");
    std::ofstream(folder / "broken.lesson.toml") << "kind = \"lesson\"\n";
    const LessonShelf shelf = read_lesson_shelf(folder / "none", folder);
    REQUIRE(shelf.lessons.size() == 1);
    CHECK(shelf.lessons[0].origin == LessonOrigin::own);
    CHECK(shelf.faults.size() == 2); // the broken file, and the folder that is not there
    CHECK_FALSE(save_lesson(draft.state.lesson, "/proc/nowhere/x.lesson.toml").empty());
    fs::remove_all(folder.parent_path());
}

TEST_CASE("a lesson from anywhere stands on the shelf once, as its file was last") {
    namespace fs = std::filesystem;
    const fs::path folder = fs::temp_directory_path() / "steelyard-shelf-test";
    fs::remove_all(folder);
    const DraftModel draft = two_steps();
    const fs::path own = folder / "own" / "own.lesson.toml";
    const fs::path elsewhere = folder / "elsewhere" / "visit.lesson.toml";
    CHECK(save_lesson(draft.state.lesson, own).empty());
    CHECK(save_lesson(draft.state.lesson, elsewhere).empty());
    LessonShelf shelf = read_lesson_shelf({}, own.parent_path());
    REQUIRE(shelf.lessons.size() == 1);

    std::vector<ShelvedLesson> opened;
    lesson::Lesson lesson = draft.state.lesson;
    CHECK(put_on_shelf({lesson, elsewhere, LessonOrigin::opened}, opened, shelf) == 0);
    lesson.head.name = "Another name";
    CHECK(put_on_shelf({lesson, elsewhere, LessonOrigin::opened}, opened, shelf) == 0);
    CHECK(shelf.lessons.size() == 2);
    CHECK(shelf.lessons[0].lesson.head.name == "Another name");
    REQUIRE(opened.size() == 1);
    CHECK(opened[0].lesson.head.name == "Another name");

    // One's own lesson is on the shelf anyway, and remains one's own.
    CHECK(put_on_shelf({lesson, own, LessonOrigin::opened}, opened, shelf) == 1);
    CHECK(shelf.lessons.size() == 2);
    CHECK(shelf.lessons[1].origin == LessonOrigin::own);
    CHECK(opened.size() == 1);
    fs::remove_all(folder);
}

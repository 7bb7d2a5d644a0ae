#include "app/opened_file.h"
#include "catch.h"
#include "setup/files/data_folder.h"

#include <fstream>

using namespace steelyard;
using namespace steelyard::app;
namespace fs = std::filesystem;

TEST_CASE("a file is a lesson by its ending, else a setup, and keeps its path") {
    const fs::path assets = setup::data_folder() / "assets";
    const auto lever = read_opened_file(assets / "setups" / "seesaw.setup.toml");
    REQUIRE(lever);
    CHECK(std::holds_alternative<setup::LeverSetup>(std::get<setup::Setup>(*lever)));
    const fs::path path = assets / "lessons" / "moment-arms.lesson.toml";
    const auto lesson = read_opened_file(path);
    REQUIRE(lesson);
    CHECK(std::get<LessonFile>(*lesson).path == path);
    CHECK(std::get<LessonFile>(*lesson).lesson.steps.size() > 2);
}

TEST_CASE("a file that is neither is refused with its name") {
    const fs::path folder = fs::temp_directory_path();
    for (const char* name : {"steelyard-broken.lesson.toml", "steelyard-broken.setup.toml"}) {
        std::ofstream(folder / name) << "kind = \"lessen\"\n";
        const auto file = read_opened_file(folder / name);
        REQUIRE_FALSE(file);
        CHECK(setup::to_text(file.error()).find(name) != std::string::npos);
        fs::remove(folder / name);
        CHECK_FALSE(read_opened_file(folder / name));
    }
}

TEST_CASE("an exported record is known by its ending, and read where the record is") {
    const auto file = read_opened_file("answers-1-2026-12-03.jsonl");
    REQUIRE(file);
    CHECK(std::get<RecordFile>(*file).path == "answers-1-2026-12-03.jsonl");
}

#include "app/background_work.h"
#include "app/handout/handout_choices.h"
#include "catch.h"

#include <algorithm>
#include <filesystem>
#include <new>
#include <thread>

using namespace steelyard;
using namespace steelyard::app;
using publish::HandoutFormat;

namespace {

std::vector<publish::Blueprint> shipped_blueprints() {
    std::vector<publish::Blueprint> blueprints;
    for (auto& listed : publish::list_blueprints(std::filesystem::path(STEELYARD_SOURCE_DIR) /
                                                 "assets" / "blueprints")) {
        REQUIRE(listed);
        blueprints.push_back(std::move(*listed));
    }
    REQUIRE(blueprints.size() > 1);
    return blueprints;
}

} // namespace

TEST_CASE("every row has the word in force that the choices say, and a press changes only that") {
    const auto blueprints = shipped_blueprints();
    HandoutChoices choices;
    choices.versions = 3;
    choices.formats = {HandoutFormat::pdf, HandoutFormat::csv};
    const auto rows = rows_of(choices, blueprints);
    for (std::size_t row = 0; row < rows.size(); ++row) {
        INFO(rows[row].name);
        const auto in_force = std::count_if(rows[row].words.begin(), rows[row].words.end(),
                                            [](const HandoutWord& one) { return one.in_force; });
        const RowKind kind = rows[row].kind;
        CHECK(in_force == (kind == RowKind::seed ? 0 : kind == RowKind::formats ? 2 : 1));
        for (const HandoutWord& one : rows[row].words)
            CHECK((kind == RowKind::formats || one.in_force == (one.chosen == choices)));
    }
}

TEST_CASE("a sheet is put together by topics, number, level and what it is about") {
    const problems::Bank bank =
        problems::load_bank(std::filesystem::path(STEELYARD_SOURCE_DIR) / "question_bank");
    HandoutChoices choices = with_own_sheet({}, {}, bank);
    REQUIRE(choices.own);
    const auto press = [&](const char* row_name, const char* word) {
        for (const HandoutRow& row : rows_of(choices, {}))
            for (const HandoutWord& one : row.words)
                if (row.name == std::string(row_name) && one.word == word) {
                    choices = one.chosen;
                    return true;
                }
        return false;
    };
    choices.own = publish::toggled(publish::toggled(*choices.own, "balance"), "torque-square");
    CHECK(press("Questions of each topic", "2"));
    CHECK(press("Level", "2"));
    CHECK(press("About", "things"));
    CHECK(press("Question codes", "printed"));
    const auto sheets = sheets_of(choices, {}, bank);
    REQUIRE(sheets);
    const publish::Worksheet& sheet = sheets->front();
    CHECK(sheet.prints_codes);
    REQUIRE(sheet.parts.size() == 2);
    for (const publish::SheetPart& part : sheet.parts) {
        CHECK(part.questions.size() == 2);
        for (const problems::Question& question : part.questions) {
            CHECK(question.difficulty == 2);
            CHECK(bank.find_family(question.family)->scene() == problems::Scene::thing);
        }
    }
}

TEST_CASE("choosing a sheet of the list ends putting one together, which begins from it again") {
    const problems::Bank bank =
        problems::load_bank(std::filesystem::path(STEELYARD_SOURCE_DIR) / "question_bank");
    publish::SheetChoice choice;
    choice.skills = {"balance"};
    choice.each = 6;
    const std::vector<publish::Blueprint> list{publish::blueprint_of(choice, bank, "mine")};
    HandoutChoices choices = with_own_sheet({}, list, bank);
    CHECK(choices.own == choice);
    choices = with_blueprint(choices, list, 0);
    CHECK_FALSE(choices.own);
}

TEST_CASE("steps go along a row and stop at its ends; the seed goes on") {
    const auto blueprints = shipped_blueprints();
    HandoutChoices choices;
    CHECK(stepped(choices, blueprints, 2, 1).versions == 2);
    CHECK(stepped(choices, blueprints, 2, -1).versions == 1);
    CHECK(stepped(choices, blueprints, 3, 1).paper == publish::PaperSize::letter);
    CHECK(stepped(choices, blueprints, 1, 1).seed == 2);
    choices.seed = 0;
    CHECK(stepped(choices, blueprints, 1, -1).seed == 0);
    CHECK(stepped(choices, blueprints, rows_of(choices, blueprints).size() - 1, 1) == choices);
    CHECK(stepped(choices, {}, 0, 1) == choices); // no blueprint to choose
}

TEST_CASE("a seed is a whole number, or the code of a sheet") {
    const auto blueprints = shipped_blueprints();
    const HandoutChoices choices;
    CHECK(read_seed("42", choices, blueprints)->seed == 42);
    const auto code = read_seed("boathouse-9-C", choices, blueprints);
    REQUIRE(code);
    CHECK(blueprints[code->blueprint].name == "boathouse");
    CHECK(code->seed == 9);
    CHECK(code->versions == 3);
    CHECK(read_seed("boathouse-9-A", choices, blueprints)->versions == 2);
    CHECK(read_seed("boathouse-9", choices, blueprints)->versions == 1);
    for (const char* typed :
         {"", "-1", "1.5", "x", "nosuch-9-A", "99999999999999999999999", "42 "}) {
        INFO(typed);
        CHECK_FALSE(read_seed(typed, choices, blueprints));
    }
}

TEST_CASE("the button counts the files that are written") {
    HandoutChoices choices;
    CHECK(files_of(choices) == 2); // a sheet and its key
    choices.versions = 3;
    choices = toggled(choices, HandoutFormat::qti21);
    CHECK(files_of(choices) == 9);
    choices = toggled(toggled(choices, HandoutFormat::qti21), HandoutFormat::pdf);
    CHECK(files_of(choices) == 0);
}

TEST_CASE("work beside the frames gives its result once, stops when told, and survives a throw") {
    BackgroundWork<int> work;
    CHECK_FALSE(work.running());
    const auto result = [&] {
        for (;;) {
            if (auto taken = work.take())
                return *taken;
            std::this_thread::yield();
        }
    };
    work.start([](const publish::Progress& progress) -> tl::expected<int, std::string> {
        return progress(1, 2) ? 7 : 0;
    });
    CHECK(*result() == 7);
    CHECK_FALSE(work.running());
    CHECK_FALSE(work.take());
    work.start([](const publish::Progress& progress) -> tl::expected<int, std::string> {
        while (progress(0, 1))
            std::this_thread::yield();
        return tl::make_unexpected(std::string("stopped"));
    });
    work.stop();
    CHECK(result().error() == "stopped");
    work.start(
        [](const publish::Progress&) -> tl::expected<int, std::string> { throw std::bad_alloc(); });
    CHECK_FALSE(result());
}

#include "app/pages/pages_model.h"
#include "learner/shipped_course.h"
#include "setup/muscle/muscle_file.h"

#include <algorithm>
#include <iterator>
#include <regex>
#include <set>
#include <sstream>

namespace steelyard::app {

namespace {

const std::vector<mechanics::Muscle>& muscles() {
    static const std::vector<mechanics::Muscle> all = setup::shipped_muscles().value();
    return all;
}

PagesModel pages_of(const std::string& skill_id) {
    const auto file = pages_file(std::filesystem::path(STEELYARD_SOURCE_DIR) / "assets", skill_id);
    auto model = open_pages(file, muscles(), setup::UnitSystem::si);
    INFO((model ? std::string() : setup::to_text(model.error())));
    REQUIRE(model);
    return *std::move(model);
}

std::vector<std::string> all_skills() {
    std::vector<std::string> ids;
    for (const learner::CourseSkill& skill : learner::shipped_course().skills)
        ids.push_back(skill.skill->id);
    return ids;
}

long words_in(const std::string& text) {
    std::istringstream stream(text);
    return std::distance(std::istream_iterator<std::string>(stream), {});
}

/// The first page of all skills that waits for a guess and can be moved.
PagesModel page_to_guess() {
    for (const std::string& id : all_skills()) {
        PagesModel model = pages_of(id);
        if (!model.is_open() && model.step().move)
            return model;
    }
    FAIL("no page is guessed at and moved");
    return {};
}

} // namespace

TEST_CASE("every skill has two to five pages, each one idea in few words", "[pages]") {
    for (const std::string& id : all_skills()) {
        INFO(id);
        PagesModel model = pages_of(id);
        CHECK(model.lesson.steps.size() >= 2);
        CHECK(model.lesson.steps.size() <= 5);
        bool is_moved = false;
        for (std::size_t page = 0; page < model.lesson.steps.size(); ++page) {
            model.page = page;
            INFO("page " << page + 1);
            PageView view;
            guess(model, 0);
            view_page(model, view);
            CHECK_FALSE(view.prompt.empty());
            CHECK(words_in(view.prompt) <= 45);
            CHECK(words_in(view.reveal) <= 60);
            // What is predicted has a right answer, and what came out is said.
            CHECK((view.choices.empty() || (view.right && !view.reveal.empty())));
            is_moved = is_moved || model.step().move.has_value();
        }
        CHECK(is_moved);
    }
}

TEST_CASE("the numbers of a page follow the unit setting", "[pages]") {
    for (const std::string& id : all_skills()) {
        PagesModel model = pages_of(id);
        model.units = setup::UnitSystem::us;
        for (model.page = 0; model.page < model.lesson.steps.size(); ++model.page) {
            guess(model, 0);
            PageView view;
            view_page(model, view);
            for (const PageView::Shown& shown : view.shows) {
                INFO(id << " " << shown.name << " " << shown.value);
                CHECK(shown.value.find(" N") == std::string::npos);
                CHECK(shown.value.find(" m") == std::string::npos);
            }
            if (model.at_end())
                break;
        }
    }
}

TEST_CASE("the words of a page follow the unit setting too", "[pages]") {
    // Pages about the units themselves name both systems.
    const std::set<std::string> both{"us-and-si-units"};
    const std::regex si(R"([0-9] ?(kg|N|cm|mm|m)\b|newton|kilogram|centimetre|metre)");
    for (const std::string& id : all_skills()) {
        if (both.count(id) > 0)
            continue;
        PagesModel model = pages_of(id);
        model.units = setup::UnitSystem::us;
        for (model.page = 0; model.page < model.lesson.steps.size(); ++model.page) {
            guess(model, 0);
            PageView view;
            view_page(model, view);
            std::string text = view.prompt + ' ' + view.reveal;
            for (const std::string& choice : view.choices)
                text += ' ' + choice;
            INFO(id << ": " << text);
            CHECK_FALSE(std::regex_search(text, si));
            CHECK((view.choices.empty() || view.right));
        }
    }
}

TEST_CASE("a page shows nothing and moves nothing before it is guessed at", "[pages]") {
    PagesModel model = page_to_guess();
    PageView view;
    view_page(model, view);
    CHECK_FALSE(view.right);
    CHECK(view.reveal.empty());
    CHECK(view.shows.empty());
    const double before = model.now().share;
    move_to(model, before > 0.5 ? 0.0 : 1.0);
    CHECK(model.now().share == before);
    CHECK(turn_on(model)); // stays
    CHECK(model.page == 0);
}

TEST_CASE("the first guess counts, then the drawing follows the rail", "[pages]") {
    PagesModel model = page_to_guess();
    guess(model, 1);
    guess(model, 0);
    CHECK(model.now().guessed == std::size_t{1});
    PageView at_one;
    move_to(model, 0.0);
    view_page(model, at_one);
    PageView at_other;
    move_to(model, 7.0); // beyond the end is the end
    CHECK(model.now().share == 1.0);
    view_page(model, at_other);
    REQUIRE_FALSE(at_one.shows.empty());
    CHECK(at_one.moved_value != at_other.moved_value);
    bool follows = false;
    for (std::size_t i = 0; i < at_one.shows.size(); ++i)
        follows = follows || at_one.shows[i].value != at_other.shows[i].value;
    CHECK(follows);
}

TEST_CASE("pages are turned on and back, and the last one ends them", "[pages]") {
    PagesModel model = pages_of(all_skills().front());
    turn_back(model);
    CHECK(model.page == 0);
    while (!model.at_end()) {
        guess(model, 0);
        REQUIRE(turn_on(model));
    }
    guess(model, 0);
    CHECK_FALSE(turn_on(model));
    turn_back(model);
    CHECK(model.page == model.lesson.steps.size() - 2);
    CHECK(model.now().guessed.has_value() == !model.step().prediction.choices.empty());
}

TEST_CASE("pages that are not there are said to be missing", "[pages]") {
    const auto missing = open_pages(pages_file("nowhere", "balance"), {}, setup::UnitSystem::si);
    REQUIRE_FALSE(missing);
    CHECK(setup::to_text(missing.error()).find("balance.lesson.toml") != std::string::npos);
}

} // namespace steelyard::app

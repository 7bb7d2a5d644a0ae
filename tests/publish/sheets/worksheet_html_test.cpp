#include "catch.h"
#include "outside_program.h"
#include "publish/hostile_text.h"
#include "publish/paper_questions.h"
#include "publish/question/question_text.h"
#include "publish/sheets/worksheet_html.h"
#include "publish/squeezed.h"
#include "temp_folder.h"

#include <nlohmann/json.hpp>

using namespace steelyard;
using namespace steelyard::publish;
using problems::Question;

namespace {

/// The text of a page as Python's reader sees it; fails when elements do not close in order.
std::string text_of(const std::string& page) {
    const TempFile file("page.html", page);
    const Ran ran = run_outside(
        "python3 " STEELYARD_SOURCE_DIR "/tests/publish/exchange/read_back.py html " + file.path());
    INFO(ran.out);
    REQUIRE(ran.status == 0);
    return nlohmann::json::parse(ran.out).get<std::string>();
}

} // namespace

TEST_CASE("the page holds every prompt and choice, its key every answer and step") {
    const problems::Bank bank = real_bank();
    const Worksheet sheet = sheet_of(questions_of(bank, 40));
    const auto page = worksheet_html(sheet);
    REQUIRE(page);
    const std::string on_page = squeezed(text_of(*page));
    const std::string on_key = squeezed(text_of(*key_html(sheet, bank)));
    for (const Question& question : sheet.parts.front().questions) {
        INFO(question.code << ": " << question.prompt);
        CHECK(on_page.find(squeezed(question.prompt)) != std::string::npos);
        CHECK(on_key.find(squeezed(key_answer(question))) != std::string::npos);
        for (const problems::Choice& choice : choices_of(question))
            CHECK(on_page.find(squeezed(choice.text)) != std::string::npos);
        for (const problems::Step& step : question.steps)
            CHECK(on_key.find(squeezed(step.says)) != std::string::npos);
    }
}

TEST_CASE("a page loads nothing from elsewhere and prints on the sheet's paper") {
    Worksheet sheet = sheet_of({});
    sheet.paper = PaperSize::letter;
    const std::string page = *worksheet_html(sheet);
    CHECK_THAT(page, ContainsSubstring("size: letter"));
    CHECK_THAT(page, !ContainsSubstring("<script"));
    CHECK_THAT(page, !ContainsSubstring("<link"));
    CHECK_THAT(page, !ContainsSubstring("@import"));
}

TEST_CASE("the code that makes a page again stands in the margin of every printed page") {
    Worksheet sheet = sheet_of({});
    sheet.code = "boathouse-7-A";
    CHECK_THAT(*worksheet_html(sheet),
               ContainsSubstring("@bottom-left { content: \"boathouse-7-A\""));
    CHECK_THAT(*key_html(sheet, {}),
               ContainsSubstring("@bottom-left { content: \"boathouse-7-A\""));
}

TEST_CASE("hostile text cannot break out of a page") {
    std::vector<Question> questions;
    for (const std::string& text : hostile_texts()) {
        Question question;
        question.prompt = text;
        question.asked_text = text;
        question.wanted = problems::NumberWanted{text};
        question.answer_text = text;
        question.reason = text;
        question.steps.push_back({"load", text, text, text, 1.0, "N", 0.1, {}, 0});
        questions.push_back(question);
    }
    Worksheet sheet = sheet_of(std::move(questions));
    sheet.title = "</title><script>alert(1)</script>";
    sheet.code = "\"} </style><script>alert(2)</script>";
    const auto page = worksheet_html(sheet);
    REQUIRE(page);
    CHECK_THAT(*page, !ContainsSubstring("<script"));
    CHECK(page->find("</style") == page->rfind("</style"));
    CHECK_THAT(text_of(*page), ContainsSubstring("<script>alert('x')</script>"));
    CHECK_THAT(text_of(*key_html(sheet, {})), ContainsSubstring("<script>alert('x')</script>"));
}

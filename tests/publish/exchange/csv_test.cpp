#include "catch.h"
#include "outside_program.h"
#include "publish/exchange/csv.h"
#include "publish/files/written_text.h"
#include "publish/hostile_text.h"
#include "publish/paper_questions.h"
#include "publish/question/question_figure.h"
#include "publish/question/question_text.h"
#include "temp_folder.h"

#include <nlohmann/json.hpp>

#include <cmath>
#include <limits>
#include <set>

using namespace steelyard;
using namespace steelyard::publish;
using problems::Question;
using Rows = std::vector<std::vector<std::string>>;

namespace {

Rows read_back(const std::string& csv) {
    const TempFile file("rows.csv", csv);
    const Ran ran = run_outside(
        "python3 " STEELYARD_SOURCE_DIR "/tests/publish/exchange/read_back.py csv " + file.path());
    INFO(ran.out);
    REQUIRE(ran.status == 0);
    return nlohmann::json::parse(ran.out).get<Rows>();
}

} // namespace

TEST_CASE("cells are quoted as RFC 4180 says, and formulas of spreadsheets are disarmed") {
    // RFC 4180, section 2, rules 6 and 7.
    CHECK(csv_text("plain") == "plain");
    CHECK(csv_text("a, b") == "\"a, b\"");
    CHECK(csv_text("say \"hi\"") == "\"say \"\"hi\"\"\"");
    CHECK(csv_text("=1+1") == "'=1+1");
    CHECK(csv_text("@x") == "'@x");
    CHECK(csv_text("two\nlines") == "two lines");
}

TEST_CASE("numbers are exact, and what is not finite is empty") {
    for (const double value : {0.1, -5.0, 110.36250000000001, 1e-12, 0.0})
        CHECK(std::stod(csv_number(value)) == value);
    CHECK(csv_number(std::numeric_limits<double>::quiet_NaN()).empty());
    CHECK(csv_number(std::numeric_limits<double>::infinity()).empty());
}

TEST_CASE("an independent reader gets back every question with its key") {
    const problems::Bank bank = real_bank();
    const std::vector<Question> questions = questions_of(bank, 80);
    const Rows rows = read_back(*questions_csv(bank, questions, PictureColumn::names));
    REQUIRE(rows.size() == questions.size() + 1);
    for (std::size_t i = 0; i < questions.size(); ++i) {
        const Question& question = questions[i];
        const auto& row = rows[i + 1];
        REQUIRE(row.size() == rows[0].size());
        CHECK(row[0] == question.code);
        CHECK(row[5] == one_line(question.prompt));
        CHECK(row[7] == short_answer(question));
        CHECK(row.back() == (has_figure(question) ? "pictures/" + question.code + ".svg" : ""));
        if (wanted_number(question)) {
            CHECK(std::stod(row[8]) == wanted_number(question)->value);
            CHECK(row[10] == wanted_number(question)->unit);
        }
    }
}

TEST_CASE("hostile text keeps the rows and columns of a CSV whole") {
    std::vector<Question> questions;
    for (const std::string& text : hostile_texts()) {
        Question question;
        question.prompt = text;
        question.answer_text = text;
        question.reason = text;
        questions.push_back(question);
    }
    const Rows rows = read_back(*questions_csv({}, questions, PictureColumn::empty));
    CHECK(rows.size() == questions.size() + 1);
    for (const auto& row : rows)
        CHECK(row.size() == rows[0].size());
    const Rows cards = read_back(*flash_cards_csv(questions, PictureColumn::empty));
    REQUIRE(cards.size() == questions.size() + 1);
    for (const auto& card : cards)
        CHECK(card.size() == 3);
}

TEST_CASE("a package holds the table and every drawing that it names, and nothing else") {
    const problems::Bank bank = real_bank();
    const std::vector<Question> questions = questions_of(bank, 40);
    const auto files = with_pictures("questions.csv", "table", questions);
    REQUIRE(files);
    CHECK(files->front().path == "questions.csv");
    std::set<std::string> names;
    for (std::size_t i = 1; i < files->size(); ++i) {
        CHECK_THAT((*files)[i].bytes, ContainsSubstring("<svg"));
        names.insert((*files)[i].path);
    }
    std::set<std::string> drawn;
    for (const Question& question : questions)
        if (has_figure(question))
            drawn.insert(picture_name(question));
    CHECK(drawn.size() > 5);
    CHECK(names == drawn);
}

TEST_CASE("a question whose number or place only the drawing shows is never without it") {
    const problems::Bank bank = real_bank();
    std::size_t needing = 0;
    std::size_t aided = 0;
    for (const Question& question : questions_of(bank, 400)) {
        INFO(question.code << ": " << question.prompt);
        if (!needs_figure(question)) {
            aided += has_figure(question) ? 1 : 0;
            CHECK(wanted_place(question) == nullptr);
            for (const problems::Given& given : question.given)
                CHECK((!has_figure(question) ||
                       question.prompt.find(given.text) != std::string::npos));
            continue;
        }
        ++needing;
        CHECK(has_figure(question));
    }
    CHECK(needing > 20);
    CHECK(aided > 20); // a drawing that only helps keeps nothing back
}

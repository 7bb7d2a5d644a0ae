// Sheets and keys as poppler reads them: pdftotext, pdfinfo, pdffonts.

#include "catch.h"
#include "outside_program.h"
#include "paint/paper/worksheet_pdf.h"
#include "problems/marking/marking.h"
#include "publish/hostile_text.h"
#include "publish/paper_questions.h"
#include "publish/question/question_figure.h"
#include "publish/question/question_text.h"
#include "publish/squeezed.h"
#include "temp_folder.h"

#include <algorithm>
#include <cstdlib>
#include <ctime>
#include <pugixml.hpp>
#include <utility>

using namespace steelyard;
using namespace steelyard::publish;
using namespace steelyard::paint;
using problems::Question;

namespace {

bool without_poppler() {
    if (has_program("pdftotext"))
        return false;
    WARN("skipped: pdftotext is not installed (package poppler-utils)");
    return true;
}

/// How far text reaches beyond the page on any side [pt], by poppler's own boxes; and the pages.
struct Reach {
    double beyond_pt = -1.0e9;
    int pages = 0;
    int words = 0;
};
/// Printers do not reach 20 pt at every edge (common practice).
constexpr double kUnprintable_pt = -20.0;
Reach reach_of(const std::string& pdf) {
    const Ran ran = run_outside("pdftotext -bbox " + pdf + " -");
    REQUIRE(ran.status == 0);
    pugi::xml_document document;
    REQUIRE(document.load_buffer(ran.out.data(), ran.out.size(), pugi::parse_default));
    Reach reach;
    for (const auto& found : document.select_nodes("//page")) {
        const auto page = found.node();
        ++reach.pages;
        for (const auto word : page.children("word")) {
            ++reach.words;
            const double over_right =
                word.attribute("xMax").as_double() - page.attribute("width").as_double();
            const double over_foot =
                word.attribute("yMax").as_double() - page.attribute("height").as_double();
            reach.beyond_pt = std::max({reach.beyond_pt, over_right, over_foot,
                                        -word.attribute("xMin").as_double(),
                                        -word.attribute("yMin").as_double()});
        }
    }
    return reach;
}

/// Three choices, the second of them right.
problems::ChoiceWanted one_choice(const std::string& text) {
    return {{{text, text, ""}, {"b", "", ""}, {text, text, text}}, 1};
}

Question hostile_question(const std::string& text, problems::Wanted wanted) {
    Question question;
    question.code = "K7M2Q-9XD4T";
    question.wanted = std::move(wanted);
    question.prompt = text;
    question.asked_text = text;
    question.answer_text = text;
    question.reason = text;
    question.steps.push_back({"load", text, text, text, 1.0, "N", 0.1, {}, 0});
    return question;
}

} // namespace

TEST_CASE("every prompt, choice and unit stands on the sheet, every answer and step on the key") {
    if (without_poppler())
        return;
    const problems::Bank bank = real_bank();
    const Worksheet sheet = sheet_of(questions_of(bank, 60));
    const auto pdf = worksheet_pdf(sheet);
    const auto key = key_pdf(sheet, bank);
    REQUIRE(pdf);
    REQUIRE(key);
    const TempFile sheet_file("sheet.pdf", *pdf);
    const TempFile key_file("key.pdf", *key);
    // -raw: in the order in which it was painted, so that columns do not mix.
    const std::string on_sheet =
        squeezed(run_outside("pdftotext -raw " + sheet_file.path() + " -").out);
    const std::string on_key =
        squeezed(run_outside("pdftotext -raw " + key_file.path() + " -").out);
    CHECK_THAT(on_sheet, ContainsSubstring(squeezed(sheet.title)));
    CHECK_THAT(on_sheet, ContainsSubstring(sheet.code));
    CHECK_THAT(on_key, ContainsSubstring(sheet.code));
    for (const Question& question : sheet.parts.front().questions) {
        INFO(question.code << ": " << question.prompt);
        CHECK(on_sheet.find(squeezed(question.prompt)) != std::string::npos);
        for (const problems::Choice& choice : choices_of(question))
            CHECK(on_sheet.find(squeezed(choice.text)) != std::string::npos);
        if (const problems::NumberWanted* number = wanted_number(question))
            CHECK(on_sheet.find(squeezed(number->unit)) != std::string::npos);
        CHECK(on_key.find(squeezed(key_answer(question))) != std::string::npos);
        CHECK(on_key.find(question.code) != std::string::npos);
        for (const problems::Step& step : question.steps) {
            CHECK(on_key.find(squeezed(step.says)) != std::string::npos);
            // The index of a symbol is set apart, so only the numbers after it are one run.
            CHECK(on_key.find(squeezed(step.result)) != std::string::npos);
        }
        for (const Mistake& mistake : mistakes(bank, question))
            CHECK(on_key.find(squeezed(mistake.title)) != std::string::npos);
    }
}

TEST_CASE("the key's answers are right by the marker, and its mistakes are wrong") {
    const problems::Bank bank = real_bank();
    for (const Question& question : questions_of(bank, 200, 5)) {
        INFO(question.code << ": " << question.prompt);
        CHECK(problems::mark(bank, question, short_answer(question)).correct);
        for (const Mistake& mistake : mistakes(bank, question)) {
            INFO(mistake.answer);
            CHECK_FALSE(problems::mark(bank, question, mistake.answer).correct);
        }
    }
}

TEST_CASE("nothing stands outside the page: hostile and endless texts, every size") {
    if (without_poppler())
        return;
    const problems::Bank bank = real_bank();
    std::vector<Question> questions = questions_of(bank, 40);
    for (std::string text : hostile_texts()) {
        text.resize(std::min<std::size_t>(text.size(), 600)); // a word of more than a page's lines
        questions.push_back(hostile_question(text, problems::NumberWanted{"N"}));
        questions.push_back(hostile_question(text, one_choice(text)));
    }
    Worksheet sheet = sheet_of(std::move(questions));
    for (const bool large : {false, true}) {
        for (const PaperSize paper : {PaperSize::a4, PaperSize::letter}) {
            sheet.large_print = large;
            sheet.paper = paper;
            for (const auto& pdf : {worksheet_pdf(sheet), key_pdf(sheet, bank)}) {
                REQUIRE(pdf);
                const TempFile file("reach.pdf", *pdf);
                const Reach reach = reach_of(file.path());
                CHECK(reach.words > 1500);
                CHECK(reach.pages > 5);
                CHECK(reach.beyond_pt <= kUnprintable_pt);
            }
        }
    }
}

TEST_CASE("200 questions stand on their pages") {
    if (without_poppler())
        return;
    const problems::Bank bank = real_bank();
    const Worksheet sheet = sheet_of(questions_of(bank, 200));
    for (const auto& pdf : {worksheet_pdf(sheet), key_pdf(sheet, bank)}) {
        REQUIRE(pdf);
        const Reach reach = reach_of(TempFile("reach.pdf", *pdf).path());
        CHECK(reach.words > 5000);
        CHECK(reach.pages > 20);
        CHECK(reach.beyond_pt <= kUnprintable_pt);
    }
}

TEST_CASE("no question is parted from its drawing or its answer line, in any size") {
    if (without_poppler())
        return;
    const problems::Bank bank = real_bank();
    const std::vector<Question> questions = questions_of(bank, 60);
    for (const PaperSize paper : {PaperSize::letter, PaperSize::a4}) {
        for (const Question& question : questions) {
            if (!wanted_number(question))
                continue;
            Worksheet sheet = sheet_of({question});
            sheet.paper = paper;
            sheet.large_print = true;
            INFO(question.code);
            const TempFile pdf("one.pdf", *worksheet_pdf(sheet));
            const Ran text = run_outside("pdftotext -layout " + pdf.path() + " -");
            // Form feeds part pages: none between the prompt and the unit of the answer line.
            const std::size_t from = text.out.find("1 ", text.out.find("All sorts"));
            const std::size_t answer = text.out.rfind(" =");
            REQUIRE(from != std::string::npos);
            REQUIRE(answer != std::string::npos);
            CHECK(text.out.substr(from, answer - from).find('\f') == std::string::npos);
        }
    }
}

TEST_CASE("units are not broken at their stroke") {
    if (without_poppler())
        return;
    // The same words a little longer each time: one of them would end a line within the unit.
    std::vector<Question> questions;
    for (std::size_t i = 0; i < 40; ++i) {
        const std::string text = "Take g = 9.81 m/s² and " + std::string(i, 'x') +
                                 " again g = 9.81 m/s², so that it wraps.";
        questions.push_back(hostile_question(text, one_choice(text)));
    }
    const Ran text = run_outside(
        "pdftotext -layout " +
        TempFile("units.pdf", *worksheet_pdf(sheet_of(std::move(questions)))).path() + " -");
    CHECK_THAT(text.out, ContainsSubstring("m/s²"));
    CHECK_THAT(text.out, !ContainsSubstring("m/\n"));
}

TEST_CASE("fonts are embedded, the document has a title, a structure and the sheet's size") {
    if (without_poppler())
        return;
    const problems::Bank bank = real_bank();
    Worksheet sheet = sheet_of(questions_of(bank, 6));
    sheet.title = "Levers & \"arms\"";
    sheet.paper = PaperSize::letter;
    const TempFile file("about.pdf", *worksheet_pdf(sheet));
    const Ran about = run_outside("pdfinfo " + file.path());
    CHECK_THAT(about.out, ContainsSubstring("Levers & \"arms\""));
    CHECK_THAT(about.out, ContainsSubstring("612 x 792")); // Letter, ANSI size A
    const std::string tight = squeezed(about.out);
    CHECK_THAT(tight, ContainsSubstring("Tagged:yes"));
    CHECK_THAT(tight, ContainsSubstring("Keywords:" + sheet.code));
    const Ran structure = run_outside("pdfinfo -struct " + file.path());
    CHECK_THAT(structure.out, !ContainsSubstring("Warning"));
    for (const char* element : {"Document", "H1 (block)", "H2 (block)", "P (block)", "Figure"})
        CHECK_THAT(structure.out, ContainsSubstring(element));
    const Ran fonts = run_outside("pdffonts " + file.path());
    CHECK_THAT(fonts.out, ContainsSubstring("Inter"));
    CHECK_THAT(fonts.out, !ContainsSubstring(" no  ")); // columns emb, sub, uni
}

TEST_CASE("the same sheet gives the same bytes at any time, in every time zone") {
    const problems::Bank bank = real_bank();
    const Worksheet sheet = sheet_of(questions_of(bank, 3));
    const auto pdf = worksheet_pdf(sheet);
    REQUIRE(pdf);
    for (const char* zone : {"Asia/Tokyo", "America/New_York", "UTC"}) {
        INFO(zone);
        REQUIRE(setenv("TZ", zone, 1) == 0);
        tzset();
        CHECK(*pdf == *worksheet_pdf(sheet));
    }
    CHECK(pdf->find("/CreationDate") == std::string::npos);
    CHECK(pdf->find("/ModDate") == std::string::npos);
}

TEST_CASE("a document states its language, shows its title and is sound by an outside reader") {
    const problems::Bank bank = real_bank();
    const Worksheet sheet = sheet_of(questions_of(bank, 5));
    for (const auto& pdf :
         {worksheet_pdf(sheet), key_pdf(sheet, bank), worksheet_pdf(sheet_of({}))}) {
        REQUIRE(pdf);
        CHECK(pdf->find("/Lang (en)") != std::string::npos);
        CHECK(pdf->find("/ViewerPreferences << /DisplayDocTitle true >>") != std::string::npos);
        CHECK(pdf->find("/MarkInfo << /Marked true >>") != std::string::npos);
        if (has_program("qpdf")) {
            const TempFile file("sound.pdf", *pdf);
            const Ran ran = run_outside("qpdf --check " + file.path());
            INFO(ran.out);
            CHECK(ran.status == 0);
        }
    }
}

TEST_CASE("every figure says what it shows, and nothing is painted outside of the structure") {
    if (!has_program("qpdf")) {
        WARN("skipped: there is no qpdf here");
        return;
    }
    const problems::Bank bank = real_bank();
    const std::vector<Question> questions = questions_of(bank, 40);
    const auto drawn = std::count_if(questions.begin(), questions.end(), has_figure);
    REQUIRE(drawn > 10);
    const Worksheet sheet = sheet_of(questions);
    const auto look_at = [](const std::string& pdf) {
        const TempFile file("structure.pdf", pdf);
        return run_outside("python3 " STEELYARD_SOURCE_DIR "/tests/paint/paper/pdf_structure.py " +
                           file.path());
    };
    CHECK(look_at(*worksheet_pdf(sheet)).out == std::to_string(drawn) + " figures\n");
    CHECK(look_at(*key_pdf(sheet, bank)).out == "0 figures\n");
    // The words are those of the drawing; PDF strings beyond ASCII are UTF-16.
    const TempFile file("words.pdf", *worksheet_pdf(sheet));
    const Ran plain = run_outside("qpdf --qdf --object-streams=disable " + file.path() + " -");
    CHECK_THAT(plain.out, ContainsSubstring("drawn to scale"));
}

TEST_CASE("what is read aloud has the questions' numbers in order, and gaps between words") {
    if (without_poppler())
        return;
    const problems::Bank bank = real_bank();
    const Worksheet sheet = sheet_of(questions_of(bank, 12));
    const TempFile file("aloud.pdf", *worksheet_pdf(sheet));
    // As pdfinfo prints the structure: elements with their text in quotes.
    const std::string read = run_outside("pdfinfo -struct-text " + file.path()).out;
    std::size_t at = 0;
    for (std::size_t i = 0; i < 12; ++i) {
        const std::string number = "\"" + std::to_string(i + 1) + "\"";
        INFO(number);
        const std::size_t found = read.find(number, at);
        REQUIRE(found != std::string::npos);
        const std::string& prompt = sheet.parts.front().questions[i].prompt;
        const std::size_t words = read.find(prompt.substr(0, 30), found);
        CHECK(words != std::string::npos);
        CHECK(words - found < 60);
        at = found;
    }
    CHECK_THAT(read, ContainsSubstring("\"A "));
    CHECK_THAT(read, ContainsSubstring("Name Date Score / 12"));
    // A blank where a line was broken: a prompt of several lines is one run of words.
    std::string joined;
    for (const char c : read)
        joined += c == '\n' ? ' ' : c;
    for (const Question& question : sheet.parts.front().questions)
        CHECK(squeezed(joined).find(squeezed(question.prompt.substr(0, 60))) != std::string::npos);
    CHECK(joined.find(sheet.parts.front().questions[0].prompt.substr(0, 80)) != std::string::npos);
}

TEST_CASE("the key of a long paper keeps its answers at a glance in columns of one page") {
    if (without_poppler())
        return;
    const problems::Bank bank = real_bank();
    const TempFile file("glance.pdf", *key_pdf(sheet_of(questions_of(bank, 250)), bank));
    const std::string text = run_outside("pdftotext -layout -l 4 " + file.path() + " -").out;
    // Form feeds part pages: none between the first and the last number of a group.
    for (const auto& [first, last] :
         {std::pair{"1 ", "100 "}, {"101 ", "200 "}, {"201 ", "250 "}}) {
        INFO(first);
        std::size_t from = ("\n" + text).find(std::string("\n") + first);
        if (from == std::string::npos)
            from = text.find(std::string("\f") + first) + 1; // the first line of a page
        REQUIRE(from != std::string::npos);
        const std::size_t to = text.find(std::string(" ") + last, from);
        REQUIRE(to != std::string::npos);
        CHECK(text.substr(from, to - from).find('\f') == std::string::npos);
    }
    CHECK_THAT(text, ContainsSubstring(short_title(bank, questions_of(bank, 1).front())));
}

TEST_CASE("a paper written page by page is the paper that is made in memory") {
    const problems::Bank bank = real_bank();
    const Worksheet sheet = sheet_of(questions_of(bank, 8));
    const TempFolder folder;
    REQUIRE(write_sheet_pdf(folder / "sheet.pdf", sheet, bank, SheetSide::questions));
    REQUIRE(write_sheet_pdf(folder / "key.pdf", sheet, bank, SheetSide::key));
    CHECK(content(folder / "sheet.pdf") == *worksheet_pdf(sheet));
    CHECK(content(folder / "key.pdf") == *key_pdf(sheet, bank));
}

TEST_CASE("an empty sheet is a page with its head") {
    const auto pdf = worksheet_pdf(sheet_of({}));
    REQUIRE(pdf);
    CHECK(pdf->substr(0, 5) == "%PDF-");
    CHECK(key_pdf(sheet_of({}), {}));
    if (without_poppler())
        return;
    const Reach reach = reach_of(TempFile("empty.pdf", *pdf).path());
    CHECK(reach.pages == 1);
    CHECK(reach.words > 0);
}

TEST_CASE("a sheet has the pages that it counts, and no empty one after them") {
    if (without_poppler())
        return;
    const problems::Bank bank = real_bank();
    const Worksheet sheet = sheet_of(questions_of(bank, 12));
    for (const auto& pdf : {worksheet_pdf(sheet), key_pdf(sheet, bank)}) {
        REQUIRE(pdf);
        const TempFile file("counted.pdf", *pdf);
        const int pages = reach_of(file.path()).pages;
        CHECK(pages > 1);
        const std::string count = std::to_string(pages);
        const std::string words = squeezed(run_outside("pdftotext " + file.path() + " -").out);
        CHECK_THAT(words, ContainsSubstring("page" + count + "of" + count));
    }
}

TEST_CASE("work that is told to stop makes no paper") {
    const problems::Bank bank = real_bank();
    const Worksheet sheet = sheet_of(questions_of(bank, 10));
    std::size_t reported = 0;
    const auto pdf = worksheet_pdf(sheet, [&](std::size_t done, std::size_t all) {
        reported = done;
        CHECK(all >= 10);
        return done < 3;
    });
    REQUIRE_FALSE(pdf);
    CHECK(pdf.error().fault == PublishFault::stopped);
    CHECK(reported == 3);
}

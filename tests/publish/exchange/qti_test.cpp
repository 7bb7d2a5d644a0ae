// QTI packages: read back by Python's own zip and XML readers, and, as the ctest
// publish_qti_schemas, valid by the published schemas where these are at hand
// (STEELYARD_QTI_SCHEMAS).

#include "catch.h"
#include "outside_program.h"
#include "publish/exchange/qti_item.h"
#include "publish/exchange/qti_package.h"
#include "publish/exchange/stored_zip.h"
#include "publish/files/written_text.h"
#include "publish/hostile_text.h"
#include "publish/paper_questions.h"
#include "publish/question/question_figure.h"
#include "publish/question/question_text.h"
#include "publish/question/question_view.h"
#include "publish/squeezed.h"
#include "temp_folder.h"

#include <nlohmann/json.hpp>

#include <set>

using namespace steelyard;
using namespace steelyard::publish;
using problems::Question;
namespace fs = std::filesystem;

namespace {

/// What xmllint says about files of a folder; one process for all, for a schema takes it long to
/// read.
Ran validated(const TempFolder& folder, const std::vector<std::string>& names,
              const fs::path& schema) {
    std::string command = "xmllint --nonet --noout --schema " + schema.string();
    for (const std::string& name : names)
        command += " " + (folder / name);
    return run_outside(command);
}

/// The text with an attribute that no standard has, so that a check is seen to fail.
std::string broken(std::string xml) {
    const std::size_t at = xml.find("identifier=");
    REQUIRE(at != std::string::npos);
    return xml.insert(at, "juggle=\"1\" ");
}

std::vector<Question> hostile_questions() {
    std::vector<Question> questions;
    for (const std::string& text : hostile_texts()) {
        Question question;
        question.code = "H" + std::to_string(questions.size());
        question.prompt = text;
        question.answer_text = text;
        question.wanted = problems::ChoiceWanted{{{text, "", ""}, {"wrong", text, "rule"}}, 0};
        questions.push_back(question);
    }
    return questions;
}

nlohmann::json read_back(const std::string& package) {
    const TempFile file("package.zip", package);
    const Ran ran = run_outside(
        "python3 " STEELYARD_SOURCE_DIR "/tests/publish/exchange/read_back.py qti " + file.path());
    INFO(ran.out);
    REQUIRE(ran.status == 0);
    return nlohmann::json::parse(ran.out);
}

std::string package_of(const problems::Bank& bank, const std::vector<Question>& questions,
                       QtiVersion version) {
    const auto files = qti_files(bank, questions, version, "Levers & arms");
    REQUIRE(files);
    const auto zip = stored_zip(*files);
    REQUIRE(zip);
    return *zip;
}

} // namespace

// Hidden from the whole program's run: it has a ctest of its own, which is skipped without schemas.
TEST_CASE("items, test and manifest of both editions are valid by the published schemas",
          "[.][qti-schemas]") {
    const fs::path published = STEELYARD_QTI_SCHEMAS;
    INFO("STEELYARD_QTI_SCHEMAS is \"" << published.string() << "\"");
    REQUIRE(fs::is_directory(published));
    REQUIRE(has_program("xmllint"));
    // 3.0: a large profile of the edition, see the README there; so "valid by this profile".
    struct Edition {
        QtiVersion version;
        fs::path items;
        fs::path manifest;
    };
    const std::vector<Edition> editions{
        {QtiVersion::v2_1, published / "qtiv2p1" / "imsqti_v2p1.xsd", published / "imscp_v1p1.xsd"},
        {QtiVersion::v3_0, published / "qtiv3p0" / "imsqti_asiv3p0_sbacv1p0_v1p0.xsd",
         published / "qtiv3p0" / "imsqtiv3p0_imscpv1p2_v1p0.xsd"}};
    const problems::Bank bank = real_bank();
    std::vector<Question> questions = questions_of(bank, 25);
    for (const Question& hostile : hostile_questions())
        questions.push_back(hostile);
    for (const Edition& edition : editions) {
        const auto files = qti_files(bank, questions, edition.version, "Levers <&> arms");
        REQUIRE(files);
        REQUIRE(files->front().path == "imsmanifest.xml");
        const TempFolder folder;
        std::vector<std::string> items;
        for (const PackedFile& file : *files) {
            if (file.path.find(".svg") == std::string::npos) {
                folder.put(file.path, file.bytes);
                items.push_back(file.path);
            }
        }
        items.erase(items.begin());
        // The test and at least one item for each question.
        CHECK(items.size() > questions.size());
        const Ran manifest = validated(folder, {"imsmanifest.xml"}, edition.manifest);
        CAPTURE(manifest.out);
        CHECK(manifest.status == 0);
        folder.put("broken.xml", broken(files->back().bytes));
        items.push_back("broken.xml");
        const Ran ran = validated(folder, items, edition.items);
        CAPTURE(ran.out);
        CHECK_THAT(ran.out, ContainsSubstring("juggle"));
        for (const std::string& item : items) {
            const std::string good = (folder / item) + " validates";
            CHECK((ran.out.find(good) != std::string::npos) == (item != "broken.xml"));
        }
    }
}

TEST_CASE("an independent reader gets back prompt, choices, answer, tolerance and feedback") {
    const problems::Bank bank = real_bank();
    const std::vector<Question> questions = questions_of(bank, 60);
    for (const QtiVersion version : {QtiVersion::v2_1, QtiVersion::v3_0}) {
        const auto items = read_back(package_of(bank, questions, version));
        REQUIRE(items.size() == questions.size());
        std::set<std::string> titles;
        for (std::size_t i = 0; i < questions.size(); ++i) {
            const Question& question = questions[i];
            const auto& item = items[i];
            INFO(question.code << ": " << question.prompt);
            std::string paragraphs;
            for (const auto& paragraph : item["paragraphs"])
                paragraphs += paragraph.get<std::string>() + '\n';
            CHECK(squeezed(paragraphs).find(squeezed(question.prompt)) != std::string::npos);
            if (wanted_number(question)) {
                CHECK(std::stod(item["correct"][0].get<std::string>()) ==
                      wanted_number(question)->value);
                REQUIRE(item["bounds"].size() == 2);
                const double tolerance = wanted_number(question)->tolerance;
                CHECK(item["bounds"][0] == wanted_number(question)->value - tolerance);
                CHECK(item["bounds"][1] == wanted_number(question)->value + tolerance);
                // One branch for each wrong rule; feedback for those, for right, for the rest, and
                // the solution.
                CHECK(item["branches"] == question.wrong_rules.size());
                CHECK(item["feedbacks"] == question.wrong_rules.size() + 3);
                CHECK(squeezed(paragraphs).find("=" + squeezed(wanted_number(question)->unit)) !=
                      std::string::npos);
            } else {
                CHECK(item["correct"].get<std::vector<std::string>>() == right_letters(question));
            }
            for (std::size_t c = 0; c < choices_of(question).size(); ++c)
                CHECK(item["choices"][c] == choices_of(question)[c].text);
            CHECK(item["figure"].is_null() != has_figure(question));
            CHECK(item["language"] == "en");
            CHECK(item["most"] == 1.0);
            CHECK(titles.insert(item["title"].get<std::string>()).second);
            CHECK(item["solutions"] == 1);
            if (has_figure(question))
                CHECK(item["alt"] == question_figure(question, figure_size(question)).description);
        }
    }
}

TEST_CASE("indices of a worked step stand low in the feedback of both editions") {
    const problems::Bank bank = real_bank();
    for (const Question& question : questions_of(bank, 60)) {
        if (question.steps.empty() || question.steps.back().formula.find('_') == std::string::npos)
            continue;
        for (const QtiVersion version : {QtiVersion::v2_1, QtiVersion::v3_0}) {
            const std::string item = qti_item(bank, question, version, {});
            INFO(item);
            CHECK(item.find("<sub>") != std::string::npos);
            CHECK(item.find("force_") == std::string::npos);
            CHECK(item.find("torque_") == std::string::npos);
        }
        return;
    }
    FAIL("no question with an index");
}

TEST_CASE("hostile text is the same after reading it back") {
    const std::vector<Question> questions = hostile_questions();
    for (const QtiVersion version : {QtiVersion::v2_1, QtiVersion::v3_0}) {
        const auto items = read_back(package_of({}, questions, version));
        for (std::size_t i = 0; i < questions.size(); ++i)
            CHECK(items[i]["choices"][0] == one_line(choices_of(questions[i])[0].text));
    }
}

TEST_CASE("identifiers are unique and the same questions give the same bytes") {
    const problems::Bank bank = real_bank();
    const std::vector<Question> questions = questions_of(bank, 100);
    std::set<std::string> identifiers;
    for (const Question& question : questions)
        identifiers.insert(qti_identifier(question));
    CHECK(identifiers.size() == questions.size());
    CHECK(package_of(bank, questions, QtiVersion::v2_1) ==
          package_of(bank, questions, QtiVersion::v2_1));
}

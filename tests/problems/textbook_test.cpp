// Problems with printed answers, written as families with fixed numbers (textbook_bank/): the
// printed answer, typed as the book prints it, has to be marked right.
//
// Sources: OpenStax College Physics 2e, chapter 9 (g = 9.80 m/s²), and University Physics volume 1,
// chapter 12; each family names its problem in `source`.

#include "catch.h"
#include "problems/bank/bank.h"
#include "problems/marking/marking.h"
#include "problems/question/generator.h"

#include <string>

using namespace steelyard::problems;

TEST_CASE("the answers that textbooks print are marked right") {
    const Bank bank =
        load_bank(std::string(STEELYARD_SOURCE_DIR) + "/tests/problems/textbook_bank");
    for (const auto& fault : bank.faults)
        UNSCOPED_INFO(to_text(fault));
    REQUIRE(bank.faults.empty());
    struct Printed {
        const char* family;
        const char* answer;
    };
    const Printed printed[] = {
        {"seesaw", "1.30 m"},
        {"seesaw-pivot", "568 N"},
        {"wheelbarrow", "32.4 N"},
        {"wheelbarrow-ground", "409 N"},
        {"wheelbarrow-advantage", "18.5"},
        {"forearm-muscle", "470 N"},
        {"forearm-elbow", "407 N"},
        {"door", "46.8 N·m"},
        {"door-balance", "23.3 N"},
        {"nail-puller", "50 N"},
        {"head", "25 N"},
        {"toes-tendon", "2.21 × 10^3 N"},
        {"toes-pivot", "2.94 × 10^3 N"},
        {"forearm-pounds", "433.3 lbf"},
    };
    CHECK(bank.families.size() == std::size(printed));
    for (const Printed& problem : printed) {
        INFO(problem.family);
        const Family* const family = bank.find_family(problem.family);
        REQUIRE(family);
        const auto question = question_of_family(bank, *family, 0);
        REQUIRE(question.has_value());
        INFO(question->answer_text);
        CHECK(mark(bank, *question, problem.answer).correct);
        // A tenth more is wrong: the mark looks at the number.
        CHECK_FALSE(
            mark(bank, *question, std::to_string(1.1 * wanted_number(*question)->value)).correct);
    }
}

#include "catch.h"
#include "problems/bank/bank.h"
#include "problems/question/generator.h"
#include "problems/question/paper.h"
#include "problems/small_bank.h"

#include <algorithm>
#include <set>

using namespace steelyard::problems;

namespace {

const Bank& our_bank() {
    static const Bank bank = load_bank(std::string(STEELYARD_SOURCE_DIR) + "/question_bank");
    return bank;
}

std::vector<std::string> codes_of(const PaperPlan& plan) {
    const auto paper = make_paper(our_bank(), plan);
    REQUIRE(paper.has_value());
    std::vector<std::string> codes;
    for (const Question& question : *paper)
        codes.push_back(question.code);
    return codes;
}

} // namespace

TEST_CASE("a code makes its question again, word for word") {
    PaperPlan plan;
    plan.count = 200;
    plan.seed = 11;
    const auto paper = make_paper(our_bank(), plan);
    REQUIRE(paper.has_value());
    for (const Question& question : *paper) {
        const auto again = question_from_code(our_bank(), question.code);
        REQUIRE(again.has_value());
        CHECK(again->code == question.code);
        CHECK(again->prompt == question.prompt);
        REQUIRE(again->wanted.index() == question.wanted.index());
        if (const NumberWanted* number = wanted_number(question))
            CHECK(wanted_number(*again)->value == number->value);
        CHECK(again->answer_text == question.answer_text);
        CHECK(right_ones(*again) == right_ones(question));
    }
}

TEST_CASE("the parts of a paper together are the whole paper") {
    PaperPlan plan;
    plan.count = 2 * kPaperLength + 37;
    plan.seed = 5;
    const std::vector<std::string> whole = codes_of(plan);
    CHECK(whole.size() == plan.count);
    std::vector<std::string> parts;
    plan.shards = 7;
    for (plan.shard = 0; plan.shard < plan.shards; ++plan.shard) {
        const std::vector<std::string> part = codes_of(plan);
        parts.insert(parts.end(), part.begin(), part.end());
    }
    CHECK(parts == whole);
}

TEST_CASE("a paper never asks two questions of one strategy in a row, nor one question twice") {
    PaperPlan plan;
    plan.count = 120; // an hour of practice
    for (plan.seed = 0; plan.seed < 10; ++plan.seed) {
        std::vector<Instance> paper;
        REQUIRE(draw_paper(our_bank(), plan, [&](const Instance& instance) {
                    paper.push_back(instance);
                    return true;
                }).has_value());
        for (std::size_t i = 1; i < paper.size(); ++i)
            CHECK(paper[i - 1].family->strategy != paper[i].family->strategy);
        int again = 0;
        for (std::size_t i = 0; i < paper.size(); ++i)
            for (std::size_t j = 0; j < i; ++j)
                again += nearly_same(paper[i], paper[j]) ? 1 : 0;
        CHECK(again == 0);
    }
}

TEST_CASE("a question that was seen comes again only when its family has no other") {
    // Two lengths of rope, one angle: two questions.
    const SmallBank files;
    files.write("families/rope.toml", replaced(kRopeFamily, "\"1 m\"", "\"1, 2 m\""));
    const Bank bank = files.load();
    REQUIRE(bank.families.size() == 1);
    const Family& family = bank.families.front();
    const Question first = *question_of_family(bank, family, 1);
    CHECK(unseen_question(bank, family, 1, {})->code == first.code);
    for (std::uint64_t seed = 0; seed < 10; ++seed) {
        const Question second = *unseen_question(bank, family, seed, {first.code});
        CHECK(second.prompt != first.prompt);
        // Both were seen: the one longer ago.
        CHECK(unseen_question(bank, family, seed, {second.code, first.code})->prompt ==
              first.prompt);
        CHECK(unseen_question(bank, family, seed, {first.code, second.code})->prompt ==
              second.prompt);
        // A code of nothing that is here is no hindrance.
        CHECK(unseen_question(bank, family, seed, {"hello", "00000-00000"}).has_value());
    }
}

TEST_CASE("a drawing ends where enough has been seen") {
    PaperPlan plan;
    plan.count = 40;
    int seen = 0;
    CHECK(draw_paper(our_bank(), plan, [&](const Instance&) { return ++seen < 3; }).has_value());
    CHECK(seen == 3);
}

TEST_CASE("a plan that cannot be met says why") {
    PaperPlan plan;
    plan.skill = "no-such-skill";
    CHECK(make_paper(our_bank(), plan).error().message ==
          "There is no skill \"no-such-skill\" in the bank.");
    plan = {};
    plan.family = "no-such-family";
    CHECK_FALSE(make_paper(our_bank(), plan).has_value());
    plan = {};
    plan.shards = 0;
    CHECK_FALSE(make_paper(our_bank(), plan).has_value());
    CHECK_FALSE(question_from_code(our_bank(), "00000-00000").has_value());
    CHECK_FALSE(question_from_code(our_bank(), "hello").has_value());
}

TEST_CASE("a plan for one difficulty has questions of that difficulty only") {
    PaperPlan plan;
    plan.count = 10;
    plan.difficulty = 2;
    const auto paper = make_paper(our_bank(), plan);
    REQUIRE(paper.has_value());
    for (const Question& question : *paper)
        CHECK(question.difficulty == 2);
}

TEST_CASE("a collection longer than a paper has no code twice, and begins with the papers") {
    PaperPlan plan;
    plan.count = 10 * kPaperLength;
    const auto papers = make_paper(our_bank(), plan);
    const auto collection = make_collection(our_bank(), plan);
    REQUIRE(papers.has_value());
    REQUIRE(collection.has_value());
    CHECK(collection->size() == plan.count);
    std::set<std::string> codes;
    for (const Question& question : *collection)
        codes.insert(question.code);
    CHECK(codes.size() == plan.count);
    // The papers repeat some: else this test would show nothing.
    std::set<std::string> in_papers;
    for (const Question& question : *papers)
        in_papers.insert(question.code);
    CHECK(in_papers.size() < plan.count);
    for (std::size_t i = 0; i < kPaperLength; ++i)
        CHECK((*collection)[i].code == (*papers)[i].code);
}

TEST_CASE("a collection of more questions than there are is refused with their number") {
    const auto written = std::find_if(our_bank().families.begin(), our_bank().families.end(),
                                      [](const Family& family) { return !family.items.empty(); });
    REQUIRE(written != our_bank().families.end());
    PaperPlan plan;
    plan.count = 2 * kPaperLength;
    plan.family = written->id;
    const auto collection = make_collection(our_bank(), plan);
    REQUIRE_FALSE(collection.has_value());
    CHECK(collection.error().message.find("Only ") == 0);
}

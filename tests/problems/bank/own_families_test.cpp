#include "catch.h"
#include "problems/bank/bank.h"
#include "problems/question/generator.h"
#include "problems/small_bank.h"

using namespace steelyard::problems;

namespace {

constexpr const char* kOwnItem = R"(id = "rope-work"
title = "Rope work"
skill = "arms"
strategy = "look-at-the-line"
kind = "single"
system = "none"
item = [
    { id = "slack", prompt = "What does a slack rope pull with?", right = "Nothing", wrong = [ { text = "Its weight", reason = "That hangs on both ends." } ], reason = "It is not stretched." },
]
)";

/// A bank with one family, and a folder of the person's own.
struct TwoBanks {
    SmallBank ours;
    SmallBank own;
    TwoBanks() { ours.write("items/rope-work.toml", kOwnItem); }
    std::filesystem::path own_folder() const { return own.folder(); }
    Bank load() const {
        Bank bank = ours.load();
        add_own_families(bank, own.folder());
        return bank;
    }
};

} // namespace

TEST_CASE("an own family stands beside ours under a name of its own, even with the same id") {
    TwoBanks banks;
    banks.own.write("rope-work.toml", kOwnItem);
    const Bank bank = banks.load();
    CHECK(bank.own_faults.empty());
    REQUIRE(bank.find_family("own-rope-work"));
    CHECK(bank.find_family("own-rope-work")->is_own);
    CHECK_FALSE(bank.find_family("rope-work")->is_own);
    PaperPlan plan;
    plan.count = 1;
    plan.family = "own-rope-work";
    const auto paper = make_paper(bank, plan);
    REQUIRE(paper);
    const auto again = question_from_code(bank, paper->front().code);
    REQUIRE(again);
    CHECK(again->family == "own-rope-work");
}

TEST_CASE("a paper takes own families only where they are asked for") {
    TwoBanks banks;
    banks.own.write("families/ropes.toml", kOwnItem);
    const Bank bank = banks.load();
    PaperPlan plan;
    plan.count = 1;
    for (plan.seed = 1; plan.seed < 20; ++plan.seed)
        CHECK(make_paper(bank, plan)->front().family == "rope-work");
    plan.with_own = true;
    bool met = false;
    for (plan.seed = 1; plan.seed < 20; ++plan.seed)
        met = met || make_paper(bank, plan)->front().family == "own-rope-work";
    CHECK(met);
}

TEST_CASE("a broken own file is told with its line, and nothing of ours is lost") {
    TwoBanks banks;
    banks.own.write("items/broken.toml", "id = \"broken\"\ntitle = 3\n");
    banks.own.write(
        "items/no-skill.toml",
        std::string(kOwnItem).replace(std::string(kOwnItem).find("\"arms\""), 6, "\"armz\""));
    const Bank bank = banks.load();
    CHECK(bank.faults.empty());
    CHECK(bank.families.size() == 1);
    REQUIRE(bank.own_faults.size() >= 2);
    const std::string told = steelyard::setup::to_text(bank.own_faults.front());
    CHECK_THAT(told, ContainsSubstring("broken.toml"));
    CHECK_THAT(steelyard::setup::to_text(bank.own_faults.back()),
               ContainsSubstring("Did you mean \"arms\"?"));
}

TEST_CASE("a folder that is not there adds nothing") {
    TwoBanks banks;
    Bank bank = banks.ours.load();
    add_own_families(bank, "no/such/folder");
    add_own_families(bank, {});
    CHECK(bank.own_faults.empty());
    CHECK(bank.families.size() == 1);
}

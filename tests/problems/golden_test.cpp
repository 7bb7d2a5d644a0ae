// One seed, one paper, on every platform: a paper of a small bank, word for word.

#include "catch.h"
#include "problems/generator.h"
#include "problems/small_bank.h"

#include <string>

using namespace steelyard::problems;

namespace {

const char* const kLeverFamily = R"toml(id = "plank"
title = "Effort on a plank"
skill = "arms"
strategy = "balance"
kind = "numeric"
prompt = "{thing} of {load_mass} hangs {load_arm} from the pin. You push down {effort_arm} from it. How hard?"
scene = [ { thing = "A sack" }, { thing = "A keg" } ]

[draw]
load_mass = "10..60 kg step 2.5"
load_arm = "20, 25, 40 cm"
effort_arm = "0.6..1.2 m step 0.1"

[setup]
length = "load_arm + effort_arm"
axis = "load_arm"
axis_name = "the pin"
effort = { name = "your push", at = "load_arm + effort_arm", direction = "down" }

[[setup.load]]
name = "{thing}"
at = 0
mass = "load_mass"

[ask]
find = "effort_force"

[[step]]
find = "effort_force"
by = "load_mass * g * load_arm / effort_arm"
says = "Balance the torques."
)toml";

std::string sheet(const std::vector<Question>& questions) {
    std::string text;
    for (const Question& question : questions)
        text += question.code + " " + question.prompt + " " + question.answer_text + "\n";
    return text;
}

} // namespace

TEST_CASE("a seed gives the paper that it always gave") {
    const SmallBank files;
    std::string rope = replaced(kRopeFamily, "\"1 m\"", "\"0.4..2 m step 0.05\"");
    rope = replaced(rope, "\"30 °\"", "\"20, 25, 30, 35 °\"");
    files.write("families/rope.toml", rope);
    files.write("families/plank.toml", kLeverFamily);
    const Bank bank = files.load();
    REQUIRE(bank.faults.empty());
    PaperPlan plan;
    plan.count = 6;
    plan.seed = 2026;
    const auto paper = make_paper(bank, plan);
    REQUIRE(paper.has_value());
    const std::string golden = "CA7J8-WG9JW A keg of 10.0\u00a0kg hangs 25\u00a0cm from the pin. "
                               "You push down 0.9\u00a0m from it. "
                               "How hard? Take g\u00a0=\u00a09.81\u00a0m/s². 27.3\u00a0N\n"
                               "DNXG0-C1QYT A rope pulls 1.10\u00a0m from the pin at 25° to the "
                               "bar. How long is its moment "
                               "arm? 46.5\u00a0cm\n"
                               "CA7J9-VVWJ8 A sack of 17.5\u00a0kg hangs 25\u00a0cm from the pin. "
                               "You push down 1.1\u00a0m from it. "
                               "How hard? Take g\u00a0=\u00a09.81\u00a0m/s². 39.0\u00a0N\n"
                               "DNXG4-80T50 A rope pulls 1.95\u00a0m from the pin at 30° to the "
                               "bar. How long is its moment "
                               "arm? 97.5\u00a0cm\n"
                               "CA7J9-JBXW2 A keg of 15.0\u00a0kg hangs 25\u00a0cm from the pin. "
                               "You push down 0.9\u00a0m from it. "
                               "How hard? Take g\u00a0=\u00a09.81\u00a0m/s². 40.9\u00a0N\n"
                               "DNXG1-4APNK A rope pulls 1.95\u00a0m from the pin at 35° to the "
                               "bar. How long is its moment "
                               "arm? 112\u00a0cm\n";
    CHECK(sheet(*paper) == golden);
}

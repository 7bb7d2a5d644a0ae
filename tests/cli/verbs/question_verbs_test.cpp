#include "catch.h"
#include "cli/run_here.h"

#include <nlohmann/json.hpp>

using nlohmann::json;

namespace {

json generated(std::vector<std::string> arguments) {
    arguments.insert(arguments.begin(), "generate");
    arguments.push_back("--json");
    const Run run = run_here(arguments);
    INFO(run.err);
    REQUIRE(run.status == 0);
    return json::parse(run.out)["questions"];
}

} // namespace

TEST_CASE("generate prints every key of a question") {
    const json questions = generated({"--count", "40", "--seed", "3"});
    REQUIRE(questions.size() == 40);
    for (const json& question : questions)
        for (const char* key :
             {"code", "family", "skill", "prompt", "given", "asked", "unit", "answer", "tolerance",
              "choices", "correct", "steps", "wrong_rules"}) {
            INFO(key);
            CHECK(question.contains(key));
        }
}

TEST_CASE("every number that is given stands in the prompt or on the drawing") {
    for (const json& question :
         generated({"--count", "60", "--seed", "4", "--family", "effort-on-a-plank"}))
        for (const json& given : question["given"]) {
            CHECK(given.size() == 3);
            CHECK(given["value"].is_number());
            CHECK_FALSE(given["name"].get<std::string>().empty());
        }
}

TEST_CASE("the shards of a pool together are the pool") {
    const json whole = generated({"--count", "50", "--seed", "9"});
    json parts = json::array();
    for (const char* shard : {"0/3", "1/3", "2/3"})
        for (const json& question : generated({"--count", "50", "--seed", "9", "--shard", shard}))
            parts.push_back(question);
    CHECK(parts == whole);
    CHECK(run_here({"generate", "--shard", "3/3"}).status == 2);
    CHECK(run_here({"generate", "--shard", "x"}).status == 2);
}

TEST_CASE("mark says right, and wrong with the rule") {
    const json question =
        generated({"--count", "1", "--seed", "1", "--family", "effort-on-a-plank"}).front();
    const std::string code = question["code"];
    const auto marked = [&](const std::string& answer) {
        const Run run = run_here({"mark", code, answer, "--json"});
        REQUIRE(run.status == 0);
        return json::parse(run.out);
    };
    const json right = marked(question["answer_text"]);
    CHECK(right["correct"] == true);
    CHECK(right["wrong_rule"].is_null());
    CHECK(right["answer"] == question["answer"]);
    const json wrong =
        marked(std::to_string(question["wrong_rules"]["arms-swapped"].get<double>()));
    CHECK(wrong["correct"] == false);
    CHECK(wrong["wrong_rule"] == "arms-swapped");
    CHECK(wrong["feedback"].get<std::string>().find("moment arm") != std::string::npos);
    CHECK(run_here({"mark", "AAAAA-AAAAA", "1"}).status == 2);
    CHECK(run_here({"mark", code}).status == 2);
}

TEST_CASE("ask gives hints, asks about a likely mistake, and then takes a second try") {
    const json question =
        generated({"--count", "1", "--seed", "1", "--family", "effort-on-a-plank"}).front();
    const std::string code = question["code"];
    const std::string wrong = std::to_string(question["wrong_rules"]["arms-swapped"].get<double>());
    const std::string right = question["answer_text"];
    const Run mended = run_here({"ask", code}, "h\n" + wrong + "\n" + right + "\n");
    CHECK(mended.status == 0);
    CHECK_THAT(mended.out, ContainsSubstring("Find the axis"));
    CHECK_THAT(mended.out, ContainsSubstring("Try once more."));
    CHECK(mended.out.find("Load arm and effort arm swapped") == std::string::npos);
    CHECK_THAT(mended.out, ContainsSubstring("Right: " + right));
    const Run twice = run_here({"ask", code}, wrong + "\n" + wrong + "\n");
    CHECK_THAT(twice.out, ContainsSubstring("Load arm and effort arm swapped"));
    CHECK_THAT(twice.out, ContainsSubstring("Answer: " + right));
}

TEST_CASE("ask goes through the steps one by one, and leads back to the answer") {
    const json question =
        generated({"--count", "1", "--seed", "1", "--family", "effort-on-a-plank"}).front();
    const std::string right = question["answer_text"];
    // The axis, right or told; a wrong weight, which is told; q leaves the torque.
    const Run run =
        run_here({"ask", question["code"].get<std::string>()}, "s\na\n1\nq\n" + right + "\n");
    CHECK(run.status == 0);
    CHECK_THAT(run.out, ContainsSubstring("2. Turn the mass into a weight"));
    CHECK_THAT(run.out, ContainsSubstring("Not quite."));
    CHECK_THAT(run.out, ContainsSubstring("Right: " + right));
    // The last step is the answer itself and is not asked for twice.
    CHECK(run.out.find("4. ") == std::string::npos);
}

TEST_CASE("a question about a body is drawn with sticks, letters and a legend") {
    const Run ran = run_here(
        {"ask", "--family", "cable-at-the-shoulder", "--count", "1", "--seed", "1"}, "q\n");
    INFO(ran.out);
    CHECK(ran.status == 0);
    CHECK_THAT(ran.out, ContainsSubstring("\n  o axis: shoulder\n"));
    CHECK_THAT(ran.out, ContainsSubstring("\n  L load: cable\n"));
    CHECK_THAT(ran.out, ContainsSubstring("\n  . load distance: "));
    // The legend comes behind the drawing, in which every letter stands as well.
    const std::string drawing = ran.out.substr(0, ran.out.find("  o axis"));
    for (const char* mark : {"o", "L", "=", "("})
        CHECK_THAT(drawing, ContainsSubstring(mark));
}

TEST_CASE("ask ends when the input does") {
    CHECK(run_here({"ask", "--seed", "2", "--count", "3"}).status == 0);
    CHECK(run_here({"ask", "--seed", "2", "--count", "3"}, "n\nn\nn\n").status == 0);
    CHECK(run_here({"ask", "--skill", "nonsense"}).status == 2);
}

TEST_CASE("bank check finds our bank sound and a missing one not") {
    const Run ours = run_here({"bank", "check", "--instances", "20"});
    INFO(ours.err);
    CHECK(ours.status == 0);
    CHECK(ours.out.find("0 families unsound") != std::string::npos);
    const Run missing = run_here({"bank", "check", "no/such/bank"});
    CHECK(missing.status == 2);
    CHECK(missing.err.find("skills.toml") != std::string::npos);
}

#include "catch.h"
#include "cli/run_here.h"
#include "learner/record/file/database.h"
#include "learner/time/wall_clock.h"
#include "temp_folder.h"

#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <unistd.h>

using nlohmann::json;
namespace fs = std::filesystem;

namespace {

/// A folder for a record that is gone when the test is.
class DataFolder {
public:
    DataFolder() {
        static int number = 0;
        path_ = fs::temp_directory_path() / ("steelyard-cli-learner-" + std::to_string(getpid()) +
                                             "-" + std::to_string(++number));
    }
    ~DataFolder() {
        std::error_code ignored;
        fs::remove_all(path_, ignored);
    }
    DataFolder(const DataFolder&) = delete;
    DataFolder& operator=(const DataFolder&) = delete;

    Run run(std::vector<std::string> arguments, const std::string& typed = "") const {
        arguments.insert(arguments.end(), {"--data", path_.string()});
        return run_here(arguments, typed);
    }
    json progress(const std::string& learner) const {
        const Run ran = run({"progress", "--learner", learner, "--json"});
        INFO(ran.err);
        REQUIRE(ran.status == 0);
        return json::parse(ran.out);
    }
    const fs::path& path() const { return path_; }

private:
    fs::path path_;
};

/// So many times "I do not know", and an empty line to go on after an example.
std::string shrugs(int count) {
    std::string typed;
    for (int i = 0; i < count; ++i)
        typed += "?\n\n";
    return typed;
}

} // namespace

TEST_CASE("learn asks for a name, places, practises, and keeps every answer") {
    const DataFolder folder;
    const Run first = folder.run({"learn", "--seed", "3", "--count", "3"}, "Ada\n" + shrugs(30));
    INFO(first.err);
    CHECK(first.status == 0);
    CHECK_THAT(first.out, ContainsSubstring("Ada, welcome."));
    CHECK_THAT(first.out, ContainsSubstring("First a placement"));
    CHECK_THAT(first.out, ContainsSubstring("A worked example first"));
    // What is new is taught before it is shown.
    const std::size_t idea = first.out.find("First the idea:");
    CHECK(idea != std::string::npos);
    CHECK(idea < first.out.find("Worked answer"));
    CHECK_THAT(first.out, ContainsSubstring("Too early to predict a score"));
    const json progress = folder.progress("Ada");
    CHECK(progress["answers"].get<int>() >= 6);
    CHECK(progress["readiness"]["chance_to_pass"].get<double>() < 0.05);
    CHECK(progress["skills"].size() == 34);
    const Run second = folder.run({"learn", "--seed", "4"}, "q\n");
    CHECK_THAT(second.out, ContainsSubstring("Ada, welcome back."));
    CHECK(second.out.find("placement") == std::string::npos);
}

TEST_CASE("a session whose terminal was closed goes on where it was") {
    const DataFolder folder;
    const Run first = folder.run({"learn", "--learner", "Ada", "--new"}, "?\n?\n");
    CHECK_THAT(first.out, ContainsSubstring("Placement: question 3"));
    const Run second = folder.run({"learn"}, "q\n");
    CHECK_THAT(second.out, ContainsSubstring("it goes on where it was"));
    CHECK_THAT(second.out, ContainsSubstring("Placement: question 3"));
    // Who quits has ended it, and who asks for another gets one.
    CHECK(folder.run({"learn"}, "q\n").out.find("goes on where it was") == std::string::npos);
    folder.run({"learn"}, "?\n");
    CHECK(folder.run({"learn", "--fresh"}, "q\n").out.find("goes on where it was") ==
          std::string::npos);
}

TEST_CASE("a calendar names the days to the exam and what does not fit") {
    const DataFolder folder;
    folder.run({"learn", "--learner", "Ada", "--new"}, "q\n");
    const Run none = folder.run({"calendar"});
    CHECK(none.status == 0);
    CHECK_THAT(none.out, ContainsSubstring("No exam date"));
    CHECK_THAT(none.out, ContainsSubstring("--exam-date"));
    const auto today = steelyard::learner::day_of(steelyard::learner::wall_clock());
    const std::string soon = steelyard::learner::write_day(today + std::chrono::days(2));
    const Run two = folder.run({"calendar", "--exam-date", soon});
    CHECK_THAT(two.out, ContainsSubstring("Begin: "));
    CHECK_THAT(two.out, ContainsSubstring("Your exam."));
    CHECK_THAT(two.out, ContainsSubstring("Not everything fits before the exam"));
    CHECK(folder.run({"calendar", "--exam-date", "soon"}).status == 2);
}

TEST_CASE("an exam date is planned back from, and a wrong one refused") {
    const DataFolder folder;
    CHECK(folder.run({"learn", "--learner", "Ada", "--new", "--exam-date", "2199-12-03"}, "q\n")
              .status == 0);
    CHECK(folder.progress("Ada")["exam_day"] == "2199-12-03");
    const Run past = folder.run({"learn", "--exam-date", "2020-01-01"}, "q\n");
    CHECK(past.status == 2);
    CHECK_THAT(past.err, ContainsSubstring("is past"));
    CHECK(folder.run({"learn", "--exam-date", "3.12."}, "q\n").status == 2);
    CHECK(folder.run({"learn", "--exam-date", "none"}, "q\n").status == 0);
    CHECK(folder.progress("Ada")["exam_day"].is_null());
}

TEST_CASE("an unknown learner is not made by a slip of the finger") {
    const DataFolder folder;
    folder.run({"learn", "--learner", "Adalbert", "--new"}, "q\n");
    const Run slip = folder.run({"progress", "--learner", "Adalbrt"});
    CHECK(slip.status == 2);
    CHECK_THAT(slip.err, ContainsSubstring("Did you mean Adalbert?"));
}

TEST_CASE("a folder that cannot hold a record is told with the option that names another") {
    const Run ran = run_here({"progress", "--data", "/proc/steelyard"});
    CHECK(ran.status != 0);
    CHECK_THAT(ran.err, ContainsSubstring("--data"));
}

TEST_CASE("quick asks five questions and says how long they took") {
    const DataFolder folder;
    const Run quick =
        folder.run({"quick", "--learner", "Ada", "--new", "--seed", "2"}, "?\n?\n?\n?\n?\n");
    INFO(quick.err);
    CHECK(quick.status == 0);
    CHECK_THAT(quick.out, ContainsSubstring("5 of 5"));
    CHECK_THAT(quick.out, ContainsSubstring(" minutes."));
    CHECK(folder.progress("Ada")["answers"] == 5);
}

TEST_CASE("an exam gives no feedback, waits when it is left, and reports at the end") {
    const DataFolder folder;
    const Run begun = folder.run({"exam", "--learner", "Ada", "--new", "--seed", "5"},
                                 "m\nn\ng 40\ng 99\nl\nq\n");
    INFO(begun.err);
    CHECK(begun.status == 0);
    CHECK_THAT(begun.out, ContainsSubstring("40 questions, 60 minutes, 28 right to pass"));
    CHECK_THAT(begun.out, ContainsSubstring("Question 40 of 40"));
    CHECK_THAT(begun.out, ContainsSubstring("The questions are 1 to 40"));
    // The beam: a weight below the first notch, nothing answered, the pointer at the last.
    CHECK_THAT(begun.out, ContainsSubstring("\n" + std::string(60, '=') + "\n  o\n"));
    CHECK_THAT(begun.out, ContainsSubstring("  .  .  ."));
    CHECK_THAT(begun.out, ContainsSubstring("35              v\n"));
    CHECK_THAT(begun.out, ContainsSubstring("waits for you"));
    const Run ended = folder.run({"exam"}, "g 1\ne\ny\nq\n");
    CHECK(ended.status == 0);
    CHECK_THAT(ended.out, ContainsSubstring("goes on where you left it"));
    CHECK_THAT(ended.out, ContainsSubstring("   to come back to"));
    CHECK_THAT(ended.out, ContainsSubstring("0 of 40 right"));
    CHECK_THAT(ended.out, ContainsSubstring("| right: 0, x wrong: 0, . no answer: 40."));
    CHECK_THAT(ended.out, ContainsSubstring("By skill"));
    const Run review = folder.run({"exam", "--review"}, "\nq\n");
    CHECK_THAT(review.out, ContainsSubstring("Worked answer"));
    CHECK(folder.progress("Ada")["exams"][0]["of"] == 40);
}

TEST_CASE("a record goes out and comes in, as JSON Lines and as CSV, and is erased") {
    const DataFolder folder;
    const DataFolder other;
    folder.run({"quick", "--learner", "Ada", "--new", "--seed", "2"}, "?\n?\n?\n?\n?\n");
    for (const char* name : {"ada.jsonl", "ada.csv"}) {
        const std::string file = (folder.path() / name).string();
        REQUIRE(folder.run({"record", "export", file}).status == 0);
        const Run imported =
            other.run({"record", "import", file, "--learner", std::string("From ") + name});
        INFO(imported.err);
        CHECK(imported.status == 0);
        CHECK_THAT(imported.out, ContainsSubstring("5 lines, 5 questions read; 5 lines new"));
        CHECK(other.progress(std::string("From ") + name)["answers"] == 5);
    }
    const Run check = other.run({"record", "check"});
    CHECK(check.status == 0);
    CHECK_THAT(check.out, ContainsSubstring("2 learners, 10 lines, 10 questions"));
    // What is there is not written over unasked, whoever made it.
    const std::string there = (folder.path() / "ada.jsonl").string();
    std::ofstream(there) << "a letter to Ada";
    const Run refused = folder.run({"record", "export", there});
    CHECK(refused.status == 2);
    CHECK_THAT(refused.err, ContainsSubstring("ada.jsonl is there already"));
    CHECK(content(there) == "a letter to Ada");
    const Run forced = folder.run({"record", "export", there, "--force"});
    CHECK(forced.status == 0);
    CHECK_THAT(forced.out, ContainsSubstring("5 lines, 5 questions of Ada"));
    CHECK(content(there) != "a letter to Ada");
    CHECK(folder.run({"record", "erase", "--learner", "Ada"}, "no\n").status == 2);
    CHECK(folder.progress("Ada")["answers"] == 5);
    CHECK(folder.run({"record", "erase", "--learner", "Ada"}, "Ada\n").status == 0);
    CHECK(folder.run({"progress", "--learner", "Ada"}).status == 2);
    CHECK(folder.run({"record", "import", "no-such-file"}).status == 2);
    const Run nameless = other.run({"record", "import", (folder.path() / "ada.csv").string()});
    CHECK(nameless.status == 2);
    CHECK_THAT(nameless.err, ContainsSubstring("--learner"));
}

TEST_CASE("progress of damaged rows says numbers, and the check names the rows") {
    const DataFolder folder;
    folder.run({"quick", "--learner", "Ada", "--new", "--seed", "2"}, "?\n?\n?\n?\n?\n");
    {
        auto record = steelyard::learner::Database::open(folder.path() / "record.sqlite",
                                                         steelyard::learner::Access::write);
        REQUIRE(record->run("UPDATE learner SET foreseen = 9e999, foreseen_right = -9e999, "
                            "foreseen_weight = 9e999; UPDATE skill_state SET known = 9e999; "
                            "UPDATE answer SET guess = 9e999, at_ms = 9223372036854775807"));
    }
    for (const bool as_json : {false, true}) {
        std::vector<std::string> command{"progress", "--learner", "Ada"};
        if (as_json)
            command.emplace_back("--json");
        const Run run = folder.run(command);
        INFO(run.out << run.err);
        CHECK(run.status == 0);
        for (const char* worthless : {" inf", "-inf", "nan", ":null,\"low\""})
            CHECK(run.out.find(worthless) == std::string::npos);
    }
    const Run check = folder.run({"record", "check"});
    CHECK(check.status == 1);
    CHECK_THAT(check.err, ContainsSubstring("In 5 answers the value of guess"));
    CHECK_THAT(check.err, ContainsSubstring("In 5 answers the value of at_ms"));
}

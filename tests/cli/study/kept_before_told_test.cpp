// Whoever has seen the feedback has their answer in the record, whatever happens to the program.

#include "catch.h"
#include "cli/command_line.h"
#include "cli/run_here.h"
#include "publish/small_disk.h"
#include "temp_folder.h"

#include <csignal>
#include <sys/wait.h>
#include <unistd.h>

namespace {

/// What a learner types: the worked example is read, then answers, hints and shrugs.
const std::vector<std::string> kLines{"", "1", "1", "?", "h", "1", "1", "?", "1", "1", "?"};

std::string first_lines(std::size_t count) {
    std::string typed;
    for (std::size_t i = 0; i < count; ++i)
        typed += kLines[i] + '\n';
    return typed;
}

std::vector<std::string> learn_in(const std::string& folder) {
    return {"learn",          "--learner", "Ada", "--new",  "--seed", "3",
            "--no-placement", "--count",   "20",  "--data", folder};
}

/// Kills its process with the first letter that is written once all input has been read.
class Deadly : public std::streambuf {
public:
    explicit Deadly(std::istringstream& in) : in_(in) {}

private:
    int_type overflow(int_type letter) override {
        die_after_input();
        return letter;
    }
    std::streamsize xsputn(const char* /*text*/, std::streamsize count) override {
        die_after_input();
        return count;
    }
    void die_after_input() const {
        if (in_.rdbuf()->in_avail() <= 0)
            kill(getpid(), SIGKILL);
    }

    std::istringstream& in_;
};

/// Learns in a process of its own, which dies where it would say something to the last line.
void learn_until_told(const std::string& folder, const std::string& typed) {
    const pid_t child = fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        const std::vector<std::string> arguments = learn_in(folder);
        std::vector<const char*> argv{"steelyard"};
        for (const std::string& argument : arguments)
            argv.push_back(argument.c_str());
        std::istringstream in(typed);
        Deadly deadly(in);
        std::ostream out(&deadly);
        std::ostringstream err;
        steelyard::cli::run_command_line(static_cast<int>(argv.size()), argv.data(),
                                         {in, out, err});
        _exit(0);
    }
    int status = 0;
    REQUIRE(waitpid(child, &status, 0) == child);
    CHECK(WIFSIGNALED(status));
}

/// How often a text stands in another.
std::size_t times(const std::string& text, const std::string& part) {
    std::size_t count = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1))
        ++count;
    return count;
}

/// How many answers the record of a folder has.
std::size_t answers_in(const std::string& folder) {
    const Run ran = run_here({"record", "export", "--learner", "Ada", "--data", folder});
    INFO(ran.err);
    REQUIRE(ran.status == 0);
    return times(ran.out, "{\"answer\"");
}

} // namespace

TEST_CASE("an answer is in the record before anything is said to it") {
    std::size_t last = 0;
    for (std::size_t count = 1; count <= kLines.size(); ++count) {
        INFO("line " << count);
        const TempFolder killed;
        const TempFolder ended;
        learn_until_told(killed.path(), first_lines(count));
        run_here(learn_in(ended.path()), first_lines(count));
        CHECK(answers_in(killed.path()) == answers_in(ended.path()));
        last = answers_in(ended.path());
    }
    CHECK(last >= 5);
}

TEST_CASE(
    "on a disk that fills up at any byte the terminal says what is not kept, and claims nothing") {
    // A file of this process may be so large: whatever part of the record it is that finds no room.
    for (const rlim_t bytes : {0UL, 4096UL, 32768UL, 40000UL, 70000UL, 100000UL, 150000UL})
        for (const char* verb : {"learn", "exam"}) {
            const TempFolder folder;
            std::vector<std::string> command{verb,     "--learner", "Ada",    "--new",
                                             "--seed", "3",         "--data", folder.path()};
            INFO(verb << ", " << bytes << " bytes");
            Run run;
            {
                const SmallDisk disk(bytes);
                run = run_here(command, first_lines(kLines.size()));
            }
            INFO(run.out << run.err);
            CHECK((run.status == 0) == run.err.empty());
            if (run.status == 0)
                continue;
            CHECK(run.out.find("Kept") == std::string::npos);
            // What it did say to be there is.
            const Run kept =
                run_here({"record", "export", "--learner", "Ada", "--data", folder.path()});
            CHECK((kept.status == 0) >=
                  (run.out.find("A record for Ada begins") != std::string::npos));
            CHECK(times(run.out, "Noted.") <= times(kept.out, "gave_up"));
        }
}

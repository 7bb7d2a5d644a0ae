// The real program, run as a process: exit statuses as a shell sees them.

#include "catch.h"

#include <cstdio>
#include <filesystem>
#include <string>
#include <sys/wait.h>

namespace {

struct Ended {
    int status = -1;
    std::string out; ///< of both streams
};

Ended run_program(const std::string& arguments) {
    const std::string command = std::string(STEELYARD_PROGRAM) + " " + arguments + " 2>&1";
    std::FILE* pipe = popen(command.c_str(), "r");
    REQUIRE(pipe != nullptr);
    Ended ended;
    char block[4096];
    for (std::size_t n = 0; (n = std::fread(block, 1, sizeof block, pipe)) > 0;) {
        ended.out.append(block, n);
    }
    const int raw = pclose(pipe);
    ended.status = WIFEXITED(raw) ? WEXITSTATUS(raw) : -1;
    return ended;
}

} // namespace

TEST_CASE("the program ends with 0 when it has done its work") {
    CHECK(run_program("--version").status == 0);
    CHECK(run_program("--help").status == 0);
    CHECK(run_program("solve wheelbarrow").status == 0);
    CHECK(run_program("solve wheelbarrow --json").status == 0);
}

TEST_CASE("the program ends with 2 for bad input") {
    CHECK(run_program("juggle").status == 2);
    CHECK(run_program("solve").status == 2);
    CHECK(run_program("solve no-such-file").status == 2);
    CHECK(run_program("solve wheelbarrow --juggle").status == 2);
    CHECK(run_program("solve /dev/null").status == 2);
}

TEST_CASE("the program ends with 1 when its output cannot be written") {
    if (!std::filesystem::exists("/dev/full")) {
        WARN("skipped: this system has no /dev/full");
        return;
    }
    const Ended ended = run_program("solve wheelbarrow --json > /dev/full");
    CHECK(ended.status == 1);
}

TEST_CASE("an unknown verb is answered with the one that was meant") {
    CHECK_THAT(run_program("slove x").out, ContainsSubstring("Did you mean 'solve'?"));
}

// The real program, run as a process: exit statuses as a shell sees them.

#include "catch.h"
#include "outside_program.h"

#include <filesystem>
#include <string>

namespace {

Ran run_program(const std::string& arguments) {
    return run_outside(std::string(STEELYARD_PROGRAM) + " " + arguments);
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
    const Ran ended = run_program("solve wheelbarrow --json > /dev/full");
    CHECK(ended.status == 1);
}

TEST_CASE("an unknown verb is answered with the one that was meant") {
    CHECK_THAT(run_program("slove x").out, ContainsSubstring("Did you mean 'solve'?"));
}

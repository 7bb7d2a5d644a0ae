#pragma once
// Runs a program as a process, ours or one of the system.

#include "catch.h"

#include <cstdio>
#include <string>
#include <sys/wait.h>

struct Ran {
    int status = -1; ///< as a shell sees it; -1 when a signal ended it
    std::string out; ///< of both streams
};

inline Ran run_outside(const std::string& command) {
    std::FILE* pipe = popen((command + " 2>&1").c_str(), "r");
    REQUIRE(pipe != nullptr);
    Ran ran;
    char block[4096];
    for (std::size_t n = 0; (n = std::fread(block, 1, sizeof block, pipe)) > 0;)
        ran.out.append(block, n);
    const int raw = pclose(pipe);
    ran.status = WIFEXITED(raw) ? WEXITSTATUS(raw) : -1;
    return ran;
}

inline bool has_program(const std::string& name) {
    return run_outside("command -v " + name).status == 0;
}

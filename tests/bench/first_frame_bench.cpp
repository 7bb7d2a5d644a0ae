// How long it takes from starting the program to its first frame, measured by a program that opens
// a bare GLFW and ImGui window. Each is started anew, so that linking and the graphics driver count
// for both, and each says by a line in a pipe that its first frame is on the screen.

#include "setup/files/data_folder.h"

#include <benchmark/benchmark.h>
#include <cerrno>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <fcntl.h>
#include <filesystem>
#include <poll.h>
#include <spawn.h>
#include <string>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>
#include <vector>

extern char** environ; // NOLINT(readability-redundant-declaration): POSIX leaves it to us

namespace {

using Clock = std::chrono::steady_clock;
constexpr int kLongestWait_ms = 20000;

/// A named pipe in a folder of its own.
class Pipe {
public:
    Pipe() {
        std::string pattern =
            (std::filesystem::temp_directory_path() / "steelyard-XXXXXX").string();
        if (mkdtemp(pattern.data()) == nullptr)
            return;
        folder_ = pattern;
        if (mkfifo(path().c_str(), 0600) == 0)
            reader_ = open(path().c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC);
    }
    ~Pipe() {
        if (reader_ >= 0)
            close(reader_);
        std::error_code ignored;
        std::filesystem::remove_all(folder_, ignored);
    }
    Pipe(const Pipe&) = delete;
    Pipe& operator=(const Pipe&) = delete;

    std::string path() const { return (folder_ / "first-frame").string(); }
    const std::filesystem::path& folder() const { return folder_; }

    bool wait_for_line() const {
        pollfd waiting{reader_, POLLIN, 0};
        return reader_ >= 0 && poll(&waiting, 1, kLongestWait_ms) == 1 &&
               (waiting.revents & POLLIN) != 0;
    }

private:
    std::filesystem::path folder_;
    int reader_ = -1;
};

/// Starts a program that writes to the pipe after its first frame, and ends it then.
/// @param arguments  the program and what it is given, without the pipe's name
void time_first_frame(benchmark::State& state, const std::vector<std::string>& arguments) {
    for (auto _ : state) {
        const Pipe pipe;
        std::vector<std::string> all = arguments;
        all.push_back(pipe.path());
        std::vector<char*> argv;
        for (std::string& one : all)
            argv.push_back(one.data());
        argv.push_back(nullptr);
        setenv("XDG_STATE_HOME", pipe.folder().c_str(), 1); // as if it was started the first time
        const Clock::time_point start = Clock::now();
        pid_t child = 0;
        const bool started =
            posix_spawn(&child, argv.front(), nullptr, nullptr, argv.data(), environ) == 0;
        const bool shown = started && pipe.wait_for_line();
        const std::chrono::duration<double> taken = Clock::now() - start;
        if (started) {
            kill(child, SIGKILL);
            waitpid(child, nullptr, 0);
        }
        if (!shown) {
            state.SkipWithError("no first frame came: is there a display?");
            return;
        }
        state.SetIterationTime(taken.count());
    }
}

void first_frame(benchmark::State& state) {
    const std::string setup =
        (steelyard::setup::data_folder() / "assets/setups/seesaw.setup.toml").string();
    time_first_frame(state, {STEELYARD_PROGRAM, setup, "--size", "1280x720", "--narration"});
}
BENCHMARK(first_frame)->UseManualTime()->Iterations(12)->Unit(benchmark::kMillisecond);

void first_frame_of_a_bare_window(benchmark::State& state) {
    time_first_frame(state, {STEELYARD_BARE_WINDOW});
}
BENCHMARK(first_frame_of_a_bare_window)
    ->UseManualTime()
    ->Iterations(12)
    ->Unit(benchmark::kMillisecond);

} // namespace

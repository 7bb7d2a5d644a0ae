// How long a handout takes to make, and how much memory a long one takes beside a short one.

#include "paint/paper/worksheet_pdf.h"
#include "problems/question/generator.h"

#include <fmt/format.h>

#include <benchmark/benchmark.h>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace steelyard;
namespace fs = std::filesystem;

namespace {

/// A sheet of 40 questions and its key, from the questions to the bytes of both files.
void handout_of_40(benchmark::State& state) {
    const problems::Bank bank = problems::load_bank(STEELYARD_SOURCE_DIR "/question_bank");
    problems::PaperPlan plan;
    plan.count = 40;
    for (auto _ : state) {
        publish::Worksheet sheet;
        sheet.title = "Forty";
        sheet.code = "forty-1";
        if (auto questions = problems::make_paper(bank, plan))
            sheet.parts.push_back({"", std::move(*questions)});
        else
            state.SkipWithError(questions.error().message.c_str());
        benchmark::DoNotOptimize(paint::worksheet_pdf(sheet));
        benchmark::DoNotOptimize(paint::key_pdf(sheet, bank));
    }
}
BENCHMARK(handout_of_40)->Unit(benchmark::kMillisecond);

/// Runs the program and waits for it.
/// @return the largest memory that it held [kB], or 0 when it failed
long peak_memory_kB(const fs::path& blueprint, const fs::path& folder) {
    const pid_t child = fork();
    if (child == 0) {
        execl(STEELYARD_PROGRAM, STEELYARD_PROGRAM, "handout", "--blueprint", blueprint.c_str(),
              "--out", folder.c_str(), nullptr);
        _exit(127);
    }
    int status = 0;
    rusage usage{};
    const bool ended = child > 0 && wait4(child, &status, 0, &usage) == child;
    return ended && WIFEXITED(status) && WEXITSTATUS(status) == 0 ? usage.ru_maxrss : 0;
}

/// Peak memory of the program that makes a handout; a second stands for a gigabyte, so that
/// memories can be compared like times.
void memory_of_handout(benchmark::State& state) {
    std::string pattern = (fs::temp_directory_path() / "steelyard-bench-XXXXXX").string();
    if (mkdtemp(pattern.data()) == nullptr)
        return state.SkipWithError("no temporary folder");
    const fs::path folder(pattern);
    const fs::path blueprint = folder / "long.blueprint.toml";
    std::ofstream(blueprint) << fmt::format("title = \"Long\"\n[[part]]\ncount = {}\n",
                                            state.range(0));
    for (auto _ : state) {
        const long peak_kB = peak_memory_kB(blueprint, folder);
        if (peak_kB == 0)
            state.SkipWithError("the handout could not be made");
        state.SetIterationTime(static_cast<double>(peak_kB) / (1024.0 * 1024.0));
    }
    fs::remove_all(folder);
}
BENCHMARK(memory_of_handout)->Arg(100)->Arg(1000)->Iterations(1)->UseManualTime();

} // namespace

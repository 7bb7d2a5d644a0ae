#include "bench/ratio_reporter.h"

#include <iomanip>

namespace steelyard::bench {

namespace {

/// Time of all iterations [s]: of the processor, or of the clock where a benchmark asks for it.
double time_of(const benchmark::BenchmarkReporter::Run& run) {
    const std::string& clock = run.run_name.time_type;
    return clock == "manual_time" || clock == "real_time" ? run.real_accumulated_time
                                                          : run.cpu_accumulated_time;
}

} // namespace

void RatioReporter::ReportRuns(const std::vector<Run>& runs) {
    ConsoleReporter::ReportRuns(runs);
    for (const Run& run : runs) {
        faultless_ = faultless_ && !run.error_occurred;
        if (run.iterations > 0)
            seconds_[run.benchmark_name()] = time_of(run) / static_cast<double>(run.iterations);
    }
}

bool RatioReporter::print(const std::vector<Promise>& promises) {
    bool all_kept = faultless_;
    GetOutputStream() << "\nRatios within this run:\n" << std::fixed << std::setprecision(2);
    for (const Promise& promise : promises) {
        const auto of = seconds_.find(promise.of);
        const auto to = seconds_.find(promise.to);
        if (of == seconds_.end() || to == seconds_.end())
            continue;
        const double ratio = of->second / to->second;
        const bool kept = ratio <= promise.goal;
        all_kept = all_kept && kept;
        GetOutputStream() << "  " << promise.what << ": " << ratio << " (goal: at most "
                          << promise.goal << (kept ? ", kept)\n" : ", NOT KEPT)\n");
    }
    return all_kept;
}

} // namespace steelyard::bench

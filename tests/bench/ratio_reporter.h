#pragma once
// Prints, after the timings themselves, how one timing compares with another of the same run.

#include <benchmark/benchmark.h>
#include <map>
#include <string>
#include <vector>

namespace steelyard::bench {

/// A promise about speed: the first benchmark takes at most `goal` times the second.
struct Promise {
    std::string what; ///< in words
    std::string of;   ///< name of a benchmark
    std::string to;   ///< name of the benchmark that it is measured by
    double goal = 1.0;
};

class RatioReporter : public benchmark::ConsoleReporter {
public:
    void ReportRuns(const std::vector<Run>& runs) override;

    /// One line for each promise whose two benchmarks ran.
    /// @return true when all of these are kept, and no benchmark had to be given up
    bool print(const std::vector<Promise>& promises);

private:
    std::map<std::string, double> seconds_; ///< time of one iteration, by benchmark
    bool faultless_ = true;
};

} // namespace steelyard::bench

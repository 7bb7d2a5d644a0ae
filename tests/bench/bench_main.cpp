// Runs the benchmarks and compares them with the promises. Exit status 1 when one is not kept.

#include "bench/ratio_reporter.h"

int main(int argc, char** argv) {
    using steelyard::bench::Promise;
    const std::vector<Promise> promises{
        // The aim is 1 µs; 100 sines take about that long on the machines we have seen.
        {"solving a plain lever / 100 sines", "lever_solve_plain", "hundred_sines", 1.0},
        {"solving a lever with everything / 100 sines", "lever_solve_everything", "hundred_sines",
         1.0},
        // At least ten times as fast as KDL on the same linkage.
        {"torques of a body in motion / the same by KDL's tree solver", "body_solve_in_motion",
         "body_by_kdl_tree", 0.1},
        {"torques of a body at rest / the same by KDL's tree solver", "body_solve_at_rest",
         "body_by_kdl_tree", 0.1},
        {"a frame of the bench / a frame of ImGui's demo window", "frame_of_the_bench/process_time",
         "frame_of_the_demo_window/process_time", 1.5},
        {"a frame of the body at 1920×1080 / a frame of ImGui's demo window there",
         "frame_of_the_body/min_time:2.000/real_time",
         "frame_of_the_large_demo_window/min_time:2.000/real_time", 2.0},
        {"a frame of the body at 1920×1080 / a thirtieth of a second",
         "frame_of_the_body/min_time:2.000/real_time",
         "a_thirtieth_of_a_second/iterations:1/manual_time", 1.0},
        {"our work of a frame while the body is moved / 1.5 ms",
         "work_of_a_dragged_frame/through_the_repetition",
         "one_and_a_half_milliseconds/iterations:1/manual_time", 1.0},
        {"our work of a frame while the body is posed / 1.5 ms", "work_of_a_dragged_frame/posing",
         "one_and_a_half_milliseconds/iterations:1/manual_time", 1.0},
        {"first frame / first frame of a bare window", "first_frame/iterations:12/manual_time",
         "first_frame_of_a_bare_window/iterations:12/manual_time", 2.0},
        // The aims: 100 000 lever questions a second is 10 µs each, ten yardsticks; 20 000 body
        // questions, fifty; a bank is there in 50 ms, 50 000 of them.
        {"drawing and checking a lever question / 100 sines", "lever_question", "hundred_sines",
         10.0},
        {"drawing and checking a body question / 100 sines", "body_question", "hundred_sines",
         50.0},
        {"loading the bank / 100 sines", "bank_load", "hundred_sines", 50000.0},
        // The aim is a second, a million yardsticks; ten times the questions, little more memory.
        {"a sheet of 40 questions with its key / 100 sines", "handout_of_40", "hundred_sines",
         1.0e6},
        {"memory for 1000 questions / memory for 100",
         "memory_of_handout/1000/iterations:1/manual_time",
         "memory_of_handout/100/iterations:1/manual_time", 2.0},
    };
    benchmark::Initialize(&argc, argv);
    if (benchmark::ReportUnrecognizedArguments(argc, argv))
        return 2;
    steelyard::bench::RatioReporter reporter;
    benchmark::RunSpecifiedBenchmarks(&reporter);
    return reporter.print(promises) ? 0 : 1;
}

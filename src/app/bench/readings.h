#pragma once
// What the bench's column says: every number with its name and unit, and how it was computed.
// Made from the model alone, so that it can be tested without a window.

#include "app/bench/bench_model.h"
#include "scene/drawing.h"
#include "words/lever/lever_steps.h"

#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

/// One line of the column.
struct Reading {
    words::LeverReading id{}; ///< which steps it unfolds into
    std::string name;         ///< "Effort arm"
    std::string value;        ///< "0.755 m", or "none"
    scene::Role role = scene::Role::ink;
};

struct BenchReadings {
    std::string headline;           ///< "Second class"
    std::string sentence;           ///< why
    std::vector<std::string> notes; ///< special cases worth a sentence of their own
    Reading key;                    ///< the one number that matters: the advantage
    std::string key_note;           ///< what it is: "effort arm ÷ load arm"
    std::vector<Reading> rows;
};

BenchReadings read_bench(const BenchModel& model);

} // namespace steelyard::app

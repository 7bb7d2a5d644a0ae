#pragma once
// Sitting a mock exam in a terminal: one question at a time, with the clock running.

#include "cli/study/study.h"
#include "learner/exam/exam.h"

#include <string>

namespace steelyard::cli {

class ExamRoom {
public:
    /// All three must outlive it.
    ExamRoom(Study& study, learner::Exam& exam, const Streams& streams)
        : study_(study), exam_(exam), streams_(streams) {}

    /// Leads through the exam; every change is kept at once, and the clock every few seconds.
    /// @return true when the exam has ended; false when the learner leaves it to go on later, or
    ///         failed()
    bool run();

    /// Whether something could not be kept; it has been told.
    bool failed() const { return failed_; }

private:
    enum class Go { on, leave, ended };

    void show();
    bool read(std::string& line);
    Go obey(const std::string& line);
    void take_answer(const std::string& line);
    void list() const;
    Go ask_to_end();
    bool keep();

    Study& study_;
    learner::Exam& exam_;
    const Streams& streams_;
    bool failed_ = false;
    bool show_again_ = true;
    bool at_the_end_ = false; ///< the last question was just answered
};

} // namespace steelyard::cli

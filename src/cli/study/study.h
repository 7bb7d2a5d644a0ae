#pragma once
// What every verb about a learner begins with: which record, which learner, which course.

#include "cli/options/question_options.h"
#include "cli/verbs/verb.h"
#include "learner/record/record.h"

#include <tl/expected.hpp>

#include <memory>
#include <string>

namespace steelyard::cli {

/// What was typed to choose record and learner.
struct LearnerOptions {
    QuestionOptions questions;
    std::string data;    ///< folder of the record; empty = the usual one
    std::string learner; ///< name; empty = the only one there is
    bool is_new = false; ///< the name is to be added when it is not there yet
};

/// Declares --learner, --new, --data and --bank.
void add_learner_options(CLI::App& command, LearnerOptions& options);

/// A bank with the course made of it; the bank's address stays.
struct StudyCourse {
    std::unique_ptr<problems::Bank> bank;
    learner::Course course;
};

/// Everything open.
struct Study {
    StudyCourse shelf;
    learner::Record record;
    learner::Learner learner;
    learner::Standing standing;

    const learner::Course& course() const { return shelf.course; }
};

/// Each of these tells on streams.err what is wrong, and on streams.out what the learner should
/// know.
tl::expected<StudyCourse, ExitStatus> open_course(const LearnerOptions& options,
                                                  const Streams& streams);
tl::expected<learner::Record, ExitStatus> open_record(const LearnerOptions& options,
                                                      const Streams& streams);

/// Bank, record, learner and where they stand. Where nobody is known yet, and somebody can type,
/// asks for a name.
tl::expected<Study, ExitStatus> open_study(const LearnerOptions& options, const Streams& streams);

/// The learner that the options name in a record; never adds one.
tl::expected<learner::Learner, ExitStatus>
known_learner(learner::Record& record, const LearnerOptions& options, const Streams& streams);

/// Tells an error of the record. @return the status to end with
ExitStatus tell(const learner::RecordError& error, const Streams& streams);

/// Tells what happened to the record while it was open.
void tell_notices(learner::Record& record, const Streams& streams);

/// Makes the day's backup; tells when it fails, which ends nothing.
void back_up(learner::Record& record, const Streams& streams);

} // namespace steelyard::cli

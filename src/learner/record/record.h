#pragma once
// The record: who answered what, on this machine. One SQLite file in the person's data folder,
// written through at every answer, so that nothing is lost when the program or the machine dies.
//
//     auto opened = open_record(usual_record_folder(), now);
//     if (!opened) return tell(opened.error().message);
//     for (const std::string& notice : opened->notices) tell(notice);
//     Record& record = opened->record;
//     auto learner = record.learner_named("Ada");
//     auto standing = record.standing(learner->id, course, now);
//     ...
//     standing = record.add_answer(learner->id, course, answer, now);
//     record.back_up_if_due(now);      // on leaving
//
// Several programs may have it open at once. Exams, export and checks are in the headers beside.

#include "learner/course/course.h"
#include "learner/model/standing.h"
#include "learner/record/file/database.h"
#include "learner/time/clock.h"

#include <cstdint>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace steelyard::learner {

struct Learner {
    std::int64_t id = 0;
    std::string name;
    TimeMs created_ms = 0;
    std::optional<Day> exam_day;
    std::int64_t answers = 0; ///< marked ones
    TimeMs last_ms = 0;       ///< of the last answer; 0 = never
};

/// A wrong rule and how often a learner followed it.
struct RuleTimes {
    std::string rule; ///< id
    int times = 0;
    TimeMs last_ms = 0;
};

/// How much there is, in the two units in which it is always said.
struct Sums {
    std::int64_t lines = 0;     ///< of the record and of an export: every attempt, every shrug
    std::int64_t questions = 0; ///< that they are about: lines of a first attempt

    Sums& operator+=(const Sums& more) {
        lines += more.lines;
        questions += more.questions;
        return *this;
    }
};

/// "20 lines, 14 questions".
std::string to_text(const Sums& sums);

class Record {
public:
    Record(Database database, std::filesystem::path folder, bool writable)
        : database_(std::move(database)), folder_(std::move(folder)), writable_(writable) {}

    /// By name.
    Recorded<std::vector<Learner>> learners();
    /// Capitals do not matter.
    Recorded<std::optional<Learner>> learner_named(const std::string& name);
    /// Refused: an empty name, one that is no short text (see setup/toml/letters.h), one that is
    /// taken.
    Recorded<Learner> add_learner(const std::string& name, const Clock& clock);
    Recorded<void> set_exam_day(std::int64_t learner, std::optional<Day> day);
    /// Deletes all about a learner here and in every backup, beyond recovery from these files.
    /// Takes as long as writing the files anew.
    Recorded<void> erase_learner(std::int64_t learner);

    /// Where a learner stands. Reads a few dozen rows; when the course has changed since (another
    /// bank, other parameters), every answer is folded again, about a million in 3 s.
    Recorded<Standing> standing(std::int64_t learner, const Course& course, const Clock& clock);
    /// Keeps an answer and gives the standing after it. On disk when it returns: a few
    /// milliseconds, once an answer.
    Recorded<Standing> add_answer(std::int64_t learner, const Course& course, const Answer& answer,
                                  const Clock& clock);
    /// Keeps several in one transaction: all or none.
    Recorded<Standing> add_answers(std::int64_t learner, const Course& course,
                                   const std::vector<Answer>& answers, const Clock& clock);

    /// How much is kept of a learner.
    Recorded<Sums> sums(std::int64_t learner);
    /// The last answers, newest first, at most so many.
    Recorded<std::vector<Answer>> last_answers(std::int64_t learner, int most);
    /// The rules followed most often, at most so many.
    Recorded<std::vector<RuleTimes>> frequent_rules(std::int64_t learner, int most);

    /// Makes the day's backup when the newest is older than that. Copies the file: on leaving, not
    /// in a frame.
    Recorded<void> back_up_if_due(const Clock& clock);

    /// Begins to write, see put_back().
    Recorded<Transaction> begin();
    /// Every function that writes does this first. Where the file was deleted or moved away while
    /// it was open, it is written again under its name; where another took its place, everything is
    /// brought over to that. A notice tells of it.
    Recorded<void> put_back();
    /// Adds a sentence to them.
    void note(std::string notice) { notices_.push_back(std::move(notice)); }
    /// What happened to the record since the last call, in sentences to the learner.
    std::vector<std::string> take_notices();

    /// From now on who waits for another program's writing is told, once each time that it takes
    /// longer than a second; and waits for two minutes, where others give up after 20 s.
    void tell_when_waiting(std::function<void()> tell) {
        database_.tell_when_waiting(std::move(tell));
    }

    bool is_writable() const { return writable_; }
    const std::filesystem::path& folder() const { return folder_; }
    Database& database() { return database_; }

private:
    Database database_;
    std::filesystem::path folder_;
    bool writable_;
    std::vector<std::string> notices_;
};

struct Opened {
    Record record;
    std::vector<std::string> notices; ///< what the learner should know, in sentences
};

/// Opens the record of a folder, made when missing. Takes a few milliseconds whatever its size.
/// A file of an earlier version is backed up and brought up to date. A damaged one is set aside
/// under another name and the newest good backup put in its place; what can still be read of the
/// answers since is brought over; programs that open it meanwhile wait. One that cannot be written
/// is opened for reading.
/// @return the record with notices; or: no folder can be made, a file of a later version or of
///         another program
Recorded<Opened> open_record(const std::filesystem::path& folder, const Clock& clock);

/// Name of the file within its folder.
inline constexpr const char* kRecordFile = "record.sqlite";

/// The person's own folder, see setup::own_folder; empty when no home is known.
std::filesystem::path usual_record_folder();

/// A sentence when the clock stands before the learner's last answer; empty when it does not.
std::string clock_notice(const Standing& standing, const Clock& clock);

} // namespace steelyard::learner

#pragma once
// The learner's desk: the course, the record that is kept, who learns now and where they stand. All
// screens of practice work on it. It reads no clock.
//
// Where there is no record, or it cannot be written, practice goes on without keeping, and says so.

#include "learner/course/course.h"
#include "learner/exam/exam.h"
#include "learner/model/readiness.h"
#include "learner/model/staircase.h"
#include "learner/path/plan.h"
#include "learner/record/exam_record.h"
#include "learner/record/record.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace steelyard::app {

/// What follows from a standing; computed once after each answer.
struct Outlook {
    learner::StudyPlan plan;
    learner::Readiness ready;
    std::vector<learner::Stair> stairs;
    std::string welcome; ///< to who comes back after a pause; empty without one
};

/// What is asked for where the exam's day is typed, with an example as the locale writes it.
std::string asked_exam_day();

class Desk {
public:
    /// Takes the course of a bank, which must outlive the desk, and opens the record of a folder.
    /// With one learner there it is they; with several the one who answered last.
    /// @param assets  the folder that holds learner/
    Desk(const problems::Bank& bank, const std::filesystem::path& assets,
         const std::filesystem::path& record_folder, const learner::Clock& now);

    /// False when the course cannot be had; the notices say why.
    bool has_course() const { return course_.has_value(); }
    const learner::Course& course() const { return *course_; }
    /// Asks in other units from now on.
    void use_units(setup::UnitSystem units);

    /// Sentences that the learner should know: what happened to the record.
    const std::vector<std::string>& notices() const { return notices_; }
    /// Whether answers are kept.
    bool keeps() const { return record_ && record_->is_writable() && learner_.has_value(); }
    /// Whether somebody can be added.
    bool can_add() const { return record_ && record_->is_writable(); }
    /// Whether a name is wanted before anything can be answered.
    bool wants_name() const { return can_add() && !learner_; }

    const std::vector<learner::Learner>& learners() const { return learners_; }
    const std::optional<learner::Learner>& learner() const { return learner_; }
    const learner::Standing& standing() const { return standing_; }
    const Outlook& outlook() const { return outlook_; }

    /// Reads the record again: another program may have written to it meanwhile.
    void refresh(const learner::Clock& now);
    void choose(std::int64_t learner, const learner::Clock& now);
    /// @return why not, as a sentence; empty when it was done
    std::string add_learner(const std::string& name, const learner::Clock& now);
    /// Reads a day as the locale writes it; empty takes the date away.
    /// @return why not, as a sentence; empty when it was done
    std::string set_exam_day(const std::string& typed, const learner::Clock& now);

    /// Leaves the placement out from now on.
    void skip_placement() { standing_.placement_over = true; }

    /// Keeps an answer, and with it those that could not be kept before.
    void keep_answer(const learner::Answer& answer, const learner::Clock& now);
    bool has_kept_all() const { return keeps() && waiting_.empty(); }
    /// What may be said of the answers given so far: that every one is kept, or how many are not.
    std::string kept_text() const;
    /// Makes the day's backup: when a session has ended.
    void back_up(const learner::Clock& now);

    // What is kept beside the record: a session in progress as text, and what was marked.
    std::optional<std::string> kept_session() const;
    void keep_session(const std::string& text);
    void forget_session();
    /// Codes of the questions that were marked to come back to, oldest first.
    const std::vector<std::string>& marked() const { return marked_; }
    bool is_marked(const std::string& code) const;
    void mark(const std::string& code, bool wanted);
    /// Codes of the questions that were not answered right lately and not since, newest first.
    std::vector<std::string> mistakes(std::size_t most);

    // Mock exams.
    std::optional<learner::Exam> unfinished_exam();
    void keep_exam(learner::Exam& exam);
    void give_up_exam(const learner::Exam& exam);
    void close_exam(learner::Exam& exam, const learner::ExamReport& report,
                    const learner::Clock& now);
    /// Finished ones, newest first.
    std::vector<learner::ExamResult> finished_exams(int most);
    std::optional<learner::Exam> exam_by_id(std::int64_t id);
    std::vector<learner::RuleTimes> frequent_rules(int most);
    /// The last answers, newest first.
    std::vector<learner::Answer> last_answers(int most);
    /// Writes everything about the learner as JSON Lines beside the record.
    /// @return a sentence: where it is, or why it is not
    std::string export_record(const learner::Clock& now);
    /// Takes in what export_record wrote, here or elsewhere: answers that are there already are
    /// left alone. The notices say what came in, or why nothing did.
    void import_record(const std::filesystem::path& path, const learner::Clock& now);

private:
    void open(const std::filesystem::path& folder, const learner::Clock& now);
    std::optional<std::filesystem::path> beside_record(const char* what) const;
    void read_marked();
    void notice(const std::string& sentence);
    /// Notices what went wrong, and what happened to the record meanwhile. @return whether it is
    /// done
    bool hear(const learner::Recorded<void>& done);
    /// The value, or nothing after its error was noticed.
    template <typename T> std::optional<T> heed(learner::Recorded<T> recorded);
    /// @return whether all that waits to be kept is
    bool keep_waiting(const learner::Clock& now);
    void stand(learner::Standing standing, const learner::Clock& now);

    std::optional<learner::Course> course_;
    std::optional<learner::Record> record_;
    std::vector<std::string> notices_;
    std::vector<learner::Learner> learners_;
    std::optional<learner::Learner> learner_;
    std::vector<learner::Answer> waiting_; ///< of the learner, not kept yet: the disk was full
    learner::Standing standing_;
    Outlook outlook_;
    std::vector<std::string> marked_;
};

} // namespace steelyard::app

// What we promise about the model of the learner, tried on simulated people, and how long a large
// record takes to open. Seeded: the same numbers every time but for the last part. Exit status 1
// when a promise is not kept. Arguments: one part alone (mastery, schedule, readiness, opening, or
// all), and a number above 0 for other people than those that the model was made with.

#include "bench/simulated_learner.h"
#include "learner/model/readiness.h"
#include "learner/path/next.h"
#include "learner/record/record.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <functional>
#include <vector>

using namespace steelyard;
using namespace steelyard::learner;

namespace {

constexpr int kPeople = 500;
constexpr TimeMs kStart_ms = 1795593600000; // 2026-11-25 08:00 UTC

/// What a run is about.
struct Trial {
    const Course& course;
    std::uint64_t crowd = 0; ///< which people

    SimulatedLearner person(int number) const {
        constexpr std::uint64_t kCrowd = 100000;
        return SimulatedLearner(course, crowd * kCrowd + static_cast<std::uint64_t>(number));
    }
};

bool kept(const char* what, double value, double low, double high) {
    const bool holds = value >= low && value <= high;
    fmt::print("  {:<66} {:>8.3f}  ({} to {}) {}\n", what, value, low, high,
               holds ? "kept" : "NOT KEPT");
    return holds;
}

/// One question, or a worked example, at a moment. @return whether it was a question
using Teacher = std::function<bool(SimulatedLearner&, Standing&, const Clock&)>;

void note(const Course& course, Standing& standing, const Next& next, Outcome outcome,
          TimeMs at_ms) {
    Answer answer;
    answer.at_ms = at_ms;
    answer.family = next.family->id;
    answer.skill = next.family->skill;
    answer.guess = guess_rate(*next.family, course.parameters);
    answer.purpose = next.reason == Reason::placement ? Purpose::placement : Purpose::practice;
    answer.outcome = outcome;
    answer.foreseen = foresee(course, standing, next.skill, answer.guess, 0.0, at_ms);
    standing = after_answer(course, std::move(standing), answer, 0);
}

/// Asks what our rule says is next.
Teacher our_teacher(const Course& course) {
    return [&course](SimulatedLearner& person, Standing& standing, const Clock& now) {
        const Next next = choose_next(course, standing, now, person.random()());
        if (next.shown == Shown::worked_example) {
            person.read_example(next.skill);
            note(course, standing, next, Outcome::example, now.utc_ms);
            return false;
        }
        const double guess = guess_rate(*next.family, course.parameters);
        const bool right = person.answer(next.skill, guess);
        note(course, standing, next, right ? Outcome::right : Outcome::wrong, now.utc_ms);
        return true;
    };
}

/// Asks any family; each question teaches as ours does, worked examples included.
Teacher random_teacher(const Course& course) {
    return [&course](SimulatedLearner& person, Standing&, const Clock&) {
        std::size_t skill = 0;
        do
            skill = problems::draw_below(person.random(), course.skills.size());
        while (!course.skills[skill].can_be_asked());
        person.answer(skill, course.skills[skill].guess);
        return true;
    };
}

/// Studies so many questions a day for so many days; a question takes a minute.
void study(SimulatedLearner& person, Standing& standing, const Teacher& teacher, int days,
           int per_day) {
    for (int day = 0; day < days; ++day) {
        TimeMs now = kStart_ms + day * kDay_ms;
        person.live_until(now);
        for (int asked = 0; asked < per_day; now += kMinute_ms)
            asked += teacher(person, standing, {now, 0}) ? 1 : 0;
    }
}

/// An estimate and what is true.
struct Judged {
    double estimate = 0.0;
    bool known = false;
};

/// Area under the curve: the chance that a known skill is ranked above an unknown one (Hanley &
/// McNeil 1982, Radiology 143, 29-36), by ranks.
double area_under_curve(std::vector<Judged> judged) {
    std::sort(judged.begin(), judged.end(),
              [](const Judged& a, const Judged& b) { return a.estimate < b.estimate; });
    double rank_sum = 0.0;
    double known = 0.0;
    for (std::size_t i = 0; i < judged.size();) {
        std::size_t end = i;
        while (end < judged.size() && judged[end].estimate == judged[i].estimate)
            ++end;
        const double rank = 0.5 * static_cast<double>(i + 1 + end);
        for (; i < end; ++i)
            if (judged[i].known) {
                rank_sum += rank;
                known += 1.0;
            }
    }
    const double unknown = static_cast<double>(judged.size()) - known;
    return (rank_sum - known * (known + 1.0) / 2.0) / (known * unknown);
}

bool try_mastery(const Trial& trial) {
    const Course& course = trial.course;
    fmt::print("\nMastery: {} people, 60 questions over four days\n", kPeople);
    std::vector<Judged> all;
    double within = 0.0;
    int counted = 0;
    for (int i = 0; i < kPeople; ++i) {
        SimulatedLearner person = trial.person(i);
        Standing standing = fresh_standing(course);
        study(person, standing, our_teacher(course), 4, 15);
        const TimeMs now = kStart_ms + 3 * kDay_ms + 60 * kMinute_ms;
        const std::vector<double> known = known_skills(course, standing, now);
        std::vector<Judged> own;
        for (std::size_t k = 0; k < known.size(); ++k)
            own.push_back({known[k], person.knows(k)});
        all.insert(all.end(), own.begin(), own.end());
        const double area = area_under_curve(own);
        if (std::isfinite(area)) {
            within += area;
            ++counted;
        }
    }
    fmt::print("  the same within each person, on average: {:.3f}\n", within / counted);
    return kept("estimate ranks known skills above unknown ones (AUC)", area_under_curve(all), 0.85,
                1.0);
}

/// Mean recall on the exam day after ten days with so many questions a day.
double recall_after(const Trial& trial, const Teacher& teacher, int per_day) {
    constexpr int kDays = 10;
    constexpr int kStudents = 250;
    double sum = 0.0;
    for (int i = 0; i < kStudents; ++i) {
        SimulatedLearner person = trial.person(1000 + i);
        Standing standing = fresh_standing(trial.course);
        standing.exam_day = day_of({kStart_ms + kDays * kDay_ms, 0});
        study(person, standing, teacher, kDays, per_day);
        person.live_until(kStart_ms + kDays * kDay_ms);
        sum += person.recall();
    }
    return sum / kStudents;
}

/// Questions in ten days that reach a recall, interpolated between whole numbers a day.
double questions_for(const Trial& trial, const Teacher& teacher, double recall) {
    double before = recall_after(trial, teacher, 1);
    for (int per_day = 2; per_day <= 120; per_day += per_day < 20 ? 2 : 5) {
        const int step = per_day <= 20 ? 2 : 5;
        const double now = recall_after(trial, teacher, per_day);
        if (now >= recall)
            return 10.0 * (per_day - step * (now - recall) / (now - before));
        before = now;
    }
    return 1200.0;
}

bool try_schedule(const Trial& trial) {
    const Course& course = trial.course;
    constexpr double kRecall = 0.75;
    fmt::print("\nSchedule: questions in ten days until {:.0f} % of an exam would be right\n",
               100.0 * kRecall);
    const double ours = questions_for(trial, our_teacher(course), kRecall);
    const double random = questions_for(trial, random_teacher(course), kRecall);
    fmt::print("  ours {:.0f}, random order {:.0f}\n", ours, random);
    return kept("fewer questions than random order, as a share", 1.0 - ours / random, 0.25, 1.0);
}

bool try_readiness(const Trial& trial) {
    const Course& course = trial.course;
    fmt::print("\nReadiness: does the 90 % interval hold the score of a mock exam?\n");
    std::vector<double> weights;
    for (const CourseSkill& skill : course.skills)
        weights.push_back(skill.weight);
    const std::vector<int> questions = share_out(weights, course.exam.questions);
    int held_in_all = 0;
    int exams = 0;
    for (const int days : {2, 4, 8}) {
        int held = 0;
        double width = 0.0;
        double bias = 0.0;
        for (int i = 0; i < kPeople; ++i) {
            SimulatedLearner person = trial.person(2000 + i);
            Standing standing = fresh_standing(course);
            study(person, standing, our_teacher(course), days, 15);
            const TimeMs now = kStart_ms + (days - 1) * kDay_ms + 60 * kMinute_ms;
            const Readiness ready = readiness(course, standing, now);
            const int score = person.sit(questions);
            held += score >= ready.low && score <= ready.high ? 1 : 0;
            width += ready.high - ready.low;
            bias += ready.expected - score;
        }
        fmt::print("  after {:>3} questions: held in {:.1f} %, {:.1f} wide, expected score off by "
                   "{:+.2f}\n",
                   15 * days, 100.0 * held / kPeople, width / kPeople, bias / kPeople);
        held_in_all += held;
        exams += kPeople;
    }
    return kept("intervals that held the score", static_cast<double>(held_in_all) / exams, 0.86,
                0.94);
}

double opening_ms(const std::filesystem::path& folder, const Course& course) {
    const auto begin = std::chrono::steady_clock::now();
    auto opened = open_record(folder, {kStart_ms, 0});
    const auto standing =
        opened ? opened->record.standing(1, course, {kStart_ms, 0}) : Recorded<Standing>();
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - begin;
    return standing ? took.count() : 1e9;
}

/// A record with so many answers of one learner.
bool fill(const std::filesystem::path& folder, const Course& course, int answers) {
    auto opened = open_record(folder, {kStart_ms, 0});
    if (!opened || !opened->record.add_learner("Ada", {kStart_ms, 0}))
        return false;
    // The first answer comes through the front door, so that the placement is over as it is in
    // every record with answers from practice.
    Answer first;
    first.at_ms = kStart_ms - kDay_ms;
    first.code = "K7M2Q-9XD4T";
    first.skill = course.skills.front().skill->id;
    first.family = "balance-the-seesaw";
    if (!opened->record.add_answer(1, course, first, {kStart_ms, 0}))
        return false;
    // Made by SQLite itself: a million through the front door would take half an hour.
    return opened->record.database()
        .run(fmt::format(
            "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < {}) INSERT "
            "INTO answer (learner, at_ms, code, skill, family, purpose, outcome, typed, "
            "wrong_rule, attempt, hints, help, guess, foreseen, took_ms) SELECT 1, 1700000000000 + "
            "i * 60000, 'K7M2Q-9XD4T', 'balance', 'balance-the-seesaw', 'practice', 'right', "
            "'12.5 N', '', 1, 0, 0, 0.1, 0.5, 30000 FROM n",
            answers))
        .has_value();
}

bool try_opening(const Trial& trial) {
    const Course& course = trial.course;
    constexpr int kAnswers = 1000000;
    fmt::print("\nOpening a record, with where its learner stands\n");
    const std::filesystem::path root =
        std::filesystem::temp_directory_path() /
        fmt::format("steelyard-learner-bench-{}",
                    std::chrono::steady_clock::now().time_since_epoch().count());
    double large_ms = 1e9;
    double small_ms = 1e9;
    if (fill(root / "small", course, 10) && fill(root / "large", course, kAnswers))
        for (int i = 0; i < 5; ++i) {
            small_ms = std::min(small_ms, opening_ms(root / "small", course));
            large_ms = std::min(large_ms, opening_ms(root / "large", course));
        }
    std::error_code ignored;
    std::filesystem::remove_all(root, ignored);
    fmt::print("  {} answers {:.1f} ms, 10 answers {:.1f} ms: {:.1f} times\n", kAnswers, large_ms,
               small_ms, large_ms / small_ms);
    return kept("opening a million answers [ms]", large_ms, 0.0, 200.0);
}

} // namespace

int main(int argc, char** argv) {
    const std::string only = argc > 1 ? argv[1] : "all";
    const std::uint64_t crowd = argc > 2 ? std::strtoull(argv[2], nullptr, 10) : 0;
    const std::filesystem::path root(STEELYARD_SOURCE_DIR);
    const problems::Bank bank = problems::load_bank(root / "question_bank");
    const auto course = load_course(bank, root / "assets" / "learner");
    if (!course) {
        fmt::print("{}\n", to_text(course.error()));
        return 2;
    }
    bool all = true;
    const std::vector<std::pair<std::string, bool (*)(const Trial&)>> parts{
        {"mastery", try_mastery},
        {"schedule", try_schedule},
        {"readiness", try_readiness},
        {"opening", try_opening}};
    for (const auto& [part, work] : parts)
        if (only == "all" || only == part)
            all = work({*course, crowd}) && all;
    return all ? 0 : 1;
}

#include "learner/path/plan.h"

#include "learner/path/next.h"
#include "words/counted.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace steelyard::learner {

namespace {

constexpr std::size_t kGrid = 96;
constexpr int kSweeps = 80;

/// Expected questions from each chance of a grid between 0 and mastered.
class MasteryQuestions {
public:
    MasteryQuestions(const Parameters& parameters, double guess) : parameters_(parameters) {
        for (int sweep = 0; sweep < kSweeps; ++sweep) {
            std::array<double, kGrid> next{};
            for (std::size_t i = 0; i < kGrid; ++i)
                next[i] = from(known_of(i), guess);
            expected_ = next;
        }
    }

    double at(double known) const {
        if (known >= parameters_.mastered)
            return 0.0;
        const double place = known / parameters_.mastered * static_cast<double>(kGrid);
        const auto below = static_cast<std::size_t>(place);
        const double share = place - static_cast<double>(below);
        const double above = below + 1 < kGrid ? expected_[below + 1] : 0.0;
        return expected_[below] * (1.0 - share) + above * share;
    }

private:
    double known_of(std::size_t i) const {
        return parameters_.mastered * static_cast<double>(i) / static_cast<double>(kGrid);
    }

    double from(double known, double guess) const {
        const double right = chance_right(known, guess, parameters_.slip);
        double questions = 1.0;
        for (const bool is_right : {true, false})
            questions += (is_right ? right : 1.0 - right) *
                         at(after_learning(after_evidence(known, is_right, guess, parameters_.slip),
                                           parameters_.learn));
        return questions;
    }

    const Parameters& parameters_;
    std::array<double, kGrid> expected_{};
};

} // namespace

double questions_to_master(const Parameters& parameters, double known, double guess) {
    return MasteryQuestions(parameters, guess).at(known);
}

int reviews_until_exam(const Parameters& parameters, double half_life_d, double days_left_d) {
    int reviews = 0;
    while (days_left_d > 0.0 && after_gap(parameters.mastered, parameters.start, days_left_d,
                                          half_life_d) < parameters.keeps_until_exam) {
        days_left_d -= review_gap_days(parameters, days_left_d);
        if (days_left_d <= 0.0)
            break;
        ++reviews;
        half_life_d = std::min(half_life_d * 2.0, parameters.longest_half_life_d);
    }
    return reviews;
}

std::vector<int> mock_exam_days(int days) {
    constexpr int kFew = 4;
    constexpr int kTwoWeeks = 14;
    std::vector<int> mocks;
    if (days >= kTwoWeeks)
        mocks.push_back(days - 7);
    if (days >= kFew)
        mocks.push_back(days - 2);
    return mocks;
}

StudyPlan plan_study(const Course& course, const Standing& standing, const Clock& clock) {
    StudyPlan plan;
    const double left_d = days_left(course, standing, clock);
    const int calendar = standing.exam_day ? days_between(day_of(clock), *standing.exam_day) : -1;
    plan.has_exam = calendar >= 0;
    plan.days = std::max(1, static_cast<int>(left_d));
    plan.to_master.assign(course.skills.size(), 0.0);
    const std::vector<double> known = known_skills(course, standing, clock.utc_ms);
    for (std::size_t i = 0; i < course.skills.size(); ++i) {
        if (!course.skills[i].can_be_asked())
            continue;
        const SkillState& state = standing.skills[i];
        // A mastered skill that has faded is reviewed, not learned anew.
        if (state.known < course.parameters.mastered)
            plan.to_master[i] =
                questions_to_master(course.parameters, known[i], course.skills[i].guess);
        plan.questions += plan.to_master[i];
        plan.questions += reviews_until_exam(course.parameters, state.half_life_d, left_d);
    }
    plan.done_today = standing.today == day_of(clock) ? standing.answered_today : 0;
    // What was done today has been taken off already: it belongs to today's share.
    const double all = plan.questions + plan.done_today;
    const std::size_t mocks = plan.has_exam ? mock_exam_days(plan.days).size() : 0;
    const int wanted = static_cast<int>(
        std::ceil(all / (static_cast<double>(plan.days) - static_cast<double>(mocks))));
    plan.fits = wanted <= course.parameters.plan_most_per_day;
    plan.per_day = std::min(wanted, course.parameters.plan_most_per_day);
    plan.left_today = std::max(0, plan.per_day - plan.done_today);
    return plan;
}

int session_length(const StudyPlan& plan) {
    constexpr int kShortest = 5;
    constexpr int kLongest = 25;
    return std::clamp(plan.left_today, kShortest, kLongest);
}

std::string say(const StudyPlan& plan) {
    std::string text =
        plan.has_exam ? fmt::format("{} to the exam: {} a day", words::counted(plan.days, "day"),
                                    words::counted(plan.per_day, "question"))
                      : fmt::format("No exam date: {} a day {} you growing",
                                    words::counted(plan.per_day, "question"),
                                    plan.per_day == 1 ? "keeps" : "keep");
    if (plan.done_today > 0)
        text += plan.left_today > 0
                    ? fmt::format("; {} done today, {} to go", plan.done_today, plan.left_today)
                    : fmt::format("; {} done today, that is enough", plan.done_today);
    text += ".";
    if (!plan.fits)
        text += " That does not cover everything; what weighs most comes first.";
    return text;
}

} // namespace steelyard::learner

#include "learner/path/calendar.h"

#include "learner/path/next.h"
#include "words/counted.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::learner {

namespace {

/// Nobody plans by the day for longer than a year.
constexpr int kMostDays = 400;

/// A skill that is still to be learned.
struct Work {
    std::size_t skill = 0;
    int questions = 0; ///< left
    bool begun = false;
};

/// Skills in the order in which sessions take them up: those under way, then the lowest step of the
/// staircase, then the heaviest.
std::vector<Work> work_of(const Course& course, const Standing& standing, const StudyPlan& plan) {
    std::vector<Work> work;
    for (std::size_t i = 0; i < course.skills.size(); ++i)
        if (const int questions = static_cast<int>(std::ceil(plan.to_master[i])); questions > 0)
            work.push_back({i, questions, standing.skills[i].begun()});
    std::stable_sort(work.begin(), work.end(), [&](const Work& a, const Work& b) {
        if (a.begun != b.begun)
            return a.begun;
        const CourseSkill& one = course.skills[a.skill];
        const CourseSkill& other = course.skills[b.skill];
        if (one.skill->level != other.skill->level)
            return one.skill->level < other.skill->level;
        return one.weight > other.weight;
    });
    return work;
}

/// Fills the days one after the other.
class Forecast {
public:
    Forecast(const Course& course, const Standing& standing, const StudyPlan& plan,
             const Clock& clock)
        : course_(course), standing_(standing), plan_(plan), clock_(clock),
          skills_(standing.skills), work_(work_of(course, standing, plan)) {}

    StudyCalendar make() {
        const Day today = day_of(clock_);
        StudyCalendar calendar;
        if (plan_.has_exam)
            calendar.exam = standing_.exam_day;
        const int days =
            std::min(calendar.exam ? days_between(today, *calendar.exam) : plan_.days, kMostDays);
        const std::vector<int> mocks = calendar.exam ? mock_exam_days(days) : std::vector<int>{};
        for (int i = 0; i < days; ++i) {
            CalendarDay day;
            day.day = today + std::chrono::days(i);
            day.mock_exam = std::find(mocks.begin(), mocks.end(), i) != mocks.end();
            if (!day.mock_exam)
                fill(day, i);
            calendar.days.push_back(std::move(day));
        }
        for (std::size_t i = next_; i < work_.size(); ++i)
            calendar.left_out.push_back(work_[i].skill);
        return calendar;
    }

private:
    void fill(CalendarDay& day, int number) {
        const TimeMs now_ms = clock_.utc_ms + number * kDay_ms;
        int room = number == 0 ? plan_.left_today : plan_.per_day;
        room -= review(day, now_ms, plan_.days - number, room);
        while (room > 0 && next_ < work_.size()) {
            Work& work = work_[next_];
            (work.begun ? day.gone_on : day.begun).push_back(work.skill);
            work.begun = true;
            const int asked = std::min(room, work.questions);
            room -= asked;
            work.questions -= asked;
            day.questions += asked;
            if (work.questions > 0)
                break;
            master(work.skill, now_ms);
            ++next_;
        }
    }

    /// @return how many were reviewed
    int review(CalendarDay& day, TimeMs now_ms, double left_d, int room) {
        for (std::size_t i = 0; i < skills_.size() && day.questions < room; ++i) {
            SkillState& state = skills_[i];
            if (!course_.skills[i].can_be_asked() || state.last_ms == 0 ||
                state.known < course_.parameters.mastered ||
                due_at(course_, state, left_d, now_ms) > now_ms)
                continue;
            day.reviewed.push_back(i);
            ++day.questions;
            state.half_life_d =
                std::min(2.0 * state.half_life_d, course_.parameters.longest_half_life_d);
            master(i, now_ms);
        }
        return day.questions;
    }

    void master(std::size_t skill, TimeMs now_ms) {
        skills_[skill].known = std::max(skills_[skill].known, course_.parameters.mastered);
        skills_[skill].last_ms = now_ms;
    }

    const Course& course_;
    const Standing& standing_;
    const StudyPlan& plan_;
    const Clock& clock_;
    std::vector<SkillState> skills_;
    std::vector<Work> work_;
    std::size_t next_ = 0; ///< of the work
};

/// Titles joined by semicolons, for a comma may stand in one; beyond a few their number.
std::string titles(const Course& course, const std::vector<std::size_t>& skills, std::size_t most) {
    std::string text;
    for (std::size_t i = 0; i < std::min(most, skills.size()); ++i)
        text += (i > 0 ? "; " : "") + course.skills[skills[i]].skill->title;
    if (skills.size() > most)
        text += fmt::format("; {} more", skills.size() - most);
    return text;
}

} // namespace

const CalendarDay* StudyCalendar::find(Day day) const {
    const auto found = std::find_if(days.begin(), days.end(),
                                    [day](const CalendarDay& one) { return one.day == day; });
    return found == days.end() ? nullptr : &*found;
}

StudyCalendar plan_calendar(const Course& course, const Standing& standing, const StudyPlan& plan,
                            const Clock& clock) {
    return Forecast(course, standing, plan, clock).make();
}

std::string say(const Course& course, const CalendarDay& day) {
    constexpr std::size_t kNamed = 3;
    if (day.mock_exam)
        return fmt::format("Sit a mock exam: {}, {}. Its mistakes are for the day after.",
                           words::counted(course.exam.questions, "question"),
                           words::counted(course.exam.minutes, "minute"));
    if (day.is_free())
        return "Nothing is due: a free day.";
    std::string text = words::counted(day.questions, "question") + ".";
    if (!day.begun.empty())
        text += fmt::format(" Begin: {}.", titles(course, day.begun, kNamed));
    if (!day.gone_on.empty())
        text += fmt::format(" Go on: {}.", titles(course, day.gone_on, kNamed));
    if (!day.reviewed.empty())
        text += fmt::format(" Review: {}.", titles(course, day.reviewed, kNamed));
    return text;
}

std::string say(const Course& course, const StudyCalendar& calendar) {
    constexpr std::size_t kNamed = 6;
    const std::string until = calendar.exam ? "before the exam" : "in these days";
    if (calendar.left_out.empty())
        return fmt::format("Everything fits {}, if you answer about as well as expected.", until);
    return fmt::format("Not everything fits {}. {} left out: {}. An earlier start each day, or a "
                       "later exam, makes room.",
                       until, calendar.left_out.size() == 1 ? "This is" : "These are",
                       titles(course, calendar.left_out, kNamed));
}

} // namespace steelyard::learner

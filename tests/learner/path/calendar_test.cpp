#include "learner/path/calendar.h"
#include "learner/shipped_course.h"

#include <algorithm>
#include <set>

using namespace steelyard::learner;

namespace {

const Clock kNow{kEvening_ms, 0};

StudyCalendar calendar_of(const Standing& standing) {
    return plan_calendar(shipped_course(), standing, plan_study(shipped_course(), standing, kNow),
                         kNow);
}

Standing newcomer_with_exam_in(int days) {
    Standing standing = fresh_standing(shipped_course());
    standing.placement_over = true;
    standing.exam_day = day_of(kNow) + std::chrono::days(days);
    return standing;
}

} // namespace

TEST_CASE("a calendar runs from today to the day before the exam, every day once") {
    const StudyCalendar calendar = calendar_of(newcomer_with_exam_in(30));
    REQUIRE(calendar.days.size() == 30);
    CHECK(calendar.exam == day_of(kNow) + std::chrono::days(30));
    for (std::size_t i = 0; i < calendar.days.size(); ++i)
        CHECK(calendar.days[i].day == day_of(kNow) + std::chrono::days(static_cast<int>(i)));
    CHECK(calendar.find(*calendar.exam) == nullptr);
    CHECK(calendar.find(day_of(kNow)) == &calendar.days.front());
}

TEST_CASE("with time enough every skill is begun once, after what it needs, and all of it fits") {
    const Course& course = shipped_course();
    const StudyCalendar calendar = calendar_of(newcomer_with_exam_in(30));
    CHECK(calendar.left_out.empty());
    std::set<std::size_t> begun;
    for (const CalendarDay& day : calendar.days)
        for (const std::size_t skill : day.begun) {
            CHECK(begun.insert(skill).second);
            for (const std::size_t need : course.skills[skill].needs)
                CHECK((begun.count(need) == 1 || !course.skills[need].can_be_asked()));
        }
    const auto asked = std::count_if(course.skills.begin(), course.skills.end(),
                                     [](const CourseSkill& one) { return one.can_be_asked(); });
    CHECK(static_cast<long>(begun.size()) == asked);
    CHECK_THAT(say(course, calendar), ContainsSubstring("Everything fits before the exam"));
}

TEST_CASE("no day asks for more than the plan does") {
    const Course& course = shipped_course();
    for (const int days : {1, 3, 8, 30, 90}) {
        const Standing standing = newcomer_with_exam_in(days);
        const StudyPlan plan = plan_study(course, standing, kNow);
        for (const CalendarDay& day : calendar_of(standing).days)
            CHECK(day.questions <= plan.per_day);
    }
}

TEST_CASE("what has no room before the exam is named") {
    const Course& course = shipped_course();
    const StudyCalendar calendar = calendar_of(newcomer_with_exam_in(2));
    REQUIRE_FALSE(calendar.left_out.empty());
    const std::string said = say(course, calendar);
    CHECK_THAT(said, ContainsSubstring("Not everything fits before the exam"));
    CHECK_THAT(said, ContainsSubstring(course.skills[calendar.left_out.front()].skill->title));
}

TEST_CASE("mock exams leave a day for their mistakes, and take the place of a session") {
    CHECK(mock_exam_days(3).empty());
    CHECK(mock_exam_days(8) == std::vector<int>{6});
    CHECK(mock_exam_days(30) == std::vector<int>{23, 28});
    const StudyCalendar calendar = calendar_of(newcomer_with_exam_in(8));
    const CalendarDay& mock = calendar.days[6];
    CHECK(mock.mock_exam);
    CHECK(mock.questions == 0);
    CHECK_THAT(say(shipped_course(), mock), ContainsSubstring("40 questions, 60 minutes"));
}

TEST_CASE("a mastered skill comes back before it has faded") {
    const Course& course = shipped_course();
    Standing standing = newcomer_with_exam_in(20);
    for (SkillState& state : standing.skills) {
        state.known = 0.97;
        state.answers = 4;
        state.last_ms = kEvening_ms;
    }
    const StudyCalendar calendar = calendar_of(standing);
    std::vector<int> times(course.skills.size(), 0);
    for (const CalendarDay& day : calendar.days) {
        CHECK(day.begun.empty());
        for (const std::size_t skill : day.reviewed)
            ++times[skill];
    }
    // The half-life of 4 days does not carry a skill over 20: 0.25 + 0.72 / 2^5 = 0.27 < 0.85.
    for (std::size_t i = 0; i < times.size(); ++i)
        CHECK((times[i] >= 1 || !course.skills[i].can_be_asked()));
}

TEST_CASE("on the day of the exam nothing more is planned, and without one the days ahead are") {
    CHECK(calendar_of(newcomer_with_exam_in(0)).days.empty());
    Standing standing = newcomer_with_exam_in(5);
    standing.exam_day.reset();
    const StudyCalendar calendar = calendar_of(standing);
    CHECK_FALSE(calendar.exam);
    CHECK(calendar.days.size() == 28);
    CHECK(std::none_of(calendar.days.begin(), calendar.days.end(),
                       [](const CalendarDay& day) { return day.mock_exam; }));
}

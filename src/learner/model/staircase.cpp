#include "learner/model/staircase.h"

#include "learner/path/next.h"

#include <algorithm>

namespace steelyard::learner {

namespace {

/// Bounds of the words. Source: judgement.
constexpr double kShakyBelow = 0.4;
constexpr double kGrowingBelow = 0.75;

Mastery mastery_of(const SkillState& state, double known, const Parameters& parameters) {
    if (!state.begun())
        return known < kGrowingBelow ? Mastery::untried : Mastery::likely;
    if (known < kShakyBelow)
        return Mastery::shaky;
    if (known < kGrowingBelow)
        return Mastery::growing;
    // A mastered skill stays so while it fades a little: it says "due", not "lost".
    return state.known >= parameters.mastered ? Mastery::mastered : Mastery::nearly;
}

} // namespace

std::string_view word_for(Mastery mastery) {
    switch (mastery) {
    case Mastery::untried:
        return "not tried";
    case Mastery::likely:
        return "probably known";
    case Mastery::shaky:
        return "shaky";
    case Mastery::growing:
        return "growing";
    case Mastery::nearly:
        return "nearly there";
    case Mastery::mastered:
        return "mastered";
    }
    return "";
}

std::string say(const Stair& stair) {
    if (stair.mastery == Mastery::untried && !stair.open)
        return "needs the steps below first";
    if (stair.due)
        return "mastered, due for review";
    return std::string(word_for(stair.mastery));
}

double filled(const Stair& stair) {
    return stair.mastery == Mastery::untried ? 0.0 : stair.known;
}

std::vector<Stair> staircase(const Course& course, const Standing& standing, const Clock& clock) {
    const std::vector<double> known = known_skills(course, standing, clock.utc_ms);
    const double left_d = days_left(course, standing, clock);
    std::vector<Stair> stairs;
    for (std::size_t i = 0; i < course.skills.size(); ++i) {
        const CourseSkill& skill = course.skills[i];
        if (!skill.can_be_asked())
            continue;
        const SkillState& state = standing.skills[i];
        Stair stair;
        stair.skill = i;
        stair.level = skill.skill->level;
        stair.known = known[i];
        stair.mastery = mastery_of(state, known[i], course.parameters);
        stair.open = std::all_of(skill.needs.begin(), skill.needs.end(), [&](std::size_t need) {
            return known[need] >= course.parameters.opens_above ||
                   !course.skills[need].can_be_asked();
        });
        stair.due = state.begun() && state.known >= course.parameters.mastered &&
                    due_at(course, state, left_d, clock.utc_ms) <= clock.utc_ms;
        stair.answers = state.answers;
        stair.right = state.right;
        stairs.push_back(stair);
    }
    std::stable_sort(stairs.begin(), stairs.end(),
                     [](const Stair& a, const Stair& b) { return a.level < b.level; });
    return stairs;
}

} // namespace steelyard::learner

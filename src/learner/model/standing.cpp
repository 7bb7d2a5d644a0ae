#include "learner/model/standing.h"

#include <algorithm>
#include <cmath>

namespace steelyard::learner {

namespace {

/// Marks the placement's answers into every skill: each is known as the network believes.
void place_skills(const Course& course, Standing& standing, TimeMs at_ms) {
    const Parameters& parameters = course.parameters;
    const std::vector<double> known =
        course.placement.known_after(standing.placement, parameters.slip);
    for (std::size_t i = 0; i < standing.skills.size(); ++i) {
        SkillState& state = standing.skills[i];
        state.known = known[i];
        state.last_ms = at_ms;
        // What is known was learned long ago; what is not will be new when it is learned.
        state.half_life_d =
            parameters.half_life_d *
            std::pow(parameters.placed_half_life_d / parameters.half_life_d, known[i]);
    }
}

void count_answer(Standing& standing, const Answer& answer, int offset_s) {
    const Day day = day_of({answer.at_ms, offset_s});
    if (day != standing.today) {
        standing.today = day;
        standing.answered_today = 0;
    }
    if (!answer.is_evidence())
        return;
    ++standing.answers;
    ++standing.answered_today;
    Foresight& foresight = standing.foresight;
    const double fade = std::exp2(-1.0 / kForesightHalf);
    foresight.foreseen = foresight.foreseen * fade + answer.foreseen;
    foresight.right = foresight.right * fade + (answer.is_right() ? 1.0 : 0.0);
    foresight.weight = foresight.weight * fade + 1.0;
}

/// Puts the newest first and lets the oldest go.
template <typename Row> void remember(Row& recent, const std::string& newest, std::size_t most) {
    recent.insert(recent.begin(), newest);
    if (recent.size() > most)
        recent.pop_back();
}

} // namespace

Standing fresh_standing(const Course& course) {
    Standing standing;
    standing.skills.assign(course.skills.size(), untouched(course.parameters));
    return standing;
}

Standing after_answer(const Course& course, Standing standing, const Answer& answer, int offset_s) {
    count_answer(standing, answer, offset_s);
    standing.last_ms = answer.at_ms;
    remember(standing.recent_families, answer.family, kRecentFamilies);
    if (standing.recent_codes.empty() || standing.recent_codes.front() != answer.code)
        remember(standing.recent_codes, answer.code, kRecentCodes);
    const auto skill = course.find(answer.skill);
    // Practice teaches, so it ends the placement; a quick quiz or a mock exam taken first serves
    // it.
    const auto most = static_cast<std::size_t>(course.parameters.placement_questions);
    if (answer.purpose == Purpose::practice || standing.placement.size() >= most)
        standing.placement_over = true;
    const bool places = !standing.placement_over;
    if (!skill)
        return standing;
    SkillState& state = standing.skills[*skill];
    if (!places) {
        state = after_answer(state, answer, course.parameters);
        return standing;
    }
    if (!answer.is_evidence())
        return standing;
    standing.placement.push_back({*skill, answer.is_right(), answer.guess});
    ++state.answers;
    state.right += answer.is_right() ? 1 : 0;
    place_skills(course, standing, answer.at_ms);
    return standing;
}

std::vector<double> known_skills(const Course& course, const Standing& standing, TimeMs at_ms) {
    std::vector<double> known;
    known.reserve(standing.skills.size());
    for (const SkillState& state : standing.skills)
        known.push_back(known_at(state, at_ms, course.parameters));
    return known;
}

double foresee(const Course& course, const Standing& standing, std::size_t skill, double guess,
               double help, TimeMs at_ms) {
    const Parameters& parameters = course.parameters;
    return chance_right(known_at(standing.skills[skill], at_ms, parameters),
                        guess_with_help(guess, parameters.slip, help), parameters.slip);
}

} // namespace steelyard::learner

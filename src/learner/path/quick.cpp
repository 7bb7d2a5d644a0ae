#include "learner/path/quick.h"

#include "problems/draw/random.h"

#include <algorithm>

namespace steelyard::learner {

namespace {

using problems::Family;

/// A typed number of this difficulty takes half a minute.
constexpr int kQuickDifficulty = 1;

bool is_quick(const Family& family) {
    return family.kind != problems::Kind::numeric || family.base_difficulty <= kQuickDifficulty;
}

struct Candidate {
    std::size_t skill = 0;
    double worth = 0.0;
    std::vector<const Family*> families;
};

bool is_open(const Course& course, const std::vector<double>& known, std::size_t skill) {
    const std::vector<std::size_t>& needs = course.skills[skill].needs;
    return std::all_of(needs.begin(), needs.end(), [&](std::size_t need) {
        return known[need] >= course.parameters.opens_above;
    });
}

/// Skills with quick families, the most useful first.
std::vector<Candidate> candidates_of(const Course& course, const Standing& standing,
                                     const Clock& clock) {
    const std::vector<double> known = known_skills(course, standing, clock.utc_ms);
    std::vector<Candidate> candidates;
    for (std::size_t i = 0; i < course.skills.size(); ++i) {
        Candidate candidate;
        candidate.skill = i;
        for (const Family* family : course.skills[i].families)
            if (is_quick(*family))
                candidate.families.push_back(family);
        if (candidate.families.empty())
            continue;
        // Begun ones before open ones before closed ones; within each, the least sure.
        const double turn = standing.skills[i].begun()  ? 2.0
                            : is_open(course, known, i) ? 1.0
                                                        : 0.0;
        candidate.worth = turn + (1.0 - known[i]) * 0.99;
        candidates.push_back(std::move(candidate));
    }
    std::stable_sort(candidates.begin(), candidates.end(),
                     [](const Candidate& a, const Candidate& b) { return a.worth > b.worth; });
    return candidates;
}

/// A family that was not among the last ones, where there is one.
const Family* rested(const Candidate& candidate, const Standing& standing, std::uint64_t choice) {
    const std::size_t count = candidate.families.size();
    for (std::size_t i = 0; i < count; ++i) {
        const Family* family = candidate.families[(choice + i) % count];
        if (std::find(standing.recent_families.begin(), standing.recent_families.end(),
                      family->id) == standing.recent_families.end())
            return family;
    }
    return candidate.families[choice % count];
}

} // namespace

std::vector<Next> quick_quiz(const Course& course, const Standing& standing, const Clock& clock,
                             std::uint64_t choice) {
    std::vector<Next> quiz;
    for (const Candidate& candidate : candidates_of(course, standing, clock)) {
        if (quiz.size() == kQuickQuestions)
            break;
        const Family* family = rested(candidate, standing, problems::mix(choice, candidate.skill));
        const bool fresh = !standing.skills[candidate.skill].begun();
        quiz.push_back(
            {fresh ? Reason::fresh : Reason::growing, candidate.skill, family, Shown::plain, 0});
    }
    return quiz;
}

} // namespace steelyard::learner

#include "cli/reports/progress_text.h"

#include "cli/study/terminal.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::cli {

namespace {

using learner::Course;
using learner::Stair;

constexpr std::size_t kBar = 16;
constexpr std::size_t kTitle = 44;

/// A title cut to so many columns, and filled up to them.
std::string cut(const std::string& title, std::size_t columns) {
    std::string text = title;
    if (columns_of(text) > columns) {
        while (columns_of(text) > columns - 1 || text.back() == ' ')
            text.pop_back();
        text += "~";
    }
    return text + std::string(columns - columns_of(text), ' ');
}

const std::string& title_of(const Course& course, const Stair& stair) {
    return course.skills[stair.skill].skill->title;
}

std::string score_bars(const learner::Readiness& ready) {
    const double highest = *std::max_element(ready.scores.begin(), ready.scores.end());
    // Two scores to a line keep the picture short.
    constexpr std::size_t kGroup = 2;
    std::string text;
    for (std::size_t low = 0; low < ready.scores.size(); low += kGroup) {
        const std::size_t high = std::min(low + kGroup, ready.scores.size()) - 1;
        double chance = 0.0;
        for (std::size_t score = low; score <= high; ++score)
            chance += ready.scores[score];
        if (chance < 0.005)
            continue;
        const auto marks =
            static_cast<std::size_t>(std::lround(chance / (highest * kGroup) * 30.0));
        const bool passes = static_cast<int>(low) >= ready.pass;
        text += fmt::format(
            "  {:>3} to {:<3} {}  {}\n", low, high, cut(std::string(marks, passes ? '#' : '-'), 32),
            static_cast<int>(low) <= ready.pass && ready.pass <= static_cast<int>(high)
                ? "<- needed to pass"
                : "");
    }
    return text;
}

} // namespace

std::string staircase_text(const Course& course, const std::vector<Stair>& stairs) {
    std::string text;
    int level = 0;
    for (const Stair& stair : stairs) {
        if (stair.level != level) {
            level = stair.level;
            text += fmt::format("\nStep {}\n", level);
        }
        text += fmt::format("  {} [{}] {}\n", cut(title_of(course, stair), kTitle),
                            bar(filled(stair), kBar), say(stair));
    }
    return text;
}

std::string readiness_text(const Course& course, const learner::Standing& standing,
                           const learner::Readiness& ready,
                           const std::vector<learner::ExamResult>& exams) {
    std::string text = wrapped(say(ready, course));
    if (ready.questions == 0 || ready.answers == 0)
        return text;
    if (!ready.is_too_early()) {
        text += "\nHow that was reached: chance of each score in a mock exam today\n";
        text += score_bars(ready);
        text += wrapped(learner::how_reached(course));
    }
    const std::vector<learner::SkillShare> shares = learner::most_to_win(ready);
    constexpr std::size_t kShown = 5;
    text += "Study these first:\n";
    for (std::size_t i = 0; i < std::min(kShown, shares.size()); ++i)
        text += fmt::format("  {} {:.1f} of {} expected\n",
                            cut(course.skills[shares[i].skill].skill->title, kTitle),
                            shares[i].expected, shares[i].questions);
    text += wrapped(say(standing.foresight));
    if (!exams.empty())
        text += wrapped(learner::say_alone(exams.front().right, exams.front().of,
                                           course.parameters.confidence));
    return text;
}

} // namespace steelyard::cli

#include "learner/path/welcome.h"

#include "words/counted.h"

#include <fmt/format.h>

#include <algorithm>

namespace steelyard::learner {

WelcomeBack welcome_back(const Course& course, const Standing& standing, const Clock& clock) {
    WelcomeBack back;
    if (standing.last_ms == 0)
        return back;
    const Day last = day_of({standing.last_ms, clock.offset_s});
    back.days = std::max(0, days_between(last, day_of(clock)));
    if (back.days < 1)
        return back;
    const double enough = course.parameters.keeps_until_exam;
    for (std::size_t i = 0; i < standing.skills.size(); ++i) {
        const SkillState& state = standing.skills[i];
        if (state.answers == 0 || state.known < enough)
            continue;
        const double now = known_at(state, clock.utc_ms, course.parameters);
        if (now >= enough)
            back.kept.push_back(i);
        else
            back.faded.push_back({i, state.known, now});
    }
    std::stable_sort(back.faded.begin(), back.faded.end(), [](const Faded& a, const Faded& b) {
        return a.then - a.now > b.then - b.now;
    });
    return back;
}

std::string say(const Course& course, const WelcomeBack& back) {
    const std::size_t learned = back.kept.size() + back.faded.size();
    if (back.days < 1 || learned == 0)
        return {};
    std::string text = fmt::format("Welcome back after {}. ", words::counted(back.days, "day"));
    if (back.faded.empty())
        return text + (learned == 1 ? "What you had learned is still there."
                                    : fmt::format("All {} skills that you had learned are still "
                                                  "there.",
                                                  learned));
    text += back.kept.empty() ? std::string("What you had learned has faded")
                              : fmt::format("{} of {} skills that you had learned are still there; "
                                            "faded since",
                                            back.kept.size(), learned);
    constexpr std::size_t kNamed = 3;
    for (std::size_t i = 0; i < std::min(kNamed, back.faded.size()); ++i)
        text += fmt::format("{} {} ({:.0f} % to {:.0f} %)", i == 0 ? ":" : ",",
                            course.skills[back.faded[i].skill].skill->title,
                            100.0 * back.faded[i].then, 100.0 * back.faded[i].now);
    if (back.faded.size() > kNamed)
        text += fmt::format(" and {} more", back.faded.size() - kNamed);
    return text + ". A few questions bring it back.";
}

} // namespace steelyard::learner

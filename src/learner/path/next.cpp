#include "learner/path/next.h"

#include "problems/draw/random.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <vector>

namespace steelyard::learner {

namespace {

using problems::Family;
using problems::Scene;

/// Stages of fading: 0 worked example, 1 and 2 so many steps blank, from 3 on plain.
constexpr int kPlainStage = 3;

/// Weight in the exam below which a skill still counts, as a share of the mean: it is a
/// prerequisite of others.
constexpr double kLeastWeight = 0.5;

/// What the learner was asked or shown last.
struct Before {
    const Family* family = nullptr;
    std::optional<std::size_t> skill;
};

Before last_asked(const Course& course, const Standing& standing) {
    Before before;
    if (standing.recent_families.empty())
        return before;
    const Family* const family = course.bank->find_family(standing.recent_families.front());
    if (family == nullptr)
        return before;
    before.family = &course.bank->in_units(*family, course.units);
    before.skill = course.find(family->skill);
    return before;
}

/// Questions in a row that may show the same kind of thing.
constexpr std::size_t kScenesInARow = 3;

/// The kind that all of the last questions showed, which the next is not to show.
std::optional<Scene> tired_scene(const Course& course, const Standing& standing) {
    if (standing.recent_families.size() < kScenesInARow)
        return std::nullopt;
    std::optional<Scene> all;
    for (std::size_t i = 0; i < kScenesInARow; ++i) {
        const Family* const family = course.bank->find_family(standing.recent_families[i]);
        if (family == nullptr || (all && *all != family->scene()))
            return std::nullopt;
        all = family->scene();
    }
    return all;
}

/// What is asked of a family beside that it has rested.
struct Wishes {
    bool other_strategy = false;      ///< than the last one's
    std::optional<Scene> other_scene; ///< than this
};

/// How long ago a family was asked: larger is longer; never asked is longest.
std::size_t rest_of(const Standing& standing, const Family& family) {
    const auto found =
        std::find(standing.recent_families.begin(), standing.recent_families.end(), family.id);
    return static_cast<std::size_t>(found - standing.recent_families.begin());
}

/// The family of a skill that has rested longest; of equals, by `choice`. Never the one asked last.
/// Of those that rested for ever, ones with a person come first.
const Family* rested_family(const CourseSkill& skill, const Standing& standing,
                            const Before& before, const Wishes& wishes, std::uint64_t choice) {
    std::vector<const Family*> best;
    std::size_t longest = 0;
    for (const Family* family : skill.families) {
        if (family == before.family)
            continue;
        if (wishes.other_strategy && before.family != nullptr &&
            family->strategy == before.family->strategy)
            continue;
        if (wishes.other_scene && family->scene() == *wishes.other_scene)
            continue;
        const std::size_t rest = rest_of(standing, *family);
        if (best.empty() || rest > longest) {
            best.clear();
            longest = rest;
        }
        if (rest == longest)
            best.push_back(family);
    }
    if (longest >= standing.recent_families.size()) {
        const auto first_thing =
            std::stable_partition(best.begin(), best.end(), [](const Family* family) {
                return family->scene() == Scene::person;
            });
        if (first_thing != best.begin())
            best.erase(first_thing, best.end());
    }
    return best.empty() ? nullptr : best[choice % best.size()];
}

/// A skill that may be asked now.
struct Candidate {
    Reason reason = Reason::extra;
    int turn = 0;       ///< lower goes first
    double worth = 0.0; ///< larger goes first
    std::size_t skill = 0;
};

bool goes_before(const Candidate& one, const Candidate& other) {
    if (one.turn != other.turn)
        return one.turn < other.turn;
    return one.worth > other.worth;
}

/// Everything that could be asked, best first.
class Choice {
public:
    Choice(const Course& course, const Standing& standing, const Clock& clock)
        : course_(course), standing_(standing), clock_(clock),
          before_(last_asked(course, standing)),
          known_(known_skills(course, standing, clock.utc_ms)),
          days_left_d_(days_left(course, standing, clock)) {}

    Next make(std::uint64_t choice) const {
        if (const auto next = placement(choice))
            return *next;
        if (const auto next = block(choice))
            return *next;
        std::vector<Candidate> candidates = all();
        std::stable_sort(candidates.begin(), candidates.end(), goes_before);
        // First without the skill and the strategy asked last; then give up these wishes. For
        // another kind of drawing no skill is asked whose turn has not come.
        if (const auto scene = tired_scene(course_, standing_); scene && !candidates.empty()) {
            const int turn = candidates.front().turn;
            std::vector<Candidate> in_turn = candidates;
            in_turn.erase(std::remove_if(in_turn.begin(), in_turn.end(),
                                         [&](const Candidate& one) { return one.turn > turn; }),
                          in_turn.end());
            if (const auto next = best_of(in_turn, scene, choice))
                return *next;
        }
        if (const auto next = best_of(candidates, std::nullopt, choice))
            return *next;
        return last_resort();
    }

    Next of_skill(std::size_t skill, std::uint64_t choice) const {
        const CourseSkill& asked = course_.skills[skill];
        const auto scene = tired_scene(course_, standing_);
        for (const Wishes& wishes :
             {Wishes{true, scene}, Wishes{false, scene}, Wishes{true, {}}, Wishes{false, {}}})
            if (const Family* family = rested_family(asked, standing_, before_, wishes, choice))
                return shown({Reason::chosen, skill, family});
        return shown({Reason::chosen, skill, asked.families.front()});
    }

private:
    std::optional<Next> best_of(const std::vector<Candidate>& candidates,
                                const std::optional<Scene>& other_scene,
                                std::uint64_t choice) const {
        for (const bool other_skill : {true, false})
            for (const bool other_strategy : {true, false})
                for (const Candidate& candidate : candidates) {
                    if (other_skill && before_.skill == candidate.skill)
                        continue;
                    if (const Family* family =
                            rested_family(course_.skills[candidate.skill], standing_, before_,
                                          {other_strategy, other_scene}, choice))
                        return shown({candidate.reason, candidate.skill, family});
                }
        return std::nullopt;
    }

    std::optional<Next> placement(std::uint64_t choice) const {
        const Parameters& parameters = course_.parameters;
        if (standing_.placement_over ||
            standing_.placement.size() >= static_cast<std::size_t>(parameters.placement_questions))
            return std::nullopt;
        std::vector<double> guess;
        for (const CourseSkill& skill : course_.skills)
            guess.push_back(rested_family(skill, standing_, before_, {}, choice) != nullptr
                                ? skill.guess
                                : -1.0);
        const Placing placing =
            course_.placement.place(standing_.placement, guess, parameters.slip);
        if (placing.best_settles <= parameters.placement_enough)
            return std::nullopt;
        const Family* family =
            rested_family(course_.skills[placing.best_skill], standing_, before_, {}, choice);
        return Next{Reason::placement, placing.best_skill, family, Shown::plain, 0};
    }

    /// A brand-new skill goes on for a few questions, as long as each is solved differently.
    std::optional<Next> block(std::uint64_t choice) const {
        if (!before_.skill)
            return std::nullopt;
        const SkillState& state = standing_.skills[*before_.skill];
        if (!state.begun() || state.answers + state.examples >= course_.parameters.block ||
            known_[*before_.skill] >= course_.parameters.mastered)
            return std::nullopt;
        const Family* family = rested_family(course_.skills[*before_.skill], standing_, before_,
                                             {true, tired_scene(course_, standing_)}, choice);
        if (family == nullptr)
            return std::nullopt;
        return shown({Reason::growing, *before_.skill, family});
    }

    std::vector<Candidate> all() const {
        std::vector<Candidate> candidates;
        int growing = 0;
        for (std::size_t i = 0; i < course_.skills.size(); ++i)
            growing += is_growing(i) ? 1 : 0;
        for (std::size_t i = 0; i < course_.skills.size(); ++i)
            if (course_.skills[i].can_be_asked())
                candidates.push_back(judge(i, growing));
        return candidates;
    }

    bool is_growing(std::size_t skill) const {
        return standing_.skills[skill].begun() && known_[skill] < course_.parameters.mastered &&
               standing_.skills[skill].known < course_.parameters.mastered;
    }

    Candidate judge(std::size_t skill, int growing) const {
        const SkillState& state = standing_.skills[skill];
        const double mean = 1.0 / static_cast<double>(course_.skills.size());
        const double weight = std::max(course_.skills[skill].weight, kLeastWeight * mean);
        const double worth = weight * (1.0 - known_[skill]);
        if (is_growing(skill) && is_open(skill))
            return {state.misses_in_row > 0 ? Reason::missed : Reason::growing, 0, worth, skill};
        if (state.known >= course_.parameters.mastered &&
            due_at(course_, state, days_left_d_, clock_.utc_ms) <= clock_.utc_ms)
            return {Reason::due, 0, worth, skill};
        if (!state.begun() && is_open(skill) && state.known < course_.parameters.mastered)
            return {Reason::fresh, growing < course_.parameters.learning_at_once ? 1 : 2,
                    course_.skills[skill].weight - course_.skills[skill].skill->level, skill};
        return {Reason::extra, is_open(skill) ? 3 : 4, worth, skill};
    }

    /// Whether the prerequisites are known well enough.
    bool is_open(std::size_t skill) const {
        const std::vector<std::size_t>& needs = course_.skills[skill].needs;
        return std::all_of(needs.begin(), needs.end(), [&](std::size_t need) {
            return known_[need] >= course_.parameters.opens_above ||
                   !course_.skills[need].can_be_asked();
        });
    }

    Next shown(Next next) const {
        const SkillState& state = standing_.skills[next.skill];
        const bool solid = known_[next.skill] >= course_.parameters.plain_above;
        const bool has_steps = !next.family->steps.empty();
        // Who has met it only in questions they could not answer is new to it.
        if (state.examples == 0 && state.right == 0 && !solid) {
            next.shown = Shown::worked_example;
        } else if (state.stage > 0 && state.stage < kPlainStage && !solid && has_steps) {
            next.shown = Shown::faded;
            next.blank_steps = static_cast<std::size_t>(state.stage);
        }
        return next;
    }

    /// A bank of one family has to ask it again.
    Next last_resort() const {
        for (std::size_t i = 0; i < course_.skills.size(); ++i)
            if (course_.skills[i].can_be_asked())
                return shown({Reason::extra, i, course_.skills[i].families.front()});
        return {};
    }

    const Course& course_;
    const Standing& standing_;
    const Clock& clock_;
    Before before_;
    std::vector<double> known_;
    double days_left_d_;
};

} // namespace

double days_left(const Course& course, const Standing& standing, const Clock& clock) {
    if (!standing.exam_day)
        return course.parameters.days_without_exam;
    const int days = days_between(day_of(clock), *standing.exam_day);
    return days < 0 ? course.parameters.days_without_exam : std::max(1, days);
}

double review_gap_days(const Parameters& parameters, double days_left_d) {
    return std::clamp(parameters.gap_share * days_left_d, parameters.shortest_gap_d,
                      parameters.longest_gap_d);
}

TimeMs due_at(const Course& course, const SkillState& state, double days_left_d, TimeMs now_ms) {
    const Parameters& parameters = course.parameters;
    if (state.known < parameters.mastered || state.last_ms > now_ms)
        return now_ms;
    const double since_d = gap_days(state.last_ms, now_ms);
    const double on_exam_day =
        after_gap(state.known, parameters.start, since_d + days_left_d, state.half_life_d);
    if (on_exam_day >= parameters.keeps_until_exam)
        return now_ms + static_cast<TimeMs>(days_left_d * static_cast<double>(kDay_ms));
    const double gap_d = review_gap_days(parameters, days_left_d);
    return std::max(now_ms,
                    state.last_ms + static_cast<TimeMs>(gap_d * static_cast<double>(kDay_ms)));
}

Next choose_next(const Course& course, const Standing& standing, const Clock& clock,
                 std::uint64_t choice) {
    return Choice(course, standing, clock).make(choice);
}

Next choose_of_skill(const Course& course, const Standing& standing, const Clock& clock,
                     std::size_t skill, std::uint64_t choice) {
    return Choice(course, standing, clock).of_skill(skill, choice);
}

tl::expected<problems::Question, problems::NoQuestion>
question_for(const Course& course, const Standing& standing, const Next& next, std::uint64_t seed) {
    if (next.family == nullptr)
        return tl::make_unexpected(
            problems::NoQuestion{"The question bank has no family that could be asked."});
    return problems::unseen_question(*course.bank, *next.family, seed,
                                     {standing.recent_codes.begin(), standing.recent_codes.end()});
}

std::size_t done_steps(const Next& next, const problems::Question& question) {
    if (next.shown == Shown::worked_example)
        return question.steps.size();
    if (next.shown == Shown::plain || next.blank_steps >= question.steps.size())
        return 0;
    return question.steps.size() - next.blank_steps;
}

std::string why(const Course& course, const Next& next) {
    const std::string& title = course.skills[next.skill].skill->title;
    switch (next.reason) {
    case Reason::placement:
        return fmt::format("To find out where you stand: {}.", title);
    case Reason::growing:
        return fmt::format("You are learning this: {}.", title);
    case Reason::missed:
        return fmt::format("Missed last time: {}.", title);
    case Reason::due:
        return fmt::format("Time to come back to this: {}.", title);
    case Reason::fresh:
        return fmt::format("New: {}.", title);
    case Reason::extra:
        return fmt::format("Nothing is due; extra practice: {}.", title);
    case Reason::chosen:
        return fmt::format("You chose this: {}.", title);
    }
    return {};
}

} // namespace steelyard::learner

#include "learner/model/readiness.h"

#include "words/counted.h"

#include <boost/math/distributions/normal.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace steelyard::learner {

namespace {

/// How people differ from what the model takes for granted: in how often they slip, and in how much
/// more or less they know than it believes, the same way for every skill. Each case has a weight
/// before any answer was seen. Source: judgement; the simulation in tests/bench shows that
/// intervals made so hold what they promise.
struct Person {
    double slip_times = 1.0; ///< slip rate as a multiple of the parameter
    double shift = 0.0;      ///< of every skill's log odds of being known
    double weight = 1.0;
};

std::vector<Person> people() {
    constexpr double kSpread = 0.8; ///< standard deviation of the shift
    std::vector<Person> all;
    for (const auto& [slip, share] : {std::pair{0.5, 0.3}, {1.0, 0.4}, {1.7, 0.3}})
        for (double shift = -2.0; shift <= 2.0; shift += 0.5)
            all.push_back(
                {slip, shift, share * std::exp(-0.5 * shift * shift / kSpread / kSpread)});
    return all;
}

double shifted(double chance, double shift) {
    const double odds = chance / (1.0 - chance) * std::exp(shift);
    return odds / (1.0 + odds);
}

/// Answers of late were to the skills that were practised, not to those of an exam: each counts as
/// so much of an answer.
constexpr double kTrust = 0.3;

/// Weighs the cases by how well each explains the answers of late: so many were foreseen to be
/// right, so many were (a binomial likelihood of the counts, which fade with time).
void weigh(std::vector<Person>& all, const Foresight& seen, const Parameters& parameters) {
    const double guess = parameters.guess_typed;
    const double range = 1.0 - parameters.slip - guess;
    for (Person& person : all) {
        if (seen.weight <= 0.0)
            continue;
        const double known = std::clamp((seen.foreseen / seen.weight - guess) / range, 0.02, 0.98);
        const double slip = std::min(0.45, person.slip_times * parameters.slip);
        const double right = chance_right(shifted(known, person.shift), guess, slip);
        person.weight *= std::exp(kTrust * (seen.right * std::log(right) +
                                            (seen.weight - seen.right) * std::log(1.0 - right)));
    }
    double sum = 0.0;
    for (const Person& person : all)
        sum += person.weight;
    for (Person& person : all)
        person.weight /= sum;
}

/// Chance of each number of right answers among n questions of chance p (binomial distribution).
std::vector<double> binomial(int n, double p) {
    std::vector<double> chances{1.0};
    for (int i = 0; i < n; ++i) {
        std::vector<double> next(chances.size() + 1, 0.0);
        for (std::size_t k = 0; k < chances.size(); ++k) {
            next[k] += chances[k] * (1.0 - p);
            next[k + 1] += chances[k] * p;
        }
        chances = std::move(next);
    }
    return chances;
}

std::vector<double> convolved(const std::vector<double>& a, const std::vector<double>& b) {
    std::vector<double> sum(a.size() + b.size() - 1, 0.0);
    for (std::size_t i = 0; i < a.size(); ++i)
        for (std::size_t j = 0; j < b.size(); ++j)
            sum[i + j] += a[i] * b[j];
    return sum;
}

/// Chance of each score for one case.
std::vector<double> scores_for(const Course& course, const std::vector<SkillShare>& shares,
                               const Person& person) {
    const double slip = std::min(0.45, person.slip_times * course.parameters.slip);
    std::vector<double> scores{1.0};
    for (const SkillShare& share : shares) {
        const double known = shifted(std::clamp(share.known, 0.001, 0.999), person.shift);
        const std::vector<double> if_known = binomial(share.questions, 1.0 - slip);
        const std::vector<double> if_not =
            binomial(share.questions, course.skills[share.skill].guess);
        std::vector<double> either(if_known.size());
        for (std::size_t k = 0; k < either.size(); ++k)
            either[k] = known * if_known[k] + (1.0 - known) * if_not[k];
        scores = convolved(scores, either);
    }
    return scores;
}

std::vector<SkillShare> exam_shares(const Course& course, const std::vector<double>& known) {
    std::vector<double> weights;
    for (const CourseSkill& skill : course.skills)
        weights.push_back(skill.weight);
    const std::vector<int> questions = share_out(weights, course.exam.questions);
    std::vector<SkillShare> shares;
    for (std::size_t i = 0; i < questions.size(); ++i)
        if (questions[i] > 0)
            shares.push_back({i, questions[i], known[i],
                              questions[i] * chance_right(known[i], course.skills[i].guess,
                                                          course.parameters.slip)});
    return shares;
}

} // namespace

ScoreInterval score_interval(const std::vector<double>& scores, double share) {
    ScoreInterval best{0, static_cast<int>(scores.size()) - 1, 1.0};
    // Sums of chances are off by their last bits.
    const double enough = share - 1e-12;
    std::size_t high = 0;
    double holds = 0.0;
    for (std::size_t low = 0; low < scores.size(); ++low) {
        while (high < scores.size() && holds < enough)
            holds += scores[high++];
        if (holds < enough)
            break;
        const int length = static_cast<int>(high - 1 - low);
        const int best_length = best.high - best.low;
        if (length < best_length || (length == best_length && holds > best.holds))
            best = {static_cast<int>(low), static_cast<int>(high) - 1, holds};
        holds -= scores[low];
    }
    return best;
}

ShareInterval wilson_interval(int right, int of, double confidence) {
    const double z =
        boost::math::quantile(boost::math::normal_distribution<double>(), 0.5 + confidence / 2.0);
    const double n = of;
    const double p = right / n;
    const double centre = (p + z * z / (2.0 * n)) / (1.0 + z * z / n);
    const double half =
        z / (1.0 + z * z / n) * std::sqrt(p * (1.0 - p) / n + z * z / (4.0 * n * n));
    return {std::max(0.0, centre - half), std::min(1.0, centre + half)};
}

bool Readiness::is_too_early() const {
    return answers < kAnswersToPredict || touched < kTouchedToPredict ||
           width() >= kWidestPrediction;
}

double Readiness::width() const {
    return questions > 0 ? static_cast<double>(high - low) / questions : 1.0;
}

Readiness readiness(const Course& course, const Standing& standing, TimeMs at_ms) {
    Readiness ready;
    ready.shares = exam_shares(course, known_skills(course, standing, at_ms));
    ready.answers = standing.answers;
    for (const SkillState& state : standing.skills)
        ready.skills_tried += state.answers > 0 ? 1 : 0;
    int touched = 0;
    for (const SkillShare& share : ready.shares) {
        ready.questions += share.questions;
        touched += standing.skills[share.skill].answers > 0 ? share.questions : 0;
    }
    ready.touched = ready.questions > 0 ? static_cast<double>(touched) / ready.questions : 0.0;
    ready.pass = pass_mark(course.exam.pass_share, ready.questions);
    ready.scores.assign(static_cast<std::size_t>(ready.questions) + 1, 0.0);
    std::vector<Person> cases = people();
    weigh(cases, standing.foresight, course.parameters);
    for (const Person& person : cases) {
        const std::vector<double> scores = scores_for(course, ready.shares, person);
        for (std::size_t k = 0; k < scores.size(); ++k)
            ready.scores[k] += person.weight * scores[k];
    }
    for (std::size_t k = 0; k < ready.scores.size(); ++k) {
        ready.expected += static_cast<double>(k) * ready.scores[k];
        if (static_cast<int>(k) >= ready.pass)
            ready.chance_to_pass += ready.scores[k];
    }
    const ScoreInterval interval = score_interval(ready.scores, course.parameters.confidence);
    ready.low = interval.low;
    ready.high = interval.high;
    ready.holds = interval.holds;
    return ready;
}

std::string say(const Readiness& ready, const Course& course) {
    if (ready.questions == 0)
        return "The question bank has nothing that the exam asks.";
    if (ready.answers == 0)
        return "Nothing is known about you yet: answer some questions first.";
    if (ready.answers >= kAnswersToPredict && ready.touched >= kTouchedToPredict &&
        ready.is_too_early())
        return fmt::format(
            "Too early to predict a score: what you know so far leaves {:.0f} points "
            "in a hundred open, and a prediction takes less than {:.0f}. More answers "
            "narrow it; a mock exam shows where you are.",
            100.0 * ready.width(), 100.0 * kWidestPrediction);
    if (ready.is_too_early())
        return fmt::format(
            "Too early to predict a score: {} of {} skills begun. A prediction takes {} "
            "answers, over {:.0f} % of the exam or more; you have given {}, over "
            "{:.0f} %.",
            ready.skills_tried, course.skills.size(), kAnswersToPredict, 100.0 * kTouchedToPredict,
            ready.answers, std::floor(100.0 * ready.touched));
    const double chance = ready.chance_to_pass;
    const char* verdict = chance >= 0.95  ? "Today you would very likely pass"
                          : chance >= 0.8 ? "Today you would probably pass"
                          : chance >= 0.5 ? "Today it could go either way, rather well"
                          : chance >= 0.2 ? "Today it could go either way, rather badly"
                                          : "Today you would probably not pass";
    return fmt::format(
        "{}: {} to {} of {} right, {:.0f} times in 100; {} {} needed. It rests on {} to {} of {} "
        "skills.",
        verdict, ready.low, ready.high, ready.questions, ready.holds * 100.0, ready.pass,
        ready.pass == 1 ? "is" : "are", words::counted(ready.answers, "answer"), ready.skills_tried,
        course.skills.size());
}

std::string how_reached(const Course& course) {
    return fmt::format(
        "Each skill counts as known with the chance that your answers give it. Known, a question "
        "is right {:.0f} times in 100; not known, as often as guessing is. A skill nobody asked "
        "you about counts with what the placement or the start says.",
        100.0 * (1.0 - course.parameters.slip));
}

std::vector<SkillShare> most_to_win(const Readiness& ready) {
    std::vector<SkillShare> shares = ready.shares;
    std::stable_sort(shares.begin(), shares.end(), [](const SkillShare& a, const SkillShare& b) {
        return a.questions - a.expected > b.questions - b.expected;
    });
    return shares;
}

std::string say(const Foresight& foresight) {
    constexpr double kFew = 10.0;
    if (foresight.weight < kFew)
        return {};
    return fmt::format(
        "Was it right so far? Of your last answers it foresaw {:.0f} % right; {:.0f} % were.",
        100.0 * foresight.foreseen / foresight.weight, 100.0 * foresight.right / foresight.weight);
}

std::string say_alone(int right, int of, double confidence) {
    if (of <= 0)
        return {};
    const ShareInterval alone = wilson_interval(right, of, confidence);
    return fmt::format("Your last mock exam alone: {} of {} right, which says {:.0f} to {:.0f} of "
                       "{} for another one like it (Wilson's interval of the share).",
                       right, of, alone.low * of, alone.high * of, of);
}

} // namespace steelyard::learner

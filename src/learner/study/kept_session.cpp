#include "learner/study/kept_session.h"

#include "learner/model/staircase.h"
#include "problems/question/generator.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>

namespace steelyard::learner {

namespace {

using nlohmann::json;

constexpr int kVersion = 1;
constexpr std::array<const char*, 4> kKinds{"day", "skill", "quick", "redo"};
constexpr std::array<const char*, 7> kReasons{"placement", "growing", "missed", "due",
                                              "fresh",     "extra",   "chosen"};
constexpr std::array<const char*, 3> kShown{"worked_example", "faded", "plain"};

template <std::size_t N>
std::optional<std::size_t> index_of(const std::array<const char*, N>& words, const json& word) {
    const auto found = std::find(words.begin(), words.end(), word.get<std::string>());
    if (found == words.end())
        return std::nullopt;
    return static_cast<std::size_t>(found - words.begin());
}

/// What a key has to hold.
enum class Holds { text, count, number, truth, object };
struct Key {
    const char* name;
    Holds holds;
};
constexpr std::array<Key, 5> kNextKeys{{{"skill", Holds::text},
                                        {"family", Holds::text},
                                        {"reason", Holds::text},
                                        {"shown", Holds::text},
                                        {"blank_steps", Holds::count}}};
constexpr std::array<Key, 12> kSessionKeys{{{"version", Holds::number},
                                            {"kind", Holds::text},
                                            {"next", Holds::object},
                                            {"seed", Holds::count},
                                            {"drawn", Holds::count},
                                            {"placing", Holds::truth},
                                            {"begun_ms", Holds::number},
                                            {"done", Holds::number},
                                            {"answered", Holds::number},
                                            {"right", Holds::number},
                                            {"code", Holds::text},
                                            {"attempted", Holds::truth}}};

bool holds(const json& value, Holds wanted) {
    switch (wanted) {
    case Holds::text:
        return value.is_string();
    case Holds::count:
        return value.is_number_unsigned();
    case Holds::number:
        return value.is_number_integer();
    case Holds::truth:
        return value.is_boolean();
    case Holds::object:
        return value.is_object();
    }
    return false;
}

/// Whether all keys are there and hold what they have to: a page in a browser has no exceptions, so
/// that nothing may be asked for that is not there.
template <std::size_t N> bool has(const json& from, const std::array<Key, N>& keys) {
    return from.is_object() && std::all_of(keys.begin(), keys.end(), [&](const Key& key) {
               const auto found = from.find(key.name);
               return found != from.end() && holds(*found, key.holds);
           });
}

/// The same of a session as a whole.
bool is_whole(const json& from) {
    if (!has(from, kSessionKeys) || !has(from.at("next"), kNextKeys))
        return false;
    for (const char* const list : {"quiz", "codes"})
        if (!from.contains(list) || !from.at(list).is_array())
            return false;
    const json& quiz = from.at("quiz");
    const json& codes = from.at("codes");
    return from.contains("target") &&
           (from.at("target").is_null() || from.at("target").is_number_integer()) &&
           std::all_of(quiz.begin(), quiz.end(),
                       [](const json& one) { return has(one, kNextKeys); }) &&
           std::all_of(codes.begin(), codes.end(), [](const json& one) { return one.is_string(); });
}

json written(const Next& next, const Course& course) {
    return {{"skill", course.skills[next.skill].skill->id},
            {"family", next.family != nullptr ? next.family->id : std::string()},
            {"reason", kReasons[static_cast<std::size_t>(next.reason)]},
            {"shown", kShown[static_cast<std::size_t>(next.shown)]},
            {"blank_steps", next.blank_steps}};
}

std::optional<Next> next_of(const json& from, const Course& course) {
    Next next;
    const auto skill = course.find(from.at("skill").get<std::string>());
    const problems::Family* const family =
        course.bank->find_family(from.at("family").get<std::string>());
    const auto reason = index_of(kReasons, from.at("reason"));
    const auto shown = index_of(kShown, from.at("shown"));
    if (!skill || family == nullptr || !reason || !shown)
        return std::nullopt;
    next.skill = *skill;
    next.family = &course.bank->in_units(*family, course.units);
    next.reason = static_cast<Reason>(*reason);
    next.shown = static_cast<Shown>(*shown);
    next.blank_steps = from.at("blank_steps").get<std::size_t>();
    return next;
}

std::optional<KeptSession> session_of(const json& from, const Course& course) {
    KeptSession kept;
    Session& session = kept.session;
    const auto kind = index_of(kKinds, from.at("kind"));
    const auto next = next_of(from.at("next"), course);
    if (from.at("version") != kVersion || !kind || !next)
        return std::nullopt;
    session.kind = static_cast<SessionKind>(*kind);
    session.next = *next;
    session.skill = next->skill;
    session.seed = from.at("seed").get<std::uint64_t>();
    session.drawn = from.at("drawn").get<std::uint64_t>();
    for (const json& one : from.at("quiz")) {
        const auto quizzed = next_of(one, course);
        if (!quizzed)
            return std::nullopt;
        session.quiz.push_back(*quizzed);
    }
    session.codes = from.at("codes").get<std::vector<std::string>>();
    if (const json& target = from.at("target"); !target.is_null())
        session.target = target.get<int>();
    session.placing = from.at("placing").get<bool>();
    session.begun_ms = from.at("begun_ms").get<TimeMs>();
    session.done = from.at("done").get<int>();
    session.answered = from.at("answered").get<int>();
    session.right = from.at("right").get<int>();
    kept.code = from.at("code").get<std::string>();
    kept.answered = from.at("attempted").get<bool>();
    // A quiz or a list that has come to its end has no next question.
    const auto done = static_cast<std::size_t>(std::max(0, session.done));
    if (session.done < 0 || (session.kind == SessionKind::quick && done >= session.quiz.size()) ||
        (session.kind == SessionKind::redo && done >= session.codes.size()))
        return std::nullopt;
    return kept;
}

} // namespace

std::string write_session(const Session& session, const Course& course, const Asking& asking) {
    json quiz = json::array();
    for (const Next& one : session.quiz)
        quiz.push_back(written(one, course));
    const json text{{"version", kVersion},
                    {"kind", kKinds[static_cast<std::size_t>(session.kind)]},
                    {"seed", session.seed},
                    {"drawn", session.drawn},
                    {"quiz", quiz},
                    {"codes", session.codes},
                    {"target", session.target ? json(*session.target) : json(nullptr)},
                    {"placing", session.placing},
                    {"begun_ms", session.begun_ms},
                    {"done", session.done},
                    {"answered", session.answered},
                    {"right", session.right},
                    {"next", written(session.next, course)},
                    {"code", asking.question.code},
                    {"attempted", !asking.attempts.empty()}};
    return text.dump();
}

std::optional<KeptSession> read_session(std::string_view text, const Course& course) {
    const json from = json::parse(text.begin(), text.end(), nullptr, false);
    return is_whole(from) ? session_of(from, course) : std::nullopt;
}

std::optional<Asking> resume_session(KeptSession& kept, const Present& present) {
    Session& session = kept.session;
    session.before = staircase(present.course, present.standing, present.now);
    if (kept.answered) {
        session.done += session.placing || is_example(session) ? 0 : 1;
        return next_question(session, present);
    }
    auto question = problems::question_from_code(*present.course.bank, kept.code);
    if (!question)
        return std::nullopt;
    return ask_again(session, present, std::move(*question));
}

} // namespace steelyard::learner

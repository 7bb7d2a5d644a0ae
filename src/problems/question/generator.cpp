#include "problems/question/generator.h"

#include "problems/bank/bank.h"
#include "problems/question/paper.h"
#include "problems/question/question_code.h"
#include "problems/question/question_writer.h"

#include <fmt/core.h>

#include <algorithm>
#include <set>

namespace steelyard::problems {

namespace {

NoQuestion nothing_usable(const Family& family, Refusal refusal) {
    return {fmt::format("The family \"{}\" ({}) gave nothing usable in {} draws; the last one was "
                        "{}. Run `steelyard bank check` to see why.",
                        family.id, family.file, kMaxDraws, describe(refusal))};
}

/// What the codes of a family stand for, in their order.
std::vector<Instance> instances_of(const Family& family, const std::vector<std::string>& codes) {
    std::vector<Instance> instances;
    for (const std::string& code : codes) {
        const tl::expected<CodeParts, std::string> parts = read_code(code);
        if (!parts || parts->family_number != family.number ||
            parts->us_edition != family.is_us_edition)
            continue;
        Instance instance;
        if (draw_instance(family, parts->seed, instance) == Refusal::none)
            instances.push_back(std::move(instance));
    }
    return instances;
}

} // namespace

tl::expected<Question, NoQuestion> question_from_code(const Bank& bank, const std::string& code) {
    const tl::expected<CodeParts, std::string> parts = read_code(code);
    if (!parts)
        return tl::make_unexpected(NoQuestion{fmt::format("\"{}\": {}.", code, parts.error())});
    const Family* const family = bank.find_family_by_number(parts->family_number);
    if (!family)
        return tl::make_unexpected(NoQuestion{
            fmt::format("The question {} comes from a family that this bank does not have.",
                        write_code(*parts))});
    if (!parts->us_edition)
        return question_of_family(bank, *family, parts->seed);
    const Family& edition = bank.in_units(*family, setup::UnitSystem::us);
    if (!edition.is_us_edition)
        return tl::make_unexpected(NoQuestion{
            fmt::format("The question {} is in US units, in which this bank no longer asks \"{}\".",
                        write_code(*parts), family->id)});
    return question_of_family(bank, edition, parts->seed);
}

tl::expected<Question, NoQuestion> question_of_family(const Bank& bank, const Family& family,
                                                      std::uint64_t seed) {
    return unseen_question(bank, family, seed, {});
}

tl::expected<Question, NoQuestion> unseen_question(const Bank& bank, const Family& family,
                                                   std::uint64_t seed,
                                                   const std::vector<std::string>& seen) {
    constexpr std::uint64_t kTries = 200; // finds the last of twenty items but for 1 in 30 000
    const std::vector<Instance> before = instances_of(family, seen);
    Instance best;
    std::size_t best_age = 0;
    for (std::uint64_t i = 0; i < kTries; ++i) {
        Instance instance;
        const Refusal refusal = draw_instance(family, i == 0 ? seed : mix(seed, i), instance);
        if (refusal != Refusal::none)
            return tl::make_unexpected(nothing_usable(family, refusal));
        const auto twin = std::find_if(before.begin(), before.end(), [&](const Instance& other) {
            return exactly_same(instance, other);
        });
        if (twin == before.end())
            return write_question(bank, instance);
        const auto age = static_cast<std::size_t>(twin - before.begin()) + 1;
        if (age > best_age) {
            best_age = age;
            best = std::move(instance);
        }
    }
    return write_question(bank, best);
}

tl::expected<std::vector<Question>, NoQuestion> make_paper(const Bank& bank,
                                                           const PaperPlan& plan) {
    std::vector<Question> questions;
    const tl::expected<void, NoQuestion> drawn =
        draw_paper(bank, plan, [&](const Instance& instance) {
            questions.push_back(write_question(bank, instance));
            return true;
        });
    if (!drawn)
        return tl::make_unexpected(drawn.error());
    return questions;
}

tl::expected<std::vector<Question>, NoQuestion> make_collection(const Bank& bank,
                                                                const PaperPlan& plan) {
    // A plan that has not met this many different ones by then has run out of them.
    constexpr std::size_t kMostDrawn = 4;
    PaperPlan longer = plan;
    if (plan.count > kPaperLength)
        longer.count = kMostDrawn * plan.count;
    std::set<std::string> codes;
    std::vector<Question> questions;
    const tl::expected<void, NoQuestion> drawn =
        draw_paper(bank, longer, [&](const Instance& instance) {
            Question question = write_question(bank, instance);
            if (codes.insert(question.code).second)
                questions.push_back(std::move(question));
            return questions.size() < plan.count;
        });
    if (questions.size() >= plan.count)
        return questions;
    if (!drawn)
        return tl::make_unexpected(drawn.error());
    return tl::make_unexpected(
        NoQuestion{fmt::format("Only {} different questions were found; ask for fewer, or for a "
                               "wider choice.",
                               questions.size())});
}

} // namespace steelyard::problems

#include "problems/question/paper.h"

#include "setup/toml/spelling.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace steelyard::problems {

namespace {

/// Source: judgement; "all parameters within 5 %" is what item writers call a near-duplicate.
constexpr double kNearDuplicate = 0.05;

/// Seeds tried for one place in a paper with one family before another family gets its turn.
constexpr int kTriesPerFamily = 12;
/// Families tried for one place.
constexpr int kFamiliesPerPlace = 40;

using Candidates = std::vector<const Family*>;

/// What of an instance decides whether another is like it; an instance itself is a hundred times as
/// large.
struct Trace {
    std::size_t item = 0;
    std::size_t change = 0;
    std::vector<double> quantities;
};

Trace trace_of(const Instance& instance) {
    return {instance.item, instance.change, instance.quantities};
}

/// Of two instances of one family.
bool equal_traces(const Trace& one, const Trace& other) {
    return one.item == other.item && one.change == other.change &&
           one.quantities == other.quantities;
}

bool near_traces(const Family& family, const Trace& one, const Trace& other) {
    if (one.item != other.item || one.change != other.change)
        return false;
    return std::all_of(family.draws.begin(), family.draws.end(), [&](const Draw& draw) {
        const double a = one.quantities[draw.quantity];
        const double b = other.quantities[draw.quantity];
        return std::abs(a - b) <= kNearDuplicate * std::max(std::abs(a), std::abs(b));
    });
}

/// @param known  skills or families
template <typename Known>
NoQuestion unknown(const char* what, const std::string& id, const std::vector<Known>& known) {
    std::vector<std::string_view> ids;
    for (const Known& one : known)
        ids.push_back(one.id);
    const std::string meant = setup::nearest_spelling(id, ids);
    return {fmt::format("There is no {} \"{}\" in the bank.{}", what, id,
                        meant.empty() ? "" : fmt::format(" Did you mean \"{}\"?", meant))};
}

tl::expected<Candidates, NoQuestion> candidates_of(const Bank& bank, const PaperPlan& plan) {
    if (plan.skill && !bank.find_skill(*plan.skill))
        return tl::make_unexpected(unknown("skill", *plan.skill, bank.skills));
    if (plan.family && !bank.find_family(*plan.family))
        return tl::make_unexpected(unknown("family", *plan.family, bank.families));
    Candidates candidates;
    for (const Family& family : bank.families)
        if ((!plan.skill || family.skill == *plan.skill) &&
            (plan.family ? family.id == *plan.family : plan.with_own || !family.is_own) &&
            (!plan.about || family.scene() == *plan.about) &&
            (!plan.units || plan.family || Bank::suits(family, *plan.units)))
            candidates.push_back(plan.units ? &bank.in_units(family, *plan.units) : &family);
    if (candidates.empty())
        return tl::make_unexpected(NoQuestion{"The bank has no family for this plan."});
    return candidates;
}

/// Draws one paper place by place. What stands before decides what may follow, so that a paper is
/// always drawn from its beginning.
class PaperDrawing {
public:
    PaperDrawing(const Candidates& candidates, const PaperPlan& plan, std::uint64_t paper)
        : plan_(plan), random_(mix(plan.seed, paper)) {
        for (const Family* family : candidates)
            by_skill_[family->skill].push_back(family);
        for (const auto& [skill, families] : by_skill_)
            skills_.push_back(&families);
    }

    /// The next instance, or nothing when the plan cannot be met any more.
    const Instance* next() {
        // Strict at first; a plan that is narrow gives up the rules one after the other, the
        // least harmful first.
        for (const Rules& rules : {Rules{true, true}, Rules{false, true}, Rules{false, false}})
            if (const Instance* instance = next_under(rules))
                return instance;
        return nullptr;
    }

private:
    struct Rules {
        bool other_strategy;
        bool no_near_duplicates;
    };

    const Instance* next_under(const Rules& rules) {
        for (int i = 0; i < kFamiliesPerPlace; ++i) {
            const Candidates& families = *skills_[draw_place(random_, skills_.size())];
            const Family& family = *families[draw_place(random_, families.size())];
            if (rules.other_strategy && last_ && last_->strategy == family.strategy)
                continue;
            for (int j = 0; j < kTriesPerFamily; ++j)
                if (const Instance* instance = try_family(family, rules))
                    return instance;
        }
        return nullptr;
    }

    const Instance* try_family(const Family& family, const Rules& rules) {
        instance_ = {};
        if (draw_instance(family, random_(), instance_) != Refusal::none)
            return nullptr;
        if (plan_.difficulty && instance_.difficulty != *plan_.difficulty)
            return nullptr;
        std::vector<Trace>& before = before_[&family];
        Trace trace = trace_of(instance_);
        const auto is_same = [&](const Trace& other) {
            return rules.no_near_duplicates ? near_traces(family, trace, other)
                                            : equal_traces(trace, other);
        };
        if (std::any_of(before.begin(), before.end(), is_same))
            return nullptr;
        last_ = &family;
        before.push_back(std::move(trace));
        return &instance_;
    }

    const PaperPlan& plan_;
    Random random_;
    std::map<std::string, Candidates> by_skill_;
    std::vector<const Candidates*> skills_;
    std::map<const Family*, std::vector<Trace>> before_;
    Instance instance_; ///< the last one drawn
    const Family* last_ = nullptr;
};

NoQuestion too_few(const PaperPlan& plan, std::size_t made) {
    std::string what = plan.family  ? fmt::format("the family \"{}\"", *plan.family)
                       : plan.skill ? fmt::format("the skill \"{}\"", *plan.skill)
                                    : std::string("the bank");
    if (plan.difficulty)
        what += fmt::format(" at difficulty {}", *plan.difficulty);
    if (made == 0)
        return {fmt::format("There is no question of this kind in {}.", what)};
    return {fmt::format("Only {} different questions were found in {}; ask for fewer, or for a "
                        "wider choice.",
                        made, what)};
}

} // namespace

bool exactly_same(const Instance& one, const Instance& other) {
    return one.family == other.family && equal_traces(trace_of(one), trace_of(other));
}

bool nearly_same(const Instance& one, const Instance& other) {
    return one.family == other.family && near_traces(*one.family, trace_of(one), trace_of(other));
}

tl::expected<void, NoQuestion> draw_paper(const Bank& bank, const PaperPlan& plan,
                                          const std::function<bool(const Instance&)>& visit) {
    if (plan.shards == 0 || plan.shard >= plan.shards)
        return tl::make_unexpected(NoQuestion{"A shard is one of 0 to N - 1 of N."});
    const tl::expected<Candidates, NoQuestion> candidates = candidates_of(bank, plan);
    if (!candidates)
        return tl::make_unexpected(candidates.error());
    const std::size_t first = plan.count * plan.shard / plan.shards;
    const std::size_t end = plan.count * (plan.shard + 1) / plan.shards;
    for (std::size_t paper = first / kPaperLength; paper * kPaperLength < end; ++paper) {
        PaperDrawing drawing(*candidates, plan, paper);
        const std::size_t paper_end = std::min((paper + 1) * kPaperLength, end);
        for (std::size_t i = paper * kPaperLength; i < paper_end; ++i) {
            const Instance* const instance = drawing.next();
            if (!instance)
                return tl::make_unexpected(too_few(plan, i));
            if (i >= first && !visit(*instance))
                return {};
        }
    }
    return {};
}

} // namespace steelyard::problems

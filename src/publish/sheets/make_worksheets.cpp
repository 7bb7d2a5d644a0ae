#include "problems/draw/random.h"
#include "problems/question/paper.h"
#include "problems/question/question_code.h"
#include "problems/question/question_writer.h"
#include "publish/question/question_text.h"
#include "publish/sheets/blueprint.h"

#include <fmt/format.h>

#include <cctype>
#include <limits>
#include <set>
#include <utility>

namespace steelyard::publish {
namespace {

using problems::Question;

/// Seeds tried for a question of the same family and difficulty as its neighbour's; families that
/// have so few instances repeat one.
constexpr std::uint64_t kSeedsTried = 400;

/// Behind the seed of a sheet in US units.
constexpr std::string_view kUsMark = "us";

PublishError unfilled(const Blueprint& blueprint, const BlueprintPart& part, std::size_t index,
                      const std::string& why) {
    setup::InputError error;
    error.file = blueprint.file;
    error.line = part.line;
    error.key = fmt::format("part[{}]", index + 1);
    error.found = fmt::format("a part of {} questions that the bank cannot fill", part.count);
    error.expected = "a skill, family and difficulty that it has enough of";
    error.mend = why;
    return {PublishFault::bad_paper, setup::to_text(error)};
}

/// Without what cannot be read, the seed would give another paper under the same code.
PublishError not_whole(const problems::Bank& bank) {
    return {PublishFault::bad_paper,
            fmt::format("No paper is made from a part of the questions: it would not be the one "
                        "that its code names. {}",
                        setup::to_text(bank.faults.front()))};
}

/// Counts questions and asks after each whether to go on.
class Counter {
public:
    Counter(const Progress& progress, std::size_t all) : progress_(progress), all_(all) {}

    /// @return false when the work is to stop
    bool one_more() {
        stopped_ = stopped_ || !goes_on(progress_, ++done_, all_);
        return !stopped_;
    }
    bool stopped() const { return stopped_; }

private:
    const Progress& progress_;
    std::size_t all_;
    std::size_t done_ = 0;
    bool stopped_ = false;
};

/// The first version: what the plan of each part gives.
tl::expected<std::vector<SheetPart>, PublishError> first_version(const problems::Bank& bank,
                                                                 const Blueprint& blueprint,
                                                                 std::uint64_t seed,
                                                                 Counter& counter) {
    std::vector<SheetPart> parts;
    for (std::size_t i = 0; i < blueprint.parts.size(); ++i) {
        const BlueprintPart& part = blueprint.parts[i];
        problems::PaperPlan plan;
        plan.count = static_cast<std::size_t>(part.count);
        plan.seed = problems::mix(seed, i);
        plan.skill = part.skill;
        plan.family = part.family;
        plan.difficulty = part.difficulty;
        plan.units = part.units;
        plan.about = part.about;
        plan.with_own = blueprint.with_own;
        if (!plan.units && blueprint.in_us_units)
            plan.units = setup::UnitSystem::us;
        std::vector<std::string> codes;
        const auto drawn =
            problems::draw_paper(bank, plan, [&](const problems::Instance& instance) {
                codes.push_back(problems::code_of(instance));
                return counter.one_more();
            });
        if (!drawn)
            return tl::make_unexpected(unfilled(blueprint, part, i, drawn.error().message));
        if (counter.stopped())
            return stopped_work();
        parts.push_back({part.heading, SheetQuestions(bank, std::move(codes))});
    }
    return parts;
}

/// A question like another, of the same family and difficulty, that no version has yet; when there
/// is none, the last one of the family that was met; the same one when there is none at all.
Question sibling(const problems::Bank& bank, const Question& first, std::uint64_t seed,
                 const std::set<std::string>& taken) {
    const problems::Family* family = bank.find_family(first.family);
    Question best = first;
    if (family == nullptr)
        return best;
    const auto code = problems::read_code(first.code);
    if (code && code->us_edition)
        family = &bank.in_units(*family, setup::UnitSystem::us);
    for (std::uint64_t i = 0; i < kSeedsTried; ++i) {
        auto question = problems::question_of_family(bank, *family, problems::mix(seed, i));
        if (!question || question->difficulty != first.difficulty)
            continue;
        best = std::move(*question);
        if (taken.count(best.prompt) == 0)
            break;
    }
    return best;
}

tl::expected<std::vector<SheetPart>, PublishError>
further_version(const problems::Bank& bank, const std::vector<SheetPart>& first, std::uint64_t seed,
                std::set<std::string>& taken, Counter& counter) {
    std::vector<SheetPart> parts;
    std::uint64_t number = 0;
    for (const SheetPart& part : first) {
        std::vector<std::string> codes;
        for (const Question& neighbour : part.questions) {
            const Question question =
                sibling(bank, neighbour, problems::mix(seed, ++number), taken);
            taken.insert(question.prompt);
            codes.push_back(question.code);
            if (!counter.one_more())
                return stopped_work();
        }
        parts.push_back({part.heading, SheetQuestions(bank, std::move(codes))});
    }
    return parts;
}

Worksheet sheet_of(const Blueprint& blueprint, const SheetCode& code,
                   std::vector<SheetPart> parts) {
    Worksheet sheet;
    sheet.title = blueprint.title;
    sheet.note = blueprint.note;
    sheet.version =
        code.version < 0 ? "" : problems::letter(static_cast<std::size_t>(code.version));
    sheet.code = write_sheet_code(code);
    sheet.paper = blueprint.paper;
    sheet.large_print = blueprint.large_print;
    sheet.prints_codes = blueprint.prints_codes;
    sheet.parts = std::move(parts);
    return sheet;
}

} // namespace

tl::expected<std::vector<Worksheet>, PublishError> make_worksheets(const problems::Bank& bank,
                                                                   const Blueprint& blueprint,
                                                                   std::uint64_t seed, int versions,
                                                                   const Progress& progress) {
    if (!bank.faults.empty())
        return tl::make_unexpected(not_whole(bank));
    std::size_t all = 0;
    for (const BlueprintPart& part : blueprint.parts)
        all += static_cast<std::size_t>(part.count) * static_cast<std::size_t>(versions);
    Counter counter(progress, all);
    auto first = first_version(bank, blueprint, seed, counter);
    if (!first)
        return tl::make_unexpected(std::move(first.error()));
    SheetCode code{blueprint.name, seed, versions > 1 ? 0 : -1, blueprint.in_us_units};
    std::vector<Worksheet> sheets{sheet_of(blueprint, code, std::move(*first))};
    std::set<std::string> taken;
    for (const SheetPart& part : sheets.front().parts)
        for (const Question& question : part.questions)
            taken.insert(question.prompt);
    for (int version = 1; version < versions; ++version) {
        code.version = version;
        const std::uint64_t version_seed =
            problems::mix(seed, 1000 + static_cast<unsigned>(version));
        auto parts = further_version(bank, sheets.front().parts, version_seed, taken, counter);
        if (!parts)
            return tl::make_unexpected(std::move(parts.error()));
        sheets.push_back(sheet_of(blueprint, code, std::move(*parts)));
    }
    return sheets;
}

std::string write_sheet_code(const SheetCode& code) {
    const std::string letter =
        code.version < 0 ? "" : "-" + problems::letter(static_cast<std::size_t>(code.version));
    return fmt::format("{}-{}{}{}", code.blueprint, code.seed, code.us_units ? kUsMark : "",
                       letter);
}

std::optional<SheetCode> read_sheet_code(std::string_view text) {
    SheetCode code{"", 0, -1, false};
    if (text.size() > 2 && text[text.size() - 2] == '-' &&
        std::isalpha(static_cast<unsigned char>(text.back())) != 0) {
        code.version = std::toupper(static_cast<unsigned char>(text.back())) - 'A';
        text.remove_suffix(2);
    }
    if (text.size() > kUsMark.size() && text.substr(text.size() - kUsMark.size()) == kUsMark) {
        code.us_units = true;
        text.remove_suffix(kUsMark.size());
    }
    const std::size_t dash = text.rfind('-');
    if (dash == std::string_view::npos || dash == 0 || dash + 1 == text.size())
        return std::nullopt;
    for (const char c : text.substr(dash + 1)) {
        const bool digit = std::isdigit(static_cast<unsigned char>(c)) != 0;
        constexpr std::uint64_t kLast = std::numeric_limits<std::uint64_t>::max();
        if (!digit || code.seed > (kLast - 9) / 10)
            return std::nullopt;
        code.seed = code.seed * 10 + static_cast<std::uint64_t>(c - '0');
    }
    code.blueprint = text.substr(0, dash);
    return code;
}

} // namespace steelyard::publish

#include "problems/generator.h"

#include "problems/bank.h"
#include "problems/paper.h"
#include "problems/question_code.h"
#include "problems/question_writer.h"

#include <fmt/core.h>

namespace steelyard::problems {

tl::expected<Question, NoQuestion> question_from_code(const Bank& bank, const std::string& code) {
    const tl::expected<CodeParts, std::string> parts = read_code(code);
    if (!parts)
        return tl::make_unexpected(NoQuestion{fmt::format("\"{}\": {}.", code, parts.error())});
    const Family* const family = bank.find_family_by_number(parts->family_number);
    if (!family)
        return tl::make_unexpected(NoQuestion{
            fmt::format("The question {} comes from a family that this bank does not have.",
                        write_code(*parts))});
    return question_of_family(bank, *family, parts->seed);
}

tl::expected<Question, NoQuestion> question_of_family(const Bank& bank, const Family& family,
                                                      std::uint64_t seed) {
    Instance instance;
    const Refusal refusal = draw_instance(family, seed, instance);
    if (refusal != Refusal::none)
        return tl::make_unexpected(NoQuestion{fmt::format(
            "The family \"{}\" ({}) gave nothing usable in {} draws; the last one was {}. "
            "Run `steelyard bank check` to see why.",
            family.id, family.file, kMaxDraws, describe(refusal))});
    return write_question(bank, instance);
}

tl::expected<std::vector<Question>, NoQuestion> make_paper(const Bank& bank,
                                                           const PaperPlan& plan) {
    std::vector<Question> questions;
    const tl::expected<void, NoQuestion> drawn =
        draw_paper(bank, plan, [&](const Instance& instance) {
            questions.push_back(write_question(bank, instance));
        });
    if (!drawn)
        return tl::make_unexpected(drawn.error());
    return questions;
}

} // namespace steelyard::problems

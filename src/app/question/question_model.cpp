#include "app/question/question_model.h"

#include "problems/generator.h"

#include <algorithm>

namespace steelyard::app {

namespace {

using problems::Kind;

/// Questions among which one of the wanted class is looked for.
constexpr std::size_t kLookThrough = 24;

std::optional<mechanics::LeverClass> class_of(const problems::Question& question) {
    const auto* picture = std::get_if<problems::LeverPicture>(&question.picture);
    if (picture == nullptr)
        return std::nullopt;
    const auto solved = mechanics::solve_lever(picture->lever);
    return solved ? solved->lever_class : std::nullopt;
}

bool draws_a_lever(const problems::Question& question) {
    return std::holds_alternative<problems::LeverPicture>(question.picture);
}

/// Choices as the marking reads them: their numbers, counted from 1.
std::string typed_choices(const std::vector<std::size_t>& chosen) {
    std::string typed;
    for (const std::size_t choice : chosen)
        typed += (typed.empty() ? "" : " ") + std::to_string(choice + 1);
    return typed;
}

bool chooses_one(Kind kind) {
    return kind == Kind::single_choice || kind == Kind::change;
}

bool is_typed(Kind kind) {
    return kind == Kind::numeric || kind == Kind::place;
}

} // namespace

tl::expected<QuestionModel, std::string> ask_like(const problems::Bank& bank,
                                                  std::optional<mechanics::LeverClass> lever_class,
                                                  std::uint64_t seed) {
    problems::PaperPlan plan;
    plan.count = kLookThrough;
    plan.seed = seed;
    auto paper = problems::make_paper(bank, plan);
    if (!paper)
        return tl::unexpected(paper.error().message);
    auto found = std::find_if(paper->begin(), paper->end(), [&](const auto& question) {
        return draws_a_lever(question) && class_of(question) == lever_class;
    });
    if (found == paper->end())
        found = std::find_if(paper->begin(), paper->end(), draws_a_lever);
    if (found == paper->end())
        return tl::unexpected(
            std::string("The question bank has no question about a lever that is drawn."));
    QuestionModel model;
    model.question = std::move(*found);
    return model;
}

void choose(QuestionModel& model, std::size_t choice) {
    if (model.finished || choice >= model.question.choices.size())
        return;
    const auto found = std::find(model.chosen.begin(), model.chosen.end(), choice);
    if (found != model.chosen.end())
        model.chosen.erase(found);
    else if (chooses_one(model.question.kind))
        model.chosen = {choice};
    else
        model.chosen.push_back(choice);
    model.mark.reset();
}

bool can_be_marked(const QuestionModel& model) {
    return is_typed(model.question.kind) ? !model.typed.empty() : !model.chosen.empty();
}

void mark_answer(const problems::Bank& bank, QuestionModel& model) {
    if (model.finished || !can_be_marked(model))
        return;
    model.mark =
        problems::mark(bank, model.question,
                       is_typed(model.question.kind) ? model.typed : typed_choices(model.chosen));
    using problems::Verdict;
    const Verdict verdict = model.mark->verdict;
    if (verdict == Verdict::unreadable || verdict == Verdict::wrong_unit ||
        verdict == Verdict::wrong_dimension)
        return;
    model.finished = true;
    model.steps_shown = model.question.steps.size();
}

void show_next_step(QuestionModel& model) {
    model.steps_shown = std::min(model.steps_shown + 1, model.question.steps.size());
    if (model.steps_shown == model.question.steps.size())
        model.finished = true;
}

} // namespace steelyard::app

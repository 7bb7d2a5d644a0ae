#include "app/question/question_model.h"

#include "mechanics/lever/lever_geometry.h"
#include "problems/bank/answer_kinds.h"
#include "problems/marking/typed_choice.h"
#include "problems/question/generator.h"
#include "problems/question/question_writer.h"

#include <algorithm>

namespace steelyard::app {

namespace {

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

/// How a question is answered in the window.
enum class Way { typed, one_choice, several_choices, placed };

Way way_of(const problems::Question& question) {
    if (problems::wanted_place(question) != nullptr)
        return draws_a_lever(question) ? Way::placed : Way::typed;
    switch (problems::row_of(question).picks) {
    case problems::Picks::nothing:
        break;
    case problems::Picks::one:
        return Way::one_choice;
    case problems::Picks::any:
    case problems::Picks::all_in_order:
        return Way::several_choices;
    }
    return Way::typed;
}

} // namespace

bool is_drawn(const problems::Question& question) {
    return !std::holds_alternative<std::monostate>(question.picture);
}

bool is_placed(const problems::Question& question) {
    return way_of(question) == Way::placed;
}

bool is_typed(const problems::Question& question) {
    return way_of(question) == Way::typed;
}

tl::expected<QuestionModel, std::string> ask_like(const problems::Bank& bank,
                                                  std::optional<mechanics::LeverClass> lever_class,
                                                  setup::UnitSystem units, std::uint64_t seed) {
    problems::PaperPlan plan;
    plan.units = units;
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
    model.asking = learner::begin_asking(std::move(*found), {});
    return model;
}

void choose(QuestionModel& model, std::size_t choice) {
    if (model.asking.finished || choice >= problems::choices_of(model.question()).size())
        return;
    const auto found = std::find(model.chosen.begin(), model.chosen.end(), choice);
    if (found != model.chosen.end())
        model.chosen.erase(found);
    else if (way_of(model.question()) == Way::one_choice)
        model.chosen = {choice};
    else
        model.chosen.push_back(choice);
    change_answer(model.asking);
}

bool choose_by_letter(QuestionModel& model, const std::string& letter) {
    constexpr std::size_t kLetters = 4;
    const std::size_t count = std::min(kLetters, problems::choices_of(model.question()).size());
    for (std::size_t i = 0; !model.asking.finished && i < count; ++i) {
        if (problems::letter(i) != letter)
            continue;
        choose(model, i);
        return true;
    }
    return false;
}

void place(QuestionModel& model, const problems::Placed& placed) {
    if (model.asking.finished || !is_placed(model.question()))
        return;
    model.placed = problems::settled(model.question(), placed);
    model.typed.clear();
    change_answer(model.asking);
}

bool place_by_letter(QuestionModel& model, const std::string& letter) {
    const auto& spots = problems::spots_of(model.question());
    const bool known = std::any_of(spots.begin(), spots.end(), [&](const problems::Spot& spot) {
        return spot.letter == letter;
    });
    if (model.asking.finished || !is_placed(model.question()) || !known)
        return false;
    model.placed.reset();
    model.typed = letter;
    change_answer(model.asking);
    return true;
}

double nudge_step_m(const problems::Question& question) {
    const auto* picture = std::get_if<problems::LeverPicture>(&question.picture);
    const problems::PlaceWanted* place = problems::wanted_place(question);
    if (picture == nullptr || place == nullptr)
        return 0.0;
    return std::min(0.01 * mechanics::path_length(picture->lever.path_m), place->tolerance_m);
}

void nudge(QuestionModel& model, const mechanics::Vec2& along_m, bool beginning) {
    if (model.asking.finished || !is_placed(model.question()))
        return;
    problems::Placed placed = model.placed.value_or(problems::first_place(model.question()));
    if (problems::gesture_of(model.question()) == problems::Gesture::point_on_lever) {
        const auto& lever = std::get<problems::LeverPicture>(model.question().picture).lever;
        const double step_m = along_m.x() + along_m.y() > 0.0 ? along_m.norm() : -along_m.norm();
        const double at_m = std::clamp(mechanics::nearest_at(lever.path_m, placed.to_m) + step_m,
                                       0.0, mechanics::path_length(lever.path_m));
        const mechanics::Vec2 moved = mechanics::point_at(lever.path_m, at_m);
        placed = {moved, moved};
    } else {
        (beginning ? placed.from_m : placed.to_m) += along_m;
    }
    place(model, placed);
}

std::string answer_of(const QuestionModel& model) {
    switch (way_of(model.question())) {
    case Way::one_choice:
    case Way::several_choices:
        return typed_choices(model.chosen);
    case Way::placed:
        if (model.typed.empty())
            return model.placed ? problems::placed_text(model.question(), *model.placed)
                                : std::string();
        break;
    case Way::typed:
        break;
    }
    return model.typed;
}

void take_answer(QuestionModel& model, const std::string& answer) {
    model.typed.clear();
    model.chosen.clear();
    model.placed.reset();
    if (answer.empty())
        return;
    switch (way_of(model.question())) {
    case Way::one_choice:
    case Way::several_choices:
        if (auto chosen =
                problems::read_letters(answer, problems::choices_of(model.question()).size()))
            model.chosen = std::move(*chosen);
        return;
    case Way::placed:
        model.placed = problems::read_placed(answer);
        break;
    case Way::typed:
        break;
    }
    if (!model.placed)
        model.typed = answer;
}

void enter_answer(const problems::Bank& bank, QuestionModel& model) {
    mark_answer(bank, model.asking, answer_of(model));
}

void enter_own_step(QuestionModel& model) {
    const std::size_t before = model.asking.open_steps;
    mark_own_step(model.asking, model.step_typed);
    if (model.asking.open_steps != before)
        model.step_typed.clear();
}

} // namespace steelyard::app

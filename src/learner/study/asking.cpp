#include "learner/study/asking.h"

#include "problems/marking/placing.h"

#include <fmt/format.h>

#include <algorithm>

namespace steelyard::learner {

namespace {

using problems::Marking;
using problems::Verdict;

/// Attempts at what is typed as a number or drawn by hand, where there is help.
constexpr std::size_t kTries = 2;

bool is_slip_of_unit(const Marking& marking) {
    return marking.verdict == Verdict::wrong_unit || marking.verdict == Verdict::wrong_dimension;
}

bool is_drawn_by_hand(const Asking& asking, const std::string& answer) {
    return problems::wanted_place(asking.question) != nullptr && problems::read_placed(answer);
}

bool may_try_again(const Asking& asking, const std::string& answer) {
    return asking.rules.help && asking.attempts.size() < kTries &&
           (problems::wanted_number(asking.question) != nullptr ||
            is_drawn_by_hand(asking, answer));
}

/// Of what was put on the drawing: what it is to be, and nothing of where.
std::string hint_to_draw(const problems::Question& question) {
    switch (problems::wanted_place(question)->target) {
    case problems::PlaceTarget::axis:
        return "Which point of it stays where it is?";
    case problems::PlaceTarget::effort_line:
        return "A line of action passes through the point where the force acts and runs the way "
               "the force pulls.";
    case problems::PlaceTarget::arm_foot:
        return "A moment arm begins at the axis and meets the line of action at 90°.";
    case problems::PlaceTarget::load_place:
        return "The torques both ways have to be equal: farther out is more.";
    }
    return {};
}

/// The question that finds out whether the likely mistake was made; where none is known, the step
/// to look at.
std::string pointed_hint(const problems::Bank& bank, const Asking& asking, const Marking& marking) {
    if (is_slip_of_unit(marking))
        return marking.feedback;
    const problems::WrongRule* rule =
        marking.wrong_rule ? bank.find_wrong_rule(*marking.wrong_rule) : nullptr;
    if (rule != nullptr)
        return rule->ask + " Try once more.";
    if (problems::wanted_place(asking.question) != nullptr)
        return hint_to_draw(asking.question) + " Try once more.";
    return asking.open_steps < asking.question.steps.size()
               ? fmt::format("{} Look at step {} and try once more.", marking.remark,
                             asking.open_steps + 1)
               : marking.remark + " Try once more.";
}

/// Says of a wrong number what helps to find the right one. A step that it points to is told.
void tell_hint(const problems::Bank& bank, Asking& asking, const Marking& marking) {
    Marking told;
    told.verdict = marking.verdict;
    told.parts_at = marking.parts_at;
    told.feedback = pointed_hint(bank, asking, marking);
    if (!is_slip_of_unit(marking) && !marking.wrong_rule)
        asking.next_told = asking.open_steps < asking.question.steps.size();
    asking.told = std::move(told);
}

void note(Asking& asking, std::string typed, Marking marking, bool gave_up) {
    asking.attempts.push_back(
        {std::move(typed), std::move(marking), gave_up, asking.hints, help_of(asking)});
}

void finish_asking(Asking& asking) {
    asking.finished = true;
    asking.open_steps = asking.question.steps.size();
    asking.next_told = false;
}

/// Whether it stands there what to do in the next step.
bool way_stands(const Asking& asking) {
    return asking.next_told || has_own_step(asking);
}

} // namespace

Asking begin_asking(problems::Question question, const AskRules& rules) {
    Asking asking;
    asking.question = std::move(question);
    asking.rules = rules;
    asking.open_steps = std::min(rules.done_steps, asking.question.steps.size());
    return asking;
}

Asking asked_before(problems::Question question) {
    Asking asking = begin_asking(std::move(question), {});
    finish_asking(asking);
    return asking;
}

void mark_answer(const problems::Bank& bank, Asking& asking, const std::string& answer) {
    if (asking.finished || answer.empty())
        return;
    Marking marking = problems::mark(bank, asking.question, answer,
                                     {asking.rules.calculator, asking.rules.explains_pounds});
    if (marking.verdict == Verdict::unreadable) {
        asking.told = std::move(marking);
        return;
    }
    note(asking, answer, marking, false);
    if (!marking.correct && may_try_again(asking, answer)) {
        tell_hint(bank, asking, marking);
        return;
    }
    asking.told = std::move(marking);
    finish_asking(asking);
}

void change_answer(Asking& asking) {
    if (asking.told && asking.told->verdict == Verdict::unreadable)
        asking.told.reset();
}

bool has_hint(const Asking& asking) {
    return asking.rules.help && !asking.finished &&
           asking.open_steps < asking.question.steps.size();
}

void give_hint(Asking& asking) {
    if (!has_hint(asking))
        return;
    ++asking.hints;
    const bool whole = way_stands(asking);
    asking.open_steps += whole ? 1 : 0;
    asking.next_told = !whole;
    asking.step_told.reset();
}

bool can_go_by_steps(const Asking& asking) {
    return asking.rules.help && !asking.finished &&
           problems::wanted_number(asking.question) != nullptr &&
           asking.open_steps + 1 < asking.question.steps.size();
}

void go_by_steps(Asking& asking) {
    asking.rules.by_steps = true;
}

bool has_own_step(const Asking& asking) {
    const bool under_way = asking.rules.by_steps || asking.next_told || asking.open_steps > 0;
    return under_way && can_go_by_steps(asking);
}

void mark_own_step(Asking& asking, const std::string& answer) {
    if (!has_own_step(asking) || answer.empty())
        return;
    const Marking marking =
        problems::mark_step(asking.question, asking.open_steps, answer,
                            {asking.rules.calculator, asking.rules.explains_pounds});
    asking.step_told = marking;
    if (marking.verdict == Verdict::unreadable || is_slip_of_unit(marking))
        return;
    ++asking.open_steps;
    asking.own_steps += marking.correct ? 1 : 0;
    asking.next_told = false;
}

bool may_give_up(const Asking& asking) {
    return asking.rules.feedback && !asking.finished;
}

void give_up(Asking& asking) {
    if (!may_give_up(asking))
        return;
    note(asking, {}, {}, true);
    asking.told.reset();
    finish_asking(asking);
}

bool may_skip(const Asking& asking) {
    return asking.rules.may_skip && !asking.finished;
}

std::size_t halves_shown(const Asking& asking) {
    return 2 * asking.open_steps + (way_stands(asking) ? 1 : 0);
}

double help_of(const Asking& asking) {
    if (asking.question.steps.empty())
        return 0.0;
    return static_cast<double>(halves_shown(asking) - asking.own_steps) /
           static_cast<double>(2 * asking.question.steps.size());
}

bool right_at_first(const Asking& asking) {
    return !asking.attempts.empty() && asking.attempts.front().marking.correct &&
           asking.attempts.front().hints == 0;
}

std::optional<Aside> aside_of(const Asking& asking, std::string_view typed) {
    if (typed == "h" && asking.rules.help && !asking.finished)
        return Aside::hint;
    if ((typed == "w" || typed == "?") && may_give_up(asking))
        return Aside::give_up;
    if (typed == "n" && may_skip(asking))
        return Aside::skip;
    return std::nullopt;
}

} // namespace steelyard::learner

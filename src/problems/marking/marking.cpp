#include "problems/marking/marking.h"

#include "mechanics/lever/lever_geometry.h"
#include "problems/marking/marking_number.h"
#include "problems/marking/placing.h"
#include "problems/marking/typed_choice.h"
#include "problems/question/question_writer.h"
#include "setup/units/units.h"

#include <fmt/core.h>

#include <algorithm>

namespace steelyard::problems {

namespace {

Marking unreadable(std::string message) {
    Marking marking;
    marking.verdict = Verdict::unreadable;
    marking.feedback = std::move(message);
    return marking;
}

void name_rule(const Bank& bank, const std::string& rule, Marking& marking) {
    if (rule.empty())
        return;
    marking.wrong_rule = rule;
    marking.wrong_rules = {rule};
    if (const WrongRule* known = bank.find_wrong_rule(rule))
        marking.feedback =
            fmt::format("{}. {} {}", known->title, known->feedback, marking.feedback);
}

void set_correct(Marking& marking) {
    marking.verdict = Verdict::correct;
    marking.correct = true;
}

/// "a. b." with single blanks and no empty parts.
std::string joined(std::initializer_list<std::string> parts) {
    std::string text;
    for (const std::string& part : parts)
        if (!part.empty())
            text += (text.empty() ? "" : " ") + part;
    return text;
}

Marking mark_one_choice(const Bank& bank, const Question& question,
                        const std::vector<Choice>& choices, std::size_t correct,
                        const std::string& answer) {
    std::vector<std::string> texts;
    for (const Choice& choice : choices)
        texts.push_back(choice.text);
    const auto chosen = read_choice(answer, texts, bank.synonyms);
    if (!chosen)
        return unreadable(chosen.error());
    Marking marking;
    const Choice& choice = choices[*chosen];
    if (*chosen == correct) {
        set_correct(marking);
        marking.feedback = joined({"Right.", choice.reason, question.reason});
        return marking;
    }
    const Choice& right = choices[correct];
    marking.feedback =
        joined({choice.reason, fmt::format("The answer is {}: {}.", letter(correct), right.text),
                right.reason, question.reason});
    name_rule(bank, choice.wrong_rule, marking);
    return marking;
}

Marking mark_several(const Bank& bank, const Question& question, const SeveralWanted& several,
                     const std::string& answer) {
    const auto typed = read_letters(answer, several.choices.size());
    if (!typed)
        return unreadable(typed.error());
    std::vector<std::size_t> chosen = *typed;
    std::sort(chosen.begin(), chosen.end());
    chosen.erase(std::unique(chosen.begin(), chosen.end()), chosen.end());
    Marking marking;
    if (chosen == several.correct) {
        set_correct(marking);
        marking.feedback = joined({"Right.", question.reason});
        return marking;
    }
    std::string wrong_rule;
    for (std::size_t i = 0; i < several.choices.size(); ++i) {
        const bool wanted = std::count(several.correct.begin(), several.correct.end(), i) > 0;
        const bool taken = std::count(chosen.begin(), chosen.end(), i) > 0;
        if (wanted == taken)
            continue;
        const Choice& choice = several.choices[i];
        marking.feedback = joined(
            {marking.feedback, fmt::format("{} {}.", letter(i), wanted ? "fits" : "does not fit"),
             choice.reason});
        if (taken && wrong_rule.empty())
            wrong_rule = choice.wrong_rule;
    }
    marking.feedback = joined({marking.feedback, question.reason});
    name_rule(bank, wrong_rule, marking);
    return marking;
}

Marking mark_ordering(const Question& question, const OrderWanted& order,
                      const std::string& answer) {
    const auto typed = read_letters(answer, order.choices.size());
    if (!typed)
        return unreadable(typed.error());
    std::vector<std::size_t> sorted = *typed;
    std::sort(sorted.begin(), sorted.end());
    if (sorted.size() != order.choices.size() ||
        std::adjacent_find(sorted.begin(), sorted.end()) != sorted.end())
        return unreadable(
            fmt::format("Type all {} letters, each once, in your order.", order.choices.size()));
    Marking marking;
    if (*typed == order.order) {
        set_correct(marking);
        marking.feedback = joined({"Right.", question.reason});
        return marking;
    }
    std::vector<std::size_t> reversed = *typed;
    std::reverse(reversed.begin(), reversed.end());
    marking.feedback =
        joined({reversed == order.order ? "That is the order from the other end." : "",
                fmt::format("The order is {}.", question.answer_text), question.reason});
    return marking;
}

Marking mark_typed_place(const Bank& bank, const Question& question, const PlaceWanted& place,
                         const std::string& answer) {
    if (const std::optional<Placed> placed = read_placed(answer))
        return answer.find(" to ") == std::string::npos ? mark_place(bank, question, placed->to_m)
                                                        : mark_placed(bank, question, *placed);
    std::vector<std::string> letters;
    for (const Spot& spot : place.spots)
        letters.push_back(spot.letter);
    const auto chosen = read_choice(answer, letters);
    if (!chosen)
        return unreadable(chosen.error());
    Marking marking = mark_spot(bank, question, *chosen);
    // Whoever marks the drawing itself has no letters before them.
    if (!marking.correct)
        marking.feedback = joined(
            {marking.feedback, fmt::format("It is at {}.", place.spots[place.correct].letter)});
    return marking;
}

} // namespace

Marking mark(const Bank& bank, const Question& question, const std::string& answer,
             const MarkRules& rules) {
    return std::visit(
        Cases{
            [&](const NumberWanted&) { return mark_numeric(bank, question, answer, rules); },
            [&](const ChoiceWanted& one) {
                return mark_one_choice(bank, question, one.choices, one.correct, answer);
            },
            [&](const SeveralWanted& several) {
                return mark_several(bank, question, several, answer);
            },
            [&](const OrderWanted& order) { return mark_ordering(question, order, answer); },
            [&](const PlaceWanted& place) {
                return mark_typed_place(bank, question, place, answer);
            },
            [&](const ChangeWanted& change) {
                return mark_one_choice(bank, question, change.choices, change.correct, answer);
            },
        },
        question.wanted);
}

Marking mark_spot(const Bank& bank, const Question& question, std::size_t chosen) {
    Marking marking;
    const auto& place = std::get<PlaceWanted>(question.wanted);
    const Spot& right = place.spots[place.correct];
    if (chosen == place.correct) {
        set_correct(marking);
        marking.feedback = joined({"Right.", right.reason, question.reason});
        return marking;
    }
    marking.feedback = joined({place.spots[chosen].reason, right.reason, question.reason});
    name_rule(bank, place.spots[chosen].wrong_rule, marking);
    return marking;
}

Marking mark_missed_place(const Question& question, const std::string& why) {
    Marking marking;
    const auto& place = std::get<PlaceWanted>(question.wanted);
    const Spot& right = place.spots[place.correct];
    marking.feedback = joined({why, right.reason, question.reason});
    return marking;
}

Marking mark_place(const Bank& bank, const Question& question, const mechanics::Vec2& point_m) {
    const auto& place = std::get<PlaceWanted>(question.wanted);
    if (!point_m.allFinite() || place.spots.empty())
        return unreadable("Place it on the drawing.");
    const bool on_line = place.target == PlaceTarget::effort_line;
    double distance_m = (point_m - place.at_m).norm();
    if (on_line) {
        const auto& picture = std::get<LeverPicture>(question.picture);
        const mechanics::Vec2 along = mechanics::unit_vector(picture.lever.effort.direction_rad);
        const mechanics::Vec2 away = point_m - place.at_m;
        distance_m = std::abs(mechanics::cross(away, along));
    }
    if (distance_m <= place.tolerance_m)
        return mark_spot(bank, question, place.correct);
    // Near a spot that stands for a mistake: say which; anywhere else: just where it belongs.
    for (std::size_t i = 0; i < place.spots.size(); ++i)
        if (i != place.correct && (point_m - place.spots[i].at_m).norm() <= place.tolerance_m)
            return mark_spot(bank, question, i);
    return mark_missed_place(question, "Not there.");
}

Marking mark_step(const Question& question, std::size_t step, const std::string& answer,
                  const MarkRules& rules) {
    if (step >= question.steps.size())
        return unreadable("There is no such step.");
    const Step& wanted = question.steps[step];
    if (wanted.options.empty()) {
        ReadNumber read;
        Marking marking = mark_number({wanted.value, wanted.tolerance, wanted.unit, wanted.result},
                                      answer, rules, read);
        if (marking.verdict == Verdict::wrong)
            marking.feedback =
                fmt::format("Not quite. {} {} = {}.", wanted.says, wanted.formula, wanted.result);
        return marking;
    }
    const auto chosen = read_choice(answer, wanted.options);
    if (!chosen)
        return unreadable(chosen.error());
    Marking marking;
    if (*chosen == wanted.correct_option)
        set_correct(marking);
    marking.feedback = marking.correct ? fmt::format("Right: {}.", wanted.result)
                                       : fmt::format("{} Here: {}.", wanted.says, wanted.result);
    return marking;
}

} // namespace steelyard::problems

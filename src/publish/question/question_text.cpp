#include "publish/question/question_text.h"

#include "problems/bank/answer_kinds.h"
#include "problems/language/number_text.h"
#include "problems/question/question_writer.h"

#include <algorithm>
#include <cctype>
#include <string_view>

namespace steelyard::publish {
namespace {

using problems::Cases;
using problems::Question;

std::string joined(const std::vector<std::string>& parts) {
    std::string text;
    for (const std::string& part : parts)
        text += (text.empty() ? "" : ", ") + part;
    return text;
}

void add_number_mistakes(const problems::Bank& bank, const Question& question,
                         std::vector<Mistake>& found) {
    for (const problems::WrongAnswer& wrong : question.wrong_rules) {
        const problems::WrongRule* rule = bank.find_wrong_rule(wrong.rule);
        found.push_back({value_text(question, wrong.value), rule ? rule->title : wrong.rule,
                         wrong.rule, rule ? rule->title : ""});
    }
}

void add_choice_mistakes(const std::vector<problems::Choice>& choices,
                         const std::vector<std::size_t>& right, std::vector<Mistake>& found) {
    for (std::size_t i = 0; i < choices.size(); ++i) {
        const problems::Choice& choice = choices[i];
        const bool is_right = std::find(right.begin(), right.end(), i) != right.end();
        if (!is_right && !choice.reason.empty())
            found.push_back({problems::letter(i), choice.reason, choice.wrong_rule, choice.reason});
    }
}

void add_spot_mistakes(const problems::PlaceWanted& place, std::vector<Mistake>& found) {
    for (std::size_t i = 0; i < place.spots.size(); ++i) {
        const problems::Spot& spot = place.spots[i];
        if (i != place.correct && !spot.reason.empty())
            found.push_back({spot.letter, spot.reason, spot.wrong_rule, spot.reason});
    }
}

} // namespace

std::vector<std::string> tickable(const Question& question) {
    std::vector<std::string> texts;
    for (const problems::Choice& choice : problems::choices_of(question))
        texts.push_back(choice.text);
    return texts;
}

std::string pen_instruction(const Question& question) {
    return std::string(problems::row_of(question).on_paper);
}

std::vector<std::string> right_letters(const Question& question) {
    std::vector<std::string> letters;
    if (const problems::PlaceWanted* place = problems::wanted_place(question)) {
        if (place->correct < place->spots.size())
            letters.push_back(place->spots[place->correct].letter);
        return letters;
    }
    for (const std::size_t choice : problems::right_ones(question))
        letters.push_back(problems::letter(choice));
    return letters;
}

std::string short_title(const problems::Bank& bank, const Question& question) {
    const problems::Family* family = bank.find_family(question.family);
    return family != nullptr ? family->title : "";
}

std::string short_answer(const Question& question) {
    const std::vector<std::string> letters = right_letters(question);
    return letters.empty() ? question.answer_text : joined(letters);
}

std::string key_answer(const Question& question) {
    const std::string brief = short_answer(question);
    return brief == question.answer_text ? brief : brief + ": " + question.answer_text;
}

std::string answer_name(const Question& question) {
    std::string name = question.asked_text;
    constexpr std::string_view kArticle = "the ";
    if (name.compare(0, kArticle.size(), kArticle) == 0)
        name.erase(0, kArticle.size());
    if (!name.empty())
        name.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(name.front())));
    return name;
}

std::string worked_formula(const problems::Step& step) {
    const bool has_result = step.formula.size() >= step.result.size() &&
                            step.formula.compare(step.formula.size() - step.result.size(),
                                                 std::string::npos, step.result) == 0;
    return has_result || step.result.empty() ? step.formula : step.formula + " = " + step.result;
}

std::string value_text(const Question& question, double value) {
    const problems::NumberWanted* number = problems::wanted_number(question);
    return problems::with_unit(
        problems::number_text(value, number != nullptr ? number->figures : 3),
        number != nullptr ? number->unit : "");
}

std::vector<Mistake> mistakes(const problems::Bank& bank, const Question& question) {
    std::vector<Mistake> found;
    std::visit(
        Cases{
            [&](const problems::NumberWanted&) { add_number_mistakes(bank, question, found); },
            [&](const problems::ChoiceWanted& one) {
                add_choice_mistakes(one.choices, {one.correct}, found);
            },
            [&](const problems::SeveralWanted& several) {
                add_choice_mistakes(several.choices, several.correct, found);
            },
            [](const problems::OrderWanted&) {}, // no single choice is a mistake
            [&](const problems::PlaceWanted& place) { add_spot_mistakes(place, found); },
            [&](const problems::ChangeWanted& change) {
                add_choice_mistakes(change.choices, {change.correct}, found);
            },
        },
        question.wanted);
    return found;
}

} // namespace steelyard::publish

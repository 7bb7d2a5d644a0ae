#include "publish/question/question_text.h"

#include "problems/question/question_writer.h"
#include "setup/units/format_quantity.h"

#include <algorithm>
#include <cctype>
#include <string_view>

namespace steelyard::publish {
namespace {

using problems::Kind;
using problems::Question;

std::string joined(const std::vector<std::string>& parts) {
    std::string text;
    for (const std::string& part : parts) {
        text += (text.empty() ? "" : ", ") + part;
    }
    return text;
}

bool is_right(const Question& question, std::size_t choice) {
    return std::find(question.correct.begin(), question.correct.end(), choice) !=
           question.correct.end();
}

void add_number_mistakes(const problems::Bank& bank, const Question& question,
                         std::vector<Mistake>& found) {
    for (const problems::WrongAnswer& wrong : question.wrong_rules) {
        const problems::WrongRule* rule = bank.find_wrong_rule(wrong.rule);
        found.push_back({value_text(question, wrong.value), rule ? rule->title : wrong.rule,
                         wrong.rule, rule ? rule->title : ""});
    }
}

void add_choice_mistakes(const Question& question, std::vector<Mistake>& found) {
    if (question.kind == Kind::ordering) {
        return;
    }
    for (std::size_t i = 0; i < question.choices.size(); ++i) {
        const problems::Choice& choice = question.choices[i];
        if (!is_right(question, i) && !choice.reason.empty()) {
            found.push_back({problems::letter(i), choice.reason, choice.wrong_rule, choice.reason});
        }
    }
}

void add_spot_mistakes(const Question& question, std::vector<Mistake>& found) {
    for (std::size_t i = 0; i < question.spots.size(); ++i) {
        const problems::Spot& spot = question.spots[i];
        if (i != question.correct_spot && !spot.reason.empty()) {
            found.push_back({spot.letter, spot.reason, spot.wrong_rule, spot.reason});
        }
    }
}

} // namespace

std::vector<std::string> tickable(const Question& question) {
    std::vector<std::string> texts;
    for (const problems::Choice& choice : question.choices) {
        texts.push_back(choice.text);
    }
    return texts;
}

std::string pen_instruction(const Question& question) {
    switch (question.kind) {
    case Kind::numeric:
        return "";
    case Kind::single_choice:
    case Kind::change:
        return "Tick one.";
    case Kind::several_choices:
        return "Tick every one that fits.";
    case Kind::ordering:
        return "Write 1 beside the first, 2 beside the second, and so on.";
    case Kind::place:
        return "Circle one letter on the drawing.";
    }
    return "";
}

std::vector<std::string> right_letters(const Question& question) {
    if (question.kind == Kind::place) {
        return question.correct_spot < question.spots.size()
                   ? std::vector{question.spots[question.correct_spot].letter}
                   : std::vector<std::string>{};
    }
    std::vector<std::string> letters;
    for (const std::size_t choice : question.correct) {
        letters.push_back(problems::letter(choice));
    }
    return letters;
}

std::string short_answer(const Question& question) {
    const std::vector<std::string> letters = right_letters(question);
    if (question.kind == Kind::numeric || letters.empty()) {
        return question.answer_text;
    }
    return joined(letters);
}

std::string key_answer(const Question& question) {
    const std::string brief = short_answer(question);
    return brief == question.answer_text ? brief : brief + ": " + question.answer_text;
}

std::string answer_name(const Question& question) {
    std::string name = question.asked_text;
    constexpr std::string_view kArticle = "the ";
    if (name.compare(0, kArticle.size(), kArticle) == 0) {
        name.erase(0, kArticle.size());
    }
    if (!name.empty()) {
        name.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(name.front())));
    }
    return name;
}

std::string worked_formula(const problems::Step& step) {
    const bool has_result = step.formula.size() >= step.result.size() &&
                            step.formula.compare(step.formula.size() - step.result.size(),
                                                 std::string::npos, step.result) == 0;
    return has_result || step.result.empty() ? step.formula : step.formula + " = " + step.result;
}

std::string value_text(const Question& question, double value) {
    setup::QuantityText text;
    text.number = setup::format_number(value, {question.figures, true});
    text.unit = question.unit;
    return text.joined();
}

std::vector<Mistake> mistakes(const problems::Bank& bank, const Question& question) {
    std::vector<Mistake> found;
    add_number_mistakes(bank, question, found);
    add_choice_mistakes(question, found);
    add_spot_mistakes(question, found);
    return found;
}

} // namespace steelyard::publish

#include "cli/reports/question_json.h"

#include "problems/bank/answer_kinds.h"

#include <fmt/core.h>

#include <cstdlib>
#include <string>

namespace steelyard::cli {

namespace {

using problems::Question;

/// Twelve figures: more than anyone asks for, without the rounding of a sum's last digits.
double rounded(double value) {
    return std::strtod(fmt::format("{:.12g}", value).c_str(), nullptr);
}

const char* verdict_name(problems::Verdict verdict) {
    switch (verdict) {
    case problems::Verdict::correct:
        return "correct";
    case problems::Verdict::correct_few_figures:
        return "correct_few_figures";
    case problems::Verdict::wrong:
        return "wrong";
    case problems::Verdict::wrong_unit:
        return "wrong_unit";
    case problems::Verdict::wrong_dimension:
        return "wrong_dimension";
    case problems::Verdict::unreadable:
        return "unreadable";
    }
    return "";
}

Json expected_answer_json(const Question& question) {
    const problems::NumberWanted* number = problems::wanted_number(question);
    return number != nullptr ? Json(rounded(number->value)) : Json(question.answer_text);
}

Json choices_json(const Question& question) {
    Json choices = Json::array();
    for (const problems::Choice& choice : problems::choices_of(question))
        choices.push_back(choice.text);
    for (const problems::Spot& spot : problems::spots_of(question))
        choices.push_back(
            fmt::format("{}: {:.4g} m, {:.4g} m", spot.letter, spot.at_m.x(), spot.at_m.y()));
    return choices;
}

Json correct_json(const Question& question) {
    const std::vector<std::size_t> right = problems::right_ones(question);
    switch (problems::row_of(question).picks) {
    case problems::Picks::nothing:
        break;
    case problems::Picks::one:
        return right.front();
    case problems::Picks::any:
    case problems::Picks::all_in_order:
        return right;
    }
    return nullptr;
}

Json step_json(const problems::Step& step) {
    Json json{{"find", step.find},
              {"says", step.says},
              {"formula", step.formula},
              {"result", step.result}};
    if (step.options.empty()) {
        json["value"] = rounded(step.value);
        json["unit"] = step.unit;
    } else {
        json["options"] = step.options;
        json["correct"] = step.correct_option;
    }
    return json;
}

} // namespace

Json question_json(const Question& question) {
    Json given = Json::array();
    for (const problems::Given& each : question.given)
        given.push_back({{"name", each.name}, {"value", each.value}, {"unit", each.unit}});
    Json steps = Json::array();
    for (const problems::Step& step : question.steps)
        steps.push_back(step_json(step));
    Json wrong_rules = Json::object();
    for (const problems::WrongAnswer& wrong : question.wrong_rules)
        wrong_rules[wrong.rule] = rounded(wrong.value);
    const problems::NumberWanted* number = problems::wanted_number(question);
    return {{"code", question.code},
            {"family", question.family},
            {"skill", question.skill},
            {"kind", problems::row_of(question).name},
            {"difficulty", question.difficulty},
            {"prompt", question.prompt},
            {"given", std::move(given)},
            {"asked", question.asked},
            {"unit", number != nullptr ? number->unit : std::string()},
            {"answer", expected_answer_json(question)},
            {"answer_text", question.answer_text},
            {"tolerance", number != nullptr ? Json(rounded(number->tolerance)) : Json(nullptr)},
            {"choices", choices_json(question)},
            {"correct", correct_json(question)},
            {"steps", std::move(steps)},
            {"wrong_rules", std::move(wrong_rules)},
            {"reason", question.reason}};
}

Json marking_json(const Question& question, const problems::Marking& marking) {
    Json json{{"format", format_name("mark")},
              {"code", question.code},
              {"correct", marking.correct},
              {"wrong_rule", marking.wrong_rule ? Json(*marking.wrong_rule) : Json(nullptr)},
              {"feedback", marking.feedback},
              {"answer", expected_answer_json(question)},
              {"answer_text", question.answer_text},
              {"verdict", verdict_name(marking.verdict)},
              {"wrong_rules", marking.wrong_rules},
              {"follow_up", marking.follow_up.empty() ? Json(nullptr) : Json(marking.follow_up)}};
    json["parts_at"] = marking.parts_at ? Json(*marking.parts_at) : Json(nullptr);
    return json;
}

} // namespace steelyard::cli

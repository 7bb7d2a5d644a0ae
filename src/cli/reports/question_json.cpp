#include "cli/reports/question_json.h"

#include <fmt/core.h>

#include <cstdlib>
#include <string>

namespace steelyard::cli {

namespace {

using problems::Kind;
using problems::Question;

/// Twelve figures: more than anyone asks for, without the rounding of a sum's last digits.
double rounded(double value) {
    return std::strtod(fmt::format("{:.12g}", value).c_str(), nullptr);
}

const char* kind_name(Kind kind) {
    switch (kind) {
    case Kind::numeric:
        return "numeric";
    case Kind::single_choice:
        return "single";
    case Kind::several_choices:
        return "several";
    case Kind::ordering:
        return "ordering";
    case Kind::place:
        return "place";
    case Kind::change:
        return "change";
    }
    return "";
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

Json answer_json(const Question& question) {
    return question.kind == Kind::numeric ? Json(rounded(question.answer))
                                          : Json(question.answer_text);
}

Json choices_json(const Question& question) {
    Json choices = Json::array();
    for (const problems::Choice& choice : question.choices)
        choices.push_back(choice.text);
    for (const problems::Spot& spot : question.spots)
        choices.push_back(
            fmt::format("{}: {:.4g} m, {:.4g} m", spot.letter, spot.at_m.x(), spot.at_m.y()));
    return choices;
}

Json correct_json(const Question& question) {
    switch (question.kind) {
    case Kind::numeric:
        return nullptr;
    case Kind::single_choice:
    case Kind::change:
    case Kind::place:
        return question.correct.front();
    default:
        return question.correct;
    }
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
    const bool numeric = question.kind == Kind::numeric;
    return {{"code", question.code},
            {"family", question.family},
            {"skill", question.skill},
            {"kind", kind_name(question.kind)},
            {"difficulty", question.difficulty},
            {"prompt", question.prompt},
            {"given", std::move(given)},
            {"asked", question.asked},
            {"unit", question.unit},
            {"answer", answer_json(question)},
            {"answer_text", question.answer_text},
            {"tolerance", numeric ? Json(rounded(question.tolerance)) : Json(nullptr)},
            {"choices", choices_json(question)},
            {"correct", correct_json(question)},
            {"steps", std::move(steps)},
            {"wrong_rules", std::move(wrong_rules)},
            {"reason", question.reason}};
}

Json marking_json(const Question& question, const problems::Marking& marking) {
    Json json{{"correct", marking.correct},
              {"wrong_rule", marking.wrong_rule ? Json(*marking.wrong_rule) : Json(nullptr)},
              {"feedback", marking.feedback},
              {"answer", answer_json(question)},
              {"answer_text", question.answer_text},
              {"verdict", verdict_name(marking.verdict)},
              {"wrong_rules", marking.wrong_rules},
              {"follow_up", marking.follow_up.empty() ? Json(nullptr) : Json(marking.follow_up)}};
    json["parts_at"] = marking.parts_at ? Json(*marking.parts_at) : Json(nullptr);
    return json;
}

} // namespace steelyard::cli

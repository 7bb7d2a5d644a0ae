#include "publish/exchange/qti_item.h"

#include "problems/bank/answer_kinds.h"
#include "problems/question/question_writer.h"
#include "publish/exchange/csv.h"
#include "publish/question/question_text.h"
#include "words/formula_parts.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace steelyard::publish {
namespace {

using problems::Question;

constexpr const char* kResponse = "RESPONSE";
constexpr const char* kFeedback = "FEEDBACK";
constexpr const char* kSolution = "SOLUTION";
constexpr const char* kAnswered = "answered"; ///< what SOLUTION is then

/// One way to answer and what is said to it. The right one stands first.
struct Branch {
    std::string identifier; ///< of the feedback
    double value = 0.0;     ///< numeric: the answer that leads here
    std::string choice;     ///< choice: identifier of the choice that leads here
    std::string says;
};

/// How QTI has a question answered.
struct Interaction {
    const char* element;     ///< of the body; empty: a number is typed
    const char* cardinality; ///< of the response
    const char* most;        ///< maxChoices, "0" for any number; empty where it has none
    bool tells_each_wrong;   ///< each wrong answer has feedback of its own
};

Interaction interaction_of(const Question& question) {
    switch (problems::row_of(question).picks) {
    case problems::Picks::nothing:
        break;
    case problems::Picks::one:
        return {"choiceInteraction", "single", "1", true};
    case problems::Picks::any:
        return {"choiceInteraction", "multiple", "0", false};
    case problems::Picks::all_in_order:
        return {"orderInteraction", "ordered", "", false};
    }
    return {"", "single", "", true};
}

/// Choices as letter and words; for a place the letters on the drawing.
std::vector<std::pair<std::string, std::string>> lettered(const Question& question) {
    std::vector<std::pair<std::string, std::string>> choices;
    for (const problems::Spot& spot : problems::spots_of(question))
        choices.emplace_back(spot.letter, spot.letter);
    for (const problems::Choice& choice : problems::choices_of(question))
        choices.emplace_back(problems::letter(choices.size()), choice.text);
    return choices;
}

std::vector<Branch> wrong_branches(const problems::Bank& bank, const Question& question) {
    std::vector<Branch> branches;
    if (problems::wanted_number(question) != nullptr) {
        for (const problems::WrongAnswer& wrong : question.wrong_rules) {
            const problems::WrongRule* rule = bank.find_wrong_rule(wrong.rule);
            branches.push_back({"rule-" + wrong.rule, wrong.value, "",
                                rule ? rule->title + ". " + rule->feedback : wrong.rule});
        }
    } else if (interaction_of(question).tells_each_wrong) {
        for (const Mistake& mistake : mistakes(bank, question))
            branches.push_back({"choice-" + mistake.answer, 0.0, mistake.answer, mistake.title});
    }
    return branches;
}

/// What a learner reads after answering, a line for each step: the answer, then why.
std::string solution_text(const Question& question) {
    std::string text = "The answer: " + question.answer_text + ".";
    for (const problems::Step& step : question.steps)
        text += "\n" + step.says + "\n" + worked_formula(step);
    return question.reason.empty() ? text : text + "\n" + question.reason;
}

/// Distinct within a package: "Effort (K7M2Q-9XD4T)".
std::string title_of(const Question& question) {
    const std::string asked = answer_name(question);
    return asked.empty() ? question.code : fmt::format("{} ({})", asked, question.code);
}

void declare_outcome(QtiNode& item, const char* identifier, const char* type, const char* value) {
    QtiNode outcome = item.add("outcomeDeclaration");
    outcome.set("identifier", identifier).set("cardinality", "single").set("baseType", type);
    if (*value != '\0')
        outcome.add("defaultValue").add("value").say(value);
}

/// A line with the indices of its symbols small and low.
void say_formula(QtiNode paragraph, std::string_view line) {
    for (const words::FormulaPart& part : words::formula_parts(line))
        if (part.index)
            paragraph.add_html("sub").say(part.text);
        else if (!part.text.empty())
            paragraph.say(part.text);
}

void declare(QtiNode& item, const Question& question) {
    const problems::NumberWanted* number = problems::wanted_number(question);
    QtiNode response = item.add("responseDeclaration");
    response.set("identifier", kResponse)
        .set("cardinality", interaction_of(question).cardinality)
        .set("baseType", number != nullptr ? "float" : "identifier");
    QtiNode correct = response.add("correctResponse");
    if (number != nullptr)
        correct.add("value").say(csv_number(number->value));
    for (const std::string& letter : right_letters(question))
        correct.add("value").say(letter);
    declare_outcome(item, "SCORE", "float", "0");
    declare_outcome(item, "MAXSCORE", "float", "1");
    declare_outcome(item, kFeedback, "identifier", "");
    declare_outcome(item, kSolution, "identifier", "");
}

void add_paragraphs(QtiNode& body, const std::string& text) {
    for (std::size_t from = 0; from <= text.size();) {
        const std::size_t to = std::min(text.find('\n', from), text.size());
        say_formula(body.add_html("p"), std::string_view(text).substr(from, to - from));
        from = to + 1;
    }
}

void add_choices(QtiNode& body, const Question& question) {
    const Interaction how = interaction_of(question);
    QtiNode interaction = body.add(how.element);
    interaction.set("responseIdentifier", kResponse).set("shuffle", "false");
    if (*how.most != '\0')
        interaction.set("maxChoices", how.most);
    for (const auto& [letter, words] : lettered(question))
        interaction.add("simpleChoice").set("identifier", letter).say(words);
}

void write_body(QtiNode& item, const Question& question, const ItemFigure& figure) {
    QtiNode body = item.add("itemBody");
    add_paragraphs(body, question.prompt);
    if (!figure.href.empty())
        body.add_html("p").add_html("img").set("src", figure.href).set("alt", figure.alt);
    const problems::NumberWanted* number = problems::wanted_number(question);
    if (number == nullptr) {
        add_choices(body, question);
        return;
    }
    QtiNode answer = body.add_html("p");
    answer.say(answer_name(question) + " = ");
    answer.add("textEntryInteraction")
        .set("responseIdentifier", kResponse)
        .set("expectedLength", "12");
    // The unit stands in the text: one that is typed would make the response no number.
    answer.say(" " + number->unit);
    // A response that is a number takes none other: QTI 2.1 and 3.0, base type float.
    body.add_html("p").say("Write decimals with a point, as in 12.5.");
}

void set_outcome(QtiNode& rule, const char* outcome, const char* type, const std::string& value) {
    rule.add("setOutcomeValue")
        .set("identifier", outcome)
        .add("baseValue")
        .set("baseType", type)
        .say(value);
}

/// The response is at least, or at most, a number.
void write_bound(QtiNode& both, const char* comparison, double bound) {
    QtiNode one = both.add(comparison);
    one.add("variable").set("identifier", kResponse);
    one.add("baseValue").set("baseType", "float").say(csv_number(bound));
}

void write_numeric_condition(QtiNode& rule, const problems::NumberWanted& number,
                             const Branch* wrong) {
    const double value = wrong == nullptr ? number.value : wrong->value;
    QtiNode both = rule.add("and");
    write_bound(both, "gte", value - number.tolerance);
    write_bound(both, "lte", value + number.tolerance);
}

void write_choice_condition(QtiNode& rule, const Branch* wrong) {
    QtiNode match = rule.add("match");
    match.add("variable").set("identifier", kResponse);
    if (wrong == nullptr)
        match.add("correct").set("identifier", kResponse);
    else
        match.add("baseValue").set("baseType", "identifier").say(wrong->choice);
}

void write_condition(QtiNode& rule, const Question& question, const Branch* wrong) {
    if (const problems::NumberWanted* number = problems::wanted_number(question))
        write_numeric_condition(rule, *number, wrong);
    else
        write_choice_condition(rule, wrong);
}

void write_processing(QtiNode& item, const Question& question,
                      const std::vector<Branch>& branches) {
    QtiNode processing = item.add("responseProcessing");
    QtiNode condition = processing.add("responseCondition");
    QtiNode right = condition.add("responseIf");
    write_condition(right, question, nullptr);
    set_outcome(right, "SCORE", "float", "1");
    set_outcome(right, kFeedback, "identifier", "right");
    for (const Branch& branch : branches) {
        QtiNode wrong = condition.add("responseElseIf");
        write_condition(wrong, question, &branch);
        set_outcome(wrong, kFeedback, "identifier", branch.identifier);
    }
    QtiNode otherwise = condition.add("responseElse");
    set_outcome(otherwise, kFeedback, "identifier", "other");
    set_outcome(processing, kSolution, "identifier", kAnswered);
}

/// Said when the outcome has this value.
void write_feedback(QtiNode& item, const char* outcome, const std::string& identifier,
                    const std::string& text) {
    QtiNode feedback = item.add("modalFeedback");
    feedback.set("outcomeIdentifier", outcome)
        .set("identifier", identifier)
        .set("showHide", "show");
    // 3.0 wraps what is said in a body of its own.
    QtiNode body = feedback.version() == QtiVersion::v3_0 ? feedback.add("contentBody") : feedback;
    add_paragraphs(body, text);
}

} // namespace

std::string qti_identifier(const Question& question) {
    return "q-" + question.code;
}

std::string qti_item(const problems::Bank& bank, const Question& question, QtiVersion version,
                     const ItemFigure& figure) {
    pugi::xml_document document;
    QtiNode item = qti_root(document, version, "assessmentItem");
    item.set("identifier", qti_identifier(question))
        .set("title", title_of(question))
        .set("xml:lang", "en")
        .set("adaptive", "false")
        .set("timeDependent", "false");
    const std::vector<Branch> branches = wrong_branches(bank, question);
    declare(item, question);
    write_body(item, question, figure);
    write_processing(item, question, branches);
    write_feedback(item, kFeedback, "right", "Right.");
    for (const Branch& branch : branches)
        write_feedback(item, kFeedback, branch.identifier, branch.says);
    write_feedback(item, kFeedback, "other", "Not yet.");
    write_feedback(item, kSolution, kAnswered, solution_text(question));
    return xml_text(document);
}

} // namespace steelyard::publish

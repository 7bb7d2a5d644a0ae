#include "cli/practice.h"

#include "cli/lever_ascii.h"
#include "problems/marking.h"
#include "problems/paper.h"
#include "problems/question_writer.h"

#include <fmt/core.h>

#include <istream>
#include <ostream>

namespace steelyard::cli {

namespace {

using problems::Kind;
using problems::Question;

constexpr std::size_t kColumns = 78;

/// Breaks a text at blanks so that no line is longer than a terminal.
std::string wrapped(const std::string& text, const std::string& indent = "") {
    std::string result = indent;
    std::size_t column = indent.size();
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        // Letters beyond ASCII take more bytes than columns; count the columns.
        std::size_t width = 0;
        for (std::size_t i = at; i < end; ++i)
            width += (static_cast<unsigned char>(text[i]) & 0xC0U) != 0x80U ? 1 : 0;
        if (column > indent.size() && column + 1 + width > kColumns) {
            result += "\n" + indent;
            column = indent.size();
        } else if (column > indent.size()) {
            result += ' ';
            ++column;
        }
        result += text.substr(at, end - at);
        column += width;
        at = end + 1;
    }
    return result + "\n";
}

std::string step_text(const problems::Step& step) {
    return step.formula == "axis" ? step.result : fmt::format("{} = {}", step.formula, step.result);
}

void show_step(const Question& question, std::size_t index, std::ostream& out) {
    const problems::Step& step = question.steps[index];
    out << wrapped(fmt::format("{}. {}", index + 1, step.says), "  ");
    out << wrapped(step_text(step), "     ");
}

void show_solution(const Question& question, std::ostream& out) {
    for (std::size_t i = 0; i < question.steps.size(); ++i)
        show_step(question, i, out);
    if (!question.reason.empty())
        out << wrapped(question.reason, "  ");
    out << wrapped(fmt::format("Answer: {}", question.answer_text), "  ");
}

void show_question(const Question& question, std::ostream& out) {
    out << fmt::format("\n[{}]  difficulty {} of 5\n", question.code, question.difficulty);
    out << wrapped(question.prompt);
    if (const auto* picture = std::get_if<problems::LeverPicture>(&question.picture))
        out << '\n' << draw_in_ascii(*picture, question.spots);
    for (std::size_t i = 0; i < question.choices.size(); ++i)
        out << wrapped(fmt::format("{}  {}", problems::letter(i), question.choices[i].text), "  ");
}

const char* how_to_answer(const Question& question) {
    switch (question.kind) {
    case Kind::numeric:
        return "Your answer, a number with its unit";
    case Kind::single_choice:
    case Kind::change:
        return "Your answer, a letter";
    case Kind::several_choices:
        return "Every letter that fits";
    case Kind::ordering:
        return "All letters in order, largest first unless it says otherwise";
    case Kind::place:
        return "The letter of the place";
    }
    return "";
}

/// What a hint shows next: of each step first what to do, then how it comes out.
class Hints {
public:
    explicit Hints(const Question& question) : question_(question) {}

    void give(std::ostream& out) {
        const std::size_t step = given_ / 2;
        if (step >= question_.steps.size()) {
            out << wrapped(question_.steps.empty() && !question_.choices.empty()
                               ? "No hint but this: say in your own words what each choice means."
                               : "Those were all the steps.",
                           "  ");
            return;
        }
        if (given_ % 2 == 0)
            out << wrapped(fmt::format("{}. {}", step + 1, question_.steps[step].says), "  ");
        else
            out << wrapped(step_text(question_.steps[step]), "     ");
        ++given_;
    }

    std::size_t given() const { return given_; }

private:
    const Question& question_;
    std::size_t given_ = 0;
};

enum class Ended { answered, skipped, quit };

bool read_line(const Streams& streams, std::string_view prompt, std::string& line) {
    streams.out << prompt << ": " << std::flush;
    if (!std::getline(streams.in, line))
        return false;
    while (!line.empty() && (line.back() == '\r' || line.back() == ' '))
        line.pop_back();
    return true;
}

/// The learner does the steps one by one, each marked alone.
bool step_by_step(const Question& question, std::size_t from, const Streams& streams) {
    for (std::size_t i = from; i < question.steps.size(); ++i) {
        const problems::Step& step = question.steps[i];
        streams.out << wrapped(fmt::format("{}. {}", i + 1, step.says), "  ");
        for (std::size_t j = 0; j < step.options.size(); ++j)
            streams.out << fmt::format("       {}  {}\n", problems::letter(j), step.options[j]);
        std::string line;
        if (!read_line(
                streams,
                step.options.empty()
                    ? fmt::format("     In {}", step.unit.empty() ? "plain numbers" : step.unit)
                    : std::string("     Which"),
                line))
            return false;
        if (line == "q")
            return true;
        streams.out << wrapped(problems::mark_step(question, i, line).feedback, "     ");
    }
    return true;
}

void show_marking(const Question& question, const problems::Marking& marking, std::ostream& out) {
    out << wrapped(marking.feedback, "  ");
    const auto* picture = std::get_if<problems::LeverPicture>(&question.picture);
    if (picture && marking.drawn_wrong && marking.drawn_right)
        out << '\n'
            << draw_in_ascii(*picture, {},
                             {{'x', "you took", *marking.drawn_wrong},
                              {'+', "it has to be", *marking.drawn_right}});
    if (!marking.follow_up.empty())
        out << wrapped(marking.follow_up, "  ");
}

/// Asks one question. `right` says whether the first answer was right without a hint.
Ended ask(const problems::Bank& bank, const Question& question, std::size_t done_steps,
          const Streams& streams, bool& right) {
    show_question(question, streams.out);
    for (std::size_t i = 0; i < std::min(done_steps, question.steps.size()); ++i)
        show_step(question, i, streams.out);
    Hints hints(question);
    right = false;
    bool first = true;
    while (true) {
        std::string line;
        if (!read_line(streams,
                       fmt::format("\n{} (h hint, s step by step, w worked answer, n next, q quit)",
                                   how_to_answer(question)),
                       line))
            return Ended::quit;
        if (line == "q")
            return Ended::quit;
        if (line == "n")
            return Ended::skipped;
        if (line == "h") {
            hints.give(streams.out);
        } else if (line == "w") {
            show_solution(question, streams.out);
            return Ended::answered;
        } else if (line == "s" && !question.steps.empty()) {
            if (!step_by_step(question, done_steps, streams))
                return Ended::quit;
        } else if (!line.empty()) {
            const problems::Marking marking = problems::mark(bank, question, line);
            show_marking(question, marking, streams.out);
            if (marking.verdict == problems::Verdict::unreadable)
                continue;
            if (marking.correct) {
                right = first && hints.given() == 0;
                return Ended::answered;
            }
            first = false;
            if (question.kind != Kind::numeric)
                return Ended::answered;
        }
    }
}

} // namespace

ExitStatus practise(const problems::Bank& bank, const problems::PaperPlan& plan,
                    std::size_t done_steps, const Streams& streams) {
    const auto questions = problems::make_paper(bank, plan);
    if (!questions) {
        streams.err << questions.error().message << '\n';
        return ExitStatus::bad_input;
    }
    std::size_t asked = 0;
    std::size_t right_ones = 0;
    for (const Question& question : *questions) {
        bool right = false;
        const Ended ended = ask(bank, question, done_steps, streams, right);
        if (ended == Ended::quit)
            break;
        asked += ended == Ended::answered ? 1 : 0;
        right_ones += right ? 1 : 0;
    }
    streams.out << fmt::format("\n{} answered, {} right at the first try without a hint.\n", asked,
                               right_ones);
    return ExitStatus::ok;
}

ExitStatus practise_one(const problems::Bank& bank, const Question& question,
                        std::size_t done_steps, const Streams& streams) {
    bool right = false;
    ask(bank, question, done_steps, streams, right);
    return ExitStatus::ok;
}

void show_worked(const Question& question, const Streams& streams) {
    show_question(question, streams.out);
    streams.out << "\nWorked answer\n";
    show_solution(question, streams.out);
}

} // namespace steelyard::cli

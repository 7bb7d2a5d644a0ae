#include "cli/practice.h"

#include "cli/body_ascii.h"
#include "cli/lever_ascii.h"
#include "cli/terminal.h"
#include "problems/marking.h"
#include "problems/paper.h"
#include "problems/question_writer.h"
#include "problems/worked_steps.h"

#include <fmt/core.h>

#include <algorithm>
#include <ostream>

namespace steelyard::cli {

namespace {

using problems::Kind;
using problems::Question;

void show_step(const Question& question, std::size_t index, std::ostream& out) {
    const problems::Step& step = question.steps[index];
    out << wrapped(fmt::format("{}. {}", index + 1, step.says), "  ");
    out << wrapped(problems::step_line(step), "     ");
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
    Hints(const Question& question, std::size_t from) : question_(question), from_(from) {}

    void give(std::ostream& out) {
        const std::size_t step = from_ + given_ / 2;
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
            out << wrapped(problems::step_line(question_.steps[step]), "     ");
        ++given_;
    }

    std::size_t given() const { return given_; }

private:
    const Question& question_;
    std::size_t from_; ///< the first step that is not shown already
    std::size_t given_ = 0;
};

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

void show_picture(const Question& question, const std::vector<problems::Spot>& spots,
                  const std::vector<MarkedLine>& marks, std::ostream& out) {
    if (const auto* lever = std::get_if<problems::LeverPicture>(&question.picture))
        out << '\n' << draw_in_ascii(*lever, spots, marks);
    if (const auto* body = std::get_if<problems::BodyPicture>(&question.picture))
        out << '\n' << draw_in_ascii(*body, marks);
}

void show_marking(const Question& question, const problems::Marking& marking, std::ostream& out) {
    out << wrapped(marking.feedback, "  ");
    if (marking.drawn_wrong && marking.drawn_right)
        show_picture(
            question, {},
            {{'x', "you took", *marking.drawn_wrong}, {'+', "it has to be", *marking.drawn_right}},
            out);
    if (!marking.follow_up.empty())
        out << wrapped(marking.follow_up, "  ");
}

/// One question in conversation: hints, steps, attempts.
class Asking {
public:
    Asking(const problems::Bank& bank, const Question& question, const AskRules& rules,
           const Streams& streams, const OnAttempt& on_attempt)
        : bank_(bank), question_(question), rules_(rules), streams_(streams),
          on_attempt_(on_attempt), hints_(question, rules.done_steps) {}

    Ended run() {
        show_question(question_, streams_.out);
        for (std::size_t i = 0; i < std::min(rules_.done_steps, question_.steps.size()); ++i)
            show_step(question_, i, streams_.out);
        while (true) {
            std::string line;
            streams_.out << fmt::format("\n({})\n", keys());
            if (!read_line(streams_, how_to_answer(question_), line))
                return Ended::quit;
            if (line.empty())
                continue;
            if (const auto ended = rules_.help ? with_help(line) : without_help(line))
                return *ended;
        }
    }

private:
    const char* keys() const {
        return rules_.help ? "h hint, s step by step, w worked answer, n next, q quit"
                           : "? if you do not know, q quit";
    }

    std::optional<Ended> with_help(const std::string& line) {
        if (line == "q")
            return Ended::quit;
        if (line == "n")
            return Ended::skipped;
        if (line == "h") {
            hints_.give(streams_.out);
            return std::nullopt;
        }
        if (line == "w" || line == "?") {
            show_solution(question_, streams_.out);
            tell_gave_up();
            return Ended::answered;
        }
        if (line == "s" && !question_.steps.empty()) {
            if (!step_by_step(question_, rules_.done_steps, streams_))
                return Ended::quit;
            steps_done_ = true;
            return std::nullopt;
        }
        return answer(line);
    }

    std::optional<Ended> without_help(const std::string& line) {
        if (line == "q")
            return Ended::quit;
        if (line != "?")
            return answer(line);
        if (rules_.explain)
            show_solution(question_, streams_.out);
        else
            streams_.out << "  Noted.\n";
        tell_gave_up();
        return Ended::answered;
    }

    std::optional<Ended> answer(const std::string& line) {
        const problems::Marking marking = problems::mark(bank_, question_, line);
        show_marking(question_, marking, streams_.out);
        if (marking.verdict == problems::Verdict::unreadable)
            return std::nullopt;
        tell({++attempts_, line, marking, false, hints_.given(), help()});
        if (marking.correct || !rules_.help || question_.kind != Kind::numeric)
            return Ended::answered;
        return std::nullopt;
    }

    void tell_gave_up() { tell({++attempts_, "", {}, true, hints_.given(), help()}); }

    void tell(const Attempt& attempt) {
        if (on_attempt_)
            on_attempt_(attempt);
    }

    /// Share of the solution that stood there: a step whose way is told counts half.
    double help() const {
        if (question_.steps.empty())
            return 0.0;
        const auto steps = static_cast<double>(question_.steps.size());
        const double shown =
            static_cast<double>(std::min(rules_.done_steps, question_.steps.size()));
        const double hinted = static_cast<double>(hints_.given()) / 2.0;
        const double stepped = steps_done_ ? (steps - shown) / 2.0 : 0.0;
        return std::min(1.0, (shown + std::max(hinted, stepped)) / steps);
    }

    const problems::Bank& bank_;
    const Question& question_;
    const AskRules& rules_;
    const Streams& streams_;
    const OnAttempt& on_attempt_;
    Hints hints_;
    int attempts_ = 0;
    bool steps_done_ = false;
};

} // namespace

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
    show_picture(question, question.spots, {}, out);
    for (std::size_t i = 0; i < question.choices.size(); ++i)
        out << wrapped(fmt::format("{}  {}", problems::letter(i), question.choices[i].text), "  ");
}

Ended ask_question(const problems::Bank& bank, const Question& question, const AskRules& rules,
                   const Streams& streams, const OnAttempt& on_attempt) {
    return Asking(bank, question, rules, streams, on_attempt).run();
}

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
        const Ended ended =
            ask_question(bank, question, {done_steps}, streams, [&](const Attempt& attempt) {
                right_ones +=
                    attempt.number == 1 && attempt.hints == 0 && attempt.marking.correct ? 1 : 0;
            });
        if (ended == Ended::quit)
            break;
        asked += ended == Ended::answered ? 1 : 0;
    }
    streams.out << fmt::format("\n{} answered, {} right at the first try without a hint.\n", asked,
                               right_ones);
    return ExitStatus::ok;
}

ExitStatus practise_one(const problems::Bank& bank, const Question& question,
                        std::size_t done_steps, const Streams& streams) {
    ask_question(bank, question, {done_steps}, streams, {});
    return ExitStatus::ok;
}

void show_worked(const Question& question, const Streams& streams) {
    show_question(question, streams.out);
    streams.out << "\nWorked answer\n";
    show_solution(question, streams.out);
}

} // namespace steelyard::cli

#include "cli/study/practice.h"

#include "cli/reports/body_ascii.h"
#include "cli/reports/lever_ascii.h"
#include "cli/study/terminal.h"
#include "learner/study/session.h"
#include "problems/bank/answer_kinds.h"
#include "problems/question/paper.h"
#include "problems/question/question_writer.h"
#include "problems/question/worked_steps.h"

#include <fmt/core.h>

#include <algorithm>
#include <ostream>

namespace steelyard::cli {

namespace {

using problems::Question;

/// Half of a step: what to do, or how it comes out.
void show_half_step(const Question& question, std::size_t half, std::ostream& out) {
    const problems::Step& step = question.steps[half / 2];
    if (half % 2 == 0)
        out << wrapped(fmt::format("{}. {}", half / 2 + 1, step.says), "  ");
    else
        out << wrapped(problems::step_line(step), "     ");
}

void show_steps(const Question& question, std::ostream& out) {
    for (std::size_t half = 0; half < 2 * question.steps.size(); ++half)
        show_half_step(question, half, out);
}

void show_answer(const Question& question, std::ostream& out) {
    out << wrapped(fmt::format("Answer: {}", question.answer_text), "  ");
}

std::string_view how_to_answer(const Question& question) {
    return problems::row_of(question).at_terminal;
}

void show_picture(const Question& question, const std::vector<problems::Spot>& spots,
                  const std::vector<MarkedLine>& marks, std::ostream& out) {
    const int columns = terminal_columns(out);
    if (const auto* lever = std::get_if<problems::LeverPicture>(&question.picture))
        out << '\n' << draw_in_ascii(*lever, spots, columns, marks);
    if (const auto* body = std::get_if<problems::BodyPicture>(&question.picture))
        out << '\n' << draw_in_ascii(*body, columns, marks);
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

/// One question in conversation: reads lines and shows what has come to stand there.
class Conversation {
public:
    Conversation(const problems::Bank& bank, learner::Asking& asking, const Streams& streams,
                 const Keep& keep)
        : bank_(bank), asking_(asking), streams_(streams), keep_(keep) {}

    Ended run() {
        show_question(asking_.question, streams_.out);
        show_news();
        std::optional<Ended> ended;
        while (!ended && !asking_.finished) {
            std::string line;
            streams_.out << fmt::format("\n({})\n", keys());
            if (!read_line(streams_, how_to_answer(asking_.question), line))
                return Ended::quit;
            ended = obey(line);
        }
        return ended.value_or(Ended::finished);
    }

private:
    std::string keys() const {
        if (!asking_.rules.help)
            return "? if you do not know, q quit";
        std::string keys = "h hint, ";
        if (can_go_by_steps(asking_))
            keys += "s step by step, ";
        keys += "w worked answer, ";
        if (may_skip(asking_))
            keys += "n next, ";
        return keys + "q quit";
    }

    std::optional<Ended> obey(const std::string& line) {
        if (line == "q")
            return Ended::quit;
        if (line == "s" && can_go_by_steps(asking_))
            return ask_steps();
        if (const auto aside = aside_of(asking_, line))
            return obey(*aside);
        if (!line.empty())
            return take_answer(line);
        return std::nullopt;
    }

    std::optional<Ended> obey(learner::Aside aside) {
        switch (aside) {
        case learner::Aside::skip:
            return Ended::skipped;
        case learner::Aside::hint:
            show_hint();
            return std::nullopt;
        case learner::Aside::give_up:
            break;
        }
        give_up(asking_);
        const bool kept = keep_();
        if (asking_.rules.explains)
            show_solution(asking_.question, streams_.out);
        else if (kept)
            streams_.out << "  Noted.\n";
        return kept ? Ended::finished : Ended::quit;
    }

    void show_hint() {
        if (has_hint(asking_)) {
            give_hint(asking_);
            return show_news();
        }
        streams_.out << wrapped(
            asking_.question.steps.empty() && !problems::choices_of(asking_.question).empty()
                ? "No hint but this: say in your own words what each choice means."
                : "Those were all the steps.",
            "  ");
    }

    std::optional<Ended> take_answer(const std::string& line) {
        const std::size_t before = asking_.attempts.size();
        mark_answer(bank_, asking_, line);
        const bool kept = asking_.attempts.size() == before || keep_();
        show_marking(asking_.question, *asking_.told, streams_.out);
        if (!asking_.finished) {
            show_news();
        } else if (!asking_.told->correct && asking_.rules.explains) {
            show_steps(asking_.question, streams_.out);
            show_answer(asking_.question, streams_.out);
        }
        return kept ? std::nullopt : std::optional(Ended::quit);
    }

    /// The learner does the steps one by one, each marked by itself; q leads back to the answer.
    std::optional<Ended> ask_steps() {
        go_by_steps(asking_);
        show_news();
        while (has_own_step(asking_)) {
            const problems::Step& step = asking_.question.steps[asking_.open_steps];
            for (std::size_t i = 0; i < step.options.size(); ++i)
                streams_.out << fmt::format("       {}  {}\n", problems::letter(i),
                                            step.options[i]);
            std::string line;
            if (!read_line(streams_, step_prompt(step), line))
                return Ended::quit;
            if (line == "q")
                return std::nullopt;
            if (line.empty())
                continue;
            mark_own_step(asking_, line);
            streams_.out << wrapped(asking_.step_told->feedback, "     ");
            shown_ = std::max(shown_, 2 * asking_.open_steps); // the feedback said how it came out
            show_news();
        }
        return std::nullopt;
    }

    static std::string step_prompt(const problems::Step& step) {
        if (!step.options.empty())
            return "     Which";
        return fmt::format("     In {}", step.unit.empty() ? "plain numbers" : step.unit);
    }

    /// Shows what stands there and was not shown yet.
    void show_news() {
        for (; shown_ < halves_shown(asking_); ++shown_)
            show_half_step(asking_.question, shown_, streams_.out);
    }

    const problems::Bank& bank_;
    learner::Asking& asking_;
    const Streams& streams_;
    const Keep& keep_;
    std::size_t shown_ = 0; ///< halves of steps
};

learner::AskRules rules_of_practice(std::size_t done_steps) {
    learner::AskRules rules;
    rules.done_steps = done_steps;
    rules.may_skip = true;
    return rules;
}

} // namespace

void show_solution(const Question& question, std::ostream& out) {
    show_steps(question, out);
    if (!question.reason.empty())
        out << wrapped(question.reason, "  ");
    show_answer(question, out);
}

void show_question(const Question& question, std::ostream& out) {
    out << fmt::format("\n[{}]  difficulty {} of 5\n", question.code, question.difficulty);
    out << wrapped(question.prompt);
    show_picture(question, problems::spots_of(question), {}, out);
    const std::vector<problems::Choice>& choices = problems::choices_of(question);
    for (std::size_t i = 0; i < choices.size(); ++i)
        out << wrapped(fmt::format("{}  {}", problems::letter(i), choices[i].text), "  ");
}

Ended converse(const problems::Bank& bank, learner::Asking& asking, const Streams& streams,
               const Keep& keep) {
    return Conversation(bank, asking, streams, keep).run();
}

ExitStatus practise(const problems::Bank& bank, const problems::PaperPlan& plan,
                    std::size_t done_steps, const Streams& streams) {
    const auto questions = problems::make_paper(bank, plan);
    if (!questions) {
        streams.err << questions.error().message << '\n';
        return ExitStatus::bad_input;
    }
    int answered = 0;
    int right = 0;
    for (const Question& question : *questions) {
        learner::Asking asking = learner::begin_asking(question, rules_of_practice(done_steps));
        const Ended ended = converse(bank, asking, streams, [] { return true; });
        answered += asking.attempts.empty() ? 0 : 1;
        right += right_at_first(asking) ? 1 : 0;
        if (ended == Ended::quit)
            break;
    }
    streams.out << fmt::format("\n{}.\n", learner::right_text(right, answered));
    return ExitStatus::ok;
}

ExitStatus practise_one(const problems::Bank& bank, const Question& question,
                        std::size_t done_steps, const Streams& streams) {
    learner::Asking asking = learner::begin_asking(question, rules_of_practice(done_steps));
    converse(bank, asking, streams, [] { return true; });
    return ExitStatus::ok;
}

void show_worked(const Question& question, const Streams& streams) {
    show_question(question, streams.out);
    streams.out << "\nWorked answer\n";
    show_solution(question, streams.out);
}

} // namespace steelyard::cli

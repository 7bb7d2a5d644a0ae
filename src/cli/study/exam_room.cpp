#include "cli/study/exam_room.h"

#include "cli/reports/exam_beam.h"
#include "cli/study/practice.h"
#include "cli/study/terminal.h"
#include "learner/record/exam_record.h"
#include "learner/time/wall_clock.h"
#include "problems/marking/marking.h"

#include <fmt/format.h>

#include <charconv>
#include <iostream>
#include <poll.h>
#include <unistd.h>
#include <utility>

namespace steelyard::cli {

namespace {

/// The clock is kept so often while nothing is typed [ms].
constexpr int kHeartbeat_ms = 5000;

/// A question's number as it was typed, from 1; 0 when it is none.
std::size_t number_of(std::string_view text, std::size_t most) {
    std::size_t number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    const bool all = error == std::errc() && end == text.data() + text.size();
    return all && number <= most ? number : 0;
}

} // namespace

bool ExamRoom::run() {
    tick(exam_, learner::wall_clock());
    while (!exam_.finished) {
        if (show_again_)
            show();
        show_again_ = false;
        std::string line;
        if (!read(line)) {
            if (!exam_.finished && !failed_)
                streams_.out << "\nThe exam waits for you: `steelyard exam` goes on.\n";
            break;
        }
        switch (obey(line)) {
        case Go::on:
            break;
        case Go::leave:
            if (keep())
                streams_.out << "The exam waits for you: `steelyard exam` goes on.\n";
            return false;
        case Go::ended:
            finish(exam_, learner::wall_clock());
            break;
        }
        if (!keep())
            return false;
        if (std::exchange(at_the_end_, false))
            streams_.out << "Kept. That was the last one: l shows the beam, e ends.\n";
    }
    if (exam_.finished && exam_.left_ms() == 0)
        streams_.out << "\nTime is up.\n";
    return exam_.finished;
}

void ExamRoom::show() {
    const learner::ExamItem& item = exam_.items[exam_.at];
    streams_.out << fmt::format("\n--- Question {} of {}   {} left   {} answered{}\n", exam_.at + 1,
                                exam_.items.size(), learner::minutes_text(exam_.left_ms()),
                                exam_.answered(), item.come_back ? "   to come back to" : "");
    const auto question = problems::question_from_code(*study_.shelf.bank, item.code);
    if (!question) {
        streams_.err << question.error().message << '\n';
        return;
    }
    show_question(*question, streams_.out);
    if (!item.answer.empty())
        streams_.out << fmt::format("Your answer so far: {}\n", item.answer);
}

/// Waits for a line and keeps the clock meanwhile. @return false when the input or the time ends
bool ExamRoom::read(std::string& line) {
    streams_.out
        << "\n(n next, p back, m come back to it, g 12 go to question 12, l the beam, e end,\n"
           " q save and exit)\n"
           "Your answer: "
        << std::flush;
    if (&streams_.in == &std::cin && isatty(STDIN_FILENO) != 0)
        while (true) {
            pollfd input{STDIN_FILENO, POLLIN, 0};
            const auto wait_ms =
                static_cast<int>(std::min<std::int64_t>(kHeartbeat_ms, exam_.left_ms() + 1));
            if (poll(&input, 1, wait_ms) > 0)
                break;
            tick(exam_, learner::wall_clock());
            if (!keep() || exam_.finished)
                return false;
        }
    if (!std::getline(streams_.in, line))
        return false;
    while (!line.empty() && (line.back() == '\r' || line.back() == ' '))
        line.pop_back();
    tick(exam_, learner::wall_clock());
    return !exam_.finished;
}

ExamRoom::Go ExamRoom::obey(const std::string& line) {
    const learner::Clock now = learner::wall_clock();
    const std::size_t last = exam_.items.size() - 1;
    if (line == "q")
        return Go::leave;
    if (line == "e")
        return ask_to_end();
    if (line == "l") {
        list();
        return Go::on;
    }
    if (line == "m") {
        const bool wanted = !exam_.items[exam_.at].come_back;
        note_to_come_back(exam_, exam_.at, wanted, now);
        streams_.out << (wanted ? "A weight hangs below it: to come back to.\n"
                                : "The weight is off.\n");
        return Go::on;
    }
    if (line.empty() || line == "n" || line == "p") {
        go_to(exam_, line == "p" ? exam_.at - (exam_.at > 0 ? 1 : 0) : exam_.at + 1, now);
        show_again_ = true;
        return exam_.at == last && exam_.answered() == static_cast<int>(last) + 1 && line != "p"
                   ? ask_to_end()
                   : Go::on;
    }
    if (line.front() == 'g' && line.size() > 1) {
        const std::size_t number = number_of(
            std::string_view(line).substr(line.find_first_not_of("g ")), exam_.items.size());
        if (number == 0) {
            streams_.out << fmt::format("The questions are 1 to {}.\n", exam_.items.size());
            return Go::on;
        }
        go_to(exam_, number - 1, now);
        show_again_ = true;
        return Go::on;
    }
    take_answer(line);
    return Go::on;
}

void ExamRoom::take_answer(const std::string& line) {
    const learner::ExamItem& item = exam_.items[exam_.at];
    const auto question = problems::question_from_code(*study_.shelf.bank, item.code);
    if (question) {
        const problems::Marking marking =
            problems::mark(*study_.shelf.bank, *question, line, {study_.course().exam.calculator});
        // Whether it is right stays hidden; that it cannot be read must not.
        if (marking.verdict == problems::Verdict::unreadable) {
            streams_.out << wrapped(marking.feedback);
            return;
        }
    }
    give_answer(exam_, line, learner::wall_clock());
    if (exam_.at + 1 < exam_.items.size()) {
        go_to(exam_, exam_.at + 1, learner::wall_clock());
        show_again_ = true;
    } else {
        at_the_end_ = true; // said once it is kept
    }
}

void ExamRoom::list() const {
    streams_.out << '\n';
    show_beam(exam_, streams_.out);
}

ExamRoom::Go ExamRoom::ask_to_end() {
    const auto open = static_cast<int>(exam_.items.size()) - exam_.answered();
    std::string line;
    if (!read_line(streams_,
                   open > 0 ? fmt::format("{} without an answer. End the exam? y or n", open)
                            : std::string("All answered. End the exam? y or n"),
                   line))
        return Go::leave;
    return line == "y" ? Go::ended : Go::on;
}

bool ExamRoom::keep() {
    const auto kept = keep_exam(study_.record, study_.learner.id, exam_);
    tell_notices(study_.record, streams_);
    if (kept)
        return true;
    tell(kept.error(), streams_);
    failed_ = true;
    return false;
}

} // namespace steelyard::cli

#include "cli/study/pages.h"

#include "cli/study/terminal.h"
#include "lesson/lesson_quantity.h"
#include "setup/files/data_folder.h"
#include "setup/muscle/muscle_file.h"

#include <fmt/format.h>

#include <optional>
#include <ostream>

namespace steelyard::cli {

namespace {

using lesson::LessonStep;
using lesson::QuantitySource;

void show_page(const LessonStep& step, const QuantitySource& source, setup::UnitSystem units,
               std::size_t number, std::ostream& out) {
    const auto filled = [&](const std::string& text) {
        return lesson::filled_text(text, source, units).value_or("");
    };
    out << wrapped(fmt::format("{}. {}", number, filled(step.prompt)), "  ");
    std::string choices;
    for (const std::string& choice : step.prediction.choices)
        choices += (choices.empty() ? "" : " / ") + filled(choice);
    if (!choices.empty())
        out << wrapped(choices, "     ");
    if (!step.reveal.empty())
        out << wrapped(filled(step.reveal), "     ");
}

} // namespace

void show_pages(const std::string& skill_id, setup::UnitSystem units, std::ostream& out) {
    const auto lesson = lesson::read_lesson(setup::data_folder() / "assets" / "pages" /
                                            (skill_id + std::string(lesson::kLessonEnding)));
    const auto muscles = setup::shipped_muscles();
    if (!lesson || !muscles) {
        out << wrapped(setup::to_text(lesson ? muscles.error() : lesson.error()));
        return;
    }
    out << "\nFirst the idea:\n";
    std::optional<lesson::SolvedStage> before;
    for (std::size_t i = 0; i < lesson->steps.size(); ++i) {
        auto solved = lesson::solve_stage(lesson->steps[i].stage);
        if (!solved)
            return; // every stage of a lesson that was read can be solved
        show_page(lesson->steps[i], {&*solved, before ? &*before : nullptr, &*muscles}, units,
                  i + 1, out);
        before = std::move(*solved);
    }
}

} // namespace steelyard::cli

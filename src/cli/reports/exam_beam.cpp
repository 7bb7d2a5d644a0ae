#include "cli/reports/exam_beam.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <ostream>
#include <string>

namespace steelyard::cli {

namespace {

constexpr std::size_t kPerLine = 20;
constexpr std::size_t kNumbered = 5; ///< every fifth notch has its number

std::string without_end_blanks(std::string line) {
    line.erase(line.find_last_not_of(' ') + 1);
    return line;
}

/// @param signs    one for each question
/// @param present  the question on the screen; empty in a report
void write_beam(const learner::Exam& exam, const std::string& signs,
                std::optional<std::size_t> present, std::ostream& out) {
    constexpr std::size_t kPitch = 3; // room for "100" between its neighbours
    for (std::size_t first = 0; first < signs.size(); first += kPerLine) {
        const std::size_t end = std::min(first + kPerLine, signs.size());
        const std::string blank(kPitch * kPerLine + kPitch, ' ');
        std::string numbers = blank;
        std::string notches = blank;
        std::string weights = blank;
        for (std::size_t i = first; i < end; ++i) {
            const std::size_t at = kPitch * (i - first) + kPitch - 1;
            if (present == i) {
                numbers[at] = 'v'; // in place of its number
            } else if ((i + 1) % kNumbered == 0) {
                const std::string number = std::to_string(i + 1);
                numbers.replace(at + 1 - number.size(), number.size(), number);
            }
            notches[at] = signs[i];
            if (exam.items[i].come_back)
                weights[at] = 'o';
        }
        out << without_end_blanks(numbers) << '\n' << without_end_blanks(notches) << '\n';
        out << std::string(kPitch * (end - first), '=') << '\n';
        out << without_end_blanks(weights) << '\n';
    }
}

} // namespace

void show_beam(const learner::Exam& exam, std::ostream& out) {
    std::string signs;
    for (const learner::ExamItem& item : exam.items)
        signs += item.answer.empty() ? '.' : '|';
    write_beam(exam, signs, exam.at, out);
    out << fmt::format("v here, | answered, . not yet, o to come back to; {} left.\n",
                       learner::minutes_text(exam.left_ms()));
}

void show_beam(const learner::Exam& exam, const learner::ExamReport& report, std::ostream& out) {
    std::string signs(exam.items.size(), ' ');
    for (const learner::ExamMark& mark : report.marks)
        signs[mark.item] = mark.right ? '|' : mark.answered ? 'x' : '.';
    write_beam(exam, signs, std::nullopt, out);
    const auto count = [&](char sign) { return std::count(signs.begin(), signs.end(), sign); };
    out << fmt::format("| right: {}, x wrong: {}, . no answer: {}.\n", count('|'), count('x'),
                       count('.'));
}

} // namespace steelyard::cli

#include "app/exam/offer_view.h"

#include "app/look/text_styles.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "app/widgets/column_pen.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>
#include <vector>

namespace steelyard::app {

namespace {

using scene::Role;
using scene::TextSize;

std::string offer_text(const learner::Exam& exam) {
    if (exam.used_ms > 0)
        return fmt::format("It goes on where you left it: {} of {} answered, {} left. The time in "
                           "between does not count.",
                           exam.answered(), exam.items.size(),
                           learner::minutes_text(exam.left_ms()));
    return fmt::format("{} questions, {} minutes, {} right to pass. No feedback until the end. You "
                       "may leave a question and come back; what has no answer at the end is "
                       "wrong.",
                       exam.items.size(), exam.allowed_ms / learner::kMinute_ms,
                       learner::pass_mark(exam.pass_share, static_cast<int>(exam.items.size())));
}

/// Skills of an exam with how many questions each has, most first.
std::vector<std::pair<std::string, int>> asked_skills(const learner::Exam& exam) {
    std::vector<std::pair<std::string, int>> asked;
    for (const learner::ExamItem& item : exam.items) {
        const auto known = std::find_if(asked.begin(), asked.end(),
                                        [&](const auto& one) { return one.first == item.skill; });
        if (known == asked.end())
            asked.emplace_back(item.skill, 1);
        else
            ++known->second;
    }
    std::stable_sort(asked.begin(), asked.end(),
                     [](const auto& a, const auto& b) { return a.second > b.second; });
    return asked;
}

/// What is asked, a line for each skill.
void draw_asked(const Style& style, const Layout& layout, const learner::Course& course,
                const learner::Exam& exam) {
    const double top_px = style.px(64.0F);
    Layout stage;
    stage.column_at_px = {0.0, top_px};
    stage.column_px = layout.stage_px - scene::Point(0.0, top_px);
    begin_area("asked", stage.column_at_px, stage.column_px, true);
    ColumnPen pen(style, stage);
    pen.skip(56.0F);
    pen.paragraph({TextSize::key, true, Role::ink}, exam.title);
    pen.skip(-8.0F);
    pen.paragraph(kStrong, "What is asked");
    pen.skip(8.0F);
    for (const auto& [id, questions] : asked_skills(exam)) {
        const auto skill = course.find(id);
        draw_text(pen.list(), style, kStrong, {pen.left(), pen.y()}, std::to_string(questions));
        const std::string title = skill ? course.skills[*skill].skill->title : id;
        const float indent_px = style.px(36.0F);
        draw_text(pen.list(), style, kBody, {pen.left() + indent_px, pen.y()},
                  shortened(style, kBody, title, pen.width() - indent_px));
        pen.skip(26.0F);
    }
    pen.finish(16.0F);
    end_area();
}

} // namespace

OfferWish draw_offer(const Style& style, const Layout& layout, const learner::Course& course,
                     const learner::Exam& exam, const std::string& trouble) {
    OfferWish wish = OfferWish::none;
    const bool goes_on = exam.used_ms > 0;
    if (trouble.empty())
        draw_asked(style, layout, course, exam);
    begin_area("column", layout.column_at_px, layout.column_px, true);
    ColumnPen pen(style, layout);
    pen.skip(layout.narrow ? 28.0F : 46.0F);
    pen.paragraph({TextSize::reading, true, Role::ink}, "Mock exam");
    pen.skip(8.0F);
    pen.paragraph(kBody, trouble.empty() ? offer_text(exam) : trouble);
    pen.skip(24.0F);
    if (goes_on) {
        if (word_button(style, "another", {pen.left(), pen.y()}, "Discard and start new", false))
            wish = OfferWish::another;
        pen.skip(28.0F);
    }
    if (word_button(style, "leave", {pen.left(), pen.y()}, "Back to practice", false))
        wish = OfferWish::leave;
    pen.skip(20.0F);
    if (column_button(style, layout, pen, goes_on ? "Go on" : "Begin; the clock runs"))
        wish = OfferWish::begin;
    end_area();
    return wish;
}

} // namespace steelyard::app

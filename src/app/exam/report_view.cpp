#include "app/exam/report_view.h"

#include "app/exam/beam_view.h"
#include "app/look/text_styles.h"
#include "app/platform/key.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"

#include <fmt/format.h>

#include <algorithm>

namespace steelyard::app {

namespace {

using scene::Role;
using scene::TextSize;

void open_next_mistake(ReportScreen& screen, const learner::Exam& exam) {
    const auto& marks = screen.report.marks;
    const std::size_t from = screen.shown ? *screen.shown + 1 : 0;
    for (std::size_t i = 0; i < marks.size(); ++i) {
        const std::size_t at = (from + i) % marks.size();
        if (!marks[at].right)
            return open_mark(screen, exam, at);
    }
}

/// @return true when the report is to be left
bool read_keys(const std::vector<KeyPress>& keys, const learner::Exam& exam, ReportScreen& screen) {
    const std::size_t count = screen.report.marks.size();
    bool leave = false;
    for (const KeyPress& key : keys) {
        if (key.key == key::kEscape) {
            leave = !screen.shown;
            screen.shown.reset();
        } else if (key.key == key::kN) {
            open_next_mistake(screen, exam);
        } else if (count > 0 && key.key == key::kRight) {
            open_mark(screen, exam, screen.shown ? (*screen.shown + 1) % count : 0);
        } else if (count > 0 && key.key == key::kLeft) {
            open_mark(screen, exam, screen.shown ? (*screen.shown + count - 1) % count : count - 1);
        }
    }
    return leave;
}

/// A skill's bar with its numbers and words. @return where the next one begins
void draw_score(const Style& style, const learner::Course& course, const learner::SkillScore& score,
                ColumnPen& pen) {
    const auto skill = course.find(score.skill);
    const std::string title = skill ? course.skills[*skill].skill->title : score.skill;
    const float bar_px = style.px(120.0F);
    const float base = pen.y();
    const ImVec2 corner{pen.left(), base - style.px(11.0F)};
    const float share = static_cast<float>(score.right) / static_cast<float>(score.of);
    pen.list().AddRectFilled(corner, {corner.x + bar_px, corner.y + style.px(12.0F)},
                             style.mark(Role::panel), 3.0F);
    if (share > 0.0F)
        pen.list().AddRectFilled(corner, {corner.x + share * bar_px, corner.y + style.px(12.0F)},
                                 style.mark(Role::right), 3.0F);
    pen.list().AddRect(corner, {corner.x + bar_px, corner.y + style.px(12.0F)},
                       style.mark(Role::quiet_ink), 3.0F);
    draw_text(pen.list(), style, kBody, {pen.left() + bar_px + style.px(14.0F), base},
              fmt::format("{} of {}", score.right, score.of));
    const float title_px = bar_px + style.px(80.0F);
    draw_text(pen.list(), style, kBody, {pen.left() + title_px, base},
              shortened(style, kBody, title, pen.width() - title_px));
    pen.skip(27.0F);
}

std::string numbers_text(const std::vector<std::size_t>& items) {
    std::string text;
    for (const std::size_t item : items)
        text += fmt::format("{}{}", text.empty() ? "" : ", ", item + 1);
    return text;
}

void draw_by_skill(const Style& style, const Layout& layout, float top_px,
                   const learner::Course& course, const learner::ExamReport& report) {
    Layout stage;
    stage.column_at_px = {0.0, top_px};
    stage.column_px = layout.stage_px - scene::Point(0.0, top_px);
    begin_area("by_skill", stage.column_at_px, stage.column_px, true);
    ColumnPen pen(style, stage);
    pen.skip(36.0F);
    pen.paragraph(kStrong, "By skill");
    pen.skip(6.0F);
    for (const learner::SkillScore& score : report.by_skill)
        draw_score(style, course, score, pen);
    pen.finish(16.0F);
    end_area();
}

/// A question that could not be made again has no mark to open.
void open_item(ReportScreen& screen, const learner::Exam& exam, std::size_t item) {
    const auto& marks = screen.report.marks;
    const auto mark =
        std::find_if(marks.begin(), marks.end(),
                     [item](const learner::ExamMark& one) { return one.item == item; });
    if (mark != marks.end())
        open_mark(screen, exam, static_cast<std::size_t>(mark - marks.begin()));
}

/// The beam over the report and what its shapes mean. @return how far down they reach [px]
float draw_report_beam(const Style& style, const Layout& layout, const learner::Exam& exam,
                       ReportScreen& screen) {
    const std::vector<Notch> notches = notches_of(exam, screen.report);
    const BeamLayout beam = lay_out_beam(style, layout, notches.size());
    const float legend_px = style.px(24.0F);
    begin_beam_area(layout, beam, legend_px);
    std::optional<double> pointer;
    if (screen.shown)
        pointer = static_cast<double>(screen.report.marks[*screen.shown].item);
    if (const auto pressed = draw_beam(style, beam, notches, pointer, false).go_to)
        open_item(screen, exam, *pressed);
    const float foot_px = beam.y(kBeamHeight_px) + legend_px;
    draw_beam_legend(style, {beam.left_px, foot_px - style.px(8.0F)}, notches);
    end_area();
    return foot_px;
}

void draw_summary(const Desk& desk, const learner::Exam& exam, const ReportScreen& screen,
                  ColumnPen& pen) {
    const learner::ExamReport& report = screen.report;
    pen.skip(28.0F);
    pen.line({TextSize::key, true, Role::ink}, fmt::format("{} of {}", report.right, report.of));
    pen.skip(34.0F);
    pen.paragraph(kBody, result_text(exam, report));
    for (const std::string& fault : report.faults)
        pen.paragraph(kFault, "Left out: " + fault);
    pen.skip(10.0F);
    if (!screen.foreseen.empty())
        pen.paragraph(kCaption, screen.foreseen);
    pen.paragraph(kCaption, say(desk.outlook().ready, desk.course()));
    if (report.by_rule.empty())
        return;
    pen.skip(18.0F);
    pen.paragraph(kStrong, "Mistakes that have a name");
    for (const learner::RuleCount& rule : report.by_rule) {
        const problems::WrongRule* known = desk.course().bank->find_wrong_rule(rule.rule);
        pen.paragraph(kBody, fmt::format("{}: question {}", known ? known->title : rule.rule,
                                         numbers_text(rule.items)));
    }
}

} // namespace

std::string result_text(const learner::Exam& exam, const learner::ExamReport& report) {
    return fmt::format("{}: {} of {} right in {} of {} minutes; {} needed.",
                       report.passed ? "Passed" : "Not passed", report.right, report.of,
                       learner::minutes_text(exam.used_ms), exam.allowed_ms / learner::kMinute_ms,
                       report.pass);
}

void open_mark(ReportScreen& screen, const learner::Exam& exam, std::size_t mark) {
    const learner::ExamMark& one = screen.report.marks[mark];
    QuestionModel model;
    model.asking = learner::asked_before(one.question);
    if (one.answered)
        model.asking.told = one.marking;
    take_answer(model, exam.items[one.item].answer);
    QuestionWords words;
    words.above = fmt::format("Question {} of {}{}", one.item + 1, exam.items.size(),
                              one.answered ? "" : ": you gave no answer");
    open_question(screen.question, std::move(model), std::move(words));
    screen.question.wants_keyboard = false;
    screen.shown = mark;
}

ExamFrame run_report(const Style& style, const Layout& layout, const Desk& desk,
                     const learner::Exam& exam, const FrameInput& input, ReportScreen& screen) {
    ExamFrame frame;
    frame.drawing.size_px = layout.stage_px;
    frame.left = read_keys(*input.keys, exam, screen);
    const float beam_px = draw_report_beam(style, layout, exam, screen);
    QuestionFrame asked;
    if (screen.shown) {
        draw_question_stage(style, layout, beam_px, input.pointer, screen.question, asked);
        frame.drawing = std::move(asked.drawing);
    } else {
        draw_by_skill(style, layout, beam_px, desk.course(), screen.report);
    }
    begin_area("column", layout.column_at_px, layout.column_px, true);
    ColumnPen pen(style, layout);
    pen.skip(layout.narrow ? 28.0F : 46.0F);
    if (screen.shown)
        draw_question(style, *desk.course().bank, pen, screen.question, asked);
    else
        draw_summary(desk, exam, screen, pen);
    pen.skip(26.0F);
    if (word_button(style, "mistake", {pen.left(), pen.y()}, "Next mistake (N)", false))
        open_next_mistake(screen, exam);
    pen.skip(24.0F);
    if (column_button(style, layout, pen,
                      screen.shown ? "Back to the report" : "Back to practice")) {
        frame.left = !screen.shown;
        screen.shown.reset();
    }
    end_area();
    return frame;
}

} // namespace steelyard::app

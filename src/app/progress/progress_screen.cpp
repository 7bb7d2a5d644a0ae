#include "app/progress/progress_screen.h"

#include "app/look/text_styles.h"
#include "app/platform/key.h"
#include "app/progress/stair_layout.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "app/widgets/column_pen.h"
#include "learner/time/wall_clock.h"

#include <fmt/format.h>

#include <algorithm>

namespace steelyard::app {

namespace {

using learner::Stair;
using scene::Role;
using scene::TextSize;

constexpr int kRulesShown = 3;
constexpr int kExamsShown = 5;
constexpr int kAnswersShown = 12;

/// Index of the skill of the chosen step, of which there is one.
std::size_t skill_of_chosen(const StairLayout& stairs, const Desk& desk,
                            const ProgressScreen& screen) {
    return desk.outlook().stairs[stairs.steps[screen.chosen].stair].skill;
}

void read_keys(const std::vector<KeyPress>& keys, const StairLayout& stairs, Desk& desk,
               const learner::Clock& now, ProgressScreen& screen, ProgressFrame& frame) {
    for (const KeyPress& key : keys)
        if (key.key == key::kEscape)
            frame.left = true;
        else if (key.key == key::kX)
            screen.remark = desk.export_record(now);
        else if (key.key == key::kR)
            frame.redo_mistakes = true;
        else if (key.key == key::kM)
            frame.redo_marked = true;
        else if (key.key == key::kO && !screen.answers.empty())
            frame.reopen = screen.answers.front();
        else if (stairs.steps.empty())
            continue;
        else if (key.key == key::kE)
            frame.explain = skill_of_chosen(stairs, desk, screen);
        else if (key.key == key::kLeft || key.key == key::kRight)
            screen.chosen = neighbour(stairs, screen.chosen, key.key == key::kRight ? 1 : -1, 0);
        else if (key.key == key::kUp || key.key == key::kDown)
            screen.chosen = neighbour(stairs, screen.chosen, 0, key.key == key::kUp ? 1 : -1);
        else if (key.key == key::kEnter || key.key == key::kKeypadEnter)
            frame.practise = skill_of_chosen(stairs, desk, screen);
}

/// A step: filled from the left to its mastery, its title, its word. @return true when pressed
bool draw_step(const Style& style, const std::string& title, const Stair& stair, ImVec2 corner,
               const scene::Point& size_px, bool chosen, int id) {
    ImGui::PushID(id);
    const bool pressed = press_area(
        style, "step", corner, {static_cast<float>(size_px.x()), static_cast<float>(size_px.y())});
    ImGui::PopID();
    const bool hovered = ImGui::IsItemHovered();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const auto width_px = static_cast<float>(size_px.x());
    const ImVec2 far_corner{corner.x + width_px, corner.y + static_cast<float>(size_px.y())};
    list.AddRectFilled(corner, far_corner, style.mark(Role::panel), 4.0F);
    // The fill is a bar along the foot, so that the words stand on the plain step.
    const float bar_top = far_corner.y - style.px(9.0F);
    const auto share = static_cast<float>(filled(stair));
    if (share > 0.0F)
        list.AddRectFilled({corner.x, bar_top}, {corner.x + share * width_px, far_corner.y},
                           style.mark(Role::right), 3.0F);
    list.AddLine({corner.x, bar_top}, {far_corner.x, bar_top}, style.mark(Role::hairline), 1.0F);
    list.AddRect(corner, far_corner, style.mark(chosen || hovered ? Role::ink : Role::hairline),
                 4.0F, 0, chosen ? style.px(2.5F) : 1.0F);
    const float room_px = width_px - style.px(16.0F);
    const TextStyle title_style{TextSize::caption, true, stair.open ? Role::ink : Role::quiet_ink};
    // A long title takes a second line where the step is high enough.
    const std::vector<std::string_view> lines = broken_lines(style, title_style, title, room_px);
    const bool two = lines.size() == 2 && bar_top - corner.y >= style.px(56.0F);
    float base = corner.y + style.px(18.0F);
    if (two) {
        draw_text(list, style, title_style, {corner.x + style.px(8.0F), base}, lines[0]);
        base += style.px(17.0F);
    }
    draw_text(list, style, title_style, {corner.x + style.px(8.0F), base},
              two ? std::string(lines[1]) : shortened(style, title_style, title, room_px));
    const std::string word = stair.answers > 0
                                 ? fmt::format("{}, {:.0f} %", say(stair), 100.0 * stair.known)
                                 : say(stair);
    draw_text(list, style, kCaption, {corner.x + style.px(8.0F), base + style.px(18.0F)},
              shortened(style, kCaption, word, room_px));
    return pressed;
}

/// The steps in an area that scrolls; the foot is seen first, where everybody begins.
void draw_stairs(const Style& style, const Desk& desk, const StairLayout& stairs,
                 const scene::Point& corner_px, const scene::Point& size_px, ProgressScreen& screen,
                 ProgressFrame& frame) {
    begin_area("stairs", corner_px, size_px, true);
    const float scroll = ImGui::GetScrollY();
    for (std::size_t i = 0; i < stairs.steps.size(); ++i) {
        const Step& step = stairs.steps[i];
        const Stair& stair = desk.outlook().stairs[step.stair];
        const ImVec2 corner{24.0F + static_cast<float>(step.corner_px.x()),
                            static_cast<float>(corner_px.y() + step.corner_px.y()) - scroll};
        if (draw_step(style, desk.course().skills[stair.skill].skill->title, stair, corner,
                      step.size_px, screen.chosen == i, static_cast<int>(i))) {
            if (screen.chosen == i)
                frame.practise = stair.skill;
            screen.chosen = i;
        }
    }
    ImGui::SetCursorScreenPos(
        {24.0F, static_cast<float>(corner_px.y() + stairs.height_px) - scroll});
    ImGui::Dummy({1.0F, 1.0F});
    if (!screen.at_foot)
        ImGui::SetScrollHereY(1.0F);
    screen.at_foot = true;
    end_area();
}

/// The strip of readiness: all scores from left to right, the interval as a bar, the expected score
/// in it, the pass mark across.
void draw_ready_strip(const Style& style, const learner::Readiness& ready, ColumnPen& pen) {
    const float left = pen.left();
    const float width = pen.width();
    const float y = pen.y() + style.px(26.0F);
    const auto at = [&](double score) {
        return left + width * static_cast<float>(score / std::max(1, ready.questions));
    };
    ImDrawList& list = pen.list();
    list.AddLine({left, y}, {left + width, y}, style.mark(Role::quiet_ink), 1.0F);
    list.AddRectFilled({at(ready.low), y - style.px(7.0F)}, {at(ready.high), y + style.px(7.0F)},
                       style.mark(Role::right, 0.45), 4.0F);
    list.AddRect({at(ready.low), y - style.px(7.0F)}, {at(ready.high), y + style.px(7.0F)},
                 style.mark(Role::right), 4.0F);
    list.AddCircleFilled({at(ready.expected), y}, style.px(5.0F), style.mark(Role::ink));
    list.AddLine({at(ready.pass), y - style.px(16.0F)}, {at(ready.pass), y + style.px(12.0F)},
                 style.mark(Role::ink), style.px(2.5F));
    const std::string pass = fmt::format("pass {}", ready.pass);
    const float pass_px = text_width(style, kCaption, pass);
    draw_text(
        list, style, kCaption,
        {std::min(at(ready.pass) - 0.5F * pass_px, left + width - pass_px), y - style.px(20.0F)},
        pass);
    const std::string expected =
        fmt::format("expected {:.1f}, {} to {}", ready.expected, ready.low, ready.high);
    draw_text(list, style, kCaption, {left, y + style.px(28.0F)}, expected);
    const std::string all = fmt::format("of {}", ready.questions);
    draw_text(list, style, kCaption,
              {left + width - text_width(style, kCaption, all), y + style.px(28.0F)}, all);
    pen.skip(80.0F);
}

void draw_readiness(const Style& style, const Desk& desk, const ProgressScreen& screen,
                    ColumnPen& pen) {
    const learner::Course& course = desk.course();
    const learner::Readiness& ready = desk.outlook().ready;
    pen.skip(4.0F);
    pen.paragraph(kStrong, "Predicted score");
    const bool predicted = ready.questions > 0 && !ready.is_too_early();
    if (predicted)
        draw_ready_strip(style, ready, pen);
    pen.paragraph(kBody, say(ready, course));
    if (ready.questions == 0 || ready.answers == 0)
        return;
    pen.skip(8.0F);
    if (predicted)
        pen.paragraph(kCaption, how_reached(course));
    if (const std::string trust = say(desk.standing().foresight); !trust.empty())
        pen.paragraph(kCaption, trust);
    if (!screen.exams.empty())
        pen.paragraph(kCaption,
                      learner::say_alone(screen.exams.front().right, screen.exams.front().of,
                                         course.parameters.confidence));
    pen.skip(12.0F);
    pen.paragraph(kStrong, "Study these first");
    constexpr std::size_t kShown = 4;
    const std::vector<learner::SkillShare> shares = most_to_win(ready);
    for (std::size_t i = 0; i < std::min(kShown, shares.size()); ++i)
        pen.paragraph(kCaption, fmt::format("{}: {:.1f} of {} expected",
                                            course.skills[shares[i].skill].skill->title,
                                            shares[i].expected, shares[i].questions));
}

void draw_rules(const Desk& desk, const ProgressScreen& screen, ColumnPen& pen) {
    if (screen.rules.empty())
        return;
    pen.skip(14.0F);
    pen.paragraph(kStrong, "Watch out for");
    for (const learner::RuleTimes& rule : screen.rules) {
        const problems::WrongRule* known = desk.course().bank->find_wrong_rule(rule.rule);
        pen.paragraph(kCaption,
                      fmt::format("{} ({} times)", known ? known->title : rule.rule, rule.times));
    }
}

std::string_view outcome_word(learner::Outcome outcome) {
    switch (outcome) {
    case learner::Outcome::right:
        return "right";
    case learner::Outcome::wrong:
        return "not right";
    case learner::Outcome::gave_up:
        return "did not know";
    case learner::Outcome::skipped:
        return "skipped";
    case learner::Outcome::example:
        return "read";
    }
    return "";
}

/// A past answer as a row. @return true when it was pressed
bool draw_answer_row(const Style& style, const Desk& desk, const learner::Answer& answer, int id,
                     ColumnPen& pen) {
    const problems::Skill* skill = desk.course().bank->find_skill(answer.skill);
    const std::string words = fmt::format("{}: {}", outcome_word(answer.outcome),
                                          skill != nullptr ? skill->title : answer.skill);
    ImGui::PushID(id);
    const bool pressed = row_button(style, "answer", {pen.left() - 8.0F, pen.y() - style.px(16.0F)},
                                    pen.width() + 16.0F, style.px(24.0F), false);
    ImGui::PopID();
    pen.line(kCaption, shortened(style, kCaption, words, pen.width()));
    pen.skip(24.0F);
    return pressed;
}

void draw_last_answers(const Style& style, const Desk& desk, const ProgressScreen& screen,
                       const learner::Clock& now, ColumnPen& pen, ProgressFrame& frame) {
    if (!screen.exams.empty()) {
        pen.skip(14.0F);
        pen.paragraph(kStrong, "Mock exams");
    }
    for (const learner::ExamResult& exam : screen.exams)
        pen.paragraph(kCaption, fmt::format("{}: {} of {}, {} needed: {}",
                                            learner::say_day(
                                                learner::day_of({exam.finished_ms, now.offset_s}),
                                                learner::usual_day_order()),
                                            exam.right, exam.of, exam.pass,
                                            exam.right >= exam.pass ? "passed" : "not passed"));
    if (screen.answers.empty())
        return;
    pen.skip(28.0F);
    pen.paragraph(kStrong, "Last answers");
    pen.paragraph(kCaption, "Press one to look at it again; O opens the last.");
    for (std::size_t i = 0; i < screen.answers.size(); ++i)
        if (draw_answer_row(style, desk, screen.answers[i], static_cast<int>(i), pen))
            frame.reopen = screen.answers[i];
}

/// What can be done again.
void draw_redoing(const Style& style, const Desk& desk, ColumnPen& pen, ProgressFrame& frame) {
    pen.skip(20.0F);
    if (word_button(style, "redo", {pen.left(), pen.y()}, "Redo my mistakes (R)", false))
        frame.redo_mistakes = true;
    pen.skip(26.0F);
    const std::size_t marked = desk.marked().size();
    if (marked == 0)
        return;
    if (word_button(style, "marked", {pen.left(), pen.y()},
                    fmt::format("Do the {} marked (M)", marked), false))
        frame.redo_marked = true;
    pen.skip(26.0F);
}

} // namespace

void open_progress(ProgressScreen& screen, Desk& desk) {
    screen = {};
    screen.rules = desk.frequent_rules(kRulesShown);
    screen.exams = desk.finished_exams(kExamsShown);
    screen.answers = desk.last_answers(kAnswersShown);
}

ProgressFrame run_progress(const Style& style, const Layout& layout, Desk& desk,
                           const learner::Clock& now, const FrameInput& input,
                           ProgressScreen& screen) {
    ProgressFrame frame;
    frame.drawing.size_px = layout.stage_px;
    const scene::Point corner_px{0.0, style.px(68.0F)};
    const scene::Point size_px = layout.stage_px - corner_px - scene::Point(0.0, 16.0);
    const StairLayout stairs = lay_stairs(desk.outlook().stairs, size_px - scene::Point(56.0, 0.0),
                                          style.px(190.0F), style.px(56.0F));
    read_keys(*input.keys, stairs, desk, now, screen, frame);
    draw_stairs(style, desk, stairs, corner_px, size_px, screen, frame);
    begin_area("column", layout.column_at_px, layout.column_px, true);
    ColumnPen pen(style, layout);
    pen.skip(layout.narrow ? 28.0F : 46.0F);
    if (desk.learner())
        pen.paragraph(kCaption, fmt::format("{}, {} answer{} so far", desk.learner()->name,
                                            desk.standing().answers,
                                            desk.standing().answers == 1 ? "" : "s"));
    pen.skip(6.0F);
    draw_readiness(style, desk, screen, pen);
    draw_rules(desk, screen, pen);
    draw_redoing(style, desk, pen, frame);
    draw_last_answers(style, desk, screen, now, pen, frame);
    pen.skip(24.0F);
    if (!stairs.steps.empty() &&
        word_button(style, "explain", {pen.left(), pen.y()}, "Explain the chosen step (E)", false))
        frame.explain = skill_of_chosen(stairs, desk, screen);
    pen.skip(26.0F);
    if (word_button(style, "export", {pen.left(), pen.y()}, "Export everything (X)", false))
        screen.remark = desk.export_record(now);
    pen.skip(26.0F);
    if (!screen.remark.empty())
        pen.paragraph(kCaption, screen.remark);
    if (word_button(style, "leave", {pen.left(), pen.y()}, "Back to practice", false))
        frame.left = true;
    pen.skip(22.0F);
    const bool pressed = column_button(style, layout, pen, "Practise the chosen step");
    if (pressed && !stairs.steps.empty())
        frame.practise = skill_of_chosen(stairs, desk, screen);
    end_area();
    return frame;
}

} // namespace steelyard::app

#include "app/practice/home.h"

#include "app/look/text_styles.h"
#include "app/platform/key.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "app/widgets/column_pen.h"
#include "learner/time/wall_clock.h"
#include "problems/question/generator.h"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>

namespace steelyard::app {

namespace {

using scene::Role;
using scene::TextSize;

bool is_new(const Desk& desk) {
    return desk.standing().answers == 0 && !desk.standing().placement_over;
}

void act(const HomeChoice& choice, const Desk& desk, HomeScreen& screen, HomeFrame& frame) {
    if (std::holds_alternative<AddLearner>(choice))
        begin_typing(screen, Typing::name, "");
    else if (std::holds_alternative<SetExamDay>(choice))
        begin_typing(screen, Typing::exam_day,
                     desk.standing().exam_day
                         ? learner::say_day(*desk.standing().exam_day, learner::usual_day_order())
                         : "");
    else if (std::holds_alternative<TypeCode>(choice))
        begin_typing(screen, Typing::code, "");
    else
        frame.chosen = choice;
}

std::optional<Door> door_of(int key) {
    switch (key) {
    case key::kT:
        return Door::session;
    case key::kQ:
        return Door::quick;
    case key::kE:
        return Door::exam;
    case key::kP:
        return Door::progress;
    case key::kC:
        return Door::calendar;
    default:
        return std::nullopt;
    }
}

void read_keys(const std::vector<KeyPress>& keys, const std::vector<HomeLine>& lines,
               const Desk& desk, HomeScreen& screen, HomeFrame& frame) {
    for (const KeyPress& key : keys)
        if (key.key == key::kDown || key.key == key::kTab)
            screen.chosen = (screen.chosen + 1) % lines.size();
        else if (key.key == key::kUp)
            screen.chosen = (screen.chosen + lines.size() - 1) % lines.size();
        else if (key.key == key::kEnter || key.key == key::kKeypadEnter)
            act(lines[screen.chosen].choice, desk, screen, frame);
        else if (key.key == key::kK)
            act(TypeCode{}, desk, screen, frame);
        else if (key.key == key::kN && is_new(desk))
            frame.chosen = SkipPlacement{};
        else if (const auto door = door_of(key.key))
            frame.chosen = *door;
}

/// A line that can be pressed, with its sentence below. @return true when it was pressed
bool draw_line(const Style& style, ColumnPen& pen, const HomeLine& line, int id, bool chosen,
               const TextStyle& how) {
    const float room_px = pen.width() - style.px(16.0F);
    const float step_px = line_height(style, how.size);
    const int below_lines =
        line.below.empty() ? 0 : paragraph_lines(style, kCaption, room_px, line.below);
    const float height_px = step_px + style.px(14.0F) +
                            static_cast<float>(below_lines) * line_height(style, TextSize::caption);
    ImGui::PushID(id);
    const bool pressed = row_button(style, "line", {pen.left() - 8.0F, pen.y()},
                                    pen.width() + 16.0F, height_px, chosen);
    ImGui::PopID();
    const float left = pen.left() + style.px(8.0F);
    const float base = pen.y() + style.px(4.0F) + 0.78F * step_px;
    draw_text(pen.list(), style, how, {left, base}, line.words);
    if (below_lines > 0)
        draw_paragraph(pen.list(), style, kCaption, {left, base + style.px(22.0F)}, room_px,
                       line.below);
    pen.skip_px(height_px + style.px(4.0F));
    return pressed;
}

/// The name or the day being typed. Enter takes it, Escape leaves it.
void draw_typing(ColumnPen& pen, Desk& desk, const learner::Clock& now, HomeScreen& screen,
                 HomeFrame& frame) {
    const Typing typing = screen.typing;
    const std::string asked = typing == Typing::name ? "Your name, for the record on this machine"
                              : typing == Typing::code
                                  ? "The code below the question on your sheet; several with blanks"
                                  : asked_exam_day();
    const TypedLineEnd end = draw_typed_line(pen, "typing", asked, screen.line);
    if (end == TypedLineEnd::left) {
        screen.typing = Typing::nothing;
    } else if (end == TypedLineEnd::entered && typing == Typing::code) {
        auto codes = read_codes(screen.line.text, *desk.course().bank);
        if (!codes)
            return refuse_line(screen.line, codes.error());
        frame.codes = std::move(*codes);
        screen.typing = Typing::nothing;
    } else if (end == TypedLineEnd::entered) {
        frame.named = take_typed(screen, desk, now) && typing == Typing::name;
    }
}

void draw_doors(const Style& style, const Layout& layout, const std::vector<HomeLine>& lines,
                const Desk& desk, HomeScreen& screen, HomeFrame& frame) {
    const double top_px = style.px(64.0F);
    Layout stage;
    stage.column_at_px = {0.0, top_px};
    stage.column_px = {std::min(layout.stage_px.x(), static_cast<double>(style.px(700.0F))),
                       layout.stage_px.y() - top_px};
    begin_area("home", stage.column_at_px, {layout.stage_px.x(), stage.column_px.y()}, true);
    ColumnPen pen(style, stage);
    pen.skip(layout.narrow ? 24.0F : 44.0F);
    if (desk.learner())
        pen.paragraph(kCaption, desk.learner()->name);
    pen.skip(6.0F);
    pen.paragraph({TextSize::reading, true, Role::ink}, say(desk.outlook().plan));
    if (!desk.outlook().welcome.empty()) {
        pen.skip(4.0F);
        pen.paragraph(kBody, desk.outlook().welcome);
    }
    pen.skip(layout.narrow ? 0.0F : 20.0F);
    for (std::size_t i = 0; i < lines.size(); ++i)
        if (draw_line(style, pen, lines[i], static_cast<int>(i), screen.chosen == i,
                      {TextSize::reading, false, Role::ink}))
            act(lines[i].choice, desk, screen, frame);
    pen.finish(24.0F);
    end_area();
}

void draw_desk(const Style& style, const Layout& layout, const std::vector<HomeLine>& lines,
               std::size_t first, Desk& desk, const learner::Clock& now, HomeScreen& screen,
               HomeFrame& frame) {
    begin_area("column", layout.column_at_px, layout.column_px, true);
    ColumnPen pen(style, layout);
    pen.skip(layout.narrow ? 28.0F : 46.0F);
    pen.paragraph(kStrong, "Who learns");
    if (!desk.learner() && !desk.wants_name())
        pen.paragraph(kBody, "You, without a record.");
    for (std::size_t i = 0; i < lines.size(); ++i) {
        if (std::holds_alternative<SetExamDay>(lines[i].choice)) {
            pen.skip(22.0F);
            pen.paragraph(kStrong, "Your exam");
        }
        if (draw_line(style, pen, lines[i], static_cast<int>(first + i), screen.chosen == first + i,
                      kBody))
            act(lines[i].choice, desk, screen, frame);
    }
    if (screen.typing != Typing::nothing)
        draw_typing(pen, desk, now, screen, frame);
    pen.skip(24.0F);
    for (const std::string& notice : desk.notices()) {
        pen.paragraph(kFault, notice);
        pen.skip(6.0F);
    }
    pen.paragraph(kCaption, desk.has_kept_all()
                                ? "Every answer is kept on this machine, and goes nowhere."
                                : desk.kept_text());
    pen.finish(24.0F);
    end_area();
}

} // namespace

std::vector<HomeLine> door_lines(const Desk& desk, const HomeScreen& screen) {
    const int length = session_length(desk.outlook().plan);
    const learner::ExamBlueprint& exam = desk.course().exam;
    std::vector<HomeLine> lines;
    if (is_new(desk) && screen.session_waits.empty())
        lines.push_back({SkipPlacement{}, "New to this: from the beginning  (N)",
                         "A few pages, an example, then the first questions. No placement."});
    const std::vector<HomeLine> all{
        {Door::session,
         screen.session_waits.empty() ? "Today's session  (T)" : "Go on where you were  (T)",
         !screen.session_waits.empty() ? screen.session_waits
         : is_new(desk) ? fmt::format("First a placement of at most {} questions finds out where "
                                      "you stand; then practice.",
                                      desk.course().parameters.placement_questions)
                        : fmt::format("{} questions, those that you need most; hints when you "
                                      "want them.",
                                      length)},
        {Door::quick, "Quick quiz  (Q)", "Five questions in less than three minutes."},
        {Door::exam, screen.exam_waits ? "Go on with the mock exam  (E)" : "Mock exam  (E)",
         screen.exam_waits ? "It waits where you left it; the time in between does not count."
                           : fmt::format("{} questions, {} minutes, no feedback until the end.",
                                         exam.questions, exam.minutes)},
        {Door::calendar, "Calendar  (C)",
         desk.standing().exam_day ? "What to do on which day until the exam, and what fits."
                                  : "Set your exam's day, and see what to do on which day."},
        {Door::progress, "Progress  (P)", say(desk.outlook().ready, desk.course())}};
    lines.insert(lines.end(), all.begin(), all.end());
    return lines;
}

std::vector<HomeLine> desk_lines(const Desk& desk, const learner::Clock& now) {
    std::vector<HomeLine> lines;
    for (const learner::Learner& one : desk.learners()) {
        const bool present = desk.learner() && desk.learner()->id == one.id;
        lines.push_back({ChooseLearner{one.id}, one.name + (present ? ", now" : ""),
                         one.answers == 1 ? "1 answer" : fmt::format("{} answers", one.answers)});
    }
    if (desk.can_add())
        lines.push_back(
            {AddLearner{}, desk.learners().empty() ? "Say your name" : "Somebody else", ""});
    const auto& day = desk.standing().exam_day;
    lines.push_back({SetExamDay{},
                     day ? learner::say_day(*day, learner::usual_day_order()) : "Set its day",
                     day ? fmt::format("in {} days", learner::days_between(day_of(now), *day))
                         : "The plan is made backwards from it."});
    lines.push_back({TypeCode{}, "A question by its code  (K)", "From a sheet, to mark yourself."});
    return lines;
}

void begin_typing(HomeScreen& screen, Typing what, std::string text) {
    screen.typing = what;
    screen.line = {std::move(text), "", true};
}

tl::expected<std::vector<std::string>, std::string> read_codes(const std::string& typed,
                                                               const problems::Bank& bank) {
    std::vector<std::string> codes;
    std::istringstream words(typed);
    for (std::string word; words >> word;) {
        word.erase(std::remove(word.begin(), word.end(), ','), word.end());
        if (word.empty())
            continue;
        const auto question = problems::question_from_code(bank, word);
        if (!question)
            return tl::make_unexpected(question.error().message);
        codes.push_back(question->code);
    }
    if (codes.empty())
        return tl::make_unexpected(std::string("Type a code such as K7M2Q-9XD4T."));
    return codes;
}

bool take_typed(HomeScreen& screen, Desk& desk, const learner::Clock& now) {
    std::string fault = screen.typing == Typing::name ? desk.add_learner(screen.line.text, now)
                                                      : desk.set_exam_day(screen.line.text, now);
    if (!fault.empty()) {
        refuse_line(screen.line, std::move(fault));
        return false;
    }
    screen.typing = Typing::nothing;
    return true;
}

HomeFrame run_home(const Style& style, const Layout& layout, Desk& desk, const learner::Clock& now,
                   const FrameInput& input, HomeScreen& screen) {
    HomeFrame frame;
    const std::vector<HomeLine> doors = door_lines(desk, screen);
    const std::vector<HomeLine> others = desk_lines(desk, now);
    std::vector<HomeLine> all = doors;
    all.insert(all.end(), others.begin(), others.end());
    screen.chosen = std::min(screen.chosen, all.size() - 1);
    read_keys(*input.keys, all, desk, screen, frame);
    draw_doors(style, layout, doors, desk, screen, frame);
    draw_desk(style, layout, others, doors.size(), desk, now, screen, frame);
    return frame;
}

} // namespace steelyard::app

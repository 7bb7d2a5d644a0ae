#include "app/workshop/presenter_view.h"

#include "app/look/text_styles.h"
#include "app/widgets/area.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <ctime>

namespace steelyard::app {

namespace {

using lesson::PredictionKind;
using scene::Point;
using scene::Role;
using scene::TextSize;

constexpr float kMargin_px = 28.0F;
constexpr const char* kKeys =
    "Page Down or Space: on.  Page Up: back.  Digits, Enter: what the room says.  Backspace: take "
    "back.  R: hide again.  B: blank.  F: freeze.  I: note on the big screen.  While a number may "
    "be coming, letters need Ctrl.  Escape twice: leave.";

std::string minutes(double seconds) {
    const auto whole = static_cast<long>(std::floor(seconds / kTimerStep_s) * kTimerStep_s);
    return fmt::format("{}:{:02}", whole / 60, whole % 60);
}

std::string clock_text() {
    const std::time_t now = std::time(nullptr);
    std::tm local{};
    localtime_r(&now, &local);
    return fmt::format("{:02}:{:02}", local.tm_hour, local.tm_min);
}

/// Writes downward, each paragraph below the last.
class Writer {
public:
    Writer(const Style& style, float left_px, float top_px, float width_px)
        : style_(style), left_(left_px), y_(top_px), width_(width_px) {}

    void write(const TextStyle& how, const std::string& text, float gap_before) {
        if (text.empty())
            return;
        y_ += style_.px(gap_before);
        y_ = draw_paragraph(*ImGui::GetWindowDrawList(), style_, how, {left_, y_}, width_, text);
    }
    void skip(float at_100_percent) { y_ += style_.px(at_100_percent); }

private:
    const Style& style_;
    float left_;
    float y_;
    float width_;
};

constexpr TextStyle kHeading{TextSize::caption, true, Role::quiet_ink};
constexpr TextStyle kPlain{TextSize::body, false, Role::ink};

std::string step_title(const lesson::LessonStep& step, const StepWords& words) {
    return step.title.empty() ? words.prompt : step.title;
}

void write_note(const Style& style, const Point& window_px, const ShowModel& show) {
    const lesson::LessonStep& step = show.lesson_step();
    const StepWords words = words_of(show, show.step);
    Writer writer(style, kMargin_px, style.px(40.0F),
                  0.6F * static_cast<float>(window_px.x()) - 1.5F * kMargin_px);
    writer.write(kHeading,
                 fmt::format("{}, step {} of {}", show.lesson->head.name, show.step + 1,
                             show.lesson->steps.size()),
                 0.0F);
    writer.write({TextSize::reading, true, Role::ink}, step_title(step, words), 10.0F);
    writer.write(kQuietBody, words.prompt, 4.0F);
    writer.write({TextSize::reading, false, Role::ink},
                 step.note.empty() && show.step == 0 ? show.lesson->head.note : step.note, 22.0F);
    if (show.step == 0 && !step.note.empty())
        writer.write(kPlain, show.lesson->head.note, 14.0F);
    writer.write(kHeading, words.reveal.empty() ? "" : "Reveal", 22.0F);
    writer.write(kPlain, words.reveal, 4.0F);
    if (show.at_end())
        return writer.write(kQuietBody, "This is the last step.", 22.0F);
    const lesson::LessonStep& next = show.lesson->steps[show.step + 1];
    const StepWords next_words = words_of(show, show.step + 1);
    writer.write(kHeading, "Next: " + step_title(next, next_words), 22.0F);
    writer.write(kQuietBody, next_words.prompt, 4.0F);
}

/// What the room sees, where it is not simply this step.
std::string state_text(const ShowModel& show) {
    std::string state = show.now().revealed               ? "Revealed"
                        : show.lesson_step().has_reveal() ? "Not revealed yet"
                                                          : "Nothing to reveal";
    if (show.frozen)
        state += fmt::format(". The room still sees step {}: F lets go", show.frozen->step + 1);
    if (show.blank)
        state += ". The room sees nothing: B shows again";
    return state + ".";
}

void write_answers(const ShowModel& show, const StepWords& words, Writer& writer) {
    const lesson::Prediction& prediction = show.lesson_step().prediction;
    for (std::size_t i = 0; i < prediction.choices.size(); ++i) {
        const bool here = !show.now().revealed && show.row == i;
        std::string line = fmt::format("{}{}  {}", here ? "→ " : "", i + 1, prediction.choices[i]);
        if (prediction.kind == PredictionKind::hands)
            line += fmt::format(": {}", show.now().hands[i]);
        if (show.now().picked == i)
            line += ", taken";
        if (words.right == i)
            line += " (right)";
        writer.write(here ? kStrong : kPlain, line, 2.0F);
    }
}

void write_numbers(const ShowModel& show, const StepWords& words, Writer& writer) {
    std::string said;
    for (const double guess : show.now().guesses_SI)
        said += (said.empty() ? "" : ",  ") +
                lesson::quantity_text({guess, words.sought->dimension, {}}, show.units).joined();
    writer.write(kPlain, said.empty() ? "No numbers yet." : said, 2.0F);
    if (!show.entry.empty())
        writer.write(kStrong, show.entry + " …", 2.0F);
    writer.write(kQuietBody,
                 "It is " + lesson::quantity_text(*words.sought, show.units).joined() + ".", 6.0F);
}

void write_tally(const Style& style, const Point& window_px, const ShowModel& show) {
    const float left_px = 0.6F * static_cast<float>(window_px.x()) + 0.5F * kMargin_px;
    const StepWords words = words_of(show, show.step);
    Writer writer(style, left_px, style.px(64.0F),
                  static_cast<float>(window_px.x()) - left_px - kMargin_px);
    writer.write({TextSize::key, true, Role::ink}, clock_text(), 0.0F);
    writer.skip(-22.0F);
    writer.write({TextSize::reading, false, Role::quiet_ink},
                 timer_text(show.now().spent_s, show.lesson_step().time_s), 0.0F);
    writer.write(show.frozen || show.blank ? kStrong : kPlain, state_text(show), 12.0F);
    const PredictionKind kind = show.lesson_step().prediction.kind;
    if (kind != PredictionKind::none)
        writer.write(kHeading, "The room", 20.0F);
    if (kind == PredictionKind::number && words.sought)
        write_numbers(show, words, writer);
    else
        write_answers(show, words, writer);
    writer.write({TextSize::body, false, Role::wrong}, show.message, 12.0F);
}

void write_keys(const Style& style, const Point& window_px) {
    const TextStyle how{TextSize::caption, false, Role::quiet_ink};
    const float width_px = static_cast<float>(window_px.x()) - 2.0F * kMargin_px;
    const auto lines = static_cast<float>(broken_lines(style, how, kKeys, width_px).size());
    Writer writer(style, kMargin_px,
                  static_cast<float>(window_px.y()) - style.px(10.0F) -
                      (lines - 0.5F) * line_height(style, TextSize::caption),
                  width_px);
    writer.write(how, kKeys, 0.0F);
}

} // namespace

std::string timer_text(double spent_s, std::optional<double> planned_s) {
    return planned_s ? fmt::format("{} of {}", minutes(spent_s), minutes(*planned_s))
                     : minutes(spent_s);
}

void draw_presenter_view(const Style& style, const Point& window_px, const ShowModel* show) {
    begin_area("presenter", Point::Zero(), window_px);
    if (show == nullptr) {
        Writer writer(style, kMargin_px, style.px(64.0F),
                      static_cast<float>(window_px.x()) - 2.0F * kMargin_px);
        writer.write({TextSize::key, true, Role::ink}, clock_text(), 0.0F);
        writer.write(kQuietBody,
                     "Choose a lesson in the other window and press Enter, or click Begin.", 0.0F);
    } else {
        write_note(style, window_px, *show);
        write_tally(style, window_px, *show);
        write_keys(style, window_px);
    }
    end_area();
}

} // namespace steelyard::app

#include "app/practice/practice_place.h"

#include "app/place/place_parts.h"
#include "app/platform/key.h"
#include "learner/study/kept_session.h"
#include "learner/time/wall_clock.h"
#include "problems/marking/marking.h"
#include "problems/question/generator.h"

#include <fmt/format.h>

#include <random>
#include <utility>

namespace steelyard::app {

namespace {

using learner::Present;
using learner::SessionKind;

/// Mistakes that are redone in one go.
constexpr std::size_t kMistakes = 8;

std::uint64_t any_seed() {
    return std::random_device{}();
}

} // namespace

void PracticePlace::enter(Surroundings& around) {
    const learner::Clock now = learner::wall_clock();
    if (!desk_)
        desk_.emplace(around.library.bank(), around.library.data_folder() / "assets",
                      around.record_folder.empty() ? learner::usual_record_folder()
                                                   : around.record_folder,
                      now);
    else if (screen_ == Screen::home && desk_->has_course())
        go_home(now);
    desk_->use_units(around.units);
    if (screen_ != Screen::home)
        return;
    note_what_waits(now);
    if (desk_->wants_name())
        begin_typing(home_, Typing::name, "");
}

void PracticePlace::enter_part(const std::string& part) {
    const learner::Clock now = learner::wall_clock();
    if (!desk_ || !desk_->has_course())
        return;
    if (part == "session")
        open(Door::session, now);
    else if (part == "quick")
        open(Door::quick, now);
    else if (part == "exam")
        open(Door::exam, now);
    else if (part == "progress")
        open(Door::progress, now);
    else if (part == "calendar")
        open(Door::calendar, now);
}

void PracticePlace::open(const OpenedFile& file, Surroundings& /*around*/) {
    const learner::Clock now = learner::wall_clock();
    desk_->import_record(std::get<RecordFile>(file).path, now);
    go_home(now); // what stood anywhere else is no longer so
}

const QuestionScreen* PracticePlace::open_question() const {
    return screen_ == Screen::session ? &session_.question
           : screen_ == Screen::past  ? &past_
           : screen_ == Screen::exam  ? &exam_.question
                                      : nullptr;
}

bool PracticePlace::claims(const KeyPress& key) const {
    if (screen_ == Screen::calendar)
        return key.key == key::kD && !calendar_.typing; // which elsewhere changes the look
    const QuestionScreen* question = open_question();
    return question != nullptr && question_claims(*question, key);
}

std::optional<double> PracticePlace::next_frame_in_s() const {
    if (screen_ != Screen::exam)
        return std::nullopt;
    return next_tick_s(exam_);
}

void PracticePlace::go_home(const learner::Clock& now) {
    screen_ = Screen::home;
    desk_->refresh(now);
    note_what_waits(now);
}

void PracticePlace::note_what_waits(const learner::Clock& now) {
    home_.exam_waits = desk_->unfinished_exam().has_value();
    home_.session_waits.clear();
    if (!desk_->has_course())
        return;
    const auto text = desk_->kept_session();
    const auto kept = text ? learner::read_session(*text, desk_->course()) : std::nullopt;
    if (kept)
        home_.session_waits =
            fmt::format("A session was not ended. {}; what you answered is kept.",
                        count_text(kept->session, {desk_->course(), desk_->standing(), now}));
}

void PracticePlace::redo(std::vector<std::string> codes, const learner::Clock& now) {
    if (codes.empty())
        return;
    screen_ = Screen::session;
    open_session(session_,
                 learner::begin_redo({desk_->course(), desk_->standing(), now}, std::move(codes),
                                     any_seed()),
                 *desk_, now);
}

/// Shows a question as it was, with the answer that was given and the whole solution.
void PracticePlace::reopen(const learner::Answer& answer) {
    auto question = problems::question_from_code(*desk_->course().bank, answer.code);
    if (!question) {
        progress_.remark = question.error().message;
        return;
    }
    QuestionWords words;
    // A choice is seen in its row.
    const bool is_chosen = !problems::choices_of(*question).empty();
    words.above = answer.typed.empty() ? "You gave no answer to this one."
                  : is_chosen          ? std::string("You answered this one before.")
                                       : "You answered: " + answer.typed;
    words.next = "Try it again";
    words.leave = "Back to progress";
    words.explains = true;
    words.marked = desk_->is_marked(answer.code);
    QuestionModel model;
    model.asking = learner::asked_before(std::move(*question));
    if (!answer.typed.empty()) {
        model.asking.told =
            problems::mark(*desk_->course().bank, model.asking.question, answer.typed);
        take_answer(model, answer.typed);
    }
    app::open_question(past_, std::move(model), std::move(words));
    screen_ = Screen::past;
}

scene::Drawing PracticePlace::run_past_screen(const PlaceInput& input, const learner::Clock& now) {
    QuestionFrame result =
        run_question(input.style, input.layout, *desk_->course().bank, input.frame, past_);
    const std::string code = past_.model->question().code;
    switch (result.wish) {
    case QuestionWish::next_question:
        redo({code}, now);
        break;
    case QuestionWish::leave:
        screen_ = Screen::progress;
        break;
    case QuestionWish::mark:
        past_.words.marked = !past_.words.marked.value_or(false);
        desk_->mark(code, *past_.words.marked);
        break;
    case QuestionWish::explain:
        if (const auto skill = desk_->course().find(past_.model->question().skill)) {
            const std::string trouble = open_pages_of(*skill, "Back to the question", input.around);
            if (!trouble.empty())
                past_.words.above += ' ' + trouble;
        }
        break;
    case QuestionWish::none:
    case QuestionWish::skip:
        break;
    }
    return std::move(result.drawing);
}

void PracticePlace::open(Door door, const learner::Clock& now) {
    if (desk_->wants_name()) {
        wanted_ = door;
        screen_ = Screen::home;
        begin_typing(home_, Typing::name, "");
        return;
    }
    wanted_.reset();
    const Present present{desk_->course(), desk_->standing(), now};
    switch (door) {
    case Door::session:
        screen_ = Screen::session;
        if (const auto kept = desk_->kept_session();
            kept && resume_session(session_, *kept, *desk_, now))
            return;
        return open_session(session_, begin_day(present, any_seed()), *desk_, now);
    case Door::quick:
        screen_ = Screen::session;
        return open_session(session_, begin_quick(present, any_seed()), *desk_, now);
    case Door::exam:
        screen_ = Screen::exam;
        return open_exam(exam_, *desk_, any_seed(), now);
    case Door::progress:
        screen_ = Screen::progress;
        return open_progress(progress_, *desk_);
    case Door::calendar:
        screen_ = Screen::calendar;
        return open_calendar(calendar_, *desk_, now);
    }
}

void PracticePlace::run_home_screen(const PlaceInput& input, const learner::Clock& now) {
    const HomeFrame result = run_home(input.style, input.layout, *desk_, now, input.frame, home_);
    if (result.named && wanted_)
        return open(*wanted_, now);
    if (!result.codes.empty())
        return redo(result.codes, now);
    if (!result.chosen)
        return;
    if (const auto* door = std::get_if<Door>(&*result.chosen)) {
        open(*door, now);
    } else if (const auto* other = std::get_if<ChooseLearner>(&*result.chosen)) {
        desk_->choose(other->id, now);
        note_what_waits(now);
    } else if (std::holds_alternative<SkipPlacement>(*result.chosen)) {
        desk_->skip_placement();
        open(Door::session, now);
    }
}

std::string PracticePlace::open_pages_of(std::size_t skill, const std::string& back,
                                         Surroundings& around) {
    const problems::Skill& known = *desk_->course().skills[skill].skill;
    const auto& muscles = around.library.muscles();
    const auto file = app::pages_file(around.library.data_folder() / "assets", known.id);
    auto model =
        app::open_pages(file, muscles ? *muscles : std::vector<mechanics::Muscle>{}, around.units);
    if (!model)
        return setup::to_text(model.error());
    pages_.model = *std::move(model);
    pages_.title = known.title;
    pages_.last_word = back;
    beneath_ = screen_;
    screen_ = Screen::pages;
    return {};
}

void PracticePlace::tell(const std::string& trouble) {
    if (!trouble.empty())
        session_.question.words.above += ' ' + trouble;
}

scene::Drawing PracticePlace::run_session_screen(const PlaceInput& input,
                                                 const learner::Clock& now) {
    SessionFrame result =
        run_session(input.style, input.layout, *desk_, now, input.frame, session_);
    if (result.again) {
        const Present present{desk_->course(), desk_->standing(), now};
        const SessionKind kind = session_.session.kind;
        open_session(session_,
                     kind == SessionKind::quick ? begin_quick(present, any_seed())
                     : kind == SessionKind::skill
                         ? begin_skill(present, session_.session.skill, any_seed())
                         : begin_day(present, any_seed()),
                     *desk_, now);
    } else if (result.redo) {
        redo(desk_->mistakes(kMistakes), now);
    } else if (result.left) {
        go_home(now);
    } else if (result.explain) {
        tell(open_pages_of(session_.session.next.skill, "Back to the question", input.around));
    }
    return std::move(result.drawing);
}

scene::Drawing PracticePlace::run_progress_screen(const PlaceInput& input,
                                                  const learner::Clock& now) {
    ProgressFrame result =
        run_progress(input.style, input.layout, *desk_, now, input.frame, progress_);
    if (result.left)
        go_home(now);
    else if (result.explain)
        progress_.remark = open_pages_of(*result.explain, "Back to the staircase", input.around);
    else if (result.reopen)
        reopen(*result.reopen);
    else if (result.redo_mistakes)
        redo(desk_->mistakes(kMistakes), now);
    else if (result.redo_marked)
        redo(desk_->marked(), now);
    else if (result.practise) {
        screen_ = Screen::session;
        open_session(session_,
                     learner::begin_skill({desk_->course(), desk_->standing(), now},
                                          *result.practise, any_seed()),
                     *desk_, now);
    }
    return std::move(result.drawing);
}

scene::Drawing PracticePlace::run_calendar_screen(const PlaceInput& input,
                                                  const learner::Clock& now) {
    CalendarFrame result =
        run_calendar(input.style, input.layout, *desk_, now, input.frame, calendar_);
    if (result.left)
        go_home(now);
    else if (result.session)
        open(Door::session, now);
    else if (result.exam)
        open(Door::exam, now);
    return std::move(result.drawing);
}

scene::Drawing PracticePlace::run_screen(const PlaceInput& input, const learner::Clock& now) {
    if (screen_ == Screen::session && session_.introduces)
        tell(open_pages_of(*std::exchange(session_.introduces, std::nullopt), "On to an example",
                           input.around));
    if (screen_ == Screen::pages) {
        PagesFrame result = run_pages(input.style, input.layout, input.frame, pages_);
        if (result.read || result.left)
            screen_ = beneath_;
        return std::move(result.drawing);
    }
    if (screen_ == Screen::exam) {
        exam_.less_motion = input.around.less_motion;
        ExamFrame result = run_exam(input.style, input.layout, *desk_, now, input.frame, exam_);
        if (result.left)
            go_home(now);
        return std::move(result.drawing);
    }
    if (screen_ == Screen::past)
        return run_past_screen(input, now);
    if (screen_ == Screen::calendar)
        return run_calendar_screen(input, now);
    return screen_ == Screen::session ? run_session_screen(input, now)
                                      : run_progress_screen(input, now);
}

PlaceFrame PracticePlace::run(const PlaceInput& input) {
    const learner::Clock now = learner::wall_clock();
    PlaceFrame frame;
    frame.drawing.size_px = input.layout.stage_px;
    if (!desk_->has_course()) {
        draw_trouble(input, desk_->notices().front());
        return frame;
    }
    desk_->use_units(input.around.units);
    if (screen_ == Screen::home)
        run_home_screen(input, now);
    else
        frame.drawing = run_screen(input, now);
    return frame;
}

} // namespace steelyard::app

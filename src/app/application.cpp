#include "app/application.h"

#include "app/help/help_view.h"
#include "app/paint/label_painter.h"
#include "setup/muscle_file.h"

#include <GLFW/glfw3.h>
#include <glad/gl.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace steelyard::app {

namespace {

using scene::Point;
using scene::Role;

/// While something moves, frames are this far apart [s]: sixty a second also where the driver does
/// not wait for the screen.
constexpr double kFrame_s = 1.0 / 60.0;
/// ImGui settles hover and focus in the frames after an event.
constexpr int kFramesAfterEvent = 3;
/// Work is written this long after the last change [s], and at once when the window closes.
constexpr double kSaveAfter_s = 0.4;
constexpr double kTextSizes[] = {0.8, 0.9, 1.0, 1.1, 1.25, 1.5, 1.75, 2.0, 2.5};

double next_text_size(double size, int step) {
    const auto* found =
        std::min_element(std::begin(kTextSizes), std::end(kTextSizes), [&](double a, double b) {
            return std::abs(a - size) < std::abs(b - size);
        });
    const auto at = std::clamp<std::ptrdiff_t>(found - std::begin(kTextSizes) + step, 0,
                                               std::ssize(kTextSizes) - 1);
    return kTextSizes[at];
}

/// Keys that stand for the words of the row at the top.
RowWish wish_of(int key, Place place) {
    switch (key) {
    case GLFW_KEY_D:
        return RowWish::look;
    case GLFW_KEY_F1:
        return RowWish::help;
    case GLFW_KEY_O:
        return RowWish::open_shelf;
    case GLFW_KEY_B:
        return place == Place::bench ? RowWish::go_to_body : RowWish::go_to_bench;
    case GLFW_KEY_U:
        return RowWish::units;
    default:
        return RowWish::none;
    }
}

} // namespace

Application::Application(Window window, ShapePainter painter, Shelf levers, SavedWork saved,
                         const SavedBench& first, std::filesystem::path data_folder)
    : window_(std::move(window)), painter_(std::move(painter)), levers_(std::move(levers)),
      saved_(std::move(saved)), data_folder_(std::move(data_folder)),
      question_seed_(std::random_device{}()) {
    const Preferences preferences = saved_.load_preferences();
    style_.look = preferences.look;
    text_size_ = preferences.text_size;
    bench_.model = make_bench(first.setup, first.hand_N);
    bench_.model.units = preferences.units;
    bench_.stage.chosen = {scene::PartKind::effort, 0};
}

void Application::tell_to(std::ofstream file) {
    narration_file_ = std::move(file);
    style_.narration = &narration_;
}

void Application::run() {
    last_frame_s_ = glfwGetTime();
    while (!window_.wants_to_close()) {
        if (!wait_for_frame())
            continue;
        const double now_s = glfwGetTime();
        frame(now_s - last_frame_s_);
        last_frame_s_ = now_s;
    }
    save_work();
}

/// Waits until a frame is owed: at once after an event, a sixtieth later while something moves,
/// and for ever otherwise, so that an idle window costs nothing.
bool Application::wait_for_frame() {
    const bool moving = place_ == Place::body ? body_ && body_->moving() : bench_.moving();
    if (frames_owed_ > 0)
        glfwPollEvents();
    else if (moving)
        glfwWaitEventsTimeout(std::max(1e-4, kFrame_s - (glfwGetTime() - last_frame_s_)));
    else if (save_due_s_ > 0.0)
        glfwWaitEventsTimeout(std::max(1e-3, save_due_s_ - glfwGetTime()));
    else
        glfwWaitEvents();
    if (save_due_s_ > 0.0 && glfwGetTime() >= save_due_s_)
        save_work();
    if (window_.incoming().anything) {
        frames_owed_ = kFramesAfterEvent;
        window_.incoming().anything = false;
    }
    const bool minimised = window_.size_px().minCoeff() < 1.0;
    if (minimised) {
        frames_owed_ = 0;
        glfwWaitEventsTimeout(0.2);
        return false;
    }
    if (frames_owed_ > 0) {
        --frames_owed_;
        return true;
    }
    return moving;
}

void Application::prepare_style() {
    const double scale = text_size_ * window_.content_scale();
    if (scale == fonts_for_)
        return;
    fonts_for_ = scale;
    style_.fonts = load_fonts(static_cast<float>(scale));
    window_.renew_font_texture();
    apply_to_imgui(style_);
    bench_.stage.view_fits = bench_.stage.view_is_own;
    shelf_state_.cards_width_px = 0.0;
    if (body_)
        body_->stage_fits = false;
}

StagePointer Application::read_pointer(const Layout& layout) const {
    const ImGuiIO& io = ImGui::GetIO();
    StagePointer pointer;
    pointer.at_px = {io.MousePos.x, io.MousePos.y};
    const bool inside = pointer.at_px.x() >= 0.0 && pointer.at_px.y() >= 0.0 &&
                        pointer.at_px.x() < layout.stage_px.x() &&
                        pointer.at_px.y() < layout.stage_px.y();
    pointer.on_stage = inside && !io.WantCaptureMouse;
    pointer.pressed = pointer.on_stage && ImGui::IsMouseClicked(ImGuiMouseButton_Left);
    pointer.released = ImGui::IsMouseReleased(ImGuiMouseButton_Left);
    pointer.double_clicked = pointer.on_stage && ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left);
    pointer.panning = pointer.on_stage && (ImGui::IsMouseDown(ImGuiMouseButton_Middle) ||
                                           ImGui::IsMouseDown(ImGuiMouseButton_Right));
    pointer.moved_px = {io.MouseDelta.x, io.MouseDelta.y};
    pointer.wheel = pointer.on_stage ? io.MouseWheel : 0.0;
    pointer.snap_off = io.KeyAlt;
    return pointer;
}

/// Keys of the whole window; what is left goes to the screen.
std::vector<KeyPress> Application::own_keys(const std::vector<KeyPress>& keys) {
    if (ImGui::GetIO().WantTextInput)
        return {};
    std::vector<KeyPress> left;
    for (const KeyPress& key : keys)
        if (!handle_key(key))
            left.push_back(key);
    return left;
}

bool Application::handle_key(const KeyPress& key) {
    const bool control = (key.modifiers & GLFW_MOD_CONTROL) != 0;
    const bool covered = help_open_ || shelf_state_.open;
    const RowWish wish = control ? RowWish::none : wish_of(key.key, place_);
    if (control && (key.key == GLFW_KEY_EQUAL || key.key == GLFW_KEY_KP_ADD))
        text_size_ = next_text_size(text_size_, 1);
    else if (control && (key.key == GLFW_KEY_MINUS || key.key == GLFW_KEY_KP_SUBTRACT))
        text_size_ = next_text_size(text_size_, -1);
    else if (wish == RowWish::look || (wish != RowWish::none && !covered))
        grant(wish);
    else if (key.key == GLFW_KEY_Q && place_ == Place::bench && !question_.model && !covered)
        ask_question();
    else
        return false;
    save_due_s_ = glfwGetTime() + kSaveAfter_s;
    return true;
}

void Application::draw_places(const Layout& layout) {
    const bool on_body = place_ == Place::body && body_;
    PlacesRow row;
    row.place = place_;
    row.can_undo = on_body ? body_->model.history.can_undo() : bench_.model.history.can_undo();
    row.can_redo = on_body ? body_->model.history.can_redo() : bench_.model.history.can_redo();
    row.us_units = bench_.model.units == setup::UnitSystem::us;
    row.dark = style_.look == scene::Look::dark;
    const RowWish wish = draw_places_row(style_, static_cast<float>(layout.stage_px.x()), row);
    if (wish == RowWish::none)
        return;
    grant(wish);
    save_due_s_ = glfwGetTime() + kSaveAfter_s;
}

void Application::grant(RowWish wish) {
    const bool on_body = place_ == Place::body && body_;
    switch (wish) {
    case RowWish::none:
        return;
    case RowWish::go_to_bench:
        place_ = Place::bench;
        return;
    case RowWish::go_to_body:
        return show_body();
    case RowWish::open_shelf:
        return open_shelf(shelf_state_);
    case RowWish::undo:
        return on_body ? update(body_->model, UndoBody{}) : update(bench_.model, Undo{});
    case RowWish::redo:
        return on_body ? update(body_->model, RedoBody{}) : update(bench_.model, Redo{});
    case RowWish::units:
        return update(bench_.model, SwitchUnits{});
    case RowWish::look:
        style_.look = style_.look == scene::Look::light ? scene::Look::dark : scene::Look::light;
        return apply_to_imgui(style_);
    case RowWish::help:
        help_open_ = true;
        return;
    }
}

void Application::open_lever(const setup::LeverSetup& setup) {
    update(bench_.model, OpenSetup{setup});
    bench_.stage.view_fits = false;
    bench_.stage.view_is_own = false;
    bench_.stage.chosen = {scene::PartKind::effort, 0};
    save_due_s_ = glfwGetTime() + kSaveAfter_s;
}

void Application::open_setup(const setup::Setup& setup) {
    if (const auto* lever = std::get_if<setup::LeverSetup>(&setup)) {
        place_ = Place::bench;
        open_lever(*lever);
        return;
    }
    show_body();
    if (body_)
        open_exercise(*body_, std::get<setup::BodySetup>(setup));
}

/// Goes to the body; the first time the exercises and muscles are read.
void Application::show_body() {
    if (!exercises_)
        exercises_ = read_shelf(data_folder_ / "assets" / "setups" / "body");
    if (!body_) {
        auto muscles = setup::shipped_muscles();
        if (exercises_->bodies.empty() || !muscles) {
            bench_.model.message =
                muscles ? "There are no exercises to show." : setup::to_text(muscles.error());
            return;
        }
        const setup::BodySetup& first = exercises_->bodies.front();
        body_ = BodyScreen{};
        body_->model = make_body(first, std::move(*muscles));
        open_exercise(*body_, first);
    }
    question_.model.reset();
    place_ = Place::body;
}

ShelfContent Application::shelf_content() const {
    if (place_ == Place::body)
        return {"Choose an exercise",
                [this](const Point& picture_px) { return body_cards(*exercises_, picture_px); },
                &exercises_->faults};
    return {"Choose a lever",
            [this](const Point& picture_px) { return lever_cards(levers_, picture_px); },
            &levers_.faults};
}

void Application::open_card(std::size_t index) {
    if (place_ == Place::body)
        open_exercise(*body_, exercises_->bodies[index]);
    else
        open_lever(levers_.levers[index]);
}

void Application::take_dropped_files(const std::vector<std::string>& paths) {
    for (const std::string& path : paths) {
        const auto setup = setup::read_setup(path);
        if (setup)
            open_setup(*setup);
        else
            bench_.model.message = setup::to_text(setup.error());
    }
}

/// Opens a question like the lever on the bench; each is another one.
void Application::ask_question() {
    if (!bank_)
        bank_ = problems::load_bank(data_folder_ / "question_bank");
    auto asked = ask_like(*bank_, bench_.model.solved.lever_class, ++question_seed_);
    if (!asked) {
        bench_.model.message = asked.error();
        question_.model.reset();
        return;
    }
    question_.model = std::move(*asked);
    question_.wants_keyboard = true;
}

/// The bench, or the question that lies over it.
scene::Drawing Application::run_stage(const Layout& layout, const std::vector<KeyPress>& keys,
                                      double seconds) {
    draw_places(layout);
    if (question_.model) {
        QuestionOutcome outcome = run_question(style_, layout, *bank_, keys, question_);
        if (outcome.wish == QuestionWish::next_question)
            ask_question();
        else if (outcome.wish == QuestionWish::leave)
            question_.model.reset();
        return std::move(outcome.drawing);
    }
    const FrameInput input{&keys, read_pointer(layout), seconds};
    if (place_ == Place::body && body_)
        return run_body(style_, layout, input, bench_.model.units, *body_).drawing;
    return run_bench_place(layout, input);
}

scene::Drawing Application::run_bench_place(const Layout& layout, const FrameInput& input) {
    BenchOutcome outcome = run_bench(style_, layout, input, bench_);
    if (outcome.changed)
        save_due_s_ = glfwGetTime() + kSaveAfter_s;
    if (outcome.ask_question)
        ask_question();
    return std::move(outcome.drawing);
}

void Application::frame(double seconds) {
    prepare_style();
    window_.begin_frame();
    narration_.begin_frame();
    const Layout layout = lay_out(window_.size_px(), style_.fonts.scale);
    Incoming& incoming = window_.incoming();
    take_dropped_files(incoming.dropped_files);
    const std::vector<KeyPress> keys = own_keys(incoming.keys);
    incoming.keys.clear();
    incoming.dropped_files.clear();

    scene::Drawing stage;
    std::vector<PlacedDrawing> pictures;
    if (help_open_) {
        help_open_ = !draw_help(style_, window_.size_px(), keys);
    } else if (shelf_state_.open) {
        const ShelfOutcome outcome =
            draw_shelf(style_, shelf_content(), window_.size_px(), keys, shelf_state_);
        pictures = outcome.pictures;
        if (outcome.opened)
            open_card(*outcome.opened);
    } else {
        stage = run_stage(layout, keys, seconds);
        paint_labels(stage, Point::Zero(), style_, *ImGui::GetBackgroundDrawList());
        const auto edge = static_cast<float>(layout.column_at_px.x());
        if (!layout.narrow)
            ImGui::GetBackgroundDrawList()->AddLine(
                {edge, 0.0F}, {edge, static_cast<float>(layout.column_px.y())},
                style_.mark(Role::hairline), 1.0F);
    }
    paint(stage, pictures);
    ++frame_count_;
    if (narration_file_.is_open()) {
        narration_file_ << narration_.to_json(frame_count_) << '\n';
        narration_file_.flush();
    }
}

void Application::paint(const scene::Drawing& stage, const std::vector<PlacedDrawing>& pictures) {
    records_.clear();
    append_shapes(stage, Point::Zero(), style_.look, records_);
    for (const PlacedDrawing& picture : pictures)
        append_shapes(*picture.drawing, picture.at_px, style_.look, records_);
    const double device_pixels = window_.device_pixels();
    const Point size_px = window_.size_px();
    const scene::Rgb sheet = scene::colour_of(Role::sheet, style_.look);
    glViewport(0, 0, static_cast<int>(std::lround(size_px.x() * device_pixels)),
               static_cast<int>(std::lround(size_px.y() * device_pixels)));
    glDisable(GL_SCISSOR_TEST);
    glClearColor(static_cast<float>(sheet.red) / 255.0F, static_cast<float>(sheet.green) / 255.0F,
                 static_cast<float>(sheet.blue) / 255.0F, 1.0F);
    glClear(GL_COLOR_BUFFER_BIT);
    painter_.paint(records_, size_px, device_pixels);
    window_.end_frame();
}

void Application::save_work() {
    save_due_s_ = 0.0;
    const Point size_px = window_.size_px();
    const Preferences preferences{style_.look, bench_.model.units, text_size_,
                                  static_cast<int>(size_px.x()), static_cast<int>(size_px.y())};
    const std::string fault =
        saved_.save(preferences, {bench_.model.state.setup, bench_.model.state.hand_N});
    if (!fault.empty())
        bench_.model.message = fault;
}

} // namespace steelyard::app

#include "app/application.h"

#include "app/help/help_view.h"
#include "app/paint/label_painter.h"
#include "setup/lesson.h"

#include <GLFW/glfw3.h>
#include <glad/gl.h>

#include <algorithm>
#include <cmath>
#include <utility>

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
/// Longer than anyone waits [s]: nothing is due.
constexpr double kForEver_s = 1e9;

std::size_t index_of(PlaceName name) {
    return static_cast<std::size_t>(name);
}

bool is_lesson(const std::string& path) {
    const std::string_view ending = setup::kLessonEnding;
    return path.size() > ending.size() &&
           path.compare(path.size() - ending.size(), ending.size(), ending) == 0;
}

} // namespace

Application::Application(Window window, ShapePainter painter, SavedWork saved,
                         std::filesystem::path data_folder)
    : window_(std::move(window)),
      painter_(std::move(painter)), around_{Library(std::move(data_folder)), std::move(saved)} {
    const Preferences last = around_.saved.load_preferences();
    prefer(last);
    shown_around_ = last.shown_around;
    go_to(last.ended_well ? PlaceName::start : place_named(last.place));
}

void Application::tell_to(std::ofstream file) {
    narration_file_ = std::move(file);
}

void Application::run() {
    last_frame_s_ = glfwGetTime();
    while (!window_.wants_to_close()) {
        if (!wait_for_frame()) {
            run_beside();
            continue;
        }
        const double now_s = glfwGetTime();
        frame(now_s - last_frame_s_);
        run_beside();
        last_frame_s_ = now_s;
    }
    open_ = false;
    save_work();
}

/// Waits until a frame is owed: at once after an event, a sixtieth later while something moves,
/// and for ever otherwise, so that an idle window costs nothing.
bool Application::wait_for_frame() {
    wait_for_events();
    if (save_due_s_ > 0.0 && glfwGetTime() >= save_due_s_)
        save_work();
    if (window_.incoming().anything || beside_stirred_) {
        tell_rest(false);
        frames_owed_ = kFramesAfterEvent;
        window_.incoming().anything = beside_stirred_ = false;
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
    const std::optional<double> next_s = place().next_frame_in_s();
    return place().moving() || (next_s && glfwGetTime() >= last_frame_s_ + *next_s);
}

void Application::wait_for_events() {
    glfwPollEvents();
    beside_stirred_ = look_beside() || beside_stirred_;
    if (frames_owed_ > 0 || window_.incoming().anything || beside_stirred_)
        return;
    if (place().moving())
        return glfwWaitEventsTimeout(std::max(1e-4, kFrame_s - (glfwGetTime() - last_frame_s_)));
    tell_rest(true);
    double wait_s = save_due_s_ > 0.0 ? save_due_s_ - glfwGetTime() : kForEver_s;
    if (const std::optional<double> next_s = place().next_frame_in_s())
        wait_s = std::min(wait_s, last_frame_s_ + *next_s - glfwGetTime());
    for (const std::unique_ptr<Place>& one : places_)
        if (one)
            wait_s = std::min(wait_s, one->beside_due_s().value_or(kForEver_s));
    if (wait_s < kForEver_s)
        glfwWaitEventsTimeout(std::max(1e-3, wait_s));
    else
        glfwWaitEvents();
    told_rest_ = false;
    beside_stirred_ = look_beside();
}

/// Further windows may be open also while their place is not the present one.
bool Application::look_beside() {
    bool stirred = false;
    for (const std::unique_ptr<Place>& one : places_)
        stirred = (one && one->beside_stirred()) || stirred;
    return stirred;
}

/// Further windows are drawn after the main one, and by themselves when only they are due.
void Application::run_beside() {
    for (const std::unique_ptr<Place>& one : places_) {
        const Narration* told = one ? one->run_beside(window_, style_) : nullptr;
        if (told != nullptr && narration_file_.is_open())
            narration_file_ << told->to_json(++frame_count_, "presenter") << std::endl;
    }
}

/// Who follows the narration need not guess from silence whether all has been said: after whatever
/// wakes the window, also when it changes nothing, it says again that it rests.
void Application::tell_rest(bool rests) {
    if (!narration_file_.is_open() || told_rest_ == rests)
        return;
    told_rest_ = rests;
    narration_file_ << Narration::rest_to_json(rests, save_due_s_ == 0.0) << std::endl;
}

void Application::prepare_style() {
    const double scale =
        place().own_type_scale(window_.size_px()).value_or(text_size_ * window_.content_scale());
    if (scale == fonts_for_)
        return;
    fonts_for_ = scale;
    style_.fonts = load_fonts(static_cast<float>(scale));
    window_.renew_font_texture();
    apply_to_imgui(style_);
    for (const std::unique_ptr<Place>& one : places_)
        if (one)
            one->refit();
}

StagePointer Application::read_pointer(const Layout& layout) {
    const ImGuiIO& io = ImGui::GetIO();
    StagePointer pointer;
    pointer.at_px = {io.MousePos.x, io.MousePos.y};
    const bool inside = pointer.at_px.x() >= 0.0 && pointer.at_px.y() >= 0.0 &&
                        pointer.at_px.x() < layout.stage_px.x() &&
                        pointer.at_px.y() < layout.stage_px.y();
    pointer.on_stage = inside && !io.WantCaptureMouse;
    pointer.pressed = pointer.on_stage && ImGui::IsMouseClicked(ImGuiMouseButton_Left);
    pointer.released = ImGui::IsMouseReleased(ImGuiMouseButton_Left);
    pointer.double_clicked =
        std::exchange(window_.incoming().double_clicked, false) && pointer.on_stage;
    if (pointer.pressed)
        pointer.at_px = window_.incoming().pressed_at_px;
    pointer.panning = pointer.on_stage && (ImGui::IsMouseDown(ImGuiMouseButton_Middle) ||
                                           ImGui::IsMouseDown(ImGuiMouseButton_Right));
    pointer.moved_px = {io.MouseDelta.x, io.MouseDelta.y};
    pointer.wheel = pointer.on_stage ? io.MouseWheel : 0.0;
    pointer.snap_off = io.KeyAlt;
    return pointer;
}

// --- keys and places -----------------------------------------------------------------------------

/// Keys of the whole window; what is left goes to the place.
std::vector<KeyPress> Application::own_keys(const std::vector<KeyPress>& keys) {
    if (ImGui::GetIO().WantTextInput)
        return {};
    std::vector<KeyPress> left;
    for (const KeyPress& key : keys)
        if (place().claims(key) || !handle_key(key))
            left.push_back(key);
    return left;
}

bool Application::handle_control_key(int key) {
    Preferences wanted = preferences();
    if (key == GLFW_KEY_EQUAL || key == GLFW_KEY_KP_ADD)
        wanted.text_size = next_text_size(wanted.text_size, 1);
    else if (key == GLFW_KEY_MINUS || key == GLFW_KEY_KP_SUBTRACT)
        wanted.text_size = next_text_size(wanted.text_size, -1);
    else
        return false;
    prefer(wanted);
    return true;
}

bool Application::handle_key(const KeyPress& key) {
    if ((key.modifiers & GLFW_MOD_CONTROL) != 0)
        return handle_control_key(key.key);
    if (key.key == GLFW_KEY_D) {
        Preferences wanted = preferences();
        wanted.look = next_look(wanted.look);
        prefer(wanted);
        return true;
    }
    if (page_ != Page::none || place().covers_window())
        return false;
    if (key.key == GLFW_KEY_F1) {
        grant(RowWish::help);
    } else if (key.key == GLFW_KEY_O && place().shelf_word() != nullptr) {
        grant(RowWish::open_shelf);
    } else if (key.key == GLFW_KEY_U) {
        around_.units =
            around_.units == setup::UnitSystem::si ? setup::UnitSystem::us : setup::UnitSystem::si;
        save_soon();
    } else if (key.key == GLFW_KEY_W) {
        go_to(PlaceName::workshop);
    } else if (key.key == GLFW_KEY_B) {
        go_to(place_name_ == PlaceName::bench ? PlaceName::body : PlaceName::bench);
    } else {
        const auto places = place_list();
        const auto at = static_cast<std::size_t>(key.key - GLFW_KEY_F2);
        if (key.key < GLFW_KEY_F2 || at >= places.size())
            return false;
        go_to(places[at].name);
    }
    return true;
}

void Application::draw_row(const Layout& layout) {
    const PlacesRow row{place_name_, place().shelf_word(), place().can_undo(), place().can_redo()};
    const double width_px = place().has_column() ? layout.stage_px.x() : window_.size_px().x();
    const RowPress pressed = draw_places_row(style_, static_cast<float>(width_px), row);
    if (const auto* name = std::get_if<PlaceName>(&pressed))
        go_to(*name);
    else if (const auto* wish = std::get_if<RowWish>(&pressed))
        grant(*wish);
}

void Application::grant(RowWish wish) {
    switch (wish) {
    case RowWish::open_shelf:
        return place().open_shelf();
    case RowWish::undo:
        place().undo();
        return save_soon();
    case RowWish::redo:
        place().redo();
        return save_soon();
    case RowWish::settings:
        page_ = Page::settings;
        return;
    case RowWish::help:
        page_ = Page::help;
        return;
    }
}

Place& Application::place(PlaceName name) {
    std::unique_ptr<Place>& kept = places_[index_of(name)];
    if (!kept)
        kept = entry_of(name).make(around_);
    return *kept;
}

void Application::go_to(PlaceName name) {
    if (save_due_s_ > 0.0) // the start tells what was kept
        save_work();
    place_name_ = name;
    place().enter(around_);
    save_soon();
}

void Application::run_errand(const Errand& errand) {
    if (const auto* go = std::get_if<GoTo>(&errand)) {
        go_to(go->place);
        place().enter_part(go->part);
    } else if (const auto* show = std::get_if<ShowSetup>(&errand)) {
        open_setup(show->setup);
    } else if (const auto* bring = std::get_if<BringFrom>(&errand)) {
        take_up_from(bring->place);
    } else {
        tour_ = {true, 0};
        shown_around_ = true;
        go_to(tour_place(tour_));
    }
}

void Application::take_up_from(PlaceName name) {
    place(name).enter(around_);
    if (const auto stage = place(name).stage())
        place().take_up(*stage, around_);
    save_soon();
}

void Application::open_setup(const setup::Setup& setup) {
    go_to(place_of(setup));
    place().show(setup, around_);
}

void Application::take_dropped_files(const std::vector<std::string>& paths) {
    for (const std::string& path : paths) {
        if (is_lesson(path)) {
            go_to(PlaceName::workshop);
            place().open_file(path, around_);
            continue;
        }
        const auto setup = setup::read_setup(path);
        if (setup)
            open_setup(*setup);
        else
            place().tell(setup::to_text(setup.error()));
    }
}

// --- a frame -------------------------------------------------------------------------------------

PlaceFrame Application::run_place(const Layout& layout, const std::vector<KeyPress>& keys,
                                  double seconds) {
    const bool covered = place().covers_window();
    if (!covered)
        draw_row(layout);
    const PlaceInput input{
        style_, layout, window_.size_px(), {&keys, read_pointer(layout), seconds}, around_};
    PlaceFrame shown = place().run(input);
    paint_labels(shown.drawing, Point::Zero(), style_, *ImGui::GetBackgroundDrawList());
    const auto edge = static_cast<float>(layout.column_at_px.x());
    if (!layout.narrow && !covered && place().has_column())
        ImGui::GetBackgroundDrawList()->AddLine({edge, 0.0F},
                                                {edge, static_cast<float>(layout.column_px.y())},
                                                style_.mark(Role::hairline), 1.0F);
    if (shown.changed)
        save_soon();
    return shown;
}

/// The place lies still under the look around: its words are found where it has drawn them.
void Application::run_tour_step(const std::vector<KeyPress>& keys) {
    run_tour(style_, window_.size_px(), narration_, keys, tour_);
    const PlaceName wanted = tour_.open ? tour_place(tour_) : place_name_;
    if (wanted != place_name_)
        go_to(wanted);
}

void Application::run_page(const std::vector<KeyPress>& keys) {
    bool stays = true;
    if (page_ == Page::help) {
        stays = !draw_help(style_, window_.size_px(), keys, around_.library.sources());
    } else {
        Preferences wanted = preferences();
        stays = draw_settings(style_, window_.size_px(), keys, settings_, wanted);
        prefer(wanted);
    }
    if (!stays)
        page_ = Page::none;
}

void Application::frame(double seconds) {
    prepare_style();
    window_.begin_frame();
    narration_.begin_frame();
    const Layout layout = lay_out(window_.size_px(), style_.fonts.scale);
    Incoming& incoming = window_.incoming();
    take_dropped_files(incoming.dropped_files);
    const bool touring = tour_.open;
    style_.narration = touring || narration_file_.is_open() ? &narration_ : nullptr;
    const std::vector<KeyPress> keys = touring ? incoming.keys : own_keys(incoming.keys);
    incoming.keys.clear();
    incoming.dropped_files.clear();
    PlaceFrame shown;
    if (page_ != Page::none)
        run_page(keys);
    else
        shown = run_place(layout, touring ? std::vector<KeyPress>{} : keys, seconds);
    if (touring)
        run_tour_step(keys);
    paint(shown);
    ++frame_count_;
    if (narration_file_.is_open())
        narration_file_ << narration_.to_json(frame_count_) << std::endl;
    if (shown.errand)
        run_errand(*shown.errand);
}

void Application::paint(const PlaceFrame& shown) {
    records_.clear();
    append_shapes(shown.drawing, Point::Zero(), style_.look, records_);
    for (const PlacedDrawing& picture : shown.pictures)
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

// --- what is remembered --------------------------------------------------------------------------

Preferences Application::preferences() const {
    const Point size_px = window_.size_px();
    return {style_.look,
            around_.units,
            text_size_,
            around_.less_motion,
            entry_of(place_name_).word,
            !open_,
            shown_around_,
            static_cast<int>(size_px.x()),
            static_cast<int>(size_px.y())};
}

/// Takes up preferences; what has not changed costs nothing.
void Application::prefer(const Preferences& wanted) {
    const Preferences present = preferences();
    const bool other = wanted.look != present.look || wanted.units != present.units ||
                       wanted.text_size != present.text_size ||
                       wanted.less_motion != present.less_motion;
    if (!other)
        return;
    style_.look = wanted.look;
    around_.units = wanted.units;
    text_size_ = wanted.text_size;
    around_.less_motion = wanted.less_motion;
    if (ImGui::GetIO().Fonts->IsBuilt())
        apply_to_imgui(style_);
    frames_owed_ = kFramesAfterEvent;
    save_soon();
}

void Application::save_soon() {
    save_due_s_ = glfwGetTime() + kSaveAfter_s;
}

void Application::save_work() {
    save_due_s_ = 0.0;
    told_rest_ = false;
    std::string fault = around_.saved.save_preferences(preferences());
    for (const std::unique_ptr<Place>& one : places_)
        if (one && fault.empty())
            fault = one->keep(around_.saved);
    if (!fault.empty())
        place().tell(fault);
}

} // namespace steelyard::app

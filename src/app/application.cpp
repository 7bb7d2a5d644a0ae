#include "app/application.h"

#include "app/frame/stage_pointer.h"
#include "app/glossary/print_glossary.h"
#include "app/help/help_view.h"
#include "app/notice/notice.h"
#include "app/own/own_files.h"
#include "app/paint/label_painter.h"
#include "app/platform/clock.h"

#include <algorithm>
#include <limits>
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
/// Nothing is due [s].
constexpr double kForEver_s = std::numeric_limits<double>::infinity();
/// A minimised window looks up this often [s].
constexpr double kMinimised_s = 0.2;
/// A frame may be this much early [s]: clocks and screens do not agree to the microsecond.
constexpr double kEarly_s = 5e-4;

} // namespace

Application::Application(Window window, ShapePainter painter, SavedWork saved,
                         std::filesystem::path data_folder, std::filesystem::path record_folder,
                         publish::Tools tools)
    : window_(std::move(window)),
      painter_(std::move(painter)), around_{Library(std::move(data_folder)), std::move(saved),
                                            std::move(record_folder), std::move(tools)},
      links_(around_.library.data_folder() / "assets") {
    if (const std::vector<std::string> faults = around_.saved.faults(); !faults.empty())
        notice_ = faults.front();
    const Preferences last = around_.saved.load_preferences();
    wishes_ = system_wishes();
    prefer(last);
    shown_around_ = last.shown_around;
    last_frame_s_ = now_s();
    go_to(last.ended_well ? place_list().front().name : place_named(last.place));
}

void Application::tell_to(std::ofstream file) {
    narration_file_ = std::move(file);
}

double Application::rest_s() {
    notice_arrivals();
    if (is_minimised())
        return std::max(kMinimised_s, until_due_s());
    if (frames_owed_ > 0)
        return 0.0;
    if (is_moving())
        return std::max(0.0, kFrame_s - (now_s() - last_frame_s_));
    tell_rest(true);
    rested_ = true;
    return until_due_s();
}

/// Until something is due by itself [s].
double Application::until_due_s() {
    double wait_s = save_due_s_ > 0.0 ? save_due_s_ - now_s() : kForEver_s;
    if (const std::optional<double> next_s = place().next_frame_in_s())
        wait_s = std::min(wait_s, last_frame_s_ + *next_s - now_s());
    for (const std::unique_ptr<Place>& one : places_)
        if (const auto* beside = ability_of<FurtherWindows>(one.get()))
            wait_s = std::min(wait_s, beside->beside_due_s().value_or(kForEver_s));
    return std::max(0.0, wait_s);
}

void Application::notice_arrivals() {
    beside_stirred_ = look_beside() || beside_stirred_;
    if (!window_.incoming().anything && !beside_stirred_)
        return;
    tell_rest(false);
    frames_owed_ = kFramesAfterEvent;
    window_.incoming().anything = beside_stirred_ = false;
}

void Application::turn() {
    if (std::exchange(rested_, false))
        told_rest_ = false;
    if (window_.wants_to_close())
        return close();
    notice_arrivals();
    if (save_due_s_ > 0.0 && now_s() >= save_due_s_)
        save_work();
    if (owes_frame()) {
        const double now = now_s();
        frame(now - last_frame_s_);
        last_frame_s_ = now;
    }
    run_beside();
}

bool Application::owes_frame() {
    if (is_minimised()) {
        frames_owed_ = 0;
        return false;
    }
    if (frames_owed_ > 0) {
        --frames_owed_;
        return true;
    }
    if (is_moving())
        return now_s() - last_frame_s_ >= kFrame_s - kEarly_s;
    const std::optional<double> next_s = place().next_frame_in_s();
    return next_s && now_s() >= last_frame_s_ + *next_s;
}

void Application::close() {
    open_ = false;
    save_work();
}

/// Further windows may be open also while their place is not the present one.
bool Application::look_beside() {
    bool stirred = false;
    for (const std::unique_ptr<Place>& one : places_)
        if (auto* beside = ability_of<FurtherWindows>(one.get()))
            stirred = beside->beside_stirred() || stirred;
    return stirred;
}

/// Further windows are drawn after the main one, and by themselves when only they are due.
void Application::run_beside() {
    for (const std::unique_ptr<Place>& one : places_) {
        auto* beside = ability_of<FurtherWindows>(one.get());
        const Narration* told = beside != nullptr ? beside->run_beside(window_, style_) : nullptr;
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
    const Point size_px = window_.size_px();
    const double desktop = window_.content_scale();
    const double scale = shape().type_scale.value_or(text_size_ * desktop *
                                                     growth_of(size_px / desktop, text_size_));
    const double pixels = window_.device_pixels();
    if (scale == fonts_for_ && pixels == font_pixels_)
        return;
    fonts_for_ = scale;
    font_pixels_ = pixels;
    style_.fonts = load_fonts(static_cast<float>(scale), static_cast<float>(pixels));
    window_.renew_font_texture();
    apply_to_imgui(style_);
    for (const std::unique_ptr<Place>& one : places_)
        if (one)
            one->refit();
}

// --- a frame -------------------------------------------------------------------------------------

PlaceFrame Application::run_place(const Layout& layout, const std::vector<KeyPress>& keys,
                                  double seconds) {
    const bool covered = shape().covers_window;
    if (!covered)
        draw_row(layout);
    const PlaceInput input{style_,
                           layout,
                           window_.size_px(),
                           {&keys, read_stage_pointer(window_.incoming(), layout), seconds},
                           around_};
    PlaceFrame shown = place().run(input);
    paint_labels(shown.stage(), Point::Zero(), style_, *ImGui::GetBackgroundDrawList());
    const auto edge = static_cast<float>(layout.column_at_px.x());
    if (!layout.narrow && !covered && shape().has_column)
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

void Application::open_glossary_at(std::optional<std::size_t> term) {
    if (glossary_.terms.empty())
        glossary_ = open_glossary(around_.library.data_folder() / "assets");
    if (term && *term < glossary_.terms.size()) {
        glossary_.search.clear(); // which may hide it
        glossary_.chosen = *term;
    }
    glossary_.wants_keyboard = glossary_.brings_up = true;
    page_ = Page::glossary;
}

void Application::run_notice(const std::vector<KeyPress>& keys) {
    if (draw_notice(style_, window_.size_px(), keys, notice_))
        notice_.clear();
}

/// @return true while the page stays
bool Application::run_keep(const std::vector<KeyPress>& keys) {
    const KeepFrame frame =
        draw_keep(style_, window_.size_px(), keys, around_.library.own(), keep_);
    if (frame.kept) {
        able<Keeping>()->was_kept(keep_.name, *frame.kept);
        save_soon();
    }
    const auto* lending = able<Lending>();
    if (frame.picture && lending != nullptr)
        take_along(*frame.picture, lending->stage());
    return !frame.close;
}

/// Begins to make a picture of what is on the stage.
void Application::take_along(const PictureKind& kind,
                             const std::optional<lesson::LessonStage>& stage) {
    const auto& muscles = around_.library.muscles();
    if (stage)
        start(keep_.taking, kind,
              {*stage, muscles ? *muscles : std::vector<mechanics::Muscle>{}, style_.look,
               kPictureShapes[keep_.shape].size, keep_.has_sheet, keep_.plot,
               own_folder_of("pictures"), around_.tools});
}

bool Application::is_moving() {
    return place().moving() || (page_ == Page::keep && keep_.taking.is_busy());
}

PlaceFrame Application::run_page(const Layout& layout, const std::vector<KeyPress>& keys) {
    PlaceFrame shown;
    bool stays = true;
    if (page_ == Page::glossary) {
        const auto& muscles = around_.library.muscles();
        const std::vector<mechanics::Muscle> none; // a temporary here would copy the muscles
        GlossaryFrame frame = draw_glossary(style_, layout, keys, around_.units,
                                            muscles ? *muscles : none, glossary_);
        paint_labels(frame.drawing, Point::Zero(), style_, *ImGui::GetBackgroundDrawList());
        shown.drawing = std::move(frame.drawing);
        stays = !frame.close;
        if (frame.print)
            glossary_.remark =
                print_glossary(glossary_.terms, own_folder_of("handouts"), around_.tools,
                               around_.units == setup::UnitSystem::us ? publish::PaperSize::letter
                                                                      : publish::PaperSize::a4);
    } else if (page_ == Page::keep) {
        stays = run_keep(keys);
    } else if (page_ == Page::help) {
        stays = !draw_help(style_, window_.size_px(), keys, around_.library.sources());
    } else {
        Preferences wanted = preferences();
        stays = draw_settings(style_, window_.size_px(), keys, settings_, wanted);
        prefer(wanted);
    }
    if (!stays)
        page_ = Page::none;
    return shown;
}

void Application::frame(double seconds) {
    follow_system();
    prepare_style();
    window_.begin_frame();
    narration_.begin_frame();
    const Layout layout = lay_out(window_.size_px(), style_.fonts.scale);
    Incoming& incoming = window_.incoming();
    take_dropped_files(incoming.dropped_files);
    incoming.dropped_files.clear();
    std::vector<KeyPress> keys;
    keys.swap(incoming.keys);
    const bool touring = tour_.open;
    const bool covered = touring || !notice_.empty(); // what lies over the place has the keys
    style_.narration = touring || narration_file_.is_open() ? &narration_ : nullptr;
    style_.letters = covered ? nullptr : &letters_;
    const std::vector<KeyPress> below = covered ? std::vector<KeyPress>{} : own_keys(keys);
    style_.terms = covered ? nullptr : &links_;
    links_.begin_frame();
    PlaceFrame shown;
    if (page_ != Page::none)
        shown = run_page(layout, below);
    else
        shown = run_place(layout, below, seconds);
    if (!notice_.empty())
        run_notice(keys);
    else if (touring)
        run_tour_step(keys);
    paint(shown);
    ++frame_count_;
    if (narration_file_.is_open())
        narration_file_ << narration_.to_json(frame_count_) << std::endl;
    if (shown.wish)
        grant(*shown.wish);
    if (links_.pressed())
        open_glossary_at(links_.pressed());
}

void Application::paint(const PlaceFrame& shown) {
    records_.clear();
    append_shapes(shown.stage(), Point::Zero(), style_.look, records_);
    for (const PlacedDrawing& picture : shown.pictures)
        append_shapes(*picture.drawing, picture.at_px, style_.look, records_);
    window_.fill(scene::colour_of(Role::sheet, style_.look));
    painter_.paint(records_, window_.size_px(), window_.device_pixels());
    window_.end_frame();
}

// --- what is remembered --------------------------------------------------------------------------

Preferences Application::preferences() const {
    const Point size_px = window_.windowed_size_px();
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

void Application::follow_system() {
    const SystemWishes now = system_wishes();
    if (now == wishes_)
        return;
    prefer(following(preferences(), wishes_, now));
    wishes_ = now;
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
    save_due_s_ = now_s() + kSaveAfter_s;
}

void Application::save_work() {
    save_due_s_ = 0.0;
    told_rest_ = false;
    std::string fault = around_.saved.save_preferences(preferences());
    for (const std::unique_ptr<Place>& one : places_)
        if (one && fault.empty())
            fault = one->keep(around_.saved);
    if (!fault.empty())
        notice_ = std::move(fault);
}

} // namespace steelyard::app

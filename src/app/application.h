#pragma once
// The application: the window, the places in it, and what is the same in all of them.

#include "app/glossary/glossary_view.h"
#include "app/opened_file.h"
#include "app/own/keep_view.h"
#include "app/paint/shape_painter.h"
#include "app/place/abilities.h"
#include "app/place/place_list.h"
#include "app/place/places_row.h"
#include "app/platform/loop.h"
#include "app/platform/window.h"
#include "app/settings/settings_view.h"
#include "app/tour/tour.h"
#include "app/widgets/press_letters.h"
#include "app/widgets/told_text.h"

#include <array>
#include <fstream>
#include <optional>

namespace steelyard::app {

class Application : public Turns {
public:
    /// @param data_folder  holds assets/ and question_bank/; what is there is read when it is first
    ///                     asked for
    /// @param record_folder  holds the learners' record; empty = the usual one
    /// @param tools          what makes pages and pictures
    Application(Window window, ShapePainter painter, SavedWork saved,
                std::filesystem::path data_folder, std::filesystem::path record_folder = {},
                publish::Tools tools = {});

    /// Goes to the place that shows such a file, and shows it there.
    void open(const OpenedFile& file);

    /// Writes every frame's narration to a file from now on, and when the window comes to rest.
    void tell_to(std::ofstream file);

    /// A frame is owed at once after an event, a sixtieth of a second later while something moves,
    /// and never otherwise, so that an idle window costs nothing.
    double rest_s() override;
    /// Draws a frame if one is owed, keeps work when that is due.
    void turn() override;
    bool is_over() const override { return !open_; }

    /// Draws one frame, whatever came in: input first, then the screen.
    /// @param seconds  since the last frame
    void frame(double seconds);

private:
    /// Pages that lie over the place.
    enum class Page { none, help, settings, glossary, keep };

    void notice_arrivals();
    bool owes_frame();
    bool is_minimised() const { return window_.size_px().minCoeff() < 1.0; }
    double until_due_s();
    void close();
    bool look_beside();
    void run_beside();
    void prepare_style();
    std::vector<KeyPress> own_keys(const std::vector<KeyPress>& keys);
    bool handle_key(const KeyPress& key);
    bool handle_control_key(int key);
    void draw_row(const Layout& layout);
    void grant(RowWish wish);
    /// Opens the glossary, at a term where one is meant.
    void open_glossary_at(std::optional<std::size_t> term);
    void go_to(PlaceName name);
    Place& place() { return place(place_name_); }
    Place& place(PlaceName name);
    PlaceShape shape() { return place().shape(window_.size_px()); }
    template <typename Ability> Ability* able() { return ability_of<Ability>(&place()); }
    void grant(const PlaceWish& wish);
    void take_up_from(PlaceName name);
    PlaceFrame run_place(const Layout& layout, const std::vector<KeyPress>& keys, double seconds);
    void run_tour_step(const std::vector<KeyPress>& keys);
    bool run_keep(const std::vector<KeyPress>& keys);
    void take_along(const PictureKind& kind, const std::optional<lesson::LessonStage>& stage);
    bool is_moving();
    PlaceFrame run_page(const Layout& layout, const std::vector<KeyPress>& keys);
    void run_notice(const std::vector<KeyPress>& keys);
    void take_dropped_files(const std::vector<std::string>& paths);
    void paint(const PlaceFrame& shown);
    Preferences preferences() const;
    void follow_system();
    void prefer(const Preferences& preferences);
    void save_soon();
    void save_work();
    void tell_rest(bool rests);

    Window window_;
    ShapePainter painter_;
    Surroundings around_;
    Style style_;
    Narration narration_;
    std::ofstream narration_file_;
    std::array<std::unique_ptr<Place>, kPlaces> places_; ///< each made when it is first entered
    PlaceName place_name_{};                             ///< at first the first of the list
    Page page_ = Page::none;
    SystemWishes wishes_; ///< that the preferences follow
    SettingsState settings_;
    GlossaryState glossary_;
    KeepState keep_;
    Tour tour_;
    PressLetters letters_;
    TermLinks links_;
    std::string notice_; ///< said over the place until it is put away; empty = nothing
    bool shown_around_ = false;
    bool open_ = true;                 ///< false when the window is closed in an orderly way
    std::vector<ShapeRecord> records_; ///< kept from frame to frame
    double text_size_ = 1.0;           ///< chosen by the person, 0.8 to 2.5
    double fonts_for_ = 0.0;           ///< scale that the fonts were made for
    double font_pixels_ = 1.0;         ///< and device pixels
    int frames_owed_ = 3;
    bool beside_stirred_ = false; ///< something came in for a further window
    long frame_count_ = 0;
    double last_frame_s_ = 0.0;
    double save_due_s_ = 0.0; ///< 0 = nothing to save
    bool told_rest_ = false;
    bool rested_ = false; ///< nothing was due, and the turn follows a wait
};

} // namespace steelyard::app

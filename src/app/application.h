#pragma once
// The application: owns the models of all screens and runs their frames.

#include "app/bench/bench_screen.h"
#include "app/body/body_screen.h"
#include "app/frame/window.h"
#include "app/paint/shape_painter.h"
#include "app/places_row.h"
#include "app/question/question_screen.h"
#include "app/saved/saved_work.h"
#include "app/shelf/shelf_view.h"
#include "setup/setup.h"

#include <fstream>
#include <optional>

namespace steelyard::app {

class Application {
public:
    /// @param data_folder  holds assets/ and question_bank/; exercises and questions are read when
    ///                     they are first asked for
    Application(Window window, ShapePainter painter, Shelf levers, SavedWork saved,
                const SavedBench& first, std::filesystem::path data_folder);

    /// Puts a setup where it belongs: on the bench or on the body stage.
    void open_setup(const setup::Setup& setup);

    /// Writes every frame's narration to a file from now on.
    void tell_to(std::ofstream file);

    /// Draws frames as events come in, until the window is closed.
    void run();

    /// Draws one frame, whatever came in: input first, then the screen.
    /// @param seconds  since the last frame
    void frame(double seconds);

private:
    bool wait_for_frame();
    void prepare_style();
    StagePointer read_pointer(const Layout& layout) const;
    std::vector<KeyPress> own_keys(const std::vector<KeyPress>& keys);
    bool handle_key(const KeyPress& key);
    void draw_places(const Layout& layout);
    void grant(RowWish wish);
    void ask_question();
    scene::Drawing run_stage(const Layout& layout, const std::vector<KeyPress>& keys,
                             double seconds);
    void take_dropped_files(const std::vector<std::string>& paths);
    void open_lever(const setup::LeverSetup& setup);
    void show_body();
    ShelfContent shelf_content() const;
    void open_card(std::size_t index);
    scene::Drawing run_bench_place(const Layout& layout, const FrameInput& input);
    void paint(const scene::Drawing& stage, const std::vector<PlacedDrawing>& pictures);
    void save_work();

    Window window_;
    ShapePainter painter_;
    Shelf levers_;
    SavedWork saved_;
    Style style_;
    Narration narration_;
    std::ofstream narration_file_;
    Place place_ = Place::bench;
    BenchScreen bench_;
    ShelfState shelf_state_;
    std::filesystem::path data_folder_;
    std::optional<Shelf> exercises_;     ///< empty until the body is first shown
    std::optional<BodyScreen> body_;     ///< likewise
    std::optional<problems::Bank> bank_; ///< empty until the first question
    QuestionScreen question_;
    bool help_open_ = false;
    std::uint64_t question_seed_ = 0;
    std::vector<ShapeRecord> records_; ///< kept from frame to frame
    double text_size_ = 1.0;           ///< chosen by the person, 0.8 to 2.5
    double fonts_for_ = 0.0;           ///< scale that the fonts were made for
    int frames_owed_ = 3;
    long frame_count_ = 0;
    double last_frame_s_ = 0.0;
    double save_due_s_ = 0.0; ///< 0 = nothing to save
};

} // namespace steelyard::app

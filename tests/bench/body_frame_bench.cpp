// What a frame of the body costs while its load is dragged, at 1920×1080 with everything shown:
// through the real window by a frame of ImGui's own demonstration, and our part of it alone.

#include "allocations.h"
#include "app/body/body_screen.h"
#include "app/paint/label_painter.h"
#include "app/platform/key.h"
#include "app/unseen_sheet.h"
#include "bench/bench_window.h"
#include "setup/files/data_folder.h"
#include "setup/muscle/muscle_file.h"

#include <glad/gl.h>

#include <benchmark/benchmark.h>
#include <cmath>
#include <memory>

using namespace steelyard;

namespace {

const scene::Point kSheet_px{1920.0, 1080.0};

/// A whole figure with three axes and a long path: no stage that we ship has more on it.
std::optional<setup::BodySetup> full_exercise(benchmark::State& state) {
    auto setup =
        setup::read_setup(setup::data_folder() / "assets/setups/body/squat-bar-back.setup.toml");
    if (setup)
        if (auto* exercise = std::get_if<setup::BodySetup>(&*setup))
            return std::move(*exercise);
    state.SkipWithError("the squat cannot be read");
    return std::nullopt;
}

/// Every frame begins with a key that makes the load heavier or lighter, which solves the whole
/// path anew, and ends when the picture is there.
void frame_of_the_body(benchmark::State& state) {
    std::optional<app::Window> window = bench::open_window(state, kSheet_px);
    const std::optional<setup::BodySetup> exercise = full_exercise(state);
    if (!window || !exercise)
        return;
    app::Incoming& incoming = window->incoming();
    auto painter = app::ShapePainter::create();
    if (!painter) {
        state.SkipWithError(painter.error().c_str());
        return;
    }
    app::Application application(std::move(*window), std::move(*painter), app::SavedWork({}),
                                 setup::data_folder());
    application.open(setup::Setup(*exercise));
    bool heavier = false;
    for (auto _ : state) {
        heavier = !heavier;
        incoming.keys.push_back({heavier ? app::key::kPageUp : app::key::kPageDown, 0});
        application.frame(1.0 / 60.0);
        glFinish();
    }
}
BENCHMARK(frame_of_the_body)->UseRealTime()->MinTime(2.0)->Unit(benchmark::kMillisecond);

void frame_of_the_large_demo_window(benchmark::State& state) {
    std::optional<app::Window> window = bench::open_window(state, kSheet_px);
    if (!window)
        return;
    for (auto _ : state)
        bench::draw_demo_frame(*window);
}
BENCHMARK(frame_of_the_large_demo_window)
    ->UseRealTime()
    ->MinTime(2.0)
    ->Unit(benchmark::kMillisecond);

/// The longest that a frame may take for thirty of them in a second.
void a_thirtieth_of_a_second(benchmark::State& state) {
    for (auto _ : state)
        state.SetIterationTime(1.0 / 30.0);
}
BENCHMARK(a_thirtieth_of_a_second)->UseManualTime()->Iterations(1)->Unit(benchmark::kMillisecond);

// --- our part, without a window and its driver ---------------------------------------------------

/// The body's screen on a sheet that nobody sees.
class UnseenBody {
public:
    UnseenBody(const setup::BodySetup& exercise, std::vector<mechanics::Muscle> muscles) {
        screen_.model = app::make_body(exercise, std::move(muscles));
        app::open_exercise(screen_, exercise);
    }

    /// One frame, all that the window has done of it but OpenGL.
    void frame(const app::StagePointer& pointer) {
        ImGui::NewFrame();
        const app::BodyFrame outcome =
            app::run_body(sheet_.style, app::lay_out(kSheet_px, 1.0), {&keys_, pointer, 1.0 / 60.0},
                          setup::UnitSystem::si, screen_);
        app::paint_labels(*outcome.drawing, scene::Point::Zero(), sheet_.style,
                          *ImGui::GetBackgroundDrawList());
        records_.clear();
        app::append_shapes(*outcome.drawing, scene::Point::Zero(), sheet_.style.look, records_);
        ImGui::Render();
        benchmark::DoNotOptimize(records_.data());
    }

    /// Where the first load lies; the middle of the stage where there is none.
    scene::Point grip_px() {
        for (const app::BodyGrip& grip : app::grips_of(screen_.model, screen_.stage, screen_.hand))
            if (grip.part.kind == app::BodyPartKind::load && grip.hold == app::BodyHold::place)
                return grip.at_px;
        return 0.5 * screen_.stage.size_px;
    }
    app::BodyStamp stamp() const { return screen_.model.stamp(); }

private:
    app::UnseenSheet sheet_{kSheet_px};
    app::BodyScreen screen_;
    std::vector<app::KeyPress> keys_;
    std::vector<app::ShapeRecord> records_;
};

/// The fullest stage after some frames; null, and the benchmark given up, when it cannot be read.
std::unique_ptr<UnseenBody> settled_body(benchmark::State& state) {
    constexpr int kFramesToSettle = 10;
    const std::optional<setup::BodySetup> exercise = full_exercise(state);
    auto muscles = setup::shipped_muscles();
    if (!muscles)
        state.SkipWithError("the muscles cannot be read");
    if (!exercise || !muscles)
        return nullptr;
    auto body = std::make_unique<UnseenBody>(*exercise, *std::move(muscles));
    for (int i = 0; i < kFramesToSettle; ++i)
        body->frame({});
    return body;
}

/// The work of a frame while a load is dragged up and down: along its way through the repetition,
/// or with Alt held off it, so that every frame poses the body and solves the whole path anew.
void work_of_a_dragged_frame(benchmark::State& state, bool posing) {
    const std::unique_ptr<UnseenBody> body = settled_body(state);
    if (!body)
        return;
    app::StagePointer pointer;
    pointer.on_stage = true;
    pointer.snap_off = posing;
    const scene::Point taken_px = body->grip_px();
    pointer.at_px = taken_px;
    pointer.pressed = true;
    body->frame(pointer);
    pointer.pressed = false;
    long frames = 0;
    long moved = 0;
    const long before = allocations();
    for (auto _ : state) {
        ++frames;
        const double share = 0.5 - 0.5 * std::cos(0.05 * static_cast<double>(frames));
        const scene::Point at_px = taken_px - scene::Point(0.0, 200.0 * share);
        pointer.moved_px = at_px - pointer.at_px;
        pointer.at_px = at_px;
        const app::BodyStamp stamp = body->stamp();
        body->frame(pointer);
        moved += body->stamp() == stamp ? 0 : 1;
    }
    state.counters["allocations"] =
        static_cast<double>(allocations() - before) / static_cast<double>(frames);
    if (2 * moved < frames)
        state.SkipWithError("the load did not follow the pointer");
}
BENCHMARK_CAPTURE(work_of_a_dragged_frame, through_the_repetition, false)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(work_of_a_dragged_frame, posing, true)->Unit(benchmark::kMillisecond);

/// The work of a frame in which nothing is new: it takes nothing from the heap.
void work_of_a_steady_frame(benchmark::State& state) {
    const std::unique_ptr<UnseenBody> body = settled_body(state);
    if (!body)
        return;
    const long before = allocations();
    for (auto _ : state)
        body->frame({});
    const long taken = allocations() - before;
    state.counters["allocations"] = static_cast<double>(taken);
    if (taken != 0)
        state.SkipWithError(
            ("frames without anything new took " + std::to_string(taken) + " blocks from the heap")
                .c_str());
}
BENCHMARK(work_of_a_steady_frame)->Unit(benchmark::kMillisecond);

/// The longest that our part of a frame may take.
void one_and_a_half_milliseconds(benchmark::State& state) {
    for (auto _ : state)
        state.SetIterationTime(1.5e-3);
}
BENCHMARK(one_and_a_half_milliseconds)
    ->UseManualTime()
    ->Iterations(1)
    ->Unit(benchmark::kMillisecond);

} // namespace

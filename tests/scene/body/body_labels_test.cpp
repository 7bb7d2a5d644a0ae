// Every word on every shipped exercise, from every side: nothing that is read may be written over,
// struck by a line, laid over the figure or cut off.

#include "catch.h"
#include "scene/body/body_drawing.h"
#include "scene/body/posed_exercise.h"
#include "scene/label_counts.h"
#include "setup/muscle/muscle_file.h"
#include "words/body/body_words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <filesystem>

using namespace steelyard;
using namespace steelyard::scene;

namespace {

std::vector<std::string> shipped_exercises() {
    const std::string ending = ".setup.toml";
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(std::string(STEELYARD_SOURCE_DIR) +
                                                                 "/assets/setups/body")) {
        const std::string file = entry.path().filename().string();
        if (file.size() > ending.size() && file.ends_with(ending))
            names.push_back(file.substr(0, file.size() - ending.size()));
    }
    std::sort(names.begin(), names.end());
    return names;
}

/// One size where the sanitizers make every drawing slow: they look for other mistakes.
std::vector<Point> sizes_px() {
#ifdef STEELYARD_SANITIZED
    return {{940.0, 720.0}};
#else
    return {{880.0, 560.0}, {940.0, 720.0}, {1421.0, 1080.0}};
#endif
}

} // namespace

TEST_CASE(
    "no word on a shipped exercise is struck, covered, on the figure or cut off, from any side",
    "[body-labels]") {
    const auto muscles = setup::shipped_muscles();
    REQUIRE(muscles);
    LabelCounts counts;
    for (const std::string& name : shipped_exercises()) {
        const PosedExercise posed(name, 0.7);
        const auto reading = words::read_body(posed.setup, *muscles, posed.setup.axes, 0.7);
        REQUIRE(reading);
        for (const auto view : {setup::BodyView::side, setup::BodyView::front,
                                setup::BodyView::above, setup::BodyView::oblique})
            for (const Point& size_px : sizes_px())
                for (const double text_scale : {1.0, 1.5}) {
                    const BodyMargins margins{0.2 * size_px.x(), 0.2 * size_px.x(),
                                              0.16 * size_px.y() * text_scale,
                                              0.18 * size_px.y() * text_scale};
                    BodyDrawing how;
                    how.name = posed.setup.head.name;
                    how.text_scale = text_scale;
                    how.axes = posed.setup.axes;
                    how.muscles = reading->hinges.front().muscles;
                    const Drawing drawing = draw_body(
                        posed.here, posed.result,
                        fit_body(posed.here, {posed.result}, camera_of(view), size_px, margins),
                        how);
                    counts.add(drawing, text_scale,
                               name + " in view " + std::to_string(static_cast<int>(view)) +
                                   " on " + std::to_string(size_px.x()) + " px at " +
                                   std::to_string(text_scale));
                }
    }
    INFO(counts.told);
    CHECK(counts.drawings >= 60 * 4 * 2 * static_cast<int>(sizes_px().size()));
    CHECK(counts.words > 8 * counts.drawings);
    CHECK(counts.on_words == 0);
    CHECK(counts.struck == 0);
    CHECK(counts.on_figure == 0);
    CHECK(counts.off_sheet == 0);
}

namespace {

/// How often the words of an exercise change sides on the way through it and back.
int changes_of_sides(const std::string& name, bool kept) {
    LabelSides before;
    int changes = 0;
    constexpr int kSteps = 24;
    BodyStage stage = PosedExercise(name, 0.5).stage;
    for (int i = 0; i <= kSteps; ++i) {
        const double progress = 1.0 - std::abs(2.0 * i / kSteps - 1.0);
        const PosedExercise posed(name, progress);
        BodyDrawing how;
        how.axes = posed.setup.axes;
        LabelSides sides = kept ? before : LabelSides{};
        draw_body(posed.here, posed.result, stage, how, sides);
        for (const auto& [of, side] : sides)
            if (const auto found = before.find(of); found != before.end())
                changes += found->second * side < 0 ? 1 : 0;
        before = sides;
    }
    return changes;
}

} // namespace

TEST_CASE("words that know their sides change them less often while a repetition plays",
          "[body-labels]") {
    int kept = 0;
    int left_free = 0;
    for (const char* const name : {"curl-dumbbell", "squat-bar-back", "lateral-raise-straight",
                                   "hinge-bar-near", "overhead-press", "front-raise-bent"}) {
        kept += changes_of_sides(name, true);
        left_free += changes_of_sides(name, false);
    }
    INFO(kept << " changes instead of " << left_free);
    CHECK(3 * kept < 2 * left_free);
}

// Every word on the body's stage against every other, for the shipped exercises: what a learner
// reads must not be written over.

#include "app/body/body_screen.h"
#include "app/paint/label_painter.h"
#include "app/sample_body.h"
#include "app/unseen_sheet.h"
#include "catch.h"

using namespace steelyard;
using namespace steelyard::app;
using scene::Point;

namespace {

/// A text as it was set, with the room of its letters.
struct Word {
    std::string text;
    scene::Rect room;
};

/// What stands on the stage of an exercise when it opens, the words around it too.
std::vector<Word> words_on_stage(const setup::BodySetup& setup, const Point& window_px,
                                 setup::UnitSystem units) {
    UnseenSheet sheet(window_px);
    Narration told;
    sheet.style.narration = &told;
    BodyScreen screen;
    screen.model = make_body(setup, known_muscles());
    open_exercise(screen, setup);
    const Layout layout = lay_out(window_px, 1.0);
    const std::vector<KeyPress> keys;
    ImGui::NewFrame();
    const BodyOutcome outcome =
        run_body(sheet.style, layout, {&keys, {}, 1.0 / 60.0}, units, screen);
    paint_labels(*outcome.drawing, Point::Zero(), sheet.style, *ImGui::GetBackgroundDrawList());
    ImGui::Render();
    std::vector<Word> words;
    for (const Narration::Entry& entry : told.texts())
        if (entry.at_px.x() < layout.stage_px.x())
            // Capitals stand 0.73 em high, tails hang 0.22 em: the metrics of Inter 4.0. A hair
            // less, for letters that touch are not written over.
            words.push_back({entry.text,
                             {entry.at_px - Point(-1.0, 0.70 * entry.em_px),
                              entry.at_px + Point(entry.width_px - 1.0, 0.18 * entry.em_px)}});
    return words;
}

} // namespace

TEST_CASE("no word on the stage of a shipped exercise covers another, and all stay on it",
          "[body-overlap]") {
    for (const setup::BodySetup& setup : shipped_exercises())
        for (const Point& window_px : {Point(1280.0, 720.0), Point(1920.0, 1080.0)})
            for (const auto units : {setup::UnitSystem::si, setup::UnitSystem::us}) {
                const std::vector<Word> words = words_on_stage(setup, window_px, units);
                REQUIRE(words.size() > 10);
                for (std::size_t i = 0; i < words.size(); ++i) {
                    INFO(setup.head.name << " at " << window_px.x() << " px: '" << words[i].text
                                         << "'");
                    CHECK(words[i].room.low.minCoeff() >= 0.0);
                    CHECK(words[i].room.high.x() <= lay_out(window_px, 1.0).stage_px.x());
                    CHECK(words[i].room.high.y() <= window_px.y());
                    for (std::size_t j = 0; j < i; ++j) {
                        INFO("and '" << words[j].text << "'");
                        CHECK_FALSE(words[i].room.overlaps(words[j].room));
                    }
                }
            }
}

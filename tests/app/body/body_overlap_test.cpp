// Every word on the body's stage against every other, for the shipped exercises: what a learner
// reads must not be written over.

#include "app/body/body_screen.h"
#include "app/body/sample_body.h"
#include "app/paint/label_painter.h"
#include "app/unseen_sheet.h"
#include "catch.h"
#include "scene/body/body_forces.h"
#include "scene/figure/ring_union.h"

#include <array>

using namespace steelyard;
using namespace steelyard::app;
using scene::Point;

namespace {

/// A text as it was set, with the room of its letters.
struct Word {
    std::string text;
    scene::Rect room;
};

/// An exercise as its stage shows it when it opens.
struct Opened {
    BodyScreen screen;
    std::vector<Word> words; ///< on the stage and around it

    Opened(const setup::BodySetup& setup, const Point& window_px, setup::UnitSystem units) {
        UnseenSheet sheet(window_px);
        Narration told;
        sheet.style.narration = &told;
        screen.model = make_body(setup, known_muscles());
        open_exercise(screen, setup);
        const Layout layout = lay_out(window_px, 1.0);
        const std::vector<KeyPress> keys;
        ImGui::NewFrame();
        const BodyFrame frame =
            run_body(sheet.style, layout, {&keys, {}, 1.0 / 60.0}, units, screen);
        paint_labels(*frame.drawing, Point::Zero(), sheet.style, *ImGui::GetBackgroundDrawList());
        ImGui::Render();
        for (const Narration::Entry& entry : told.texts())
            if (entry.at_px.x() < layout.stage_px.x())
                // Capitals stand 0.73 em high, tails hang 0.22 em: the metrics of Inter 4.0. A hair
                // less, for letters that touch are not written over.
                words.push_back({entry.text,
                                 {entry.at_px - Point(-1.0, 0.70 * entry.em_px),
                                  entry.at_px + Point(entry.width_px - 1.0, 0.18 * entry.em_px)}});
    }
};

const std::array<Point, 2> kWindows_px{Point(1280.0, 720.0), Point(1920.0, 1080.0)};

/// How much of a rectangle a muscle fills [px²], by a raster of a pixel.
double covered_px2(const scene::Outline& muscle, const scene::Rect& room) {
    double sum_px2 = 0.0;
    for (double x = room.low.x() + 0.5; x < room.high.x(); x += 1.0)
        for (double y = room.low.y() + 0.5; y < room.high.y(); y += 1.0)
            for (const scene::Ring& ring : muscle.rings)
                sum_px2 += scene::is_inside({x, y}, ring) ? 1.0 : 0.0;
    return sum_px2;
}

} // namespace

TEST_CASE("no word on the stage of a shipped exercise covers another, and all stay on it",
          "[body-overlap]") {
    for (const setup::BodySetup& setup : shipped_exercises())
        for (const Point& window_px : kWindows_px)
            for (const auto units : {setup::UnitSystem::si, setup::UnitSystem::us}) {
                const std::vector<Word> words = Opened(setup, window_px, units).words;
                REQUIRE(words.size() >= 10);
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

TEST_CASE("no number of a joint stands on a muscle", "[body-overlap]") {
    int muscles = 0;
    for (const setup::BodySetup& setup : shipped_exercises())
        for (const Point& window_px : kWindows_px) {
            const Opened opened(setup, window_px, setup::UnitSystem::si);
            for (const scene::Shape& shape : opened.screen.picture.drawing.shapes) {
                const auto* muscle = std::get_if<scene::Outline>(&shape);
                if (muscle == nullptr || muscle->fill != scene::Role::effort)
                    continue;
                ++muscles;
                for (const Word& word : opened.words) {
                    INFO(setup.head.name << " at " << window_px.x() << " px: '" << word.text
                                         << "'");
                    CHECK(covered_px2(*muscle, word.room) < 12.0);
                }
            }
        }
    CHECK(muscles > 40); // each one form
}

TEST_CASE("the arrow of a load ends above what is written under the body, however heavy it gets",
          "[body-overlap]") {
    for (const setup::BodySetup& setup : shipped_exercises())
        for (const Point& window_px : kWindows_px) {
            Opened opened(setup, window_px, setup::UnitSystem::si);
            BodyScreen& screen = opened.screen;
            INFO(setup.head.name << " at " << window_px.x() << " px");
            for (int heavier = 0; heavier < 2; ++heavier) {
                for (const double progress : {0.0, 0.5, 1.0}) {
                    update(screen.model, Scrub{progress});
                    for (const auto& force : scene::seen_forces(screen.model.solved, screen.stage))
                        if (force.span.along_px.y() > 27.0) // a stub remains of any
                            CHECK(force.to().y() < screen.stage.lowest_tip_px + 1.0);
                }
                const BodyNumber size{{BodyPartKind::load, 0}, BodyField::size};
                if (const auto value = value_of(screen.model.standing(), size))
                    update(screen.model, SetBodyNumber{size, 4.0 * *value, 0});
            }
        }
}

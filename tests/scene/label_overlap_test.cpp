// Labels of the shipped levers against each other: what a learner reads must not be written over.

#include "catch.h"
#include "scene/lever/lever_drawing.h"
#include "scene/marks/label_board.h"
#include "setup/lever/lever_setup.h"

#include <algorithm>
#include <filesystem>

using namespace steelyard;
using namespace steelyard::scene;

namespace {

/// Where the bench has the numbers of the chosen part.
const Rect kPartBar{{24.0, 122.0}, {424.0, 160.0}};

std::vector<setup::LeverSetup> shipped_levers() {
    std::vector<std::filesystem::path> paths;
    for (const auto& entry :
         std::filesystem::directory_iterator(std::string(STEELYARD_SOURCE_DIR) + "/assets/setups"))
        if (entry.path().string().find(".setup.toml") != std::string::npos)
            paths.push_back(entry.path());
    std::sort(paths.begin(), paths.end());
    std::vector<setup::LeverSetup> levers;
    for (const auto& path : paths)
        if (auto setup = setup::read_lever_setup(path))
            levers.push_back(std::move(*setup));
    return levers;
}

std::vector<Label> labels_of(const setup::LeverSetup& setup, const Point& stage_px,
                             setup::UnitSystem units) {
    const auto solved = mechanics::solve_lever(setup.lever);
    REQUIRE(solved);
    // The margins of the bench.
    const double short_px = stage_px.minCoeff();
    const StageMargins margins{std::min(120.0, 0.16 * stage_px.x()),
                               std::min(170.0, 0.42 * short_px), std::min(140.0, 0.3 * short_px)};
    LeverDrawing how;
    how.name = setup.head.name;
    how.sentence = setup.head.description;
    how.units = units;
    how.heading_top_px = 72.0;
    how.heading_room_px = 92.0;
    const Drawing drawing =
        draw_lever(setup.lever, *solved, fit_lever(setup.lever, *solved, stage_px, margins), how);
    std::vector<Label> labels;
    for (const Shape& shape : drawing.shapes)
        if (const auto* label = std::get_if<Label>(&shape))
            labels.push_back(*label);
    return labels;
}

/// The part of a label that another lies on, without the hair of air around letters.
bool covers(const Label& one, const Label& other) {
    Rect a = room_of(one, 1.0);
    const Rect b = room_of(other, 1.0);
    a.low += Point(1.0, 1.0);
    a.high -= Point(1.0, 1.0);
    return a.overlaps(b);
}

} // namespace

TEST_CASE("no label of a shipped lever covers another") {
    int levers = 0;
    for (const setup::LeverSetup& setup : shipped_levers()) {
        ++levers;
        for (const Point& stage_px : {Point(940.0, 720.0), Point(1421.0, 1080.0)})
            for (const auto units : {setup::UnitSystem::si, setup::UnitSystem::us}) {
                const std::vector<Label> labels = labels_of(setup, stage_px, units);
                for (std::size_t i = 0; i < labels.size(); ++i)
                    for (std::size_t j = 0; j < i; ++j) {
                        INFO(setup.head.name << " on " << stage_px.x() << " px: '" << labels[i].text
                                             << "' and '" << labels[j].text << "'");
                        CHECK_FALSE(covers(labels[i], labels[j]));
                    }
            }
    }
    CHECK(levers >= 12);
}

TEST_CASE("every label of a shipped lever stays on the stage") {
    for (const setup::LeverSetup& setup : shipped_levers())
        for (const Point& stage_px : {Point(940.0, 720.0), Point(1421.0, 1080.0)})
            for (const Label& label : labels_of(setup, stage_px, setup::UnitSystem::si)) {
                if (label.text == setup.head.description)
                    continue; // a sentence may be longer than a small stage; it stands at the top
                const Rect room = room_of(label, 1.0);
                INFO(setup.head.name << " on " << stage_px.x() << " px: '" << label.text << "'");
                CHECK_FALSE(room.overlaps(kPartBar));
                CHECK(room.low.minCoeff() >= 0.0);
                CHECK(room.high.x() <= stage_px.x());
                CHECK(room.high.y() <= stage_px.y());
            }
}

#include "app/progress/stair_layout.h"
#include "learner/shipped_course.h"

#include <algorithm>

namespace steelyard::app {

namespace {

std::vector<learner::Stair> shipped_stairs() {
    const learner::Course& course = learner::shipped_course();
    return staircase(course, fresh_standing(course), {learner::kEvening_ms, 0});
}

} // namespace

TEST_CASE("Steps never overlap, stay within the width, and rise to the right with their level") {
    const std::vector<learner::Stair> stairs = shipped_stairs();
    for (const double width_px : {320.0, 620.0, 940.0, 1420.0}) {
        INFO(width_px);
        const StairLayout layout = lay_stairs(stairs, {width_px, 640.0}, 190.0, 56.0);
        REQUIRE(layout.steps.size() == stairs.size());
        for (std::size_t i = 0; i < layout.steps.size(); ++i) {
            const Step& one = layout.steps[i];
            CHECK(one.corner_px.x() >= 0.0);
            CHECK(one.corner_px.x() + one.size_px.x() <= width_px);
            for (std::size_t j = 0; j < i; ++j) {
                const Step& other = layout.steps[j];
                const scene::Point away = (one.corner_px - other.corner_px).cwiseAbs();
                CHECK((away.x() >= one.size_px.x() || away.y() >= one.size_px.y()));
                if (stairs[one.stair].level > stairs[other.stair].level)
                    CHECK(one.corner_px.y() < other.corner_px.y());
            }
        }
    }
}

TEST_CASE("Arrows reach every step from the foot") {
    const StairLayout layout = lay_stairs(shipped_stairs(), {940.0, 640.0}, 190.0, 56.0);
    std::vector<bool> seen(layout.steps.size(), false);
    std::vector<std::size_t> open{0};
    while (!open.empty()) {
        const std::size_t at = open.back();
        open.pop_back();
        if (seen[at])
            continue;
        seen[at] = true;
        for (const int way : {1, -1}) {
            open.push_back(neighbour(layout, at, way, 0));
            open.push_back(neighbour(layout, at, 0, way));
        }
    }
    CHECK(std::all_of(seen.begin(), seen.end(), [](bool one) { return one; }));
}

} // namespace steelyard::app

#include "app/progress/stair_layout.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace steelyard::app {

namespace {

constexpr double kGap_px = 8.0;

/// A row of steps of one level, by their indices.
using Row = std::vector<std::size_t>;

std::vector<Row> stair_rows(const std::vector<learner::Stair>& stairs, std::size_t columns) {
    std::vector<Row> rows;
    for (std::size_t i = 0; i < stairs.size(); ++i) {
        const bool opens = rows.empty() || rows.back().size() == columns ||
                           stairs[rows.back().front()].level != stairs[i].level;
        if (opens)
            rows.emplace_back();
        rows.back().push_back(i);
    }
    return rows;
}

/// Steps of the level that has most.
std::size_t widest_level(const std::vector<learner::Stair>& stairs) {
    std::size_t most = 0;
    std::size_t run = 0;
    for (std::size_t i = 0; i < stairs.size(); ++i) {
        run = i > 0 && stairs[i].level == stairs[i - 1].level ? run + 1 : 1;
        most = std::max(most, run);
    }
    return most;
}

double middle(const Step& step) {
    return step.corner_px.x() + 0.5 * step.size_px.x();
}

} // namespace

StairLayout lay_stairs(const std::vector<learner::Stair>& stairs, const scene::Point& size_px,
                       double least_px, double step_height_px) {
    StairLayout layout;
    if (stairs.empty())
        return layout;
    const int top_level = stairs.back().level;
    // Each level begins further to the right; the widest one still fits.
    const double indent_px =
        top_level > 1 ? std::min(14.0, 0.15 * size_px.x() / (top_level - 1)) : 0.0;
    const double room_px = size_px.x() - indent_px * (top_level - 1);
    const double columns = std::clamp(std::floor((room_px + kGap_px) / (least_px + kGap_px)), 1.0,
                                      static_cast<double>(widest_level(stairs)));
    const std::vector<Row> rows = stair_rows(stairs, static_cast<std::size_t>(columns));
    const double width_px =
        std::min(least_px * 1.5, (room_px - kGap_px * (columns - 1.0)) / columns);
    // Lower or higher steps, so that all are seen at once where that can be.
    const double share_px = size_px.y() / static_cast<double>(rows.size()) - kGap_px;
    const double height_px = std::clamp(share_px, 0.86 * step_height_px, 1.5 * step_height_px);
    const double row_px = height_px + kGap_px;
    layout.height_px = row_px * static_cast<double>(rows.size());
    const double foot_px = std::max(layout.height_px, size_px.y());
    for (std::size_t r = 0; r < rows.size(); ++r)
        for (std::size_t c = 0; c < rows[r].size(); ++c) {
            const int level = stairs[rows[r][c]].level;
            layout.steps.push_back(
                {rows[r][c],
                 {indent_px * (level - 1) + static_cast<double>(c) * (width_px + kGap_px),
                  foot_px - row_px * static_cast<double>(r + 1)},
                 {width_px, height_px}});
        }
    return layout;
}

std::size_t neighbour(const StairLayout& layout, std::size_t step, int right, int up) {
    const Step& from = layout.steps[step];
    std::size_t best = step;
    double nearest = 0.0;
    for (std::size_t i = 0; i < layout.steps.size(); ++i) {
        const scene::Point away{middle(layout.steps[i]) - middle(from),
                                from.corner_px.y() - layout.steps[i].corner_px.y()};
        const bool same_row = std::abs(away.y()) < 1.0;
        const bool meant = right != 0 ? same_row && away.x() * right > 0.0 : away.y() * up > 0.0;
        const double distance =
            right != 0 ? std::abs(away.x()) : 10.0 * std::abs(away.y()) + std::abs(away.x());
        if (meant && (best == step || distance < nearest)) {
            best = i;
            nearest = distance;
        }
    }
    return best;
}

} // namespace steelyard::app

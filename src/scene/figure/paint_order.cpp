#include "scene/figure/paint_order.h"

#include <algorithm>
#include <cmath>

namespace steelyard::scene {

namespace {

constexpr double kSameDepth_m = 0.02;

/// How much nearer one part is than another where they overlap [m]; empty overlap: none.
struct Overlap {
    double nearer_m = 0.0;
    bool any = false;
};

Overlap overlap_of(const DepthBalls& one, const DepthBalls& other) {
    double sum = 0.0;
    double weight = 0.0;
    for (const DepthBall& a : one)
        for (const DepthBall& b : other) {
            const double common_px = a.radius_px + b.radius_px - (a.at - b.at).norm();
            if (common_px <= 0.0)
                continue;
            sum += common_px * (a.depth_m - b.depth_m);
            weight += common_px;
        }
    return {weight > 0.0 ? sum / weight : 0.0, weight > 0.0};
}

double mean_depth(const DepthBalls& part) {
    double sum = 0.0;
    for (const DepthBall& ball : part)
        sum += ball.depth_m;
    return part.empty() ? 0.0 : sum / static_cast<double>(part.size());
}

} // namespace

std::vector<std::size_t> paint_order(const std::vector<DepthBalls>& parts) {
    const std::size_t count = parts.size();
    std::vector<bool> before(count * count, false); // [i * count + j]: i is painted before j
    for (std::size_t i = 0; i < count; ++i)
        for (std::size_t j = 0; j < i; ++j) {
            const Overlap overlap = overlap_of(parts[i], parts[j]);
            if (!overlap.any)
                continue;
            const bool later_on_top = overlap.nearer_m > -kSameDepth_m;
            before[later_on_top ? j * count + i : i * count + j] = true;
        }
    std::vector<std::size_t> order;
    std::vector<bool> done(count, false);
    while (order.size() < count) {
        std::size_t next = count;
        bool next_is_free = false;
        for (std::size_t i = 0; i < count; ++i) {
            if (done[i])
                continue;
            bool is_free = true;
            for (std::size_t j = 0; j < count; ++j)
                is_free = is_free && (done[j] || !before[j * count + i]);
            const bool better =
                next == count || (is_free && !next_is_free) ||
                (is_free == next_is_free && mean_depth(parts[i]) < mean_depth(parts[next]) - 1e-9);
            if (better) {
                next = i;
                next_is_free = is_free;
            }
        }
        done[next] = true;
        order.push_back(next);
    }
    return order;
}

} // namespace steelyard::scene

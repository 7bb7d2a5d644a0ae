#include "scene/lever/limb_flesh.h"

#include "mechanics/constants.h"
#include "scene/figure/loft.h"
#include "scene/figure/ring_union.h"
#include "scene/marks/sheet_cut.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <utility>

namespace steelyard::scene {

namespace {

/// A disc of flesh, in parts of the limb's length: of the limb itself along its line and above it,
/// of a stump to the right of a joint and above it. Own estimates for the drawing only; nothing is
/// computed from them.
struct Round {
    double along;
    double above;
    double radius;
};

/// A row of discs filled as one.
using Row = std::vector<Round>;

/// What a limb is joined to, behind it; it keeps its own direction when the limb turns.
struct Stump {
    double joint; ///< where along the limb
    Row row;
};

/// What a limb looks like, lying from left to right.
struct Figure {
    std::vector<Stump> stumps;
    std::vector<Row> limb;
};

const Figure& figure_of(setup::LimbShape limb) {
    static const std::array<Figure, 9> kFigures{{
        // The forearm level, the upper arm above the elbow.
        {{{0.0, {{0.0, 0.0, 0.105}, {-0.01, 0.14, 0.112}, {-0.012, 0.27, 0.118}}}},
         {{{0.0, 0.0, 0.105},
           {0.09, 0.0, 0.118},
           {0.22, -0.005, 0.112},
           {0.43, 0.0, 0.086},
           {0.60, 0.0, 0.062},
           {0.70, 0.0, 0.056}},
          {{0.68, 0.0, 0.056}, {0.78, 0.0, 0.070}, {0.88, 0.0, 0.085}, {0.94, 0.0, 0.066}},
          {{0.80, 0.045, 0.026}, {0.88, 0.080, 0.028}, {0.94, 0.080, 0.024}}}},
        // The arm held out, the side of the trunk below the shoulder and the neck above it.
        {{{0.0,
           {{-0.06, -0.02, 0.105},
            {-0.12, -0.09, 0.150},
            {-0.13, -0.20, 0.145},
            {-0.13, -0.28, 0.130}}},
          {0.0, {{-0.13, 0.02, 0.080}, {-0.14, 0.10, 0.058}, {-0.14, 0.17, 0.055}}}},
         {{{0.0, 0.0, 0.095},
           {0.10, 0.0, 0.085},
           {0.22, 0.0, 0.075},
           {0.35, 0.0, 0.066},
           {0.45, 0.0, 0.058},
           {0.52, 0.0, 0.064},
           {0.62, 0.0, 0.058},
           {0.78, 0.0, 0.036}},
          {{0.77, 0.0, 0.036}, {0.84, 0.0, 0.044}, {0.92, 0.0, 0.052}, {0.96, 0.0, 0.040}}}},
        // The thigh level, the waist above the hip, the lower leg hanging.
        {{{0.0, {{-0.05, 0.06, 0.225}, {-0.05, 0.14, 0.20}, {-0.04, 0.20, 0.195}}},
          {1.0, {{0.0, 0.0, 0.115}, {-0.005, -0.10, 0.118}, {0.0, -0.16, 0.115}}}},
         {{{-0.02, 0.0, 0.215},
           {0.30, 0.0, 0.190},
           {0.52, 0.0, 0.163},
           {0.75, 0.0, 0.132},
           {0.92, 0.0, 0.120},
           {1.0, 0.0, 0.116}}}},
        // The lower leg held out, the thigh before the knee.
        {{{0.0, {{0.0, 0.0, 0.115}, {-0.14, 0.0, 0.130}, {-0.22, 0.0, 0.140}}}},
         {{{0.0, 0.0, 0.115},
           {0.10, -0.01, 0.115},
           {0.25, -0.03, 0.128},
           {0.45, -0.02, 0.108},
           {0.75, 0.0, 0.075},
           {1.0, 0.0, 0.070}},
          {{1.0, -0.02, 0.080}, {1.06, 0.08, 0.070}, {1.08, 0.20, 0.055}, {1.08, 0.32, 0.040}}}},
        // The foot on its sole, the shin above the ankle.
        {{{0.76, {{0.0, 0.18, 0.130}, {-0.005, 0.32, 0.130}}}},
         {{{0.04, 0.04, 0.040},
           {0.15, 0.06, 0.065},
           {0.32, 0.09, 0.095},
           {0.52, 0.12, 0.125},
           {0.70, 0.16, 0.160},
           {0.84, 0.14, 0.140},
           {0.92, 0.10, 0.100}}}},
        // The jaw, its branch up to the joint, and the teeth of its front; the upper teeth above.
        {{{0.0, {{0.62, 0.26, 0.035}, {0.80, 0.24, 0.045}, {0.95, 0.22, 0.045}}}},
         {{{0.0, 0.02, 0.060},
           {0.05, -0.10, 0.065},
           {0.12, -0.17, 0.070},
           {0.45, -0.17, 0.060},
           {0.80, -0.15, 0.062},
           {0.97, -0.12, 0.062}},
          {{0.94, -0.09, 0.04}, {0.95, 0.0, 0.028}},
          {{0.82, -0.11, 0.04}, {0.83, -0.03, 0.030}},
          {{0.70, -0.13, 0.04}, {0.71, -0.06, 0.034}}}},
        // The straight leg, foot up; the waist of one who lies before the hip.
        {{{0.0, {{0.0, 0.01, 0.115}, {-0.09, 0.01, 0.118}, {-0.17, 0.01, 0.112}}}},
         {{{0.0, 0.0, 0.115},
           {0.10, 0.0, 0.108},
           {0.28, 0.0, 0.088},
           {0.46, 0.0, 0.064},
           {0.52, 0.0, 0.062},
           {0.63, -0.012, 0.066},
           {0.75, -0.008, 0.056},
           {0.90, 0.0, 0.037},
           {0.99, 0.0, 0.036}},
          {{0.99, -0.012, 0.040}, {1.02, 0.04, 0.036}, {1.03, 0.11, 0.028}, {1.03, 0.17, 0.020}}}},
        // The trunk with neck and head, the thigh below the hip.
        {{{0.0, {{0.0, 0.0, 0.185}, {0.0, -0.06, 0.175}, {0.0, -0.12, 0.165}}}},
         {{{0.0, 0.0, 0.190},
           {0.20, 0.005, 0.180},
           {0.45, 0.0, 0.195},
           {0.72, 0.0, 0.215},
           {0.92, 0.01, 0.180},
           {1.0, 0.01, 0.140}},
          {{1.02, -0.01, 0.095}, {1.15, -0.02, 0.090}},
          {{1.20, -0.03, 0.125}, {1.30, -0.02, 0.165}, {1.40, 0.0, 0.150}}}},
        // The lower leg raised behind, toes down; the thigh above the knee.
        {{{0.0, {{0.0, 0.0, 0.115}, {0.0, 0.14, 0.130}, {0.01, 0.26, 0.140}}}},
         {{{0.0, 0.0, 0.115},
           {0.10, 0.01, 0.115},
           {0.25, 0.03, 0.128},
           {0.45, 0.02, 0.108},
           {0.75, 0.0, 0.075},
           {1.0, 0.0, 0.070}},
          {{1.0, 0.02, 0.080}, {1.06, -0.08, 0.070}, {1.08, -0.20, 0.055}, {1.08, -0.32, 0.040}}}},
    }};
    return kFigures[static_cast<std::size_t>(limb)];
}

/// Places along and beside a limb on a row of corners. Above it is above on the sheet, whichever
/// way it runs.
class LimbLine {
public:
    LimbLine(const std::vector<Point>& corners_px, const setup::Limb& limb) : corners_(corners_px) {
        double whole_px = 0.0;
        for (std::size_t i = 1; i < corners_.size(); ++i)
            whole_px += (corners_[i] - corners_[i - 1]).norm();
        from_px_ = limb.from * whole_px;
        span_px_ = (limb.to - limb.from) * whole_px;
        length_ = std::abs(span_px_);
        const Point way = on_line(from_px_ + span_px_) - on_line(from_px_);
        constexpr double kUpright = 1.0e-9;
        rightward_ = way.x() >= -kUpright * length_ ? 1.0 : -1.0;
    }
    double length_px() const { return length_; }
    Point at(const Round& round) const {
        const double along_px = from_px_ + round.along * span_px_;
        const Point ahead = std::copysign(1.0, span_px_) * direction(along_px);
        return on_line(along_px) +
               rightward_ * round.above * length_ * Point(ahead.y(), -ahead.x());
    }
    Point at(double joint, const Round& round) const {
        return on_line(from_px_ + joint * span_px_) +
               length_ * Point(rightward_ * round.along, -round.above);
    }

private:
    /// The corner that ends the piece on which a place lies, and how far into that piece it is.
    std::pair<std::size_t, double> piece(double along_px) const {
        std::size_t i = 1;
        while (i + 1 < corners_.size() && along_px > (corners_[i] - corners_[i - 1]).norm()) {
            along_px -= (corners_[i] - corners_[i - 1]).norm();
            ++i;
        }
        return {i, along_px};
    }
    Point direction(double along_px) const {
        const std::size_t i = piece(along_px).first;
        return (corners_[i] - corners_[i - 1]).normalized();
    }
    /// Beyond an end the line goes straight on.
    Point on_line(double along_px) const {
        const auto [i, rest_px] = piece(along_px);
        return corners_[i - 1] + rest_px * (corners_[i] - corners_[i - 1]).normalized();
    }

    const std::vector<Point>& corners_;
    double from_px_ = 0.0;
    double span_px_ = 0.0; ///< negative where the limb runs against the lever's path
    double length_ = 0.0;
    double rightward_ = 1.0; ///< -1: it points to the left, and is drawn as in a mirror
};

Ring disc(const Point& centre, double radius_px) {
    constexpr int kCorners = 28;
    Ring ring;
    for (int i = 0; i < kCorners; ++i) {
        const double turn_rad = 2.0 * mechanics::kPi * i / kCorners;
        ring.push_back(centre + radius_px * Point(std::cos(turn_rad), std::sin(turn_rad)));
    }
    return ring;
}

/// A disc where it lies.
struct Ball {
    Point centre;
    double radius;
};
using Balls = std::vector<Ball>;

Balls placed(const Row& row, const LimbLine& line) {
    Balls balls;
    for (const Round& round : row)
        balls.push_back({line.at(round), round.radius * line.length_px()});
    return balls;
}

Balls placed(const Stump& stump, const LimbLine& line) {
    Balls balls;
    for (const Round& round : stump.row)
        balls.push_back({line.at(stump.joint, round), round.radius * line.length_px()});
    return balls;
}

Ring outline_of(const Balls& balls) {
    std::vector<Ring> discs;
    for (const Ball& ball : balls)
        discs.push_back(disc(ball.centre, ball.radius));
    const Point along = balls.back().centre - balls.front().centre;
    return loft_outline(std::span<const Ring>(discs), along.normalized());
}

/// Rows made one, quiet enough for arrows upon it, with a line around.
void add_flesh(const std::vector<Balls>& rows, Role around, const Point& sheet_px,
               std::vector<Shape>& shapes) {
    const Point outside = Point::Constant(3.0); // cut edges are not to be seen
    std::vector<Ring> rings;
    for (const Balls& row : rows)
        if (Ring ring = cut_ring(outline_of(row), {-outside, sheet_px + outside}); ring.size() > 2)
            rings.push_back(std::move(ring));
    if (rings.empty())
        return;
    rings = union_of(std::move(rings));
    shapes.emplace_back(Outline{rings, Role::panel});
    for (Ring& ring : rings) {
        ring.push_back(ring.front());
        shapes.emplace_back(Polyline{std::move(ring), {around, 1.5, Dash::solid, 1.0}});
    }
}

} // namespace

void add_limb(const setup::Limb& limb, const std::vector<Point>& corners_px, const Point& sheet_px,
              LabelBoard& board, std::vector<Shape>& shapes) {
    const LimbLine line(corners_px, limb);
    if (line.length_px() <= 0.0)
        return;
    const Figure& figure = figure_of(limb.shape);
    std::vector<Balls> stumps;
    for (const Stump& stump : figure.stumps)
        stumps.push_back(placed(stump, line));
    std::vector<Balls> rows;
    for (const Row& row : figure.limb)
        rows.push_back(placed(row, line));
    std::vector<Shape> flesh;
    add_flesh(stumps, Role::hairline, sheet_px, flesh);
    add_flesh(rows, Role::quiet_ink, sheet_px, flesh);
    board.keep_clear(flesh);
    shapes.insert(shapes.end(), flesh.begin(), flesh.end());
    for (std::size_t i = 1; i < corners_px.size(); ++i)
        board.keep_clear(corners_px[i - 1], corners_px[i], 11.0);
    shapes.emplace_back(Polyline{corners_px, {Role::ink, 2.0, Dash::solid, 0.55}});
}

std::vector<mechanics::Vec2> limb_reach(const setup::Limb& limb,
                                        const std::vector<mechanics::Vec2>& path_m) {
    std::vector<Point> corners;
    for (const mechanics::Vec2& corner : path_m)
        corners.emplace_back(corner.x(), -corner.y());
    const LimbLine line(corners, limb);
    // Of a limb much longer than the lever only what lies beside the lever.
    constexpr double kMostShown = 2.0;
    const bool is_cut = std::abs(limb.to - limb.from) > kMostShown;
    const Figure& figure = figure_of(limb.shape);
    std::vector<Balls> parts;
    if (!is_cut)
        for (const Stump& stump : figure.stumps)
            parts.push_back(placed(stump, line));
    for (const Row& row : figure.limb)
        parts.push_back(placed(row, line));
    Point low = corners.front();
    Point high = low;
    for (const Point& corner : corners) {
        low = low.cwiseMin(corner);
        high = high.cwiseMax(corner);
    }
    const Point beside_low = low;
    const Point beside_high = high;
    for (const Balls& part : parts)
        for (const Ball& ball : part) {
            const double past_m = beside_high.x() - beside_low.x();
            if (is_cut && (ball.centre.x() < beside_low.x() - past_m ||
                           ball.centre.x() > beside_high.x() + past_m))
                continue;
            low = low.cwiseMin(ball.centre - Point::Constant(ball.radius));
            high = high.cwiseMax(ball.centre + Point::Constant(ball.radius));
        }
    if (is_cut) { // the lever fills the sheet, with as much flesh as there is room for
        constexpr double kAcross = 0.3;
        const double across_m = kAcross * (beside_high.x() - beside_low.x());
        low = {beside_low.x(), std::max(low.y(), beside_low.y() - across_m)};
        high = {beside_high.x(), std::min(high.y(), beside_high.y() + across_m)};
    }
    return {{low.x(), -high.y()}, {high.x(), -low.y()}};
}

} // namespace steelyard::scene

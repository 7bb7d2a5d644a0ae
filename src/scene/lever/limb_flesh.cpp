#include "scene/lever/limb_flesh.h"

#include "mechanics/constants.h"
#include "scene/figure/loft.h"
#include "scene/figure/ring_union.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

namespace steelyard::scene {

namespace {

/// A disc of flesh: its centre along the limb's line and to the left of it, and its radius, in
/// parts of the line's length. Own estimates for the drawing only; nothing is computed from them.
struct Round {
    double along;
    double left;
    double radius;
};

/// A row of discs filled as one.
using Row = std::vector<Round>;

/// What a limb looks like: what it is joined to, behind it, and itself.
struct Figure {
    std::vector<Row> stump;
    std::vector<Row> limb;
};

const Figure& figure_of(setup::LimbShape limb) {
    static const std::array<Figure, 6> kFigures{{
        // The forearm level, the upper arm above the elbow.
        {{{{0.0, 0.0, 0.105}, {-0.01, 0.14, 0.112}, {-0.012, 0.24, 0.118}}},
         {{{0.0, 0.0, 0.105},
           {0.09, 0.0, 0.118},
           {0.22, -0.005, 0.112},
           {0.43, 0.0, 0.086},
           {0.60, 0.0, 0.062},
           {0.70, 0.0, 0.056}},
          {{0.68, 0.0, 0.056}, {0.78, 0.0, 0.070}, {0.88, 0.0, 0.085}, {0.94, 0.0, 0.066}},
          {{0.80, 0.045, 0.026}, {0.88, 0.080, 0.028}, {0.94, 0.080, 0.024}}}},
        // The arm held out, the side of the trunk below the shoulder.
        {{{{-0.08, -0.02, 0.11}, {-0.085, -0.07, 0.11}, {-0.085, -0.11, 0.105}}},
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
        {{{{-0.05, 0.06, 0.225}, {-0.05, 0.14, 0.20}, {-0.04, 0.20, 0.195}},
          {{1.0, 0.0, 0.115}, {0.995, -0.10, 0.118}, {1.0, -0.16, 0.115}}},
         {{{-0.02, 0.0, 0.215},
           {0.30, 0.0, 0.190},
           {0.52, 0.0, 0.163},
           {0.75, 0.0, 0.132},
           {0.92, 0.0, 0.120},
           {1.0, 0.0, 0.116}}}},
        // The lower leg held out, the thigh before the knee.
        {{{{0.0, 0.0, 0.115}, {-0.14, 0.0, 0.130}, {-0.22, 0.0, 0.140}}},
         {{{0.0, 0.0, 0.115},
           {0.10, -0.01, 0.115},
           {0.25, -0.03, 0.128},
           {0.45, -0.02, 0.108},
           {0.75, 0.0, 0.075},
           {1.0, 0.0, 0.070}},
          {{1.0, -0.02, 0.080}, {1.06, 0.08, 0.070}, {1.08, 0.20, 0.055}, {1.08, 0.32, 0.040}}}},
        // The foot on its sole, the shin above the ankle.
        {{{{0.76, 0.18, 0.130}, {0.755, 0.32, 0.130}}},
         {{{0.04, 0.04, 0.040},
           {0.15, 0.06, 0.065},
           {0.32, 0.09, 0.095},
           {0.52, 0.12, 0.125},
           {0.70, 0.16, 0.160},
           {0.84, 0.14, 0.140},
           {0.92, 0.10, 0.100}}}},
        // The jaw, its branch up to the joint, and the teeth of its front; the upper teeth above.
        {{{{0.62, 0.26, 0.035}, {0.80, 0.24, 0.045}, {0.95, 0.22, 0.045}}},
         {{{0.0, 0.02, 0.060},
           {0.05, -0.10, 0.065},
           {0.12, -0.17, 0.070},
           {0.45, -0.17, 0.060},
           {0.80, -0.15, 0.062},
           {0.97, -0.12, 0.062}},
          {{0.94, -0.09, 0.04}, {0.95, 0.0, 0.028}},
          {{0.82, -0.11, 0.04}, {0.83, -0.03, 0.030}},
          {{0.70, -0.13, 0.04}, {0.71, -0.06, 0.034}}}},
    }};
    return kFigures[static_cast<std::size_t>(limb)];
}

/// Places along and beside a row of corners.
class LimbLine {
public:
    explicit LimbLine(const std::vector<Point>& corners_px) : corners_(corners_px) {
        for (std::size_t i = 1; i < corners_.size(); ++i)
            length_ += (corners_[i] - corners_[i - 1]).norm();
    }
    double length_px() const { return length_; }
    /// Beyond an end the line goes straight on.
    Point at(double along, double left) const {
        double rest = along * length_;
        std::size_t i = 1;
        while (i + 1 < corners_.size() && rest > (corners_[i] - corners_[i - 1]).norm()) {
            rest -= (corners_[i] - corners_[i - 1]).norm();
            ++i;
        }
        const Point way = (corners_[i] - corners_[i - 1]).normalized();
        return corners_[i - 1] + rest * way + left * length_ * Point(way.y(), -way.x());
    }

private:
    const std::vector<Point>& corners_;
    double length_ = 0.0;
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

Ring outline_of(const Row& row, const LimbLine& line) {
    std::vector<Ring> discs;
    for (const Round& round : row)
        discs.push_back(disc(line.at(round.along, round.left), round.radius * line.length_px()));
    const Point along =
        line.at(row.back().along, row.back().left) - line.at(row.front().along, row.front().left);
    return loft_outline(std::span<const Ring>(discs), along.normalized());
}

/// Rows made one, quiet enough for words and arrows upon it, with a line around.
/// @param board  words keep off that line; null = they need not
void add_flesh(const std::vector<Row>& rows, const LimbLine& line, Role around, LabelBoard* board,
               std::vector<Shape>& shapes) {
    std::vector<Ring> rings;
    for (const Row& row : rows)
        rings.push_back(outline_of(row, line));
    rings = union_of(std::move(rings));
    shapes.emplace_back(Outline{rings, Role::panel});
    for (Ring& ring : rings) {
        ring.push_back(ring.front());
        constexpr std::size_t kStep = 6; // corners lie closer together than letters are high
        for (std::size_t i = 0; board != nullptr && i + 1 < ring.size(); i += kStep)
            board->keep_clear(ring[i], ring[std::min(i + kStep, ring.size() - 1)], 2.0);
        shapes.emplace_back(Polyline{std::move(ring), {around, 1.5, Dash::solid, 1.0}});
    }
}

} // namespace

void add_limb(setup::LimbShape limb, const std::vector<Point>& corners_px, LabelBoard& board,
              std::vector<Shape>& shapes) {
    const LimbLine line(corners_px);
    if (line.length_px() <= 0.0)
        return;
    const Figure& figure = figure_of(limb);
    add_flesh(figure.stump, line, Role::hairline, nullptr, shapes);
    add_flesh(figure.limb, line, Role::quiet_ink, &board, shapes);
    for (std::size_t i = 1; i < corners_px.size(); ++i)
        board.keep_clear(corners_px[i - 1], corners_px[i], 11.0);
    shapes.emplace_back(Polyline{corners_px, {Role::ink, 2.0, Dash::solid, 0.55}});
}

} // namespace steelyard::scene

#include "mechanics/body/slice.h"

#include <algorithm>

namespace steelyard::mechanics {

namespace {

/// Inertia of a point mass at an arm from the axes' origin.
Mat3 steiner(double mass_kg, const Vec3& arm_m) {
    return mass_kg * (arm_m.squaredNorm() * Mat3::Identity() - arm_m * arm_m.transpose());
}

/// Density a + b s along a row of length 1 and mass 1.
struct LinearDensity {
    double a = 1.0;
    double b = 0.0;

    explicit LinearDensity(double com_fraction)
        : a(1.0 - 6.0 * (com_fraction - 0.5)), b(12.0 * (com_fraction - 0.5)) {}

    double mass(double from, double to) const {
        return a * (to - from) + b * (to * to - from * from) / 2.0;
    }
    double first_moment(double from, double to) const {
        return a * (to * to - from * from) / 2.0 + b * (to * to * to - from * from * from) / 3.0;
    }
    double second_moment(double from, double to) const {
        const double cubes = to * to * to - from * from * from;
        const double fourths = to * to * to * to - from * from * from * from;
        return a * cubes / 3.0 + b * fourths / 4.0;
    }
};

/// Mass, centre and spread about it of a part of a row, all in units of the row.
struct Lengthways {
    double share;
    double com;
    double spread;
};

Lengthways lengthways(const LinearDensity& density, double from, double to) {
    const double share = density.mass(from, to);
    const double com = density.first_moment(from, to) / share;
    return {share, com, density.second_moment(from, to) / share - com * com};
}

} // namespace

bool can_be_cut(const SegmentRow& row) {
    return row.com_fraction >= 1.0 / 3.0 && row.com_fraction <= 2.0 / 3.0;
}

Slice cut(const SegmentRow& row, double length_m, double mass_kg, Along along, double from,
          double to) {
    const Vec3 gyration_m = row.gyration * length_m;
    if (from <= 0.0 && to >= 1.0)
        return {mass_kg, row.com_fraction * length_m,
                mass_kg * gyration_m.cwiseProduct(gyration_m)};

    const LinearDensity density(row.com_fraction);
    const Lengthways piece_along = lengthways(density, from, to);
    const Lengthways rest =
        from <= 0.0 ? lengthways(density, to, 1.0) : lengthways(density, 0.0, from);
    const double gap = piece_along.com - rest.com;
    const double between = piece_along.share * rest.share * gap * gap;
    const double within = piece_along.share * piece_along.spread + rest.share * rest.spread;

    Slice piece{piece_along.share * mass_kg, piece_along.com * length_m, Vec3::Zero()};
    for (Eigen::Index axis = 0; axis < 3; ++axis) {
        double square = row.gyration[axis] * row.gyration[axis];
        if (axis != static_cast<Eigen::Index>(along)) {
            // What the density's spread along the row does not explain is breadth; where it
            // explains too much, the mass of each piece is drawn together.
            const double breadth = std::max(square - between - within, 0.0);
            const double drawn = std::clamp((square - between) / within, 0.0, 1.0);
            square = breadth + drawn * piece_along.spread;
        }
        piece.inertia_kg_m2[axis] = piece.mass_kg * square * length_m * length_m;
    }
    return piece;
}

void join(SegmentBody& segment, double mass_kg, const Vec3& com_m, const Vec3& inertia_kg_m2) {
    const double total_kg = segment.mass_kg + mass_kg;
    if (total_kg <= 0.0)
        return;
    const Vec3 joint_com_m = (segment.mass_kg * segment.com_m + mass_kg * com_m) / total_kg;
    const Mat3 piece = inertia_kg_m2.asDiagonal();
    segment.inertia_kg_m2 += steiner(segment.mass_kg, segment.com_m - joint_com_m) + piece +
                             steiner(mass_kg, com_m - joint_com_m);
    segment.com_m = joint_com_m;
    segment.mass_kg = total_kg;
}

} // namespace steelyard::mechanics

#pragma once
// Which tables, people and measurements can be computed with; and a column's rows by part.

#include "mechanics/body/body.h"

#include <optional>

namespace steelyard::mechanics {

inline constexpr std::size_t kTablePartCount = 8;

/// How many of a part a body has: 2 for limbs.
double sides_of(TablePart part);

/// All rows of a column, trunk slices included.
std::vector<SegmentRow*> rows_of(SegmentColumn& column);

/// The rows of one part: one, but for the trunk all its slices.
std::vector<SegmentRow*> rows_of_part(SegmentColumn& column, TablePart part);
std::vector<const SegmentRow*> rows_of_part(const SegmentColumn& column, TablePart part);

/// Share of body mass of a part, both sides together [-].
double part_share(const SegmentColumn& column, TablePart part);

/// Which slice of the trunk the lumbar joint divides; the number of slices when it lies between
/// two.
std::size_t slice_at_lumbar(const SegmentColumn& column);

/// First input that cannot be computed with; empty when all can.
std::optional<MechanicsError> check_person(double height_m, double mass_kg);
std::optional<MechanicsError> check_column(const SegmentColumn& column);
/// @param person  the column at the person's size
std::optional<MechanicsError> check_measured(const SegmentColumn& person, double mass_kg,
                                             const std::vector<MeasuredValue>& measured);
/// A body that was put together or changed by hand.
std::optional<MechanicsError> check_body(const Body& body);

} // namespace steelyard::mechanics

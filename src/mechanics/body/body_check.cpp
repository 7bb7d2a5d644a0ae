#include "mechanics/body/body_check.h"

#include "mechanics/body/slice.h"
#include "mechanics/bounds.h"

#include <string>

namespace steelyard::mechanics {

namespace {

/// Longest segment of a reference body [m]; also above 1, the stature where lengths are fractions.
constexpr double kMostSegment_m = 2.0;
constexpr double kLeastSegment_m = 1.0e-3;

constexpr std::array<std::string_view, kTablePartCount> kPartNames{
    "head", "trunk", "upper_arm", "forearm", "hand", "thigh", "shank", "foot"};

/// The rows of one part of a column that may be changed, or of one that may not.
template <typename Row, typename Column> std::vector<Row*> rows_in(Column& column, TablePart part) {
    switch (part) {
    case TablePart::head:
        return {&column.head};
    case TablePart::trunk:
        break;
    case TablePart::upper_arm:
        return {&column.upper_arm};
    case TablePart::forearm:
        return {&column.forearm};
    case TablePart::hand:
        return {&column.hand};
    case TablePart::thigh:
        return {&column.thigh};
    case TablePart::shank:
        return {&column.shank};
    case TablePart::foot:
        return {&column.foot};
    }
    std::vector<Row*> slices;
    for (Row& slice : column.trunk)
        slices.push_back(&slice);
    return slices;
}

Found check_row(const SegmentRow& row, const std::string& key) {
    if (Found fault = outside(row.length_m, kLeastSegment_m, kMostSegment_m, key + ".length",
                              "a length from 0.001 to 2 m"))
        return fault;
    if (Found fault = outside(row.mass_fraction, 1.0e-5, 1.0, key + ".mass",
                              "a fraction of body mass above 0 and below 1"))
        return fault;
    if (Found fault = outside(row.com_fraction, 0.0, 1.0, key + ".com",
                              "a fraction of the length from 0 to 1"))
        return fault;
    for (const double radius : row.gyration)
        if (Found fault = outside(radius, 0.0, 2.0, key + ".gyration",
                                  "radii of gyration from 0 to 2 times the length"))
            return fault;
    return std::nullopt;
}

Found check_heights(const SegmentColumn& column) {
    double trunk_m = 0.0;
    for (const SegmentRow& slice : column.trunk)
        trunk_m += slice.length_m;
    if (Found fault = outside(column.neck_height_m, kLeastSegment_m, kMostSegment_m,
                              "table.neck_height", "a height above the hips of 0.001 to 2 m"))
        return fault;
    if (Found fault = outside(column.lumbar_height_m, 0.0, 0.9 * trunk_m, "table.lumbar_height",
                              "a height above the hips, below nine tenths of the trunk"))
        return fault;
    if (Found fault =
            outside(column.shoulder_height_m, column.lumbar_height_m, kMostSegment_m,
                    "table.shoulder_height", "a height above the hips, above the lumbar joint"))
        return fault;
    if (column.neck_height_m <= column.lumbar_height_m)
        return MechanicsError{Fault::inconsistent, "table.neck_height",
                              "a height above the lumbar joint"};
    return std::nullopt;
}

Found check_feet_and_hands(const SegmentColumn& column) {
    for (const auto& [value, key] :
         {std::pair(column.shoulder_half_breadth_m, "table.shoulder_half_breadth"),
          std::pair(column.hip_half_breadth_m, "table.hip_half_breadth"),
          std::pair(column.ankle_height_m, "table.ankle_height"),
          std::pair(column.heel_behind_ankle_m, "table.heel_behind_ankle"),
          std::pair(column.grip_from_wrist_m, "table.grip_from_wrist"),
          std::pair(column.fingertip_from_wrist_m, "table.fingertip_from_wrist")})
        if (Found fault = outside(value, 0.0, 1.0, key, "a length from 0 to 1 m"))
            return fault;
    if (Found fault = outside(column.ball_from_heel_m, column.heel_behind_ankle_m + kLeastSegment_m,
                              column.foot.length_m - kLeastSegment_m, "table.ball_from_heel",
                              "a place between the ankle and the toe tip"))
        return fault;
    return std::nullopt;
}

/// Slices that a joint divides need a centre of mass that a linear density can give.
Found check_cuts(const SegmentColumn& column) {
    constexpr const char* expected =
        "a centre of mass in the middle third, since a joint divides this part";
    const std::size_t divided = slice_at_lumbar(column);
    if (divided < column.trunk.size() && !can_be_cut(column.trunk[divided]))
        return MechanicsError{Fault::inconsistent, indexed("table.trunk", divided) + ".com",
                              expected};
    if (!can_be_cut(column.foot))
        return MechanicsError{Fault::inconsistent, "table.foot.com", expected};
    return std::nullopt;
}

Found check_value(const SegmentColumn& person, double mass_kg, const MeasuredValue& value) {
    switch (value.measure) {
    case Measure::length_m:
        return outside(value.value, 0.01, kMostSegment_m, "value", "a length from 0.01 to 2 m");
    case Measure::mass_kg:
        return outside(value.value, 0.0, 0.9 * mass_kg / sides_of(value.part), "value",
                       "a mass from 0 that leaves some for the other parts");
    case Measure::com_fraction:
        if (value.part == TablePart::trunk && person.trunk.size() > 1)
            return MechanicsError{Fault::inconsistent, "measure",
                                  "a length or a mass: the centre of mass of a trunk in slices "
                                  "comes from the table"};
        if (value.part == TablePart::trunk || value.part == TablePart::foot)
            return outside(value.value, 1.0 / 3.0, 2.0 / 3.0, "value",
                           "a fraction from 1/3 to 2/3, since a joint divides this part");
        return outside(value.value, 0.0, 1.0, "value", "a fraction of the length from 0 to 1");
    }
    return std::nullopt;
}

bool is_finite(const SegmentBody& segment) {
    return std::isfinite(segment.mass_kg) && segment.com_m.allFinite() &&
           segment.joint_m.allFinite() && segment.tip_m.allFinite() &&
           segment.inertia_kg_m2.allFinite();
}

/// False also when anything is not a number, since no comparison with it holds.
bool is_believable(const SegmentBody& segment) {
    constexpr double reach2 = kMostHeight_m * kMostHeight_m;
    constexpr double most_inertia = kMostBodyMass_kg * reach2;
    return segment.mass_kg >= 0.0 && segment.mass_kg <= kMostBodyMass_kg &&
           segment.com_m.squaredNorm() <= reach2 && segment.joint_m.squaredNorm() <= reach2 &&
           segment.tip_m.squaredNorm() <= reach2 &&
           segment.inertia_kg_m2.squaredNorm() <= most_inertia * most_inertia;
}

} // namespace

double sides_of(TablePart part) {
    return part == TablePart::head || part == TablePart::trunk ? 1.0 : 2.0;
}

std::vector<SegmentRow*> rows_of_part(SegmentColumn& column, TablePart part) {
    return rows_in<SegmentRow>(column, part);
}

std::vector<const SegmentRow*> rows_of_part(const SegmentColumn& column, TablePart part) {
    return rows_in<const SegmentRow>(column, part);
}

std::vector<SegmentRow*> rows_of(SegmentColumn& column) {
    std::vector<SegmentRow*> rows;
    for (std::size_t i = 0; i < kTablePartCount; ++i)
        for (SegmentRow* row : rows_of_part(column, static_cast<TablePart>(i)))
            rows.push_back(row);
    return rows;
}

double part_share(const SegmentColumn& column, TablePart part) {
    double share = 0.0;
    for (const SegmentRow* row : rows_of_part(column, part))
        share += row->mass_fraction;
    return sides_of(part) * share;
}

std::size_t slice_at_lumbar(const SegmentColumn& column) {
    double bottom_m = 0.0;
    for (std::size_t i = column.trunk.size(); i-- > 0;) {
        const double top_m = bottom_m + column.trunk[i].length_m;
        if (column.lumbar_height_m > bottom_m && column.lumbar_height_m < top_m)
            return i;
        bottom_m = top_m;
    }
    return column.trunk.size();
}

std::optional<MechanicsError> check_person(double height_m, double mass_kg) {
    if (Found fault = outside(height_m, kLeastHeight_m, kMostHeight_m, "height",
                              "a height from 0.5 to 2.8 m"))
        return fault;
    return outside(mass_kg, kLeastBodyMass_kg, kMostBodyMass_kg, "mass",
                   "a body mass from 10 to 650 kg");
}

std::optional<MechanicsError> check_column(const SegmentColumn& column) {
    if (Found fault = outside(column.reference_height_m, kLeastHeight_m, kMostHeight_m,
                              "table.reference_height", "a height from 0.5 to 2.8 m"))
        return fault;
    if (column.trunk.empty() || column.trunk.size() > 8)
        return MechanicsError{Fault::inconsistent, "table.trunk", "from 1 to 8 slices"};
    for (std::size_t i = 0; i < kTablePartCount; ++i) {
        const auto part = static_cast<TablePart>(i);
        const auto rows = rows_of_part(column, part);
        for (std::size_t slice = 0; slice < rows.size(); ++slice) {
            const std::string name = "table." + std::string(table_part_name(part));
            const std::string key = part == TablePart::trunk ? indexed(name, slice) : name;
            if (Found fault = check_row(*rows[slice], key))
                return fault;
        }
    }
    if (Found fault = check_heights(column))
        return fault;
    if (Found fault = check_feet_and_hands(column))
        return fault;
    return check_cuts(column);
}

std::optional<MechanicsError> check_measured(const SegmentColumn& person, double mass_kg,
                                             const std::vector<MeasuredValue>& measured) {
    double fixed_kg = 0.0;
    for (std::size_t i = 0; i < measured.size(); ++i) {
        if (Found fault = check_value(person, mass_kg, measured[i]))
            return within_key(indexed("measured", i), *std::move(fault));
        if (measured[i].measure == Measure::mass_kg)
            fixed_kg += sides_of(measured[i].part) * measured[i].value;
        for (std::size_t j = 0; j < i; ++j)
            if (measured[j].part == measured[i].part && measured[j].measure == measured[i].measure)
                return MechanicsError{Fault::inconsistent, indexed("measured", i),
                                      "each part's length, mass or centre of mass once"};
    }
    if (fixed_kg > 0.95 * mass_kg)
        return MechanicsError{Fault::inconsistent, "measured",
                              "masses that add up to less than the body's"};
    return std::nullopt;
}

std::optional<MechanicsError> check_body(const Body& body) {
    if (Found fault =
            outside(body.mass_kg, 0.0, kMostBodyMass_kg, "body.mass", "a body mass up to 650 kg"))
        return fault;
    for (const auto& [length_m, key] :
         {std::pair(body.height_m, "body.height"),
          std::pair(body.ankle_height_m, "body.ankle_height"),
          std::pair(body.heel_behind_ankle_m, "body.heel_behind_ankle"),
          std::pair(body.ball_before_ankle_m, "body.ball_before_ankle"),
          std::pair(body.toe_tip_before_ball_m, "body.toe_tip_before_ball"),
          std::pair(body.grip_from_wrist_m, "body.grip_from_wrist"),
          std::pair(body.fingertip_from_wrist_m, "body.fingertip_from_wrist")})
        if (Found fault = outside(length_m, 0.0, kMostHeight_m, key, "a length from 0 to 2.8 m"))
            return fault;
    for (std::size_t i = 0; i < kSegmentCount; ++i)
        if (!is_believable(body.segments[i]))
            return MechanicsError{is_finite(body.segments[i]) ? Fault::out_of_range
                                                              : Fault::not_finite,
                                  "body." + std::string(all_segments()[i].name),
                                  "a segment of a person, masses from 0 to 650 kg"};
    return std::nullopt;
}

std::optional<TablePart> table_part_named(std::string_view name) {
    for (std::size_t i = 0; i < kTablePartCount; ++i)
        if (kPartNames[i] == name)
            return static_cast<TablePart>(i);
    return std::nullopt;
}

std::string_view table_part_name(TablePart part) {
    return kPartNames[static_cast<std::size_t>(part)];
}

} // namespace steelyard::mechanics

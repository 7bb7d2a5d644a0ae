#include "mechanics/body/body.h"

#include "mechanics/body/body_check.h"
#include "mechanics/body/landmarks.h"
#include "mechanics/body/slice.h"

#include <algorithm>

namespace steelyard::mechanics {

namespace {

/// Brings what stands above the hips to the height that the legs leave of the person's: tables
/// measure the spine and the head along themselves, and the spine's curves and the head's tilt take
/// up the rest. The limbs, measured from joint to joint, keep the table's lengths.
void fit_standing_height(SegmentColumn& person) {
    const double legs_m = person.ankle_height_m + person.shank.length_m + person.thigh.length_m;
    const double fit =
        (person.reference_height_m - legs_m) / (person.neck_height_m + person.head.length_m);
    for (SegmentRow& slice : person.trunk)
        slice.length_m *= fit;
    for (double* length_m : {&person.lumbar_height_m, &person.shoulder_height_m,
                             &person.neck_height_m, &person.head.length_m})
        *length_m *= fit;
}

/// A column brought to a person's size: lengths in metres of the person, who stands as tall as was
/// stated.
SegmentColumn scaled(const SegmentColumn& column, double height_m) {
    SegmentColumn person = column;
    const double scale = height_m / column.reference_height_m;
    for (SegmentRow* row : rows_of(person))
        row->length_m *= scale;
    for (double* length_m :
         {&person.lumbar_height_m, &person.shoulder_height_m, &person.neck_height_m,
          &person.shoulder_half_breadth_m, &person.hip_half_breadth_m, &person.ankle_height_m,
          &person.heel_behind_ankle_m, &person.ball_from_heel_m, &person.grip_from_wrist_m,
          &person.fingertip_from_wrist_m})
        *length_m *= scale;
    person.reference_height_m = height_m;
    fit_standing_height(person);
    return person;
}

/// Stretches a part to a measured length, with all that is given along it.
void set_length(SegmentColumn& person, TablePart part, double length_m) {
    if (part == TablePart::trunk) {
        const double stretch = length_m / person.neck_height_m;
        for (SegmentRow& slice : person.trunk)
            slice.length_m *= stretch;
        person.lumbar_height_m *= stretch;
        person.shoulder_height_m *= stretch;
        person.neck_height_m = length_m;
        return;
    }
    SegmentRow& row = *rows_of_part(person, part).front();
    const double stretch = length_m / row.length_m;
    row.length_m = length_m;
    if (part == TablePart::foot) {
        person.heel_behind_ankle_m *= stretch;
        person.ball_from_heel_m *= stretch;
    }
    if (part == TablePart::hand) {
        person.grip_from_wrist_m *= stretch;
        person.fingertip_from_wrist_m *= stretch;
    }
}

/// Gives measured parts their mass and lets the others share the rest in their proportions, so that
/// the whole is the body's mass again.
void settle_masses(SegmentColumn& person, double mass_kg,
                   const std::vector<MeasuredValue>& measured) {
    std::array<bool, kTablePartCount> fixed{};
    double fixed_share = 0.0;
    for (const MeasuredValue& value : measured) {
        if (value.measure != Measure::mass_kg)
            continue;
        const double before = part_share(person, value.part);
        const double wanted = sides_of(value.part) * value.value / mass_kg;
        for (SegmentRow* row : rows_of_part(person, value.part))
            row->mass_fraction *= wanted / before;
        fixed[static_cast<std::size_t>(value.part)] = true;
    }
    double free_share = 0.0;
    for (std::size_t i = 0; i < kTablePartCount; ++i)
        (fixed[i] ? fixed_share : free_share) += part_share(person, static_cast<TablePart>(i));
    for (std::size_t i = 0; i < kTablePartCount; ++i)
        if (!fixed[i])
            for (SegmentRow* row : rows_of_part(person, static_cast<TablePart>(i)))
                row->mass_fraction *= (1.0 - fixed_share) / free_share;
}

/// A limb that hangs from its proximal joint.
SegmentBody limb(const SegmentRow& row, double mass_kg) {
    SegmentBody segment;
    segment.length_m = row.length_m;
    segment.tip_m = Vec3(0.0, -row.length_m, 0.0);
    const Slice whole = cut(row, row.length_m, mass_kg * row.mass_fraction, Along::y, 0.0, 1.0);
    join(segment, whole.mass_kg, Vec3(0.0, -whole.com_along_m, 0.0), whole.inertia_kg_m2);
    return segment;
}

/// Divides the trunk's slices at the lumbar joint between pelvis and trunk.
void build_trunk(Body& body, const SegmentColumn& person) {
    SegmentBody& pelvis = body[Segment::pelvis];
    SegmentBody& trunk = body[Segment::trunk];
    const double lumbar_m = person.lumbar_height_m;
    double top_m = 0.0;
    for (const SegmentRow& slice : person.trunk)
        top_m += slice.length_m;

    for (const SegmentRow& slice : person.trunk) {
        const double length_m = slice.length_m;
        // From the slice's top down to the lumbar joint, as a fraction of the slice.
        const double joint_at = std::clamp((top_m - lumbar_m) / length_m, 0.0, 1.0);
        const auto add = [&](SegmentBody& to, double from, double until, double origin_m) {
            if (until <= from)
                return;
            const Slice piece =
                cut(slice, length_m, body.mass_kg * slice.mass_fraction, Along::y, from, until);
            join(to, piece.mass_kg, Vec3(0.0, top_m - piece.com_along_m - origin_m, 0.0),
                 piece.inertia_kg_m2);
        };
        add(trunk, 0.0, joint_at, lumbar_m);
        add(pelvis, joint_at, 1.0, 0.0);
        top_m -= length_m;
    }
    pelvis.length_m = lumbar_m;
    pelvis.tip_m = Vec3(0.0, lumbar_m, 0.0);
    trunk.length_m = person.neck_height_m - lumbar_m;
    trunk.tip_m = Vec3(0.0, trunk.length_m, 0.0);
    trunk.joint_m = pelvis.tip_m;
}

void build_head(Body& body, const SegmentColumn& person) {
    SegmentBody& head = body[Segment::head];
    const SegmentRow& row = person.head;
    const Slice whole =
        cut(row, row.length_m, body.mass_kg * row.mass_fraction, Along::y, 0.0, 1.0);
    join(head, whole.mass_kg, Vec3(0.0, row.length_m - whole.com_along_m, 0.0),
         whole.inertia_kg_m2);
    head.length_m = row.length_m;
    head.tip_m = Vec3(0.0, row.length_m, 0.0);
    head.joint_m = body[Segment::trunk].tip_m;
}

/// Divides a foot at its ball. The mass lies at half the height of the ankle: assumption, the
/// tables give no height.
void build_foot(Body& body, const SegmentColumn& person, Segment foot_name, Segment toes_name) {
    SegmentBody& foot = body[foot_name];
    SegmentBody& toes = body[toes_name];
    const SegmentRow& row = person.foot;
    const double mass_kg = body.mass_kg * row.mass_fraction;
    const double ball_at = person.ball_from_heel_m / row.length_m;
    const double ball_m = body.ball_before_ankle_m;
    const double height_m = -0.5 * body.ankle_height_m;

    const Slice rear = cut(row, row.length_m, mass_kg, Along::x, 0.0, ball_at);
    join(foot, rear.mass_kg, Vec3(rear.com_along_m - body.heel_behind_ankle_m, height_m, 0.0),
         rear.inertia_kg_m2);
    foot.length_m = ball_m;
    foot.tip_m = Vec3(ball_m, -body.ankle_height_m, 0.0);

    const Slice front = cut(row, row.length_m, mass_kg, Along::x, ball_at, 1.0);
    join(toes, front.mass_kg,
         Vec3(front.com_along_m - person.ball_from_heel_m, height_m + body.ankle_height_m, 0.0),
         front.inertia_kg_m2);
    toes.length_m = body.toe_tip_before_ball_m;
    toes.tip_m = Vec3(body.toe_tip_before_ball_m, 0.0, 0.0);
    toes.joint_m = foot.tip_m;
}

/// From the breastbone to the shoulder, level. It has no mass of its own: tables count it with the
/// trunk.
void build_girdle(Body& body, const SegmentColumn& person, double side, Segment girdle) {
    SegmentBody& segment = body[girdle];
    const double height_m = person.reference_height_m;
    const double beside_m =
        std::min(kSternoclavicularBeside * height_m, 0.5 * person.shoulder_half_breadth_m);
    segment.joint_m = Vec3(kSternoclavicularBefore * height_m,
                           person.shoulder_height_m - person.lumbar_height_m, side * beside_m);
    segment.tip_m =
        Vec3(-segment.joint_m.x(), 0.0, side * (person.shoulder_half_breadth_m - beside_m));
    segment.length_m = segment.tip_m.norm();
}

/// One side; z is positive to the right.
void build_side(Body& body, const SegmentColumn& person, double side, Segment girdle,
                Segment first_of_leg) {
    const auto after = [](Segment first, std::size_t steps) {
        return static_cast<Segment>(index_of(first) + steps);
    };
    const auto build = [&](Segment segment, const SegmentRow& row, const Vec3& joint_m) {
        body[segment] = limb(row, body.mass_kg);
        body[segment].joint_m = joint_m;
    };
    build_girdle(body, person, side, girdle);
    const Segment first_of_arm = after(girdle, 1);
    build(first_of_arm, person.upper_arm, body[girdle].tip_m);
    build(after(girdle, 2), person.forearm, body[first_of_arm].tip_m);
    build(after(girdle, 3), person.hand, body[after(girdle, 2)].tip_m);

    build(first_of_leg, person.thigh, Vec3(0.0, 0.0, side * person.hip_half_breadth_m));
    build(after(first_of_leg, 1), person.shank, body[first_of_leg].tip_m);
    body[after(first_of_leg, 2)].joint_m = body[after(first_of_leg, 1)].tip_m;
    build_foot(body, person, after(first_of_leg, 2), after(first_of_leg, 3));
}

Body build(const SegmentColumn& person, double mass_kg) {
    Body body;
    body.height_m = person.reference_height_m;
    body.mass_kg = mass_kg;
    body.ankle_height_m = person.ankle_height_m;
    body.heel_behind_ankle_m = person.heel_behind_ankle_m;
    body.ball_before_ankle_m = person.ball_from_heel_m - person.heel_behind_ankle_m;
    body.toe_tip_before_ball_m = person.foot.length_m - person.ball_from_heel_m;
    body.grip_from_wrist_m = person.grip_from_wrist_m;
    body.fingertip_from_wrist_m = person.fingertip_from_wrist_m;
    build_trunk(body, person);
    build_head(body, person);
    build_side(body, person, 1.0, Segment::right_girdle, Segment::right_thigh);
    build_side(body, person, -1.0, Segment::left_girdle, Segment::left_thigh);
    return body;
}

} // namespace

tl::expected<Body, MechanicsError> body_from(const SegmentColumn& column, double height_m,
                                             double mass_kg,
                                             const std::vector<MeasuredValue>& measured) {
    if (auto fault = check_person(height_m, mass_kg))
        return tl::unexpected(*std::move(fault));
    if (auto fault = check_column(column))
        return tl::unexpected(*std::move(fault));
    SegmentColumn person = scaled(column, height_m);
    if (auto fault = check_measured(person, mass_kg, measured))
        return tl::unexpected(*std::move(fault));

    for (const MeasuredValue& value : measured)
        if (value.measure == Measure::length_m)
            set_length(person, value.part, value.value);
        else if (value.measure == Measure::com_fraction)
            rows_of_part(person, value.part).front()->com_fraction = value.value;
    settle_masses(person, mass_kg, measured);
    return build(person, mass_kg);
}

tl::expected<Body, MechanicsError> body_from(const SegmentTable& table, Sex sex, double height_m,
                                             double mass_kg,
                                             const std::vector<MeasuredValue>& measured) {
    return body_from(sex == Sex::female ? table.female : table.male, height_m, mass_kg, measured);
}

} // namespace steelyard::mechanics

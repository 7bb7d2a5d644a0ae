#include "app/body/body_input.h"

#include "app/platform/key.h"
#include "mechanics/constants.h"
#include "scene/stage_view.h"

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using mechanics::Vec3;
using scene::BodyStage;
using scene::Point;

constexpr double kScrubStep = 0.02;
constexpr double kNudge_m = 0.01;
constexpr double kPlaceSnap_m = 0.01;
/// A way shorter than this on the sheet is none to slide along [px].
constexpr double kShortestTrail_px = 30.0;

double snapped(double value, double step, bool off) {
    return off ? value : std::round(value / step) * step;
}

/// The nearest grip within reach; null where there is none.
const BodyGrip* grip_at(const std::vector<BodyGrip>& grips, const Point& at_px) {
    const BodyGrip* nearest = nullptr;
    double nearest_px = kGripReach_px;
    for (const BodyGrip& grip : grips) {
        const double distance_px = (grip.at_px - at_px).norm();
        if (distance_px < nearest_px) {
            nearest_px = distance_px;
            nearest = &grip;
        }
    }
    return nearest;
}

std::optional<std::size_t> axis_at(const BodyModel& model, const BodyPart& part) {
    if (part.kind != BodyPartKind::joint)
        return std::nullopt;
    const auto& axes = model.state.setup.axes;
    for (std::size_t i = 0; i < axes.size(); ++i)
        if (mechanics::index_of(mechanics::hinge_info(axes[i]).joint) == part.index)
            return i;
    return std::nullopt;
}

double length_px(const std::vector<Vec3>& trail_m, const BodyStage& stage) {
    double sum_px = 0.0;
    for (std::size_t i = 1; i < trail_m.size(); ++i)
        sum_px += (stage.to_sheet(trail_m[i]) - stage.to_sheet(trail_m[i - 1])).norm();
    return sum_px;
}

/// The way along which a grip slides; empty for one that poses at once.
std::vector<Vec3> way_of(const BodyModel& model, const BodyStage& stage, const BodyGrip& grip) {
    if (!grip.point || grip.hold != BodyHold::place)
        return {};
    if (model.posing != mechanics::PoseEnds::both)
        return {}; // it poses the end that is shown
    std::vector<Vec3> trail_m = trail_of(model.exercise(), *grip.point);
    if (length_px(trail_m, stage) < kShortestTrail_px)
        trail_m.clear();
    return trail_m;
}

/// Round step of a load's size: half a kilogram or a pound, five newtons or a pound of force.
double size_step(const BodyModel& model, const BodyNumber& number, setup::UnitSystem units) {
    const bool us = units == setup::UnitSystem::us;
    if (dimension_of(model.exercise(), number) == setup::Dimension::mass)
        return us ? mechanics::kPound_kg : 0.5;
    return us ? mechanics::kPoundForce_N : 5.0;
}

void take(const BodyModel& model, const BodyStage& stage, const StagePointer& pointer,
          BodyStageState& state) {
    state.held = state.hovered;
    state.held_offset_px = state.held->at_px - pointer.at_px;
    state.taken_at_px = pointer.at_px;
    state.chosen = state.held->part;
    state.nudged.reset();
    state.trail_m = way_of(model, stage, *state.held);
    const BodyNumber size{state.held->part, BodyField::size};
    if (state.held->hold == BodyHold::tip)
        state.taken_size = value_of(model.standing(), size).value_or(0.0);
    ++state.gesture;
}

/// The arrow's head is dragged along the arrow: so many newtons more.
BodyIntent drag_tip(const BodyModel& model, const BodyStage& stage, const StagePointer& pointer,
                    setup::UnitSystem units, const BodyStageState& state) {
    const BodyNumber number{state.held->part, BodyField::size};
    Point along{0.0, 1.0};
    double per_size_N = 1.0;
    for (const mechanics::BodyForce& force : model.solved.forces)
        if (force.origin == mechanics::ForceOrigin::resistance &&
            force.index == number.part.index) {
            const Point arrow = stage.arrow(force.force_N);
            if (arrow.norm() > 1e-6)
                along = arrow.normalized();
            const double size = value_of(model.standing(), number).value_or(0.0);
            if (size > 1e-6)
                per_size_N = force.force_N.norm() / size;
            break;
        }
    const double pulled_px = (pointer.at_px - state.taken_at_px).dot(along);
    const double size = state.taken_size + pulled_px / stage.px_per_N / per_size_N;
    return SetBodyNumber{
        number, std::max(snapped(size, size_step(model, number, units), pointer.snap_off), 0.0),
        state.gesture};
}

Vec3 snapped_place(const Vec3& place_m, bool off) {
    return off ? place_m : Vec3((place_m / kPlaceSnap_m).array().round().matrix() * kPlaceSnap_m);
}

std::optional<BodyIntent> drag(const BodyModel& model, const BodyStage& stage,
                               const StagePointer& pointer, setup::UnitSystem units,
                               BodyStageState& state) {
    const BodyGrip& grip = *state.held;
    if (grip.hold == BodyHold::tip)
        return drag_tip(model, stage, pointer, units, state);
    const Point at_px = pointer.at_px + state.held_offset_px;
    if (!state.trail_m.empty()) {
        const OnTrail on_trail = nearest_on_trail(state.trail_m, stage, at_px);
        if (!pointer.snap_off && on_trail.distance_px < kLeavesTrail_px)
            return Scrub{on_trail.progress};
        state.trail_m.clear();
    }
    const Vec3 to_m = stage.to_world(at_px, grip.at_m);
    if (grip.part.kind == BodyPartKind::fixture)
        return MoveFixture{grip.part.index, snapped_place(to_m, pointer.snap_off), state.gesture};
    if (!grip.point)
        return std::nullopt;
    return PullPoint{*grip.point, to_m, stage.camera.toward_eye(), state.gesture};
}

/// The first number of a part, or its angle about the axis that is looked at.
std::optional<BodyNumber> main_number(const BodyModel& model, const BodyPart& part) {
    const std::vector<BodyNumber> numbers = numbers_of(model.exercise(), part);
    for (const BodyNumber& number : numbers)
        for (const mechanics::Hinge axis : model.state.setup.axes)
            if (number.field == BodyField::angle && number.hinge == axis)
                return number;
    return numbers.empty() ? std::nullopt : std::optional(numbers.front());
}

/// The load that keys make heavier: the chosen one, else the first that has a size.
std::optional<BodyNumber> sized_load(const BodyModel& model, const BodyStageState& state) {
    std::vector<BodyPart> parts;
    if (state.chosen && state.chosen->kind != BodyPartKind::joint)
        parts.push_back({BodyPartKind::load, state.chosen->index});
    for (std::size_t i = 0; i < model.exercise().body_case.resistances.size(); ++i)
        parts.push_back({BodyPartKind::load, i});
    for (const BodyPart& part : parts)
        if (value_of(model.standing(), {part, BodyField::size}))
            return BodyNumber{part, BodyField::size};
    return std::nullopt;
}

int gesture_of(const std::optional<BodyPart>& part, BodyStageState& state) {
    if (state.nudged != part) {
        state.nudged = part;
        ++state.gesture;
    }
    return state.gesture;
}

std::optional<BodyIntent> size_load(const BodyModel& model, double steps, setup::UnitSystem units,
                                    BodyStageState& state) {
    const auto number = sized_load(model, state);
    if (!number)
        return std::nullopt;
    const double value = value_of(model.standing(), *number).value_or(0.0);
    return SetBodyNumber{*number, std::max(value + steps * size_step(model, *number, units), 0.0),
                         gesture_of(number->part, state)};
}

std::optional<BodyIntent> nudge_part(const BodyModel& model, const BodyStage& stage,
                                     const Point& step, BodyStageState& state) {
    for (const BodyGrip& grip : grips_of(model, stage, state)) {
        if (grip.part != *state.chosen || grip.hold != BodyHold::place)
            continue;
        const Vec3 to_m =
            grip.at_m + kNudge_m * (step.x() * stage.camera.right + step.y() * stage.camera.up);
        const int gesture = gesture_of(grip.part, state);
        if (grip.part.kind == BodyPartKind::fixture)
            return MoveFixture{grip.part.index, to_m, gesture};
        if (grip.point)
            return PullPoint{*grip.point, to_m, stage.camera.toward_eye(), gesture};
    }
    return std::nullopt;
}

void choose_next(const BodyModel& model, const BodyStage& stage, int step, BodyStageState& state) {
    const std::vector<BodyPart> parts = parts_of(grips_of(model, stage, state));
    state.nudged.reset();
    if (parts.empty())
        return;
    const auto count = static_cast<std::ptrdiff_t>(parts.size());
    const auto found =
        state.chosen ? std::find(parts.begin(), parts.end(), *state.chosen) : parts.end();
    if (found == parts.end()) {
        state.chosen = step > 0 ? parts.front() : parts.back();
        return;
    }
    const std::ptrdiff_t next = (found - parts.begin() + step + count) % count;
    state.chosen = parts[static_cast<std::size_t>(next)];
}

std::optional<BodyIntent> press_arrow(const BodyModel& model, const BodyStage& stage,
                                      const KeyPress& key, setup::UnitSystem units,
                                      BodyStageState& state) {
    const double times = (key.modifiers & key::kWithShift) != 0 ? 5.0 : 1.0;
    const bool across = key.key == key::kLeft || key.key == key::kRight;
    const double sign = key.key == key::kRight || key.key == key::kUp ? 1.0 : -1.0;
    if (state.chosen)
        return nudge_part(model, stage,
                          across ? Point(sign * times, 0.0) : Point(0.0, sign * times), state);
    if (across)
        return Scrub{model.progress + sign * times * kScrubStep};
    return size_load(model, sign * times, units, state);
}

} // namespace

const std::vector<BodyGrip>& grips_of(const BodyModel& model, const BodyStage& stage,
                                      BodyStageState& state) {
    return state.grips.of({model.stamp(), stage}, [&] { return body_grips(model, stage); });
}

std::optional<BodyIntent> point_on_body(const BodyModel& model, const BodyStage& stage,
                                        const StagePointer& pointer, setup::UnitSystem units,
                                        BodyStageState& state) {
    if (pointer.released)
        state.held.reset();
    if (state.held) {
        if (pointer.moved_px.norm() == 0.0)
            return std::nullopt;
        auto intent = drag(model, stage, pointer, units, state);
        state.hovered = state.held;
        return intent;
    }
    const BodyGrip* under =
        pointer.on_stage ? grip_at(grips_of(model, stage, state), pointer.at_px) : nullptr;
    if (under != nullptr)
        state.hovered = *under;
    else
        state.hovered.reset();
    if (pointer.double_clicked && state.hovered) {
        state.to_type = main_number(model, state.hovered->part);
        return std::nullopt;
    }
    if (!pointer.pressed)
        return std::nullopt;
    if (!state.hovered) {
        state.chosen.reset();
        return std::nullopt;
    }
    take(model, stage, pointer, state);
    if (const auto axis = axis_at(model, state.held->part))
        return ChooseAxis{*axis};
    return std::nullopt;
}

std::optional<BodyIntent> press_on_body(const BodyModel& model, const BodyStage& stage,
                                        const KeyPress& key, setup::UnitSystem units,
                                        BodyStageState& state) {
    const bool control = (key.modifiers & key::kWithControl) != 0;
    const bool shift = (key.modifiers & key::kWithShift) != 0;
    const std::size_t axes = model.state.setup.axes.size();
    switch (key.key) {
    case key::kLeft:
    case key::kRight:
    case key::kUp:
    case key::kDown:
        return press_arrow(model, stage, key, units, state);
    case key::kPageUp:
    case key::kPageDown:
        return size_load(model, (key.key == key::kPageUp ? 1.0 : -1.0) * (shift ? 10.0 : 1.0),
                         units, state);
    case key::kTab:
        choose_next(model, stage, shift ? -1 : 1, state);
        return std::nullopt;
    case key::kEscape:
        state.chosen.reset();
        return std::nullopt;
    case key::kEnter:
    case key::kKeypadEnter:
        if (state.chosen)
            state.to_type = main_number(model, *state.chosen);
        else
            state.to_type = sized_load(model, state);
        return std::nullopt;
    case key::kA:
        return ChooseAxis{(model.state.chosen + (shift ? axes - 1 : 1)) % axes};
    case key::kZ:
        return control ? std::optional<BodyIntent>(shift ? BodyIntent(RedoBody{}) : UndoBody{})
                       : std::nullopt;
    case key::kY:
        return control ? std::optional<BodyIntent>(RedoBody{}) : std::nullopt;
    default:
        return std::nullopt;
    }
}

std::string caption_of(const BodyModel& model, const BodyStage& stage, const BodyGrip& grip) {
    if (grip.hold == BodyHold::tip)
        return grip.name + ": drag to make it heavier or lighter";
    if (grip.part.kind == BodyPartKind::fixture)
        return grip.name + ": drag it to another place";
    if (!way_of(model, stage, grip).empty())
        return grip.name + ": drag along its way, or off it to pose the body";
    return grip.name + ": drag to pose the body";
}

} // namespace steelyard::app

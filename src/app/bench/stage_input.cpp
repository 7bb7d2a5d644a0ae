#include "app/bench/stage_input.h"

#include "app/bench/lever_shape.h"
#include "app/platform/key.h"
#include "mechanics/constants.h"
#include "mechanics/lever/lever_geometry.h"
#include "scene/lever/lever_body.h"

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using mechanics::Vec2;
using scene::Grip;
using scene::Hold;
using scene::LeverPart;
using scene::PartKind;
using scene::Point;

constexpr double kDirectionSnap_rad = 5.0 * mechanics::kDegree_rad;
constexpr double kZoomPerNotch = 1.15;
constexpr double kSmallestLever_px = 40.0;
constexpr double kMostZoom = 200.0; ///< lever against stage

double snapped(double value, double step, bool off) {
    return off ? value : std::round(value / step) * step;
}

/// The nearest grip in reach; of some at one place that of the chosen part.
std::optional<Grip> grip_at(const std::vector<Grip>& grips, const Point& at_px,
                            const LeverPart& chosen) {
    constexpr double kOnePlace_px = 1.0;
    std::optional<Grip> nearest;
    double nearest_px = kGripReach_px;
    for (const Grip& grip : grips) {
        const double distance_px =
            (grip.at_px - at_px).norm() - (grip.part == chosen ? kOnePlace_px : 0.0);
        if (distance_px < nearest_px) {
            nearest_px = distance_px;
            nearest = grip;
        }
    }
    return nearest;
}

/// The axis, where the pointer is on the stand below its pin.
std::optional<Grip> axis_by_its_stand(const std::vector<Grip>& grips, const Point& at_px) {
    for (const Grip& grip : grips) {
        const Point below_px = at_px - grip.at_px;
        const double part = below_px.y() / scene::kStageLever.stand_px; // 0 at the pin
        if (grip.part.kind == PartKind::axis && part >= 0.0 && part <= 1.0 &&
            std::abs(below_px.x()) <= part * scene::kStageLever.stand_half_px)
            return grip;
    }
    return std::nullopt;
}

bool is_among(const std::vector<Grip>& grips, const Grip& held) {
    return std::any_of(grips.begin(), grips.end(), [&](const Grip& grip) {
        return grip.part == held.part && grip.hold == held.hold;
    });
}

double mass_step_kg(const BenchModel& model, const scene::StageView& view) {
    const double gravity = std::max(model.state.setup.lever.gravity_m_s2, 1e-3);
    const double unit_kg = model.units == setup::UnitSystem::us ? mechanics::kPound_kg : 1.0;
    return unit_kg * scene::round_step_below(6.0 / view.px_per_N / gravity / unit_kg);
}

/// The arrow's tip is dragged: a weight gets heavier, a pull turns and grows.
BenchIntent drag_tip(const BenchModel& model, const StageState& stage, const Point& tip_px,
                     bool snap_off) {
    const LeverPart part = stage.held->part;
    const HandledLever handled = model.state.handled();
    const mechanics::ForceReading& reading =
        part.kind == PartKind::effort ? model.solved.effort : model.solved.loads[part.index];
    const Point span_px = tip_px - stage.view.to_sheet(reading.point_m);
    const Vec2 pull_N = Vec2(span_px.x(), -span_px.y()) / stage.view.px_per_N;
    if (value_of(handled, {part, LeverField::mass})) {
        const double gravity = std::max(handled.lever.gravity_m_s2, 1e-3);
        return SetNumber{{part, LeverField::mass},
                         snapped(std::max(-pull_N.y(), 0.0) / gravity,
                                 mass_step_kg(model, stage.view), snap_off),
                         stage.gesture};
    }
    const double direction_rad =
        snapped(std::atan2(pull_N.y(), pull_N.x()), kDirectionSnap_rad, snap_off);
    return SetPull{part, direction_rad,
                   snapped(pull_N.norm(), force_step_N(stage.view, model.units), snap_off),
                   stage.gesture};
}

BenchIntent drag_held_place(const BenchModel& model, const StageState& stage, const Point& at_px,
                            bool snap_off) {
    const double at_m =
        mechanics::nearest_at(model.state.setup.lever.path_m, stage.view.to_world(at_px));
    return SetNumber{{stage.held->part, LeverField::place},
                     snapped(at_m, place_step_m(stage.view, model.units), snap_off),
                     stage.gesture};
}

/// A corner is pulled; across and up snap by themselves.
BenchIntent drag_corner(const BenchModel& model, const StageState& stage, const Point& grip_px,
                        bool snap_off) {
    const std::size_t corner = stage.held->part.index;
    const Vec2 to_m = stage.view.to_world(
        grip_px - scene::corner_grip_offset_px(model.state.setup.lever, corner));
    const double step_m = place_step_m(stage.view, model.units);
    return MoveCorner{corner,
                      {snapped(to_m.x(), step_m, snap_off), snapped(to_m.y(), step_m, snap_off)},
                      stage.gesture};
}

BenchIntent drag(const BenchModel& model, const StageState& stage, const Point& at_px,
                 bool snap_off) {
    if (stage.held->part.kind == PartKind::corner)
        return drag_corner(model, stage, at_px, snap_off);
    return stage.held->hold == Hold::place ? drag_held_place(model, stage, at_px, snap_off)
                                           : drag_tip(model, stage, at_px, snap_off);
}

/// Zooms about a point, as long as the lever stays something that can be seen: from a thumbnail to
/// a few millimetres of it over the whole stage.
void zoom(const BenchModel& model, const Point& about_px, double factor, StageState& stage) {
    const double now_px =
        stage.view.px_per_m * mechanics::path_length(model.state.setup.lever.path_m);
    const double most_px = kMostZoom * stage.view.size_px.maxCoeff();
    const double kept = std::clamp(factor, std::min(1.0, kSmallestLever_px / now_px),
                                   std::max(1.0, most_px / now_px));
    stage.view = scene::zoomed(stage.view, about_px, kept);
    stage.view_is_own = true;
}

void look_around(const BenchModel& model, const StagePointer& pointer, StageState& stage) {
    if (pointer.on_stage && pointer.wheel != 0.0)
        zoom(model, pointer.at_px, std::pow(kZoomPerNotch, pointer.wheel), stage);
    if (pointer.panning && pointer.moved_px.norm() > 0.0) {
        stage.view.origin_px += pointer.moved_px;
        stage.view_is_own = true;
    }
}

/// One key on the chosen part: which number changes, and by how much.
struct Nudge {
    LeverField field;
    double step;
};

std::optional<Nudge> nudge_of(const BenchModel& model, const StageState& stage,
                              const KeyPress& key) {
    const bool us = model.units == setup::UnitSystem::us;
    const double times = (key.modifiers & key::kWithShift) != 0 ? 10.0 : 1.0;
    const bool turning = (key.modifiers & key::kWithControl) != 0;
    const double sign = key.key == key::kRight || key.key == key::kUp ? 1.0 : -1.0;
    const bool is_corner = stage.chosen.kind == PartKind::corner;
    const double step_m = us ? 0.5 * mechanics::kInch_m : 0.01;
    switch (key.key) {
    case key::kLeft:
    case key::kRight:
        if (turning) // right turns clockwise, as a hand on the arrow would
            return Nudge{LeverField::direction, -sign * times * mechanics::kDegree_rad};
        return Nudge{is_corner ? LeverField::across : LeverField::place, sign * times * step_m};
    case key::kUp:
    case key::kDown:
        for (const LeverField field : fields_of(model.state.handled(), stage.chosen)) {
            if (field == LeverField::mass)
                return Nudge{field, sign * times * (us ? mechanics::kPound_kg : 0.5)};
            if (field == LeverField::force)
                return Nudge{field, sign * times * (us ? mechanics::kPoundForce_N : 5.0)};
            if (field == LeverField::torque)
                return Nudge{field, sign * times};
            if (field == LeverField::grip)
                return Nudge{field, sign * times * 0.01};
            if (field == LeverField::up)
                return Nudge{field, sign * times * step_m};
        }
        return std::nullopt;
    default:
        return std::nullopt;
    }
}

void choose_next(const BenchModel& model, StageState& stage, int step) {
    const std::vector<LeverPart> parts = parts_of(model.state.setup.lever);
    const auto found = std::find(parts.begin(), parts.end(), stage.chosen);
    const auto count = static_cast<std::ptrdiff_t>(parts.size());
    const std::ptrdiff_t at = found == parts.end() ? 0 : found - parts.begin();
    stage.chosen = parts[static_cast<std::size_t>((at + step + count) % count)];
    stage.nudged.reset();
}

/// Keys that are not nudges.
std::optional<BenchIntent> command_of(const BenchModel& model, const KeyPress& key,
                                      StageState& stage) {
    const bool control = (key.modifiers & key::kWithControl) != 0;
    const bool shift = (key.modifiers & key::kWithShift) != 0;
    switch (key.key) {
    case key::kZ:
        return control ? std::optional<BenchIntent>(shift ? BenchIntent(Redo{}) : Undo{})
                       : std::nullopt;
    case key::kY:
        return control ? std::optional<BenchIntent>(Redo{}) : std::nullopt;
    case key::kU:
        return SwitchUnits{};
    case key::kH:
        return hand_switch(model);
    case key::kInsert:
        return new_load(model);
    case key::kDelete:
        if (stage.chosen.kind == PartKind::load)
            return RemoveLoad{stage.chosen.index};
        if (stage.chosen.kind == PartKind::corner)
            return RemoveCorner{stage.chosen.index};
        return std::nullopt;
    case key::kTab:
        choose_next(model, stage, shift ? -1 : 1);
        return std::nullopt;
    case key::kEnter:
    case key::kKeypadEnter: {
        const auto fields = fields_of(model.state.handled(), stage.chosen);
        if (!fields.empty())
            stage.to_type = LeverNumber{stage.chosen, fields.front()};
        return std::nullopt;
    }
    case key::kHome:
        stage.view_fits = false;
        stage.view_is_own = false;
        return std::nullopt;
    case key::kEqual:
    case key::kKeypadAdd:
    case key::kMinus:
    case key::kKeypadSubtract: {
        const bool nearer = key.key == key::kEqual || key.key == key::kKeypadAdd;
        zoom(model, 0.5 * stage.view.size_px, nearer ? kZoomPerNotch : 1.0 / kZoomPerNotch, stage);
        return std::nullopt;
    }
    default:
        return std::nullopt;
    }
}

} // namespace

BenchIntent hand_switch(const BenchModel& model) {
    const bool is_set =
        model.state.hand_N || mechanics::sought_load(model.state.setup.lever).has_value();
    return is_set ? BenchIntent(SolveForEffort{}) : BenchIntent(TakeByHand{});
}

AddLoad new_load(const BenchModel& model) {
    return {free_place_m(model.state.setup.lever), 5.0};
}

std::vector<Grip> bench_grips(const BenchModel& model, const scene::LeverPose& pose,
                              const StageState& stage) {
    std::vector<Grip> grips =
        scene::lever_grips(model.state.setup.lever, model.solved, stage.view, pose);
    if (!stage.all_forces)
        grips.erase(
            std::remove_if(grips.begin(), grips.end(),
                           [](const Grip& grip) { return grip.part.kind == PartKind::own_weight; }),
            grips.end());
    if (pose.tilt_rad == 0.0) {
        const std::vector<Grip> corners = scene::corner_grips(model.state.setup.lever, stage.view);
        grips.insert(grips.end(), corners.begin(), corners.end());
    }
    return grips;
}

double place_step_m(const scene::StageView& view, setup::UnitSystem units) {
    const double unit_m = units == setup::UnitSystem::us ? mechanics::kInch_m : 0.01;
    return unit_m * scene::round_step_below(10.0 / view.px_per_m / unit_m);
}

double force_step_N(const scene::StageView& view, setup::UnitSystem units) {
    const double unit_N = units == setup::UnitSystem::us ? mechanics::kPoundForce_N : 1.0;
    return unit_N * scene::round_step_below(6.0 / view.px_per_N / unit_N);
}

std::optional<BenchIntent> point_on_stage(const BenchModel& model, const StagePointer& pointer,
                                          const scene::LeverPose& pose, StageState& stage) {
    look_around(model, pointer, stage);
    const std::vector<Grip> grips = bench_grips(model, pose, stage);
    if (stage.held && !is_among(grips, *stage.held)) // its load went: undone, removed, replaced
        stage.held.reset();
    if (!stage.held)
        stage.hovered =
            pointer.on_stage ? grip_at(grips, pointer.at_px, stage.chosen) : std::nullopt;
    const bool on_stand = !stage.held && pointer.on_stage && !stage.hovered;
    if (on_stand && !model.state.setup.limb) // a limb has none
        stage.hovered = axis_by_its_stand(grips, pointer.at_px);
    if (pointer.double_clicked && stage.hovered) {
        const auto fields = fields_of(model.state.handled(), stage.hovered->part);
        const bool at_place = stage.hovered->hold == Hold::place;
        const bool is_corner = stage.hovered->part.kind == PartKind::corner;
        if (!fields.empty())
            stage.to_type = LeverNumber{
                stage.hovered->part, at_place && !is_corner ? LeverField::place : fields.front()};
        stage.held.reset();
        return std::nullopt;
    }
    if (pointer.pressed && stage.hovered) {
        stage.held = stage.hovered;
        stage.held_offset_px = stage.held->at_px - pointer.at_px;
        stage.chosen = stage.held->part;
        stage.nudged.reset();
        ++stage.gesture;
        return std::nullopt;
    }
    if (pointer.released) {
        stage.held.reset();
        return std::nullopt;
    }
    if (!stage.held || pointer.moved_px.norm() == 0.0)
        return std::nullopt;
    const Point at_px = pointer.at_px + stage.held_offset_px;
    stage.hovered = stage.held;
    stage.hovered->at_px = at_px;
    return drag(model, stage, at_px, pointer.snap_off);
}

std::optional<BenchIntent> press_on_stage(const BenchModel& model, const KeyPress& key,
                                          StageState& stage) {
    const std::optional<Nudge> nudge = nudge_of(model, stage, key);
    if (!nudge)
        return command_of(model, key, stage);
    const LeverNumber number{stage.chosen, nudge->field};
    const std::optional<double> value = value_of(model.state.handled(), number);
    if (!value)
        return std::nullopt;
    if (stage.nudged != number) {
        stage.nudged = number;
        ++stage.gesture;
    }
    return SetNumber{number, *value + nudge->step, stage.gesture};
}

} // namespace steelyard::app

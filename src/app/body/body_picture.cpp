#include "app/body/body_picture.h"

#include "mechanics/resistance/resistance_kinds.h"
#include "scene/body/body_drawing.h"
#include "scene/body/order_bar.h"

#include <algorithm>

namespace steelyard::app {

namespace {

using scene::Point;
using scene::Role;

constexpr double kHeadingTop_px = 72.0;
constexpr double kBarBelowHeading_px = 50.0;
constexpr double kBarBelowName_px = 28.0; ///< where there is no sentence
constexpr double kBar_px = 38.0;          ///< height of the row of numbers
constexpr double kSecondLine_px = 18.0;
constexpr double kBareHeading_px = 24.0; ///< height of the name alone
constexpr double kLeft_px = 24.0;

BodyHeading heading_of(const Style& style, const Layout& layout, const BodyModel& model) {
    const TextStyle how{scene::TextSize::caption, false, Role::quiet_ink};
    const std::string& sentence = model.state.setup.head.description;
    const double right_px =
        model.moves() ? plot_room(layout, style.fonts.scale).low.x() - 16.0 : layout.stage_px.x();
    const auto width_px = static_cast<float>(std::max(right_px - kLeft_px, 120.0));
    if (layout.narrow) // the figure needs the room
        return {"", "", (kHeadingTop_px + kBarBelowName_px) * style.fonts.scale};
    BodyHeading heading{sentence, "", (kHeadingTop_px + kBarBelowHeading_px) * style.fonts.scale};
    while (text_width(style, how, heading.first) > width_px) {
        const std::size_t blank = heading.first.rfind(' ');
        if (blank == std::string::npos)
            break;
        heading.first.resize(blank);
    }
    if (heading.first.size() < sentence.size()) {
        heading.second = shortened(style, how, sentence.substr(heading.first.size() + 1), width_px);
        heading.bar_top_px += kSecondLine_px * style.fonts.scale;
    }
    return heading;
}

/// The way that the load makes through the repetition.
std::vector<mechanics::Vec3> load_trail(const BodyModel& model) {
    const auto& resistances = model.exercise().body_case.resistances;
    return resistances.empty() ? std::vector<mechanics::Vec3>{}
                               : trail_of(model.exercise(), carrier_of(resistances.front()));
}

scene::Drawing draw_exercise(const BodyHeading& heading, const scene::Rect& plot_px, bool bare,
                             const scene::CloseUp& close_up, double text_scale,
                             const BodyShown& shown, scene::LabelSides& sides) {
    const BodyModel& model = shown.model;
    scene::BodyDrawing how;
    how.name = model.state.setup.head.name;
    if (!bare)
        how.sentence = heading.first;
    how.strip = !bare;
    how.units = shown.units;
    how.text_scale = text_scale;
    how.heading_top_px = kHeadingTop_px * text_scale;
    how.heading_room_px =
        bare ? kBareHeading_px : heading.bar_top_px / text_scale + kBar_px - kHeadingTop_px;
    how.axes = model.state.setup.axes;
    how.chosen = model.state.chosen;
    how.muscles = model.at_axis;
    how.resting_muscles = shown.looks.resting_muscles;
    if (shown.looks.close_up)
        how.close_up = close_up;
    else
        how.trail_m = load_trail(model);
    if (shown.plot != nullptr)
        how.kept_clear.push_back(plot_px);
    if (!bare)
        how.kept_clear.push_back({{0.0, heading.bar_top_px}, shown.bar_end_px});
    scene::Drawing drawing = scene::draw_body(model.posed, model.solved, shown.stage, how, sides);
    drawing.description = model.state.setup.head.description;
    if (!bare && !heading.second.empty()) {
        scene::Label second;
        second.at = {kLeft_px, (kHeadingTop_px + 38.0 + kSecondLine_px) * text_scale};
        second.text = heading.second;
        second.size = scene::TextSize::caption;
        second.role = Role::quiet_ink;
        drawing.shapes.emplace_back(std::move(second));
    }
    return drawing;
}

/// Rings around what can be taken hold of: clear where the pointer or the keyboard is.
void add_grip_rings(const std::vector<BodyGrip>& grips, const BodyStageState& hand,
                    std::vector<scene::Shape>& shapes) {
    for (const BodyGrip& grip : grips) {
        const bool hovered = hand.hovered && hand.hovered->is_same(grip);
        const bool chosen = hand.chosen == grip.part && grip.hold == BodyHold::place;
        if (!hovered && !chosen)
            continue;
        scene::Disc ring;
        ring.centre = grip.at_px;
        ring.radius_px = hovered ? 22.0 : 18.0;
        ring.fill = grip.part.kind == BodyPartKind::joint ? Role::quiet_ink : Role::load;
        ring.fill_opacity = hovered ? 0.25 : 0.14;
        ring.outline = scene::Stroke{Role::ink, chosen ? 2.0 : 1.0, scene::Dash::solid, 0.8};
        shapes.emplace_back(ring);
    }
}

void add_caption(const BodyShown& shown, double text_scale, const BodyGrip& grip,
                 std::vector<scene::Shape>& shapes) {
    scene::Label caption;
    caption.text = caption_of(shown.model, shown.stage, grip);
    caption.size = scene::TextSize::caption;
    caption.strong = true;
    const bool at_right = grip.at_px.x() > 0.5 * shown.stage.size_px.x();
    caption.align = at_right ? scene::Align::right : scene::Align::left;
    caption.at = grip.at_px + Point(at_right ? -28.0 : 28.0, -22.0);
    const scene::Rect room = scene::room_of(caption, text_scale);
    scene::Box ground; // the caption lies over whatever is there
    ground.centre = 0.5 * (room.low + room.high);
    ground.size_px = room.high - room.low + Point(12.0, 10.0);
    ground.corner_px = 6.0;
    ground.fill = Role::panel;
    shapes.emplace_back(ground);
    shapes.emplace_back(std::move(caption));
}

MarksFrom marks_from(const BodyStageState& hand, const PlotPanel* plot) {
    MarksFrom from;
    from.chosen = hand.chosen;
    if (hand.hovered) {
        from.hovered = hand.hovered->part;
        from.hold = hand.hovered->hold;
    }
    from.held = hand.held.has_value();
    if (plot != nullptr) {
        from.plot = plot->made_for;
        from.plot_hover = plot->plot.hover;
    }
    return from;
}

} // namespace

scene::CloseUp close_up_places(const Style& style, const Layout& layout,
                               const BodyHeading& heading) {
    const double scale = style.fonts.scale;
    const bool bare = is_bare(layout, scale);
    const double top_px = kHeadingTop_px * scale;
    scene::CloseUp places = scene::close_up_on(layout.stage_px, top_px, scale);
    const double below_px =
        bare ? top_px + kBareHeading_px * scale : heading.bar_top_px + kBar_px * scale;
    const scene::Rect plot = plot_room(layout, scale);
    if (bare) // no room beside the name
        places.order_bar =
            scene::Rect{{kLeft_px, below_px},
                        {layout.stage_px.x() - kLeft_px, below_px + scene::kOrderBar_px * scale}};
    else if (plot.high.x() > plot.low.x())
        places.order_bar->low.x() = plot.low.x(); // the heading ends beside it
    const scene::Point size_px = places.whole_person.high - places.whole_person.low;
    const double person_top_px =
        8.0 + (bare ? places.order_bar->high.y() : std::max(below_px, places.order_bar->high.y()));
    places.whole_person.low.y() = person_top_px;
    places.whole_person.high.y() = person_top_px + size_px.y();
    return places;
}

const BodyHeading& keep_heading(const Style& style, const Layout& layout, const BodyModel& model,
                                BodyPicture& picture) {
    return picture.heading.of({model.version, layout.stage_px, style.fonts.scale},
                              [&] { return heading_of(style, layout, model); });
}

void keep_picture(const Style& style, const Layout& layout, const BodyShown& shown,
                  BodyStageState& hand, BodyPicture& picture) {
    const double scale = style.fonts.scale;
    const ExerciseFrom exercise_from{shown.model.stamp(), shown.stage, shown.units, scale,
                                     shown.bar_end_px,    shown.looks};
    std::vector<scene::Shape>& shapes = picture.drawing.shapes;
    if (picture.exercise_from != exercise_from) {
        const BodyHeading& heading = keep_heading(style, layout, shown.model, picture);
        if (!picture.exercise_from || picture.exercise_from->model.version != shown.model.version ||
            picture.exercise_from->stage != shown.stage)
            picture.sides.clear();
        picture.drawing =
            draw_exercise(heading, plot_room(layout, scale), is_bare(layout, scale),
                          close_up_places(style, layout, heading), scale, shown, picture.sides);
        picture.of_exercise = shapes.size();
        picture.exercise_from = exercise_from;
        picture.marks_from.reset();
    }
    const MarksFrom marks = marks_from(hand, shown.plot);
    if (picture.marks_from == marks)
        return;
    shapes.erase(shapes.begin() + static_cast<std::ptrdiff_t>(picture.of_exercise), shapes.end());
    add_grip_rings(grips_of(shown.model, shown.stage, hand), hand, shapes);
    if (shown.plot != nullptr)
        scene::add_curve_plot(shown.plot->plot, shapes);
    if (hand.hovered && !hand.held)
        add_caption(shown, scale, *hand.hovered, shapes);
    picture.marks_from = marks;
}

} // namespace steelyard::app

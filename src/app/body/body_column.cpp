#include "app/body/body_column.h"

#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "app/widgets/column_pen.h"
#include "scene/body_drawing.h"
#include "setup/format_quantity.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace steelyard::app {

namespace {

using mechanics::Hinge;
using scene::Role;
using scene::TextSize;
using setup::Dimension;

constexpr TextStyle kCaption{TextSize::caption, false, Role::quiet_ink};
constexpr TextStyle kBody{TextSize::body, false, Role::quiet_ink};

/// What the muscles must do about a hinge: "extension".
std::string_view asked_of_muscles(const BodyModel& model, Hinge hinge) {
    const mechanics::HingeInfo& info = mechanics::hinge_info(hinge);
    return model.solved.muscle(hinge) >= 0.0 ? info.positive : info.negative;
}

void draw_head(const BodyModel& model, ColumnPen& pen) {
    const std::size_t most = most_loaded(model);
    const Hinge hinge = model.state.setup.axes[most];
    pen.skip(68.0F);
    pen.line(kCaption, "The load pulls hardest at");
    pen.skip(46.0F);
    pen.line({TextSize::key, true, Role::ink}, "the " + scene::joint_word(hinge));
    pen.skip(28.0F);
    if (model.state.setup.axes.size() < 2)
        return pen.paragraph(
            kBody, fmt::format("The muscles must work in {}.", asked_of_muscles(model, hinge)));
    std::size_t second = most == 0 ? 1 : 0;
    for (std::size_t i = 0; i < model.state.setup.axes.size(); ++i)
        if (i != most && std::abs(model.solved.muscle(model.state.setup.axes[i])) >
                             std::abs(model.solved.muscle(model.state.setup.axes[second])))
            second = i;
    const double largest = std::abs(model.solved.muscle(hinge));
    const double share =
        largest > 0.0 ? std::abs(model.solved.muscle(model.state.setup.axes[second])) / largest
                      : 0.0;
    pen.paragraph(kBody, fmt::format("and {:.0f} % of that at the {}.", 100.0 * share,
                                     scene::joint_word(model.state.setup.axes[second])));
}

/// One bar for each candidate axis, from a shared zero.
std::optional<std::size_t> draw_bars(const Style& style, const BodyModel& model,
                                     setup::UnitSystem units, ColumnPen& pen) {
    std::optional<std::size_t> chosen;
    const double largest =
        std::max(std::abs(model.solved.muscle(model.state.setup.axes[most_loaded(model)])), 1e-9);
    const float name_px = style.px(92.0F);
    const float value_px = style.px(92.0F);
    const float bar_px = pen.width() - name_px - value_px;
    for (std::size_t i = 0; i < model.state.setup.axes.size(); ++i) {
        const Hinge hinge = model.state.setup.axes[i];
        const double torque_Nm = std::abs(model.solved.muscle(hinge));
        ImGui::PushID(static_cast<int>(i));
        if (row_button(style, "axis", {pen.left() - 8.0F, pen.y()}, pen.width() + 16.0F,
                       style.px(32.0F), i == model.state.chosen))
            chosen = i;
        ImGui::PopID();
        const float base = pen.y() + style.px(21.0F);
        draw_text(pen.list(), style, kBody, {pen.left() + style.px(4.0F), base},
                  scene::joint_word(hinge));
        const float length_px = static_cast<float>(torque_Nm / largest) * bar_px;
        const ImVec2 corner{pen.left() + name_px, pen.y() + style.px(9.0F)};
        pen.list().AddRectFilled(corner,
                                 {corner.x + std::max(length_px, 1.0F), corner.y + style.px(14.0F)},
                                 style.mark(Role::ink), 4.0F);
        const std::string value = setup::format_quantity(torque_Nm, Dimension::torque, units);
        const TextStyle how{TextSize::body, false, Role::ink};
        draw_text(pen.list(), style, how,
                  {pen.left() + pen.width() - text_width(style, how, value), base}, value);
        pen.skip(32.0F);
    }
    return chosen;
}

/// Whether a reader could compare one hip with the whole back by mistake.
bool has_paired_and_single_axes(const BodyModel& model) {
    const auto& axes = model.state.setup.axes;
    const auto is_paired = [](Hinge hinge) { return mechanics::hinge_info(hinge).mirror != hinge; };
    const auto paired = std::count_if(axes.begin(), axes.end(), is_paired);
    return paired > 0 && paired < std::ssize(axes);
}

void draw_value(const Style& style, std::string_view name, const std::string& value, Role role,
                ColumnPen& pen) {
    draw_text(pen.list(), style, kBody, {pen.left(), pen.y()}, name);
    const TextStyle how{TextSize::reading, false, role};
    draw_text(pen.list(), style, how,
              {pen.left() + pen.width() - text_width(style, how, value), pen.y()}, value);
}

double resistance_force(const BodyModel& model) {
    double sum_N = 0.0;
    for (const mechanics::BodyForce& force : model.solved.forces)
        if (force.origin == mechanics::ForceOrigin::resistance)
            sum_N += force.force_N.norm();
    return sum_N;
}

std::string range_text(const mechanics::Interval& range_N, setup::UnitSystem units) {
    return setup::format_quantity(range_N.low, Dimension::force, units) + " to " +
           setup::format_quantity(range_N.high, Dimension::force, units);
}

void draw_muscles(const Style& style, const BodyModel& model, setup::UnitSystem units,
                  ColumnPen& pen) {
    const std::optional<double> force_N = muscle_force(model);
    if (!force_N)
        return;
    pen.skip(30.0F);
    draw_value(style, "Muscles pull", setup::format_quantity(*force_N, Dimension::force, units),
               Role::effort, pen);
    pen.skip(22.0F);
    const double load_N = resistance_force(model);
    if (load_N > 1.0)
        pen.paragraph(kCaption, fmt::format("{:.1f} times the load in all hands, about the {}",
                                            *force_N / load_N, scene::joint_word(model.axis())));
    for (const mechanics::MuscleReading& muscle : model.at_axis->solution.muscles) {
        if (muscle.tension_N <= 0.0)
            continue;
        std::string line = muscle.muscle + " " +
                           setup::format_quantity(muscle.tension_N, Dimension::force, units) +
                           ", arm " +
                           setup::format_quantity(std::abs(muscle.arm_m), Dimension::length, units);
        if (muscle.tension_range_N &&
            muscle.tension_range_N->high - muscle.tension_range_N->low > 0.5)
            line += "; from " + range_text(*muscle.tension_range_N, units) + " over the sources";
        pen.paragraph(kCaption, line);
    }
    if (model.at_axis->solution.joint_reaction_N) {
        pen.skip(22.0F);
        draw_value(style, "Joint reaction",
                   setup::format_quantity(model.at_axis->solution.joint_reaction_N->norm(),
                                          Dimension::force, units),
                   Role::reaction, pen);
        pen.skip(8.0F);
    }
}

std::string balance_sentence(const mechanics::GroundReading& ground) {
    using mechanics::BalanceStatus;
    switch (ground.status) {
    case BalanceStatus::held:
    case BalanceStatus::balanced:
        return {};
    case BalanceStatus::steadied:
        return "A light touch keeps the balance.";
    case BalanceStatus::would_topple:
        return "Nobody stands like this: the body would topple.";
    case BalanceStatus::would_slip:
        return "The feet would slip.";
    case BalanceStatus::lifts_off:
        return "The resistance lifts the body off the floor.";
    }
    return {};
}

} // namespace

BodyColumnOutcome draw_body_column(const Style& style, const Layout& layout, const BodyModel& model,
                                   setup::UnitSystem units, bool playing) {
    BodyColumnOutcome outcome;
    begin_area("column", layout.column_at_px, layout.column_px, true);
    ColumnPen pen(style, layout);
    draw_head(model, pen);
    pen.skip(4.0F);
    outcome.chosen_axis = draw_bars(style, model, units, pen);
    if (has_paired_and_single_axes(model)) {
        pen.skip(16.0F);
        pen.paragraph(kCaption, "Paired joints: of one side. The low back carries both.");
        pen.skip(-10.0F);
    }
    pen.skip(12.0F);
    pen.divider();
    draw_muscles(style, model, units, pen);
    pen.skip(24.0F);
    const std::string balance = balance_sentence(model.solved.ground);
    if (!balance.empty())
        pen.paragraph({TextSize::body, true, Role::wrong}, balance);
    if (!model.message.empty())
        pen.paragraph({TextSize::caption, false, Role::wrong}, model.message);
    if (!model.state.setup.head.note.empty())
        pen.paragraph(kCaption, model.state.setup.head.note);
    pen.paragraph(kCaption, "Estimates for a rigid-segment model, for teaching; not medical "
                            "advice. Pain means stop; ask a licensed practitioner.");
    const auto foot = static_cast<float>(layout.column_at_px.y() + layout.column_px.y()) -
                      main_button_height(style) - style.px(28.0F);
    const float top = layout.narrow ? pen.y() : std::max(pen.y(), foot);
    if (model.moves() && main_button(style, "play", {pen.left(), top}, pen.width(),
                                     playing ? "Stop" : "Play the repetition"))
        outcome.play = true;
    pen.finish(top - pen.y() + main_button_height(style) + style.px(20.0F));
    end_area();
    return outcome;
}

} // namespace steelyard::app

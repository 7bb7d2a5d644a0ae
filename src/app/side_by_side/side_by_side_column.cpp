#include "app/side_by_side/side_by_side_column.h"

#include "app/look/text_styles.h"
#include "app/paint/list_painter.h"
#include "app/widgets/area.h"
#include "app/widgets/buttons.h"
#include "app/widgets/keyboard_wish.h"
#include "setup/units/format_quantity.h"
#include "words/body/axis_shares.h"
#include "words/body/body_words.h"
#include "words/caution.h"
#include "words/letter_case.h"
#include "words/whatif/gym_moves.h"
#include "words/whatif/whatif_words.h"

#include <fmt/format.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <cmath>
#include <functional>

namespace steelyard::app {

namespace {

using mechanics::Hinge;
using scene::Role;
using scene::TextSize;
using setup::Dimension;

/// Everything that the parts of the column share.
struct Part {
    const Style& style;
    const SideBySideModel& model;
    const ComparedBody& b;
    setup::UnitSystem units;
    ColumnPen& pen;
    PairColumn& column;
    PairColumnWishes& wishes;

    std::string torque(double value_Nm) const {
        return setup::format_quantity(value_Nm, Dimension::torque, units);
    }
};

scene::PairedBars bars_of(const Part& part) {
    scene::PairedBars bars;
    bars.units = part.units;
    bars.width_px = part.pen.width();
    bars.text_scale = part.style.fonts.scale;
    for (std::size_t i = 0; i < part.model.axes.size(); ++i) {
        const Hinge hinge = part.model.axes[i];
        scene::BarPair pair;
        pair.name = words::one_side_word(part.model.axes, hinge);
        pair.a = std::abs(part.model.a.here.muscle(hinge));
        pair.b = std::abs(part.b.here.muscle(hinge));
        if (part.model.moves()) {
            pair.a_tick = std::abs(part.model.a.peaks[i].torque_Nm);
            pair.b_tick = std::abs(part.b.peaks[i].torque_Nm);
        }
        pair.chosen = i == part.model.chosen;
        bars.pairs.push_back(std::move(pair));
    }
    return bars;
}

/// One pair of bars for each joint; press one to look at it.
void draw_bars(const Part& part) {
    ColumnPen& pen = part.pen;
    const std::string place =
        part.model.moves()
            ? fmt::format("torque here, at {:.0f} % of the way", 100.0 * part.model.progress)
            : "torque, held still";
    pen.line(kCaption, place);
    pen.skip(12.0F);
    const float pair_px = part.style.px(static_cast<float>(scene::kPair_px));
    for (std::size_t i = 0; i < part.model.axes.size(); ++i) {
        ImGui::PushID(static_cast<int>(i));
        if (row_button(part.style, "joint",
                       {pen.left() - 12.0F, pen.y() + static_cast<float>(i) * pair_px},
                       pen.width() + 24.0F, pair_px - part.style.px(2.0F), i == part.model.chosen))
            part.wishes.intents.emplace_back(ChooseJoint{i});
        ImGui::PopID();
    }
    std::vector<scene::Shape> shapes;
    scene::add_paired_bars(bars_of(part), shapes);
    paint_in_list(shapes, {pen.left(), pen.y()}, part.style, pen.list());
    pen.skip_px(static_cast<float>(part.model.axes.size()) * pair_px);
    pen.skip(14.0F);
    if (part.model.moves())
        pen.paragraph(kCaption, "Upright ticks: the hardest moment of a repetition at its tempo.");
}

/// Words side by side, of which one is in force.
template <typename Chosen>
void draw_choice(const Part& part, const std::vector<std::pair<const char*, Chosen>>& words,
                 const Chosen& present, const std::function<void(const Chosen&)>& choose) {
    float x = part.pen.left();
    for (const auto& [word, choice] : words) {
        const bool in_force = choice == present;
        if (word_button(part.style, word, {x, part.pen.y()}, word, in_force))
            choose(choice);
        x += text_width(part.style, {TextSize::body, in_force}, word) + part.style.px(20.0F);
    }
}

void draw_aims(const Part& part) {
    const std::vector<std::pair<const char*, AimKind>> aims{{"Equal", AimKind::equal},
                                                            {"Easier", AimKind::easier},
                                                            {"Harder", AimKind::harder},
                                                            {"Typed", AimKind::typed}};
    draw_choice<AimKind>(part, aims, part.model.aim.kind, [&](const AimKind& kind) {
        if (kind == AimKind::typed)
            part.column.wants_keyboard = true;
        else
            part.wishes.intents.emplace_back(AimAt{{kind, 0.0}});
    });
    part.pen.skip(18.0F);
}

/// The field for a wanted torque.
void draw_wanted_field(const Part& part) {
    PairColumn& column = part.column;
    if (column.wants_keyboard) {
        column.types = true;
        column.wanted = part.torque(goal_of(part.model).wanted.torque_Nm);
        column.wanted_fault.clear();
    }
    if (!column.types)
        return;
    ImGui::SetCursorScreenPos({part.pen.left(), part.pen.y()});
    ImGui::SetNextItemWidth(part.pen.width());
    if (gives_keyboard(column.wants_keyboard))
        column.wants_keyboard = false;
    if (ImGui::InputText("##wanted", &column.wanted,
                         ImGuiInputTextFlags_EnterReturnsTrue |
                             ImGuiInputTextFlags_AutoSelectAll)) {
        const auto read = setup::parse_quantity(column.wanted, Dimension::torque);
        if (!read) {
            column.wanted_fault = setup::to_text(read.error());
            column.wants_keyboard = false;
        } else if (*read < 0.0) {
            column.wanted_fault = "A torque is asked for by its size: 0 N·m or more.";
        } else {
            part.wishes.intents.emplace_back(AimAt{{AimKind::typed, *read}});
            column.types = false;
        }
    } else if (ImGui::IsItemDeactivated()) {
        column.types = false;
    }
    part.pen.skip(52.0F);
    if (!column.wanted_fault.empty() && column.types)
        part.pen.paragraph(kFault, column.wanted_fault);
}

/// What joints may not exceed; press one to let it go.
void draw_limits(const Part& part) {
    part.pen.skip(28.0F);
    part.pen.paragraph(kStrong, "Limits that B keeps");
    part.pen.skip(4.0F);
    for (const mechanics::Cap& limit : part.model.state.limits) {
        const std::string words =
            fmt::format("{} at most {}  ×", words::capitalised(words::joint_word(limit.hinge)),
                        part.torque(limit.most_Nm));
        if (word_button(part.style, words.c_str(), {part.pen.left(), part.pen.y()}, words, false))
            part.wishes.intents.emplace_back(ToggleLimit{limit.hinge});
        part.pen.skip(26.0F);
    }
    if (limit_at(part.model, part.model.joint()))
        return;
    const std::string words =
        fmt::format("No more than now at the {} (L)", words::joint_word(part.model.joint()));
    if (word_button(part.style, "limit", {part.pen.left(), part.pen.y()}, words, false))
        part.wishes.intents.emplace_back(ToggleLimit{part.model.joint()});
    part.pen.skip(26.0F);
}

/// The dial of the selected change under its row.
void draw_dial(const Part& part, const mechanics::Change& change, std::optional<double> aim) {
    const auto range = mechanics::range_of(change, part.model.state.b.exercise);
    if (!range)
        return;
    DialReading reading{*range, nullptr, aim, part.units};
    if (part.model.search.spans())
        reading.spans = &*part.model.search.spans();
    part.pen.skip(4.0F);
    if (const auto dragged =
            draw_change_dial(part.style, reading, change, part.pen, part.column.dial))
        part.wishes.dragged = dragged;
    part.pen.skip(4.0F);
}

/// One change: what it is, and what it would become. @return true when it was pressed
bool draw_row(const Part& part, const mechanics::Change& change, const std::string& says,
              const std::string& becomes) {
    ColumnPen& pen = part.pen;
    const bool selected = change == part.model.selected;
    const bool stale = !part.model.search.is_complete();
    const float height_px = part.style.px(48.0F);
    ImGui::PushID(says.c_str());
    const bool pressed = row_button(part.style, "change", {pen.left() - 12.0F, pen.y()},
                                    pen.width() + 24.0F, height_px, selected);
    if (selected && std::exchange(part.column.scroll_to_selected, false))
        ImGui::SetScrollHereY(0.3F);
    ImGui::PopID();
    const TextStyle title{TextSize::body, selected, stale ? Role::quiet_ink : Role::ink};
    draw_text(pen.list(), part.style, title, {pen.left(), pen.y() + part.style.px(20.0F)},
              shortened(part.style, title, words::capitalised(says), pen.width()));
    draw_text(pen.list(), part.style, kCaption, {pen.left(), pen.y() + part.style.px(39.0F)},
              shortened(part.style, kCaption, becomes, pen.width()));
    pen.skip(50.0F);
    return pressed && !stale;
}

void draw_ways(const Part& part) {
    const mechanics::Exercise& b = part.model.state.b.exercise;
    for (const mechanics::Way& way : part.model.search.found().ways) {
        const words::GymStep told =
            words::gym_step(way.change, way.range, way.reached.value, b, part.units);
        if (draw_row(part, way.change, told.step, told.values)) {
            part.wishes.intents.emplace_back(SelectChange{way.change});
            part.wishes.way = way;
        }
        if (way.change == part.model.selected)
            draw_dial(part, way.change, way.reached.value);
    }
}

std::string refusal_of(const Part& part, const mechanics::RefusedWay& refused) {
    const auto range = mechanics::range_of(refused.change, part.model.state.b.exercise);
    if (!range || !refused.limit)
        return {};
    return words::refusal_text(refused.at, *refused.limit, range->unit, part.units);
}

void draw_refused(const Part& part) {
    const auto& refused = part.model.search.found().refused;
    if (refused.empty())
        return;
    part.pen.skip(20.0F);
    const std::string words =
        fmt::format("{} that cannot do it alone", refused.size() == 1
                                                      ? std::string("One change")
                                                      : fmt::format("{} changes", refused.size()));
    if (word_button(part.style, "refused", {part.pen.left(), part.pen.y()}, words,
                    part.column.shows_refused))
        part.column.shows_refused = !part.column.shows_refused;
    part.pen.skip(20.0F);
    if (!part.column.shows_refused)
        return;
    for (const mechanics::RefusedWay& one : refused) {
        const std::string reason = refusal_of(part, one);
        const bool selected = one.change == part.model.selected;
        if (draw_row(part, one.change, words::gym_name(one.change, part.model.state.b.exercise),
                     selected ? std::string() : reason))
            part.wishes.intents.emplace_back(SelectChange{one.change});
        if (!selected)
            continue;
        part.pen.skip(-12.0F);
        part.pen.paragraph(kFault, reason);
        draw_dial(part, one.change, std::nullopt);
    }
}

/// The dial when B stands where the aim is, so that there is no list.
void draw_lone_dial(const Part& part) {
    const auto change = selected_change(part.model);
    if (!change || part.model.search.changes() > 0)
        return;
    const auto range = mechanics::range_of(*change, part.model.state.b.exercise);
    if (!range)
        return;
    draw_row(part, *change, words::gym_name(*change, part.model.state.b.exercise),
             "now " + words::change_value_text(range->present, range->unit, part.units));
    draw_dial(part, *change, std::nullopt);
}

void draw_changes(const Part& part) {
    ColumnPen& pen = part.pen;
    const WaySearch& search = part.model.search;
    pen.paragraph(kStrong, "Ways to get there");
    if (search.changes() == 0) {
        pen.paragraph(kCaption, fmt::format("B asks as much as A at the {}.",
                                            words::joint_word(part.model.joint())));
    } else {
        const bool done = search.is_complete();
        const std::string state =
            done
                ? search.found().ways.empty() ? "No single change gives it."
                                              : "Most natural first; press one and B takes it."
                : fmt::format("Looking: {} of {} changes tried.", search.tried(), search.changes());
        pen.paragraph(kCaption, state);
    }
    pen.skip(-8.0F);
    draw_lone_dial(part);
    draw_ways(part);
    draw_refused(part);
}

void draw_foot(const Part& part) {
    ColumnPen& pen = part.pen;
    pen.skip(16.0F);
    if (word_button(part.style, "copy", {pen.left(), pen.y()}, "Let B start again as a copy of A",
                    false))
        part.wishes.intents.emplace_back(CopyToB{});
    pen.skip(28.0F);
    part.wishes.to_levers =
        word_button(part.style, "levers", {pen.left(), pen.y()}, "Compare two levers", false);
    pen.skip(30.0F);
    pen.paragraph(kCaption, words::kCaution);
}

} // namespace

std::string aim_words(const SideBySideModel& model) {
    const std::string joint = words::joint_word(model.joint());
    switch (model.aim.kind) {
    case AimKind::equal:
        return "Make B equal A at the " + joint;
    case AimKind::easier:
        return fmt::format("Make B {:.0f} % easier at the {}", 100.0 * kAimStep, joint);
    case AimKind::harder:
        return fmt::format("Make B {:.0f} % harder at the {}", 100.0 * kAimStep, joint);
    case AimKind::typed:
        return "Give B this at the " + joint;
    }
    return {};
}

std::vector<mechanics::Change> listed_changes(const SideBySideModel& model,
                                              const PairColumn& column) {
    std::vector<mechanics::Change> changes;
    for (const mechanics::Way& way : model.search.found().ways)
        changes.push_back(way.change);
    if (column.shows_refused)
        for (const mechanics::RefusedWay& refused : model.search.found().refused)
            changes.push_back(refused.change);
    return changes;
}

PairColumnWishes draw_pair_column(const Style& style, const Layout& layout,
                                  const SideBySideModel& model, const ComparedBody& b,
                                  setup::UnitSystem units, PairColumn& column) {
    PairColumnWishes wishes;
    begin_area("column", layout.column_at_px, layout.column_px, true);
    ColumnPen pen(style, layout);
    const Part part{style, model, b, units, pen, column, wishes};
    pen.skip(layout.narrow ? 24.0F : 40.0F);
    draw_bars(part);
    if (!model.message.empty())
        pen.paragraph(kFault, model.message);
    pen.skip(4.0F);
    pen.divider();
    pen.skip(28.0F);
    pen.paragraph(kStrong, "Change B");
    pen.skip(8.0F);
    draw_aims(part);
    draw_wanted_field(part);
    if (main_button(style, "aim", {pen.left(), pen.y()}, pen.width(), aim_words(model)))
        wishes.reach_aim = true;
    pen.skip_px(main_button_height(style));
    pen.skip(24.0F);
    pen.paragraph(kCaption, "At its hardest B is then to ask " +
                                part.torque(goal_of(model).wanted.torque_Nm) + ".");
    pen.skip(14.0F);
    draw_changes(part);
    draw_limits(part);
    draw_foot(part);
    pen.finish(style.px(20.0F));
    end_area();
    return wishes;
}

} // namespace steelyard::app

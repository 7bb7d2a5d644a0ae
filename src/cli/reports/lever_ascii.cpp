#include "cli/reports/lever_ascii.h"

#include "cli/reports/ascii_sheet.h"
#include "mechanics/lever/lever_geometry.h"

#include <fmt/core.h>

#include <algorithm>

namespace steelyard::cli {

namespace {

using mechanics::Vec2;

constexpr int kMostRows = 16;

struct Pull {
    Vec2 point_m;
    double direction_rad;
};

std::optional<Pull> pull_of(const mechanics::Lever& lever, const mechanics::Load& load) {
    if (const auto* weight = std::get_if<mechanics::Weight>(&load.action))
        return Pull{mechanics::point_at(lever.path_m, weight->at_m), mechanics::kDown_rad};
    if (const auto* force = std::get_if<mechanics::PointForce>(&load.action))
        return Pull{mechanics::point_at(lever.path_m, force->at_m), force->direction_rad};
    return std::nullopt;
}

void add_stand(AsciiSheet& sheet, const Vec2& at_m) {
    sheet.set(sheet.column(at_m), sheet.row(at_m), 'o');
    sheet.set(sheet.column(at_m), sheet.row(at_m) + 1, '^');
}

} // namespace

std::string in_legend(const problems::DrawnQuantity& length) {
    std::string name = length.quantity;
    std::replace(name.begin(), name.end(), '_', ' ');
    return fmt::format("{}: {}", name, length.text);
}

std::string draw_in_ascii(const problems::LeverPicture& picture,
                          const std::vector<problems::Spot>& spots, int columns,
                          const std::vector<MarkedLine>& marks) {
    const mechanics::Lever& lever = picture.lever;
    std::vector<Vec2> points = lever.path_m;
    for (const problems::Spot& spot : spots)
        points.push_back(spot.at_m);
    AsciiSheet sheet(points, kMostRows, columns);
    for (std::size_t i = 1; i < lever.path_m.size(); ++i)
        sheet.line(lever.path_m[i - 1], lever.path_m[i]);

    std::string legend;
    if (picture.from_above)
        legend += "  (seen from above)\n";
    for (std::size_t i = 0; i < lever.loads.size(); ++i) {
        const char letter = i == 0 ? 'L' : static_cast<char>('1' + static_cast<int>(i));
        if (const std::optional<Pull> pull = pull_of(lever, lever.loads[i])) {
            if (!picture.from_above ||
                std::holds_alternative<mechanics::PointForce>(lever.loads[i].action))
                sheet.arrow(pull->point_m, pull->direction_rad, letter);
            legend += fmt::format("  {} load: {}\n", letter, lever.loads[i].name);
        }
    }
    const bool beam = mechanics::rests_on_two(lever);
    if (picture.show_effort && beam) {
        add_stand(sheet, mechanics::point_at(lever.path_m, lever.effort.at_m));
        legend = fmt::format("  ^ support: {}\n", lever.effort.name) + legend;
    } else if (picture.show_effort) {
        sheet.arrow(mechanics::point_at(lever.path_m, lever.effort.at_m),
                    lever.effort.direction_rad, 'E');
        legend += fmt::format("  E effort: {}\n", lever.effort.name);
    }
    // A place about a known axis is sought along a line of action, so the line is drawn then.
    const bool shows_line = !spots.empty() && picture.show_axis;
    if (shows_line && picture.show_effort)
        sheet.line_of_action(mechanics::point_at(lever.path_m, lever.effort.at_m),
                             lever.effort.direction_rad);
    if (shows_line && !picture.show_effort && !lever.loads.empty())
        if (const std::optional<Pull> pull = pull_of(lever, lever.loads.front()))
            sheet.line_of_action(pull->point_m, pull->direction_rad);
    if (picture.show_axis) {
        add_stand(sheet, mechanics::point_at(lever.path_m, lever.axis_at_m));
        legend = fmt::format("  ^ {}: {}\n", beam ? "support" : "axis", picture.axis_name) + legend;
    }
    for (const problems::Spot& spot : spots)
        sheet.set(sheet.column(spot.at_m), sheet.row(spot.at_m), spot.letter.front());
    for (std::size_t i = 0; i < marks.size(); ++i) {
        const MarkedLine& mark = marks[i];
        sheet.trace(mark.line.from_m, mark.line.to_m, mark.character, static_cast<int>(i) + 1);
        legend += fmt::format("  {} {}: {}\n", mark.character, mark.says, mark.line.text);
    }
    for (const problems::DrawnQuantity& label : picture.labels)
        legend += fmt::format("  {}\n", in_legend(label));
    return sheet.text() + legend;
}

} // namespace steelyard::cli

#include "problems/marking/placing.h"

#include "mechanics/lever/lever_geometry.h"
#include "mechanics/portable.h"
#include "problems/bank/bank.h"
#include "setup/units/units.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace steelyard::problems {

namespace {

using mechanics::Vec2;
namespace portable = mechanics::portable;

const mechanics::Lever& lever_of(const Question& question) {
    return std::get<LeverPicture>(question.picture).lever;
}

const PlaceWanted& place_of(const Question& question) {
    return std::get<PlaceWanted>(question.wanted);
}

Vec2 axis_on_drawing(const Question& question) {
    const mechanics::Lever& lever = lever_of(question);
    return mechanics::point_at(lever.path_m, lever.axis_at_m);
}

/// Angle between two undirected lines [rad].
double angle_between(const Vec2& one, const Vec2& other) {
    return portable::atan2(std::abs(mechanics::cross(one, other)), std::abs(one.dot(other)));
}

/// Angle between two directions [rad].
double turn_between(const Vec2& one, const Vec2& other) {
    return portable::atan2(std::abs(mechanics::cross(one, other)), one.dot(other));
}

double distance_from_line(const Vec2& point, const Placed& line) {
    const Vec2 along = (line.to_m - line.from_m).normalized();
    return std::abs(mechanics::cross(along, point - line.from_m));
}

/// A wrong spot whose mistake a drawing shows; the spots' size when there is none.
template <typename Shows> std::size_t wrong_spot(const Question& question, Shows shows) {
    for (std::size_t i = 0; i < place_of(question).spots.size(); ++i)
        if (i != place_of(question).correct && shows(place_of(question).spots[i].at_m))
            return i;
    return place_of(question).spots.size();
}

Marking mark_line(const Bank& bank, const Question& question, const Placed& line) {
    const Vec2 point = place_of(question).at_m;
    const Vec2 pull = mechanics::unit_vector(lever_of(question).effort.direction_rad);
    const Vec2 drawn = line.to_m - line.from_m;
    if (distance_from_line(point, line) > place_of(question).tolerance_m)
        return mark_missed_place(question,
                                 "A line of action passes through the point where the force acts.");
    if (angle_between(drawn, pull) <= kLineTolerance_rad)
        return mark_spot(bank, question, place_of(question).correct);
    const std::size_t spot = wrong_spot(question, [&](const Vec2& at) {
        return angle_between(drawn, at - point) <= kLineTolerance_rad;
    });
    if (spot < place_of(question).spots.size())
        return mark_spot(bank, question, spot);
    return mark_missed_place(question, "Your line passes through the right point, but not the way "
                                       "the force pulls.");
}

Marking mark_arm(const Bank& bank, const Question& question, const Placed& arm) {
    const double near_m = place_of(question).tolerance_m;
    if ((arm.from_m - axis_on_drawing(question)).norm() > near_m)
        return mark_missed_place(question, "A moment arm begins at the axis.");
    if ((arm.to_m - place_of(question).at_m).norm() <= near_m)
        return mark_spot(bank, question, place_of(question).correct);
    const std::size_t spot =
        wrong_spot(question, [&](const Vec2& at) { return (arm.to_m - at).norm() <= near_m; });
    if (spot < place_of(question).spots.size())
        return mark_spot(bank, question, spot);
    const bool right_way =
        turn_between(arm.to_m - axis_on_drawing(question),
                     place_of(question).at_m - axis_on_drawing(question)) <= kLineTolerance_rad;
    return mark_missed_place(question, right_way
                                           ? "The direction is right, but a moment arm ends on "
                                             "the line of action."
                                           : "A moment arm meets the line of action at a right "
                                             "angle.");
}

} // namespace

Gesture gesture_of(const Question& question) {
    switch (place_of(question).target) {
    case PlaceTarget::effort_line:
        return Gesture::line;
    case PlaceTarget::arm_foot:
        return Gesture::arm;
    case PlaceTarget::axis:
    case PlaceTarget::load_place:
        break;
    }
    return Gesture::point_on_lever;
}

const char* how_to_place(Gesture gesture) {
    switch (gesture) {
    case Gesture::line:
        return "Draw the line: press at one point of it and drag to another.";
    case Gesture::arm:
        return "Draw the moment arm: press at the axis and drag to where it ends.";
    case Gesture::point_on_lever:
        break;
    }
    return "Drag the point along the lever.";
}

Placed first_place(const Question& question) {
    const mechanics::Lever& lever = lever_of(question);
    switch (gesture_of(question)) {
    case Gesture::arm: {
        const Vec2 axis = axis_on_drawing(question);
        return {axis, axis};
    }
    case Gesture::line:
        return {place_of(question).at_m, place_of(question).at_m};
    case Gesture::point_on_lever:
        break;
    }
    const Vec2 middle =
        mechanics::point_at(lever.path_m, 0.5 * mechanics::path_length(lever.path_m));
    return {middle, middle};
}

Placed settled(const Question& question, const Placed& dragged) {
    if (!dragged.from_m.allFinite() || !dragged.to_m.allFinite())
        return first_place(question);
    Placed result = dragged;
    switch (gesture_of(question)) {
    case Gesture::arm:
        if ((result.from_m - axis_on_drawing(question)).norm() <=
            2.0 * place_of(question).tolerance_m)
            result.from_m = axis_on_drawing(question);
        return result;
    case Gesture::line:
        return result;
    case Gesture::point_on_lever:
        break;
    }
    const std::vector<Vec2>& path_m = lever_of(question).path_m;
    result.to_m = mechanics::point_at(path_m, mechanics::nearest_at(path_m, dragged.to_m));
    result.from_m = result.to_m;
    return result;
}

Placed right_place(const Question& question) {
    const mechanics::Lever& lever = lever_of(question);
    switch (gesture_of(question)) {
    case Gesture::arm:
        return {axis_on_drawing(question), place_of(question).at_m};
    case Gesture::line: {
        const double reach_m = 0.5 * mechanics::path_length(lever.path_m);
        const Vec2 pull = mechanics::unit_vector(lever.effort.direction_rad);
        return {place_of(question).at_m, place_of(question).at_m + reach_m * pull};
    }
    case Gesture::point_on_lever:
        break;
    }
    return {place_of(question).at_m, place_of(question).at_m};
}

std::string placed_text(const Question& question, const Placed& placed) {
    // A tenth of a millimetre: far below what a hand can place.
    const auto point = [](const Vec2& at) { return fmt::format("{:.4f}, {:.4f}", at.x(), at.y()); };
    if (gesture_of(question) == Gesture::point_on_lever)
        return point(placed.to_m);
    return point(placed.from_m) + " to " + point(placed.to_m);
}

std::optional<Placed> read_placed(const std::string& answer) {
    const auto point = [](const std::string& text) -> std::optional<Vec2> {
        const std::size_t comma = text.find(',');
        if (comma == std::string::npos)
            return std::nullopt;
        const auto x =
            setup::parse_quantity(text.substr(0, comma), setup::Dimension::length, {"m"});
        const auto y =
            setup::parse_quantity(text.substr(comma + 1), setup::Dimension::length, {"m"});
        if (!x || !y)
            return std::nullopt;
        return Vec2{*x, *y};
    };
    const std::size_t to = answer.find(" to ");
    const auto first = point(answer.substr(0, to));
    const auto last = to == std::string::npos ? first : point(answer.substr(to + 4));
    if (!first || !last)
        return std::nullopt;
    return Placed{*first, *last};
}

Marking mark_placed(const Bank& bank, const Question& question, const Placed& placed) {
    const Gesture gesture = gesture_of(question);
    const bool has_length = (placed.to_m - placed.from_m).norm() > place_of(question).tolerance_m;
    if (!placed.from_m.allFinite() || !placed.to_m.allFinite() ||
        place_of(question).spots.empty() || (gesture != Gesture::point_on_lever && !has_length)) {
        Marking marking;
        marking.verdict = Verdict::unreadable;
        marking.feedback = how_to_place(gesture);
        return marking;
    }
    switch (gesture) {
    case Gesture::line:
        return mark_line(bank, question, placed);
    case Gesture::arm:
        return mark_arm(bank, question, placed);
    case Gesture::point_on_lever:
        break;
    }
    return mark_place(bank, question, placed.to_m);
}

} // namespace steelyard::problems

#include "scene/marks/name_plate.h"

#include "scene/marks/text_width.h"

#include <array>
#include <cmath>

namespace steelyard::scene {

namespace {

constexpr double kBeside_px = 20.0; ///< from an arrow's shaft to words

double line_px(TextSize name_size) {
    return name_size == TextSize::caption ? 18.0 : 21.0;
}

void add_sides(const Point& at, double side_px, double down_px, std::vector<WordPlace>& places) {
    places.push_back({at + Point(side_px, down_px), Align::left});
    places.push_back({at + Point(-side_px, down_px), Align::right});
}

} // namespace

std::vector<WordPlace> places_beside(const Point& from, const Point& to, double text_scale) {
    const Point span = to - from;
    const Point along = span.norm() > 1.0 ? Point(span.normalized()) : Point(0.0, 1.0);
    std::vector<WordPlace> places;
    for (const double share : {0.86, 1.0, 0.7, 0.5, 0.3, 0.1})
        add_sides(from + share * span, kBeside_px, 4.0 * text_scale, places);
    places.push_back({to + along * text_scale * (along.y() < 0.0 ? 34.0 : 26.0), Align::centre});
    for (const double share : {1.0, 0.5})
        for (const double down : {28.0, -40.0})
            places.push_back({from + share * span + Point(0.0, down * text_scale), Align::centre});
    for (const double down : {52.0, -62.0, 88.0, -98.0, 124.0})
        add_sides(from, kBeside_px, down * text_scale, places);
    return places;
}

std::vector<WordPlace> places_around(const Point& centre, const std::vector<double>& distances_px) {
    constexpr std::array<double, 5> kDown{0.1, -0.6, 0.7, -1.1, 1.2};
    std::vector<WordPlace> places;
    places.reserve(2 * kDown.size() * distances_px.size());
    for (const double distance_px : distances_px)
        for (const double down : kDown)
            add_sides(centre, distance_px * (std::abs(down) > 1.0 ? 0.5 : 1.0), down * distance_px,
                      places);
    return places;
}

std::vector<Label> labels_at(const std::vector<WordPlace>& places, const std::string& words,
                             TextSize size, Role role, bool strong) {
    std::vector<Label> labels;
    labels.reserve(places.size());
    for (const WordPlace& place : places)
        labels.push_back(make_label(place.at, words, size, role, place.align, strong));
    return labels;
}

namespace {

/// The room of both lines as labels for a board: digits as wide as the wider line.
std::vector<Label> claims_of(const NamePlate& plate, const std::vector<WordPlace>& places,
                             double text_scale) {
    const double number_px = text_width_px(plate.number, TextSize::reading, true, text_scale);
    const double name_px = text_width_px(plate.name, plate.name_size, false, text_scale);
    const double digit_px = text_width_px("0", TextSize::reading, true, text_scale);
    const auto digits = static_cast<std::size_t>(std::ceil(name_px / digit_px));
    return labels_at(places, number_px >= name_px ? plate.number : std::string(digits, '0'),
                     TextSize::reading, plate.role, true);
}

Rect add_lines(const NamePlate& plate, Label number, double text_scale,
               std::vector<Shape>& shapes) {
    Label name = number;
    number.text = plate.number;
    name.text = plate.name;
    name.size = plate.name_size;
    name.role = plate.name_role;
    name.strong = false;
    name.at.y() += line_px(plate.name_size) * text_scale;
    Rect room = room_of(number, text_scale);
    const Rect below = room_of(name, text_scale);
    room = {room.low.cwiseMin(below.low), room.high.cwiseMax(below.high)};
    shapes.emplace_back(std::move(number));
    shapes.emplace_back(std::move(name));
    return room;
}

} // namespace

Rect add_name_plate(const NamePlate& plate, const std::vector<WordPlace>& places, double text_scale,
                    LabelBoard& board, std::vector<Shape>& shapes) {
    return add_lines(
        plate,
        board.place(claims_of(plate, places, text_scale), line_px(plate.name_size) * text_scale),
        text_scale, shapes);
}

std::optional<Rect> add_free_name_plate(const NamePlate& plate,
                                        const std::vector<WordPlace>& places, const Point& anchor,
                                        double text_scale, LabelBoard& board,
                                        std::vector<Shape>& shapes) {
    const double down_px = line_px(plate.name_size) * text_scale;
    const auto placed = board.place_free(claims_of(plate, places, text_scale), anchor, down_px);
    if (!placed)
        return std::nullopt;
    Rect room = room_of(*placed, text_scale); // as the board has checked a leader to it
    room.high.y() += down_px;
    add_lines(plate, *placed, text_scale, shapes);
    return room;
}

} // namespace steelyard::scene

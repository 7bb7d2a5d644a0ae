#include "app/shelf/shelf_cards.h"

#include "mechanics/lever/lever_solve.h"
#include "mechanics/resistance/resistance_kinds.h"
#include "scene/body/body_drawing.h"
#include "scene/body/resistance_marks.h"
#include "scene/figure/figure.h"
#include "scene/lever/lever_drawing.h"
#include "words/lever/lever_words.h"

#include <fmt/format.h>

namespace steelyard::app {

namespace {

using scene::Point;

/// Pictures on cards are drawn at full size and reduced, so that marks keep their proportions. At
/// this size words would be larger than the thing itself.
constexpr double kReduction = 0.5;

scene::Drawing lever_picture(const setup::LeverSetup& setup, const mechanics::LeverResult& solved,
                             const Point& size_px) {
    const mechanics::Lever& lever = setup.lever;
    const scene::StageView view =
        scene::fit_lever(lever, solved, size_px / kReduction, {90.0, 60.0, 70.0});
    scene::LeverDrawing how;
    how.limb = setup.limb;
    how.marks.heading = how.marks.arms = how.marks.reaction = how.marks.turning = false;
    how.marks.strip = how.marks.ruler = how.marks.arrow_scale = how.marks.lines = false;
    return scene::without_labels(
        scene::scaled(scene::draw_lever(lever, solved, view, how), kReduction));
}

/// The exercise half way along its path: where it can be told apart best.
scene::Drawing body_picture(const setup::BodySetup& setup, const Point& size_px) {
    mechanics::BodyCase posed = setup.exercise.body_case;
    if (setup.exercise.path)
        posed.pose = mechanics::pose_at(posed.pose, *setup.exercise.path, 0.5);
    const auto solved = mechanics::solve_body(posed);
    scene::Drawing picture;
    picture.size_px = size_px / kReduction;
    if (!solved)
        return picture;
    const scene::Camera camera = scene::camera_of(setup.view);
    const scene::BodyStage stage =
        scene::fit_body(posed, {*solved}, camera, picture.size_px, {30.0, 30.0, 20.0, 20.0});
    scene::add_figure(posed, solved->placement, stage, picture.shapes);
    scene::add_resistance_marks(posed, *solved, stage, {Point::Zero(), picture.size_px},
                                picture.shapes);
    return scene::without_labels(scene::scaled(picture, kReduction));
}

/// The place in the scenario, or where else it comes from.
std::string second_line(Origin origin, const std::string& place) {
    switch (origin) {
    case Origin::left_behind:
        return "As you left it";
    case Origin::own:
        return place.empty() ? "Yours" : "Yours · " + place;
    case Origin::shipped:
        break;
    }
    return place;
}

template <typename Kind> ShelfCard card_of(const Shelved<Kind>& one) {
    ShelfCard card;
    card.name = one.setup.head.name;
    card.second_line = second_line(one.origin, one.setup.head.place);
    card.removable = one.origin == Origin::own;
    return card;
}

/// The plane in which a view shows movement at its true shape.
std::string_view plane_word(setup::BodyView view) {
    switch (view) {
    case setup::BodyView::side:
        return "sagittal plane";
    case setup::BodyView::front:
        return "frontal plane";
    case setup::BodyView::above:
        return "transverse plane";
    case setup::BodyView::oblique:
        break;
    }
    return "";
}

/// What an exercise is also looked for by: what one needs for it, its plane, its muscles.
std::string also_found_by(const setup::BodySetup& setup) {
    std::string words(plane_word(setup.view));
    for (const mechanics::Resistance& load : setup.exercise.body_case.resistances)
        words += fmt::format(" {} {}", load.name, mechanics::usual_name(load));
    if (setup.exercise.body_case.resistances.empty())
        words += " body weight";
    for (const std::string& muscle : setup.muscles)
        words += " " + muscle;
    return words;
}

} // namespace

std::vector<ShelfCard> cards_of(const LeverShelf& shelf, const Point& picture_px) {
    std::vector<ShelfCard> cards;
    for (const Shelved<setup::LeverSetup>& one : shelf.setups) {
        ShelfCard card = card_of(one);
        if (const auto solved = mechanics::solve_lever(one.setup.lever)) {
            card.first_line = words::class_name(*solved);
            card.picture = lever_picture(one.setup, *solved, picture_px);
        }
        cards.push_back(std::move(card));
    }
    return cards;
}

std::vector<ShelfCard> cards_of(const ExerciseShelf& shelf, const Point& picture_px) {
    std::vector<ShelfCard> cards;
    for (const Shelved<setup::BodySetup>& one : shelf.setups) {
        ShelfCard card = card_of(one);
        for (const mechanics::Hinge hinge : one.setup.axes)
            card.first_line +=
                (card.first_line.empty() ? "about the " : ", ") + scene::joint_word(hinge);
        card.also = also_found_by(one.setup);
        card.picture = body_picture(one.setup, picture_px);
        cards.push_back(std::move(card));
    }
    return cards;
}

} // namespace steelyard::app

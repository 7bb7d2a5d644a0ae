#include "publish/question/question_figure.h"

#include "publish/question/question_body.h"
#include "publish/question/question_view.h"
#include "scene/lever/open_lever.h"

#include <fmt/format.h>

namespace steelyard::publish {
namespace {

using problems::LeverPicture;
using problems::Question;

/// The drawing in sentences.
std::string description_of(const LeverPicture& picture) {
    const bool beam = mechanics::rests_on_two(picture.lever);
    std::string text = beam ? fmt::format("A beam on two supports, {} and {}, drawn to scale.",
                                          picture.axis_name, picture.lever.effort.name)
                            : std::string("A lever, drawn to scale.");
    if (picture.show_axis && !beam)
        text += fmt::format(" The axis is {}.", picture.axis_name);
    for (const mechanics::Load& load : picture.lever.loads)
        text += fmt::format(" A load: {}.", load.name);
    if (picture.show_effort && !beam)
        text += fmt::format(" The effort: {}.", picture.lever.effort.name);
    for (const problems::DrawnQuantity& line : picture.labels)
        text += fmt::format(" A length of {} is marked.", line.text);
    return text;
}

scene::OpenLever open_lever(const Question& question, const LeverPicture& picture) {
    scene::OpenLever open;
    open.title = "Drawing of the question";
    open.description = description_of(picture);
    open.axis_name = picture.axis_name;
    open.from_above = picture.from_above;
    open.show_axis = picture.show_axis;
    open.show_effort = picture.show_effort;
    const problems::PlaceWanted* place = problems::wanted_place(question);
    open.show_effort_place =
        place != nullptr && place->target == problems::PlaceTarget::effort_line;
    for (const problems::Given& given : question.given)
        if (given.name == "effort_angle")
            open.effort_angle = scene::StatedAngle{given.value_si, given.text};
    for (const problems::DrawnQuantity& line : picture.labels)
        open.lengths.push_back({line.from_m, line.to_m, line.text});
    open.first_shelf_px = first_shelf_px(picture);
    for (const problems::Spot& spot : problems::spots_of(question))
        open.spots.push_back({spot.letter, spot.at_m});
    return open;
}

} // namespace

bool has_figure(const Question& question) {
    return !std::holds_alternative<std::monostate>(question.picture);
}

scene::Drawing question_figure(const Question& question, const scene::Point& size_px) {
    if (const auto* picture = std::get_if<LeverPicture>(&question.picture)) {
        return scene::draw_open_lever(picture->lever, *question_figure_view(question, size_px),
                                      open_lever(question, *picture));
    }
    if (const auto* body = std::get_if<problems::BodyPicture>(&question.picture))
        return open_body_figure(*body, size_px);
    scene::Drawing empty;
    empty.size_px = size_px;
    return empty;
}

} // namespace steelyard::publish

#include "publish/question/question_figure.h"

#include "publish/question/question_body.h"
#include "publish/question/question_view.h"
#include "scene/lever/open_lever.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace steelyard::publish {
namespace {

using problems::LeverPicture;
using problems::Question;

/// The angle of the effort that the question states, or null.
const problems::Given* given_angle(const Question& question) {
    const auto found =
        std::find_if(question.given.begin(), question.given.end(),
                     [](const problems::Given& given) { return given.name == "effort_angle"; });
    return found == question.given.end() ? nullptr : &*found;
}

/// " Places are lettered A to D."
std::string places_text(const Question& question) {
    const std::vector<problems::Spot>& spots = problems::spots_of(question);
    return spots.empty() ? ""
                         : fmt::format(" Places are lettered {} to {}.", spots.front().letter,
                                       spots.back().letter);
}

/// "A lever", "A forearm".
std::string form_of(const LeverPicture& picture) {
    if (!picture.limb)
        return "A lever";
    std::string name(setup::limb_shape_names().at(static_cast<std::size_t>(picture.limb->shape)));
    std::replace(name.begin(), name.end(), '_', ' ');
    return (name == "arm" ? "An " : "A ") + name;
}

/// The drawing in sentences.
std::string description_of(const Question& question, const LeverPicture& picture) {
    const bool beam = mechanics::rests_on_two(picture.lever);
    std::string text = beam ? fmt::format("A beam on two supports, {} and {}, drawn to scale.",
                                          picture.axis_name, picture.lever.effort.name)
                            : fmt::format("{}, drawn to scale.", form_of(picture));
    if (picture.show_axis && !beam)
        text += fmt::format(" The axis is {}.", picture.axis_name);
    for (const mechanics::Load& load : picture.lever.loads)
        text += fmt::format(" A load: {}.", load.name);
    if (picture.show_effort && !beam)
        text += fmt::format(" The effort: {}.", picture.lever.effort.name);
    for (const problems::DrawnQuantity& line : picture.labels)
        text += fmt::format(" A length of {} is marked.", line.text);
    if (const problems::Given* angle = given_angle(question); angle && picture.show_effort)
        text += fmt::format(" Its angle of {} is marked.", angle->text);
    return text + places_text(question);
}

scene::OpenLever open_lever(const Question& question, const LeverPicture& picture) {
    scene::OpenLever open;
    open.title = "Drawing of the question";
    open.description = description_of(question, picture);
    open.axis_name = picture.axis_name;
    open.limb = picture.limb;
    open.from_above = picture.from_above;
    open.show_axis = picture.show_axis;
    open.show_effort = picture.show_effort;
    const problems::PlaceWanted* place = problems::wanted_place(question);
    open.show_effort_place =
        place != nullptr && place->target == problems::PlaceTarget::effort_line;
    if (const problems::Given* angle = given_angle(question))
        open.effort_angle = scene::StatedAngle{angle->value_si, angle->text};
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

bool needs_figure(const Question& question) {
    if (!has_figure(question))
        return false;
    const auto is_said = [&](const std::string& text) {
        return question.prompt.find(text) != std::string::npos;
    };
    const auto& lines = std::visit(
        problems::Cases{[](const auto& picture) { return picture.labels; },
                        [](std::monostate) { return std::vector<problems::DrawnQuantity>(); }},
        question.picture);
    return is_said("drawing") || problems::wanted_place(question) != nullptr ||
           std::any_of(lines.begin(), lines.end(),
                       [&](const auto& line) { return !is_said(line.text); }) ||
           std::any_of(question.given.begin(), question.given.end(),
                       [&](const auto& given) { return !is_said(given.text); });
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

#include "publish/question_drawing.h"

#include "mechanics/lever/lever_solve.h"
#include "scene/lever_drawing.h"

#include <algorithm>

namespace steelyard::publish {

namespace {

using problems::DrawnQuantity;
using problems::LeverPicture;
using problems::Question;
using scene::Point;
using scene::Role;

const LeverPicture* lever_of(const Question& question) {
    return std::get_if<LeverPicture>(&question.picture);
}

scene::StageMargins margins_of(const QuestionDrawing& how) {
    const double least_px = std::min(how.size_px.x(), how.size_px.y());
    return {std::min(130.0 * how.text_scale, 0.2 * how.size_px.x()), how.top_px + 0.16 * least_px,
            std::min((how.answered ? 130.0 : 90.0) * how.text_scale, 0.3 * least_px)};
}

scene::LengthMark mark_of(const DrawnQuantity& quantity, Role role, const char* word) {
    return {quantity.from_m, quantity.to_m,
            quantity.text.empty() ? std::string(word) : word + quantity.text, role};
}

scene::LeverDrawing style_of(const LeverPicture& picture, const QuestionDrawing& how) {
    scene::LeverDrawing style;
    style.text_scale = how.text_scale;
    style.heading_top_px = how.top_px;
    style.axis_name = picture.axis_name;
    scene::LeverMarks& marks = style.marks;
    marks.heading = false;
    marks.ruler = false;
    marks.axis = picture.show_axis || how.answered;
    marks.effort = picture.show_effort || how.answered;
    marks.load_sizes = how.answered;
    marks.effort_size = how.answered;
    marks.arms = how.answered;
    marks.lines = how.answered;
    marks.reaction = how.answered;
    marks.turning = how.answered;
    // Seen from above, weights turn nothing and the strip would weigh nothing.
    marks.strip = how.answered && !picture.from_above;
    marks.arrow_scale = how.answered;
    if (!how.answered) // the arms then say the same, with their right angles
        for (const DrawnQuantity& label : picture.labels)
            style.lengths.push_back(mark_of(label, Role::quiet_ink, ""));
    if (how.wrong)
        style.lengths.push_back(mark_of(*how.wrong, Role::wrong, "taken: "));
    if (how.right)
        style.lengths.push_back(mark_of(*how.right, Role::right, "to take: "));
    return style;
}

/// Spots to choose from, each a ring with its letter.
void add_spots(const Question& question, const scene::StageView& view, scene::Drawing& drawing) {
    for (const problems::Spot& spot : question.spots) {
        scene::Disc ring;
        ring.centre = view.to_sheet(spot.at_m);
        ring.radius_px = 13.0;
        ring.fill = Role::sheet;
        ring.outline = scene::Stroke{Role::ink, 2.0};
        drawing.shapes.emplace_back(ring);
        scene::Label letter;
        letter.at = ring.centre + Point(0.0, 5.0);
        letter.text = spot.letter;
        letter.size = scene::TextSize::caption;
        letter.strong = true;
        letter.align = scene::Align::centre;
        drawing.shapes.emplace_back(std::move(letter));
    }
}

} // namespace

std::optional<scene::StageView> question_view(const Question& question,
                                              const QuestionDrawing& how) {
    const LeverPicture* picture = lever_of(question);
    if (picture == nullptr)
        return std::nullopt;
    const auto solved = mechanics::solve_lever(picture->lever);
    if (!solved)
        return std::nullopt;
    return scene::fit_lever(picture->lever, *solved, how.size_px, margins_of(how));
}

std::optional<scene::Drawing> question_drawing(const Question& question,
                                               const QuestionDrawing& how) {
    const LeverPicture* picture = lever_of(question);
    const std::optional<scene::StageView> view = question_view(question, how);
    if (picture == nullptr || !view)
        return std::nullopt;
    const auto solved = mechanics::solve_lever(picture->lever);
    scene::LeverDrawing style = style_of(*picture, how);
    style.name = question.asked_text;
    style.sentence = question.prompt;
    scene::Drawing drawing = scene::draw_lever(picture->lever, *solved, *view, style);
    add_spots(question, *view, drawing);
    return drawing;
}

} // namespace steelyard::publish

#include "publish/question/question_drawing.h"

#include "mechanics/lever/lever_solve.h"
#include "publish/question/question_body.h"
#include "publish/question/question_figure.h"
#include "publish/question/question_view.h"
#include "scene/lever/lever_drawing.h"
#include "scene/lever/limb_flesh.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace steelyard::publish {

namespace {

using problems::DrawnQuantity;
using problems::LeverPicture;
using scene::Role;

scene::LengthMark mark_of(const DrawnQuantity& quantity, Role role, const std::string& word) {
    return {quantity.from_m, quantity.to_m, word + quantity.text, role};
}

/// Torques are weighed where there is an effort that balances them. Seen from above, weights turn
/// nothing and the strip would weigh nothing.
bool has_strip(const LeverPicture& picture) {
    return picture.has_effort && !picture.from_above;
}

scene::StageView solved_view(const LeverPicture& picture, const mechanics::LeverResult& solved,
                             const QuestionDrawing& how) {
    const double least_px = std::min(how.size_px.x(), how.size_px.y());
    const double below_px = (has_strip(picture) ? 130.0 : 70.0) * how.text_scale;
    const scene::StageMargins margins{std::min(130.0 * how.text_scale, 0.2 * how.size_px.x()),
                                      how.top_px + (picture.limb ? 0.08 : 0.16) * least_px,
                                      std::min(below_px, 0.3 * least_px)};
    // Moment arms are drawn to their ends, which a slanting pull has beside the lever.
    std::vector<mechanics::Vec2> also_m;
    if (picture.limb)
        also_m = scene::limb_reach(*picture.limb, picture.lever.path_m);
    for (const mechanics::ForceReading& load : solved.loads)
        also_m.push_back(load.foot_m);
    if (picture.has_effort)
        also_m.push_back(solved.effort.foot_m);
    return scene::fit_lever(picture.lever, solved, how.size_px, margins, also_m);
}

/// The units that the question states its numbers in.
setup::UnitSystem units_of(const problems::Question& question) {
    constexpr std::array<std::string_view, 5> kUsUnits{"in", "ft", "lb", "lbf", "in·lbf"};
    const bool us = std::any_of(
        question.given.begin(), question.given.end(), [&](const problems::Given& given) {
            return std::find(kUsUnits.begin(), kUsUnits.end(), given.unit) != kUsUnits.end();
        });
    return us ? setup::UnitSystem::us : setup::UnitSystem::si;
}

/// Whether the force at the axis is what was asked for, or a step to it.
bool asks_for_reaction(const problems::Question& question) {
    const auto is_reaction = [](const std::string& name) {
        return name.rfind("axis_force", 0) == 0;
    };
    return is_reaction(question.asked) ||
           std::any_of(question.steps.begin(), question.steps.end(),
                       [&](const problems::Step& step) { return is_reaction(step.find); });
}

/// The lever with everything that acts on it, and the lengths that the feedback points out.
scene::Drawing solved_drawing(const problems::Question& question, const LeverPicture& picture,
                              const QuestionDrawing& how) {
    const auto solved = mechanics::solve_lever(picture.lever);
    if (!solved)
        return {};
    scene::LeverDrawing style;
    style.name = question.asked_text;
    style.sentence = question.prompt;
    style.text_scale = how.text_scale;
    style.units = units_of(question);
    style.heading_top_px = how.top_px;
    style.axis_name = picture.axis_name;
    style.limb = picture.limb;
    style.marks.heading = false;
    style.marks.ruler = false;
    // Only what the question has: an effort that nobody asked for balances nothing.
    style.marks.effort = picture.has_effort;
    style.marks.reaction = asks_for_reaction(question);
    style.marks.strip = has_strip(picture);
    // A lever on which nothing hangs needs no effort: its size would only puzzle.
    style.marks.effort_size = style.marks.arrow_scale =
        picture.has_effort && std::abs(solved->effort_N.value_or(0.0)) > 1e-9;
    if (how.wrong)
        style.lengths.push_back(mark_of(*how.wrong, Role::wrong, "taken: "));
    if (how.right)
        style.lengths.push_back(mark_of(*how.right, Role::right, "to take: "));
    return scene::draw_lever(picture.lever, *solved, solved_view(picture, *solved, how), style);
}

} // namespace

std::optional<scene::StageView> question_view(const problems::Question& question,
                                              const QuestionDrawing& how) {
    const auto* picture = std::get_if<LeverPicture>(&question.picture);
    if (picture != nullptr && how.answered) {
        const auto solved = mechanics::solve_lever(picture->lever);
        if (!solved)
            return std::nullopt;
        return solved_view(*picture, *solved, how);
    }
    auto view = question_figure_view(question, how.size_px / how.text_scale);
    if (view) {
        view->size_px = how.size_px;
        view->origin_px *= how.text_scale;
        view->px_per_m *= how.text_scale;
    }
    return view;
}

scene::Drawing question_drawing(const problems::Question& question, const QuestionDrawing& how) {
    const auto* picture = std::get_if<LeverPicture>(&question.picture);
    if (picture != nullptr && how.answered)
        return solved_drawing(question, *picture, how);
    const auto* body = std::get_if<problems::BodyPicture>(&question.picture);
    if (body != nullptr && how.answered)
        return solved_body_drawing(*body, how.size_px, how.text_scale, how.top_px,
                                   question.asked_text, units_of(question));
    // The same figure as on paper: arrows of one length, so that none gives a size away.
    return scene::scaled(question_figure(question, how.size_px / how.text_scale), how.text_scale);
}

} // namespace steelyard::publish

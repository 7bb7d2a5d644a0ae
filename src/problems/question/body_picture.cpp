#include "problems/question/body_picture.h"

#include "problems/draw/body_quantities.h"
#include "problems/question/question_writer.h"

namespace steelyard::problems {

namespace {

using mechanics::Vec3;

/// Shorter on the drawing than this it cannot be read [m].
constexpr double kShortestSeen_m = 0.01;

/// Ends of a part's length or of the way to its centre of mass.
std::pair<Vec3, Vec3> ends_of_part(SetupQuantity quantity, BodyPart part,
                                   const BodySolution& solved) {
    const mechanics::Segment segment = segment_of(part);
    const mechanics::SegmentFrame& frame = solved.result.placement[segment];
    return {frame.joint_m, quantity == SetupQuantity::centre
                               ? frame.com_m
                               : frame.at(solved.body_case.body[segment].tip_m)};
}

std::optional<std::pair<Vec3, Vec3>> ends_of(const Provided& provided, const BodyPlan& plan,
                                             const BodySolution& solved) {
    if (provided.quantity == SetupQuantity::length || provided.quantity == SetupQuantity::centre)
        return ends_of_part(provided.quantity, provided.part.body, solved);
    const bool has_place = provided.part.is == SetupPart::Is::load ||
                           provided.part.is == SetupPart::Is::own_weight ||
                           provided.part.is == SetupPart::Is::body_part;
    if (!has_place)
        return std::nullopt;
    const AxisPlan& axis = axis_of(plan, provided.about);
    const Vec3 joint = solved.result.placement.axis_point_m(axis.hinges.front());
    const PlacedForce force = force_of(provided.part, axis, plan, solved);
    if (provided.quantity == SetupQuantity::distance)
        return std::pair{joint, force.point_m};
    if (provided.quantity == SetupQuantity::arm)
        return std::pair{joint, arm_about_axis(force, axis, solved).foot_m};
    return std::nullopt;
}

/// As a label: "the elbow" becomes "elbow".
std::string without_article(const std::string& words) {
    constexpr std::string_view kArticle = "the ";
    return words.compare(0, kArticle.size(), kArticle) == 0 ? words.substr(kArticle.size()) : words;
}

} // namespace

BodyPicture body_picture(const Instance& instance) {
    const BodyPlan& plan = *instance.family->body;
    const BodySolution& solved = *instance.setup.body;
    BodyPicture picture;
    picture.body_case = solved.body_case;
    picture.view = plan.view;
    for (std::size_t i = 0; i < plan.resistances.size(); ++i)
        picture.body_case.resistances[i].name = fill(plan.resistances[i].name, instance);
    for (const AxisPlan& axis : plan.axes)
        picture.axes.push_back({axis.hinges.front(), without_article(words_of(plan, axis))});
    for (const BodyPartPlan& part : plan.parts) {
        if (!part.mass)
            continue;
        const PlacedForce weight =
            force_of({SetupPart::Is::body_part, 0, part.part}, plan.axes.front(), plan, solved);
        if (weight.mass_kg > 0.0)
            picture.weights.push_back({words_of(part.part), in_view(plan.view, weight.point_m)});
    }
    if (plan.effort)
        picture.effort_name = fill(plan.effort->name, instance);
    return picture;
}

std::optional<DrawnQuantity> drawn_length(const Term& term, const BodyPlan& plan,
                                          const BodySolution& solved) {
    if (!term.provided || !provides(plan, *term.provided))
        return std::nullopt;
    const auto ends = ends_of(*term.provided, plan, solved);
    if (!ends)
        return std::nullopt;
    DrawnQuantity line{term.name, in_view(plan.view, ends->first), in_view(plan.view, ends->second),
                       ""};
    if ((line.to_m - line.from_m).norm() < kShortestSeen_m)
        return std::nullopt;
    return line;
}

} // namespace steelyard::problems

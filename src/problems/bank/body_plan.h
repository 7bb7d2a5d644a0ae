#pragma once
// The plan of a body setup whose numbers are expressions: a person in a pose, held or standing,
// with what loads it.

#include "mechanics/body/solve_body.h"
#include "mechanics/lever/lever.h"
#include "problems/language/expression.h"
#include "problems/language/template_text.h"
#include "problems/language/vocabulary.h"
#include "setup/body/body_view.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace steelyard::problems {

/// A place or a direction in space; parts that are not written are 0.
struct SpacePlan {
    std::optional<mechanics::Segment> from_joint; ///< of this segment; empty = from the floor
    std::optional<Expression> forward;            ///< [m]
    std::optional<Expression> up;
    std::optional<Expression> right; ///< to the person's right
};

/// A place on the body.
struct BodyPointPlan {
    mechanics::BodyPoint point;
    std::optional<Expression>
        distance; ///< along the segment from its joint [m], instead of `along`
};

/// A measured part of the body in place of the table's, both sides alike.
struct BodyPartPlan {
    BodyPart part = BodyPart::trunk;
    std::optional<Expression> mass; ///< of one side [kg]
    std::optional<Expression> length;
    std::optional<Expression> centre;       ///< of mass, from the joint along the part [m]
    std::optional<Expression> shoulders;    ///< trunk: low back to the line of the shoulders [m]
    std::optional<Expression> half_breadth; ///< trunk: from its middle to a shoulder [m]
    std::optional<Expression> grip;         ///< hand: wrist to the middle of what it holds [m]
};

struct ResistancePlan {
    enum class Is { dumbbell, barbell, cuff, cable, band, push } is = Is::dumbbell;
    TemplateText name;
    Expression size; ///< mass [kg], pull or push [N], stiffness of a band [N/m]
    BodyPointPlan at;
    SpacePlan space;                        ///< pulley, anchor or direction of the push
    std::optional<Expression> slack_length; ///< of a band [m]
};

/// A joint that can be called the axis: one hinge, or the right and the left one together.
struct AxisPlan {
    BodyAxis axis = BodyAxis::elbow;
    std::vector<mechanics::Hinge> hinges;
};

/// A muscle that is known by its moment arm about the first axis.
struct MusclePlan {
    TemplateText name;
    Expression arm; ///< [m]
};

struct BodyPlan {
    mechanics::Body person;              ///< by a published table, before `parts`
    std::optional<Expression> body_mass; ///< total; parts without a stated mass share the rest [kg]
    std::vector<BodyPartPlan> parts;
    std::vector<std::pair<mechanics::Hinge, Expression>> pose; ///< [rad]
    /// Pelvis at hip height, leaned forward by so much [rad]; empty = the right foot on the floor.
    std::optional<Expression> lean;
    std::vector<ResistancePlan> resistances;
    mechanics::Support support = mechanics::Held{};
    std::vector<AxisPlan> axes; ///< the first is the one that load_arm and so on are about
    /// "the vertical axis of the trunk": of the first axis, where its joint's name would mislead;
    /// empty = that name.
    std::string axis_name;
    std::optional<MusclePlan> effort;
    setup::BodyView view = setup::BodyView::side;
};

/// A body setup and its solution.
struct BodySolution {
    mechanics::BodyCase body_case;
    mechanics::BodyResult result;
    double effort_arm_m = 0.0; ///< 0 when no muscle is asked for
};

/// Whether the solution of such a setup has this quantity: it has the load, the joint, the muscle.
bool provides(const BodyPlan& plan, const Provided& provided);

/// The segment of a part; of the right side where there are two.
mechanics::Segment segment_of(BodyPart part);

/// What people call an axis: "the elbow".
std::string words_of(const BodyPlan& plan, const AxisPlan& axis);

/// The axis by its name, the first when it has none; the plan has it.
const AxisPlan& axis_of(const BodyPlan& plan, const std::optional<BodyAxis>& about);

} // namespace steelyard::problems

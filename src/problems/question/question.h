#pragma once
// A question as plain data: what the learner reads, what is drawn, the answer and why, and the
// number that each typical mistake gives. Everything in it comes from one solution of one setup.
//
// Numbers: `_si` is SI (m, kg, N, N·m, rad, s). Everything else stands in the unit that is shown
// beside it.

#include "mechanics/body/solve_body.h"
#include "mechanics/lever/lever.h"
#include "setup/body/body_view.h"
#include "setup/lever/limb_shape.h"

#include <cstddef>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace steelyard::problems {

/// A number that the prompt or the drawing states.
struct Given {
    std::string name;   ///< quantity, from the vocabulary in question_bank/README.md: "load_mass"
    double value = 0.0; ///< exactly the number shown, in `unit`
    std::string unit;   ///< "kg"; empty for a pure number
    double value_si = 0.0; ///< the same in SI
    std::string text;      ///< as shown: "12.5 kg"
};

/// One line of the worked solution. Steps are in order; each can be shown, hidden or answered
/// alone.
struct Step {
    std::string find; ///< quantity that the step finds: "load_torque"
    std::string says; ///< one sentence: what is done and why
    std::string
        formula; ///< in symbols and then in numbers: "τ_load = F_load × d_load = 118 N × 0.4 m"
    std::string result; ///< "47.1 N·m"
    double value = 0.0; ///< in `unit`
    std::string unit;
    double tolerance = 0.0; ///< in `unit`: a typed value this close counts as right
    /// When the step is answered by choosing (which point is the axis?) instead of by a number.
    std::vector<std::string> options;
    std::size_t correct_option = 0;
};

/// A choice of a single, several or ordering question.
struct Choice {
    std::string text;
    std::string reason;     ///< why it is right, or what is wrong with it
    std::string wrong_rule; ///< id of the rule that leads here; empty when none does
};

/// The number that one wrong rule gives for this question.
struct WrongAnswer {
    std::string rule;         ///< id: "arms-swapped"
    double value = 0.0;       ///< in the question's unit
    std::size_t parts_at = 0; ///< index of the first step that the rule gets wrong
    std::string feedback;     ///< said instead of the rule's own; mostly empty
};

/// A line on the drawing that shows a quantity: from one point to another, in the setup's frame; of
/// a body in the plane of its view (x right, y up as it is seen).
struct DrawnQuantity {
    std::string quantity; ///< "effort_arm", "effort_distance", "load_to_effort"
    mechanics::Vec2 from_m = mechanics::Vec2::Zero();
    mechanics::Vec2 to_m = mechanics::Vec2::Zero();
    std::string text; ///< "0.30 m"
};

/// A lever to draw, with the names of its parts in the question's own words.
struct LeverPicture {
    mechanics::Lever lever;
    std::string axis_name = "axis";
    /// Seen from above, the axis upright: weights point into the sheet and turn nothing.
    bool from_above = false;
    std::optional<setup::Limb> limb;   ///< drawn instead of a beam
    bool has_effort = true;            ///< false: the question has none
    bool show_axis = true;             ///< false while the question asks where it is
    bool show_effort = true;           ///< false while the question asks for its line
    std::vector<DrawnQuantity> labels; ///< lengths that the drawing states
};

/// A body to draw, with the names of what loads it in the question's own words.
struct BodyPicture {
    mechanics::BodyCase body_case; ///< resistances are named
    setup::BodyView view = setup::BodyView::side;
    /// A joint that could be called the axis.
    struct Axis {
        mechanics::Hinge hinge = mechanics::Hinge::right_elbow_flexion;
        std::string name; ///< "elbow"
    };
    std::vector<Axis> axes; ///< the one that is asked about first
    /// Weight of a part of the body that counts, at its centre of mass in the plane of the view.
    struct Weight {
        std::string name; ///< "forearm"
        mechanics::Vec2 at_m = mechanics::Vec2::Zero();
    };
    std::vector<Weight> weights;
    std::string effort_name;           ///< of the muscle, where one is asked for
    std::vector<DrawnQuantity> labels; ///< lengths that the drawing states
};

/// Nothing to draw, or what to draw.
using Picture = std::variant<std::monostate, LeverPicture, BodyPicture>;

/// A spot on the drawing that can be chosen, with its letter.
struct Spot {
    std::string letter; ///< "A"
    mechanics::Vec2 at_m = mechanics::Vec2::Zero();
    std::string reason;     ///< why it is right, or what is wrong with it
    std::string wrong_rule; ///< empty when none leads here
};

/// What a place question wants marked.
enum class PlaceTarget {
    axis,        ///< where it turns
    effort_line, ///< a point on the effort's line of action
    arm_foot,    ///< where the moment arm meets the line of action, at a right angle
    load_place,  ///< where along the lever a load has to hang
};

/// A number with a unit.
struct NumberWanted {
    std::string unit;   ///< of `value` and the wrong answers; empty for a pure number
    double value = 0.0; ///< in `unit`
    double value_si = 0.0;
    double tolerance = 0.0; ///< in `unit`
    int figures = 3;        ///< significant figures to show
};
/// One of the choices.
struct ChoiceWanted {
    std::vector<Choice> choices;
    std::size_t correct = 0;
};
/// Every choice that fits, and no other.
struct SeveralWanted {
    std::vector<Choice> choices;
    std::vector<std::size_t> correct; ///< ascending
};
/// All choices, put in order.
struct OrderWanted {
    std::vector<Choice> choices;
    std::vector<std::size_t> order; ///< every index, in the right order
};
/// A place on the drawing.
struct PlaceWanted {
    PlaceTarget target = PlaceTarget::axis;
    std::vector<Spot> spots;                        ///< to choose from where nothing can be dragged
    std::size_t correct = 0;                        ///< among the spots
    mechanics::Vec2 at_m = mechanics::Vec2::Zero(); ///< the right place, setup's frame
    double tolerance_m = 0.0;
};
/// Up, down or the same.
struct ChangeWanted {
    std::vector<Choice> choices;
    std::size_t correct = 0;
};

/// How a question is answered. Whoever asks, shows, prints or marks visits it with Cases below, so
/// that the compiler names every room that a new alternative has to be told about.
using Wanted =
    std::variant<NumberWanted, ChoiceWanted, SeveralWanted, OrderWanted, PlaceWanted, ChangeWanted>;

/// One function for each alternative: std::visit(Cases{[](const NumberWanted&) {...}, ...},
/// wanted).
template <typename... Functions> struct Cases : Functions... { using Functions::operator()...; };
template <typename... Functions> Cases(Functions...) -> Cases<Functions...>;

struct Question {
    std::string code;     ///< makes this question again: "K7M2Q-9XD4T"
    std::string family;   ///< id
    std::string item;     ///< id within a written family; empty for a drawn one
    std::string skill;    ///< id
    std::string strategy; ///< id of the way it is solved; two in a row never share it
    int difficulty = 1;   ///< 1 (easy) to 5 (hard)

    std::string prompt;
    std::vector<Given> given;
    std::string asked;      ///< quantity from the vocabulary, or a short phrase for a choice
    std::string asked_text; ///< the same in words: "the effort"

    Wanted wanted;
    std::string answer_text; ///< the right answer in words: "47.1 N·m", "second class"

    std::vector<Step> steps;
    std::vector<WrongAnswer> wrong_rules;
    std::string reason; ///< why the answer is what it is, in a sentence or two
    Picture picture;
    /// Lines that the feedback can draw: for each wrong rule that has one, what it took and what
    /// it should have taken.
    struct RuleDrawing {
        std::string rule;
        DrawnQuantity wrong;
        DrawnQuantity right;
    };
    std::vector<RuleDrawing> rule_drawings;
};

/// The number that it wants, or null.
const NumberWanted* wanted_number(const Question& question);
/// The place that it wants, or null.
const PlaceWanted* wanted_place(const Question& question);
/// The choices to be chosen from or put in order; empty where there are none.
const std::vector<Choice>& choices_of(const Question& question);
/// The lettered places; empty where there are none.
const std::vector<Spot>& spots_of(const Question& question);
/// Which of the choices or spots are right; of an order all, in the right order; of a number none.
std::vector<std::size_t> right_ones(const Question& question);

} // namespace steelyard::problems

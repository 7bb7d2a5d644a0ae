#pragma once
// A family of questions as read from its file, ready to draw instances from. Expressions stand
// compiled; the numbers they work on are the family's quantities, in SI.

#include "mechanics/muscle/moment_arm_curve.h"
#include "problems/bank/body_plan.h"
#include "problems/bank/lever_plan.h"
#include "problems/language/expression.h"
#include "problems/language/template_text.h"
#include "problems/language/vocabulary.h"
#include "problems/question/question.h"
#include "setup/units/unit_table.h"

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace steelyard::problems {

/// How the questions of a family are answered: one for each alternative of Wanted, in its order.
enum class Kind {
    numeric,
    single_choice,
    several_choices,
    ordering,
    place,
    change,
};

/// Index of a quantity of the family.
using QuantityIndex = std::uint16_t;

/// A quantity of a family: drawn, computed from others, or provided by the solved setup.
struct Quantity {
    std::string name;
    std::string symbol;
    std::string words;
    setup::Dimension dimension = setup::Dimension::number;
    const setup::Unit* unit = nullptr; ///< in which it is shown; null for a pure number
    int decimals = -1; ///< as drawn, so that what is shown is exact; -1 = significant figures
    bool sheds_zeros = false; ///< of its decimals: "12 in" beside "12.5 in"

    std::string unit_symbol() const; ///< empty for a pure number
    double in_SI(double shown) const;
    double in_unit(double value_si) const;
    /// Whether kMaxDecimals decimals in the unit say exactly this value.
    bool shows_exactly(double value_si) const;
};

/// More decimals than this are no clean number.
inline constexpr int kMaxDecimals = 3;

/// Values that a drawn quantity can take: first + i × step for i below count, all whole numbers of
/// the last decimal place, so that what is shown is exactly what is solved with; or a list.
struct Draw {
    QuantityIndex quantity = 0;
    std::int64_t first = 0;
    std::int64_t step = 1;
    std::int64_t count = 1;
    std::vector<std::int64_t> list; ///< when not empty, the values instead
    int decimals = 0;
};

/// A muscle's moment arm by the preferred source on file at a joint angle, rounded so that it can
/// be stated.
struct ArmOnFile {
    std::vector<mechanics::ArmSource> sources;
    double round_to_m = 0.001;
};

/// A quantity computed from others.
struct Let {
    QuantityIndex quantity = 0;
    Expression is;      ///< with an arm on file: the joint angle that it is read at
    bool fixed = false; ///< keeps its value when a choice or a change sets others
    std::optional<ArmOnFile> arm = std::nullopt;

    double value(const double* quantities) const;
};

struct Constraint {
    Expression holds;
    std::string text; ///< as written
};

struct StepPlan {
    QuantityIndex find = 0;
    Expression by;
    TemplateText says;
};

struct WrongPlan {
    std::string rule;
    Expression gives;               ///< [SI]
    std::optional<Expression> when; ///< the rule only makes sense where this holds; empty = always
    std::string parts_at;           ///< quantity whose step it gets wrong; empty = the rule's
    std::optional<TemplateText> feedback; ///< instead of the rule's
    std::string draws_wrong;              ///< length that it takes; empty = the rule's
    std::string draws_right;              ///< length to take instead; empty = the rule's
};

/// New values of drawn quantities, for a setup beside the first.
using Changes = std::vector<Let>;

struct ChoicePlan {
    TemplateText text;
    TemplateText reason;
    std::string rule;
    Changes sets;                   ///< solved with these changes before `when` is asked
    std::optional<Expression> when; ///< right when it holds; not used by an ordering
};

/// "You do this: what happens to the asked quantity?"
struct ChangePlan {
    TemplateText says;
    Changes sets;
    TemplateText because;
    std::string rule_up, rule_down, rule_same; ///< wrong rules that lead to each choice
};

/// A place on the drawing: along the lever, a point of the solution, or from the effort's point so
/// far in a direction.
struct SpotPlan {
    std::optional<Expression> at;
    std::optional<Expression> toward; ///< [rad]; `reach` goes with it
    std::optional<Expression> reach;  ///< [m]
    enum class Is {
        along,
        axis,
        effort_point,
        effort_foot,
        load_point,
        load_foot,
        toward,
    } is = Is::along;
    TemplateText reason;
    std::string rule;
};

struct PlacePlan {
    PlaceTarget target = PlaceTarget::axis;
    bool of_load = false;         ///< arm_foot: of the load's line instead of the effort's
    std::optional<Expression> at; ///< load_place: where along the lever
    std::vector<SpotPlan> spots;
    double tolerance_m = 0.02;
};

/// What makes an instance harder.
struct DifficultyLever {
    Expression when;
    int adds = 1;
    std::string why;
};

struct Ask {
    QuantityIndex find = 0;
    std::string text;
    const setup::Unit* unit = nullptr; ///< of the answer; null for a pure number
    double relative_tolerance = 0.01;
    double absolute_tolerance_si = 0.0;
    int figures = 3;
    bool ascending = false; ///< ordering: smallest first
};

/// Seeds of a written family: so many items, each shuffled in so many ways.
inline constexpr std::uint64_t kItemShuffles = 1ULL << 8U;
inline constexpr std::uint64_t kItemNumbers = 1ULL << 15U;

/// A question that is written out, with its reason: concepts, and tools and joints to classify.
struct Item {
    std::string id;
    std::uint64_t number = 0; ///< in codes, below kItemNumbers
    std::string prompt;
    std::vector<Choice> choices;
    std::vector<std::size_t> correct;
    std::string reason;
    bool keeps_order = false; ///< choices stand in a natural order: do not shuffle
    int difficulty = 1;
};

/// What a family's questions show.
enum class Scene {
    person, ///< somebody with a load, or a limb
    thing,  ///< a lever on the bench
    words,  ///< nothing: it is written out
};

struct Family {
    std::string id;
    std::string file;
    std::string title;
    std::string skill;
    std::string strategy;
    std::string source;         ///< of a problem with published numbers: book, chapter, problem
    std::string system = "SI";  ///< of its units: "SI", "SI only", "US" or "none"
    bool is_us_edition = false; ///< of a family that is written in SI
    bool is_own = false;        ///< the person's, beside those that come with the program
    /// Of a family in US units: of lengths that say no unit, with torques and stiffness to match.
    bool in_inches = false;
    Kind kind = Kind::numeric;
    std::uint64_t number = 0; ///< in codes

    std::vector<Quantity> quantities;
    std::vector<Draw> draws;
    std::vector<std::string> scene_keys;
    std::vector<std::vector<std::string>> scenes; ///< one text per key
    std::optional<QuantityIndex> scene_number;    ///< 1 for the first scene; for constraints
    double gravity_m_s2 = 9.81;
    std::optional<QuantityIndex> gravity;      ///< its quantity, when the family uses it
    bool states_gravity = false;               ///< the prompt ends by saying which value to take
    std::vector<Let> before;                   ///< computed before the setup is solved
    std::vector<Let> after;                    ///< computed from the solution
    std::vector<Constraint> early_constraints; ///< can be asked before the setup is solved
    std::vector<Constraint> constraints;
    std::optional<LeverPlan> lever; ///< one of the two, or neither
    std::optional<BodyPlan> body;
    /// Quantities that the solution fills; `checks` when a drawn or computed quantity of the same
    /// name must agree with it.
    struct FromSolution {
        Provided provided;
        QuantityIndex quantity = 0;
        bool checks = false;
    };
    std::vector<FromSolution> from_solution;

    TemplateText prompt;
    TemplateText reason;
    std::vector<QuantityIndex> labels; ///< lengths that the drawing states
    std::vector<QuantityIndex> given;  ///< every quantity that prompt or drawing states
    Ask ask;
    std::vector<StepPlan> steps;
    std::vector<WrongPlan> wrong;
    /// Pairs of rules that always give the same number, so that the draw is not refused for it.
    std::vector<std::pair<std::string, std::string>> same_number;
    std::vector<ChoicePlan> choices;
    bool keeps_choice_order = false; ///< choices stand in a natural order: do not shuffle
    std::vector<ChangePlan> changes;
    std::optional<PlacePlan> place;
    int base_difficulty = 1;
    std::vector<DifficultyLever> difficulty;

    std::vector<Item> items; ///< a written family has these and no draws

    setup::UnitSystem units() const {
        return system == "US" ? setup::UnitSystem::us : setup::UnitSystem::si;
    }
    Scene scene() const { return body ? Scene::person : lever ? Scene::thing : Scene::words; }
    /// The unit of a quantity that says none.
    const setup::Unit* usual_unit(setup::Dimension dimension) const;

    std::optional<QuantityIndex> find_quantity(std::string_view name) const;
    /// Whether the solution of its setup has this quantity; false without a setup.
    bool provides(const Provided& provided) const;
};

} // namespace steelyard::problems

#pragma once
// The plan of a lever whose numbers are expressions; from it and an instance's quantities to a
// lever, and from its solution back to quantities.

#include "mechanics/lever/lever_solve.h"
#include "problems/language/expression.h"
#include "problems/language/template_text.h"
#include "problems/language/vocabulary.h"
#include "problems/question/question.h"
#include "setup/lever/limb_shape.h"

#include <optional>
#include <utility>
#include <vector>

namespace steelyard::problems {

/// Where on the lever, how much, which way: each an expression.
struct LoadPlan {
    TemplateText name;
    std::optional<Expression> at;
    enum class Is { mass, force, torque } is = Is::mass;
    Expression size;                     ///< of one that is sought: what it does not read
    std::optional<Expression> direction; ///< of a force [rad]; empty = down
};

/// What the lever is drawn as: one shape for each scene, none where it is a beam there.
struct LimbPlan {
    std::vector<std::optional<setup::LimbShape>> shapes;
    std::optional<Expression> from; ///< of the limb's first place along the lever [m]; empty = 0
    std::optional<Expression> to;   ///< of its last; empty = the lever's end
};

/// A lever made from the quantities of an instance.
struct LeverPlan {
    std::vector<std::pair<Expression, Expression>> path; ///< corners before the tilt [m]
    Expression axis_at;
    TemplateText axis_name;
    Expression effort_at;
    TemplateText effort_name;
    std::optional<Expression> effort_direction; ///< [rad]; empty = down
    std::optional<Expression> effort_force;     ///< known, so that a load is sought [N]
    std::size_t sought_load = 0;                ///< which, when the effort is known
    bool two_supports = false;                  ///< axis and effort are the supports of a beam
    bool has_effort = true; ///< false: nobody asks for an effort, and none is drawn
    std::vector<LoadPlan> loads;
    std::optional<Expression> own_mass;
    std::optional<Expression> own_centre;
    std::optional<Expression> friction_coefficient;
    std::optional<Expression> friction_radius;
    std::optional<Expression> tilt; ///< of the whole lever, counter-clockwise [rad]
    bool from_above = false;
    std::optional<LimbPlan> limb; ///< empty = a beam
};

/// Writes the lever of a plan into `lever`, whose storage is reused. Parts are not named.
void build_lever(const LeverPlan& plan, const double* quantities, double gravity_m_s2,
                 mechanics::Lever& lever);

/// The limb that the lever of a plan is drawn as, in a scene; empty = a beam.
std::optional<setup::Limb> limb_of(const LeverPlan& plan, std::size_t scene,
                                   const double* quantities, const mechanics::Lever& lever);

/// Whether the solution of such a setup has this quantity: it has the load, or an effort.
bool provides(const LeverPlan& plan, const Provided& provided);

/// What a solved lever says about one quantity [SI]. NaN when it has none (no class, no effort).
double value_of(const Provided& provided, const mechanics::LeverResult& solved);

/// The line on the drawing that shows a length of the solution; empty for what is no length.
std::optional<DrawnQuantity> drawn_length(const Term& term, const mechanics::LeverResult& solved);

} // namespace steelyard::problems

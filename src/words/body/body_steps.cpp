#include "words/body/body_steps.h"

#include "mechanics/body/landmarks.h"
#include "setup/muscle/muscle_file.h"
#include "words/body/body_words.h"
#include "words/body/muscle_credit.h"

#include <fmt/format.h>

#include <cmath>

namespace steelyard::words {
namespace {

using mechanics::BodyForce;
using mechanics::HingeArm;
using mechanics::Vec3;

/// Less than this is rounding: it is no term of a sum.
constexpr double kNoTorque_Nm = 1e-9;

/// Sources that differ by less than this agree [N].
constexpr double kNarrowRange_N = 0.5;

class BodyExplainer {
public:
    BodyExplainer(const ExplainedHinge& at, setup::UnitSystem units) : at_(at), units_(units) {}

    Steps torque() {
        for (const mechanics::SegmentInfo& info : mechanics::all_segments())
            add_weight(info);
        for (const BodyForce& force : at_.result.forces)
            add_force(force);
        const double external_Nm = at_.result.external(at_.hinge);
        steps_.push_back(step("All that acts beyond the joint", "τ = Στ",
                              sum_of(torques_Nm_, setup::Dimension::torque, units_), external_Nm,
                              setup::Dimension::torque));
        const double asked_Nm = at_.result.muscle(at_.hinge);
        const mechanics::HingeInfo& info = mechanics::hinge_info(at_.hinge);
        steps_.push_back(step(fmt::format("The muscles must give the opposite: {}",
                                          asked_Nm >= 0.0 ? info.positive : info.negative),
                              "τ of the muscles = −τ",
                              "−(" + text(external_Nm, setup::Dimension::torque) + ")", asked_Nm,
                              setup::Dimension::torque));
        return std::move(steps_);
    }

    Steps torque_of_both() {
        const mechanics::Hinge other = mechanics::hinge_info(at_.hinge).mirror;
        std::vector<double> sides_Nm;
        for (const mechanics::Hinge hinge : {at_.hinge, other}) {
            sides_Nm.push_back(std::abs(at_.result.muscle(hinge)));
            const auto joint = mechanics::hinge_info(hinge).joint;
            steps_.push_back(step(
                fmt::format("Torque of the muscles at the {}", mechanics::joint_info(joint).label),
                "τ", "", sides_Nm.back(), setup::Dimension::torque));
        }
        steps_.push_back(step("Both sides together", "τ = Στ",
                              sum_of(sides_Nm, setup::Dimension::torque, units_),
                              sides_Nm[0] + sides_Nm[1], setup::Dimension::torque));
        return std::move(steps_);
    }

    Steps load_arm(const std::optional<std::size_t>& load) {
        if (!load)
            return {in_words("No resistance turns this joint", "no moment arm")};
        const BodyForce& force = at_.result.forces[*load];
        const HingeArm arm = mechanics::arm_of(at_.result, *load, at_.hinge);
        const double distance_m = distance_in_plane(force.point_m);
        const std::string name = name_of_force(at_.body_case, force);
        steps_.push_back(step(fmt::format("From the joint to where the {} acts", name), "r", "",
                              distance_m, setup::Dimension::length));
        const double sine = distance_m > 0.0 ? std::min(1.0, arm.arm_m / distance_m) : 0.0;
        steps_.push_back(step(
            "Moment arm: not the distance to the point, but to the line of action", "d = r × sin θ",
            fmt::format("{} × sin {}", text(distance_m, setup::Dimension::length),
                        text(std::asin(sine), setup::Dimension::angle)),
            arm.arm_m, setup::Dimension::length));
        return std::move(steps_);
    }

    Steps muscles() {
        if (at_.muscles == nullptr)
            return {in_words("Muscle force is torque ÷ moment arm",
                             "no muscle of this joint is on file")};
        const mechanics::MuscleSolution& solution = at_.muscles->solution;
        if (const std::string why = why_no_force(solution, at_.hinge, units_); !why.empty())
            return {in_words("Muscle force is torque ÷ moment arm", why)};
        steps_.push_back(step("Torque asked of the muscles", "τ", "", solution.torque_asked_Nm,
                              setup::Dimension::torque));
        std::vector<double> tensions_N;
        for (std::size_t i = 0; i < solution.muscles.size(); ++i)
            add_muscle(i, tensions_N);
        if (tensions_N.size() > 1)
            steps_.push_back(
                in_words("How they share the torque",
                         at_.rule == mechanics::SharingRule::equal_stress
                             ? "equal stress: pull in proportion to cross-section"
                             : "equal force in each, as no cross-sections are on file for all"));
        double sum_N = 0.0;
        for (const double tension_N : tensions_N)
            sum_N += tension_N;
        steps_.push_back(step("All muscles together", "T = ΣT",
                              sum_of(tensions_N, setup::Dimension::force, units_), sum_N,
                              setup::Dimension::force));
        return std::move(steps_);
    }

    Steps joint_reaction() {
        if (at_.muscles == nullptr || !at_.muscles->solution.joint_reaction_N)
            return {in_words("The joint's reaction balances all other forces", why_no_reaction())};
        const Vec3 reaction_N = *at_.muscles->solution.joint_reaction_N;
        Vec3 muscles_N = Vec3::Zero();
        for (std::size_t i = 0; i < at_.muscles->pulls.size(); ++i)
            if (at_.muscles->pulls[i].line)
                muscles_N += at_.muscles->solution.muscles[i].tension_N *
                             at_.muscles->pulls[i].line->direction;
        const Vec3 outside_N = -reaction_N - muscles_N;
        constexpr std::string_view kWays[] = {"forward", "up", "to the right"};
        for (int part = 0; part < 3; ++part)
            steps_.push_back(step(
                fmt::format("Forces {}: weights and loads, then muscles, and the joint",
                            kWays[part]),
                "R = −(ΣF + ΣT)",
                "−(" + sum_of({outside_N[part], muscles_N[part]}, setup::Dimension::force, units_) +
                    ")",
                reaction_N[part] + 0.0, setup::Dimension::force));
        steps_.push_back(step("Its size", "R = √(R₁² + R₂² + R₃²)",
                              fmt::format("√(({})² + ({})² + ({})²)",
                                          text(reaction_N.x(), setup::Dimension::force),
                                          text(reaction_N.y(), setup::Dimension::force),
                                          text(reaction_N.z(), setup::Dimension::force)),
                              reaction_N.norm(), setup::Dimension::force));
        return std::move(steps_);
    }

private:
    std::string why_no_reaction() const {
        const std::string why =
            at_.muscles ? why_no_force(at_.muscles->solution, at_.hinge, units_) : "";
        return why.empty() ? "not known: the line of pull of a working muscle is not on file"
                           : "not known without the muscles' forces. " + why;
    }
    std::string text(double value_SI, setup::Dimension dimension) const {
        return formula_text(value_SI, dimension, units_);
    }
    ComputedStep step(std::string title, std::string symbols, std::string numbers, double value_SI,
                      setup::Dimension dimension) const {
        return computed_step(std::move(title), std::move(symbols), std::move(numbers), value_SI,
                             dimension, units_);
    }
    mechanics::Segment carried() const {
        return mechanics::joint_info(mechanics::hinge_info(at_.hinge).joint).segment;
    }

    /// Distance from the axis in the plane square to it [m].
    double distance_in_plane(const Vec3& point_m) const {
        const Vec3 axis = at_.result.placement.axis(at_.hinge);
        const Vec3 r_m = point_m - at_.result.placement.axis_point_m(at_.hinge);
        return (r_m - r_m.dot(axis) * axis).norm();
    }

    void add_term(const std::string& title, const std::string& letter, const HingeArm& arm) {
        const std::string sign = arm.torque_Nm < 0.0 ? "−" : "";
        steps_.push_back(
            step(title, fmt::format("τ = {}{} × d", sign, letter),
                 fmt::format("{}{} × {}", sign, text(arm.force_in_plane_N, setup::Dimension::force),
                             text(arm.arm_m, setup::Dimension::length)),
                 arm.torque_Nm, setup::Dimension::torque));
        torques_Nm_.push_back(arm.torque_Nm);
    }

    void add_weight(const mechanics::SegmentInfo& info) {
        if (!mechanics::is_at_or_beyond(info.segment, carried()))
            return;
        const double mass_kg = at_.body_case.body[info.segment].mass_kg;
        const HingeArm arm = mechanics::arm_about(
            at_.result.placement.axis_point_m(at_.hinge), at_.result.placement.axis(at_.hinge),
            at_.result.placement[info.segment].com_m,
            Vec3(0.0, -mass_kg * at_.body_case.gravity_m_s2, 0.0));
        if (std::abs(arm.torque_Nm) > kNoTorque_Nm)
            add_term(fmt::format("Weight of the {}, {}", info.label,
                                 text(mass_kg, setup::Dimension::mass)),
                     "W", arm);
    }

    void add_force(const BodyForce& force) {
        if (!mechanics::acts_distally(force, at_.hinge))
            return;
        const Vec3 axis = at_.result.placement.axis(at_.hinge);
        const HingeArm arm = mechanics::arm_about(at_.result.placement.axis_point_m(at_.hinge),
                                                  axis, force.point_m, force.force_N);
        const std::string name = name_of_force(at_.body_case, force);
        if (std::abs(arm.torque_Nm) > kNoTorque_Nm) {
            add_rope(force);
            add_term("Pull of the " + name, "F", arm);
        }
        const double couple_Nm = force.couple_Nm.dot(axis);
        if (std::abs(couple_Nm) <= kNoTorque_Nm)
            return;
        steps_.push_back(
            step("Twist by the " + name, "τ", "", couple_Nm, setup::Dimension::torque));
        torques_Nm_.push_back(couple_Nm);
    }

    /// How a column's stack becomes the pull of its rope.
    void add_rope(const BodyForce& force) {
        if (force.origin != mechanics::ForceOrigin::resistance)
            return;
        const mechanics::Resistance& resistance = at_.body_case.resistances[force.index];
        const auto* column = std::get_if<mechanics::CableColumn>(&resistance.kind);
        if (!column)
            return;
        const double gravity_m_s2 = at_.body_case.gravity_m_s2;
        steps_.push_back(step(fmt::format("Weight of the stack of {}, {}", resistance.name,
                                          text(column->stack_kg, setup::Dimension::mass)),
                              "W = m × g", "", column->stack_kg * gravity_m_s2,
                              setup::Dimension::force));
        steps_.push_back(step(
            fmt::format("Tension of the rope: at {0}:1 it carries one part in {0}",
                        column->rope_ratio),
            "F = W ÷ n",
            fmt::format("{} ÷ {}", text(column->stack_kg * gravity_m_s2, setup::Dimension::force),
                        column->rope_ratio),
            mechanics::rope_tension(*column, gravity_m_s2), setup::Dimension::force));
    }

    void add_muscle(std::size_t i, std::vector<double>& tensions_N) {
        const mechanics::MuscleReading& muscle = at_.muscles->solution.muscles[i];
        if (muscle.tension_N <= 0.0)
            return;
        tensions_N.push_back(muscle.tension_N);
        const auto credit = arm_credit(at_.listed[i], at_.muscles->pulls[i]);
        steps_.push_back(
            step(fmt::format("{}: its share of the torque ÷ its moment arm ({}: {})", muscle.muscle,
                             credit ? setup::basis_name(credit->basis) : "",
                             credit ? credit->citation.text : ""),
                 "T = τ ÷ d",
                 fmt::format("{} ÷ {}", text(std::abs(muscle.torque_Nm), setup::Dimension::torque),
                             text(std::abs(muscle.arm_m), setup::Dimension::length)),
                 muscle.tension_N, setup::Dimension::force));
        const auto& range_N = muscle.tension_range_N;
        if (range_N && range_N->high - range_N->low > kNarrowRange_N)
            steps_.push_back(
                in_words("By the moment arms of all sources on file",
                         fmt::format("{} to {}", text(range_N->low, setup::Dimension::force),
                                     text(range_N->high, setup::Dimension::force))));
    }

    const ExplainedHinge& at_;
    setup::UnitSystem units_;
    Steps steps_;
    std::vector<double> torques_Nm_;
};

/// Hands may hang from a bar.
bool holds_a_bar(const mechanics::BodyCase& body_case, const BodyForce& contact) {
    const auto* on = std::get_if<mechanics::OnContacts>(&body_case.support);
    return on != nullptr && contact.index < on->contacts.size() &&
           on->contacts[contact.index].patch == mechanics::Patch::grip;
}

} // namespace

std::string name_of_force(const mechanics::BodyCase& body_case, const BodyForce& force) {
    const std::string_view place = mechanics::segment_info(force.segment).label;
    switch (force.origin) {
    case mechanics::ForceOrigin::resistance:
        break;
    case mechanics::ForceOrigin::contact:
        return fmt::format("{} at the {}", holds_a_bar(body_case, force) ? "bar" : "ground", place);
    case mechanics::ForceOrigin::steadying:
        return "steadying touch";
    case mechanics::ForceOrigin::held:
        return mechanics::is_foot(force.segment) ? fmt::format("ground at the {}", place)
                                                 : fmt::format("seat or frame at the {}", place);
    }
    const mechanics::Resistance& resistance = body_case.resistances[force.index];
    const bool in_both_hands = std::holds_alternative<mechanics::Barbell>(resistance.kind);
    return in_both_hands ? fmt::format("{} at the {}", resistance.name, place) : resistance.name;
}

std::vector<ComputedStep> body_steps(BodyQuantity quantity, const ExplainedHinge& at,
                                     std::optional<std::size_t> load, setup::UnitSystem units) {
    BodyExplainer explainer(at, units);
    switch (quantity) {
    case BodyQuantity::torque:
        return explainer.torque();
    case BodyQuantity::torque_of_both:
        return explainer.torque_of_both();
    case BodyQuantity::load_arm:
        return explainer.load_arm(load);
    case BodyQuantity::muscles:
        return explainer.muscles();
    case BodyQuantity::joint_reaction:
        return explainer.joint_reaction();
    }
    return {};
}

} // namespace steelyard::words

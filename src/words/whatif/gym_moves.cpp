#include "words/whatif/gym_moves.h"

#include "mechanics/constants.h"
#include "words/body/body_words.h"
#include "words/letter_case.h"
#include "words/whatif/whatif_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace steelyard::words {
namespace {

using mechanics::Change;
using mechanics::ChangeRange;
using mechanics::Exercise;
using mechanics::Hinge;
using mechanics::JointAngle;

constexpr double kLeastAngle_rad = 3.0 * mechanics::kPi / 180.0;
constexpr double kLeastLength_m = 0.01;

/// How readily a coach asks for a change; the first are tried first.
enum class Ease { at_once, readily, with_care };

/// When a move is offered.
enum class Offered { always, for_its_joint, for_its_hinge };

/// An angle as a move. Its hinge is the right one, or one of the middle.
struct AngleMove {
    Hinge hinge;
    const char* name; ///< without a direction
    const char* one;  ///< what moves, where one side does
    const char* both;
    const char* less;
    const char* more;
    Ease ease;
    Offered offered;
};

using H = Hinge;
constexpr AngleMove kMoves[] = {
    {H::right_elbow_flexion, "bend of the elbow", "elbow", "elbows", "straighter", "more bent",
     Ease::readily, Offered::always},
    {H::right_shoulder_flexion, "height of the arm in front", "arm", "arms", "lower in front",
     "higher in front", Ease::readily, Offered::always},
    {H::right_shoulder_abduction, "arm out to the side", "arm", "arms", "closer to the side",
     "farther out to the side", Ease::readily, Offered::always},
    {H::right_knee_flexion, "bend of the knee", "knee", "knees", "straighter", "more bent",
     Ease::readily, Offered::always},
    {H::lumbar_flexion, "bend of the low back", "low back", "low back", "straighter", "more bent",
     Ease::with_care, Offered::always},
    {H::neck_flexion, "place of the head", "head", "head", "farther back", "farther forward",
     Ease::readily, Offered::for_its_hinge},
    {H::neck_side_bend, "tilt of the head", "head", "head", "farther to the left",
     "farther to the right", Ease::with_care, Offered::for_its_hinge},
    {H::lumbar_side_bend, "side bend of the trunk", "trunk", "trunk", "farther to the left",
     "farther to the right", Ease::with_care, Offered::for_its_hinge},
    {H::lumbar_rotation, "turn of the trunk", "trunk", "trunk", "farther to the left",
     "farther to the right", Ease::with_care, Offered::for_its_hinge},
    {H::right_shoulder_rotation, "turn of the upper arm", "upper arm", "upper arms",
     "turned farther out", "turned farther in", Ease::with_care, Offered::for_its_hinge},
    {H::right_wrist_flexion, "bend of the wrist", "wrist", "wrists", "bent farther back",
     "bent farther forward", Ease::with_care, Offered::for_its_hinge},
};

/// Moves of the legs of someone whose feet carry the body.
constexpr AngleMove kStandingMoves[] = {
    {H::right_hip_flexion, "lean of the trunk", "trunk", "trunk", "more upright",
     "leaning farther forward", Ease::readily, Offered::always},
    {H::right_hip_abduction, "width of the stance", "leg", "legs", "closer together",
     "farther apart", Ease::readily, Offered::for_its_joint},
    {H::right_ankle_flexion, "lean of the shins", "shin", "shins", "more upright",
     "leaning farther forward", Ease::with_care, Offered::always},
};

/// Moves of legs that carry nothing.
constexpr AngleMove kFreeLegMoves[] = {
    {H::right_hip_flexion, "height of the thigh", "thigh", "thighs", "lower", "higher",
     Ease::readily, Offered::always},
    {H::right_hip_abduction, "leg out to the side", "leg", "legs", "closer to the other",
     "farther out to the side", Ease::readily, Offered::for_its_hinge},
    {H::right_hip_rotation, "turn of the thigh", "thigh", "thighs", "turned farther out",
     "turned farther in", Ease::with_care, Offered::for_its_hinge},
    {H::right_ankle_flexion, "bend of the ankle", "ankle", "ankles", "pointed farther",
     "drawn up farther", Ease::with_care, Offered::for_its_hinge},
};

bool is_offered(const AngleMove& move, Hinge asked) {
    switch (move.offered) {
    case Offered::always:
        return true;
    case Offered::for_its_joint:
        return joint_word(move.hinge) == joint_word(asked);
    case Offered::for_its_hinge:
        return move.hinge == asked || mechanics::hinge_info(move.hinge).mirror == asked;
    }
    return false;
}

bool is_of_a_leg(Hinge hinge) {
    const std::string word = joint_word(hinge);
    return word == "hip" || word == "knee" || word == "ankle";
}

bool stands(const Exercise& exercise) {
    const auto* contacts = std::get_if<mechanics::OnContacts>(&exercise.body_case.support);
    return contacts != nullptr && std::any_of(contacts->contacts.begin(), contacts->contacts.end(),
                                              [](const mechanics::Contact& one) {
                                                  return one.patch == mechanics::Patch::sole ||
                                                         one.patch == mechanics::Patch::ball;
                                              });
}

template <std::size_t count>
const AngleMove* find_in(const AngleMove (&moves)[count], Hinge hinge) {
    const auto found = std::find_if(moves, moves + count, [&](const AngleMove& move) {
        return move.hinge == hinge || mechanics::hinge_info(move.hinge).mirror == hinge;
    });
    return found != moves + count ? found : nullptr;
}

const AngleMove* move_of(Hinge hinge, const Exercise& exercise) {
    const AngleMove* const of_legs =
        stands(exercise) ? find_in(kStandingMoves, hinge) : find_in(kFreeLegMoves, hinge);
    return of_legs != nullptr ? of_legs : find_in(kMoves, hinge);
}

/// Whether a coach would ask for a change.
struct IsAsked {
    const Exercise& exercise;
    Hinge asked;

    bool operator()(const JointAngle& change) const {
        const AngleMove* move = move_of(change.hinge, exercise);
        if (move == nullptr || !is_offered(*move, asked))
            return false;
        return change.both_sides || !stands(exercise) || !is_of_a_leg(change.hinge);
    }
    template <typename Other> bool operator()(const Other&) const { return true; }
};

struct EaseOf {
    const Exercise& exercise;

    Ease operator()(const mechanics::LoadSize&) const { return Ease::at_once; }
    Ease operator()(const JointAngle& change) const {
        const AngleMove* move = move_of(change.hinge, exercise);
        return move != nullptr ? move->ease : Ease::with_care;
    }
    template <typename Other> Ease operator()(const Other&) const { return Ease::readily; }
};

/// What moves and which way, with the size of the step between them.
struct Said {
    std::string what;
    std::string way;
};

struct SayOf {
    const Exercise& exercise;
    const ChangeRange& range;
    bool more;

    std::string names(const std::vector<std::size_t>& resistances) const {
        std::string all;
        for (const std::size_t index : resistances)
            all += (all.empty() ? "" : " and ") + exercise.body_case.resistances[index].name;
        return all;
    }

    Said operator()(const mechanics::LoadSize& change) const {
        if (range.unit == mechanics::ChangeUnit::kilogram)
            return {names(change.resistances), more ? "heavier" : "lighter"};
        return {"pull of " + names(change.resistances), more ? "more" : "less"};
    }
    Said operator()(const JointAngle& change) const {
        const AngleMove* move = move_of(change.hinge, exercise);
        if (move == nullptr)
            return {describe(change, exercise), more ? "more" : "less"};
        return {change.both_sides ? move->both : move->one, more ? move->more : move->less};
    }
    Said operator()(const mechanics::LoadReach& change) const {
        return {
            names({change.resistance}),
            fmt::format("{} the {}", more ? "farther from" : "nearer to", joint_word(change.from))};
    }
    Said operator()(const mechanics::LoadAlongLimb& change) const {
        return {names(change.resistances), more ? "farther down the limb" : "farther up the limb"};
    }
    Said operator()(const mechanics::PulleyHeight& change) const {
        return {"pulley of " + names(change.resistances), more ? "higher" : "lower"};
    }
    Said operator()(const mechanics::BandSlack& change) const {
        return {names(change.resistances), more ? "longer when slack" : "shorter when slack"};
    }
    Said operator()(const mechanics::RepetitionTempo&) const {
        return {"way out", more ? "slower" : "quicker"};
    }
};

bool is_told_apart(const mechanics::Way& way) {
    const double step = std::abs(way.reached.value - way.range.present);
    switch (way.range.unit) {
    case mechanics::ChangeUnit::radian:
        return step >= kLeastAngle_rad;
    case mechanics::ChangeUnit::metre:
        return step >= kLeastLength_m;
    case mechanics::ChangeUnit::kilogram:
    case mechanics::ChangeUnit::newton:
    case mechanics::ChangeUnit::second:
        break;
    }
    return true;
}

} // namespace

std::vector<Change> gym_changes(const Exercise& exercise, Hinge asked) {
    std::vector<Change> changes = mechanics::possible_changes(exercise, asked);
    changes.erase(std::remove_if(changes.begin(), changes.end(),
                                 [&](const Change& change) {
                                     return !std::visit(IsAsked{exercise, asked}, change);
                                 }),
                  changes.end());
    return changes;
}

std::string gym_name(const Change& change, const Exercise& exercise) {
    if (const auto* angle = std::get_if<JointAngle>(&change))
        if (const AngleMove* move = move_of(angle->hinge, exercise))
            return move->name;
    return describe(change, exercise);
}

GymStep gym_step(const Change& change, const ChangeRange& range, double value,
                 const Exercise& exercise, setup::UnitSystem units) {
    const Said said = std::visit(SayOf{exercise, range, value > range.present}, change);
    GymStep told;
    told.step = fmt::format("{} {} {}", capitalised(said.what),
                            change_value_text(std::abs(value - range.present), range.unit, units),
                            said.way);
    const auto* angle = std::get_if<JointAngle>(&change);
    if (angle == nullptr)
        told.values = fmt::format("{} instead of {}", change_value_text(value, range.unit, units),
                                  change_value_text(range.present, range.unit, units));
    else if (exercise.path && exercise.path->end_angle_rad[index_of(angle->hinge)] !=
                                  exercise.body_case.pose[angle->hinge])
        told.values = "through the whole range";
    return told;
}

std::string gym_text(const Change& change, const ChangeRange& range, double value,
                     const Exercise& exercise, setup::UnitSystem units) {
    const GymStep told = gym_step(change, range, value, exercise, units);
    if (told.values.empty())
        return told.step;
    const bool is_angle = std::holds_alternative<JointAngle>(change);
    return told.step + (is_angle ? " " : ": ") + told.values;
}

void order_for_the_gym(mechanics::RankedWays& ways, const Exercise& exercise) {
    std::vector<mechanics::Way>& all = ways.ways;
    all.erase(std::remove_if(all.begin(), all.end(),
                             [](const mechanics::Way& way) { return !is_told_apart(way); }),
              all.end());
    std::stable_sort(all.begin(), all.end(),
                     [&](const mechanics::Way& one, const mechanics::Way& other) {
                         const Ease a = std::visit(EaseOf{exercise}, one.change);
                         const Ease b = std::visit(EaseOf{exercise}, other.change);
                         return a != b ? a < b : one.size < other.size;
                     });
}

} // namespace steelyard::words

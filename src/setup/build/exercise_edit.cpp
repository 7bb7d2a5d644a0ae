#include "setup/build/exercise_edit.h"

#include "mechanics/range/touch.h"
#include "setup/body/finish_movement.h"
#include "setup/body/given_arms.h"
#include "setup/body/touching.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace steelyard::setup {
namespace {

using namespace mechanics;

/// A part that is this near to the floor is put on it, not on something of its own height [m].
constexpr double kOnFloor_m = 0.05;
/// How often the body is turned so that what should touch does.
constexpr int kMendings = 6;
/// A smaller torque is a trifle [N·m]: a finger's weight at arm's length.
constexpr double kTrifle_Nm = 0.5;
/// How many axes are offered to be compared.
constexpr std::size_t kOffered = 10;

/// Every pair of part and patch that can carry a body.
constexpr std::array<TouchWith, 14> kTouching{{{Segment::right_foot, Patch::sole},
                                               {Segment::left_foot, Patch::sole},
                                               {Segment::right_toes, Patch::toes},
                                               {Segment::left_toes, Patch::toes},
                                               {Segment::right_hand, Patch::palm},
                                               {Segment::left_hand, Patch::palm},
                                               {Segment::right_hand, Patch::grip},
                                               {Segment::left_hand, Patch::grip},
                                               {Segment::right_shank, Patch::knee},
                                               {Segment::left_shank, Patch::knee},
                                               {Segment::right_forearm, Patch::forearm},
                                               {Segment::left_forearm, Patch::forearm},
                                               {Segment::pelvis, Patch::seat},
                                               {Segment::trunk, Patch::back}}};

/// Mean height of what of a contact has to touch [m].
double height_m(const Body& body, const Placement& placement, const Contact& contact) {
    const std::vector<Vec3> points_m = touching_points(body, contact);
    double sum_m = 0.0;
    for (const Vec3& point_m : points_m)
        sum_m += placement[contact.segment].at(point_m).y();
    return points_m.empty() ? 0.0 : sum_m / static_cast<double>(points_m.size());
}

/// A contact at the height at which its part is; across the middle of the patch where that stands
/// at an angle.
Contact contact_where_it_is(const BodyCase& body_case, const TouchWith& touch) {
    const Placement placement = place(body_case.body, body_case.pose);
    Contact contact(touch.segment, touch.patch);
    contact.sticks = true;
    const auto set_level = [&] {
        const double level_m = height_m(body_case.body, placement, contact);
        contact.level_m = std::abs(level_m) < kOnFloor_m ? 0.0 : std::max(0.0, level_m);
    };
    set_level();
    if (std::abs(gap_m(body_case.body, placement, contact)) > kTouches_m) {
        contact.tilts = true;
        contact.pressure_at = 0.5;
        set_level();
    }
    return contact;
}

void turn(BodySetup& setup, const MendingTurn& turn) {
    const HingeInfo& info = hinge_info(turn.hinge);
    PerHinge& angles_rad = setup.exercise.body_case.pose.angle_rad;
    const double by_rad = turn.to_rad - turn.from_rad;
    const auto shift = [&](Hinge hinge) {
        const std::size_t i = index_of(hinge);
        angles_rad[i] += by_rad;
        if (setup.exercise.path) {
            double& end_rad = setup.exercise.path->end_angle_rad[i];
            end_rad = std::clamp(end_rad + by_rad, hinge_info(hinge).least_rad,
                                 hinge_info(hinge).most_rad);
        }
    };
    shift(turn.hinge);
    if (turn.both_sides && info.mirror != turn.hinge)
        shift(info.mirror);
}

OnContacts* contacts_of(BodySetup& setup) {
    return std::get_if<OnContacts>(&setup.exercise.body_case.support);
}

std::optional<InputError> make(BodySetup& setup, const ChangePerson& edit,
                               const std::vector<NamedSegmentTable>& tables) {
    auto body = body_of(edit.person, tables);
    if (!body)
        return placed_error(body.error(), setup.source);
    const auto is_too_long = [](const GivenArm& arm) {
        return !(std::abs(arm.arm_m) <= kLongestMuscleArm_m);
    };
    if (std::any_of(edit.person.arms.begin(), edit.person.arms.end(), is_too_long))
        return placed_error(
            {mechanics::Fault::out_of_range, "muscle_arm", "a moment arm from 0 to 50 cm"},
            setup.source);
    setup.person = edit.person;
    setup.exercise.body_case.body = *std::move(body);
    return std::nullopt;
}

void make(BodySetup& setup, const TakeStance& edit) {
    BodyCase& own = setup.exercise.body_case;
    const BodyCase& other = edit.stance.exercise.body_case;
    own.pose = other.pose;
    own.support = other.support;
    setup.exercise.path.reset();
    setup.exercise.tempo.reset();
    setup.axes = edit.stance.axes;
    setup.muscles = edit.stance.muscles;
    setup.view = edit.stance.view;
}

/// A name that no other load has: "cable 2".
std::string free_name(const std::vector<Resistance>& loads, const std::string& name) {
    std::string free = name;
    const auto taken = [&] {
        return std::any_of(loads.begin(), loads.end(),
                           [&](const Resistance& load) { return load.name == free; });
    };
    for (int number = 2; taken(); ++number)
        free = name + " " + std::to_string(number);
    return free;
}

void make(BodySetup& setup, const AddLoads& edit) {
    std::vector<Resistance>& loads = setup.exercise.body_case.resistances;
    for (Resistance load : edit.loads) {
        load.name = free_name(loads, load.name);
        loads.push_back(std::move(load));
    }
}

void make(BodySetup& setup, const ReplaceLoad& edit) {
    std::vector<Resistance>& loads = setup.exercise.body_case.resistances;
    if (edit.index >= loads.size())
        return;
    Resistance load = edit.load;
    loads[edit.index].name.clear(); // its own name is free for what takes its place
    load.name = free_name(loads, load.name);
    loads[edit.index] = std::move(load);
}

void make(BodySetup& setup, const DropLoad& edit) {
    std::vector<Resistance>& loads = setup.exercise.body_case.resistances;
    if (edit.index < loads.size())
        loads.erase(loads.begin() + static_cast<std::ptrdiff_t>(edit.index));
}

void make(BodySetup& setup, const TouchWith& edit) {
    if (OnContacts* on = contacts_of(setup))
        on->contacts.push_back(contact_where_it_is(setup.exercise.body_case, edit));
}

void make(BodySetup& setup, const LetGo& edit) {
    OnContacts* on = contacts_of(setup);
    if (on != nullptr && on->contacts.size() > 1 && edit.contact < on->contacts.size())
        on->contacts.erase(on->contacts.begin() + static_cast<std::ptrdiff_t>(edit.contact));
}

void make(BodySetup& setup, const KeepContact& edit) {
    OnContacts* on = contacts_of(setup);
    if (on != nullptr && edit.contact < on->contacts.size())
        on->contacts[edit.contact].sticks = edit.sticks;
}

void make(BodySetup& setup, const Move& edit) {
    Exercise& exercise = setup.exercise;
    if (edit.moves && !exercise.path)
        exercise.path = PosePath{exercise.body_case.pose.angle_rad};
    if (edit.moves || !exercise.path)
        return;
    exercise.body_case.pose = pose_at(exercise.body_case.pose, *exercise.path, edit.held_at);
    exercise.path.reset();
    exercise.tempo.reset();
}

std::optional<InputError> make(BodySetup& setup, const SetTempo& edit,
                               const std::vector<NamedSegmentTable>& /*tables*/) {
    const auto& tempo = edit.tempo;
    if (tempo && !(tempo->out_s > 0.0 && tempo->back_s > 0.0 && tempo->hold_s >= 0.0))
        return InputError{
            "", 0, 0, "tempo", "a time that cannot be", "times above 0 s, and a hold from 0 s", ""};
    if (setup.exercise.path)
        setup.exercise.tempo = tempo;
    return std::nullopt;
}

void make(BodySetup& setup, const CompareAxes& edit) {
    if (!edit.axes.empty())
        setup.axes = edit.axes;
}

void make(BodySetup& setup, const LookFrom& edit) {
    setup.view = edit.view;
}

template <typename Edit>
std::optional<InputError> make(BodySetup& setup, const Edit& edit,
                               const std::vector<NamedSegmentTable>& /*tables*/) {
    make(setup, edit);
    return std::nullopt;
}

} // namespace

std::optional<InputError> settle(BodySetup& setup) {
    for (int i = 0; i < kMendings; ++i) {
        const auto fault = find_touch_fault(setup.exercise.body_case, setup.exercise.path);
        if (!fault || fault->progress > 0.0 || fault->mend.empty())
            break;
        for (const MendingTurn& one : fault->mend)
            turn(setup, one);
    }
    return finish_movement(setup);
}

tl::expected<BodySetup, InputError> edited(BodySetup setup, const ExerciseEdit& edit,
                                           const std::vector<NamedSegmentTable>& tables) {
    setup.source.by_key.clear(); // what was written there is of the exercise before
    auto error = std::visit([&](const auto& one) { return make(setup, one, tables); }, edit);
    if (!error && check_case(setup.exercise.body_case))
        error = settle(setup);
    else if (!error)
        error = finish_movement(setup);
    if (error)
        return tl::make_unexpected(*std::move(error));
    return setup;
}

std::vector<TouchWith> could_touch(const BodySetup& setup) {
    const BodyCase& body_case = setup.exercise.body_case;
    const auto* on = std::get_if<OnContacts>(&body_case.support);
    if (on == nullptr)
        return {};
    const Placement placement = place(body_case.body, body_case.pose);
    std::vector<TouchWith> could;
    for (const TouchWith& touch : kTouching)
        if (std::none_of(on->contacts.begin(), on->contacts.end(),
                         [&](const Contact& contact) { return contact.segment == touch.segment; }))
            could.push_back(touch);
    std::stable_sort(could.begin(), could.end(), [&](const TouchWith& one, const TouchWith& other) {
        return height_m(body_case.body, placement, {one.segment, one.patch}) <
               height_m(body_case.body, placement, {other.segment, other.patch});
    });
    return could;
}

std::vector<Hinge> could_compare(const BodySetup& setup, const BodyResult& solved) {
    std::vector<Hinge> could;
    for (const HingeInfo& info : all_hinges())
        if (std::abs(solved.muscle(info.hinge)) > kTrifle_Nm &&
            std::find(setup.axes.begin(), setup.axes.end(), info.hinge) == setup.axes.end())
            could.push_back(info.hinge);
    std::stable_sort(could.begin(), could.end(), [&](Hinge one, Hinge other) {
        return std::abs(solved.muscle(one)) > std::abs(solved.muscle(other));
    });
    could.resize(std::min(could.size(), kOffered));
    return could;
}

} // namespace steelyard::setup

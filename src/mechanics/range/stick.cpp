#include "mechanics/range/stick.h"

#include "mechanics/body/limbs.h"
#include "mechanics/bounds.h"
#include "mechanics/range/inverse_kinematics.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace steelyard::mechanics {

namespace {

/// A turn on the way smaller than this is rounding [rad].
constexpr double kNoTurn_rad = 1.0e-6;
/// An angle typed in degrees may be past the end of its range by this [rad].
constexpr double kAngleRounding_rad = 1.0e-9;

/// Something that stays: where, and what its maker is to be told when it cannot.
struct Stuck {
    std::vector<ReachGoal> goals;
    std::vector<Hinge> follow;
    std::string key;
    std::string what; ///< "the left foot"
};

/// A movement on its way to being one in which things stay.
struct StickyPath {
    const BodyCase& body_case;
    const std::optional<PosePath>& path;
    const Placement there; ///< where what sticks is at its place

    /// A condition on the angles that holds at the start, half-way and at the end.
    template <typename Holds> bool always(Holds holds) const {
        return holds(body_case.pose.angle_rad) &&
               (!path ||
                (holds(path->end_angle_rad) && (!path->halfway_rad || holds(*path->halfway_rad))));
    }
    bool alike(Hinge hinge) const {
        const std::size_t mirror = index_of(hinge_info(hinge).mirror);
        return always([&](const PerHinge& angles_rad) {
            return angles_rad[index_of(hinge)] == angles_rad[mirror];
        });
    }
    bool limb_alike(Limb limb) const {
        const std::vector<Hinge> hinges = hinges_of(limb);
        return std::all_of(hinges.begin(), hinges.end(), [&](Hinge hinge) { return alike(hinge); });
    }
    /// Both sides move alike and the middle neither bends nor turns to a side.
    bool symmetric() const {
        return std::all_of(all_hinges().begin(), all_hinges().end(), [&](const HingeInfo& info) {
            const bool to_a_side = info.mirror == info.hinge && info.axis != 2;
            return !to_a_side ? alike(info.hinge) : always([&](const PerHinge& angles_rad) {
                return angles_rad[index_of(info.hinge)] == 0.0;
            });
        });
    }
};

std::vector<Hinge> with_mirrors(std::vector<Hinge> hinges) {
    const std::size_t count = hinges.size();
    for (std::size_t i = 0; i < count; ++i)
        hinges.push_back(hinge_info(hinges[i]).mirror);
    return hinges;
}

std::vector<Hinge> that_follow(const StickyPath& way, const Contact& contact) {
    const Limb own = limb_of(contact.segment);
    const Limb fixed = limb_of(way.body_case.pose.anchor.point.segment);
    if (own != Limb::trunk) {
        const bool hangs_between = fixed == mirror_of(own) && way.limb_alike(own);
        return hangs_between ? with_mirrors(hinges_of(own)) : hinges_of(own);
    }
    return way.limb_alike(fixed) ? with_mirrors(hinges_of(fixed)) : hinges_of(fixed);
}

/// Three corners hold all of a patch, two points the line on which it tilts.
std::vector<ReachGoal> goals_of(const StickyPath& way, const Contact& contact) {
    std::vector<ReachGoal> goals;
    const std::vector<Vec3> points_m = touching_points(way.body_case.body, contact);
    for (std::size_t i = 0; i < std::min<std::size_t>(3, points_m.size()); ++i)
        goals.emplace_back(BodyPoint{contact.segment, Spot::along, 0.0, points_m[i]},
                           way.there[contact.segment].at(points_m[i]));
    return goals;
}

void add_contacts(const StickyPath& way, std::vector<Stuck>& all) {
    const auto* on = std::get_if<OnContacts>(&way.body_case.support);
    for (std::size_t i = 0; on != nullptr && i < on->contacts.size(); ++i) {
        const Contact& contact = on->contacts[i];
        const bool is_fixed = contact.segment == way.body_case.pose.anchor.point.segment;
        if (contact.sticks && !is_fixed)
            all.push_back({goals_of(way, contact), that_follow(way, contact),
                           indexed("support.contacts", i) + ".stick",
                           "the " + std::string(segment_info(contact.segment).label)});
    }
}

/// The hinges of both arms that turn on the way.
std::vector<Hinge> turning_arms(const StickyPath& way) {
    std::vector<Hinge> turning;
    for (const Hinge hinge : with_mirrors(hinges_of(Limb::right_arm)))
        if (turns_on(way.body_case.pose, *way.path, hinge))
            turning.push_back(hinge);
    return turning;
}

void add_bar(const StickyPath& way, std::vector<Stuck>& all) {
    const auto& resistances = way.body_case.resistances;
    const auto bar = std::find_if(resistances.begin(), resistances.end(), [](const auto& one) {
        const auto* barbell = std::get_if<Barbell>(&one.kind);
        return barbell != nullptr && !barbell->resting_on;
    });
    if (bar == resistances.end() || !way.path || !way.symmetric())
        return;
    const Body& body = way.body_case.body;
    Pose end_pose = way.body_case.pose;
    end_pose.angle_rad = way.path->end_angle_rad;
    const Placement first = place(body, way.body_case.pose);
    const Placement last = place(body, end_pose);
    Stuck stuck;
    Vec3 travel_m = Vec3::Zero();
    for (const Segment hand : {Segment::right_hand, Segment::left_hand}) {
        const BodyPoint grip{hand, Spot::grip, 0.0, Vec3::Zero()};
        const Vec3 local_m = local_point(body, grip).value_or(Vec3::Zero());
        stuck.goals.emplace_back(grip, first[hand].at(local_m));
        travel_m += last[hand].at(local_m) - first[hand].at(local_m);
    }
    const Vec3 along_m = stuck.goals[0].target_m - stuck.goals[1].target_m;
    if (along_m.norm() < kComesOff_m)
        return;
    const bool straight = std::get<Barbell>(bar->kind).straight && travel_m.norm() > kComesOff_m;
    for (ReachGoal& goal : stuck.goals)
        (straight ? goal.unseen : goal.only) = (straight ? travel_m : along_m).normalized();
    stuck.follow = turning_arms(way);
    stuck.key = indexed("resistances", static_cast<std::size_t>(bar - resistances.begin()));
    stuck.what = "the hands on " + bar->name;
    all.push_back(std::move(stuck));
}

/// The hinges of all that stays, each once; mirror images that are held alike as one.
std::vector<FreeHinge> free_hinges(const StickyPath& way, const std::vector<Stuck>& all,
                                   const std::vector<Hinge>& kept) {
    const auto is_in = [](const std::vector<Hinge>& list, Hinge hinge) {
        return std::find(list.begin(), list.end(), hinge) != list.end();
    };
    std::vector<Hinge> follow;
    for (const Stuck& stuck : all)
        for (const Hinge hinge : stuck.follow)
            if (!is_in(follow, hinge) && !is_in(kept, hinge))
                follow.push_back(hinge);
    std::vector<FreeHinge> free;
    for (const Hinge hinge : follow) {
        const HingeInfo& info = hinge_info(hinge);
        const bool pair = info.mirror != hinge && way.alike(hinge) && is_in(follow, info.mirror);
        if (!pair || index_of(hinge) < index_of(info.mirror))
            free.push_back(
                {hinge,
                 pair,
                 {info.least_rad - kAngleRounding_rad, info.most_rad + kAngleRounding_rad}});
    }
    return free;
}

/// Brings one pose of the way to where all that sticks is at its place.
class Keeper {
public:
    Keeper(const StickyPath& way, std::vector<Stuck> all, const std::vector<Hinge>& kept)
        : body_(way.body_case.body), all_(std::move(all)), free_(free_hinges(way, all_, kept)) {
        for (const Stuck& stuck : all_)
            goals_.insert(goals_.end(), stuck.goals.begin(), stuck.goals.end());
    }

    /// @param progress  for what is said when something comes off
    tl::expected<Pose, MechanicsError> keep(const Pose& pose, double progress) const {
        auto reached = reach_points(body_, pose, goals_, free_);
        if (!reached)
            return tl::unexpected(reached.error());
        if (reached->miss_m > kComesOff_m)
            return tl::unexpected(comes_off(reached->pose, progress));
        return reached->pose;
    }

    const std::vector<FreeHinge>& free() const { return free_; }

private:
    double miss_m(const Stuck& stuck, const Placement& placement) const {
        double most_m = 0.0;
        for (const ReachGoal& goal : stuck.goals) {
            const Vec3 local_m = local_point(body_, goal.point).value_or(Vec3::Zero());
            const Vec3 off_m = placement[goal.point.segment].at(local_m) - goal.target_m;
            most_m =
                std::max(most_m, goal.only.isZero()
                                     ? Vec3(off_m - goal.unseen * off_m.dot(goal.unseen)).norm()
                                     : std::abs(off_m.dot(goal.only)));
        }
        return most_m;
    }

    MechanicsError comes_off(const Pose& pose, double progress) const {
        const Placement placement = place(body_, pose);
        const auto worst =
            std::max_element(all_.begin(), all_.end(), [&](const auto& a, const auto& b) {
                return miss_m(a, placement) < miss_m(b, placement);
            });
        const long off_mm = std::lround(1000.0 * miss_m(*worst, placement));
        const long part = std::lround(100.0 * progress);
        return {Fault::inconsistent, worst->key,
                "a movement in which " + worst->what + " can stay: at " + std::to_string(part) +
                    " % of the path it would come off by " + std::to_string(off_mm) + " mm"};
    }

    const Body& body_;
    std::vector<Stuck> all_;
    std::vector<FreeHinge> free_;
    std::vector<ReachGoal> goals_;
};

/// Bends the way between two poses that are in place.
tl::expected<std::vector<PathBend>, MechanicsError>
bends_between(const Keeper& keeper, const Pose& start, const PosePath& even) {
    std::vector<Pose> kept;
    std::vector<Pose> straight;
    for (std::size_t i = 0; i < kBendPlaces; ++i) {
        const double progress = static_cast<double>(i) / static_cast<double>(kBendPlaces - 1);
        straight.push_back(pose_at(start, even, progress));
        auto pose = keeper.keep(straight.back(), progress);
        if (!pose)
            return tl::unexpected(pose.error());
        kept.push_back(*std::move(pose));
    }
    std::vector<PathBend> bends;
    const auto add = [&](Hinge hinge) {
        std::array<double, kBendPlaces> extra_rad{};
        for (std::size_t i = 0; i < kBendPlaces; ++i)
            extra_rad[i] = kept[i][hinge] - straight[i][hinge];
        if (std::any_of(extra_rad.begin(), extra_rad.end(),
                        [](double extra) { return std::abs(extra) > kNoTurn_rad; }))
            bends.emplace_back(hinge, extra_rad);
    };
    for (const FreeHinge& free : keeper.free()) {
        add(free.hinge);
        if (free.with_mirror)
            add(hinge_info(free.hinge).mirror);
    }
    return bends;
}

} // namespace

tl::expected<Movement, MechanicsError> stick(const BodyCase& body_case,
                                             const std::optional<PosePath>& path, const Pose& as_in,
                                             const std::vector<Hinge>& kept) {
    const StickyPath way{body_case, path, place(body_case.body, as_in)};
    std::vector<Stuck> all;
    add_contacts(way, all);
    add_bar(way, all);
    Movement movement{body_case.pose, path};
    if (path)
        movement.path->bends.clear();
    if (all.empty())
        return movement;
    const Keeper keeper(way, std::move(all), kept);
    const auto start = keeper.keep(body_case.pose, 0.0);
    if (!start)
        return tl::unexpected(start.error());
    movement.start = *start;
    if (!path)
        return movement;
    Pose end = body_case.pose;
    end.angle_rad = path->end_angle_rad;
    const auto kept_end = keeper.keep(end, 1.0);
    if (!kept_end)
        return tl::unexpected(kept_end.error());
    movement.path->end_angle_rad = kept_end->angle_rad;
    auto bends = bends_between(keeper, movement.start, *movement.path);
    if (!bends)
        return tl::unexpected(bends.error());
    movement.path->bends = *std::move(bends);
    return movement;
}

} // namespace steelyard::mechanics

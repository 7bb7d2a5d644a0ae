// Shipped exercises stand where one stands, and hold what they hold: pressure under the middle of
// the foot, hands that keep their places on a bar, backs and feet on bench and floor.

#include "catch.h"
#include "mechanics/range/sweep.h"
#include "mechanics/range/touch.h"
#include "setup/setup.h"

#include <cmath>
#include <string>
#include <vector>

using namespace steelyard::setup;
using namespace steelyard::mechanics;

namespace {

struct Shipped {
    std::string id;
    BodySetup setup;
};

std::vector<Shipped> shipped() {
    const auto listed = list_setups(std::string(STEELYARD_SOURCE_DIR) + "/assets/setups/body");
    REQUIRE(listed);
    std::vector<Shipped> all;
    for (const SetupListing& one : *listed) {
        REQUIRE(one.setup);
        const std::string file = one.path.filename().string();
        all.push_back({file.substr(0, file.find('.')), std::get<BodySetup>(*one.setup)});
    }
    return all;
}

/// Calls with the case posed and solved at twenty-one places of the path, or once without one.
template <typename See> void at_every_place(const BodySetup& setup, See see) {
    const int places = setup.exercise.path ? 20 : 0;
    for (int i = 0; i <= places; ++i) {
        const double progress = places > 0 ? static_cast<double>(i) / places : 0.0;
        BodyCase body_case = setup.exercise.body_case;
        if (setup.exercise.path)
            body_case.pose = pose_at(body_case.pose, *setup.exercise.path, progress);
        const auto result = solve_body(body_case);
        REQUIRE(result);
        INFO("at " << progress);
        see(body_case, *result);
    }
}

Vec3 spot_m(const BodyCase& body_case, const BodyResult& result, Segment segment, Spot spot) {
    const auto local_m = local_point(body_case.body, {segment, spot, 0.0, Vec3::Zero()});
    REQUIRE(local_m);
    return result.placement[segment].at(*local_m);
}

/// From the heel to the tip of the toes, where a contact's push acts: 0 to 1.
double along_foot(const BodyCase& body_case, const BodyResult& result, const BodyForce& push) {
    const Body& body = body_case.body;
    const double length_m =
        body.heel_behind_ankle_m + body.ball_before_ankle_m + body.toe_tip_before_ball_m;
    const SegmentFrame& foot = result.placement[push.segment];
    const Vec3 local_m = foot.rotation.transpose() * (push.point_m - foot.joint_m);
    return (local_m.x() + body.heel_behind_ankle_m) / length_m;
}

bool stands_on_soles(const BodySetup& setup) {
    const auto* on = std::get_if<OnContacts>(&setup.exercise.body_case.support);
    return on != nullptr &&
           std::all_of(on->contacts.begin(), on->contacts.end(),
                       [](const Contact& one) { return one.patch == Patch::sole; });
}

bool says(const BodySetup& setup, const char* word) {
    return (setup.head.description + " " + setup.head.note).find(word) != std::string::npos;
}

} // namespace

// Where people stand and squat, in parts of the foot from the heel: 44.4 +- 2.1 % and 53.5 +- 2.4 %
// at the deepest point of a squat without load, asked to stay back and forward (Ishida et al. 2022,
// J Sports Sci Med 21:341, abstract). The middle third leaves room for loads held in front.
TEST_CASE(
    "who stands on both soles has the pressure under the middle third of the feet, unless the "
    "file says where it is",
    "[shipped][body][stand]") {
    int standing = 0;
    for (const auto& [id, setup] : shipped()) {
        if (!stands_on_soles(setup) || says(setup, "pressure moves"))
            continue;
        ++standing;
        INFO(id);
        at_every_place(setup, [](const BodyCase& body_case, const BodyResult& result) {
            for (const BodyForce& push : result.forces)
                if (push.origin == ForceOrigin::contact) {
                    CHECK(along_foot(body_case, result, push) > 0.333);
                    CHECK(along_foot(body_case, result, push) < 0.667);
                }
        });
    }
    CHECK(standing > 25);
}

TEST_CASE("two hands on one thing keep their places on it and hold it level",
          "[shipped][body][stand]") {
    int held = 0;
    for (const auto& [id, setup] : shipped()) {
        const auto& resistances = setup.exercise.body_case.resistances;
        const bool in_hands =
            std::any_of(resistances.begin(), resistances.end(), [](const Resistance& one) {
                const auto* bar = std::get_if<Barbell>(&one.kind);
                return bar != nullptr && !bar->resting_on;
            });
        if (!in_hands)
            continue;
        ++held;
        INFO(id);
        double first_m = -1.0;
        at_every_place(setup, [&](const BodyCase& body_case, const BodyResult& result) {
            const Vec3 between_m = spot_m(body_case, result, Segment::right_hand, Spot::grip) -
                                   spot_m(body_case, result, Segment::left_hand, Spot::grip);
            if (first_m < 0.0)
                first_m = between_m.norm();
            CHECK_THAT(between_m.norm(), WithinAbs(first_m, 0.005));
            CHECK_THAT(between_m.y(), WithinAbs(0.0, 0.005));
        });
    }
    CHECK(held >= 8);
}

TEST_CASE("who lies on a bench lies on it, and the feet of benches and seats are on the floor",
          "[shipped][body][stand]") {
    for (const auto& [id, setup] : shipped()) {
        INFO(id);
        if (id == "bench-press" || id == "fly-dumbbells" || id == "pull-down" || id == "crunch" ||
            id == "neck-partner" || id == "wrist-curl")
            at_every_place(setup, [](const BodyCase& body_case, const BodyResult& result) {
                for (const Segment foot : {Segment::right_foot, Segment::left_foot})
                    CHECK_THAT(spot_m(body_case, result, foot, Spot::sole).y(),
                               WithinAbs(0.0, kTouches_m));
            });
        if (id == "bench-press" || id == "fly-dumbbells") {
            const double bench_m = setup.exercise.body_case.pose.anchor.at_m.y();
            at_every_place(setup, [&](const BodyCase& body_case, const BodyResult& result) {
                CHECK_THAT(spot_m(body_case, result, Segment::trunk, Spot::upper_back).y(),
                           WithinAbs(bench_m, 1e-9));
                // The bar stays above the chest: half a trunk's depth before its axis.
                const Vec3 grip = spot_m(body_case, result, Segment::right_hand, Spot::grip);
                CHECK(grip.y() > bench_m);
            });
        }
        // Lying on the floor: the back is not in it, and the hips are not in the air at first.
        if (id == "crunch" || id == "glute-bridge") {
            const Placement first =
                place(setup.exercise.body_case.body, setup.exercise.body_case.pose);
            const double behind_m = 0.055 * setup.person.height_m; // as for the upper back
            const Vec3 skin_m = first[Segment::pelvis].at(Vec3(-behind_m, 0.0, 0.0));
            CHECK_THAT(skin_m.y(), WithinAbs(0.02, kTouches_m));
        }
    }
}

TEST_CASE("hands that hang from a bar and toes that carry stay where they are",
          "[shipped][body][stand]") {
    int sticking = 0;
    for (const auto& [id, setup] : shipped()) {
        const auto* on = std::get_if<OnContacts>(&setup.exercise.body_case.support);
        for (std::size_t i = 0; on != nullptr && i < on->contacts.size(); ++i) {
            const Contact& contact = on->contacts[i];
            if (!contact.sticks)
                continue;
            ++sticking;
            INFO(id << ", contact " << i);
            std::vector<Vec3> there_m;
            at_every_place(setup, [&](const BodyCase& body_case, const BodyResult& result) {
                const auto points = touching_points(body_case.body, contact);
                for (std::size_t k = 0; k < points.size(); ++k) {
                    const Vec3 at_m = result.placement[contact.segment].at(points[k]);
                    if (there_m.size() < points.size())
                        there_m.push_back(at_m);
                    CHECK((at_m - there_m[k]).norm() < 0.006);
                }
            });
        }
    }
    CHECK(sticking >= 5);
}

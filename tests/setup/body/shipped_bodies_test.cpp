#include "catch.h"
#include "mechanics/body/landmarks.h"
#include "mechanics/range/sweep.h"
#include "setup/muscle/muscle_file.h"
#include "setup/setup.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <map>
#include <random>
#include <set>
#include <string>

using namespace steelyard::setup;
namespace mechanics = steelyard::mechanics;
using mechanics::BalanceStatus;
using mechanics::Hinge;

namespace {

const std::string kSource = STEELYARD_SOURCE_DIR;

/// All shipped exercises, by the name of their file without its ending.
std::map<std::string, BodySetup> shipped() {
    const auto listings = list_setups(kSource + "/assets/setups/body");
    REQUIRE(listings.has_value());
    std::map<std::string, BodySetup> setups;
    for (const SetupListing& listing : *listings) {
        INFO((listing.setup ? std::string() : to_text(listing.setup.error())));
        REQUIRE(listing.setup.has_value());
        const std::string name = listing.path.filename().string();
        setups.emplace(name.substr(0, name.size() - kSetupEnding.size()),
                       std::get<BodySetup>(*listing.setup));
    }
    return setups;
}

/// Largest muscle torque about a hinge along the path, or in the pose held.
double peak_Nm(const BodySetup& setup, Hinge hinge) {
    const mechanics::Exercise& exercise = setup.exercise;
    if (!exercise.path)
        return std::abs(mechanics::solve_body(exercise.body_case)->muscle(hinge));
    const auto sweep = mechanics::sweep(exercise.body_case, *exercise.path, 181);
    REQUIRE(sweep.has_value());
    return std::abs(
        mechanics::summarise(exercise.body_case, *exercise.path, *sweep, hinge).peak_Nm);
}

/// Place of the peak on the path, 0 to 1.
double peak_progress(const BodySetup& setup, Hinge hinge) {
    const mechanics::Exercise& exercise = setup.exercise;
    const auto sweep = mechanics::sweep(exercise.body_case, *exercise.path, 181);
    REQUIRE(sweep.has_value());
    return mechanics::summarise(exercise.body_case, *exercise.path, *sweep, hinge).peak_progress;
}

std::size_t girdles_in(const std::vector<Hinge>& axes) {
    return static_cast<std::size_t>(std::count_if(axes.begin(), axes.end(), [](Hinge axis) {
        const mechanics::Joint joint = mechanics::hinge_info(axis).joint;
        return mechanics::is_girdle(mechanics::joint_info(joint).segment);
    }));
}

} // namespace

TEST_CASE("the shipped exercises cover all planes and all kinds of resistance", "[shipped][body]") {
    const auto setups = shipped();
    CHECK(setups.size() >= 30);
    std::set<BodyView> views;
    std::set<std::size_t> kinds;
    std::set<int> orders;
    std::set<std::string> names;
    int single_joint = 0;
    for (const auto& [file, setup] : setups) {
        INFO(file);
        views.insert(setup.view);
        for (const auto& resistance : setup.exercise.body_case.resistances)
            kinds.insert(resistance.kind.index());
        CHECK(orders.insert(setup.head.order).second);
        CHECK(names.insert(setup.head.name).second);
        CHECK(setup.head.description.back() == '.');
        CHECK_FALSE(setup.axes.empty());
        // The shoulder girdle stands beside the shoulder for what it bears.
        single_joint += setup.axes.size() - girdles_in(setup.axes) == 1 ? 1 : 0;
    }
    CHECK(views.size() == 3);
    CHECK(kinds.size() == std::variant_size_v<decltype(mechanics::Resistance::kind)>);
    CHECK(single_joint >= 5);
}

TEST_CASE("every shipped exercise solves to finite, plausible numbers and stays on its feet",
          "[shipped][body]") {
    for (const auto& [file, setup] : shipped()) {
        INFO(file);
        const mechanics::Exercise& exercise = setup.exercise;
        const auto held = mechanics::solve_body(exercise.body_case);
        REQUIRE(held.has_value());
        const auto holds = [](BalanceStatus status) {
            return status == BalanceStatus::held || status == BalanceStatus::balanced;
        };
        CHECK(holds(held->ground.status));
        // No joint of a healthy adult gives 400 N·m in a gym exercise of these loads (common
        // practice, no source: maximal efforts of hips and back reach 250 to 400 N·m).
        for (const double torque_Nm : held->muscle_Nm)
            CHECK(std::abs(torque_Nm) < 400.0);
        if (!exercise.path)
            continue;
        const auto sweep = mechanics::sweep(exercise.body_case, *exercise.path, 61);
        REQUIRE(sweep.has_value());
        for (const BalanceStatus status : sweep->balance)
            CHECK(holds(status));
        for (const Hinge hinge : setup.axes) {
            const double peak = peak_Nm(setup, hinge);
            CHECK(std::isfinite(peak));
            CHECK(peak < 400.0);
        }
        if (exercise.tempo)
            CHECK(
                mechanics::sweep_in_motion(exercise.body_case, *exercise.path, *exercise.tempo, 61)
                    .has_value());
    }
}

TEST_CASE("the muscles that shipped exercises name are in the muscle files", "[shipped][body]") {
    const auto muscles = read_muscle_folder(kSource + "/assets/muscles");
    REQUIRE(muscles.has_value());
    for (const auto& [file, setup] : shipped())
        for (const std::string& name : setup.muscles) {
            INFO(file << ": " << name);
            CHECK(
                std::any_of(muscles->begin(), muscles->end(),
                            [&](const mechanics::Muscle& muscle) { return muscle.name == name; }));
        }
}

TEST_CASE("the teaching pairs show what they are there to show", "[shipped][body]") {
    // Facts of the trade (common practice, no source), each checked by the solver.
    const auto setups = shipped();
    const auto peak = [&](const char* file, Hinge hinge) {
        return peak_Nm(setups.at(file), hinge);
    };

    // A bent elbow shortens the lever at the shoulder.
    CHECK(peak("front-raise-bent", Hinge::right_shoulder_flexion) <
          0.8 * peak("front-raise-straight", Hinge::right_shoulder_flexion));
    CHECK(peak("lateral-raise-bent", Hinge::right_shoulder_abduction) <
          0.8 * peak("lateral-raise-straight", Hinge::right_shoulder_abduction));
    CHECK(peak("leg-raise-bent", Hinge::right_hip_flexion) <
          0.8 * peak("leg-raise-straight", Hinge::right_hip_flexion));
    // The load near and far.
    CHECK(peak("crate-far", Hinge::lumbar_flexion) >
          1.5 * peak("crate-near", Hinge::lumbar_flexion));
    // The load drifting forward in a hinge raises hip and lumbar torque.
    for (const Hinge hinge : {Hinge::right_hip_flexion, Hinge::lumbar_flexion})
        CHECK(peak("hinge-bar-drifting", hinge) > 1.1 * peak("hinge-bar-near", hinge));
    // Leaning moves torque from the knees to the hips.
    CHECK(peak("squat-leaning", Hinge::right_knee_flexion) <
          0.7 * peak("squat-bar-back", Hinge::right_knee_flexion));
    CHECK(peak("squat-leaning", Hinge::right_hip_flexion) >
          1.3 * peak("squat-bar-back", Hinge::right_hip_flexion));
    // Arms near and far in a rotation against a cable.
    CHECK(peak("trunk-rotation-cable-near", Hinge::lumbar_rotation) <
          0.6 * peak("trunk-rotation-cable-far", Hinge::lumbar_rotation));
    // Weight makes no torque about an upright axis: rounding only. Lying down it does.
    CHECK(peak("outward-rotation-dumbbell", Hinge::right_shoulder_rotation) < 1e-9);
    CHECK(peak("outward-rotation-lying", Hinge::right_shoulder_rotation) > 5.0);
    CHECK(peak("outward-rotation-cable", Hinge::right_shoulder_rotation) > 5.0);
    // Cable against dumbbell, pad against standing: the hardest place moves.
    CHECK(std::abs(peak_progress(setups.at("curl-cable"), Hinge::right_elbow_flexion) -
                   peak_progress(setups.at("curl-dumbbell"), Hinge::right_elbow_flexion)) > 0.05);
    CHECK(peak_progress(setups.at("curl-arm-forward"), Hinge::right_elbow_flexion) <
          peak_progress(setups.at("curl-dumbbell"), Hinge::right_elbow_flexion) - 0.2);
    // Upright, the raise is hardest where the arm is level: at the end, 90 degrees; leaning 25
    // degrees moves that to 115 degrees of the shoulder, on a path from 25 to 120.
    CHECK(peak_progress(setups.at("lateral-raise-straight"), Hinge::right_shoulder_abduction) ==
          Approx(1.0).margin(0.01));
    CHECK(peak_progress(setups.at("lateral-raise-leaning"), Hinge::right_shoulder_abduction) ==
          Approx((115.0 - 25.0) / (120.0 - 25.0)).margin(0.02));
}

namespace {

/// Every number of an exercise that its file holds, as a list of places to read and to change.
std::vector<double*> numbers_of(BodySetup& setup) {
    std::vector<double*> numbers{&setup.person.height_m, &setup.person.mass_kg};
    mechanics::Exercise& exercise = setup.exercise;
    for (double& angle_rad : exercise.body_case.pose.angle_rad)
        numbers.push_back(&angle_rad);
    mechanics::Anchor& anchor = exercise.body_case.pose.anchor;
    for (double& part : anchor.at_m.reshaped())
        numbers.push_back(&part);
    numbers.insert(numbers.end(), {&anchor.turn_rad, &anchor.lean_rad, &anchor.side_lean_rad});
    if (exercise.path)
        for (double& angle_rad : exercise.path->end_angle_rad)
            numbers.push_back(&angle_rad);
    for (mechanics::Resistance& resistance : exercise.body_case.resistances) {
        if (auto* dumbbell = std::get_if<mechanics::Dumbbell>(&resistance.kind))
            numbers.push_back(&dumbbell->mass_kg);
        if (auto* barbell = std::get_if<mechanics::Barbell>(&resistance.kind))
            numbers.push_back(&barbell->mass_kg);
        if (auto* bell = std::get_if<mechanics::Kettlebell>(&resistance.kind))
            numbers.insert(numbers.end(), {&bell->mass_kg, &bell->offset_m});
        if (auto* cable = std::get_if<mechanics::Cable>(&resistance.kind))
            numbers.insert(numbers.end(), {&cable->tension_N, &cable->pulley_m.x(),
                                           &cable->pulley_m.y(), &cable->pulley_m.z()});
        if (auto* machine = std::get_if<mechanics::PlateMachine>(&resistance.kind)) {
            numbers.insert(numbers.end(), {&machine->stack_kg, &machine->pad.along});
            for (mechanics::CamEntry& entry : machine->cam)
                numbers.insert(numbers.end(), {&entry.angle_rad, &entry.radius_m});
        }
        if (auto* band = std::get_if<mechanics::Band>(&resistance.kind))
            numbers.push_back(&band->slack_length_m);
        if (auto* cuff = std::get_if<mechanics::Cuff>(&resistance.kind))
            numbers.insert(numbers.end(), {&cuff->mass_kg, &cuff->at.along});
    }
    return numbers;
}

/// Contacts stick, or both hands hold one bar on a way.
bool holds_places(const BodySetup& setup) {
    const mechanics::BodyCase& body_case = setup.exercise.body_case;
    const auto* on = std::get_if<mechanics::OnContacts>(&body_case.support);
    return setup.exercise.path &&
           ((on != nullptr && std::any_of(on->contacts.begin(), on->contacts.end(),
                                          [](const auto& one) { return one.sticks; })) ||
            std::any_of(body_case.resistances.begin(), body_case.resistances.end(),
                        [](const auto& one) {
                            return std::holds_alternative<mechanics::Barbell>(one.kind);
                        }));
}

} // namespace

TEST_CASE("an exercise that was changed reads back bit for bit", "[shipped][body]") {
    const auto tables = shipped_segment_tables();
    REQUIRE(tables.has_value());
    std::mt19937_64 random(5);
    int read_back = 0;
    for (auto& [file, original] : shipped())
        for (int round = 0; round < 4; ++round) {
            INFO(file);
            BodySetup setup = original;
            // A little smaller: stays within every range, and meets every unit.
            for (double* number : numbers_of(setup))
                if (random() % 2)
                    *number *= 1.0 - 1e-6 * static_cast<double>(random() % 1000);
            // What sticks is brought back to its place when it is read: that is then the exercise.
            if (holds_places(setup))
                if (const auto placed =
                        parse_body_setup(write_body_setup(setup), "placed", *tables))
                    setup = *placed;
            const std::string written = write_body_setup(setup);
            auto again = parse_body_setup(written, "again", *tables);
            if (!again)
                continue; // a pose may have come to lie out of reach of its band's table
            ++read_back;
            const auto one = numbers_of(setup);
            const auto other = numbers_of(*again);
            REQUIRE(one.size() == other.size());
            for (std::size_t i = 0; i < one.size(); ++i)
                // "+ 0.0": a negative zero is written as zero.
                REQUIRE(*one[i] + 0.0 == *other[i]);
            REQUIRE(write_body_setup(*again) == written);
        }
    CHECK(read_back > 150);
}

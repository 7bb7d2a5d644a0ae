#include "catch.h"
#include "mechanics/lever/lever_solve.h"
#include "setup/setup.h"
#include "words/lever/lever_words.h"

#include <cmath>
#include <fstream>
#include <set>
#include <string>
#include <vector>

using namespace steelyard::setup;
using namespace steelyard::words;
namespace mechanics = steelyard::mechanics;
using mechanics::LeverClass;
using mechanics::LeverStatus;

namespace {

const std::string kFolder = std::string(STEELYARD_SOURCE_DIR) + "/assets/setups/";

/// What a setup is there to show. Efforts are worked by hand with a pocket calculator, moments
/// about the axis, g = 9.80665 m/s², rounded as written.
struct Intended {
    const char* file;
    LeverStatus status;
    int lever_class;  ///< 0 = none
    double effort;    ///< in the unit of the setup's own system, N or lbf; 0 = cannot balance
    double tolerance; ///< half a unit of the last figure worked
};

const std::vector<Intended> kIntended = {
    // (32 × 1.1 − 0) × g / 1.5: the plank's own weight lies on the axis
    {"seesaw", LeverStatus::ok, 1, 230.1, 0.1},
    // (60 × 0.45 + 12 × 0.50) × g / 1.4
    {"wheelbarrow", LeverStatus::ok, 2, 231.2, 0.1},
    // 14 × 1.4 / 0.55
    {"broom", LeverStatus::ok, 3, 35.64, 0.01},
    // (1600 × 0.09 − 4.2 g × 0.46) / 0.96
    {"crowbar", LeverStatus::ok, 1, 130.3, 0.1},
    // 160 × 0.018 / 0.11
    {"bottle-opener", LeverStatus::ok, 2, 26.18, 0.01},
    // 320 × 0.035 / 0.14
    {"nutcracker", LeverStatus::ok, 2, 80.0, 0.01},
    // 4 × 0.29 / 0.12
    {"tongs", LeverStatus::ok, 3, 9.667, 0.001},
    // 1100 × 0.028 / 0.302
    {"nail-puller", LeverStatus::ok, 1, 102.0, 0.1},
    // 1.35 g, arms equal
    {"beam-balance", LeverStatus::ok, 1, 13.24, 0.01},
    // (11 × 0.06 + 0.6 × 0.045 − 1.1 × 0.16) × g / 0.48
    {"steelyard", LeverStatus::ok, 1, 10.44, 0.01},
    // (28 × 0.4 + 9 × 1.1 + 18 × 0.9) × g / 3.4
    {"launch-trolley", LeverStatus::ok, 2, 107.6, 0.1},
    // 68 × 1.90 / 0.86
    {"oar-from-boat", LeverStatus::ok, 1, 150.2, 0.1},
    // 218.2 × 1.90 / 2.76
    {"oar-from-shore", LeverStatus::ok, 2, 150.2, 0.1},
    // (931.63 × 0.04 + 0.15 × 0.012 × R) / 0.34 with R = 931.63 + effort
    {"boat-winch", LeverStatus::ok, 1, 115.1, 0.1},
    // (380 × 0.09 − 1.5 g × 0.22 + 0.3 × 0.009 × R) / 0.51 with R = 380 + 14.7 + effort
    {"pump-handle", LeverStatus::ok, 1, 63.1, 0.1},
    // (4.5 × 1.35 + 1.9 × 0.90) × g / 0.70
    {"shovel", LeverStatus::ok, 3, 109.1, 0.1},
    // 70 × 1.26 / 0.70
    {"paddle", LeverStatus::ok, 3, 126.0, 0.01},
    // (3 × 90 × sin 60° + 0.875 × 30) / 20, in lbf and in
    {"fishing-rod", LeverStatus::ok, 3, 13.00, 0.01},
    // 280 × 2.5 / 20.5, in lbf and in
    {"pry-bar", LeverStatus::ok, 1, 34.15, 0.01},
    // 26 / 1.2
    {"stiff-gate", LeverStatus::ok, 0, 21.67, 0.01},
    // 85 × 0.09 / 0.14
    {"bell-crank", LeverStatus::ok, 1, 54.64, 0.01},
    // The foot is 19 cm past the corner, at (6.89, −26.71) cm; its arm at −25° is
    // 26.71 cos 25° − 6.89 sin 25° = 21.30 cm: 420 × 8 / 21.30
    {"brake-pedal", LeverStatus::ok, 2, 157.8, 0.1},
    // (5 × 0.34 + 1.7 × 0.16) × g / 0.04
    {"forearm", LeverStatus::ok, 3, 483.5, 0.1},
    // 18 g × 0.45 / (0.85 × sin 20°)
    {"hatch-with-rope", LeverStatus::ok, 2, 273.2, 0.1},
    // 16 × 0.3 × g / 2.4
    {"balanced-trolley", LeverStatus::coincident_points, 0, 19.61, 0.01},
    // (8 × 0.06 − 0.5 × 0.34) × g / 0.48
    {"balance-with-tare", LeverStatus::ok, 0, 6.333, 0.001},
    // (120 × 1 − 70 × 1.5) × g / 4, the other way
    {"gangway", LeverStatus::effort_reversed, 1, -36.77, 0.01},
    {"mast-pulled-along", LeverStatus::effort_through_axis, 2, 0.0, 0.0},
    // The right trestle: (68 × 1.0 + 6 × 1.7 + 18 × 1.6) × g / 2.5
    {"plank-on-trestles", LeverStatus::ok, 0, 419.7, 0.1},
    // (3 × 0.60 + 3.5 × 0.27) × g / (0.12 × sin 15°)
    {"arm-held-out", LeverStatus::ok, 3, 866.7, 0.1},
    // (4.3 × 0.43 + 9 × 0.18) × g / (0.06 × sin 50°)
    {"thigh-lifted", LeverStatus::ok, 3, 740.2, 0.1},
    // (5 × 0.40 + 3.6 × 0.20) × g / (0.07 × sin 35°)
    {"lower-leg-held-out", LeverStatus::ok, 3, 664.4, 0.1},
    // 35 × 0.13 × g / 0.18
    {"foot-on-tiptoe", LeverStatus::ok, 2, 247.9, 0.1},
    // 100 × 0.095 / 0.04
    {"jaw-biting", LeverStatus::ok, 3, 237.5, 0.1},
    // 1.5 g, known; that it balances (1.5 × 0.44 + 1.1 × 0.16) / 0.06 = 13.9 kg, see below
    {"weigh-a-coil", LeverStatus::ok, 1, 14.71, 0.01},
};

} // namespace

TEST_CASE("every shipped lever solves to what it is there to show", "[setup][shipped]") {
    for (const Intended& intended : kIntended) {
        INFO(intended.file);
        const auto setup = read_lever_setup(kFolder + intended.file + std::string(kSetupEnding));
        INFO((setup ? std::string() : to_text(setup.error())));
        REQUIRE(setup.has_value());
        const auto result = mechanics::solve_lever(setup->lever);
        REQUIRE(result.has_value());
        CHECK(result->status == intended.status);
        CHECK((result->lever_class ? static_cast<int>(*result->lever_class) : 0) ==
              intended.lever_class);
        if (intended.effort == 0.0) {
            CHECK_FALSE(result->effort_N.has_value());
            continue;
        }
        REQUIRE(result->effort_N.has_value());
        const std::string_view unit = setup->head.units == UnitSystem::us ? "lbf" : "N";
        CHECK_THAT(from_SI(*result->effort_N, Dimension::force, unit),
                   WithinAbs(intended.effort, intended.tolerance));
    }
}

TEST_CASE("the shipped folder has no broken setup, and each one introduces itself",
          "[setup][shipped]") {
    const auto listings = list_setups(kFolder);
    REQUIRE(listings.has_value());
    std::set<std::string> names;
    std::set<int> orders;
    std::set<LeverClass> classes;
    std::size_t levers = 0;
    for (const SetupListing& listing : *listings) {
        INFO(listing.path);
        INFO((listing.setup ? std::string() : to_text(listing.setup.error())));
        REQUIRE(listing.setup.has_value());
        const SetupHead& head = head_of(*listing.setup);
        CHECK(names.insert(head.name).second);
        CHECK(orders.insert(head.order).second);
        CHECK_FALSE(head.description.empty());
        CHECK(head.description.back() == '.');
        CHECK_FALSE(head.place.empty());
        const auto* lever = std::get_if<LeverSetup>(&*listing.setup);
        if (!lever)
            continue;
        ++levers;
        if (const auto found = mechanics::solve_lever(lever->lever)->lever_class)
            classes.insert(*found);
        // Reading, writing and reading again changes nothing.
        const std::string written = write_lever_setup(*lever);
        const auto again = parse_lever_setup(written, "again");
        REQUIRE(again.has_value());
        CHECK(write_lever_setup(*again) == written);
    }
    CHECK(levers == kIntended.size());
    CHECK(classes.size() == 3);
}

TEST_CASE("one oar is two classes by the free body chosen, with the same forces",
          "[setup][shipped]") {
    const auto solved = [](const char* file) {
        const auto setup = read_lever_setup(kFolder + file + std::string(kSetupEnding));
        REQUIRE(setup.has_value());
        return *mechanics::solve_lever(setup->lever);
    };
    const auto boat = solved("oar-from-boat");
    const auto shore = solved("oar-from-shore");
    CHECK(boat.lever_class == LeverClass::first);
    CHECK(shore.lever_class == LeverClass::second);
    // The files state the forces to 0.1 N.
    CHECK_THAT(*boat.effort_N, WithinAbs(*shore.effort_N, 0.1));
    CHECK_THAT(boat.axis_reaction_N.norm(), WithinAbs(shore.loads[0].force_N.norm(), 0.1));
    CHECK_THAT(shore.axis_reaction_N.norm(), WithinAbs(boat.loads[0].force_N.norm(), 0.1));
}

TEST_CASE("a second class lever that takes more force than its load says so", "[setup][shipped]") {
    const auto setup = read_lever_setup(kFolder + "hatch-with-rope.setup.toml");
    REQUIRE(setup.has_value());
    const auto result = mechanics::solve_lever(setup->lever);
    REQUIRE(result.has_value());
    CHECK(result->advantage_contradicts_class);
    const auto messages = lever_messages(setup->lever, *result, UnitSystem::si);
    REQUIRE(messages.size() == 1);
    CHECK(messages[0].find("second-class") != std::string::npos);
}

TEST_CASE("the examples of the instructor's page are setups that can be read", "[setup][shipped]") {
    std::ifstream page(kFolder + "README.md");
    REQUIRE(page.good());
    std::string line;
    std::string example;
    bool inside = false;
    int read = 0;
    while (std::getline(page, line)) {
        if (line == "```toml") {
            inside = true;
            example.clear();
        } else if (line == "```" && inside) {
            inside = false;
            const auto setup = parse_setup(example, "README.md");
            INFO((setup ? std::string() : to_text(setup.error())));
            REQUIRE(setup.has_value());
            ++read;
        } else if (inside) {
            example += line + "\n";
        }
    }
    CHECK(read >= 2);
}

TEST_CASE("the old balance tells the mass of what hangs on it", "[setup][shipped]") {
    const auto setup = read_lever_setup(kFolder + "weigh-a-coil" + std::string(kSetupEnding));
    REQUIRE(setup.has_value());
    // (1.5 kg × 44 cm + 1.1 kg × 16 cm) / 6 cm
    CHECK(std::get<mechanics::Weight>(setup->lever.loads[0].action).mass_kg ==
          Approx(13.9333).epsilon(1e-5));
}

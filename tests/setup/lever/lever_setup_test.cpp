#include "catch.h"
#include "mechanics/lever/lever_geometry.h"
#include "mechanics/lever/lever_solve.h"
#include "setup/lever/lever_setup.h"

#include <cmath>
#include <cstring>
#include <random>
#include <string>

using namespace steelyard::setup;
namespace mechanics = steelyard::mechanics;
using mechanics::kPi;

namespace {

const char* const kTrolley = R"(kind = "lever"
name = "Launch trolley"
description = "Two wheels under the bow end, a rower at the handle."
place = "Slipway"
order = 20
units = "SI"

length = "2.4 m"
axis = "0 cm"

[effort]
name = "rower's hands"
at = "240 cm"
direction = "up"

[[load]]
name = "boat"
at = "80 cm"
mass = "90 kg"

[[load]]
name = "wind on the cover"
at = "3 ft 3 in"
force = "30 lbf"
direction = 250

[own_weight]
mass = "25 lb"
centre = "1.1 m"

[friction]
coefficient = 0.05
radius = "12 mm"
)";

LeverSetup parsed(const std::string& text) {
    const auto setup = parse_lever_setup(text, "x.setup.toml");
    INFO((setup ? std::string() : to_text(setup.error())));
    REQUIRE(setup.has_value());
    return *setup;
}

/// The trolley with one piece of its text replaced, which must break it.
InputError broken(const std::string& piece, const std::string& by) {
    std::string text = kTrolley;
    const std::size_t at = text.find(piece);
    REQUIRE(at != std::string::npos);
    text.replace(at, piece.size(), by);
    const auto setup = parse_lever_setup(text, "x.setup.toml");
    INFO(text);
    REQUIRE_FALSE(setup.has_value());
    INFO(to_text(setup.error()));
    CHECK(setup.error().file == "x.setup.toml");
    return setup.error();
}

/// Every number of a lever, in one row.
std::vector<double> numbers_of(const mechanics::Lever& lever) {
    std::vector<double> row;
    for (const auto& corner : lever.path_m)
        row.insert(row.end(), {corner.x(), corner.y()});
    row.insert(row.end(),
               {lever.axis_at_m, lever.effort.at_m, lever.effort.direction_rad,
                lever.own_weight.mass_kg, lever.own_weight.centre_at_m.value_or(-1.0),
                lever.friction.coefficient, lever.friction.radius_m, lever.gravity_m_s2});
    for (const auto& load : lever.loads) {
        row.push_back(static_cast<double>(load.action.index()));
        if (const auto* weight = std::get_if<mechanics::Weight>(&load.action))
            row.insert(row.end(), {weight->at_m, weight->mass_kg});
        if (const auto* force = std::get_if<mechanics::PointForce>(&load.action))
            row.insert(row.end(), {force->at_m, force->magnitude_N, force->direction_rad});
        if (const auto* couple = std::get_if<mechanics::Couple>(&load.action))
            row.push_back(couple->torque_Nm);
    }
    return row;
}

bool same_bits(const std::vector<double>& one, const std::vector<double>& other) {
    return one.size() == other.size() &&
           std::memcmp(one.data(), other.data(), one.size() * sizeof(double)) == 0;
}

mechanics::Lever random_lever(std::mt19937_64& engine) {
    const auto between = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(engine);
    };
    mechanics::Lever lever;
    lever.path_m.clear();
    const int corners = 2 + static_cast<int>(engine() % 4);
    for (int i = 0; i < corners; ++i)
        lever.path_m.emplace_back(between(-2.0, 2.0), between(-2.0, 2.0));
    const double length_m = mechanics::path_length(lever.path_m);
    lever.axis_at_m = between(0.0, length_m);
    lever.effort.at_m = between(0.0, length_m);
    lever.effort.direction_rad = between(-kPi, 2 * kPi);
    lever.loads.clear();
    for (std::uint64_t i = engine() % 5; i > 0; --i) {
        const std::uint64_t kind = engine() % 3;
        if (kind == 0)
            lever.loads.push_back(
                {"weight", mechanics::Weight{between(0.0, length_m), between(0.0, 200.0)}});
        else if (kind == 1)
            lever.loads.push_back(
                {"pull", mechanics::PointForce{between(0.0, length_m), between(0.0, 2000.0),
                                               between(-kPi, kPi)}});
        else
            lever.loads.push_back({"hinge", mechanics::Couple{between(-50.0, 50.0)}});
    }
    if (engine() % 2) {
        lever.own_weight.mass_kg = between(0.0, 20.0);
        lever.own_weight.centre_at_m = between(0.0, length_m);
    }
    if (engine() % 2)
        lever.friction = {between(0.0, 1.0), between(0.0, 0.1)};
    if (engine() % 4 == 0)
        lever.gravity_m_s2 = between(1.0, 20.0);
    return lever;
}

} // namespace

TEST_CASE("a lever is read with every key in any unit", "[setup]") {
    const LeverSetup setup = parsed(kTrolley);
    const mechanics::Lever& lever = setup.lever;
    CHECK(setup.head.name == "Launch trolley");
    CHECK(setup.head.place == "Slipway");
    CHECK(setup.head.order == 20);
    CHECK(setup.head.units == UnitSystem::si);
    REQUIRE(lever.path_m.size() == 2);
    CHECK(lever.path_m[1].x() == 2.4);
    CHECK(lever.axis_at_m == 0.0);
    CHECK(lever.effort.at_m == 2.4);
    CHECK(lever.effort.direction_rad == mechanics::kUp_rad);
    REQUIRE(lever.loads.size() == 2);
    CHECK(std::get<mechanics::Weight>(lever.loads[0].action).mass_kg == 90.0);
    const auto& wind = std::get<mechanics::PointForce>(lever.loads[1].action);
    CHECK(wind.at_m == Approx(0.9906).epsilon(1e-15));                  // 39 in
    CHECK(wind.magnitude_N == Approx(133.446648457815).epsilon(1e-15)); // 30 × 4.4482216152605
    CHECK(wind.direction_rad == Approx(250.0 * kPi / 180.0).epsilon(1e-15));
    CHECK(lever.own_weight.mass_kg == Approx(11.33980925).epsilon(1e-15)); // 25 × 0.45359237
    CHECK(lever.friction.coefficient == 0.05);
    CHECK(lever.friction.radius_m == 0.012);
    CHECK(lever.gravity_m_s2 == mechanics::kStandardGravity);
}

TEST_CASE("a bent lever, a couple and a mass as a force are read", "[setup]") {
    const LeverSetup setup = parsed(R"(kind = "lever"
name = "Bell crank"
description = "A bent lever."
path = [["-20 cm", 0], [0, 0], [0, "30 cm"]]
axis = "20 cm"
gravity = "9.8 m/s²"
[effort]
at = "50 cm"
direction = "left"
[[load]]
at = 0
force = "2 kg"
[[load]]
torque = "-3 N·m"
)");
    CHECK(mechanics::path_length(setup.lever.path_m) == Approx(0.5).epsilon(1e-15));
    const auto& pull = std::get<mechanics::PointForce>(setup.lever.loads[0].action);
    CHECK(pull.magnitude_N == 2 * 9.80665);
    CHECK(pull.direction_rad == mechanics::kDown_rad);
    CHECK(std::get<mechanics::Couple>(setup.lever.loads[1].action).torque_Nm == -3.0);
    CHECK(setup.lever.effort.name == "effort");
    CHECK(setup.lever.gravity_m_s2 == 9.8);
}

TEST_CASE("writing keeps the author's words where the values are the author's", "[setup]") {
    LeverSetup setup = parsed(kTrolley);
    const std::string written = write_lever_setup(setup);
    for (const char* kept :
         {"length = \"2.4 m\"", "at = \"240 cm\"", "at = \"3 ft 3 in\"", "force = \"30 lbf\"",
          "direction = 250", "mass = \"25 lb\"", "direction = \"up\"", "radius = \"12 mm\"",
          "coefficient = 0.05", "name = \"rower's hands\"", "axis = \"0 cm\""})
        CHECK(written.find(kept) != std::string::npos);
    CHECK(write_lever_setup(parsed(written)) == written);

    // What changes is written in its author's unit.
    setup.lever.effort.at_m = 2.31;
    std::get<mechanics::PointForce>(setup.lever.loads[1].action).magnitude_N = 20 * 4.4482216152605;
    const std::string changed = write_lever_setup(setup);
    CHECK(changed.find("at = \"231 cm\"") != std::string::npos);
    CHECK(changed.find("force = \"20 lbf\"") != std::string::npos);
}

TEST_CASE("reading, writing and reading again gives bit for bit the same values", "[setup]") {
    std::mt19937_64 engine(20);
    for (int i = 0; i < 2000; ++i) {
        LeverSetup setup;
        setup.head.name = "Lever " + std::to_string(i);
        setup.head.description = "\"Any\" lever \\ with\nodd characters";
        setup.head.units = engine() % 2 ? UnitSystem::us : UnitSystem::si;
        setup.lever = random_lever(engine);
        const std::string written = write_lever_setup(setup);
        INFO(written);
        LeverSetup again = parsed(written);
        REQUIRE(same_bits(numbers_of(again.lever), numbers_of(setup.lever)));
        REQUIRE(again.head.description == setup.head.description);
        REQUIRE(write_lever_setup(again) == written);

        // And once more after a drag, when the author's units meet other values.
        again.lever.effort.direction_rad += 0.1;
        again.lever.effort.at_m *= 0.7;
        again.lever.axis_at_m *= 0.9;
        again.lever.path_m.back() *= 1.01;
        const auto dragged = parse_lever_setup(write_lever_setup(again), "dragged");
        if (dragged) // a place may have come to lie off the shorter lever
            REQUIRE(same_bits(numbers_of(dragged->lever), numbers_of(again.lever)));
    }
}

TEST_CASE("errors of a lever file point at the line and say how to mend it", "[setup]") {
    const InputError typo = broken("axis = \"0 cm\"", "axsi = \"0 cm\"");
    CHECK(typo.key == "axsi");
    CHECK(typo.line == 9);
    CHECK(typo.mend.find("axis") != std::string::npos);

    // Where nothing is misspelt, the missing key itself is told.
    const InputError missing = broken("axis = \"0 cm\"\n", "");
    CHECK(missing.key == "axis");
    CHECK(missing.found == "nothing");

    const InputError unit = broken("at = \"80 cm\"", "at = \"80 kg\"");
    CHECK(unit.line == 18);
    CHECK(unit.key == "load[1].at");
    CHECK(unit.mend.find("a unit of mass, not of length") != std::string::npos);

    CHECK(broken("at = \"80 cm\"", "at = 80").mend.find("no unit") != std::string::npos);
    CHECK(broken("mass = \"90 kg\"", "mass = true").found == "true");
    CHECK(broken("mass = \"90 kg\"", "masss = \"90 kg\"").key.find("mass") != std::string::npos);
    CHECK(broken("mass = \"90 kg\"", "mass = nan").line == 19);
    CHECK(broken("mass = \"90 kg\"", "mass = \"90 kg\"\nforce = \"2 N\"")
              .expected.find("exactly one") != std::string::npos);
    CHECK(broken("mass = \"90 kg\"", "mass = \"90 kg\"\ndirection = \"up\"").key ==
          "load[1].direction");
    CHECK(broken("direction = \"up\"", "direction = \"upp\"").mend == "Did you mean \"up\"?");
    CHECK(broken("units = \"SI\"", "units = \"us\"").mend == "Did you mean \"US\"?");
    CHECK(broken("[own_weight]", "[own_wieght]").mend == "Did you mean \"own_weight\"?");
    CHECK(broken("[effort]", "[[effort]]").found == "a list");
    CHECK(broken("[[load]]", "[load]").line > 0);
    CHECK(broken("name = \"Launch trolley\"", "name = \" \"").found == "an empty name");
    CHECK(broken("length = \"2.4 m\"", "path = 3").key == "path");
    CHECK(broken("length = \"2.4 m\"", "path = [[0, 0], [1]]").key == "path[2]");
    CHECK(broken("length = \"2.4 m\"\n", "").expected == "one of the two");
}

TEST_CASE("what mechanics refuses is reported at its place in the file", "[setup]") {
    const InputError off = broken("at = \"240 cm\"", "at = \"250 cm\"");
    CHECK(off.line == 13);
    CHECK(off.key == "effort.at");
    CHECK(off.found == "\"250 cm\"");

    const InputError negative = broken("mass = \"90 kg\"", "mass = \"-90 kg\"");
    CHECK(negative.line == 19);
    CHECK(negative.key == "load[1].mass");

    CHECK(broken("length = \"2.4 m\"", "length = \"0 m\"").line == 8);
    CHECK(broken("length = \"2.4 m\"", "length = \"-2 m\"").line == 8);
    CHECK(broken("radius = \"12 mm\"", "radius = \"12 km\"").key == "friction.radius");
}

namespace {

const char* const kWeighed = R"(kind = "lever"
name = "Weighing"
description = "The effort is known."
length = "70 cm"
axis = "6 cm"
[effort]
at = "50 cm"
direction = "down"
force = "1.5 kg"
[[load]]
name = "coil"
at = "0 cm"
mass = "sought"
[[load]]
name = "hook"
at = "1 cm"
mass = "200 g"
)";

const char* const kBeam = R"(kind = "lever"
name = "Plank"
description = "Two trestles share it."
length = "4 m"
[[support]]
name = "left trestle"
at = "40 cm"
[[support]]
at = "9 ft"
[[load]]
at = "1.4 m"
mass = "68 kg"
)";

InputError refused(std::string text, const std::string& piece, const std::string& by) {
    const std::size_t at = text.find(piece);
    REQUIRE(at != std::string::npos);
    text.replace(at, piece.size(), by);
    const auto setup = parse_lever_setup(text, "x.setup.toml");
    INFO(text);
    REQUIRE_FALSE(setup.has_value());
    return setup.error();
}

} // namespace

TEST_CASE("a known effort and a sought load are read, found and written back", "[setup]") {
    const LeverSetup setup = parsed(kWeighed);
    CHECK(mechanics::sought_load(setup.lever) == 0u);
    CHECK(std::get<mechanics::SoughtLoad>(setup.lever.sought).effort_N == 1.5 * 9.80665);
    // 1.5 kg × 44 cm − 0.2 kg × 5 cm = 65 kg·cm, over 6 cm.
    CHECK(std::get<mechanics::Weight>(setup.lever.loads[0].action).mass_kg ==
          Approx(65.0 / 6.0).epsilon(1e-12));
    const std::string written = write_lever_setup(setup);
    CHECK(written.find("force = \"1.5 kg\"") != std::string::npos);
    CHECK(written.find("mass = \"sought\"") != std::string::npos);
    const LeverSetup again = parsed(written);
    CHECK(write_lever_setup(again) == written);
    CHECK(same_bits(numbers_of(again.lever), numbers_of(setup.lever)));
    for (const std::string sought :
         {"force = \"sought\"\ndirection = 200", "torque = \"sought\""}) {
        std::string text = kWeighed;
        const std::string piece =
            sought[0] == 't' ? "at = \"0 cm\"\nmass = \"sought\"" : "mass = \"sought\"";
        text.replace(text.find(piece), piece.size(), sought);
        const LeverSetup other = parsed(text);
        CHECK(mechanics::sought_load(other.lever) == 0u);
        CHECK(write_lever_setup(parsed(write_lever_setup(other))) == write_lever_setup(other));
    }
}

TEST_CASE("of effort and loads all sizes but one must be known", "[setup]") {
    CHECK(refused(kWeighed, "force = \"1.5 kg\"\n", "").expected.find("[effort]") !=
          std::string::npos);
    CHECK(refused(kWeighed, "mass = \"sought\"", "mass = \"3 kg\"").key == "effort");
    CHECK(refused(kWeighed, "mass = \"200 g\"", "mass = \"sought\"").expected ==
          "one unknown load");
}

TEST_CASE("a beam on two supports is read and written back", "[setup]") {
    const LeverSetup setup = parsed(kBeam);
    REQUIRE(mechanics::rests_on_two(setup.lever));
    CHECK(mechanics::axis_name(setup.lever) == "left trestle");
    CHECK(setup.lever.effort.name == "second support");
    CHECK(setup.lever.axis_at_m == 0.4);
    CHECK(setup.lever.effort.at_m == Approx(2.7432).epsilon(1e-15));
    const std::string written = write_lever_setup(setup);
    CHECK(written.find("at = \"9 ft\"") != std::string::npos);
    CHECK(written.find("[effort]") == std::string::npos);
    const LeverSetup again = parsed(written);
    CHECK(write_lever_setup(again) == written);
    CHECK(same_bits(numbers_of(again.lever), numbers_of(setup.lever)));
}

TEST_CASE("a beam has two supports, and neither axis nor effort", "[setup]") {
    CHECK(refused(kBeam, "[[support]]\nat = \"9 ft\"\n", "").key == "support");
    CHECK(refused(kBeam, "[[load]]", "[[support]]\nat = \"2 m\"\n[[load]]").key == "support");
    CHECK(refused(kBeam, "length", "axis = \"1 m\"\nlength").key == "axis");
    CHECK(refused(kBeam, "[[load]]", "[effort]\nat = \"1 m\"\ndirection = \"up\"\n[[load]]").key ==
          "effort");
    CHECK(refused(kBeam, "at = \"9 ft\"", "at = \"9 m\"").line > 0);
}

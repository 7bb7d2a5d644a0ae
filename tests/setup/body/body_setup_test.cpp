#include "catch.h"
#include "setup/body/body_setup.h"

#include <cmath>
#include <string>

using namespace steelyard::setup;
namespace mechanics = steelyard::mechanics;
using mechanics::Hinge;
using mechanics::kPi;

namespace {

const char* const kEverything = R"(kind = "body"
name = "Everything at once"
description = "One of each, to read."
order = 5
units = "US"
view = "front"
axes = ["right_elbow_flexion", "lumbar_flexion"]
muscles = ["biceps"]
gravity = "9.80 m/s²"

[body]
person = "Maren"
sex = "female"
height = "5 ft 7 in"
mass = "140 lb"
table = "winter_dempster"

[[body.measured]]
part = "forearm"
length = "26 cm"
centre = "45 %"

[pose]
elbow_flexion = 30
right_shoulder_flexion = "20°"
lumbar_flexion = "0.1 rad"

[pose.anchor]
point = { segment = "left_foot", spot = "sole", forward = "1 cm" }
at = { up = "2 in", right = "-10 cm" }
turn = 15
lean = -2
side_lean = 1

[path]
right_elbow_flexion = 120

[tempo]
out = "1.5 s"
hold = "500 ms"
back = "2 s"

[[resistance]]
kind = "dumbbell"
name = "small one"
hand = "left"
mass = "8 lb"

[[resistance]]
kind = "barbell"
mass = "20 kg"
resting_on = { segment = "trunk", spot = "upper_back" }

[[resistance]]
kind = "kettlebell"
hand = "right"
mass = "8 kg"
offset = "15 cm"
follows_hand = true
direction = { forward = 0.6, up = -0.8 }

[[resistance]]
kind = "cuff"
at = { segment = "right_shank", along = 0.9 }
mass = "2 kg"

[[resistance]]
kind = "plate_machine"
hinge = "right_knee_flexion"
pushes = "flexion"
stack = "40 lb"
pad = { segment = "right_shank", along = 0.85 }
cam = [{ angle = 0, radius = "4 in" }, { angle = 90, radius = "12 cm" }]

[[resistance]]
kind = "cable"
name = "low cable"
at = { segment = "right_hand", spot = "grip" }
pulley = { forward = "40 in", up = "10 cm" }
tension = "5 kg"

[[resistance]]
kind = "band"
at = { segment = "left_hand", spot = "grip" }
anchor = { segment = "left_foot", spot = "sole" }
slack_length = "60 cm"
table = [{ stretch = "50 %", force = "20 N" }, { stretch = 2, force = "9 lbf" }]

[[resistance]]
kind = "band"
name = "second band"
at = { segment = "right_forearm", along = 0.5 }
anchor = { forward = "2 m", up = "1 m" }
slack_length = "1 m"
stiffness = "100 N/m"

[[resistance]]
kind = "partner"
at = { segment = "head", along = 0.5 }
direction = "backward"
force = "20 N"

[support]
friction = 0.7

[[support.contact]]
segment = "left_foot"
patch = "sole"
pressure_at = 0.4
height = "2 in"

[[support.contact]]
segment = "right_foot"
patch = "sole"
height = "2 in"
stick = true
)";

const std::vector<NamedSegmentTable>& tables() {
    static const auto read =
        read_segment_tables(std::string(STEELYARD_SOURCE_DIR) + "/assets/body").value();
    return read;
}

BodySetup parsed(const std::string& text) {
    const auto setup = parse_body_setup(text, "x.setup.toml", tables());
    INFO((setup ? std::string() : to_text(setup.error())));
    REQUIRE(setup.has_value());
    return *setup;
}

/// The text with one piece replaced, which must break it.
InputError broken(const std::string& piece, const std::string& by) {
    std::string text = kEverything;
    const std::size_t at = text.find(piece);
    REQUIRE(at != std::string::npos);
    text.replace(at, piece.size(), by);
    const auto setup = parse_body_setup(text, "x.setup.toml", tables());
    INFO(by);
    REQUIRE_FALSE(setup.has_value());
    INFO(to_text(setup.error()));
    CHECK(setup.error().file == "x.setup.toml");
    CHECK(setup.error().line > 0);
    return setup.error();
}

} // namespace

TEST_CASE("a body setup is read with every key", "[setup][body]") {
    const BodySetup setup = parsed(kEverything);
    const mechanics::BodyCase& body_case = setup.exercise.body_case;
    CHECK(setup.exercise.name == "Everything at once");
    CHECK(setup.view == BodyView::front);
    CHECK(setup.axes == std::vector<Hinge>{Hinge::right_elbow_flexion, Hinge::lumbar_flexion});
    CHECK(setup.person.sex == mechanics::Sex::female);
    CHECK(setup.person.height_m == Approx(1.7018).epsilon(1e-15)); // 67 in
    CHECK(setup.person.measured.size() == 2);
    CHECK(body_case.body[mechanics::Segment::right_forearm].length_m == 0.26);
    CHECK(body_case.gravity_m_s2 == 9.8);

    // A name without a side means both.
    CHECK(body_case.pose[Hinge::right_elbow_flexion] == Approx(kPi / 6).epsilon(1e-15));
    CHECK(body_case.pose[Hinge::left_elbow_flexion] == Approx(kPi / 6).epsilon(1e-15));
    CHECK(body_case.pose[Hinge::left_shoulder_flexion] == 0.0);
    CHECK(body_case.pose[Hinge::lumbar_flexion] == 0.1);
    CHECK(body_case.pose.anchor.point.segment == mechanics::Segment::left_foot);
    CHECK(body_case.pose.anchor.at_m.isApprox(mechanics::Vec3(0.0, 0.0508, -0.1), 1e-15));
    REQUIRE(setup.exercise.path.has_value());
    const auto& end = setup.exercise.path->end_angle_rad;
    CHECK(end[index_of(Hinge::right_elbow_flexion)] == Approx(2 * kPi / 3).epsilon(1e-15));
    CHECK(end[index_of(Hinge::left_elbow_flexion)] == body_case.pose[Hinge::left_elbow_flexion]);
    CHECK(setup.exercise.tempo->hold_s == 0.5);

    REQUIRE(body_case.resistances.size() == 9);
    CHECK(std::get<mechanics::Dumbbell>(body_case.resistances[0].kind).mass_kg ==
          Approx(8 * 0.45359237).epsilon(1e-15));
    CHECK(body_case.resistances[1].name == "barbell");
    CHECK(std::get<mechanics::Kettlebell>(body_case.resistances[2].kind)
              .direction.isApprox(mechanics::Vec3(0.6, -0.8, 0.0)));
    const auto& machine = std::get<mechanics::PlateMachine>(body_case.resistances[4].kind);
    CHECK(machine.pushes == 1);
    CHECK(machine.cam.size() == 2);
    CHECK(machine.cam[1].angle_rad == 0.5 * kPi);
    CHECK(std::get<mechanics::Cable>(body_case.resistances[5].kind).tension_N == 5 * 9.80665);
    const auto& band = std::get<mechanics::Band>(body_case.resistances[6].kind);
    CHECK(std::holds_alternative<mechanics::BodyPoint>(band.anchor));
    CHECK(std::get<mechanics::TableBand>(band.law).entries[0].stretch == 0.5);
    const auto& on = std::get<mechanics::OnContacts>(body_case.support);
    CHECK(on.friction == 0.7);
    CHECK(on.contacts[0].pressure_at == 0.4);
    CHECK_FALSE(on.contacts[1].pressure_at.has_value());
    CHECK(on.contacts[0].level_m == Approx(0.0508).epsilon(1e-15));
    CHECK_FALSE(on.contacts[0].sticks);
    CHECK(on.contacts[1].sticks);
}

TEST_CASE("a body setup is written back in its author's words", "[setup][body]") {
    const BodySetup setup = parsed(kEverything);
    const std::string written = write_body_setup(setup);
    for (const char* kept :
         {"height = \"5 ft 7 in\"", "mass = \"140 lb\"", "elbow_flexion = 30\n",
          "lumbar_flexion = \"0.1 rad\"", "hold = \"500 ms\"", "tension = \"5 kg\"",
          "centre = \"45 %\"", "force = \"9 lbf\"", "up = \"2 in\"", "direction = \"backward\"",
          "friction = 0.7", "height = \"2 in\"", "stick = true"}) {
        INFO(kept);
        CHECK(written.find(kept) != std::string::npos);
    }
    CHECK(write_body_setup(parsed(written)) == written);
}

TEST_CASE("errors of a body file point at the line and say how to mend it", "[setup][body]") {
    CHECK(broken("right_shoulder_flexion =", "right_sholder_flexion =").mend ==
          "Did you mean \"right_shoulder_flexion\"?");
    CHECK(broken("elbow_flexion = 30", "elbow_flexion = 30\nright_elbow_flexion = 20").found ==
          "a second angle of the same hinge");
    CHECK(broken("\"lumbar_flexion\"]", "\"lumber_flexion\"]").mend ==
          "Did you mean \"lumbar_flexion\"?");
    CHECK(broken("table = \"winter_dempster\"", "table = \"winter\"").key == "body.table");
    CHECK(broken("kind = \"cable\"", "kind = \"cabel\"").mend == "Did you mean \"cable\"?");
    CHECK(broken("tension = \"5 kg\"", "tension = \"5 m\"").key == "resistance[6].tension");
    CHECK(broken("spot = \"grip\"", "spot = \"gripp\"").mend == "Did you mean \"grip\"?");
    CHECK(broken("along = 0.9", "along = 0.9, spot = \"grip\"").found == "both spot and along");
    CHECK(broken("patch = \"sole\"", "patch = \"soles\"").mend == "Did you mean \"sole\"?");
    CHECK(broken("[path]\nright_elbow_flexion = 120", "").expected == "a [path] to move along");
    CHECK(broken("stiffness = \"100 N/m\"", "stiffness = \"100 N\"").key ==
          "resistance[8].stiffness");
    CHECK(broken("sex = \"female\"", "sex = \"f\"").key == "body.sex");
    CHECK(broken("part = \"forearm\"", "part = \"for arm\"").key == "body.measured[1].part");
}

TEST_CASE("what the body's mechanics refuses is reported at its place in the file",
          "[setup][body]") {
    // An impossible pose, at the start and at the end of the path.
    const InputError start = broken("elbow_flexion = 30", "elbow_flexion = 170");
    CHECK(start.line == 24);
    CHECK(start.expected.find("150") != std::string::npos);
    CHECK(broken("right_elbow_flexion = 120", "right_elbow_flexion = 160").line == 36);
    // Absurd and impossible numbers.
    CHECK(broken("mass = \"8 lb\"", "mass = \"-8 lb\"").key == "resistance[1].mass");
    CHECK(broken("mass = \"8 lb\"", "mass = nan").line > 40);
    CHECK(broken("height = \"5 ft 7 in\"", "height = \"57 ft\"").key == "body.height");
    CHECK(broken("slack_length = \"60 cm\"", "slack_length = \"-60 cm\"").key ==
          "resistance[7].slack_length");
    CHECK(broken("pressure_at = 0.4", "pressure_at = 1.4").key.find("pressure_at") !=
          std::string::npos);
    CHECK(broken("friction = 0.7", "friction = -1").key == "support.friction");
    // A pad beyond the joint it should push, a pulley in the hand.
    CHECK(broken("pad = { segment = \"right_shank\"", "pad = { segment = \"head\"").key ==
          "resistance[5].pad");
}

TEST_CASE("a pulley in the hand is refused at its line", "[setup][body]") {
    BodySetup setup = parsed(kEverything);
    const auto solved = mechanics::solve_body(setup.exercise.body_case);
    REQUIRE(solved.has_value());
    auto& cable = std::get<mechanics::Cable>(setup.exercise.body_case.resistances[5].kind);
    const auto grip = mechanics::local_point(setup.exercise.body_case.body, cable.at);
    REQUIRE(grip.has_value());
    cable.pulley_m = solved->placement[cable.at.segment].at(*grip);
    const auto again = parse_body_setup(write_body_setup(setup), "again", tables());
    REQUIRE_FALSE(again.has_value());
    INFO(to_text(again.error()));
    CHECK(again.error().line > 0);
    CHECK(again.error().key.find("resistance[6]") == 0);
}

TEST_CASE("a column's stack and rope ratio, a muscle's arm and a mass of 0 are read and written",
          "[setup][body]") {
    const std::string text = R"(kind = "body"
name = "Column"
description = "A stack, a rope, an arm by hand."
axes = ["right_elbow_flexion"]
[body]
sex = "female"
height = "1.70 m"
mass = "64 kg"
[[body.measured]]
part = "hand"
mass = "0 kg"
[[body.muscle_arm]]
muscle = "biceps"
hinge = "elbow_flexion"
turns = "flexion"
arm = "1.5 in"
[[body.muscle_arm]]
muscle = "triceps"
hinge = "elbow_flexion"
turns = "extension"
arm = 0
[pose]
right_elbow_flexion = 90
[[resistance]]
kind = "cable_column"
at = { segment = "right_hand", spot = "grip" }
pulley = { forward = "30 cm", up = "5 cm" }
stack = "40 lb"
rope_ratio = "2:1"
[support]
held = "pelvis"
)";
    const auto setup = parse_body_setup(text, "x.setup.toml", tables());
    INFO((setup ? std::string() : to_text(setup.error())));
    REQUIRE(setup.has_value());
    const mechanics::BodyCase& body_case = setup->exercise.body_case;
    const auto& column = std::get<mechanics::CableColumn>(body_case.resistances[0].kind);
    CHECK(column.rope_ratio == 2);
    CHECK(body_case.body[mechanics::Segment::right_hand].mass_kg == 0.0);
    REQUIRE(setup->person.arms.size() == 2);
    CHECK(setup->person.arms[0].arm_m == 0.0381);
    CHECK(std::signbit(setup->person.arms[1].arm_m));
    const std::string written = write_body_setup(*setup);
    for (const char* kept : {"rope_ratio = \"2:1\"", "stack = \"40 lb\"", "arm = \"1.5 in\"",
                             "turns = \"extension\"", "mass = \"0 kg\""})
        CHECK(written.find(kept) != std::string::npos);
    const auto again = parse_body_setup(written, "y.setup.toml", tables());
    REQUIRE(again.has_value());
    CHECK(write_body_setup(*again) == written);

    const auto fault = [&](const std::string& piece, const std::string& by) {
        std::string wrong = text;
        wrong.replace(wrong.find(piece), piece.size(), by);
        const auto read = parse_body_setup(wrong, "x", tables());
        REQUIRE_FALSE(read.has_value());
        return to_text(read.error());
    };
    CHECK(fault("\"biceps\"", "\"bicep\"").find("Did you mean \"biceps\"?") != std::string::npos);
    CHECK(fault("\"1.5 in\"", "\"60 cm\"").find("from 0 to 50 cm") != std::string::npos);
    CHECK(fault("\"2:1\"", "\"5:1\"").find("rope_ratio") != std::string::npos);
}

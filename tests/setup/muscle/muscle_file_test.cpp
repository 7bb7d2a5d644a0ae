#include "catch.h"
#include "setup/muscle/muscle_file.h"

#include <set>
#include <string>

using namespace steelyard;
using namespace steelyard::mechanics;

namespace {

const std::string kBiceps = R"(
[[muscle]]
name = "biceps"
group = "elbow flexors"
hinge = "elbow_flexion"
[[muscle.arm]]
source = "made up for the test"
mark = "memory"
basis = "illustrative"
positive = "flexion"
constant = "4 cm"
)";

std::string replaced(std::string text, const std::string& what, const std::string& with) {
    const std::size_t at = text.find(what);
    REQUIRE(at != std::string::npos);
    return text.replace(at, what.size(), with);
}

Muscle only_muscle(const std::string& text) {
    const auto muscles = setup::parse_muscles(text, "test.toml");
    if (!muscles)
        FAIL(to_text(muscles.error()));
    REQUIRE(muscles->size() == 1);
    return muscles->front();
}

setup::InputError error_of(const std::string& text) {
    const auto muscles = setup::parse_muscles(text, "test.toml");
    REQUIRE_FALSE(muscles);
    return muscles.error();
}

} // namespace

TEST_CASE("a muscle's hinge is named without a side and means the right one", "[setup][muscle]") {
    CHECK(only_muscle(kBiceps).hinge == Hinge::right_elbow_flexion);
    CHECK(only_muscle(replaced(kBiceps, "elbow_flexion", "lumbar_flexion")).hinge ==
          Hinge::lumbar_flexion);
}

TEST_CASE("an arm counts with the sense that its source gives it", "[setup][muscle]") {
    CHECK_THAT(arm_at(only_muscle(kBiceps).arms, 0.0).arm_m, WithinAbs(0.04, 1e-15)); // rounding
    const std::string extension = replaced(kBiceps, "\"flexion\"", "\"extension\"");
    CHECK_THAT(arm_at(only_muscle(extension).arms, 0.0).arm_m, WithinAbs(-0.04, 1e-15));
}

TEST_CASE("a source that counts its angle the other way gives the same arms", "[setup][muscle]") {
    const auto with_arm = [](const std::string& curve) {
        return only_muscle(replaced(kBiceps, "constant = \"4 cm\"", curve)).arms;
    };
    const auto up = with_arm(R"(table = [{ angle = "-20 deg", arm = "3 cm" },
                                         { angle = "30 deg", arm = "4 cm" }])");
    const auto down = with_arm(R"(angle = "extension"
                                  table = [{ angle = "-30 deg", arm = "4 cm" },
                                           { angle = "20 deg", arm = "3 cm" }])");
    const auto polynomial_up = with_arm("polynomial = [1, 2, 3]\narm_unit = \"mm\"\n"
                                        "angle_unit = \"rad\"\nvalid = [\"-10 deg\", \"60 deg\"]");
    const auto polynomial_down =
        with_arm("angle = \"extension\"\npolynomial = [1, -2, 3]\narm_unit = \"mm\"\n"
                 "angle_unit = \"rad\"\nvalid = [\"-60 deg\", \"10 deg\"]");
    for (double angle = -0.5; angle < 1.5; angle += 0.1) {
        CHECK_THAT(arm_at(up, angle).arm_m, WithinAbs(arm_at(down, angle).arm_m, 1e-15));
        CHECK_THAT(arm_at(polynomial_up, angle).arm_m,
                   WithinAbs(arm_at(polynomial_down, angle).arm_m, 1e-15));
    }
}

TEST_CASE("a polynomial in degrees and millimetres is read as one in radians and metres",
          "[setup][muscle]") {
    const auto arms =
        only_muscle(replaced(kBiceps, "constant = \"4 cm\"",
                             "polynomial = [10, 0.5, 0.002]\narm_unit = \"mm\"\n"
                             "angle_unit = \"deg\"\nvalid = [\"0 deg\", \"100 deg\"]"))
            .arms;
    // 10 + 0.5·40 + 0.002·1600 = 33.2 mm
    CHECK_THAT(arm_at(arms, 40.0 * kPi / 180.0).arm_m, WithinAbs(0.0332, 1e-15));
}

TEST_CASE("both conventions of the line of pull are read by name", "[setup][muscle]") {
    const Muscle attached = only_muscle(kBiceps + R"(
[muscle.line]
convention = "attachment points"
origin = { segment = "upper_arm", along = 0.3, forward = "-2 cm" }
insertion = { segment = "forearm", along = -0.06, up = "1 cm", to_the_right = "3 mm" }
wrap = { radius = "1.8 cm", side = "extension" }
source = "made up"
mark = "memory"
)");
    const auto& line = std::get<AttachmentsOnBody>(*attached.line);
    CHECK(line.origin.segment == Segment::right_upper_arm);
    CHECK(line.insertion.along == -0.06);
    CHECK(line.insertion.offset_m.isApprox(Vec3(0.0, 0.01, 0.003)));
    CHECK(line.wrap->side == TurnSense::negative);

    const Muscle fixed = only_muscle(kBiceps + R"(
[muscle.line]
convention = "fixed angle to the bone"
insertion = { segment = "foot", spot = "heel", up = "4 cm" }
angle = "80 deg"
turns = "flexion"
source = "made up"
mark = "memory"
)");
    const auto& angled = std::get<FixedAngleOnBody>(*fixed.line);
    CHECK(angled.insertion.spot == Spot::heel);
    CHECK_THAT(angled.angle_to_bone_rad, WithinAbs(80.0 * kPi / 180.0, 1e-12));
    CHECK(angled.turns == TurnSense::positive);
}

TEST_CASE("what is wrong with a muscle is said with its key and line", "[setup][muscle]") {
    const setup::InputError hinge = error_of(replaced(kBiceps, "elbow_flexion", "elbow_flextion"));
    CHECK(hinge.key == "muscle[1].hinge");
    CHECK(hinge.line == 5);
    CHECK(hinge.mend.find("elbow_flexion") != std::string::npos);

    CHECK(error_of(replaced(kBiceps, "mark = \"memory\"", "mark = \"certain\"")).key ==
          "muscle[1].arm[1].mark");
    CHECK(error_of(replaced(kBiceps, "source = \"made up for the test\"", "")).key ==
          "muscle[1].arm[1].source");
    CHECK(error_of(replaced(kBiceps, "\"4 cm\"", "\"4 kg\"")).key == "muscle[1].arm[1].constant");
    CHECK(error_of(replaced(kBiceps, "\"4 cm\"", "\"4 m\"")).key == "muscle[1].arm");
    CHECK(error_of(replaced(kBiceps, "positive", "postive")).key.find("muscle[1].arm[1]") == 0);
    CHECK(error_of(kBiceps + kBiceps).key == "muscle[2].name");
    CHECK(error_of("[[muscle]]\nname = \"x\"\ngroup = \"y\"\n").key == "muscle[1].arm");
    CHECK(error_of(kBiceps + "[muscle.cross_section]\narea_cm2 = -3\nsource = \"x\"\n"
                             "mark = \"memory\"\n")
              .key == "muscle[1].cross_section.area_cm2");
    CHECK(error_of(replaced(kBiceps, "constant = \"4 cm\"",
                            "table = [{ angle = \"30 deg\", arm = \"4 cm\" },"
                            " { angle = \"20 deg\", arm = \"3 cm\" }]"))
              .key == "muscle[1].arm");
}

TEST_CASE("an action tells its muscles, and adds the movers known by name alone",
          "[setup][muscle]") {
    const auto muscles = setup::parse_muscles(kBiceps + R"(
[muscle.cross_section]
area_cm2 = 4.5
by = "imaging"
source = "made up for the test"
mark = "memory"
[[muscle.arms_hold]]
hinge = "shoulder_flexion"
from = "-10 deg"
to = "20 deg"
[[action]]
name = "flexion"
hinge = "elbow_flexion"
turns = "flexion"
where = [{ hinge = "shoulder_flexion", from = "0 deg", to = "90 deg" }]
movers = ["biceps", "brachialis"]
helpers = ["brachioradialis"]
source = "made up for the test"
mark = "memory"
)",
                                              "test.toml");
    if (!muscles)
        FAIL(to_text(muscles.error()));
    REQUIRE(muscles->size() == 2); // a helper without arms is nobody
    CHECK((*muscles)[0].is_known());
    CHECK((*muscles)[0].cross_section->by == AreaMethod::imaging);
    const std::vector<PoseRange>& holds = (*muscles)[0].arms.front().holds;
    REQUIRE(holds.size() == 1);
    CHECK(holds[0].hinge == Hinge::right_shoulder_flexion);
    CHECK_THAT(holds[0].angle_rad.high, WithinAbs(20.0 * kPi / 180.0, 1e-12));
    CHECK((*muscles)[1].name == "brachialis");
    CHECK_FALSE((*muscles)[1].is_known());
    for (const Muscle& muscle : *muscles) {
        REQUIRE(muscle.actions.size() == 1);
        CHECK(muscle.actions[0].turns == TurnSense::positive);
        CHECK(muscle.actions[0].movers.size() == 2);
        CHECK(muscle.actions[0].where.size() == 1);
    }
}

TEST_CASE("a folder without muscles is an error, not an empty body", "[setup][muscle]") {
    CHECK_FALSE(setup::read_muscle_folder("no such folder"));
}

TEST_CASE("the muscles that come with the program cover the joints that people train",
          "[setup][muscle]") {
    const auto muscles = setup::shipped_muscles();
    if (!muscles)
        FAIL(to_text(muscles.error()));
    std::set<std::string> groups;
    for (const Muscle& muscle : *muscles) {
        INFO(muscle.name << " (" << muscle.group << ")");
        if (!muscle.is_known())
            continue;
        groups.insert(muscle.group);
        for (const ArmSource& source : muscle.arms)
            CHECK(source.citation.text.size() > 10);
        // What rests on memory alone must show a range, so that nobody takes it for measured.
        const ArmReading reading = arm_at(muscle.arms, 0.5);
        if (muscle.arms[reading.source].citation.mark == Evidence::memory)
            CHECK(reading.range_m.high - reading.range_m.low > 0.004);
    }
    for (const char* group :
         {"elbow flexors", "elbow extensors", "shoulder abductors", "hip extensors", "hip flexors",
          "knee extensors", "knee flexors", "plantar flexors", "lumbar extensors", "neck extensors",
          "jaw closers"})
        CHECK(groups.count(group) == 1);
}

TEST_CASE("what an arm rests on is read, and nothing from memory may be called measured",
          "[setup][muscle]") {
    CHECK(only_muscle(kBiceps).arms.front().basis == Basis::illustrative);
    const std::string measured = replaced(kBiceps, "illustrative", "measured");
    CHECK(error_of(measured).key.find("basis") != std::string::npos);
    const std::string seen = replaced(measured, "\"memory\"", "\"verified\"");
    CHECK(only_muscle(seen).arms.front().basis == Basis::measured);
    const std::string model = replaced(seen, "measured", "open model");
    CHECK(only_muscle(model).arms.front().basis == Basis::open_model);
    CHECK(setup::labelled_source(only_muscle(model).arms.front()) ==
          "made up for the test (open model)");
}

TEST_CASE("arms hold where they say, and else where their muscle says", "[setup][muscle]") {
    const Muscle muscle = only_muscle(kBiceps + R"(
[[muscle.arm]]
source = "made up"
mark = "memory"
basis = "illustrative"
positive = "flexion"
holds = [{ hinge = "shoulder_flexion", from = "45 deg", to = "135 deg" }]
constant = "3 cm"

[[muscle.arms_hold]]
hinge = "shoulder_flexion"
from = "-30 deg"
to = "30 deg"
)");
    REQUIRE(muscle.arms.size() == 2);
    CHECK_THAT(muscle.arms[0].holds.at(0).angle_rad.high, WithinAbs(kPi / 6.0, 1e-12));
    CHECK_THAT(muscle.arms[1].holds.at(0).angle_rad.high, WithinAbs(0.75 * kPi, 1e-12));
}

TEST_CASE("measured strength is read beside its action, and refused from memory",
          "[setup][muscle]") {
    const std::string strong = kBiceps + R"(
[[action]]
name = "flexion"
hinge = "elbow_flexion"
turns = "flexion"
movers = ["biceps"]
source = "made up"
mark = "memory"

[[action.strength]]
people = "3 invented men"
sex = "male"
torque = "70 N·m"
spread = "10 N·m"
valid = ["50 deg", "75 deg"]
source = "made up"
mark = "verified-2"
)";
    const Muscle muscle = only_muscle(strong);
    const MeasuredStrength& strength = muscle.actions.at(0).strength.at(0);
    CHECK(strength.sex == Sex::male);
    CHECK(std::get<StrengthAt>(strength.law).torque_Nm == 70.0);
    CHECK(strength_at(strength, 1.0, 70.0, 1.7)->sd_Nm == 10.0);
    CHECK_FALSE(strength_at(strength, 1.5, 70.0, 1.7));
    CHECK(error_of(replaced(strong, "\"verified-2\"", "\"memory\"")).key.find("mark") !=
          std::string::npos);
}

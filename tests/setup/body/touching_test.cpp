// What is told about contacts that do not touch, and how `stick` is read and written.

#include "catch.h"
#include "mechanics/range/touch.h"
#include "setup/body/body_setup.h"

#include <string>

using namespace steelyard::setup;
namespace mechanics = steelyard::mechanics;

namespace {

const std::string kStanding = R"(kind = "body"
name = "A step"
description = "One foot in front of the other."
axes = ["right_knee_flexion"]

[body]
sex = "female"
height = "1.70 m"
mass = "64 kg"

[pose]
right_hip_flexion = 0
left_hip_flexion = 0
left_knee_flexion = 0

[path]
right_hip_flexion = 20
right_knee_flexion = 20

[support]

[[support.contact]]
segment = "right_foot"
patch = "sole"

[[support.contact]]
segment = "left_foot"
patch = "sole"
)";

std::string replaced(std::string text, const std::string& piece, const std::string& by) {
    const std::size_t at = text.find(piece);
    REQUIRE(at != std::string::npos);
    return text.replace(at, piece.size(), by);
}

tl::expected<BodySetup, InputError> read(const std::string& text) {
    return parse_body_setup(text, "step.setup.toml", shipped_segment_tables().value());
}

InputError refused(const std::string& text) {
    const auto setup = read(text);
    REQUIRE_FALSE(setup);
    INFO(to_text(setup.error()));
    return setup.error();
}

} // namespace

TEST_CASE("a foot in the air is refused with its line, its height and what to turn",
          "[setup][body][touch]") {
    const InputError error =
        refused(replaced(kStanding, "left_hip_flexion = 0", "left_hip_flexion = 30"));
    CHECK(error.file == "step.setup.toml");
    CHECK(error.line == 26); // the second [[support.contact]]
    CHECK(error.key == "support.contact[2]");
    CHECK(error.found.find("the sole of the left foot ") == 0);
    CHECK(error.found.find(" above the floor") != std::string::npos);
    CHECK(error.expected.find("it on the floor, within 2\u00A0cm") == 0);
    CHECK(error.mend.find("Bend the left hip by ") == 0);
    CHECK(error.mend.find("° less (left_hip_flexion = ") != std::string::npos);
}

TEST_CASE("what the message tells to turn mends the file", "[setup][body][touch]") {
    const std::string hanging =
        replaced(kStanding, "[path]\nright_hip_flexion = 20\nright_knee_flexion = 20\n", "");
    for (const char* hip : {"18", "30", "60", "-25"}) {
        INFO(hip);
        std::string text =
            replaced(hanging, "left_hip_flexion = 0", std::string("left_hip_flexion = ") + hip);
        const InputError error = refused(text);
        const std::size_t open = error.mend.find("(left_hip_flexion = ");
        REQUIRE(open != std::string::npos);
        const std::string line = error.mend.substr(open + 1, error.mend.find(')') - open - 1);
        text = replaced(text, std::string("left_hip_flexion = ") + hip, line);
        const auto mended = read(text);
        INFO(text);
        CHECK(mended.has_value());
    }
}

TEST_CASE("a foot that leaves its place on the way is refused, and stick keeps it there",
          "[setup][body][touch]") {
    const InputError error = refused(kStanding);
    CHECK(error.found.find(" % along the path") != std::string::npos);
    CHECK(error.mend.find("stick = true") == 0);

    const std::string stuck = kStanding + "stick = true\n";
    const auto setup = read(stuck);
    INFO((setup ? std::string() : to_text(setup.error())));
    REQUIRE(setup);
    CHECK(std::get<mechanics::OnContacts>(setup->exercise.body_case.support).contacts[1].sticks);
    const auto& end = setup->exercise.path->end_angle_rad;
    CHECK(end[index_of(mechanics::Hinge::left_knee_flexion)] > 0.25);
    // Written and read again, it is the same to the last bit.
    const std::string written = write_body_setup(*setup);
    CHECK(written.find("stick = true") != std::string::npos);
    const auto again = read(written);
    REQUIRE(again);
    CHECK(again->exercise.path->end_angle_rad == end);
    CHECK(write_body_setup(*again) == written);
}

TEST_CASE("a foot that cannot stay is refused at its stick", "[setup][body][touch]") {
    // The left leg is straight: it cannot get longer when the right one rises on its toes.
    std::string text = replaced(kStanding, "right_hip_flexion = 20\nright_knee_flexion = 20",
                                "hip_abduction = 25");
    text += "stick = true\n";
    text = replaced(text, "hip_abduction = 25", "right_hip_abduction = 25");
    const InputError error = refused(text);
    CHECK(error.line == 28);
    CHECK(error.key == "support.contact[2].stick");
    CHECK(error.expected.find("the left foot can stay") != std::string::npos);
}

TEST_CASE("what is higher than the floor is touched at its height", "[setup][body][touch]") {
    const std::string step =
        replaced(replaced(replaced(kStanding,
                                   "[path]\nright_hip_flexion = 20\nright_knee_flexion = 20\n", ""),
                          "left_hip_flexion = 0", "left_hip_flexion = 60"),
                 "left_knee_flexion = 0", "left_knee_flexion = 60");
    const InputError on_floor = refused(step);
    CHECK(on_floor.found.find("above the floor") != std::string::npos);
    const auto raised = read(step + "height = \"19 cm\"\n");
    INFO((raised ? std::string() : to_text(raised.error())));
    REQUIRE(raised);
    CHECK(std::get<mechanics::OnContacts>(raised->exercise.body_case.support).contacts[1].level_m ==
          Approx(0.19));
    const InputError too_high = refused(step + "height = \"30 cm\"\n");
    CHECK(too_high.found.find("below what it is to touch") != std::string::npos);
    CHECK(refused(step + "height = \"300 m\"\n").key == "support.contact[2].height");
}

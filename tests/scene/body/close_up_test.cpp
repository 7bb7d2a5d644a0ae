// One joint near by: what is shown of the body, the order of axis, effort and load, and that
// nothing leaves the stage.

#include "catch.h"
#include "scene/body/body_drawing.h"
#include "scene/body/order_bar.h"
#include "scene/body/posed_exercise.h"
#include "scene/label_counts.h"
#include "setup/muscle/muscle_file.h"

#include <algorithm>

using namespace steelyard;
using namespace steelyard::scene;
using mechanics::Hinge;
using mechanics::LeverClass;

namespace {

const Point kSheet_px{940.0, 720.0};

mechanics::HingeMuscles muscles_of(const PosedExercise& posed, Hinge hinge) {
    const auto known = setup::shipped_muscles();
    REQUIRE(known);
    auto solved = mechanics::solve_muscles_at(posed.here, posed.result, hinge,
                                              mechanics::muscles_at(*known, hinge),
                                              mechanics::SharingRule::equal_stress);
    REQUIRE(solved);
    return *std::move(solved);
}

BodyStage near_stage(const PosedExercise& posed, Hinge hinge, const CloseUp& places) {
    return fit_part(posed.here, {posed.result}, {hinge}, {}, camera_of(posed.setup.view), kSheet_px,
                    close_up_margins(places, kSheet_px, 1.0));
}

Drawing near_drawing(const PosedExercise& posed, Hinge hinge, bool resting = false) {
    BodyDrawing how;
    how.name = posed.setup.head.name;
    how.axes = {hinge};
    how.muscles = muscles_of(posed, hinge);
    how.resting_muscles = resting;
    how.close_up = close_up_on(kSheet_px, how.heading_top_px, how.text_scale);
    return draw_body(posed.here, posed.result, near_stage(posed, hinge, *how.close_up), how);
}

std::optional<LeverOrder> order_at(const PosedExercise& posed, Hinge hinge) {
    return lever_order(posed.here, posed.result, hinge, muscles_of(posed, hinge));
}

int outlines_of(const Drawing& drawing, Role role) {
    return static_cast<int>(
        std::count_if(drawing.shapes.begin(), drawing.shapes.end(), [&](const Shape& shape) {
            const auto* outline = std::get_if<Outline>(&shape);
            return outline != nullptr && outline->fill == role;
        }));
}

} // namespace

TEST_CASE("the order along the bone is that of the class", "[close-up]") {
    // Classes as open anatomy texts give them: the elbow's flexors third class, the calf about the
    // ankle first class (Betts et al., Anatomy and Physiology 2e, OpenStax, chapter 9 and 11; from
    // memory for the chapters).
    const PosedExercise curl("curl-dumbbell", 0.6);
    const auto elbow = order_at(curl, Hinge::right_elbow_flexion);
    REQUIRE(elbow);
    CHECK(elbow->lever_class == LeverClass::third);
    CHECK(elbow->effort_m > 0.0);
    CHECK(elbow->effort_m < elbow->load_m);
    CHECK(words_of(*elbow) == "effort in the middle: third class");

    const PosedExercise calf("calf-raise", 0.5);
    const auto ankle = order_at(calf, Hinge::right_ankle_flexion);
    REQUIRE(ankle);
    CHECK(ankle->lever_class == LeverClass::first);
    CHECK(ankle->effort_m * ankle->load_m < 0.0); // on the two sides of the axis
    CHECK(words_of(*ankle) == "axis in the middle: first class");
}

TEST_CASE("the pull that is drawn lies so far from the joint as its moment arm says",
          "[close-up]") {
    const PosedExercise curl("curl-dumbbell", 0.6);
    const auto muscles = muscles_of(curl, Hinge::right_elbow_flexion);
    const auto pull =
        pull_mark(muscles, curl.result.placement, Hinge::right_elbow_flexion, curl.stage);
    REQUIRE(pull);
    CHECK((pull->arm.foot - pull->arm.axis).norm() ==
          Approx(pull->arm_m * curl.stage.px_per_m)); // the elbow's axis points at the eye
    CHECK((pull->arm.foot - pull->arm.axis).dot(pull->arm.along_line) == Approx(0.0).margin(1e-9));
    const auto strongest = strongest_pull(muscles);
    REQUIRE(strongest);
    for (const auto& muscle : muscles.solution.muscles)
        CHECK(muscle.tension_N <= muscles.solution.muscles[*strongest].tension_N);
}

TEST_CASE("near by a joint is larger than in the picture of the whole body", "[close-up]") {
    for (const auto& [name, hinge] : {std::pair("curl-dumbbell", Hinge::right_elbow_flexion),
                                      {"calf-raise", Hinge::right_ankle_flexion},
                                      {"lateral-raise-straight", Hinge::right_shoulder_abduction},
                                      {"squat-bar-back", Hinge::right_knee_flexion}}) {
        INFO(name);
        const PosedExercise posed(name, 0.6);
        const CloseUp places = close_up_on(kSheet_px, 34.0, 1.0);
        CHECK(near_stage(posed, hinge, places).px_per_m > 1.2 * posed.stage.px_per_m);
    }
}

TEST_CASE("near by nothing leaves the sheet and no word is covered or struck", "[close-up]") {
    LabelCounts counts;
    for (const auto& [name, hinge] : {std::pair("curl-dumbbell", Hinge::right_elbow_flexion),
                                      {"calf-raise", Hinge::right_ankle_flexion},
                                      {"lateral-raise-straight", Hinge::right_shoulder_abduction},
                                      {"squat-bar-back", Hinge::right_knee_flexion},
                                      {"leg-extension-machine", Hinge::right_knee_flexion},
                                      {"crunch", Hinge::lumbar_flexion}}) {
        const PosedExercise posed(name, 0.6);
        const Drawing drawing = near_drawing(posed, hinge);
        counts.add(drawing, 1.0, name);
        for (const Shape& shape : drawing.shapes)
            if (const auto* outline = std::get_if<Outline>(&shape))
                for (const Ring& ring : outline->rings)
                    for (const Point& corner : ring) {
                        CHECK(corner.minCoeff() >= 0.0);
                        CHECK((kSheet_px - corner).minCoeff() >= 0.0);
                    }
    }
    INFO(counts.told);
    CHECK(counts.on_words == 0);
    CHECK(counts.struck == 0);
    CHECK(counts.on_figure == 0);
    CHECK(counts.off_sheet == 0);
}

TEST_CASE("antagonists are drawn on request, and in a colour of their own", "[close-up]") {
    const PosedExercise curl("curl-dumbbell", 0.6);
    const Drawing without = near_drawing(curl, Hinge::right_elbow_flexion);
    const Drawing with = near_drawing(curl, Hinge::right_elbow_flexion, true);
    CHECK(outlines_of(without, Role::resting_muscle) == 0);
    CHECK(outlines_of(with, Role::resting_muscle) > 0);
    CHECK(outlines_of(with, Role::muscle) == outlines_of(without, Role::muscle));
    CHECK(outlines_of(without, Role::muscle) > 0);
}

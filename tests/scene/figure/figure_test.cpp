#include "catch.h"
#include "scene/body/posed_exercise.h"
#include "scene/figure/figure.h"
#include "scene/figure/ring_union.h"

#include <algorithm>
#include <filesystem>

using namespace steelyard;
using namespace steelyard::scene;
using mechanics::Segment;

namespace {

const std::vector<Camera> kCameras{side_camera(), front_camera(), above_camera(),
                                   turned(side_camera(), 0.9, 0.28),
                                   turned(front_camera(), 3.0, 0.0)};

std::vector<std::string> shipped_names() {
    const std::string ending = ".setup.toml";
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(std::string(STEELYARD_SOURCE_DIR) +
                                                                 "/assets/setups/body")) {
        const std::string file = entry.path().filename().string();
        if (file.size() > ending.size() && file.ends_with(ending))
            names.push_back(file.substr(0, file.size() - ending.size()));
    }
    return names;
}

std::vector<Outline> outlines_of(const PosedExercise& posed, const Camera& camera) {
    BodyStage stage = posed.stage;
    stage.camera = camera;
    std::vector<Shape> shapes;
    add_figure(posed.here, posed.result.placement, stage, shapes);
    std::vector<Outline> outlines;
    for (const Shape& shape : shapes)
        if (const auto* outline = std::get_if<Outline>(&shape))
            outlines.push_back(*outline);
    return outlines;
}

bool covers(const Outline& outline, const Point& point) {
    return std::any_of(outline.rings.begin(), outline.rings.end(),
                       [&](const Ring& ring) { return is_inside(point, ring); });
}

double breadth_px(const std::vector<Outline>& outlines, Role role) {
    double least = 1e9;
    double most = -1e9;
    for (const Outline& outline : outlines)
        if (outline.fill == role)
            for (const Ring& ring : outline.rings)
                for (const Point& corner : ring) {
                    least = std::min(least, corner.x());
                    most = std::max(most, corner.x());
                }
    return most - least;
}

double area_px2(const Outline& outline) {
    double sum = 0.0;
    for (const Ring& ring : outline.rings)
        sum += 0.5 * doubled_area(ring);
    return sum;
}

} // namespace

TEST_CASE("every joint of every shipped exercise lies in flesh, from every side", "[figure]") {
    int joints = 0;
    for (const std::string& name : shipped_names()) {
        const PosedExercise posed(name, 0.5);
        for (const Camera& camera : kCameras) {
            BodyStage stage = posed.stage;
            stage.camera = camera;
            const auto outlines = outlines_of(posed, camera);
            for (const mechanics::JointInfo& joint : mechanics::all_joints()) {
                if (mechanics::segment_info(joint.segment).name.find("toes") !=
                    std::string_view::npos)
                    continue; // its place is the floor under the ball of the foot
                ++joints;
                const Point at = stage.to_sheet(posed.result.placement[joint.segment].joint_m);
                INFO(name << ": " << joint.label);
                CHECK(std::any_of(outlines.begin(), outlines.end(),
                                  [&](const Outline& outline) { return covers(outline, at); }));
            }
        }
    }
    CHECK(joints > 2000);
}

TEST_CASE("a figure is few outlines of few corners, each of them one piece but the hands",
          "[figure]") {
    for (const std::string& name : shipped_names()) {
        const PosedExercise posed(name, 0.5);
        for (const Camera& camera : kCameras) {
            const auto outlines = outlines_of(posed, camera);
            std::size_t corners = 0;
            std::size_t pieces = 0;
            for (const Outline& outline : outlines)
                for (const Ring& ring : outline.rings) {
                    corners += ring.size();
                    pieces += doubled_area(ring) > 0.0 ? 1 : 0;
                }
            const auto things =
                std::count_if(outlines.begin(), outlines.end(), [](const Outline& outline) {
                    return outline.fill == Role::iron || outline.fill == Role::pad;
                });
            INFO(name);
            CHECK(outlines.size() - static_cast<std::size_t>(things) <= 26);
            CHECK(pieces <= outlines.size() + 4);
            CHECK(corners < 1600);
        }
    }
}

TEST_CASE("the far side is a shade darker, and from the front there is none", "[figure]") {
    const PosedExercise squat("squat-bar-back", 0.5);
    const auto has = [](const std::vector<Outline>& outlines, Role role) {
        return std::any_of(outlines.begin(), outlines.end(),
                           [&](const Outline& outline) { return outline.fill == role; });
    };
    const auto side = outlines_of(squat, side_camera());
    CHECK(has(side, Role::shoe));
    CHECK(has(side, Role::far_shoe));
    const auto front = outlines_of(squat, front_camera());
    CHECK(has(front, Role::shoe));
    CHECK_FALSE(has(front, Role::far_shoe));
}

TEST_CASE("who weighs more is broader, who is as heavy and taller is not", "[figure]") {
    PosedExercise light("squat-bar-back", 0.0);
    PosedExercise heavy("squat-bar-back", 0.0);
    heavy.here.body.mass_kg *= 1.44;
    const double before = breadth_px(outlines_of(light, side_camera()), Role::shirt);
    const double after = breadth_px(outlines_of(heavy, side_camera()), Role::shirt);
    CHECK(after > 1.1 * before);
    CHECK(after < 1.25 * before); // girths go with the root: 1.2
}

TEST_CASE("a hand that holds something is shut, one that hangs is open", "[figure]") {
    const PosedExercise curl("curl-dumbbell", 0.5);
    CHECK(hand_form(curl.here, Segment::right_hand) == HandForm::gripping);
    CHECK(hand_form(curl.here, Segment::left_hand) == HandForm::relaxed);
    const PosedExercise press("push-up", 0.5);
    CHECK(hand_form(press.here, Segment::left_hand) == HandForm::flat);
    const PosedExercise squat("squat-bar-back", 0.5);
    CHECK(hand_form(squat.here, Segment::left_hand) == HandForm::gripping);
}

TEST_CASE("an arm before the chest lies on it, an arm behind it under it", "[figure]") {
    PosedExercise posed("curl-dumbbell", 0.0);
    const auto order_of = [&](const Camera& camera) {
        const auto outlines = outlines_of(posed, camera);
        std::ptrdiff_t shirt = -1; // the trunk's is the largest of its colour
        double largest = 0.0;
        std::ptrdiff_t last_skin = -1;
        for (std::size_t i = 0; i < outlines.size(); ++i) {
            if (outlines[i].fill == Role::shirt && area_px2(outlines[i]) > largest) {
                largest = area_px2(outlines[i]);
                shirt = static_cast<std::ptrdiff_t>(i);
            }
            if (outlines[i].fill == Role::far_skin && area_px2(outlines[i]) > 500.0)
                last_skin = static_cast<std::ptrdiff_t>(i);
        }
        return std::pair(shirt, last_skin);
    };
    // From the right the left arm and leg hang on the far side of the trunk.
    const auto [shirt, far_skin] = order_of(side_camera());
    REQUIRE(shirt >= 0);
    REQUIRE(far_skin >= 0);
    CHECK(far_skin < shirt);
}

TEST_CASE("nothing of a figure lies below the floor that carries it", "[figure]") {
    int carried = 0;
    for (const std::string& name : shipped_names())
        for (const double progress : {0.0, 0.5, 1.0}) {
            const PosedExercise posed(name, progress);
            const auto* on = std::get_if<mechanics::OnContacts>(&posed.here.support);
            const bool on_floor =
                on != nullptr && std::any_of(on->contacts.begin(), on->contacts.end(),
                                             [](const auto& one) { return one.level_m == 0.0; });
            if (!on_floor)
                continue;
            ++carried;
            CAPTURE(name, progress);
            BodyStage stage = posed.stage;
            stage.camera = side_camera();
            const double floor_px = stage.to_sheet(mechanics::Vec3::Zero()).y();
            double lowest_px = 0.0;
            for (const Outline& outline : outlines_of(posed, side_camera()))
                if (is_of_figure(outline.fill))
                    for (const Ring& ring : outline.rings)
                        for (const Point& corner : ring)
                            lowest_px = std::max(lowest_px, corner.y());
            CHECK(lowest_px < floor_px + 1.0); // a pixel: outlines are that coarse
        }
    CHECK(carried > 30);
}

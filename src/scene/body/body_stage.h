#pragma once
// Where a body lies on the stage: from which side it is seen, and how large.

#include "mechanics/body/solve_body.h"
#include "mechanics/range/sweep.h"
#include "scene/drawing.h"
#include "setup/body/body_setup.h"

namespace steelyard::scene {

using mechanics::Vec3;

/// A direction to look from, without perspective: lengths in the plane of the sheet stay true.
struct Camera {
    Vec3 right = Vec3::UnitX(); ///< unit vector that points right on the sheet
    Vec3 up = Vec3::UnitY();    ///< unit vector that points up, square to it

    /// Unit vector towards the eye: what lies further along it is nearer.
    Vec3 toward_eye() const { return right.cross(up); }

    bool operator==(const Camera&) const = default;
};

/// From the person's right side: the sagittal plane, x forward to the right.
Camera side_camera();
/// From the front: the frontal plane; the person's right is at the left, as in a mirror's absence.
Camera front_camera();
/// From above: the transverse plane, forward to the right.
Camera above_camera();
/// From the front, the right and somewhat above.
Camera oblique_camera();
/// The camera from which an exercise is best looked at.
Camera camera_of(setup::BodyView view);
/// The camera turned about the vertical and then tipped over [rad].
Camera turned(const Camera& camera, double about_vertical_rad, double over_rad);

/// Part of the sheet and of the world that a body's stage shows.
struct BodyStage {
    Camera camera;
    Point size_px{940.0, 720.0};
    Point origin_px{470.0, 600.0}; ///< where the world's origin lies
    double px_per_m = 280.0;
    double px_per_N = 0.3; ///< the one scale of all arrows
    /// Below this height an arrow's tip would run into what is written under the body.
    double lowest_tip_px = 1e9;

    Point to_sheet(const Vec3& world_m) const {
        return origin_px + px_per_m * Point(camera.right.dot(world_m), -camera.up.dot(world_m));
    }
    /// A world vector of force on the sheet [px]; what points at the eye is short.
    Point arrow(const Vec3& force_N) const {
        return px_per_N * Point(camera.right.dot(force_N), -camera.up.dot(force_N));
    }
    /// The point of the world under a point of the sheet that is as far away as another one.
    Vec3 to_world(const Point& sheet_px, const Vec3& as_far_as_m) const {
        const Point step_m = (sheet_px - to_sheet(as_far_as_m)) / px_per_m;
        return as_far_as_m + step_m.x() * camera.right - step_m.y() * camera.up;
    }
    double depth(const Vec3& world_m) const { return camera.toward_eye().dot(world_m); }

    bool operator==(const BodyStage&) const = default;
};

/// Room kept around the body for readings on the stage [px].
struct BodyMargins {
    double left_px = 60.0;
    double right_px = 60.0;
    double top_px = 150.0;
    double bottom_px = 130.0;
};

/// An exercise solved at rest at some places of its path, 0 to 1; once where it holds still.
/// Places that cannot be solved are left out.
std::vector<mechanics::BodyResult> solved_along(const mechanics::Exercise& exercise,
                                                const std::vector<double>& places);

/// Shows the body with what it holds in all of its poses, the largest force as an arrow of a good
/// length.
/// @param shown  results at some places of the path, one or more; solved for the same body
BodyStage fit_body(const mechanics::BodyCase& body_case,
                   const std::vector<mechanics::BodyResult>& shown, const Camera& camera,
                   const Point& size_px, const BodyMargins& margins);

/// Shows the joints of some hinges and what turns about them: the limb beyond each to its end, the
/// bone before it, and the resistances that it carries.
/// @param also_m  further places to be shown
BodyStage fit_part(const mechanics::BodyCase& body_case,
                   const std::vector<mechanics::BodyResult>& shown,
                   const std::vector<mechanics::Hinge>& hinges, const std::vector<Vec3>& also_m,
                   const Camera& camera, const Point& size_px, const BodyMargins& margins);

/// Two stages of one size and one camera, each fitted with the same margins, at the smaller of
/// their scales and with their floors level: what is shown side by side can be compared by eye.
void share_scale(BodyStage& one, BodyStage& other, const BodyMargins& margins);

} // namespace steelyard::scene

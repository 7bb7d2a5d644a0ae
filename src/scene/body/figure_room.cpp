#include "scene/body/figure_room.h"

#include "mechanics/body/landmarks.h"

namespace steelyard::scene {

namespace {

using mechanics::Segment;

/// Thickness of a part, as a part of height: a little less than the figure's, for a word may come
/// close.
double thickness_of(Segment segment) {
    switch (segment) {
    case Segment::pelvis:
    case Segment::trunk:
        return 0.13;
    case Segment::head:
        return 0.08;
    case Segment::right_thigh:
    case Segment::left_thigh:
        return 0.07;
    default:
        return 0.035;
    }
}

} // namespace

void keep_figure_clear(const mechanics::Body& body, const mechanics::Placement& placement,
                       const BodyStage& stage, LabelBoard& board) {
    for (const mechanics::SegmentInfo& info : mechanics::all_segments()) {
        if (mechanics::is_girdle(info.segment))
            continue; // within the trunk
        const mechanics::SegmentFrame& frame = placement[info.segment];
        board.keep_clear(stage.to_sheet(frame.joint_m),
                         stage.to_sheet(frame.at(body[info.segment].tip_m)),
                         thickness_of(info.segment) * body.height_m * stage.px_per_m);
    }
}

} // namespace steelyard::scene

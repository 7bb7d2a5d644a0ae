#include "mechanics/body/limbs.h"

#include <utility>

namespace steelyard::mechanics {

Limb limb_of(Segment segment) {
    for (const auto& [first, limb] : {std::pair(Segment::right_upper_arm, Limb::right_arm),
                                      std::pair(Segment::left_upper_arm, Limb::left_arm),
                                      std::pair(Segment::right_thigh, Limb::right_leg),
                                      std::pair(Segment::left_thigh, Limb::left_leg)})
        if (is_at_or_beyond(segment, first))
            return limb;
    return Limb::trunk;
}

Limb mirror_of(Limb limb) {
    switch (limb) {
    case Limb::right_arm:
        return Limb::left_arm;
    case Limb::left_arm:
        return Limb::right_arm;
    case Limb::right_leg:
        return Limb::left_leg;
    case Limb::left_leg:
        return Limb::right_leg;
    case Limb::trunk:
        break;
    }
    return Limb::trunk;
}

std::vector<Hinge> hinges_of(Limb limb) {
    std::vector<Hinge> hinges;
    for (const HingeInfo& info : all_hinges())
        if (limb_of(joint_info(info.joint).segment) == limb)
            hinges.push_back(info.hinge);
    return hinges;
}

} // namespace steelyard::mechanics

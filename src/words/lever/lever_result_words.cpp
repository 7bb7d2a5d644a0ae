// Fixed words for machines.

#include "words/lever/lever_words.h"

namespace steelyard::words {

using mechanics::ClassReason;
using mechanics::LeverStatus;

std::string_view word_of(LeverStatus status) {
    switch (status) {
    case LeverStatus::ok:
        return "ok";
    case LeverStatus::effort_through_axis:
        return "effort_through_axis";
    case LeverStatus::effort_reversed:
        return "effort_reversed";
    case LeverStatus::coincident_points:
        return "coincident_points";
    case LeverStatus::friction_locks:
        return "friction_locks";
    case LeverStatus::load_through_axis:
        return "load_through_axis";
    case LeverStatus::load_reversed:
        return "load_reversed";
    case LeverStatus::supports_at_one_place:
        return "supports_at_one_place";
    case LeverStatus::first_support_lifts:
        return "first_support_lifts";
    case LeverStatus::second_support_lifts:
        return "second_support_lifts";
    }
    return "";
}

std::string_view word_of(ClassReason reason) {
    switch (reason) {
    case ClassReason::axis_between:
        return "axis_between";
    case ClassReason::load_between:
        return "load_between";
    case ClassReason::effort_between:
        return "effort_between";
    case ClassReason::no_placed_load:
        return "no_placed_load";
    case ClassReason::load_at_axis:
        return "load_at_axis";
    case ClassReason::effort_at_axis:
        return "effort_at_axis";
    case ClassReason::effort_at_load:
        return "effort_at_load";
    case ClassReason::loads_disagree:
        return "loads_disagree";
    case ClassReason::two_supports:
        return "two_supports";
    }
    return "";
}

} // namespace steelyard::words

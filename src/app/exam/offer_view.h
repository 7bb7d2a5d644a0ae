#pragma once
// What a mock exam is, before its clock starts.

#include "app/frame/layout.h"
#include "app/look/style.h"
#include "learner/course/course.h"
#include "learner/exam/exam.h"

#include <string>

namespace steelyard::app {

enum class OfferWish {
    none,
    begin,
    another, ///< instead of the one that waits
    leave,
};

/// Draws the offer: on the stage what is asked, in the column how it goes.
/// @param trouble  why there is no exam; empty when there is one
OfferWish draw_offer(const Style& style, const Layout& layout, const learner::Course& course,
                     const learner::Exam& exam, const std::string& trouble);

} // namespace steelyard::app

#pragma once
// The drawing of a question about a body: before the answer where and which way forces act, all
// arrows of one length; after it the solved body.

#include "problems/question/question.h"
#include "scene/drawing.h"
#include "setup/units/units.h"

namespace steelyard::publish {

/// The figure of an open question; an empty sheet when its body cannot be solved.
scene::Drawing open_body_figure(const problems::BodyPicture& picture, const scene::Point& size_px);

/// The solved body: sizes, moment arms to every joint in question, and the balance.
/// @param sentence  said under its name
scene::Drawing solved_body_drawing(const problems::BodyPicture& picture,
                                   const scene::Point& size_px, double text_scale, double top_px,
                                   const std::string& sentence, setup::UnitSystem units);

} // namespace steelyard::publish

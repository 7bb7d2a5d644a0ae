#pragma once
// A moving picture as GIF.

#include "publish/pictures/moving_picture.h"

#include <string>

namespace steelyard::paint {

/// The bytes of a GIF that plays the drawings without end, each scaled to fit the size and centred.
/// Its 255 colours are those that the drawings have most of; where a drawing is as the one before,
/// nothing is stored.
/// Source: GIF89a specification, W3C copy; the loop is the NETSCAPE2.0 application extension that
/// every browser reads (common practice).
tl::expected<std::string, publish::PublishError> gif_of(const publish::MovingPicture& picture,
                                                        scene::Look look, publish::PictureSize size,
                                                        const publish::Progress& progress);

} // namespace steelyard::paint

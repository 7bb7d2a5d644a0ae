#pragma once
// Paints a drawing's labels with the sheet's fonts.

#include "app/look/style.h"

namespace steelyard::app {

/// Paints one label, moved by an offset [px].
void paint_label(const scene::Label& label, const scene::Point& offset_px, const Style& style,
                 ImDrawList& list);

/// Paints every label of a drawing, moved by an offset [px].
void paint_labels(const scene::Drawing& drawing, const scene::Point& offset_px, const Style& style,
                  ImDrawList& list);

} // namespace steelyard::app

#pragma once
// A picture of a page in the graphics card's memory.

#include "publish/sheets/page_picture.h"

namespace steelyard::app {

/// Owns a texture. Needs a current OpenGL context for its whole life.
class PageTexture {
public:
    PageTexture() = default;
    PageTexture(const PageTexture&) = delete;
    PageTexture& operator=(const PageTexture&) = delete;
    ~PageTexture();

    /// Takes a picture in place of the one before.
    void load(const publish::PagePicture& picture);

    /// OpenGL's name of it; 0 before the first picture.
    unsigned name() const { return name_; }
    int width_px() const { return width_px_; }
    int height_px() const { return height_px_; }

private:
    unsigned name_ = 0;
    int width_px_ = 0;
    int height_px_ = 0;
};

} // namespace steelyard::app

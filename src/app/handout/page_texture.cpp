#include "app/handout/page_texture.h"

#include "app/platform/gl.h"

namespace steelyard::app {

PageTexture::~PageTexture() {
    if (name_ != 0)
        glDeleteTextures(1, &name_);
}

void PageTexture::load(const publish::PagePicture& picture) {
    if (name_ == 0)
        glGenTextures(1, &name_);
    width_px_ = picture.width_px;
    height_px_ = picture.height_px;
    glBindTexture(GL_TEXTURE_2D, name_);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
    glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA8, width_px_, height_px_, 0, GL_RGBA, GL_UNSIGNED_BYTE,
                 picture.rgba.data());
}

} // namespace steelyard::app

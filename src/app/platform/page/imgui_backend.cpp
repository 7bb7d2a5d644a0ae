// ImGui's own backend for OpenGL ES 3.0, compiled here so that it asks the browser nothing: it
// would read the state of OpenGL back twenty times a frame, and each time wait for the browser's
// drawing process (measured: 25 ms a frame without a graphics card). What it puts back afterwards
// is the state that our own drawing begins with.

#include <GLES3/gl3.h>

namespace {

void known_state(GLenum name, GLint* into) {
    const int numbers = name == GL_VIEWPORT || name == GL_SCISSOR_BOX ? 4 : 1;
    for (int i = 0; i < numbers; ++i)
        into[i] = 0;
    switch (name) {
    case GL_MAJOR_VERSION:
        *into = 3;
        break;
    case GL_ACTIVE_TEXTURE:
        *into = GL_TEXTURE0;
        break;
    case GL_BLEND_EQUATION_RGB:
    case GL_BLEND_EQUATION_ALPHA:
        *into = GL_FUNC_ADD;
        break;
    case GL_BLEND_SRC_RGB:
    case GL_BLEND_SRC_ALPHA:
        *into = GL_ONE;
        break;
    case GL_BLEND_DST_RGB:
    case GL_BLEND_DST_ALPHA:
        *into = GL_ONE_MINUS_SRC_ALPHA;
        break;
    default:
        break;
    }
}

GLboolean known_to_be_off(GLenum /*what*/) {
    return GL_FALSE;
}

} // namespace

#define glGetIntegerv known_state
#define glIsEnabled known_to_be_off
#define IMGUI_IMPL_OPENGL_ES3
#include <backends/imgui_impl_opengl3.cpp>

#pragma once
// OpenGL's functions, and how a shader's text begins: OpenGL 3.3 core on the desktop, OpenGL ES 3.0
// in a page. What is drawn uses only what both have.

#ifdef __EMSCRIPTEN__

#include <GLES3/gl3.h>

namespace steelyard::app {
inline constexpr const char* kShaderHeader =
    "#version 300 es\nprecision highp float;\nprecision highp int;\n";
}

#else

#include <glad/gl.h>

namespace steelyard::app {
inline constexpr const char* kShaderHeader = "#version 330 core\n";
}

#endif

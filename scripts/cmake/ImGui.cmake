# Dear ImGui from the distribution: target `imgui`, with its GLFW and OpenGL 3 backends.
# The static library of the package holds every backend; the linker takes the two that are used.

find_package(glfw3 3.3 REQUIRED)
set(OpenGL_GL_PREFERENCE GLVND)
find_package(OpenGL REQUIRED COMPONENTS OpenGL)

find_path(IMGUI_INCLUDE_DIR imgui.h PATH_SUFFIXES imgui)
find_path(IMGUI_BACKENDS_DIR imgui_impl_glfw.h PATH_SUFFIXES imgui/backends imgui)
find_library(IMGUI_LIBRARY imgui)
# Debian takes the font rasteriser that ImGui otherwise carries along from libstb-dev.
find_library(STB_LIBRARY stb)
if(NOT IMGUI_INCLUDE_DIR OR NOT IMGUI_BACKENDS_DIR OR NOT IMGUI_LIBRARY)
  message(FATAL_ERROR "Dear ImGui was not found. It needs the package libimgui-dev:\n"
                      "  scripts/install-packages.sh")
endif()

add_library(imgui INTERFACE)
target_include_directories(imgui SYSTEM INTERFACE ${IMGUI_INCLUDE_DIR} ${IMGUI_BACKENDS_DIR})
# A static library stands before what it calls on the linker's line.
target_link_libraries(imgui INTERFACE ${IMGUI_LIBRARY} $<$<BOOL:${STB_LIBRARY}>:${STB_LIBRARY}>
                      glfw OpenGL::OpenGL ${CMAKE_DL_LIBS})

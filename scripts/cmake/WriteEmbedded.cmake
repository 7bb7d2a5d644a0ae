# Run by steelyard_embed at build time: writes HEADER and SOURCE, which hold the texts of FILES
# (separated by commas).

string(REPLACE "," ";" FILES "${FILES}")
set(declarations "")
set(definitions "")
foreach(file IN LISTS FILES)
  get_filename_component(name ${file} NAME)
  string(REGEX REPLACE "\\.glsl$" "" name "${name}")
  string(REGEX MATCHALL "[A-Za-z0-9]+" words "${name}")
  set(constant k)
  foreach(word IN LISTS words)
    string(SUBSTRING "${word}" 0 1 first)
    string(SUBSTRING "${word}" 1 -1 rest)
    string(TOUPPER "${first}" first)
    string(APPEND constant "${first}${rest}")
  endforeach()
  file(READ ${file} text)
  string(APPEND declarations "extern const std::string_view ${constant};\n")
  string(APPEND definitions "const std::string_view ${constant} = R\"glsl(${text})glsl\";\n")
endforeach()

file(WRITE ${HEADER} "#pragma once
// Written by the build from shaders/. Change the shaders, not this file.

#include <string_view>

namespace steelyard::shaders {
${declarations}
} // namespace steelyard::shaders
")
file(WRITE ${SOURCE} "#include \"embedded/shaders.h\"

namespace steelyard::shaders {
${definitions}
} // namespace steelyard::shaders
")

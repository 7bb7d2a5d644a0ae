# steelyard_embed(app FILES ${CMAKE_SOURCE_DIR}/shaders/stage.frag.glsl ...)
# Puts shader texts into a target, so that the program needs no files beside it to draw:
#   #include "embedded/shaders.h"
#   steelyard::shaders::kStageFrag    // the text of stage.frag.glsl, a std::string_view
# The texts are written again when a file changes.

set(STEELYARD_EMBED_SCRIPT ${CMAKE_CURRENT_LIST_DIR}/WriteEmbedded.cmake)

function(steelyard_embed target)
  cmake_parse_arguments(EMBED "" "" "FILES" ${ARGN})
  set(folder ${CMAKE_CURRENT_BINARY_DIR}/${target}_embedded)
  set(header ${folder}/embedded/shaders.h)
  set(source ${folder}/embedded/shaders.cpp)
  string(REPLACE ";" "," files "${EMBED_FILES}")
  add_custom_command(
    OUTPUT ${header} ${source}
    COMMAND ${CMAKE_COMMAND} -D FILES=${files} -D HEADER=${header} -D SOURCE=${source}
            -P ${STEELYARD_EMBED_SCRIPT}
    DEPENDS ${EMBED_FILES} ${STEELYARD_EMBED_SCRIPT}
    COMMENT "Embedding the shaders in ${target}"
    VERBATIM)
  target_sources(${target} PRIVATE ${header} ${source})
  target_include_directories(${target} PUBLIC ${folder})
endfunction()

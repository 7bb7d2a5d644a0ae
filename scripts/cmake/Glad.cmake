# The OpenGL loader: target `glad`, for OpenGL 3.3 core, generated into the build tree by Debian's
# python3-glad. Its package holds the specification, so that nothing is fetched.

set(glad_folder ${CMAKE_BINARY_DIR}/glad)

# Debian's module belongs to Debian's interpreter, whichever python3 comes first in PATH.

if(NOT EXISTS ${glad_folder}/src/gl.c OR NOT EXISTS ${glad_folder}/include/glad/gl.h)
  message(STATUS "Generating the OpenGL 3.3 loader")
  if(STEELYARD_PYTHON)
    execute_process(
      COMMAND ${STEELYARD_PYTHON} -m glad --api gl:core=3.3 --extensions=
              --out-path ${glad_folder} --reproducible c
      RESULT_VARIABLE glad_failed
      OUTPUT_VARIABLE glad_messages
      ERROR_VARIABLE glad_messages)
  else()
    set(glad_failed 1)
    set(glad_messages "there is no /usr/bin/python3")
  endif()
  if(glad_failed)
    file(REMOVE_RECURSE ${glad_folder})
    message(FATAL_ERROR "The OpenGL loader could not be generated. It needs the package "
                        "python3-glad:\n  scripts/install-packages.sh\nWhat was said:\n"
                        "${glad_messages}")
  endif()
endif()

add_library(glad STATIC ${glad_folder}/src/gl.c)
target_include_directories(glad SYSTEM PUBLIC ${glad_folder}/include)
target_compile_options(glad PRIVATE -w)
target_link_libraries(glad PUBLIC ${CMAKE_DL_LIBS})

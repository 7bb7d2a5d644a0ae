# How every target of the project is compiled, and how a layer of src/ becomes a library.

find_program(STEELYARD_CCACHE ccache)
if(STEELYARD_CCACHE)
  set(CMAKE_C_COMPILER_LAUNCHER ${STEELYARD_CCACHE})
  set(CMAKE_CXX_COMPILER_LAUNCHER ${STEELYARD_CCACHE})
endif()

if(STEELYARD_SANITIZE)
  # Line tables and the frame pointer are all that reports need. Without -O1 the tests would take
  # eight times as long, which is more than its compiling takes.
  add_compile_options(-O1 -g1 -fno-omit-frame-pointer -fsanitize=address,undefined
                      -fno-sanitize-recover=undefined)
  add_link_options(-fsanitize=address,undefined)
endif()
if(STEELYARD_FUZZ)
  add_compile_options(-fsanitize=fuzzer-no-link)
endif()

# The same seed must give the same paper on every machine: no fused multiply-add where the source
# has two operations.
add_compile_options(-ffp-contract=off)

# Most of the time of a build goes into parsing the headers of others, and these are the same for
# most sources of a target. So several sources are compiled as one, and clang-tidy looks at them as
# one. The dev preset does without, so that a missing include is found there.
option(STEELYARD_JOIN "Compile several sources of a target as one" OFF)
# steelyard_join(target [--overload]): see joinable_sources.py
function(steelyard_join target)
  if(NOT STEELYARD_JOIN)
    return()
  endif()
  get_target_property(sources ${target} SOURCES)
  list(FILTER sources INCLUDE REGEX "\\.cpp$")
  execute_process(COMMAND ${STEELYARD_PYTHON}
                          ${CMAKE_SOURCE_DIR}/scripts/cmake/joinable_sources.py ${ARGN} ${sources}
                  WORKING_DIRECTORY ${CMAKE_CURRENT_SOURCE_DIR}
                  OUTPUT_VARIABLE groups OUTPUT_STRIP_TRAILING_WHITESPACE
                  COMMAND_ERROR_IS_FATAL ANY)
  string(REPLACE "\n" ";" groups "${groups}")
  foreach(source group IN ZIP_LISTS sources groups)
    if(NOT group STREQUAL "-")
      set_source_files_properties(${source} PROPERTIES UNITY_GROUP ${target}_${group})
    endif()
  endforeach()
  set_target_properties(${target} PROPERTIES UNITY_BUILD ON UNITY_BUILD_MODE GROUP)
  # GCC takes a local name for one that shadows a type of the neighbour; Clang tells them apart.
  target_compile_options(${target} PRIVATE $<$<CXX_COMPILER_ID:GNU>:-Wno-shadow>)
endfunction()

# The optimiser takes the other half. -O3 makes nothing of ours faster than -O2 does, and where no
# number is computed and no frame is drawn, -O1 is as good.
if(NOT EMSCRIPTEN) # a page is to be small: cmake/Web.cmake
  set(CMAKE_CXX_FLAGS_RELEASE "-O2 -DNDEBUG")
endif()
function(steelyard_optimise_little target)
  if(EMSCRIPTEN)
    return()
  endif()
  target_compile_options(${target} PRIVATE $<$<CONFIG:Release>:-O1>)
endfunction()

# A page is small as a whole, and quick where every frame passes. At -Os Emscripten draws no function
# into another, not even where that is shorter, as with each expression of Eigen's; so it goes on
# doing when -O2 follows, unless told.
#   steelyard_makes_frames(target [SOURCE...])   SOURCE: these alone, where the rest is seldom run
function(steelyard_makes_frames target)
  if(NOT EMSCRIPTEN)
    return()
  endif()
  if(ARGN)
    set_source_files_properties(${ARGN} PROPERTIES SKIP_UNITY_BUILD_INCLUSION ON
                                COMPILE_OPTIONS "-O2;-finline-functions")
  else()
    target_compile_options(${target} PRIVATE -O2 -finline-functions)
  endif()
endfunction()

# GCC 12 and 13 warn without reason of overlapping copies where a text is put before a std::string
# (GCC bug 105651), so that one warning is left out.
function(steelyard_own_code target)
  target_compile_options(${target} PRIVATE -Wall -Wextra -Wconversion -Wshadow
                         $<$<BOOL:${STEELYARD_WERROR}>:-Werror>
                         $<$<CXX_COMPILER_ID:GNU>:-Wno-restrict>)
  target_include_directories(${target} PUBLIC ${CMAKE_SOURCE_DIR}/src)
endfunction()

# steelyard_layer(mechanics SOURCES a.cpp ... USES setup Eigen3::Eigen ...)
# One static library per folder of src/, named after it, so that an include of a layer that is not
# listed here does not link. USES takes names of other layers or of imported targets.
function(steelyard_layer name)
  cmake_parse_arguments(LAYER "" "" "SOURCES;USES" ${ARGN})
  add_library(${name} STATIC ${LAYER_SOURCES})
  steelyard_own_code(${name})
  target_link_libraries(${name} PUBLIC ${LAYER_USES})
  steelyard_join(${name} --overload)
endfunction()

# steelyard_test(mechanics SOURCES a_test.cpp ... USES mechanics)
# One Catch2 program per folder of tests/, run by ctest under the folder's name.
function(steelyard_test name)
  cmake_parse_arguments(SUITE "" "" "SOURCES;USES" ${ARGN})
  add_executable(${name}_tests ${SUITE_SOURCES})
  steelyard_own_code(${name}_tests)
  target_include_directories(${name}_tests PRIVATE ${CMAKE_SOURCE_DIR}/tests)
  target_compile_definitions(${name}_tests PRIVATE
                             STEELYARD_SOURCE_DIR="${CMAKE_SOURCE_DIR}")
  target_link_libraries(${name}_tests PRIVATE ${SUITE_USES} Catch2::Catch2WithMain)
  steelyard_optimise_little(${name}_tests)
  steelyard_join(${name}_tests)
  add_test(NAME ${name} COMMAND ${name}_tests)
endfunction()

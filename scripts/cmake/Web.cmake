# A page in a browser instead of a program: what find_package would find on a desktop. Libraries that
# are headers are Debian's own, linked one by one into a folder, so that no header of this machine's
# system is seen; the others are compiled from Debian's source packages, which scripts/web.sh fetches.
#   STEELYARD_WEB_SOURCES  holds imgui/, sqlite3/ (its amalgamation) and pugixml/

set(STEELYARD_WEB_SOURCES ${CMAKE_SOURCE_DIR}/build/web-sources CACHE PATH
    "Sources of libraries that are compiled for the page")

set(headers ${CMAKE_BINARY_DIR}/headers)
file(MAKE_DIRECTORY ${headers})
foreach(header /usr/include/eigen3/Eigen /usr/include/fmt /usr/include/tl /usr/include/fast_float
               /usr/include/boost /usr/include/nlohmann /usr/include/toml++)
  get_filename_component(name ${header} NAME)
  file(CREATE_LINK ${header} ${headers}/${name} SYMBOLIC)
endforeach()
set(TOMLPLUSPLUS_INCLUDE_DIR ${headers} CACHE PATH "")

# Only the command line uses exceptions, and it is not in a page; without them it is a third smaller.
add_compile_options(-fno-exceptions)
add_compile_definitions(JSON_NOEXCEPTION FMT_EXCEPTIONS=0 FMT_HEADER_ONLY TOML_EXCEPTIONS=0
                        PUGIXML_NO_EXCEPTIONS PUGIXML_NO_XPATH BOOST_NO_EXCEPTIONS
                        BOOST_EXCEPTION_DISABLE)
set(CMAKE_CXX_FLAGS_RELEASE "-Os -DNDEBUG")
set(CMAKE_C_FLAGS_RELEASE "-Oz -DNDEBUG")

function(steelyard_headers name)
  add_library(${name} INTERFACE IMPORTED GLOBAL)
  target_include_directories(${name} SYSTEM INTERFACE ${headers})
endfunction()
foreach(name Eigen3::Eigen fmt::fmt tl::expected FastFloat::fast_float Boost::headers
             nlohmann_json::nlohmann_json Threads::Threads)
  steelyard_headers(${name})
endforeach()

function(steelyard_compiled name)
  cmake_parse_arguments(LIB "" "" "SOURCES;INCLUDES;DEFINES" ${ARGN})
  string(REPLACE "::" "_" target ${name})
  add_library(${target} STATIC ${LIB_SOURCES})
  target_include_directories(${target} SYSTEM PUBLIC ${LIB_INCLUDES})
  target_compile_definitions(${target} PRIVATE ${LIB_DEFINES})
  target_compile_options(${target} PRIVATE -w)
  if(NOT target STREQUAL name)
    add_library(${name} ALIAS ${target})
  endif()
endfunction()
set(from ${STEELYARD_WEB_SOURCES})
steelyard_compiled(imgui
  SOURCES ${from}/imgui/imgui.cpp ${from}/imgui/imgui_draw.cpp ${from}/imgui/imgui_tables.cpp
          ${from}/imgui/imgui_widgets.cpp ${from}/imgui/misc/cpp/imgui_stdlib.cpp
  INCLUDES ${from}/imgui ${from}/imgui/backends ${from}/imgui/misc/cpp)
target_compile_options(imgui PRIVATE -O2 -finline-functions) # each frame passes here
steelyard_compiled(SQLite::SQLite3
  SOURCES ${from}/sqlite3/sqlite3.c INCLUDES ${from}/sqlite3
  DEFINES SQLITE_THREADSAFE=0 SQLITE_OMIT_LOAD_EXTENSION SQLITE_DQS=0 SQLITE_DEFAULT_MEMSTATUS=0
          SQLITE_OMIT_DEPRECATED SQLITE_OMIT_SHARED_CACHE SQLITE_OMIT_PROGRESS_CALLBACK
          SQLITE_OMIT_JSON SQLITE_OMIT_DECLTYPE SQLITE_OMIT_TRACE # what the record has no use for
          SQLITE_OMIT_WAL) # a rollback journal instead: at rest the record is one file to be kept
steelyard_compiled(pugixml::pugixml
  SOURCES ${from}/pugixml/src/pugixml.cpp INCLUDES ${from}/pugixml/src)
# Link options that put all that the program reads where it looks for it; the README's pictures are
# none of it, nor is what tells authors how to write a file.
function(steelyard_data_options how result)
  set(options "SHELL:--exclude-file *.md")
  foreach(folder assets/blueprints assets/body assets/learner assets/lessons assets/muscles
                 assets/pages assets/setups assets/stances question_bank)
    list(APPEND options "SHELL:--${how} ${CMAKE_SOURCE_DIR}/${folder}@/usr/share/steelyard/${folder}")
  endforeach()
  set(${result} ${options} PARENT_SCOPE)
endfunction()

# All of these are here already, whichever way they are looked for.
foreach(package Eigen3 fmt tl-expected FastFloat Boost nlohmann_json Threads SQLite3 pugixml)
  file(WRITE ${CMAKE_BINARY_DIR}/found/Find${package}.cmake "set(${package}_FOUND TRUE)\n")
endforeach()
file(WRITE ${CMAKE_BINARY_DIR}/found/Eigen3Config.cmake "")
file(WRITE ${CMAKE_BINARY_DIR}/found/Eigen3ConfigVersion.cmake "set(PACKAGE_VERSION_COMPATIBLE TRUE)\n")
set(Eigen3_DIR ${CMAKE_BINARY_DIR}/found CACHE PATH "")
list(PREPEND CMAKE_MODULE_PATH ${CMAKE_BINARY_DIR}/found)

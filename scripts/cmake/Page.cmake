# The program of a page: index.html with its script, its code, and its data as one file, so that a
# part of them is never taken for all.

steelyard_data_options(preload-file preloaded_data)
set(page ${CMAKE_CURRENT_SOURCE_DIR}/app/platform/page)
set_target_properties(steelyard PROPERTIES
  SUFFIX .html
  LINK_DEPENDS "${page}/shell.html;${page}/page.js")
target_link_options(steelyard PRIVATE
  -Oz -lidbfs.js -sMINIFY_HTML=0 -sMIN_WEBGL_VERSION=2 -sMAX_WEBGL_VERSION=2
  -sALLOW_MEMORY_GROWTH=1 -sFORCE_FILESYSTEM=1 -sEXPORTED_RUNTIME_METHODS=FS,ccall
  "SHELL:--shell-file ${page}/shell.html" "SHELL:--pre-js ${page}/page.js"
  ${preloaded_data}
  "SHELL:--preload-file ${CMAKE_BINARY_DIR}/fonts@/usr/share/fonts/opentype/inter")

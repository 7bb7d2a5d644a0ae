# Installing, and the .deb that scripts/package.sh makes: the program, its data, what a menu needs,
# and the licences of all that is linked into it.

include(GNUInstallDirs)
set(package_folder ${CMAKE_SOURCE_DIR}/scripts/package)

install(TARGETS steelyard RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
install(DIRECTORY ${CMAKE_SOURCE_DIR}/assets ${CMAKE_SOURCE_DIR}/question_bank
        DESTINATION ${CMAKE_INSTALL_DATADIR}/steelyard
        PATTERN pictures EXCLUDE)
install(FILES ${package_folder}/steelyard.desktop
        DESTINATION ${CMAKE_INSTALL_DATADIR}/applications)
install(FILES ${package_folder}/steelyard.metainfo.xml DESTINATION ${CMAKE_INSTALL_DATADIR}/metainfo)
install(FILES ${package_folder}/steelyard.svg
        DESTINATION ${CMAKE_INSTALL_DATADIR}/icons/hicolor/scalable/apps)

# The manual page and what completes words in shells are what the program says of itself, and the
# notices are those of the packages it was built with: all are written once the program is built.
set(documents_folder ${CMAKE_BINARY_DIR}/documents)
configure_file(${package_folder}/changelog.in ${documents_folder}/changelog @ONLY)
add_custom_command(
  OUTPUT ${documents_folder}/steelyard.1.gz ${documents_folder}/changelog.gz
         ${documents_folder}/copyright ${documents_folder}/steelyard.bash
         ${documents_folder}/_steelyard ${documents_folder}/steelyard.fish
  COMMAND steelyard reference man > ${documents_folder}/steelyard.1
  COMMAND gzip -9nf ${documents_folder}/steelyard.1
  COMMAND steelyard reference bash > ${documents_folder}/steelyard.bash
  COMMAND steelyard reference zsh > ${documents_folder}/_steelyard
  COMMAND steelyard reference fish > ${documents_folder}/steelyard.fish
  COMMAND ${STEELYARD_PYTHON} ${package_folder}/notices.py ${CMAKE_SOURCE_DIR}/LICENSE
          ${documents_folder}/copyright
  COMMAND gzip -9nfk ${documents_folder}/changelog
  DEPENDS steelyard ${package_folder}/notices.py ${documents_folder}/changelog
  COMMENT "Writing the manual page, completions and the notices"
  VERBATIM)
add_custom_target(documents DEPENDS ${documents_folder}/copyright)
install(FILES ${documents_folder}/steelyard.1.gz DESTINATION ${CMAKE_INSTALL_MANDIR}/man1 OPTIONAL)
install(FILES ${documents_folder}/steelyard.bash RENAME steelyard
        DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions OPTIONAL)
install(FILES ${documents_folder}/_steelyard
        DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/vendor-completions OPTIONAL)
install(FILES ${documents_folder}/steelyard.fish
        DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d OPTIONAL)
install(FILES ${documents_folder}/changelog.gz ${documents_folder}/copyright
        DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/steelyard OPTIONAL)

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME steelyard)
set(CPACK_PACKAGE_CONTACT "The Steelyard authors <authors@steelyard.invalid>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "simulator and question generator for levers and torque")
set(CPACK_PACKAGE_DESCRIPTION
"How much do the hips hold, how much the low back, and what changes when
the bar drifts away? Steelyard shows lever classes, moment arms and torque
on beams and on the human body while one drags, asks questions made from
the same setups, and prints worksheets with keys.

For people who teach strength and movement, for candidates of
certification exams, and for coaches. Educational, not medical advice.")
set(CPACK_STRIP_FILES ON)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS
    OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION education)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
# Taken from the machine while it runs, so no linker knows of them: the letters and OpenGL.
set(CPACK_DEBIAN_PACKAGE_DEPENDS "fonts-inter, libgl1, libgl1-mesa-dri")
include(CPack)

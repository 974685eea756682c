# SPDX-License-Identifier: GPL-3.0-or-later
# What is installed where, and the Debian package of it. sh cmake/package.sh makes and checks it.
include(GNUInstallDirs)
set(data ${CMAKE_INSTALL_DATADIR}/coilwright)
install(TARGETS coilwright RUNTIME)
file(GLOB catalog CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/resources/*.json)
install(FILES ${catalog} DESTINATION ${data})
install(DIRECTORY resources/fixtures resources/handbook resources/languages resources/prices resources/schema resources/winders resources/words demo-projects
  DESTINATION ${data})
install(PROGRAMS resources/spread/array.sh DESTINATION ${data}/spread)

set(desktop ${PROJECT_SOURCE_DIR}/resources/desktop)
set(icons ${CMAKE_INSTALL_DATADIR}/icons/hicolor/scalable)
install(FILES ${desktop}/coilwright.desktop DESTINATION ${CMAKE_INSTALL_DATADIR}/applications)
install(FILES ${desktop}/coilwright.metainfo.xml DESTINATION ${CMAKE_INSTALL_DATADIR}/metainfo)
install(FILES ${desktop}/coilwright-mime.xml DESTINATION ${CMAKE_INSTALL_DATADIR}/mime/packages RENAME coilwright.xml)
install(FILES resources/icons/coilwright.svg DESTINATION ${icons}/apps)
install(FILES resources/icons/coilwright-design.svg DESTINATION ${icons}/mimetypes)
install(FILES ${desktop}/copyright DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/coilwright)

# Debian wants these compressed, and without a time inside, so that the same sources give the same package.
file(WRITE ${PROJECT_BINARY_DIR}/changelog "coilwright (${PROJECT_VERSION}) unstable; urgency=medium

  * Release ${PROJECT_VERSION}.

 -- Coilwright maintainers <maintainers@coilwright.invalid>  Thu, 26 Nov 2026 12:00:00 +0000
")
find_program(GZIP gzip REQUIRED)
foreach(text ${PROJECT_BINARY_DIR}/changelog ${desktop}/coilwright.1)
  get_filename_component(name ${text} NAME)
  add_custom_command(OUTPUT ${PROJECT_BINARY_DIR}/${name}.gz DEPENDS ${text} VERBATIM
    COMMAND sh -c "${GZIP} -9nc '${text}' >'${PROJECT_BINARY_DIR}/${name}.gz'")
endforeach()
add_custom_target(package_texts ALL DEPENDS ${PROJECT_BINARY_DIR}/changelog.gz ${PROJECT_BINARY_DIR}/coilwright.1.gz)
install(FILES ${PROJECT_BINARY_DIR}/changelog.gz DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/coilwright)
install(FILES ${PROJECT_BINARY_DIR}/coilwright.1.gz DESTINATION ${CMAKE_INSTALL_MANDIR}/man1)

# The program alone is packed; tests need not be built for it.
set(CMAKE_SKIP_INSTALL_ALL_DEPENDENCY ON)
set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME coilwright)
set(CPACK_PACKAGE_CONTACT "Coilwright maintainers <maintainers@coilwright.invalid>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "design desk for audio transformers on laminated cores")
set(CPACK_DEBIAN_PACKAGE_DESCRIPTION "Coilwright shows an audio transformer to scale, and how it will behave
before one is wound: response, impedance, level, distortion, noise, leakage.
It writes the papers of the shop, winding programs and datasheets.")
set(CPACK_STRIP_FILES ON)
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE
  WORLD_READ WORLD_EXECUTE)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
# Fonts are not linked, so no tool finds them.
set(CPACK_DEBIAN_PACKAGE_DEPENDS "fonts-dejavu-core, hicolor-icon-theme")
set(CPACK_DEBIAN_PACKAGE_RECOMMENDS "qt6-wayland")
include(CPack)

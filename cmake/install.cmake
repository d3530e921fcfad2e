# Install rules: the headers, and what find_package(weldloop CONFIG) needs to find them.

include(CMakePackageConfigHelpers)
include(GNUInstallDirs)

# Header-only, hence the same on every architecture: share/, not lib/.
set(package_dir "${CMAKE_INSTALL_DATADIR}/cmake/weldloop")

# Two export sets, because a set is refused as a whole where one of its targets lacks a dependency.
install(TARGETS weldloop weldloop_test EXPORT weldloop-targets FILE_SET HEADERS)
install(TARGETS weldloop_io EXPORT weldloop-io-targets FILE_SET HEADERS)
install(EXPORT weldloop-targets NAMESPACE weldloop:: DESTINATION "${package_dir}")
install(EXPORT weldloop-io-targets NAMESPACE weldloop:: DESTINATION "${package_dir}")

configure_package_config_file(
    cmake/weldloop-config.cmake.in "${PROJECT_BINARY_DIR}/weldloop-config.cmake" INSTALL_DESTINATION "${package_dir}")
# While the major version is 0, a new minor version may break callers.
write_basic_package_version_file(
    "${PROJECT_BINARY_DIR}/weldloop-config-version.cmake" COMPATIBILITY SameMinorVersion ARCH_INDEPENDENT)
install(FILES "${PROJECT_BINARY_DIR}/weldloop-config.cmake" "${PROJECT_BINARY_DIR}/weldloop-config-version.cmake"
              cmake/weldloop-io-dependencies.cmake
        DESTINATION "${package_dir}")

# For builds that ask pkg-config: headers and no library. It may be moved as a tree.
foreach(asked IN ITEMS weldloop weldloop-test)
    configure_file(cmake/${asked}.pc.in "${PROJECT_BINARY_DIR}/${asked}.pc" @ONLY)
    install(FILES "${PROJECT_BINARY_DIR}/${asked}.pc" DESTINATION "${CMAKE_INSTALL_DATADIR}/pkgconfig")
endforeach()

# What a report's JSON holds, for those who read it.
install(FILES docs/schema/station_report.schema.json DESTINATION "${CMAKE_INSTALL_DATADIR}/weldloop")

install(FILES LICENSE DESTINATION "${CMAKE_INSTALL_DATADIR}/doc/weldloop")

# A Debian package by cpack -G DEB in the build folder. It is the same for every architecture; what weldloop::io needs is
# suggested, because most programs do without it.
set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME libweldloop-dev)
set(CPACK_PACKAGE_CONTACT "the weldloop developers <weldloop@localhost>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "${PROJECT_DESCRIPTION}")
set(CPACK_RESOURCE_FILE_LICENSE "${PROJECT_SOURCE_DIR}/LICENSE")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_DEBIAN_PACKAGE_ARCHITECTURE all)
set(CPACK_DEBIAN_PACKAGE_SECTION libdevel)
set(CPACK_DEBIAN_PACKAGE_DEPENDS "libboost-dev (>= 1.74) | libboost1.81-dev")
set(CPACK_DEBIAN_PACKAGE_SUGGESTS "nlohmann-json3-dev (>= 3.11), libtomlplusplus-dev")
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
include(CPack)

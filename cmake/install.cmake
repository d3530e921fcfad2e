# Install rules: the headers, and what find_package(weldloop CONFIG) needs to find them.

include(CMakePackageConfigHelpers)
include(GNUInstallDirs)

# Header-only, hence the same on every architecture: share/, not lib/.
set(package_dir "${CMAKE_INSTALL_DATADIR}/cmake/weldloop")

# Two export sets, because a set is refused as a whole where one of its targets lacks a dependency.
install(TARGETS weldloop EXPORT weldloop-targets FILE_SET HEADERS)
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
install(FILES LICENSE DESTINATION "${CMAKE_INSTALL_DATADIR}/doc/weldloop")

# Installs the build tree BUILD_DIR to an empty PREFIX: a header left over from an older run must not help.
file(REMOVE_RECURSE "${PREFIX}")
execute_process(COMMAND "${CMAKE_COMMAND}" --install "${BUILD_DIR}" --prefix "${PREFIX}" COMMAND_ERROR_IS_FATAL ANY)
if(NOT EXISTS "${PREFIX}/share/weldloop/station_report.schema.json")
    message(FATAL_ERROR "the schema of the reports is not installed")
endif()

# What weldloop::io needs besides weldloop::weldloop. Used by the build and, installed, by weldloop-config.cmake.
#
# Defines weldloop::toml_headers, and sets weldloop_io_FOUND and weldloop_io_MISSING (what was not found).
# toml++ is taken as headers: the target some distributions ship links a library and sets TOML_HEADER_ONLY=0.

set(weldloop_io_MISSING "")

find_package(nlohmann_json 3.11 CONFIG QUIET)
if(NOT nlohmann_json_FOUND)
    list(APPEND weldloop_io_MISSING "nlohmann_json (3.11 or newer)")
endif()

find_path(WELDLOOP_TOML_INCLUDE_DIR toml++/toml.h DOC "Folder that holds toml++/toml.h")
mark_as_advanced(WELDLOOP_TOML_INCLUDE_DIR)
if(NOT WELDLOOP_TOML_INCLUDE_DIR)
    list(APPEND weldloop_io_MISSING "toml++/toml.h")
elseif(NOT TARGET weldloop::toml_headers)
    add_library(weldloop::toml_headers INTERFACE IMPORTED GLOBAL)
    target_include_directories(weldloop::toml_headers INTERFACE "${WELDLOOP_TOML_INCLUDE_DIR}")
    target_compile_definitions(weldloop::toml_headers INTERFACE TOML_HEADER_ONLY=1)
endif()

if(weldloop_io_MISSING)
    set(weldloop_io_FOUND FALSE)
    list(JOIN weldloop_io_MISSING ", " weldloop_io_MISSING)
else()
    set(weldloop_io_FOUND TRUE)
endif()

# Writes the whole library but io/ as one file: cmake -DINCLUDE_DIR=include -DOUT=weldloop.hpp -P cmake/single_header.cmake
# The bodies are always in it: WELDLOOP_BODIES_APART has no effect there.

cmake_policy(VERSION 3.24)

set(done "")
set(whole "")

# Appends a header where it is first asked for, in the order in which a compiler would meet it.
function(append_header name)
    if(name IN_LIST done)
        return()
    endif()
    list(APPEND done "${name}")
    file(READ "${INCLUDE_DIR}/${name}" rest)
    string(REPLACE "#pragma once\n" "" rest "${rest}")
    # what a header leaves out where the bodies stand apart is wanted here
    string(REGEX REPLACE "#ifndef WELDLOOP_BODIES_APART\n((#include <weldloop/[a-z_/]+\\.hpp>\n|\n)+)#endif\n" "\\1" rest
                         "${rest}")
    if(rest MATCHES "#ifn?def WELDLOOP_BODIES_APART")
        message(FATAL_ERROR "${name}: WELDLOOP_BODIES_APART guards more than includes")
    endif()
    while(TRUE)
        string(FIND "${rest}" "#include <weldloop/" at)
        if(at EQUAL -1)
            break()
        endif()
        string(SUBSTRING "${rest}" 0 ${at} before)
        string(SUBSTRING "${rest}" ${at} -1 rest)
        string(FIND "${rest}" "\n" line_end)
        string(SUBSTRING "${rest}" 0 ${line_end} line)
        string(SUBSTRING "${rest}" ${line_end} -1 rest)
        string(REGEX REPLACE "^#include <([a-z_/]+\\.hpp)>.*$" "\\1" wanted "${line}")
        string(APPEND whole "${before}")
        append_header("${wanted}")
    endwhile()
    string(APPEND whole "${rest}")
    set(done "${done}" PARENT_SCOPE)
    set(whole "${whole}" PARENT_SCOPE)
endfunction()

append_header(weldloop/weldloop.hpp)
string(REGEX REPLACE "\n\n\n+" "\n\n" whole "${whole}")
get_filename_component(top "${CMAKE_CURRENT_LIST_DIR}" DIRECTORY)
file(READ "${top}/LICENSE" license)
# written at once, so that nobody meets half a file
file(WRITE "${OUT}.part" "#pragma once\n/*\n${license}*/\n${whole}")
file(RENAME "${OUT}.part" "${OUT}")

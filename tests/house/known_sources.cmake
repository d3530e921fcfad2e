# Writes OUT, a header that holds every source that the headers in INCLUDE_DIR declare, with its name and its header.
cmake_policy(VERSION 3.24)

file(GLOB_RECURSE headers RELATIVE "${INCLUDE_DIR}" "${INCLUDE_DIR}/weldloop/*.hpp")
list(FILTER headers EXCLUDE REGEX "^weldloop/io/") # these need more than Boost, and declare none
list(SORT headers)
set(includes "")
set(rows "")
foreach(header IN LISTS headers)
    file(STRINGS "${INCLUDE_DIR}/${header}" lines REGEX "^inline constexpr source [a-z0-9_]+[{ ]|^namespace |^}  // namespace ")
    set(scope "")
    set(declares FALSE)
    foreach(line IN LISTS lines)
        if(line MATCHES "^namespace (weldloop[a-z_:]*) ")
            set(scope "${CMAKE_MATCH_1}")
        elseif(line MATCHES "^namespace ([a-z_]+) ")
            set(scope "weldloop::${CMAKE_MATCH_1}")
        elseif(line MATCHES "^}")
            set(scope "weldloop")
        elseif(line MATCHES "source ([a-z0-9_]+)")
            set(declares TRUE)
            string(APPEND rows "    known_source{\"${CMAKE_MATCH_1}\", \"${header}\", ${scope}::${CMAKE_MATCH_1}},\n")
        endif()
    endforeach()
    if(declares)
        string(APPEND includes "#include <${header}>\n")
    endif()
endforeach()
file(
    WRITE "${OUT}.new"
    "#pragma once\n#include <string_view>\n\n${includes}\nnamespace house {\n\n"
    "struct known_source {\n    std::string_view key, header;\n    weldloop::source what;\n};\n\n"
    "inline constexpr known_source known_sources[] = {\n${rows}};\n\n}  // namespace house\n")
file(COPY_FILE "${OUT}.new" "${OUT}" ONLY_IF_DIFFERENT)

# Texts of a small site by page_texts.cmake, searched by find.js: what must come first, what is said where nothing does.
cmake_policy(VERSION 3.24)
include("${CMAKE_CURRENT_LIST_DIR}/small_site.cmake")

if(NOT NODE)
    message("The search of the pages is not tried: no node here")
    return()
endif()
small_site("${WORK}")
execute_process(COMMAND "${CMAKE_COMMAND}" "-DPAGES=${WORK}" -DLEAST=4 -P "${DOCS}/page_texts.cmake" COMMAND_ERROR_IS_FATAL ANY)
function(searched queries status_to said_to)
    file(WRITE "${WORK}/queries.txt" "${queries}")
    execute_process(COMMAND "${NODE}" "${DOCS}/check_find.js" "${WORK}" "${DOCS}/find.js" "${WORK}/queries.txt"
                    RESULT_VARIABLE status OUTPUT_VARIABLE said ERROR_VARIABLE complained)
    set(${status_to} "${status}" PARENT_SCOPE)
    set(${said_to} "${said}${complained}" PARENT_SCOPE)
endfunction()
searched("hot clamp | answers_page.html#hot
my clamp is hot: what do I look at first? | > No section has all of these words. Nearest:
My clamp is HOT | answers_page.html#hot
lead | answers_page.html#leads
leads 400 | answers_page.html#leads
rust | answers_page.html#hot
spots | theory_page.html#spots
a\\b | theory_page.html#spots
<x> | theory_page.html#spots
& \"scale\" | answers_page.html#hot
begin | index.html
zebra | > No section has these words.
rust zebra | > No section has all of these words. Nearest:
" status said)
if(NOT status EQUAL 0 OR NOT said MATCHES "13 searches find")
    message(FATAL_ERROR "${said}")
endif()
# and it can fail
searched("rust | theory_page.html#spots\n" status said)
if(status EQUAL 0 OR NOT said MATCHES "theory_page.html#spots wanted, answers_page.html#hot found")
    message(FATAL_ERROR "a wrong order was let through: ${said}")
endif()
file(REMOVE "${WORK}/theory_page.html")
searched("spots | theory_page.html#spots\n" status said)
if(status EQUAL 0 OR NOT said MATCHES "which is no page")
    message(FATAL_ERROR "a search that leads nowhere was let through: ${said}")
endif()

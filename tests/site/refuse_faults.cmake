# check_pages.cmake lets a sound small site through and refuses it with any one fault; so does page_texts.cmake with a page
# that has lost its title.
cmake_policy(VERSION 3.24)
include("${CMAKE_CURRENT_LIST_DIR}/small_site.cmake")

function(checked status_to said_to script least)
    execute_process(COMMAND "${CMAKE_COMMAND}" "-DPAGES=${WORK}" "-DLEAST=${least}" -P "${DOCS}/${script}"
                    RESULT_VARIABLE status OUTPUT_VARIABLE said ERROR_VARIABLE complained)
    set(${status_to} "${status}" PARENT_SCOPE)
    set(${said_to} "${said}${complained}" PARENT_SCOPE)
endfunction()
function(must_pass script)
    checked(status said ${script} 4)
    if(NOT status EQUAL 0)
        message(FATAL_ERROR "${script} refuses a sound site: ${said}")
    endif()
endfunction()
function(must_refuse what script least)
    checked(status said ${script} ${least})
    if(status EQUAL 0)
        message(FATAL_ERROR "${script} lets ${what} through")
    endif()
endfunction()

small_site("${WORK}")
must_pass(check_pages.cmake)
must_pass(page_texts.cmake)
must_refuse("a site that lost its pages" check_pages.cmake 100)
must_refuse("a site that lost its pages" page_texts.cmake 30)
foreach(fault IN ITEMS
        "<script src=\"https://example.org/x.js\"></script>"
        "<script src='//example.org/x.js'></script>"
        "<link href=\"https://example.org/x.css\" rel=\"stylesheet\"/>"
        "<img src=\"http://example.org/x.png\"/>"
        "<object data=\"https://example.org/x.svg\"></object>"
        "<style>@import 'x.css';</style>"
        "<p style=\"background:url(https://example.org/x.woff)\"></p>"
        "<p>\\f$ x \\f$</p>"
        "<p>raw \\ilinebr &lt;td&gt;</p>"
        "<p>**<code>1/0</code>**</p>"
        "<a href=\"no_page.html\">gone</a>"
        "<a href=\"answers_page.html#no_place\">gone</a>"
        "<a href=\"#no_place\">gone</a>")
    small_site("${WORK}")
    file(APPEND "${WORK}/theory_page.html" "${fault}\n")
    must_refuse("${fault}" check_pages.cmake 4)
endforeach()
small_site("${WORK}")
file(WRITE "${WORK}/x.css" "@font-face { src: url(https://example.org/x.woff); }\n")
must_refuse("a font of another host" check_pages.cmake 4)
small_site("${WORK}")
file(WRITE "${WORK}/theory_page.html" "<div class=\"contents\">no title</div><!-- contents -->\n")
must_refuse("a page without a title" page_texts.cmake 4)

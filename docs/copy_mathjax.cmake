# Copies the PARTS of the folder FROM beside the PAGES, links followed, so that they work wherever they lie.
foreach(part IN LISTS PARTS)
    cmake_path(GET part PARENT_PATH folder)
    file(COPY "${FROM}/${part}" DESTINATION "${PAGES}/mathjax/${folder}" FOLLOW_SYMLINK_CHAIN)
endforeach()

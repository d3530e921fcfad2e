# The warnings our own programs are built with. Never put on the library's targets: they would reach its users.
# Whether a warning is an error is up to CMAKE_COMPILE_WARNING_AS_ERROR, which the presets set.

function(weldloop_warnings target)
    target_compile_options(
        ${target}
        PRIVATE -Wall
                -Wextra
                -Wpedantic
                -Wconversion
                -Wsign-conversion
                -Wshadow
                -Wnon-virtual-dtor
                -Wold-style-cast
                -Wdouble-promotion)
endfunction()

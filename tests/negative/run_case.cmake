# Compiles one case twice, without and with CASE_FAIL. The twin must compile; the wrong code must not, and every
# `// expect: <regex>` of the file must match what the compiler says (`expect-gcc:` and `expect-clang:` for that
# compiler only). The twin is what makes a refusal count: without it a missing header would do.
#
# `// at-most-gcc: 20` (`at-most-clang:`) bounds the lines of what the compiler says: a mistake is answered, not recited.
# Flags may follow the number: it is bounded so with them.
#
# `// flags-of-the-wrong: -fno-exceptions` are given beside CASE_FAIL.
#
# Wanted: CASE_FILE, COMPILER, COMPILER_ID, INCLUDE_DIRS

cmake_policy(VERSION 3.24)

# Not by FATAL_ERROR alone, which wraps the text so that ctest could not match it.
function(refuse text)
    message(NOTICE "${CASE_FILE}: ${text}")
    message(FATAL_ERROR "The case is refused.")
endfunction()

set(command "${COMPILER}" -std=c++20 -fsyntax-only)
foreach(dir IN LISTS INCLUDE_DIRS)
    list(APPEND command "-I${dir}")
endforeach()
set(ENV{LC_ALL} C)  # plain quotes and English

if(COMPILER_ID STREQUAL "GNU")
    set(own "gcc")
else()
    set(own "clang")
endif()
file(STRINGS "${CASE_FILE}" lines REGEX "^// expect(-${own})?: ")
if(NOT lines)
    refuse("no line 'expect:' for this compiler")
endif()

execute_process(COMMAND ${command} "${CASE_FILE}" RESULT_VARIABLE failed ERROR_VARIABLE diagnostic)
if(failed)
    refuse("the twin does not compile:\n${diagnostic}")
endif()

file(STRINGS "${CASE_FILE}" flags REGEX "^// flags-of-the-wrong: ")
string(REGEX REPLACE "^// [^:]*: " "" flags "${flags}")
execute_process(COMMAND ${command} -DCASE_FAIL ${flags} "${CASE_FILE}" RESULT_VARIABLE failed ERROR_VARIABLE diagnostic)
if(NOT failed)
    refuse("the wrong code compiles but must not")
endif()
foreach(line IN LISTS lines)
    string(REGEX REPLACE "^// expect[^:]*: " "" expected "${line}")
    if(NOT diagnostic MATCHES "${expected}")
        refuse("the diagnostic does not match '${expected}':\n${diagnostic}")
    endif()
endforeach()

file(STRINGS "${CASE_FILE}" bounds REGEX "^// at-most-${own}: ")
foreach(line IN LISTS bounds)
    string(REGEX REPLACE "^// at-most[^:]*: ([0-9]+) *" "\\1;" bound_and_flags "${line}")
    list(POP_FRONT bound_and_flags bound)
    execute_process(COMMAND ${command} -DCASE_FAIL ${flags} ${bound_and_flags} "${CASE_FILE}" OUTPUT_QUIET
                    ERROR_VARIABLE diagnostic)
    string(REGEX MATCHALL "\n" ends "${diagnostic}")
    list(LENGTH ends said)
    if(said EQUAL 0 OR said GREATER bound)
        refuse("the diagnostic has ${said} lines, more than ${bound}:\n${diagnostic}")
    endif()
endforeach()

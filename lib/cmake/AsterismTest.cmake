# SPDX-License-Identifier: MIT
# asterism_test(<name> [DEPS <room>...] [LIBS <target>...] [TIMEOUT <seconds>])
#
# Makes the doctest program test_<name> from every .cpp in the calling folder, and one ctest test
# <name>/<file> for each file that holds a TEST_CASE: fine enough to run on two cores and to read,
# while a costly fixture is still shared within its file. Tests run in the project's root folder,
# so they name files as "ontology/regions.yaml". What a test skips, and why, goes through testing.h.

# Exit code by which a test says that it could not run here. tests/main.cpp has the same number.
set(ASTERISM_SKIPPED 77)

function(asterism_test name)
    cmake_parse_arguments(PARSE_ARGV 1 arg "" "TIMEOUT" "DEPS;LIBS")
    if(arg_UNPARSED_ARGUMENTS)
        message(FATAL_ERROR "asterism_test(${name}): not understood: ${arg_UNPARSED_ARGUMENTS}")
    endif()
    if(NOT arg_TIMEOUT)
        set(arg_TIMEOUT 300)
    endif()
    set(program test_${name})

    file(GLOB_RECURSE sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/*.cpp)
    add_executable(${program} ${sources})
    list(TRANSFORM arg_DEPS PREPEND asterism::)
    target_link_libraries(${program} PRIVATE
        asterism::testing asterism::warnings ${arg_DEPS} ${arg_LIBS})

    foreach(source IN LISTS sources)
        file(STRINGS ${source} cases REGEX "^(TEST_CASE|SCENARIO)" LIMIT_COUNT 1)
        if(cases)
            asterism_register_test_file(${name} ${program} ${source} ${arg_TIMEOUT})
        else()
            # A helper file today; look again when someone writes a test case into it.
            set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${source})
        endif()
    endforeach()
endfunction()

function(asterism_register_test_file name program source timeout)
    cmake_path(RELATIVE_PATH source BASE_DIRECTORY ${CMAKE_CURRENT_SOURCE_DIR}
        OUTPUT_VARIABLE file)
    string(REGEX REPLACE "(_test)?\\.cpp$" "" stem ${file})
    add_test(NAME ${name}/${stem}
        COMMAND ${program} --source-file=*tests/${name}/${file} --no-version
        WORKING_DIRECTORY ${PROJECT_SOURCE_DIR})
    asterism_test_properties(${name}/${stem} LABELS ${name} TIMEOUT ${timeout})
endfunction()

# asterism_test_properties(<test> [LABELS <label>...] [TIMEOUT <seconds>]): what all ctest tests
# share, also those that are not doctest programs. Sanitized programs get three times as long.
function(asterism_test_properties test)
    cmake_parse_arguments(PARSE_ARGV 1 arg "" "TIMEOUT" "LABELS")
    if(NOT arg_TIMEOUT)
        set(arg_TIMEOUT 300)
    endif()
    if(ASTERISM_SANITIZE)
        math(EXPR arg_TIMEOUT "3 * ${arg_TIMEOUT}")
    endif()
    set_tests_properties(${test} PROPERTIES
        LABELS "${arg_LABELS}"
        TIMEOUT ${arg_TIMEOUT}
        SKIP_RETURN_CODE ${ASTERISM_SKIPPED}
        ENVIRONMENT "UBSAN_OPTIONS=print_stacktrace=1;LC_ALL=C.UTF-8")
endfunction()

# SPDX-License-Identifier: MIT
# Options of the whole build, and the language they imply.

option(ASTERISM_CLI "Build the program asterism" ${PROJECT_IS_TOP_LEVEL})
option(ASTERISM_TESTS "Build the tests" ${PROJECT_IS_TOP_LEVEL})
if(CMAKE_CROSSCOMPILING)
    set(asterism_can_run OFF)
else()
    set(asterism_can_run ON)
endif()
option(ASTERISM_IMAGE "Compile the shipped rulebook into the program" ${asterism_can_run})
option(ASTERISM_WERROR "Treat compiler warnings as errors" OFF)
option(ASTERISM_SANITIZE "Build with the address and undefined-behaviour sanitizers" OFF)

set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)

# Only the top-level project may choose the build type and the flags behind it.
if(PROJECT_IS_TOP_LEVEL)
    if(NOT CMAKE_BUILD_TYPE AND NOT CMAKE_CONFIGURATION_TYPES)
        set(CMAKE_BUILD_TYPE RelWithDebInfo CACHE STRING "Build type" FORCE)
    endif()
    # Assertions stay on (no NDEBUG): a wrong referral is worse than a slow one.
    # Line tables are enough for a backtrace, and link twice as fast as full debug data.
    set(CMAKE_CXX_FLAGS_RELWITHDEBINFO "-O2 -g1")

    find_program(ASTERISM_CCACHE ccache)
    mark_as_advanced(ASTERISM_CCACHE)
    if(ASTERISM_CCACHE AND NOT CMAKE_CXX_COMPILER_LAUNCHER)
        set(CMAKE_CXX_COMPILER_LAUNCHER ${ASTERISM_CCACHE})
    endif()
endif()

include(AsterismWarnings)
include(AsterismSanitizers)

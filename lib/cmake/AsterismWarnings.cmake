# SPDX-License-Identifier: MIT
# asterism::warnings: the warnings every target of ours compiles with; errors under ASTERISM_WERROR.

add_library(asterism_warnings INTERFACE)
add_library(asterism::warnings ALIAS asterism_warnings)

target_compile_options(asterism_warnings INTERFACE
    -Wall -Wextra -Wpedantic
    -Wshadow -Wconversion -Wdouble-promotion
    -Wold-style-cast -Wcast-qual -Wcast-align
    -Wnon-virtual-dtor -Woverloaded-virtual
    -Wimplicit-fallthrough -Wformat=2
    $<$<BOOL:${ASTERISM_WERROR}>:-Werror>)

if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
    target_compile_options(asterism_warnings INTERFACE
        -Wduplicated-cond -Wduplicated-branches -Wlogical-op -Wsuggest-override
        # GCC 12 sees overlapping copies inside std::string's own operator+ (GCC bug 105651).
        -Wno-restrict
        # GCC 12 guesses wrongly through std::optional and std::variant: shown, never fatal.
        -Wno-error=maybe-uninitialized)
endif()

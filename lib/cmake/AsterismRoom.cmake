# SPDX-License-Identifier: MIT
# asterism_room(<name> [DEPS <room>...] [LIBS <target>...] [PRIVATE_LIBS <target>...])
#
# Makes the static library asterism_<name>, called asterism::<name>, from every .cpp in the calling
# folder. DEPS are rooms above this one, LIBS foreign targets that its headers need, PRIVATE_LIBS
# foreign targets that only its sources need. Includes are written from lib/: "base/span.h".
# A room without any .cpp becomes a header-only library.

function(asterism_room name)
    cmake_parse_arguments(PARSE_ARGV 1 arg "" "" "DEPS;LIBS;PRIVATE_LIBS")
    if(arg_UNPARSED_ARGUMENTS)
        message(FATAL_ERROR "asterism_room(${name}): not understood: ${arg_UNPARSED_ARGUMENTS}")
    endif()
    set(room asterism_${name})

    file(GLOB_RECURSE sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/*.cpp)
    if(sources)
        add_library(${room} STATIC ${sources})
        set(scope PUBLIC)
        target_link_libraries(${room} PRIVATE asterism::warnings ${arg_PRIVATE_LIBS})
    else()
        add_library(${room} INTERFACE)
        set(scope INTERFACE)
    endif()
    add_library(asterism::${name} ALIAS ${room})
    target_include_directories(${room} ${scope} ${PROJECT_SOURCE_DIR}/lib)
    target_compile_features(${room} ${scope} cxx_std_20)

    foreach(dep IN LISTS arg_DEPS)
        if(NOT TARGET asterism::${dep})
            message(FATAL_ERROR "asterism_room(${name}): the room `${dep}` does not stand above it")
        endif()
        target_link_libraries(${room} ${scope} asterism::${dep})
    endforeach()
    target_link_libraries(${room} ${scope} ${arg_LIBS})
endfunction()

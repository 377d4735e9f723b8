# SPDX-License-Identifier: MIT
# Every library we stand on, as an imported target. Nothing is downloaded: tests/packages.txt names
# the Debian packages. yaml-cpp is for lib/yaml alone; spdlog and program_options for cli alone.

find_package(yaml-cpp 0.7 REQUIRED)
find_package(fmt 9 REQUIRED)
find_package(tl-expected 1.0 REQUIRED)
find_package(nlohmann_json 3.11 REQUIRED)
find_package(OpenSSL 3.0 REQUIRED COMPONENTS Crypto)
find_package(ZLIB REQUIRED)
find_package(simdjson REQUIRED)
find_package(pugixml REQUIRED)
find_package(Threads REQUIRED)
find_package(Boost 1.74 REQUIRED) # Boost::headers, for Boost.Math

if(ASTERISM_CLI)
    find_package(Boost 1.74 REQUIRED COMPONENTS program_options)
    find_package(spdlog 1.10 REQUIRED)
endif()
if(ASTERISM_TESTS)
    find_package(doctest 2.4 REQUIRED)
    find_package(Python3 3.9 REQUIRED COMPONENTS Interpreter)
endif()

# Debian's yaml-cpp 0.7 exports only the plain name; later releases drop it for the namespaced one.
if(NOT TARGET yaml-cpp::yaml-cpp)
    add_library(yaml-cpp::yaml-cpp ALIAS yaml-cpp)
endif()

# Debian's cereal exports a plain name. Its headers are not ours to mend: no warnings from them.
find_package(cereal 1.3 REQUIRED)
add_library(asterism_cereal INTERFACE)
add_library(asterism::cereal ALIAS asterism_cereal)
get_target_property(cereal_headers cereal::cereal INTERFACE_INCLUDE_DIRECTORIES)
target_include_directories(asterism_cereal SYSTEM INTERFACE ${cereal_headers})

# asterism_find_plain(<target> <header> <library>): a C library that ships no CMake package.
function(asterism_find_plain target header library)
    find_path(${library}_INCLUDE_DIR ${header} REQUIRED)
    find_library(${library}_LIBRARY ${library} REQUIRED)
    mark_as_advanced(${library}_INCLUDE_DIR ${library}_LIBRARY)
    if(NOT TARGET ${target})
        add_library(${target} UNKNOWN IMPORTED)
        set_target_properties(${target} PROPERTIES
            IMPORTED_LOCATION "${${library}_LIBRARY}"
            INTERFACE_INCLUDE_DIRECTORIES "${${library}_INCLUDE_DIR}")
    endif()
endfunction()
asterism_find_plain(utf8proc::utf8proc utf8proc.h utf8proc)
asterism_find_plain(csv::csv csv.h csv)
asterism_find_plain(cadical::cadical cadical.hpp cadical)

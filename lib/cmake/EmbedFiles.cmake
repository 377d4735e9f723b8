# SPDX-License-Identifier: MIT
# asterism_embed(TARGET <target> ROOT <folder> PATTERNS <glob>...)
#
# Compiles the text files below ROOT that match the patterns (relative to ROOT, folders included)
# into <target>, as the function declared in embedded/embedded.h. A changed file is embedded again
# at the next build; so is one that was added or removed.

set(ASTERISM_EMBED_SCRIPT ${CMAKE_CURRENT_LIST_DIR}/EmbedFilesScript.cmake)

function(asterism_embed)
    cmake_parse_arguments(PARSE_ARGV 0 arg "" "TARGET;ROOT" "PATTERNS")
    list(TRANSFORM arg_PATTERNS PREPEND ${arg_ROOT}/)
    file(GLOB_RECURSE files CONFIGURE_DEPENDS ${arg_PATTERNS})

    # The list is a file of its own, so that removing a file is a change too. GENERATE rewrites it
    # only when it differs.
    set(list ${CMAKE_CURRENT_BINARY_DIR}/${arg_TARGET}_files.txt)
    set(source ${CMAKE_CURRENT_BINARY_DIR}/${arg_TARGET}_files.cpp)
    list(JOIN files "\n" lines)
    file(GENERATE OUTPUT ${list} CONTENT "${lines}\n")

    add_custom_command(OUTPUT ${source}
        COMMAND ${CMAKE_COMMAND}
            -D "ROOT=${arg_ROOT}" -D "LIST=${list}" -D "OUTPUT=${source}"
            -P ${ASTERISM_EMBED_SCRIPT}
        DEPENDS ${files} ${list} ${ASTERISM_EMBED_SCRIPT}
        COMMENT "Embedding the rulebook and the ontology"
        VERBATIM)
    target_sources(${arg_TARGET} PRIVATE ${source})
endfunction()

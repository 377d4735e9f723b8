# SPDX-License-Identifier: MIT
# ASTERISM_SANITIZE: every target is instrumented, and the first report ends the program.

if(ASTERISM_SANITIZE)
    add_compile_options(
        -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer -O1)
    # Bounds of vector, span, string_view and optional are checked too.
    add_compile_definitions(_GLIBCXX_ASSERTIONS)
    add_link_options(-fsanitize=address,undefined)
endif()

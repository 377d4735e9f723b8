// SPDX-License-Identifier: MIT
#pragma once

#include "image/built_in.h"
#include "image/image.h"
#include "testing.h"

namespace asterism::testing {

/// True in a program built without an image (ASTERISM_IMAGE=OFF), after saying so.
inline bool no_image() {
    if (!image::built_in().empty()) return false;
    MESSAGE("this build has no image");
    return true;
}

/// The book of the built-in image.
inline CompiledRulebook const& imaged_book() {
    static CompiledRulebook const book = image::read(image::built_in(), image::embedded_text);
    return book;
}

}  // namespace asterism::testing

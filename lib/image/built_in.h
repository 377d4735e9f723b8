// SPDX-License-Identifier: MIT
#pragma once

#include <string_view>

namespace asterism::image {

/// The image of the shipped book, made when the program was built; empty in a program built
/// without one (ASTERISM_IMAGE=OFF). Valid for the life of the program.
std::string_view built_in();

}  // namespace asterism::image

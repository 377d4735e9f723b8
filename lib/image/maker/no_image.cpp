// SPDX-License-Identifier: MIT
#include "image/built_in.h"

std::string_view asterism::image::built_in() { return {}; }

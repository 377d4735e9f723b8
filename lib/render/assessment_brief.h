// SPDX-License-Identifier: MIT
#pragma once

#include <string>

#include "assess/assessment.h"
#include "render/layout.h"

namespace asterism {

/// The answer in at most 40 lines. Where it is cut, it says so and how to see the rest.
std::string brief_text(Assessment const& assessment, Style const& style);

}  // namespace asterism

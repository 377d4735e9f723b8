// SPDX-License-Identifier: MIT
#pragma once

#include <string>

#include "assess/assessment.h"
#include "render/layout.h"

namespace asterism {

/// Everything that the assessment knows, section by section.
std::string full_text(Assessment const& assessment, Style const& style);

}  // namespace asterism

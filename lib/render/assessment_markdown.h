// SPDX-License-Identifier: MIT
#pragma once

#include <string>

#include "assess/assessment.h"
#include "render/assessment_context.h"

namespace asterism {

/// The answer as CommonMark, to paste into notes: headings, lists, no tables and no HTML.
std::string assessment_markdown(Assessment const& assessment, AssessmentContext const& context);

}  // namespace asterism

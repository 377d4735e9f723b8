// SPDX-License-Identifier: MIT
#pragma once

#include <string>

#include "assess/assessment.h"
#include "render/assessment_context.h"

namespace asterism {

/// The answer as one self-contained page: no script, nothing fetched, readable in light, dark and
/// print, by keyboard and by screen reader.
std::string assessment_html(Assessment const& assessment, AssessmentContext const& context);

/// The style of that page.
std::string assessment_html_style();

}  // namespace asterism

// SPDX-License-Identifier: MIT
#pragma once

#include <string>

#include "assess/assessment.h"
#include "render/assessment_context.h"

namespace asterism {

/// A referral note in the order Situation, Background, Assessment, Recommendation: plain text, 80
/// columns. It holds what was recorded, in the recorder's words, and what the rules said; nothing
/// is concluded for it and no condition is named as the cause.
std::string consult_note(Assessment const& assessment, AssessmentContext const& context);

}  // namespace asterism

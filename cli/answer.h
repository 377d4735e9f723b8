// SPDX-License-Identifier: MIT
#pragma once

#include "assess/assess.h"
#include "render/assessment_writers.h"

namespace asterism::cli {

/// The answer for a baby with all that a writer shows of it, and no more.
Assessment answer_for(AssessmentWriter const& writer, TextOptions const& text,
                      CompiledRulebook const& book, Case const& baby);

}  // namespace asterism::cli

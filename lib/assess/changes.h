// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "assess/assessment.h"
#include "assess/facts.h"
#include "compile/compiled.h"

namespace asterism {

/// Fills `what_would_change` of every referral. Exact within its bounds: all sets without which a
/// suggestion falls when it hangs on at most ten things, else sets of up to four (`more_without`
/// says when larger ones may exist); additions of one finding, or of two, in a large book those
/// that a partly met rule asks for (`more_with`); and the fewest exam steps up to five.
void add_what_would_change(CompiledRulebook const& book, Case const& baby, Assessment& assessment);

}  // namespace asterism

// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "assess/assessment.h"
#include "assess/facts.h"
#include "compile/compiled.h"

namespace asterism {

/// Fills `what_would_change` of every referral. Exact within its bounds: sets without which a suggestion falls up to
/// four things (`more_without` says when larger ones may exist), additions of one finding, or of two where the book is
/// small (`more_with`), and the fewest exam steps up to five.
void add_what_would_change(CompiledRulebook const& book, Case const& baby, Assessment& assessment);

}  // namespace asterism

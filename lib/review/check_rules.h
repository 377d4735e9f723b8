// SPDX-License-Identifier: MIT
#pragma once

#include "base/diagnostic.h"
#include "compile/compiled.h"

namespace asterism {

/// What can be seen without asking which babies there are: empty lists of sources (`no-source`,
/// errors), a strength that its sources do not bear (`weak-source`), a service suggested twice by
/// one rule (`suggested-twice`), and conditions that stand twice in one list
/// (`repeated-condition`), warnings; two rules with one condition (`same-condition`, notes).
void check_rules(CompiledRulebook const& book, Diagnostics& diagnostics);

/// Every condition of the book with the place that a message should fall back on.
std::vector<CompiledCondition const*> all_conditions(CompiledRulebook const& book);

/// Whether a sibling earlier or later in the list is the same condition.
bool has_twin(CompiledCondition const& parent, std::size_t child);

}  // namespace asterism

// SPDX-License-Identifier: MIT
#pragma once

#include "base/diagnostic.h"
#include "compile/compiled.h"
#include "review/sat/solver.h"

namespace asterism {

/// Rules and constellations that no possible baby meets (`never-fires`, `never-reached`, warnings),
/// and rules that say nothing of their own: whenever one is met, another gives each of its services
/// the same or a higher urgency
/// (`implied`, notes; a rule with first steps, a follow-up or a caution says more than its
/// services, and is not named). What is not decided within the limits is left out.
void check_unreachable(CompiledRulebook const& book, Diagnostics& diagnostics,
                       sat::Limits const& limits = {});

}  // namespace asterism

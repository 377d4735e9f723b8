// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "compile/compiled.h"

namespace asterism {

/// The literals of which one must be true before anything recorded speaks for a condition: the
/// findings that it asks for and what counts in its tallies, ascending. A condition of which no
/// sign is true need not be looked into.
std::vector<Literal> signs_of(CompiledRulebook const& book, CompiledCondition const& condition);

}  // namespace asterism
